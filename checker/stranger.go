package checker

import (
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
	"example.org/standstill/checker/wording"
)

// A letter that the problem does not have may still be meant: one T for tensions
// that are not equal, an N on a ring that touches nothing. Only if no such
// meaning fits is it a letter that has to be asked about.

// stranger returns the first unknown name of the line.
func (m *marking) stranger() *expr.Node {
	var first *expr.Node
	for _, side := range m.line.Sides {
		side.Walk(func(n *expr.Node) {
			if n.Op == expr.Name && n.Unknown && first == nil {
				first = n
			}
		})
	}
	return first
}

func (m *marking) markStranger(n *expr.Node) Report {
	if own, ok := m.ref.definition(m.line); ok {
		return m.markCoined(own)
	}
	unknown := Report{Verdict: Unread, Code: UnknownName, Item: m.item, Pos: n.Pos, End: n.End, Message: wording.SaidUnknownName(m.solved, n.Name)}
	if m.others(n.Name) {
		return unknown
	}
	if n.Name == "a" && m.with(n.Name, expr.Constant(0)).stranger() == nil {
		return m.wrong(mistake.Finding{Code: Unbalanced}) // … = m a, of a body that is at rest
	}
	if f := m.frictionLeftOpen(); f != nil && strings.HasPrefix(n.Name, "mu") {
		report := m.wrong(about(LimitAssumed, f.Name))
		report.Message = wording.SaidNoCoefficient
		return report
	}
	kind, usual := solved.KindOfLetter(n.Name)
	if !usual {
		return unknown
	}
	if kind == statics.Tension {
		if tensions := m.tensionsHere(); len(tensions) > 1 && m.fitsAsEqual(n.Name, tensions) {
			return m.wrong(mistake.Finding{Code: EqualTensions, All: tensions})
		}
		return unknown
	}
	if (m.stage == XSum || m.stage == YSum) && m.fitsWithout(n.Name) {
		return m.wrong(mistake.Finding{Code: ExtraForce, All: []string{n.Name}})
	}
	return unknown
}

// frictionLeftOpen returns a friction in question whose size the problem leaves to the
// equations, nil for none.
func (m *marking) frictionLeftOpen() *statics.Force {
	for b := range m.solved.Bodies {
		if body := &m.solved.Bodies[b]; m.stage == Solve || len(m.solved.Bodies) == 1 || strings.HasPrefix(m.item, body.Name) {
			if f := solved.OnlyOf(body, statics.Friction); f != nil && f.Size == nil {
				return f
			}
		}
	}
	return nil
}

// others reports whether the line has another unknown name.
func (m *marking) others(name string) bool {
	other := false
	for _, side := range m.line.Sides {
		side.Walk(func(n *expr.Node) { other = other || n.Op == expr.Name && n.Unknown && n.Name != name })
	}
	return other
}

// tensionsHere lists the strings on the body in question, or on any.
func (m *marking) tensionsHere() []string {
	var names []string
	for b := range m.solved.Bodies {
		if body := &m.solved.Bodies[b]; m.stage == Solve || body.Name == m.item || len(m.solved.Bodies) == 1 {
			for i := range body.Forces {
				if f := &body.Forces[i]; f.Kind == statics.Tension && f.Size == nil && !slices.Contains(names, f.Name) {
					names = append(names, f.Name)
				}
			}
		}
	}
	return names
}

// with returns the line with an unknown name replaced.
func (m *marking) with(name string, by *expr.Node) *marking {
	c := *m
	c.line.Sides = nil
	for _, side := range m.line.Sides {
		c.line.Sides = append(c.line.Sides, expr.Substitute(side, name, by))
	}
	return &c
}

// fitsAsEqual reports whether the line would be right if the tensions were equal
// and this letter stood for all of them.
func (m *marking) fitsAsEqual(name string, tensions []string) bool {
	if m.stage == Solve {
		return true
	}
	if m.stage == Components {
		c, ok := m.solved.Component(m.item)
		return ok && m.with(name, expr.Letter(c.Force.Name)).markComponent().Verdict == Right
	}
	system := *m.solved.System
	system.Equal = append(slices.Clone(system.Equal), statics.Equal{Letter: name, Names: tensions})
	model, err := statics.Compile(&system)
	if err != nil {
		return false
	}
	equal := newReference(model, m.solved.Values[:len(m.solved.Variables)], m.solved.Own)
	c := m.with(name, expr.Letter(name))
	c.ref, c.solved, c.trial = equal, equal.solved, equal.trial
	report := c.markSum()
	return report.Verdict != Wrong || report.Code != Unexplained
}

// fitsWithout reports whether the line would be right without the force.
func (m *marking) fitsWithout(name string) bool {
	report := m.with(name, expr.Constant(0)).markSum()
	return report.Verdict == Right
}
