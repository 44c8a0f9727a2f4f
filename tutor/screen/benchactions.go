package screen

import (
	"slices"
	"strings"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// Words that others know of: goToBench leads back from a prediction by hand, and some
// commands write files.
const (
	goToBench tutor.Word = "bench"
	askResult tutor.Word = "result"
	askReport tutor.Word = "report"
	askSheet  tutor.Word = "sheet"
	askExport tutor.Word = "export"
)

// benchKeys are the keys of commands. A key does what comes nearest to what it does in a
// lesson.
func benchKeys() map[string]frame.Binding {
	return map[string]frame.Binding{
		"result": frame.Bind("ctrl+o", "result", "ctrl+o"), "runs": frame.Bind("ctrl+l", "runs", "ctrl+l"), "text": frame.Bind("ctrl+r", "problem", "ctrl+r"),
	}
}

// benchActions is the table of everything that can be done at the bench: its commands, and
// what belongs to the screen alone.
func benchActions() []action {
	all := []action{{"", frame.Bind("ctrl+y", "value before", "ctrl+y"), menuRestore, (*model).canRestore, (*model).restore}}
	for _, c := range bench.Commands() {
		all = append(all, action{tutor.Word(c.Word), benchKeys()[c.Word], c.Does, (*model).isMeasuring, func(m *model) { m.obeyCommand(c) }})
	}
	return append(all,
		action{tutor.AskHelp, frame.Bind("ctrl+g", "how to write", "ctrl+g"), menuNotation, (*model).isMeasuring, (*model).showNotation},
		action{"", frame.Binding{}, menuBackground, always, (*model).otherBackground},
		action{tutor.Leave, frame.Bind("ctrl+c", "quit", "ctrl+c"), menuLeave, always, (*model).leave})
}

// obeyCommand obeys a command of the bench. The pages of the result have a sheet of their own,
// and the drawing is told in words: it is on the screen already.
func (m *model) obeyCommand(c bench.Command) {
	b := m.bench
	switch page := bench.Page(c.Word); {
	case slices.Contains(pages, page):
		m.showOutcome(page)
	case tutor.Word(c.Word) == tutor.AskDrawing:
		m.showWords()
	case b.hasLine(m) && !b.form.commit(m):
	default:
		answer := b.table.Do(c, b.rest)
		if c.Word == "predict" && answer.Then != nil {
			b.put(m, b.table.Named(bench.StepByHand), answer.Then, (*model).home)
			return
		}
		b.answered(m, answer, nil)
		b.changed(m)
	}
}

// byHandActions are those of a lesson whose numbers were measured: no other problem and no
// other student, but the way back.
func byHandActions() []action {
	elsewhere := []tutor.Word{tutor.GoNext, tutor.GoAgain, tutor.AskStudent}
	all := slices.DeleteFunc(actions(), func(a action) bool { return slices.Contains(elsewhere, a.word) })
	for i := range all {
		if all[i].word == tutor.AskProblems {
			all[i] = action{goToBench, frame.Bind("ctrl+l", "to the bench", "ctrl+l"), menuBench, always, (*model).toBench}
		}
	}
	return all
}

// isMeasuring reports whether an apparatus is on the table and the form is in hand.
func (m *model) isMeasuring() bool {
	return m.bench.table.Form != nil && m.bench.at >= m.bench.table.Named(bench.StepValues)
}

// wordOf finds the word that a line begins with, and what stands behind it.
func (b *atBench) wordOf(m *model, text string) (word tutor.Word, rest string, ok bool) {
	switch {
	case !m.isAtBench() && strings.EqualFold(strings.TrimSpace(text), string(goToBench)):
		return goToBench, "", true
	case !m.isAtBench():
		word, ok = tutor.WordOf(text)
		return word, "", ok
	case b.hasLine(m):
		text = b.form.meant(m, text)
	default:
		text = b.anew(m, text, b.refused)
	}
	return b.wordIn(m, text)
}

// wordIn finds a word among those that can be obeyed now: anything else may be a name or
// a value.
func (b *atBench) wordIn(m *model, text string) (word tutor.Word, rest string, ok bool) {
	if c, rest, ok := bench.CommandOf(text); c.Word != "" {
		known := slices.ContainsFunc(m.actions, func(a action) bool { return a.word == tutor.Word(c.Word) })
		return tutor.Word(c.Word), rest, ok && known && m.isMeasuring()
	}
	first, rest, _ := strings.Cut(strings.TrimSpace(text), " ")
	for _, a := range m.actions {
		if a.word != "" && strings.EqualFold(string(a.word), first) && a.can(m) {
			return a.word, "", strings.TrimSpace(rest) == ""
		}
	}
	return "", "", false
}

// obeyTyped obeys a word with what stands behind it. In the form, the field in hand keeps
// what it had.
func (b *atBench) obeyTyped(m *model, word tutor.Word, text string) {
	_, b.rest, _ = b.wordOf(m, text)
	if b.hasLine(m) {
		b.form.load(m)
	} else {
		m.line.Set("")
	}
	m.obeyWord(word)
	b.rest = ""
}

// whatItDoes says what a word does, as the menu has it.
func (m *model) whatItDoes(w tutor.Word) string {
	if !m.isAtBench() {
		return meaning(w)
	}
	for _, a := range m.actions {
		if a.word == w {
			return a.menu + "."
		}
	}
	return ""
}

// lay puts a sheet to be read over the form, which has the line.
func (m *model) lay(title string, content views.Content) {
	m.home()
	m.sheet = &reader{title: title, make: func(*model) views.Content { return content }}
}

func (m *model) showNotation() { m.lay(bench.Notation().Title, notation) }
