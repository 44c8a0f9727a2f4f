package tutor

import (
	"strings"

	"example.org/standstill/checker"
)

// ChooseNamed takes up the open item that a text names and does no more, outside of
// Solve, where such a text is an answer. It reports whether there is one.
func (l *Lesson) ChooseNamed(text string) bool {
	stage, _, open := l.InHand()
	if !open || stage == checker.Solve {
		return false
	}
	item, ok := l.Named(stage, text)
	return ok && l.Choose(item)
}

// Anew returns what counts as typed where the line that was refused last stands on: a
// whole new answer that was typed into it, at the place at which the cursor was put
// (in runes), without emptying it first; else the text. The new answer is right by
// itself where all of it is not, or both are equations.
func (l *Lesson) Anew(text, refused string, at int) string {
	anew := typedInto(text, refused, at)
	if anew == "" || l.verdict(text) == checker.Right {
		return text
	}
	begins := strings.ContainsAny(anew[:1], "=≈;,+-*/")
	if l.verdict(anew) == checker.Right || strings.ContainsAny(anew[1:], "=≈") && strings.ContainsAny(refused, "=≈") && !begins {
		return anew
	}
	return text
}

// typedInto is what was put into a text, in one go, at a place or behind it; "" where it
// was changed otherwise.
func typedInto(text, before string, at int) string {
	now, last := []rune(text), []rune(before)
	more := len(now) - len(last)
	if more <= 0 || at > len(last) {
		return ""
	}
	end := at + more
	if string(now[:at]) != string(last[:at]) || string(now[end:]) != string(last[at:]) {
		return ""
	}
	return strings.TrimSpace(string(now[at:end]))
}

// verdict is what would be said of a text that is not kept.
func (l *Lesson) verdict(text string) (verdict checker.Verdict) {
	stage, item, open := l.InHand()
	if !open || stage == checker.Solve {
		stage, item = checker.Solve, ""
	}
	_ = Fenced(func() { verdict = l.marked(checker.Answer{Stage: stage, Item: item, Text: text}, l.before()).Verdict })
	return verdict
}
