package checker

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

// ownUnits are the sizes of the problem's units of force and length in SI.
type ownUnits struct{ force, length float64 }

// ownUnitsOf finds the one unit of force that all givens and all quantities in
// sizes use, and the one of length that the answers use as well. A mass ties the
// force to the newton, and a unit of length counts only in a spring's constant.
func ownUnitsOf(r *Reference) ownUnits {
	s, u := r.System, ownUnits{1, 1}
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
			forces, lengths = append(forces, per.force), append(lengths, per.length)
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
			lengths = append(lengths, stiffnessPer(unit.Symbol).length)
			stiff = true
		}
	}
	if one, ok := common(forces); ok && !massive {
		u.force = one
	}
	if one, ok := common(lengths); ok && stiff {
		u.length = one
	}
	return u
}

// stiffnessPer takes a unit of stiffness apart.
func stiffnessPer(symbol string) ownUnits {
	for _, force := range []string{"N", "kN", "lb"} {
		for _, length := range []string{"m", "cm", "mm", "ft", "in"} {
			if symbol == force+"/"+length {
				f, _ := quantity.Find(force)
				l, _ := quantity.Find(length)
				return ownUnits{f.Factor, l.Factor}
			}
		}
	}
	return ownUnits{1, 1}
}

func common(factors []float64) (float64, bool) {
	if len(factors) == 0 || slices.Min(factors) != slices.Max(factors) {
		return 1, false
	}
	return factors[0], true
}

// scale returns the size in SI of the problem's own unit of a dimension.
func (u ownUnits) scale(d quantity.Dimension) float64 {
	if d == quantity.Mass || d == quantity.Acceleration {
		return 1
	}
	return math.Pow(u.force, float64(d.Mass)) * math.Pow(u.length, float64(d.Length-d.Mass))
}

func (u ownUnits) areSI() bool { return u.force == 1 && u.length == 1 }

// inner returns a unit with its factor in the problem's own units.
func (u ownUnits) inner(unit quantity.Unit) quantity.Unit {
	unit.Factor /= u.scale(unit.Dim)
	return unit
}

// tree returns a tree whose quantities have their value in the problem's own
// units once they are multiplied by their unit's factor.
func (u ownUnits) tree(n *expr.Node) *expr.Node {
	if n == nil || u.areSI() || !hasUnit(n) {
		return n
	}
	c := *n
	if unit, ok := quantity.Find(n.Unit); ok && n.Op == expr.Number {
		c.Num.Value /= u.scale(unit.Dim)
	} else if ok && n.Op == expr.Measured {
		k := expr.Constant(1 / u.scale(unit.Dim))
		c.Args = []*expr.Node{expr.Join(expr.Mul, u.tree(n.Args[0]), k)}
		return &c
	}
	c.Args = make([]*expr.Node, len(n.Args))
	for i, a := range n.Args {
		c.Args[i] = u.tree(a)
	}
	return &c
}

func hasUnit(n *expr.Node) bool {
	found := false
	n.Walk(func(n *expr.Node) { found = found || n.Unit != "" })
	return found
}

// system returns the system with its givens and trees in its own units. Numbers
// keep the text that they were written with.
func (u ownUnits) system(s *statics.System) *statics.System {
	if u.areSI() {
		return s
	}
	c := *s
	c.Givens = slices.Clone(s.Givens)
	for i := range c.Givens {
		c.Givens[i].Unit = u.inner(c.Givens[i].Unit)
	}
	c.Bodies = slices.Clone(s.Bodies)
	for i := range c.Bodies {
		c.Bodies[i].Tilt = u.tree(c.Bodies[i].Tilt)
		c.Bodies[i].Forces = slices.Clone(s.Bodies[i].Forces)
		for j := range c.Bodies[i].Forces {
			f := &c.Bodies[i].Forces[j]
			f.Size, f.Angle, f.Direction = u.tree(f.Size), u.tree(f.Angle), u.tree(f.Direction)
		}
	}
	return &c
}

// speaksSI reports whether a bare number of the text is a known value in SI and
// none in the problem's own units: 3500 where 3.5 kN is given.
func (r *Reference) speaksSI(a Answer) bool {
	for _, part := range partsOf(expr.Clean(a.Text)) {
		reading, err := r.letters(a.Item).Read(part)
		if err != nil {
			continue
		}
		for _, side := range reading.Lines[0].Sides {
			found := false
			side.Walk(func(n *expr.Node) {
				if n.Op == expr.Number && n.Unit == "" && !structural(n) {
					own, _ := r.literal(n)
					si, _ := r.si.literal(n)
					found = found || own.givens == 0 && si.givens != 0
				}
			})
			if found {
				return true
			}
		}
	}
	return false
}
