package checker

import (
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
	"example.org/standstill/checker/trial"
)

// sums judges lines of a sum along one axis.
type sums struct{ m *marking }

func (m *marking) sums() sums { return sums{m} }

// What a link "left = right" of a line is, seen from the sum asked for.
type linkKind uint8

const (
	linkWrong  linkKind = iota
	linkAsked           // it is the sum
	linkAlways          // it is true by algebra alone
	linkTrue            // it is true at rest, but not the sum
	linkOther           // it is the other axis's sum
)

// sumPlace finds the body and axis that a sum is asked for.
func (j sums) sumPlace() solved.Place {
	at := solved.Place{Axis: statics.X}
	if j.m.stage == YSum {
		at.Axis = statics.Y
	}
	for b := range j.m.solved.Bodies {
		if j.m.solved.Bodies[b].Name == j.m.item {
			at.Body = b
		}
	}
	return at
}

// markSum judges the line that should be ΣF = 0 along one axis.
func (j sums) markSum() Report {
	report := j.markSumAsTyped()
	if wide, ok := j.m.widened(); ok && report.Verdict != Right {
		if again := wide.sums().markSumAsTyped(); again.Verdict == Right {
			return again
		}
	}
	if report.Verdict == Wrong && j.m.restates() {
		// The sign that an earlier line left out is no mistake, and the line is no sum in any case.
		fresh := *j.m
		fresh.bindings = map[string]bool{}
		if again := fresh.sums().markSumAsTyped(); again.Code == TrueNotAsked {
			return again
		}
	}
	return report
}

// restates reports whether the line says of one component what it is.
func (m *marking) restates() bool {
	sides := m.line.Sides
	if len(sides) != 2 || sides[0].Op != expr.Name {
		return false
	}
	return m.hasComponent(sides[0]) && !m.hasComponent(sides[1])
}

func (j sums) markSumAsTyped() Report {
	at := j.sumPlace()
	signs := j.m.conventions()
	if len(j.m.line.Sides) == 1 {
		return j.markExpression(at, signs)
	}
	asked, always := false, true
	var wrongAxis *trial.Equation
	for i := 1; i < len(j.m.line.Sides); i++ {
		e := j.m.trial.Equation(j.m.line.Sides[i-1], j.m.line.Sides[i], signs)
		kind, f := j.link(e, at)
		switch kind {
		case linkWrong:
			report := j.m.wrong(inChain(j.m.line, j.explainSum(e, at, f), i))
			pointAt(j.m.line, &report, i)
			return report
		case linkAsked:
			asked = true
		case linkOther:
			wrongAxis = e
		}
		always = always && kind == linkAlways
	}
	switch {
	case asked && hasOtherUnit(j.m.solved, j.m.line):
		return j.m.almost(WrongUnit, "")
	case asked:
		return j.m.right()
	case always:
		return j.m.almost(HoldsAlways, "")
	case wrongAxis != nil:
		return j.m.wrong(mistake.Finding{Code: WrongAxis})
	}
	report := j.m.almost(TrueNotAsked, "")
	report.Settles = nil
	return report
}

// link says what an equation is. The finding is set where the equation holds
// where the sum holds, and yet its terms are a mistake's.
func (j sums) link(e *trial.Equation, at solved.Place) (linkKind, *mistake.Finding) {
	if j.hasSpareFactor(e) && j.m.trial.Follows(e, trial.RoundedShare) && j.m.trial.TrueAtRest(e) {
		return linkTrue, nil
	}
	w := j.m.solved.SumOf(at.Body, at.Axis)
	tied := j.m.trial.TiedFor(e)
	// A sum that is zero whatever its letters are, as T − T, holds in every sample; only its
	// terms can be compared.
	if cancels := j.m.trial.Cancels(w, tied[0]); cancels {
		if f, ok := j.m.ref.mistakes.Terms(e, at, tied[0]); ok {
			if f.Code == "" {
				return linkAsked, nil
			}
			return linkWrong, &f
		}
	}
	for _, t := range tied {
		if !j.m.trial.Cancels(w, t) && j.m.trial.Matches(e, w, t, trial.RoundedShare) && j.m.trial.TrueAtRest(e) {
			if f, ok := j.m.ref.mistakes.Terms(e, at, t); ok && f.Code != "" {
				return linkWrong, &f
			}
			return linkAsked, nil
		}
	}
	if j.m.trial.Always(e) {
		return linkAlways, nil
	}
	for _, t := range tied {
		// Behind the sum asked for: where the axes are alike, as at 45°, it is both.
		other := j.m.solved.SumOf(at.Body, at.Axis.Other())
		if !j.m.trial.Cancels(other, t) && j.m.trial.Matches(e, other, t, trial.RoundedShare) {
			return linkOther, nil
		}
	}
	if j.m.trial.Follows(e, trial.RoundedShare) && j.m.trial.TrueAtRest(e) {
		return linkTrue, nil
	}
	return linkWrong, nil
}

// hasSpareFactor reports whether the equation is a product that is zero, of which more than one
// factor may be: one of them may be the sum, but nothing says which is zero.
func (j sums) hasSpareFactor(e *trial.Equation) bool {
	product := e.Sides[0]
	if expr.IsZero(product) {
		product = e.Sides[1]
	} else if !expr.IsZero(e.Sides[1]) {
		return false
	}
	var above, below []*expr.Node
	expr.Factors(product, &above, &below)
	may := 0
	for _, f := range above {
		if (f.Op == expr.Add || f.Op == expr.Sub) && j.m.solved.Open(f) {
			may++
		}
	}
	return may > 1
}

// markExpression judges a sum that was not set equal to anything.
func (j sums) markExpression(at solved.Place, signs []solved.Signed) Report {
	e := j.m.trial.Equation(j.m.line.Sides[0], expr.Constant(0), signs)
	kind, f := j.link(e, at)
	switch kind {
	case linkAsked:
		return j.m.almost(NoEquation, "")
	case linkOther:
		return j.m.wrong(mistake.Finding{Code: WrongAxis})
	case linkAlways, linkTrue:
		return j.m.almost(HoldsAlways, "")
	}
	return j.m.wrong(j.explainSum(e, at, f))
}

// isProductOfForces reports whether the line is one product of several forces, as a list of forces
// without signs or commas is read.
func (j sums) isProductOfForces() bool {
	terms := 0
	for _, side := range j.m.line.Sides {
		for _, t := range expr.Addends(side, 1, nil) {
			if expr.IsZero(t.Node) {
				continue
			}
			d, _, known := dimensionOf(j.m.solved, t.Node)
			if terms++; terms > 1 || !known || d != quantity.Force.Times(quantity.Force) && d != quantity.Force.Times(quantity.Force).Times(quantity.Force) {
				return false
			}
		}
	}
	return terms == 1
}

// explainSum finds what is wrong with a sum.
func (j sums) explainSum(e *trial.Equation, at solved.Place, f *mistake.Finding) mistake.Finding {
	if j.m.brief {
		return mistake.Finding{Code: Unexplained}
	}
	if f != nil {
		return *f
	}
	typed := j.m.sentence().measures()
	if !typed.Mixed && typed.Dim == quantity.Force.Times(quantity.Length) || j.isProductOfForces() {
		return mistake.Finding{Code: Unexplained} // energies and squares, which add up to no force
	}
	found := j.m.ref.mistakes.Sum(e, at)
	if found.Code.IsOpen() && typed.Mixed && typed.Mass {
		return mistake.Finding{Code: MassForWeight}
	}
	return found
}
