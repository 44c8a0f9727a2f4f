package solved

import (
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
)

// Unit returns the unit in which a letter is asked for.
func (s *System) Unit(name string) quantity.Unit {
	if u, ok := s.Answer[name]; ok {
		return u
	}
	for _, e := range s.Equals {
		if e.Name == name {
			// Equal sizes are asked for in one unit, so the first of them will do.
			return s.Unit(s.Model.Variables[e.Slots[0]].Name)
		}
	}
	if g, ok := s.Given(name); ok {
		// Looked up again: in a problem of pounds the given's own factor is no longer that to SI.
		u, _ := quantity.Find(g.Unit.Symbol)
		return u
	}
	dim := quantity.Force
	if v, ok := s.Model.Variable(name); ok {
		dim = v.Dim
	}
	return s.UsualUnit(dim)
}

// UsualUnit is the unit in which a dimension is asked for if the file does not
// say: SI, or pounds where every force that is given is in pounds.
func (s *System) UsualUnit(dim quantity.Dimension) quantity.Unit {
	symbol := map[quantity.Dimension]string{
		quantity.Force: "N", quantity.Mass: "kg", quantity.Angle: "deg", quantity.Length: "m",
		quantity.Stiffness: "N/m", quantity.Acceleration: "m/s^2", quantity.None: "none",
	}[dim]
	if dim == quantity.Force && s.Own.inPounds() {
		symbol = "lb"
	}
	u, _ := quantity.Find(symbol)
	return u
}

func (u Units) inPounds() bool { return u.Force == quantity.PoundForce }

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
			// g is in m/s², and no unit of force goes with it but the newton.
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
	// Lengths elsewhere only make ratios, in which the unit does not show.
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
