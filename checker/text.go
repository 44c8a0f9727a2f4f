package checker

import (
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/lines"
	"example.org/standstill/checker/wording"
)

// Lines takes a text apart as Mark does; the text of an answer is read with the letters
// of its item. ok is false for a text with more lines than are judged at once. Of a
// diagram, which is one line, each entry is a line.
func (r *Reference) Lines(a Answer) (all []lines.Line, ok bool) {
	if a.Stage == Diagram {
		return lines.Forces(a.Text, saysForce), true
	}
	v := lines.Vocabulary{
		Letter: func(text string) bool { _, ok := r.LetterOf(text, a.Item); return ok },
		Body: func(text string) bool {
			_, ok := r.solved.Body(text)
			return ok && text != "" && !r.solved.LettersFor(a.Item).Has(text)
		},
		Heading: func(text string) bool { return r.isHeading(text, a.Item) },
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
func (r *Reference) isHeading(text, item string) bool {
	reading, err := r.solved.LettersFor(item).Read(text)
	if err != nil {
		return false
	}
	line := reading.Lines[0]
	return line.Axis != "" && len(line.Sides) == 1 && expr.IsZero(line.Sides[0])
}

// saysForce reports whether a text names a force and a side to which it points.
func saysForce(text string) bool {
	e := parseEntry(text)
	return e.named && len(e.words) > 0
}

// Together makes one report of those of several lines: right if all are, else what is
// said of the first that is not. Different answers to one item settle nothing.
func Together(each []Report) Report {
	if len(each) == 1 {
		return each[0]
	}
	voidTwice(each)
	all := Report{Verdict: Right}
	var read, settles []string
	for _, one := range each {
		if one.Read != "" {
			read = append(read, one.Read)
		}
		if all.Verdict == Right && one.Verdict != Right {
			all = one
		}
		if one.Settles != nil && settles == nil {
			settles = []string{}
		}
		for _, name := range one.Settles {
			if !slices.Contains(settles, name) {
				settles = append(settles, name)
			}
		}
	}
	if all.Verdict == Right {
		all.Stage = each[0].Stage
	}
	all.Settles = settles
	all.Read = strings.Join(read, "; ")
	all.Each = each
	return all
}

// voidTwice takes back what is settled by a line where another line of the same text
// answers the same item wrongly.
func voidTwice(each []Report) {
	for i := range each {
		one := &each[i]
		if one.Verdict != Right {
			continue
		}
		for _, item := range one.Answers {
			if !slices.ContainsFunc(each, func(other Report) bool { return other.contradicts(one, item) }) {
				continue
			}
			one.Void = append(one.Void, item)
			one.Settles = slices.DeleteFunc(one.Settles, func(s string) bool { return s == item })
		}
		if one.Void != nil {
			one.Message = wording.Join(one.Message, wording.SaidTwoAnswers)
		}
	}
}

// contradicts reports whether a line of the same text is another answer to an item that a
// right line answers. What is concluded from a sum is no other sum.
func (other *Report) contradicts(right *Report, item string) bool {
	isSum := other.Stage == XSum || other.Stage == YSum
	return other.Verdict == Wrong && other.Stage == right.Stage && slices.Contains(other.Answers, item) &&
		!(isSum && other.Concludes && other.From > right.From)
}

// answers lists the items that the line, which was read, is an answer to, right or wrong.
func (m *marking) answers(report *Report) []string {
	switch {
	case report.Verdict == Unread || report.Code == TrueNotAsked:
		return nil
	case m.stage == Components && report.Item != "":
		return []string{report.Item}
	case m.stage != Solve:
		return []string{m.item}
	}
	var names []string
	add := func(name string) {
		for _, one := range m.working().settled(name) {
			if !slices.Contains(names, one) {
				names = append(names, one)
			}
		}
	}
	sides := m.line.Sides
	if len(sides) == 1 && m.item != "" {
		add(m.item)
	}
	for i := 1; i < len(sides); i++ {
		if name, _ := m.working().statement(sides[i-1], sides[i]); name != "" {
			add(name)
		}
		if name := m.working().formulaFor(sides[i-1], sides[i]); name != "" {
			add(name)
		}
	}
	if last := sides[len(sides)-1]; len(sides) > 2 && sides[0].Op == expr.Name && expr.IsQuantity(last) {
		add(sides[0].Name)
	}
	return names
}

// Taken returns the item that a line is taken for: the component that it names, else the
// answer's own.
func (r *Reference) Taken(a Answer) string {
	if a.Stage != Components {
		return a.Item
	}
	reading, err := r.solved.LettersFor(a.Item).Read(a.Text)
	if err != nil {
		return a.Item
	}
	m := r.marking(a.Stage, a.Item, reading.Lines[0])
	if c, _ := m.asked(); c != nil {
		return c.Name
	}
	return a.Item
}

// wouldAnswer lists what a line that could not be read was to answer, as far as its
// beginning tells.
func (r *Reference) wouldAnswer(a Answer) []string {
	if a.Stage != Solve {
		return []string{a.Item}
	}
	if left, _, found := strings.Cut(a.Text, "="); found {
		if name, ok := r.LetterOf(left, a.Item); ok {
			return r.marking(Solve, a.Item, expr.Line{}).working().settled(name)
		}
	}
	if a.Item != "" {
		return []string{a.Item}
	}
	return nil
}
