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

// UnitsOf finds the one unit of force that all givens and all quantities in
// sizes use, and the one of length that the answers use as well. A mass ties the
// force to the newton, and a unit of length counts only in a spring's constant.
func UnitsOf(r *System) Units {
	s, u := r.Model.System, Units{1, 1}
	var forces, lengths []float64
	massive, stiff := false, false
	see := func(unit quantity.Unit) {
		switch unit.Dim {
		case quantity.Force:
			forces = append(forces, unit.Factor)
		case quantity.Length:
			lengths = append(lengths, unit.Factor)
		case quantity.Stiffness:
			per := stiffnessPer(unit.Symbol)
			forces, lengths = append(forces, per.Force), append(lengths, per.Length)
			stiff = true
		case quantity.Mass:
			massive = true
		}
	}
	for _, g := range s.Givens {
		see(g.Unit)
	}
	for _, b := range s.Bodies {
		for _, f := range b.Forces {
			if f.Size == nil {
				continue
			}
			massive = massive || f.Size.Has("g")
			f.Size.Walk(func(n *expr.Node) {
				if unit, ok := quantity.Find(n.Unit); ok && n.Op == expr.Number {
					see(unit)
				}
			})
		}
	}
	for _, name := range s.Find {
		switch unit := r.Unit(name); unit.Dim {
		case quantity.Length:
			lengths = append(lengths, unit.Factor)
		case quantity.Stiffness:
			lengths = append(lengths, stiffnessPer(unit.Symbol).Length)
			stiff = true
		}
	}
	if one, ok := common(forces); ok && !massive {
		u.Force = one
	}
	if one, ok := common(lengths); ok && stiff {
		u.Length = one
	}
	return u
}

// stiffnessPer takes a unit of stiffness apart.
func stiffnessPer(symbol string) Units {
	for _, force := range []string{"N", "kN", "lb"} {
		for _, length := range []string{"m", "cm", "mm", "ft", "in"} {
			if symbol == force+"/"+length {
				f, _ := quantity.Find(force)
				l, _ := quantity.Find(length)
				return Units{f.Factor, l.Factor}
			}
		}
	}
	return Units{1, 1}
}

func common(factors []float64) (float64, bool) {
	if len(factors) == 0 || slices.Min(factors) != slices.Max(factors) {
		return 1, false
	}
	return factors[0], true
}

// Scale returns the size in SI of the problem's own unit of a dimension.
func (u Units) Scale(d quantity.Dimension) float64 {
	if d == quantity.Mass || d == quantity.Acceleration {
		return 1
	}
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
