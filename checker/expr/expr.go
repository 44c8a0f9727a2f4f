// Package expr knows what a student writes: it turns typed mathematics into a
// tree with a position on every node, prints the tree so that it reads in again
// as the same tree, and gives it a value.
//
// Start with Letters, which holds the letters of one problem, and Letters.Read.
// Reading order:
//
//	read.go       a text and the ways in which it can be read; part.go a text half typed
//	transcribe.go other keyboards, TeX, programs as plain characters (page.go, tex.go, pasted.go)
//	label.go      what stands in front of a statement
//	scan.go       runes → tokens: number.go, unit.go, spoken.go (words), split.go (a run of
//	              letters into letters and functions)
//	gather.go     a letter typed in pieces; unitorletter.go unit or letter
//	parse.go      tokens → tree, by the grammar; degrees.go a bare number in an angle
//	agree.go      which of several readings is the likelier; remember.go the latest readings
//	letters.go, functions.go, token.go, runes.go   what all of these know; words.go what is said of a text
//	              that cannot be read
//	tree.go       what a tree has in it and how another is made of it
//	print.go, program.go (fast), value.go (govaluate)   what is done with a tree
//	acts.go       characters that a terminal would obey
//
// Values are in SI: newtons, kilograms, metres, radians.
package expr

import (
	"slices"

	"example.org/standstill/checker/quantity"
)

// Op says what a node does with its arguments.
type Op uint8

// The nodes. Number and Name are leaves; Measured is an expression with a unit
// behind it ("(3 + 4) N"); Size is |x|.
const (
	Number Op = iota
	Name
	Neg
	Add
	Sub
	Mul
	Div
	Pow
	Call
	Size
	Measured
)

// Node is a tree. Name is a letter of the problem or a function's name. Unit is
// the symbol behind a Number or Measured, empty if there is none; Assumed says
// that the tutor put it there. Pos and End are rune offsets into the cleaned
// text. Unknown marks a name that the problem does not have.
type Node struct {
	Op       Op
	Args     []*Node
	Name     string
	Num      quantity.Number
	Unit     string
	Assumed  bool
	Unknown  bool
	Pos, End int
}

// Line is one equation, chain of equations, or expression: Sides has one entry
// for an expression, two for an equation, more for a chain. Signs are those between them,
// one fewer: "=", or where Unequal is set, "<", ">", "≤", "≥" or "≠" among them. Axis is "x" or "y" where the line named its sum ("ΣFx ="),
// Body the body that was named in front. Paper says that a slash was read as
// on paper ("w/2 sin θ" is w over 2 sin θ), Slash that there was a choice; Named
// that "Fx =" is the sum's name though there is a force F; Lettered that a unit behind
// a number was read as a letter, or g as the gram, which is not what is usual.
type Line struct {
	Sides        []*Node
	Signs        []string
	Unequal      bool
	Axis, Body   string
	Slash, Paper bool
	Named        bool
	Lettered     bool
}

// Reading holds every way in which a text can be meant, the likeliest first.
// There is at least one. Text is the text without control characters, into which
// positions point.
type Reading struct {
	Text  string
	Lines []Line
}

// Equal reports whether two trees are the same but for positions and for
// whether the tutor supplied a unit.
func Equal(a, b *Node) bool {
	if a.Op != b.Op || a.Name != b.Name || a.Unit != b.Unit || len(a.Args) != len(b.Args) {
		return false
	}
	if a.Op == Number && a.Num.Value != b.Num.Value {
		return false
	}
	for i := range a.Args {
		if !Equal(a.Args[i], b.Args[i]) {
			return false
		}
	}
	return true
}

// EqualLines reports whether two lines have the same sides in the same order.
func EqualLines(a, b Line) bool {
	if len(a.Sides) != len(b.Sides) || a.Unequal != b.Unequal || a.Unequal && !slices.Equal(a.Signs, b.Signs) {
		return false
	}
	for i := range a.Sides {
		if !Equal(a.Sides[i], b.Sides[i]) {
			return false
		}
	}
	return true
}

// Size is how many nodes the tree has.
func (n *Node) Size() int {
	size := 0
	n.Walk(func(*Node) { size++ })
	return size
}

// Walk calls f on every node, parents first.
func (n *Node) Walk(f func(*Node)) {
	f(n)
	for _, a := range n.Args {
		a.Walk(f)
	}
}

// Names returns the letters of the tree, each once, in order of appearance.
func (n *Node) Names() []string {
	var names []string
	n.Walk(func(m *Node) {
		if m.Op != Name || slices.Contains(names, m.Name) {
			return
		}
		if names == nil {
			names = make([]string, 0, 4) // few trees have more, and these are asked for all the time
		}
		names = append(names, m.Name)
	})
	return names
}

// Has reports whether the letter stands in the tree.
func (n *Node) Has(name string) bool {
	return n.Op == Name && n.Name == name || slices.ContainsFunc(n.Args, func(a *Node) bool { return a.Has(name) })
}

// Copy returns a tree that shares nothing with n.
func (n *Node) Copy() *Node {
	c := *n
	c.Args = make([]*Node, len(n.Args))
	for i, a := range n.Args {
		c.Args[i] = a.Copy()
	}
	return &c
}

// Letter returns a leaf for a letter.
func Letter(name string) *Node { return &Node{Op: Name, Name: name} }

// Constant returns a leaf for a number that was computed, not typed.
func Constant(x float64) *Node {
	if x < 0 {
		// As the grammar reads −3: a sign in front of a number, which has none itself.
		return &Node{Op: Neg, Args: []*Node{Constant(-x)}}
	}
	return &Node{Op: Number, Num: quantity.Exact(x)}
}

// Join returns the node of a two-sided operation.
func Join(op Op, a, b *Node) *Node { return &Node{Op: op, Args: []*Node{a, b}} }

// Minus returns −a.
func Minus(a *Node) *Node { return &Node{Op: Neg, Args: []*Node{a}} }

// Apply returns a function's call.
func Apply(function string, a *Node) *Node {
	return &Node{Op: Call, Name: function, Args: []*Node{a}}
}
