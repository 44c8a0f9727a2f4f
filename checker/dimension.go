package checker

import (
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/trial"
)

// hasOtherUnit reports whether a term of the line has a typed unit that makes it
// something else than the force to which it is added or set equal.
func hasOtherUnit(s *solved.System, line expr.Line) bool {
	force, other := false, false
	for _, side := range line.Sides {
		for _, t := range expr.Addends(side, 1, nil) {
			dim, typed, known := dimensionOf(s, t.Node)
			force = force || known && dim == quantity.Force
			other = other || known && typed && dim != quantity.Force && !expr.IsZero(t.Node)
		}
	}
	return force && other
}

// dimensionOf works out what a term measures; typed says that a unit stands in it. It
// is not known where a bare number may be anything.
func dimensionOf(s *solved.System, n *expr.Node) (dim quantity.Dimension, typed, known bool) {
	var above, below []*expr.Node
	expr.Factors(n, &above, &below)
	known = true
	for i, f := range append(above, below...) {
		d, ok := dimensionOfFactor(s, f)
		// A term is known as a whole or not at all: with one open factor it may be a force yet.
		known = known && ok
		// A degree sign stands in nearly every term and says nothing of what it measures.
		typed = typed || f.Unit != "" && d != quantity.Angle
		if i < len(above) {
			dim = dim.Times(d)
		} else {
			dim = dim.Over(d)
		}
	}
	return dim, typed, known
}

func dimensionOfFactor(s *solved.System, n *expr.Node) (quantity.Dimension, bool) {
	switch n.Op {
	case expr.Name:
		if _, ok := s.Component(n.Name); ok {
			return quantity.Force, true
		}
		v, ok := s.Model.Variable(n.Name)
		return v.Dim, ok
	case expr.Number, expr.Measured:
		unit, ok := quantity.Find(n.Unit)
		return unit.Dim, ok || n.Op == expr.Number && trial.Structural(n)
	case expr.Call:
		return quantity.None, n.Name != "sqrt"
	case expr.Add, expr.Sub:
		a, _, known := dimensionOf(s, n.Args[0])
		b, _, alsoKnown := dimensionOf(s, n.Args[1])
		return a, known && alsoKnown && a == b
	case expr.Pow:
		power := n.Args[1].Num.Value
		if n.Args[1].Op != expr.Number || power != 2 && power != 3 {
			return quantity.None, false
		}
		a, ok := dimensionOfFactor(s, n.Args[0])
		whole := a
		for range int(power) - 1 {
			whole = whole.Times(a)
		}
		return whole, ok
	}
	return quantity.None, false
}
