package checker

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/solved"
)

// A number that is typed for a whole part or force ("130 N", "N = 130 N") is judged as
// an answer is: zeros at its end may be rounded, one figure is coarse, and where no
// mistake of physics explains it, a slip of its digits may.

// widened returns the line with its number taken as rounded to the figures that are not
// zeros at its end; false where nothing changes.
func (m *marking) widened() (*marking, bool) {
	at := slices.IndexFunc(m.line.Sides, expr.IsQuantity)
	if at < 0 || len(m.line.Sides) > 2 {
		return m, false
	}
	for i, side := range m.line.Sides {
		if i != at && side.Op != expr.Name {
			return m, false
		}
	}
	number := m.line.Sides[at]
	if number.Op == expr.Neg {
		number = number.Args[0]
	}
	// No zeros at the end: the number says how far it was rounded.
	if number.Num.Wide <= number.Num.Half {
		return m, false
	}
	wide := *number
	wide.Num.Half = wide.Num.Wide
	c := *m
	c.line.Sides = slices.Clone(m.line.Sides)
	c.line.Sides[at] = &wide
	if m.line.Sides[at].Op == expr.Neg {
		c.line.Sides[at] = &expr.Node{Op: expr.Neg, Args: []*expr.Node{&wide}, Pos: number.Pos, End: number.End}
	}
	return &c, true
}

// digitsOfPart says what is wrong with the digits of a number that stands for a component: there
// are too few, or a slip explains it.
func (j values) digitsOfPart(side *expr.Node, c *solved.Component) (code Code, coarse, found bool) {
	if !expr.IsQuantity(side) {
		return "", false, false
	}
	v := target{name: c.Name, value: math.Abs(c.Term.Value(j.m.solved.Values)), unit: j.m.solved.Own.Inner(j.m.solved.Unit(c.Force.Name)), force: c.Force}
	a := j.readValue(v, side)
	a.value = math.Abs(a.value)
	if a.unitIsOther {
		return "", false, false
	}
	if a.number.Coarse(a.inUnit(v)) {
		return "", true, false
	}
	target := j.m.ref.mistakes.Target(c.Force.Name)
	target.Value = v.value
	f, ok := j.m.ref.mistakes.Digits(target, a.value)
	return f.Code, false, ok
}
