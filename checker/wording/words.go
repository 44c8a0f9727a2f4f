// Package wording knows the words about a line: which text of a mistake's row serves for it, and
// the sentences that no row has. It fills in both.
//
// Start with Subject, what a sentence speaks of; it is made of a solved system and of small values
// that say what was found. Subject.Line words the first message, Subject.Hint the three hints.
//
//	subject.go    what a sentence speaks of
//	fill.go       the phrases that stand for words in braces
//	message.go    which text of a mistake serves for what was typed; hints.go which hint
//	nearletter.go the letter that an unknown name may have been meant for
//	rules.go      the rules in hints, by how a force lies and what kind it is
//	putback.go    what is said of a value that no mistake explains
//	words.go      what is said in cases that no row holds
//	describe.go   a force in words
package wording

import (
	"fmt"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/solved"
)

// The first message about a line says where to look: at which force, which part
// of it, which sum. It never says what to write instead, because a student who
// is told "sine for cosine" turns it over without a thought.
//
// Words in braces are filled in from the problem (see phrases in fill.go);
// {force|each force} has, behind the bar, what is said where the evidence names
// none.

// What is said in cases that no table holds.
const (
	SaidCoined         = " is a letter that you have introduced. You can use it from now on."
	SaidNoStage        = "This problem has no such stage."
	SaidManyLines      = "You typed more than 40 lines at once. Check a few lines at a time."
	SaidTrueElsewhere  = "This line is true, but it is not a component. The line will count later, when you solve the equations."
	SaidTakenAsSize    = "This counts as the magnitude of %s, which points {negative}."
	SaidSignAsked      = "This is the magnitude of %s. In your class, you have to write each component with its sign."
	SaidFigures        = "This value of %s is right, but you have to give it to %d significant figures."
	SaidWorkOut        = "This line is not an answer yet: work out the value as a number with a unit."
	SaidNameIt         = "Say which letter has this value. The line will then count as an answer."
	SaidTwoAnswers     = "You gave two different answers to the same question, so neither of them counts yet."
	SaidWhichComponent = "Say which component this is, for example T1x = …"
	SaidDiagramEmpty   = "Write the letter of each force and its direction: up, down, left, right, or two of these. Put a semicolon between two forces."
	SaidSecond         = "There is also a second mistake."
	SaidBelowBar       = "Everything directly after the slash was read as the denominator. Next time, put the denominator in brackets."
	SaidBesideBar      = "Only the first factor after the slash was read as the denominator. Next time, use brackets to show what you mean."
	SaidNewton         = "The N after the number was read as newtons, not as the normal force."
	SaidNormal         = "The N after the number was read as the normal force, not as newtons."
	SaidThousands      = "The comma in %s was read as a thousands separator."
	SaidDecimal        = "The comma in %s was read as a decimal comma."
	SaidNoLetter       = "This problem has no letter %s."
	SaidLetters        = "You can use these letters: %s."
	SaidNearLetter     = "Did you mean %s?"
	SaidDiagramLong    = "This list of forces is too long. Name each force once, with its direction."
	SaidColumn         = "Column %d: %s"
	SaidNoSide         = "“%s” does not say which force points in which direction."
)

// SaidUnreadable says where a text stops making sense, and why.
func SaidUnreadable(e *expr.ReadError) string {
	return fmt.Sprintf(SaidColumn, e.Pos+1, strings.ToLower(e.Message[:1])+e.Message[1:])
}

// SaidDiagramForm says that a part of a diagram is no force with its side.
func SaidDiagramForm(part string) string {
	return fmt.Sprintf(SaidNoSide, Shorten(part))
}

// Shorten keeps a quoted piece of a student's text to the length of a line.
func Shorten(text string) string {
	runes := []rune(strings.TrimSpace(text))
	if len(runes) > 40 {
		return string(runes[:39]) + "…"
	}
	return string(runes)
}

// Join puts one sentence behind another; either may be empty.
func Join(a, b string) string { return strings.TrimSpace(a + " " + b) }

// SaidReading says how a text with two readings was taken.
func SaidReading(reading expr.Reading, i int, isRight bool) string {
	line := reading.Lines[i]
	switch {
	case len(reading.Lines) < 2:
		return ""
	case line.Slash && line.Paper:
		return SaidBelowBar
	case line.Slash:
		return SaidBesideBar
	}
	if group := oneComma().FindString(reading.Text); group != "" {
		// This reading has 1234 for “1,234”, so it took the comma as a thousands separator.
		if hasNumber(line, strings.Replace(group, ",", "", 1)) {
			return fmt.Sprintf(SaidThousands, group)
		}
		return fmt.Sprintf(SaidDecimal, group)
	}
	if newtonOrNormal().MatchString(reading.Text) {
		return saidOfN(line, isRight)
	}
	return ""
}

// newtonOrNormal finds an N behind a number.
var newtonOrNormal = pattern.Of(`\d\s*N\b`)

// oneComma finds a number such as 1,200, of which the comma has two readings.
var oneComma = pattern.Of(`\b\d{1,3},\d{3}\b`)

func hasNumber(line expr.Line, text string) bool {
	found := false
	for _, side := range line.Sides {
		side.Walk(func(n *expr.Node) { found = found || n.Op == expr.Number && n.Num.Text == text })
	}
	return found
}

// saidOfN says which N was taken, where the line is not right as it was read. In
// "N = 137 N" nobody means anything but the newton.
func saidOfN(line expr.Line, isRight bool) string {
	newton, alone := false, false
	for _, side := range line.Sides {
		alone = alone || expr.IsQuantity(side)
		side.Walk(func(n *expr.Node) { newton = newton || n.Unit == "N" && !n.Assumed })
	}
	switch {
	case isRight || newton && alone:
		return ""
	case newton:
		return SaidNewton
	}
	return SaidNormal
}

// SaidUnknownName says which letter the problem does not have, offers a near one
// and lists those that there are.
func SaidUnknownName(s *solved.System, name string) string {
	letter := expr.Set(Shorten(name))
	// A word is quoted, or it would read as part of the sentence.
	if len([]rune(letter)) > 2 {
		letter = "“" + letter + "”"
	}
	text := fmt.Sprintf(SaidNoLetter, letter)
	if near := NearLetter(s, name); near != "" {
		text = Join(text, fmt.Sprintf(SaidNearLetter, expr.Set(near)))
	}
	return Join(text, fmt.Sprintf(SaidLetters, letterList(s)))
}

// letterList names the givens, then the forces, then what else is unknown.
func letterList(r *solved.System) string {
	var names []string
	add := func(name string) {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, g := range r.Givens {
		add(g.Name)
	}
	for _, b := range r.Bodies {
		for _, f := range b.Forces {
			add(f.Name)
		}
	}
	for _, name := range r.Model.Unknowns() {
		add(name)
	}
	for _, e := range r.Equals {
		add(e.Name)
	}
	return listed(names)
}

// listed joins letters as they stand on paper: "T₁, T₂ and w".
func listed(names []string) string {
	set := make([]string, len(names))
	for i, name := range names {
		set[i] = expr.Set(name)
	}
	return andBetween(set)
}

func andBetween(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// Stranger is a name that the problem does not have, as a sentence can hold it: braces mean
// something in sentences.
func Stranger(name string) string { return strings.Map(dropBraces, Shorten(name)) }

// dropBraces keeps typed braces out of sentences, where they mean something.
func dropBraces(r rune) rune {
	if r == '{' || r == '}' {
		return -1
	}
	return r
}
