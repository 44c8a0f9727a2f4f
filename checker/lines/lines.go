// Package lines knows where in a typed text its lines begin and end: what stands
// between two equations, what is a label or a heading in front of one, and where
// in the text each of them is.
//
// Start with Of, and with Forces for a force diagram in words. How a text is taken
// apart:
//
//	separators.go   ; and new lines, commas, arrows, "and", "so"
//	runon.go        equations that stand one behind the other with nothing between
//	labels.go       "2)", "Answer:", the name of a body, a heading
//	chain.go        "T1x = wx = 0" is one line for each component
//	forces.go       a force diagram in words
//
// What a line means is not known here; a Vocabulary tells which words are letters
// of the problem, for such a word separates nothing.
package lines

import (
	"cmp"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
)

// Most is how many lines a text may have.
const Most = 40

// longest is how many runes of a text are looked at: those of Most lines that can be
// read, with room for what stands between them.
const longest = Most * 510

// Vocabulary tells what the words of a text are. A nil function knows none.
type Vocabulary struct {
	Letter    func(text string) bool // a letter of the problem, in any spelling, and nothing more
	Component func(text string) bool // the letter of a component
	Body      func(text string) bool // the name of a body that is no letter
	Heading   func(text string) bool // the name of a sum and nothing more: "ΣFx = 0"
}

func (v Vocabulary) component(text string) bool { return v.Component != nil && v.Component(text) }
func (v Vocabulary) body(text string) bool      { return v.Body != nil && v.Body(text) }
func (v Vocabulary) heading(text string) bool   { return v.Heading != nil && v.Heading(text) }

// Line is one line of a text: an expression, an equation or a chain of equations.
// Text is what is to be read, without labels and without what stands around it. Body
// is the body that a label in front names, "" for none. Concludes says that the line
// is said to follow from the one before it, by an arrow or a word such as "so".
type Line struct {
	Text      string
	Body      string
	Concludes bool
	at        []int // the rune of the text that each rune of Text stands for
	end       int
}

// Span returns the runes of the text that the line takes, from the first up to the
// one behind the last.
func (l *Line) Span() (from, to int) { return l.at[0], l.end }

// Place turns a rune offset into Text into one into the whole text.
func (l *Line) Place(pos int) int {
	switch {
	case pos < 0:
		return l.at[0]
	case pos < len(l.at):
		return l.at[pos]
	}
	return l.end
}

// IsEquation reports whether something is set equal to something in the line.
func (l *Line) IsEquation() bool { return strings.ContainsFunc(l.Text, isEquals) }

// Clean drops what no line needs (control characters, escape sequences) and keeps
// the ends of lines. Spans are offsets into the text that it returns.
func Clean(text string) string {
	rows := strings.FieldsFunc(text, func(r rune) bool { return r == '\n' || r == '\r' })
	for i, row := range rows {
		rows[i] = expr.Clean(row)
	}
	return strings.Join(rows, "\n")
}

// Of takes a text apart. A text that holds nothing to read has no lines; ok is false
// for one with more than Most lines.
func Of(text string, v Vocabulary) (all []Line, ok bool) {
	s := newSplitter(text, v)
	s.split()
	for _, p := range s.pieces {
		for _, one := range s.runOn(p) {
			all = s.add(all, one)
		}
		if len(all) > Most {
			return nil, false
		}
	}
	if !s.waiting.isEmpty() {
		all = append(all, s.waiting.line())
	}
	return all, !s.tooLong && len(all) <= Most
}

// Whole returns a text as one line, whatever is in it.
func Whole(text string) Line {
	text = Clean(text)
	l := Line{Text: text, at: []int{0}}
	for range []rune(text) {
		l.end++
		l.at = append(l.at, l.end)
	}
	return l
}

// splitter takes one text apart.
type splitter struct {
	Vocabulary
	runes   []rune
	at      []int // the rune of the text that each of runes came from
	pieces  []piece
	tooLong bool
	waiting piece  // a label that has a line of the text to itself
	on      string // the body that such a label names, for all that follows
	letters map[string]bool
}

// piece is a stretch of the text, as the runes that it holds and where each of them
// stands.
type piece struct {
	runes     []rune
	at        []int
	body      string
	concludes bool
}

func newSplitter(text string, v Vocabulary) *splitter {
	clean := []rune(Clean(text))
	s := &splitter{Vocabulary: v, letters: map[string]bool{}}
	if s.tooLong = len(clean) > longest; s.tooLong {
		clean = clean[:longest]
	}
	plain, at := expr.Transcribe(string(clean))
	s.runes, s.at = []rune(plain), at
	return s
}

// letter reports whether a word is a letter of the problem. A text asks for the same few
// words often.
func (s *splitter) letter(text string) bool {
	if s.Letter == nil {
		return false
	}
	known, asked := s.letters[text]
	if !asked {
		known = s.Letter(text)
		s.letters[text] = known
	}
	return known
}

// cut returns the runes from one place up to another as a piece.
func (s *splitter) cut(from, to int) piece {
	p := piece{runes: slices.Clone(s.runes[from:to])}
	for i := from; i < to; i++ {
		p.at = append(p.at, s.at[i])
	}
	return p
}

// part returns a stretch of a piece.
func (p piece) part(from, to int) piece {
	p.runes, p.at = p.runes[from:to], p.at[from:to]
	return p
}

// trimmed takes spaces and loose commas off both ends.
func (p piece) trimmed() piece {
	from, to := 0, len(p.runes)
	for from < to && strings.ContainsRune(" ,，", p.runes[from]) {
		from++
	}
	for to > from && strings.ContainsRune(" ,，", p.runes[to-1]) {
		to--
	}
	return p.part(from, to)
}

// joined puts another piece behind this one, with a space between.
func (p piece) joined(q piece) piece {
	if len(p.runes) == 0 {
		return q
	}
	q.runes = append(append(slices.Clone(p.runes), ' '), q.runes...)
	q.at = append(append(slices.Clone(p.at), p.at[len(p.at)-1]), q.at...)
	return q
}

func (p piece) text() string { return string(p.runes) }

// isEmpty reports whether there is nothing to read; full stops alone are nothing.
func (p piece) isEmpty() bool { return strings.Trim(p.text(), " .") == "" }

// add makes lines of a piece. A label that has a line to itself is put in front of the
// next; a heading such as "ΣFx = 0" says no more than that, and is left out.
func (s *splitter) add(all []Line, p piece) []Line {
	if p = s.label(p.trimmed()); p.isEmpty() {
		// “A:” on a line of its own is a heading for all that follows.
		s.on = cmp.Or(p.body, s.on)
		return all
	}
	body := cmp.Or(p.body, s.on)
	concludes := p.concludes
	p = s.label(s.waiting.joined(p))
	p.body = body
	p.concludes = concludes || s.waiting.concludes
	s.waiting = piece{}
	if name, colon := strings.CutSuffix(p.text(), ":"); colon && (!slices.ContainsFunc(p.runes, isEquals) || s.heading(name)) {
		s.waiting = p
		return all
	}
	if n := len(all); n > 0 && s.heading(all[n-1].Text) {
		all = all[:n-1]
	}
	return append(all, s.unchained(p)...)
}

func (p piece) line() Line {
	return Line{Text: p.text(), Body: p.body, Concludes: p.concludes, at: p.at, end: p.at[len(p.at)-1] + 1}
}
