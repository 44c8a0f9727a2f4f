package expr

// Trees are never changed in place: what is put in makes a new one.

// Substitute returns the tree with a letter replaced.
func Substitute(n *Node, name string, by *Node) *Node {
	return Replace(n, func(n *Node) bool { return n.Op == Name && n.Name == name }, by)
}

// Replace returns the tree with by in the place of every node that is meant.
func Replace(n *Node, meant func(*Node) bool, by *Node) *Node {
	if meant(n) {
		return by
	}
	if len(n.Args) == 0 {
		return n
	}
	c := *n
	c.Args = make([]*Node, len(n.Args))
	for i, a := range n.Args {
		c.Args[i] = Replace(a, meant, by)
	}
	return &c
}

// IsLetter reports whether a tree is that letter and nothing more; a tree may be missing.
func IsLetter(n *Node, name string) bool {
	return n != nil && n.Op == Name && n.Name == name
}

// IsZero reports whether a tree is the number 0.
func IsZero(n *Node) bool { return n.Op == Number && n.Num.Value == 0 }

// Addend is a term of a sum; its sign is +1 or −1.
type Addend struct {
	Node *Node
	Sign float64
}

// Addends cuts a tree of that sign into the terms that are added up in it.
func Addends(n *Node, sign float64, into []Addend) []Addend {
	switch n.Op {
	case Add:
		return Addends(n.Args[1], sign, Addends(n.Args[0], sign, into))
	case Sub:
		return Addends(n.Args[1], -sign, Addends(n.Args[0], sign, into))
	case Neg:
		return Addends(n.Args[0], -sign, into)
	}
	return append(into, Addend{n, sign})
}

// Factors takes a product apart into what is multiplied and what divides; signs are left out.
func Factors(n *Node, above, below *[]*Node) {
	switch n.Op {
	case Mul:
		Factors(n.Args[0], above, below)
		Factors(n.Args[1], above, below)
	case Div:
		Factors(n.Args[0], above, below)
		Factors(n.Args[1], below, above)
	case Neg:
		Factors(n.Args[0], above, below)
	default:
		*above = append(*above, n)
	}
}

// IsQuantity reports whether a tree is a number, perhaps with a sign and a unit.
func IsQuantity(n *Node) bool {
	if n.Op == Neg {
		n = n.Args[0]
	}
	return n.Op == Number
}

// ValueOf returns the value of a tree without letters, 0 where it has none.
func ValueOf(n *Node) float64 {
	v, err := n.Value(nil)
	if err != nil {
		return 0
	}
	return v
}
