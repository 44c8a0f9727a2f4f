package trial

import (
	"math"

	"example.org/standstill/checker/expr"
)

// Edited is the equation with another difference of its sides. Its numbers are taken
// as they are typed. Of the rest only what its tolerance is made of is prepared.
func (p *Problem) Edited(e *Equation, difference *expr.Node) *Equation {
	mended := *e
	mended.residual, mended.shifted, mended.sizes, mended.bulks = p.Solved.ProgramOf(difference), nil, nil, nil
	if e.Exact {
		mended.bulks = p.bulksOf(difference)
		return &mended
	}
	var terms []expr.Program
	for _, t := range expr.Addends(difference, 1, nil) {
		terms = append(terms, p.Solved.ProgramOf(t.Node))
	}
	mended.sizes = p.sizes(difference, terms)
	return &mended
}

// EditedAlways reports whether an edited equation is true by algebra alone.
func (p *Problem) EditedAlways(e *Equation, difference *expr.Node) bool {
	c := *e
	c.bulks = p.bulksOf(difference)
	return p.Always(&c)
}

// Shifted returns the equation with one of its numbers multiplied by a power of ten, and that
// number.
func (p *Problem) Shifted(e *Equation, number *expr.Node, power int) (*Equation, *expr.Node) {
	k := math.Pow10(power)
	moved := *number
	moved.Num.Value, moved.Num.Half, moved.Num.Wide = moved.Num.Value*k, moved.Num.Half*k, moved.Num.Wide*k
	is := func(n *expr.Node) bool { return n == number }
	return p.Equation(expr.Replace(e.Sides[0], is, &moved), expr.Replace(e.Sides[1], is, &moved), e.Signs), &moved
}
