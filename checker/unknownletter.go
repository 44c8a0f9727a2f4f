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

// unknownLetters judges lines with a letter that the problem does not have.
type unknownLetters struct{ m *marking }

func (m *marking) unknownLetters() unknownLetters { return unknownLetters{m} }

// A letter that the problem does not have may still be meant: one T for tensions
// that are not equal, an N on a ring that touches nothing. Only if no such
// meaning fits is it a letter that has to be asked about.

func (s unknownLetters) markUnknownLetter(n *expr.Node) Report {
	if own, ok := definition(s.m.solved, s.m.line); ok {
		return s.m.markCoined(own)
	}
	unknown := Report{Verdict: Unread, Code: UnknownName, Item: s.m.item, Pos: n.Pos, End: n.End, Message: wording.SaidUnknownName(s.m.solved, n.Name)}
	// With two unknown letters, any meaning of the one fits with some meaning of the other.
	if s.others(n.Name) {
		return unknown
	}
	if n.Name == "a" && s.with(n.Name, expr.Constant(0)).unknownLetter() == nil {
		return s.m.wrong(mistake.Finding{Code: Unbalanced}) // … = m a, of a body that is at rest
	}
	if f := s.frictionLeftOpen(); f != nil && strings.HasPrefix(n.Name, "mu") {
		return s.m.wrong(s.m.ref.mistakes.NoCoefficient(f.Name))
	}
	kind, usual := solved.KindOfLetter(n.Name)
	if !usual {
		return unknown
	}
	if kind == statics.Tension {
		if tensions := s.tensionsHere(); len(tensions) > 1 && s.fitsAsEqual(n.Name, tensions) {
			return s.m.wrong(mistake.Finding{Code: EqualTensions, All: tensions})
		}
		return unknown
	}
	if (s.m.stage == XSum || s.m.stage == YSum) && s.fitsWithout(n.Name) {
		return s.m.wrong(mistake.Finding{Code: ExtraForce, All: []string{n.Name}})
	}
	return unknown
}

// frictionLeftOpen returns a friction in question whose size the problem leaves to the
// equations, nil for none.
func (s unknownLetters) frictionLeftOpen() *statics.Force {
	for b := range s.m.solved.Bodies {
		if body := &s.m.solved.Bodies[b]; s.m.stage == Solve || len(s.m.solved.Bodies) == 1 || strings.HasPrefix(s.m.item, body.Name) {
			if f := solved.OnlyOf(body, statics.Friction); f != nil && f.Size == nil {
				return f
			}
		}
	}
	return nil
}

// others reports whether the line has another unknown name.
func (s unknownLetters) others(name string) bool {
	other := false
	for _, side := range s.m.line.Sides {
		side.Walk(func(n *expr.Node) { other = other || n.Op == expr.Name && n.Unknown && n.Name != name })
	}
	return other
}

// tensionsHere lists the strings on the body in question, or on any.
func (s unknownLetters) tensionsHere() []string {
	var names []string
	for b := range s.m.solved.Bodies {
		if body := &s.m.solved.Bodies[b]; s.m.stage == Solve || body.Name == s.m.item || len(s.m.solved.Bodies) == 1 {
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
func (s unknownLetters) with(name string, by *expr.Node) *marking {
	c := *s.m
	c.line.Sides = nil
	for _, side := range s.m.line.Sides {
		c.line.Sides = append(c.line.Sides, expr.Substitute(side, name, by))
	}
	return &c
}

// fitsAsEqual reports whether the line would be right if the tensions were equal
// and this letter stood for all of them.
func (s unknownLetters) fitsAsEqual(name string, tensions []string) bool {
	// A line of working has no one sum to hold the letter against.
	if s.m.stage == Solve {
		return true
	}
	if s.m.stage == Components {
		c, ok := s.m.solved.Component(s.m.item)
		return ok && s.with(name, expr.Letter(c.Force.Name)).markComponent().Verdict == Right
	}
	system := *s.m.solved.Model.System
	system.Equal = append(slices.Clone(system.Equal), statics.Equal{Letter: name, Names: tensions})
	model, err := statics.Compile(&system)
	if err != nil {
		return false
	}
	equal := newReference(model, s.m.solved.Values[:len(s.m.solved.Model.Variables)], s.m.solved.Own, &Kin{})
	// Only what is wrong with the sum itself: the other equations of this model are not the student's.
	equal.mistakes.Near = true
	c := s.with(name, expr.Letter(name))
	c.ref, c.solved, c.trial = equal, equal.solved, equal.trial
	report := c.sums().markSum()
	return report.Verdict != Wrong || !report.Code.IsOpen()
}

// fitsWithout reports whether the line would be right without the force.
func (s unknownLetters) fitsWithout(name string) bool {
	report := s.with(name, expr.Constant(0)).sums().markSum()
	return report.Verdict == Right
}
