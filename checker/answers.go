package checker

import (
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
)

// answers lists the items that the line, which was read, is an answer to, right or wrong.
func (m *marking) answers(report *Report) []string {
	switch {
	case report.Verdict == Unread || report.Code.IsElsewhere():
		return nil
	case m.stage == Components && report.Item != "":
		return []string{report.Item}
	case m.stage != Solve:
		return []string{m.item}
	}
	var names []string
	add := func(name string) {
		for _, one := range settled(m.solved, name) {
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
		if name, _ := statement(m.solved, sides[i-1], sides[i]); name != "" {
			add(name)
		}
		if name := formulaFor(m.trial, sides[i-1], sides[i]); name != "" {
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
	if c, _ := m.componentAsked(); c != nil {
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
	// The left side of a line can often be read although the rest cannot.
	if left, _, found := strings.Cut(a.Text, "="); found {
		if name, ok := r.LetterOf(left, a.Item); ok {
			return settled(r.solved, name)
		}
	}
	if a.Item != "" {
		return []string{a.Item}
	}
	return nil
}
