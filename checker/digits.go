package checker

import (
	"math"
	"slices"

	"example.org/standstill/checker/trial"

	"example.org/standstill/checker/expr"
)

// A number that is typed for a whole part or force ("130 N", "N = 130 N") is judged as
// an answer is: zeros at its end may be rounded, one figure is coarse, and where no
// mistake of physics explains it, a slip of its digits may.

// widened returns the line with its number taken as rounded to the figures that are not
// zeros at its end; false where nothing changes.
func (m *marking) widened() (*marking, bool) {
	at := slices.IndexFunc(m.line.Sides, isQuantity)
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

// digitsOfPart says what is wrong with a number that stands for a component.
func (m *marking) digitsOfPart(side *expr.Node, c *trial.Component) (code Code, found bool) {
	if !isQuantity(side) {
		return "", false
	}
	v := asked{name: c.Name, value: math.Abs(c.Term.Value(m.Solution)), unit: m.Own.Inner(m.Unit(c.Force.Name)), force: c.Force}
	a := m.readValue(v, side)
	a.value = math.Abs(a.value)
	if a.unitIsOther {
		return "", false
	}
	if a.number.Coarse(a.inUnit(v)) {
		return Coarse, true
	}
	f := m.explainDigits(v, a)
	return f.code, f.code != Unexplained
}

// mostPower is the largest power of ten that is tried on a number of a sum.
const mostPower = 3

// misplaced finds the number of a sum that has the right digits and the wrong power of
// ten, and the force whose size it would be. Only numbers without letters beside them
// are tried.
func (m *marking) misplaced(e *trial.Equation, at trial.Place) (finding, bool) {
	var numbers []*expr.Node
	for _, side := range e.Sides {
		for _, t := range trial.Addends(side, 1, nil) {
			if len(t.Node.Names()) == 0 {
				numbers = append(numbers, t.Node)
			}
		}
	}
	for _, l := range m.Literals(numbers) {
		for power := -mostPower; power <= mostPower; power++ {
			if power == 0 || l.Node.Unit == "deg" {
				continue
			}
			k := math.Pow10(power)
			moved := *l.Node
			moved.Num.Value, moved.Num.Half, moved.Num.Wide = moved.Num.Value*k, moved.Num.Half*k, moved.Num.Wide*k
			number := func(n *expr.Node) bool { return n == l.Node }
			mended := m.Equation(trial.Replace(e.Sides[0], number, &moved), trial.Replace(e.Sides[1], number, &moved), e.Signs)
			if kind, f := m.link(mended, at); kind == linkAsked && f == nil {
				return m.forceOfSize(at, moved.Num.Value, moved.Num.Half), true
			}
		}
	}
	return finding{}, false
}

// forceOfSize blames the power of ten on the given force of that size, if there is one.
func (m *marking) forceOfSize(at trial.Place, value, half float64) finding {
	f := finding{code: PowerOfTen}
	for _, t := range m.SumOf(at.Body, at.Axis) {
		if t.Force.Size != nil && math.Abs(m.Solution[t.Slot]-value) <= half {
			f.about, f.all = t.Force.Name, []string{t.Force.Name}
		}
	}
	return f
}
