package expr

import "slices"

// measure says whether a tree is an angle, a bare number that could be one, or
// something else.
type measure uint8

const (
	somethingElse measure = iota
	bareNumber
	anAngle
)

// degrees marks the bare numbers that are angles with a degree sign: in the
// argument of a function ("cos 35"), beside an angle ("90 − α") and across an
// equals sign from one ("φ = 47.6").
func degrees(sides []*Node, l *Letters) {
	kinds := make([]measure, len(sides))
	angles := false
	for i, side := range sides {
		if side.hasPi() {
			side.inDegrees()
		}
		kinds[i] = settleDegrees(side, l)
		angles = angles || kinds[i] == anAngle
	}
	for i, side := range sides {
		if angles && kinds[i] == bareNumber {
			markDegrees(side)
		}
	}
}

func settleDegrees(n *Node, l *Letters) measure {
	kinds := make([]measure, len(n.Args))
	for i, a := range n.Args {
		kinds[i] = settleDegrees(a, l)
	}
	switch n.Op {
	case Number:
		return measureNumber(n)
	case Name:
		if l.Kind(n.Name) == Angle {
			return anAngle
		}
	case Neg, Size:
		return kinds[0]
	case Measured:
		return settleMeasured(n, kinds[0])
	case Add, Sub:
		return settleSum(n, kinds)
	case Mul:
		return measureProduct(kinds[0], kinds[1])
	// θ/2 is an angle; an angle divided by anything but a number is not.
	case Div:
		if kinds[1] == bareNumber {
			return kinds[0]
		}
	case Pow:
		if kinds[0] == bareNumber && kinds[1] == bareNumber {
			return bareNumber
		}
	case Call:
		return settleCall(n, kinds[0])
	}
	return somethingElse
}

// settleMeasured drops a degree sign behind a bracket that is an angle already, as in
// (90° − θ)°.
func settleMeasured(n *Node, inner measure) measure {
	switch {
	case n.Unit != "deg" && n.Unit != "rad":
		return somethingElse
	case inner == anAngle:
		inside := *n.Args[0]
		inside.Pos, inside.End = n.Pos, n.End
		*n = inside
	}
	return anAngle
}

func measureNumber(n *Node) measure {
	switch n.Unit {
	case "":
		return bareNumber
	case "deg", "rad":
		return anAngle
	}
	return somethingElse
}

func settleSum(n *Node, kinds []measure) measure {
	switch {
	case kinds[0] == kinds[1]:
		return kinds[0]
	case kinds[0] == anAngle && kinds[1] == bareNumber:
		markDegrees(n.Args[1])
		return anAngle
	case kinds[0] == bareNumber && kinds[1] == anAngle:
		markDegrees(n.Args[0])
		return anAngle
	}
	return somethingElse
}

func measureProduct(a, b measure) measure {
	switch {
	case a == bareNumber:
		return b
	case b == bareNumber:
		return a
	}
	return somethingElse
}

func settleCall(n *Node, argument measure) measure {
	if isTrig(n.Name) {
		if argument == bareNumber {
			markDegrees(n.Args[0])
		}
		return somethingElse
	}
	if n.Name == "sqrt" && argument == bareNumber {
		return bareNumber
	}
	if n.Name == "sqrt" {
		return somethingElse
	}
	return anAngle
}

// markDegrees puts a degree sign on a tree of bare numbers, so that its value is
// that many degrees.
func markDegrees(n *Node) {
	switch n.Op {
	case Number:
		n.Unit, n.Assumed = "deg", true
	// Only the first factor: 2·35 means 2·35°, not 2°·35°.
	case Neg, Size, Div, Mul:
		markDegrees(n.Args[0])
	case Add, Sub:
		markDegrees(n.Args[0])
		markDegrees(n.Args[1])
	default:
		inner := *n
		*n = Node{Op: Measured, Args: []*Node{&inner}, Unit: "deg", Assumed: true, Pos: n.Pos, End: n.End}
	}
}

func isPi(n *Node) bool { return n.Op == Number && n.Num.Text == "π" }

func (n *Node) hasPi() bool { return isPi(n) || slices.ContainsFunc(n.Args, (*Node).hasPi) }

// inDegrees turns a product with π/180, or with 180/π, into the angle that is meant: 35·π/180
// is 35°, atan(x)·180/π is the arc tangent.
func (n *Node) inDegrees() {
	for _, a := range n.Args {
		a.inDegrees()
	}
	if n.Op != Mul && n.Op != Div {
		return
	}
	var above, below []*Node
	factorsOf(n, &above, &below)
	half := func(m *Node) bool { return m.Op == Number && m.Num.Value == 180 && (m.Unit == "" || m.Unit == "deg") }
	unit := ""
	for _, way := range []struct {
		above, below func(*Node) bool
		unit         string
	}{{isPi, half, "deg"}, {half, isPi, "rad"}} {
		i, j := slices.IndexFunc(above, way.above), slices.IndexFunc(below, way.below)
		// π/180 alone is a number: there is nothing that it could turn into degrees.
		if i >= 0 && j >= 0 && len(above) > 1 {
			above, below, unit = slices.Delete(above, i, i+1), slices.Delete(below, j, j+1), way.unit
			break
		}
	}
	if unit == "" {
		return
	}
	rest := above[0].Copy()
	for _, m := range above[1:] {
		rest = Join(Mul, rest, m)
	}
	for _, m := range below {
		rest = Join(Div, rest, m)
	}
	pos, end := n.Pos, n.End
	if rest.Op == Number && rest.Unit == "" {
		*n = *rest
		n.Unit = unit
	} else {
		*n = Node{Op: Measured, Args: []*Node{rest}, Unit: unit}
	}
	n.Pos, n.End = pos, end
}

// factorsOf takes a product apart into what is above and what is below the line.
func factorsOf(n *Node, above, below *[]*Node) {
	switch n.Op {
	case Mul:
		factorsOf(n.Args[0], above, below)
		factorsOf(n.Args[1], above, below)
	case Div:
		factorsOf(n.Args[0], above, below)
		factorsOf(n.Args[1], below, above)
	default:
		*above = append(*above, n)
	}
}
