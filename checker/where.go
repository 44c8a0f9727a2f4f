package checker

import (
	"slices"

	"example.org/standstill/checker/trial"

	"example.org/standstill/checker/expr"
)

// where finds the part of the line that a finding is about: the term with the
// force or angle concerned, else the last side. Positions are rune offsets into
// the typed text.
func (m *marking) where(f finding) (pos, end int) {
	if len(m.line.Sides) == 0 {
		return 0, 0
	}
	for _, side := range m.line.Sides {
		if c, ok := m.Component(side.Name); ok && side.Op == expr.Name && m.stage == Components && c.Name == m.item {
			continue
		}
		for _, term := range trial.Addends(side, 1, nil) {
			if f.about != "" && m.speaksOf(term.Node, f.about) {
				return term.Node.Pos, term.Node.End
			}
		}
	}
	last := m.line.Sides[len(m.line.Sides)-1]
	return last.Pos, last.End
}

// speaksOf reports whether a letter of the term belongs to what a finding is
// about: the force's own letter, its component, or a letter of its size.
func (m *marking) speaksOf(term *expr.Node, about string) bool {
	return slices.ContainsFunc(term.Names(), func(name string) bool {
		if c, ok := m.Component(name); ok {
			return c.Force.Name == about
		}
		f, ok := m.Force(about)
		return name == about || m.Owner(name) == about || ok && f.Size != nil && f.Size.Has(name)
	})
}
