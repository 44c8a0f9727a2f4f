package mistake

import (
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/trial"
)

// Sum explains why an equation is not the sum asked for.
func (s *Search) Sum(e *trial.Equation, at solved.Place) Finding {
	if f, ok := s.foreignAngle(e); ok {
		return f
	}
	for _, tied := range s.p.TiedFor(e) {
		if f, ok := s.changeOf(e, at, tied); ok {
			return f
		}
	}
	if f, ok := s.fromLine(e, false); ok {
		return f
	}
	across := solved.Place{Body: at.Body, Axis: at.Axis.Other()}
	for _, tied := range s.p.TiedFor(e) {
		if !e.Exact && s.p.Matches(e, s.p.Solved.SumOf(at.Body, at.Axis), tied, trial.SlipShare) {
			return s.named(Slip)
		}
		if len(s.matching(e, s.one(across), tied)) > 0 {
			return s.named(WrongAxis)
		}
	}
	if f, ok := s.misplaced(e, at); ok {
		return f
	}
	if f, ok := cheapest(s.fromOtherSums(e, at)); ok {
		return f
	}
	return s.named(Unexplained)
}

// changeOf finds the change of a sum, or the two changes, after which the equation would be
// right.
func (s *Search) changeOf(e *trial.Equation, at solved.Place, tied string) (Finding, bool) {
	found := s.matching(e, s.one(at), tied)
	// A number that stands for nothing known can be met by chance once there are two changes to
	// choose; and no pair is cheaper than a single change that is seen in the line.
	if !e.Stray && !isPlain(found) {
		if pairs := s.pairs(e, at, tied); len(pairs) > 0 {
			found = append(found, pairs...)
			if s.hasReplaced(e, at) {
				// One mistake in what was put in is likelier than two in this sum.
				found = append(found, s.fromOtherSums(e, at)...)
			}
		}
	}
	return cheapest(found)
}

// hasReplaced reports whether the line has something else in the place of a force that the size of
// another depends on: the N of μN.
func (s *Search) hasReplaced(e *trial.Equation, at solved.Place) bool {
	speaks := func(name string) bool {
		return s.p.Solved.SpeaksOf(e.Sides[0], name) || s.p.Solved.SpeaksOf(e.Sides[1], name)
	}
	for _, t := range s.p.Solved.SumOf(at.Body, at.Axis) {
		size := s.p.Solved.SizeTree(t)
		if size == nil || t.Scale == 0 || e.Sides[0].Has(t.Force.Name) || e.Sides[1].Has(t.Force.Name) {
			continue
		}
		for _, name := range size.Names() {
			if _, isForce := s.p.Solved.Bodies[at.Body].Force(name); isForce && !speaks(name) {
				return true
			}
		}
	}
	return false
}

// isPlain reports whether one of the changes has terms that are seen in the line.
func isPlain(found []Change) bool {
	return slices.ContainsFunc(found, func(c Change) bool { return c.Cost < costOfApart })
}

// withoutCommonNumber returns the difference of the two sides without the number by which every term
// of the line is divided, nil where there is none.
func withoutCommonNumber(e *trial.Equation) *expr.Node {
	var difference *expr.Node
	common := ""
	for _, t := range expr.Addends(expr.Join(expr.Sub, e.Sides[0], e.Sides[1]), 1, nil) {
		if expr.IsZero(t.Node) {
			continue
		}
		n := t.Node
		if n.Op != expr.Div || n.Args[1].Op != expr.Number || n.Args[1].Unit != "" || common != "" && n.Args[1].Num.Text != common {
			return nil
		}
		common, n = n.Args[1].Num.Text, n.Args[0]
		switch {
		case difference == nil && t.Sign < 0:
			difference = expr.Minus(n)
		case difference == nil:
			difference = n
		case t.Sign < 0:
			difference = expr.Join(expr.Sub, difference, n)
		default:
			difference = expr.Join(expr.Add, difference, n)
		}
	}
	return difference
}

// Terms compares the line's terms one by one with the sum's, and with those of mistakes that
// happen to be zero just where the sum is (T1 sin θ = T2 sin θ). A finding without a code says
// that the terms are the sum's own.
func (s *Search) Terms(e *trial.Equation, at solved.Place, tied string) (Finding, bool) {
	w := s.p.Solved.SumOf(at.Body, at.Axis)
	if s.p.SameTerms(e, w, tied, trial.RoundedShare) {
		return Finding{}, true
	}
	if plain := withoutCommonNumber(e); plain != nil {
		if scaled := s.p.Equation(plain, expr.Constant(0), e.Signs); s.p.SameTerms(scaled, w, tied, trial.RoundedShare) {
			return Finding{}, true
		}
	}
	if bare, ok := trial.Divided(w); ok && !s.p.Always(e) && s.p.SameTerms(e, bare, tied, trial.RoundedShare) {
		return Finding{}, true
	}
	env := s.p.Samples.Free(^solved.GivenSet(0), tied, 0)
	s.p.Samples.Balance(w, env, tied != "", ^solved.GivenSet(0))
	var found []Change
	for _, c := range s.one(at) {
		if c.Row.SameZero && trial.IsZeroIn(c.Sum, env) && s.p.SameTerms(e, c.Sum, tied, e.Fit()) {
			found = s.weighed(found, e, c, tied)
		}
	}
	return cheapest(found)
}

// mostPower is the largest power of ten that is tried on a number of a sum.
const mostPower = 3

// misplaced finds the number of a sum that has the right digits and the wrong power of ten, and
// the force whose size it would be. Only numbers without letters beside them are tried.
func (s *Search) misplaced(e *trial.Equation, at solved.Place) (Finding, bool) {
	var typed []*expr.Node
	for _, side := range e.Sides {
		for _, t := range expr.Addends(side, 1, nil) {
			if len(t.Node.Names()) == 0 {
				typed = append(typed, t.Node)
			}
		}
	}
	for _, l := range s.p.Numbers.Literals(typed) {
		for power := -mostPower; power <= mostPower; power++ {
			if power == 0 || l.Node.Unit == "deg" {
				continue
			}
			mended, moved := s.p.Shifted(e, l.Node, power)
			for _, tied := range s.p.TiedFor(mended) {
				if w := s.p.Solved.SumOf(at.Body, at.Axis); s.p.Matches(mended, w, tied, trial.RoundedShare) && s.p.TrueAtRest(mended) {
					return s.forceOfSize(at, moved.Num.Value, moved.Num.Half), true
				}
			}
		}
	}
	return Finding{}, false
}

// forceOfSize blames the power of ten on the given force of that size, if there is one.
func (s *Search) forceOfSize(at solved.Place, value, half float64) Finding {
	for _, t := range s.p.Solved.SumOf(at.Body, at.Axis) {
		if off := s.p.Solved.Values[t.Slot] - value; t.Force.Size != nil && off <= half && -off <= half {
			return s.named(PowerOfTen, t.Force.Name)
		}
	}
	return s.named(PowerOfTen)
}
