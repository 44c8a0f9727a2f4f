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
	// Each letter by itself first: taken as one, T1 in the place of T2 is no mistake.
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
		// The other axis with a mistake in it: the axis is told, the mistake comes up when that
		// sum is asked for.
		if len(s.matching(e, s.one(across), tied)) > 0 {
			return s.named(WrongAxis)
		}
	}
	if f, ok := s.misplaced(e, at); ok {
		return f
	}
	if s.Near {
		return s.named(Unexplained)
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

// withoutCommonNumbers returns the difference of the two sides without one of the numbers that every
// term of the line is multiplied or divided by, for each of these numbers.
func withoutCommonNumbers(e *trial.Equation) []*expr.Node {
	terms := slices.DeleteFunc(expr.Addends(expr.Join(expr.Sub, e.Sides[0], e.Sides[1]), 1, nil),
		func(t expr.Addend) bool { return expr.IsZero(t.Node) })
	if len(terms) == 0 {
		return nil
	}
	var all []*expr.Node
	var above, below []*expr.Node
	// A number that all terms share is also in the first.
	expr.Factors(terms[0].Node, &above, &below)
	for i, number := range append(above, below...) {
		if number.Op != expr.Number || number.Unit != "" {
			continue
		}
		var difference *expr.Node
		for _, t := range terms {
			rest := withoutFactor(t.Node, number.Num.Text, i >= len(above))
			if rest == nil {
				difference = nil
				break
			}
			difference = added(difference, rest, t.Sign)
		}
		if difference != nil {
			all = append(all, difference)
		}
	}
	return all
}

// withoutFactor takes a number off a product, from what divides it or from what is multiplied; nil
// where it is not there, and where a factor has a sign, which taking apart would lose.
func withoutFactor(n *expr.Node, number string, divides bool) *expr.Node {
	if hasSignedFactor(n) {
		return nil
	}
	var above, below []*expr.Node
	expr.Factors(n, &above, &below)
	from := &above
	if divides {
		from = &below
	}
	at := slices.IndexFunc(*from, func(f *expr.Node) bool { return f.Op == expr.Number && f.Unit == "" && f.Num.Text == number })
	if at < 0 {
		return nil
	}
	*from = slices.Delete(slices.Clone(*from), at, at+1)
	if len(above) == 0 {
		above = []*expr.Node{expr.Constant(1)}
	}
	product := above[0]
	for _, f := range above[1:] {
		product = expr.Join(expr.Mul, product, f)
	}
	for _, f := range below {
		product = expr.Join(expr.Div, product, f)
	}
	return product
}

func hasSignedFactor(n *expr.Node) bool {
	switch n.Op {
	case expr.Neg:
		return true
	case expr.Mul, expr.Div:
		return hasSignedFactor(n.Args[0]) || hasSignedFactor(n.Args[1])
	}
	return false
}

// added adds a term with its sign to a sum, which may be nil.
func added(sum, term *expr.Node, sign float64) *expr.Node {
	switch {
	case sum == nil && sign < 0:
		return expr.Minus(term)
	case sum == nil:
		return term
	case sign < 0:
		return expr.Join(expr.Sub, sum, term)
	}
	return expr.Join(expr.Add, sum, term)
}

// Terms compares the line's terms one by one with the sum's, and with those of mistakes that
// happen to be zero just where the sum is (T1 sin θ = T2 sin θ). A finding without a code says
// that the terms are the sum's own.
func (s *Search) Terms(e *trial.Equation, at solved.Place, tied string) (Finding, bool) {
	w := s.p.Solved.SumOf(at.Body, at.Axis)
	if s.p.SameTerms(e, w, tied, trial.RoundedShare) {
		return Finding{}, true
	}
	for _, plain := range withoutCommonNumbers(e) {
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
			// Nobody is out by a power of ten in an angle.
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
