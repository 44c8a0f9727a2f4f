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
	if f, ok := s.fromLine(e); ok {
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
	others := slices.DeleteFunc(slices.Clone(s.oneMistake()), func(one system) bool { return one.at == at })
	if f, ok := cheapest(s.fromSystems(e, others)); ok {
		return f // what follows from the other sums was put into this one
	}
	return s.named(Unexplained)
}

// foreignAngle finds an angle that is none of the problem's. With it, nothing else can be told.
func (s *Search) foreignAngle(e *trial.Equation) (Finding, bool) {
	force, ok := s.p.Foreign(e)
	switch {
	case !ok:
		return Finding{}, false
	case force == "":
		return s.named(OtherAngle), true
	}
	return s.named(OtherAngle, force), true
}

// changeOf finds the change of a sum, or the two changes, after which the equation would be
// right.
func (s *Search) changeOf(e *trial.Equation, at solved.Place, tied string) (Finding, bool) {
	found := s.matching(e, s.one(at), tied)
	// A number that stands for nothing known can be met by chance once there are two changes to
	// choose; and no pair is cheaper than a single change that is seen in the line.
	if !e.Stray && !isPlain(found) {
		found = append(found, s.pairs(e, at, tied)...)
	}
	return cheapest(found)
}

// isPlain reports whether one of the changes has terms that are seen in the line.
func isPlain(found []Change) bool {
	return slices.ContainsFunc(found, func(c Change) bool { return c.Cost < costOfApart })
}

// matching keeps the changes after which the equation would be right, and adds to their cost
// how far the line's terms are from theirs.
func (s *Search) matching(e *trial.Equation, changes []Change, tied string) []Change {
	var found []Change
	for _, c := range changes {
		if c.Row.shows(e.Form, len(c.About)) && s.p.Matches(e, c.Sum, tied, trial.MistakeShare) {
			found = s.weighed(found, e, c, tied)
		}
	}
	return found
}

// weighed appends a change with what it costs more, the less the line's terms are like its own.
func (s *Search) weighed(found []Change, e *trial.Equation, c Change, tied string) []Change {
	if c.second != nil && c.Row.Absent && len(c.About) == 1 && (e.Sides[0].Has(c.About[0]) || e.Sides[1].Has(c.About[0])) {
		c.Row, c.About = c.second.Row, c.second.About // what the line speaks of is not missing
	}
	if len(c.About) > 1 {
		c.Cost += costOfForce * float64(len(c.About)-1)
	}
	if !s.p.InLetters(e, c.Sum, e.Fit()) {
		c.Cost += costOfTwin
	}
	switch s.p.Likeness(e, c.Sum, tied, e.Fit()) {
	case trial.Turned:
		c.Cost += costOfTurned
	case trial.Apart:
		if c.seen {
			return found
		}
		c.Cost += costOfApart
	}
	return append(found, s.spoken(e, c))
}

// pairs tries two changes; the second is never a cheaper row than the first, so that no pair is
// tried twice.
func (s *Search) pairs(e *trial.Equation, at solved.Place, tied string) []Change {
	var found []Change
	for _, first := range s.one(at) {
		if first.Row.Alone {
			continue
		}
		scratch := slices.Clone(first.Sum)
		for _, row := range s.rows {
			if row.Alone || row.Cost < first.Row.Cost || !row.shows(e.Form, 1) {
				continue
			}
			s.eachTerm(at, first.Sum, scratch, row, func(second Change) {
				if s.p.Matches(e, second.Sum, tied, trial.MistakeShare) {
					second.Sum = slices.Clone(second.Sum)
					found = s.weighed(found, e, both(first, second), tied)
				}
			})
		}
	}
	return found
}

// fromLine asks each row whether the equation shows its mistake by itself.
func (s *Search) fromLine(e *trial.Equation) (Finding, bool) {
	for _, row := range s.rows {
		if row.Line == nil {
			continue
		}
		if about, ok := row.Line(s.p, e); ok {
			return finding(row, about...), true
		}
	}
	return Finding{}, false
}

// Terms compares the line's terms one by one with the sum's, and with those of mistakes that
// happen to be zero just where the sum is (T1 sin θ = T2 sin θ). A finding without a code says
// that the terms are the sum's own.
func (s *Search) Terms(e *trial.Equation, at solved.Place, tied string) (Finding, bool) {
	w := s.p.Solved.SumOf(at.Body, at.Axis)
	if s.p.SameTerms(e, w, tied, trial.RoundedShare) {
		return Finding{}, true
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
