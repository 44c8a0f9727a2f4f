package expr

import "example.org/standstill/checker/quantity"

// worth is what a tree measures, as far as that can be said. A bare number may be
// anything, and so may what it is a factor of: who types 31.4 means newtons.
type worth struct {
	known bool
	dim   quantity.Dimension
}

// agrees reports whether a line adds and compares like with like.
func (l *Letters) agrees(line Line) bool {
	all := worth{}
	for _, side := range line.Sides {
		w, ok := l.worthOf(side)
		if !ok || w.known && all.known && w.dim != all.dim {
			return false
		}
		if w.known {
			all = w
		}
	}
	return true
}

// DimensionOf returns what a tree measures; ok is false where that cannot be said.
func (l *Letters) DimensionOf(n *Node) (dim quantity.Dimension, ok bool) {
	w, agree := l.worthOf(n)
	return w.dim, w.known && agree
}

func (l *Letters) worthOf(n *Node) (worth, bool) {
	args := make([]worth, len(n.Args))
	for i, a := range n.Args {
		w, ok := l.worthOf(a)
		if !ok {
			return worth{}, false
		}
		args[i] = w
	}
	switch n.Op {
	case Number, Measured:
		unit, ok := quantity.Find(n.Unit)
		return worth{ok, unit.Dim}, true
	case Name:
		d, ok := l.dims[n.Name]
		return worth{ok, d}, true
	case Neg, Size:
		return args[0], true
	case Add, Sub:
		return sumOf(args[0], args[1])
	case Mul:
		return worth{args[0].known && args[1].known, args[0].dim.Times(args[1].dim)}, true
	case Div:
		return worth{args[0].known && args[1].known, args[0].dim.Over(args[1].dim)}, true
	case Call:
		// A power is not listed: it stays unknown, so that it never decides between two readings.
		return worthOfCall(n.Name, args[0])
	}
	return worth{}, true
}

func sumOf(a, b worth) (worth, bool) {
	switch {
	case !a.known:
		return b, true
	case !b.known:
		return a, true
	}
	return a, a.dim == b.dim
}

// worthOfCall is what a function measures; it acts on an angle, an inverse on a plain number.
func worthOfCall(function string, arg worth) (worth, bool) {
	if function == "sqrt" {
		half, ok := arg.dim.Root()
		return worth{arg.known && ok, half}, true
	}
	acts := quantity.None
	gives := quantity.Angle
	if isTrig(function) {
		acts, gives = quantity.Angle, quantity.None
	}
	return worth{true, gives}, !arg.known || arg.dim == acts
}
