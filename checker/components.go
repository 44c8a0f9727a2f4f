package checker

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/trial"
	"example.org/standstill/checker/wording"
)

// markComponent judges "T1 cos α" for T1x. Every side but the component's own
// name must be the component, as a size or with its sign.
func (m *marking) markComponent() Report {
	report := m.markComponentAsTyped()
	if wide, ok := m.widened(); ok && report.Verdict == Wrong {
		if again := wide.markComponentAsTyped(); again.Verdict == Right {
			return again
		}
	}
	return report
}

func (m *marking) markComponentAsTyped() Report {
	c, value := m.componentAsked()
	if c == nil {
		return Report{Verdict: Unread, Code: Unreadable, Message: wording.SaidWhichComponent}
	}
	m.item = c.Name
	if value == nil || value.Op == expr.Name && value.Name == c.Name {
		return m.almost(HoldsAlways, c.Force.Name)
	}
	for _, side := range m.line.Sides {
		if side.Op == expr.Name && side.Name == c.Name && len(m.line.Sides) > 1 {
			continue
		}
		if m.isComponent(side, c) {
			continue
		}
		f := m.explainComponent(side, c)
		code, coarse, ofDigits := m.values().digitsOfPart(side, c)
		switch {
		case f.Code.IsOpen() && coarse:
			return m.almost(Coarse, c.Force.Name)
		case f.Code.IsOpen() && ofDigits:
			f.Code, f.Row = code, nil
		}
		return m.wrong(f)
	}
	// Only after the value is right: a wrong value is told first, and zero is zero in any unit.
	if dim, typed, known := dimensionOf(m.solved, value); known && typed && dim != quantity.Force && !expr.IsZero(value) {
		return m.almost(WrongUnit, c.Force.Name)
	}
	return m.right()
}

func (m *marking) isComponent(side *expr.Node, c *solved.Component) bool {
	e := m.trial.ComponentIs(side, c)
	for _, vary := range e.Vary {
		if m.trial.SameTerm(e, solved.Sum{c.Term}, vary, m.trial.SignsOf(&c.Term), trial.RoundedShare) {
			return true
		}
	}
	// A size that was found already: put in as a number, which the first sample leaves as
	// it is at rest, or in letters, as w/2 is.
	return m.solved.Fixed(side) && slices.ContainsFunc(e.Vary, func(vary solved.GivenSet) bool {
		return m.trial.IsTerm(e, solved.Sum{c.Term}, m.trial.Samples.Free(vary, "", 0), m.trial.SignsOf(&c.Term), trial.RoundedShare) || m.isTermAtRest(e, c, vary)
	})
}

func (m *marking) isTermAtRest(e *trial.Equation, c *solved.Component, vary solved.GivenSet) bool {
	for k := range trial.Tries {
		if !m.trial.IsTerm(e, solved.Sum{c.Term}, m.trial.Samples.AtRest(vary, k), m.trial.SignsOf(&c.Term), trial.RoundedShare) {
			return false
		}
	}
	return true
}

// explainComponent finds the mistake that gives what was typed for the component.
func (m *marking) explainComponent(side *expr.Node, c *solved.Component) mistake.Finding {
	if m.brief {
		return mistake.Finding{Code: Unexplained}
	}
	// A component that is zero has no triangle that could have gone wrong.
	if c.Term.Scale != 0 {
		return m.ref.mistakes.Component(m.trial.ComponentIs(side, c), c)
	}
	code := Unexplained
	if onlyAbout(m.solved, side, c.Force.Name) {
		code = ExtraForce
	}
	return about(code, c.Force.Name)
}

// onlyAbout reports whether a tree speaks of that force alone.
func onlyAbout(s *solved.System, n *expr.Node, force string) bool {
	for _, name := range n.Names() {
		if s.Owner(name) == force {
			return true
		}
		if v, ok := s.Model.Variable(force); ok && v.Size != nil && v.Size.Has(name) {
			return true
		}
	}
	return len(n.Names()) == 0 && math.Abs(expr.ValueOf(n)) > 0
}
