package solved

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// A bare number in a student's line is meant in the units of the problem: where
// every force is given in pounds, "58 sin 36" is pounds. So the reference is
// computed in units in which the problem's own numbers stand as they are, if its
// units fit together; else in SI. A line that is not right so may be so in SI.

// Units are the sizes of the problem's units of force and length in SI.
type Units struct{ Force, Length float64 }

// Scale returns the size in SI of the problem's own unit of a dimension.
func (u Units) Scale(d quantity.Dimension) float64 {
	if d == quantity.Mass || d == quantity.Acceleration {
		return 1
	}
	// Force is mass · length/time²: each power of mass brings in a force, and what is left is a length.
	return math.Pow(u.Force, float64(d.Mass)) * math.Pow(u.Length, float64(d.Length-d.Mass))
}

func (u Units) AreSI() bool { return u.Force == 1 && u.Length == 1 }

// Inner returns a unit with its factor in the problem's own units.
func (u Units) Inner(unit quantity.Unit) quantity.Unit {
	unit.Factor /= u.Scale(unit.Dim)
	return unit
}

// Tree returns a tree whose quantities have their value in the problem's own
// units once they are multiplied by their unit's factor.
func (u Units) Tree(n *expr.Node) *expr.Node {
	if n == nil || u.AreSI() || !hasUnit(n) {
		return n
	}
	c := *n
	if unit, ok := quantity.Find(n.Unit); ok && n.Op == expr.Number {
		c.Num.Value /= u.Scale(unit.Dim)
	} else if ok && n.Op == expr.Measured {
		// The unit follows a bracket, “(2 a) N”, so the factor goes into the bracket.
		k := expr.Constant(1 / u.Scale(unit.Dim))
		c.Args = []*expr.Node{expr.Join(expr.Mul, u.Tree(n.Args[0]), k)}
		return &c
	}
	c.Args = make([]*expr.Node, len(n.Args))
	for i, a := range n.Args {
		c.Args[i] = u.Tree(a)
	}
	return &c
}

func hasUnit(n *expr.Node) bool {
	found := false
	n.Walk(func(n *expr.Node) { found = found || n.Unit != "" })
	return found
}

// System returns the system with its givens and trees in its own units. Numbers
// keep the text that they were written with.
func (u Units) System(s *statics.System) *statics.System {
	if u.AreSI() {
		return s
	}
	c := *s
	c.Givens = slices.Clone(s.Givens)
	for i := range c.Givens {
		c.Givens[i].Unit = u.Inner(c.Givens[i].Unit)
	}
	c.Bodies = slices.Clone(s.Bodies)
	for i := range c.Bodies {
		c.Bodies[i].Tilt = u.Tree(c.Bodies[i].Tilt)
		c.Bodies[i].Forces = slices.Clone(s.Bodies[i].Forces)
		for j := range c.Bodies[i].Forces {
			f := &c.Bodies[i].Forces[j]
			f.Size, f.Angle, f.Direction = u.Tree(f.Size), u.Tree(f.Angle), u.Tree(f.Direction)
		}
	}
	return &c
}
