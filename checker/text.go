package checker

import (
	"example.org/standstill/checker/diagram"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/lines"
	"example.org/standstill/checker/memory"
	"example.org/standstill/checker/solved"
)

// Lines takes a text apart as Mark does; the text of an answer is read with the letters
// of its item. ok is false for a text with more lines than are judged at once. Of a
// diagram, which is one line, each entry is a line. The lines are not to be changed.
func (r *Reference) Lines(a Answer) (all []lines.Line, ok bool) {
	if len(a.Text) > memory.LongestText {
		return r.takeApart(a)
	}
	q := wholeText{r.solved.LettersFor(a.Item), a.Stage == Components, a.Stage == Diagram, a.Text}
	known, ok := r.kin.texts.Recall(q)
	if !ok {
		known.lines, known.ok = r.takeApart(a)
		r.kin.texts.Keep(q, known)
	}
	return known.lines, known.ok
}

// wholeText is what the lines of a text depend on, among the copies of one problem.
type wholeText struct {
	letters    *expr.Letters
	components bool
	diagram    bool
	text       string
}

// textLines are the lines of a text, as Lines returns them.
type textLines struct {
	lines []lines.Line
	ok    bool
}

func (r *Reference) takeApart(a Answer) (all []lines.Line, ok bool) {
	if a.Stage == Diagram {
		return lines.Forces(a.Text, diagram.SaysForce), true
	}
	v := lines.Vocabulary{
		Letter: func(text string) bool { _, ok := r.LetterOf(text, a.Item); return ok },
		Body: func(text string) bool {
			_, ok := r.solved.Body(text)
			// In A: T1x = 3 the A is a body, but a letter wins where a problem has both.
			return ok && text != "" && !r.solved.LettersFor(a.Item).Has(text)
		},
		Heading: func(text string) bool { return isHeading(r.solved, text, a.Item) },
	}
	if a.Stage == Components {
		v.Component = func(text string) bool {
			name, ok := r.LetterOf(text, a.Item)
			_, isComponent := r.solved.Component(name)
			return ok && isComponent
		}
	}
	return lines.Of(a.Text, v)
}

// isHeading reports whether a line is "ΣFx = 0", which says what the next one is.
func isHeading(s *solved.System, text, item string) bool {
	reading, err := s.LettersFor(item).Read(text)
	if err != nil {
		return false
	}
	line := reading.Lines[0]
	return line.Axis != "" && len(line.Sides) == 1 && expr.IsZero(line.Sides[0])
}
