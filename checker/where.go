package checker

import (
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
)

// where finds the part of the line that a finding is about: the term with the
// force or angle concerned, else the last side. Positions are rune offsets into
// the typed text.
func (m *marking) where(f mistake.Finding) (pos, end int) {
	if len(m.line.Sides) == 0 {
		return 0, 0
	}
	for _, side := range m.line.Sides {
		if c, ok := m.solved.Component(side.Name); ok && side.Op == expr.Name && m.stage == Components && c.Name == m.item {
			continue
		}
		for _, term := range expr.Addends(side, 1, nil) {
			if f.About != "" && m.solved.SpeaksOf(term.Node, f.About) {
				return term.Node.Pos, term.Node.End
			}
		}
	}
	last := m.line.Sides[len(m.line.Sides)-1]
	return last.Pos, last.End
}
