package checker

import (
	"math"

	"example.org/standstill/checker/expr"
)

// equation is one "left = right" of a line, ready to be tried in a world; for an
// expression right is zero.
type equation struct {
	sides    []*expr.Node
	residual expr.Program
	terms    []expr.Program
	sizes    []expr.Program // the terms with a letter, and the others as one
	minus    []bool         // the terms that are subtracted when the right side is taken over
	bulks    []expr.Program // the terms if nothing in them cancelled
	shifted  []expr.Program // residual with one rounded number at the end of its range
	exact    bool
	most     float64     // the size beyond which a term is given no more slack
	stray    bool        // a number stands for nothing known
	vary     []letterSet // which givens vary, in the order in which they are tried
	letters  bool        // there is a letter
	rounded  float64     // the largest share by which a number may be rounded
	foreign  bool        // an angle is none of the problem's
	form     form
	room     []float64 // for the world that is being tried
	signs    []signed  // conventions for components that may hold
}

// equation prepares left = right. Names must be letters of the reference.
func (r *Reference) equation(left, right *expr.Node, signs []signed) *equation {
	e := &equation{sides: []*expr.Node{left, right}, exact: true, signs: signs, most: 10 * math.Max(r.bulk, 1)}
	difference := expr.Join(expr.Sub, left, right)
	e.residual = r.program(difference)
	for _, side := range e.sides {
		// A number for a whole side is a value, which may be rounded: sin θ = 0.5.
		e.exact = e.exact && (isZero(side) || len(side.Names()) > 0)
	}
	for _, t := range addends(difference, 1, nil) {
		e.terms = append(e.terms, r.program(t.node))
		e.minus = append(e.minus, t.sign < 0)
	}
	e.bulks = r.bulksOf(difference)
	e.letters = len(difference.Names()) > 0
	e.sizes = r.sizes(difference, e.terms)
	e.form = formOf(difference)
	literals := r.literals(e.sides)
	shifted := map[float64]bool{}
	for _, l := range literals {
		e.stray = e.stray || l.givens == 0
		e.foreign = e.foreign || l.foreign
		e.exact = e.exact && l.half == 0 && l.givens != 0
		// The same number, typed twice, is the same value rounded.
		if l.half > 0 && !shifted[l.node.Num.Value] {
			shifted[l.node.Num.Value] = true
			e.shifted = append(e.shifted, r.program(shift(difference, l)))
			e.rounded = math.Max(e.rounded, l.moves/math.Abs(l.node.Num.Value))
		}
	}
	e.vary = r.variations(difference, literals)
	return e
}

// fit is the share within which a mistake's terms must be the line's: what the
// rounding explains, for 0.892 is no sine of 0.895.
func (e *equation) fit() float64 { return math.Min(math.Max(e.rounded, mistakeShare), roundedShare) }

// sizes lists what a line's tolerance is a share of: its terms, of which the programs
// are given, where numbers that are added up beside letters count as one, for
// 3500·0.643 − 2250 is as good as nothing.
func (r *Reference) sizes(difference *expr.Node, terms []expr.Program) []expr.Program {
	var sizes []expr.Program
	numbers, count := expr.Constant(0), 0
	for i, t := range addends(difference, 1, nil) {
		if len(t.node.Names()) > 0 {
			sizes = append(sizes, terms[i])
			continue
		}
		numbers = expr.Join(expr.Add, numbers, expr.Join(expr.Mul, expr.Constant(t.sign), t.node))
		count++
	}
	if count < 2 || len(sizes) == 0 {
		return terms
	}
	return append(sizes, r.program(numbers))
}

// withoutForeign is the equation as it would be judged if an angle that is none of the
// problem's were a rounded number; false where there is no such angle.
func (e *equation) withoutForeign() (*equation, bool) {
	near := *e
	near.foreign = false
	return &near, e.foreign
}

// form says what a line is made of: functions, quotients, decimals.
type form struct{ functions, quotients, decimals bool }

func formOf(n *expr.Node) form {
	var f form
	n.Walk(func(n *expr.Node) {
		f.functions = f.functions || n.Op == expr.Call
		f.quotients = f.quotients || n.Op == expr.Div
		f.decimals = f.decimals || n.Op == expr.Number && !structural(n)
	})
	return f
}

// carries reports whether a line of this form can show such a mistake, made with
// that many forces, at all: where no angle stands, none was mistaken for another.
func (f form) carries(code Code, forces int) bool {
	switch code {
	case OtherAngle, SineCosine, Tangent:
		return f.functions || f.decimals || f.quotients
	case Inverted:
		// T2 = w cos φ is one division taken for a product; where two functions have
		// changed places, nothing was divided.
		return f.quotients || f.decimals && !f.functions || (f.functions || f.decimals) && forces == 1
	case Radians, OtherG:
		return f.decimals
	}
	return true
}

func (r *Reference) program(n *expr.Node) expr.Program {
	return expr.Compile(r.own.tree(n), func(name string) (int, bool) { s, ok := r.slots[name]; return s, ok })
}

// shift returns the tree with one number moved by half its last place, wherever
// it stands.
func shift(n *expr.Node, l literal) *expr.Node {
	moved := *l.node
	moved.Num.Value += l.moves
	same := func(n *expr.Node) bool {
		return n.Op == expr.Number && n.Num.Value == l.node.Num.Value && n.Unit == l.node.Unit
	}
	return replaced(n, same, &moved)
}

// bulk returns a tree whose value is how large a term is if nothing in it cancels:
// the bulk of g (m1 sin α − m) is g (m1 |sin α| + m).
func bulk(n *expr.Node) *expr.Node {
	switch n.Op {
	case expr.Add, expr.Sub:
		return expr.Join(expr.Add, bulk(n.Args[0]), bulk(n.Args[1]))
	case expr.Mul:
		return expr.Join(expr.Mul, bulk(n.Args[0]), bulk(n.Args[1]))
	case expr.Div:
		return expr.Join(expr.Div, bulk(n.Args[0]), &expr.Node{Op: expr.Size, Args: n.Args[1:]})
	case expr.Neg:
		return bulk(n.Args[0])
	case expr.Number:
		return n
	}
	return &expr.Node{Op: expr.Size, Args: []*expr.Node{n}}
}

// addend is a term of a sum; its sign is +1 or −1.
type addend struct {
	node *expr.Node
	sign float64
}

// addends cuts a tree of that sign into the terms that are added up in it.
func addends(n *expr.Node, sign float64, into []addend) []addend {
	switch n.Op {
	case expr.Add:
		return addends(n.Args[1], sign, addends(n.Args[0], sign, into))
	case expr.Sub:
		return addends(n.Args[1], -sign, addends(n.Args[0], sign, into))
	case expr.Neg:
		return addends(n.Args[0], -sign, into)
	}
	return append(into, addend{n, sign})
}

// variations says which givens vary while the line is tried: those typed as
// letters; without those that a number of the line may stand for; and none, if a
// number is rounded (an intermediate result of all of them).
func (r *Reference) variations(n *expr.Node, literals []literal) []letterSet {
	typed := r.givens(n)
	sets := []letterSet{typed}
	var stand letterSet
	rounded := false
	for _, l := range literals {
		stand |= l.givens
		rounded = rounded || l.half > 0 || l.givens == 0
	}
	if typed&stand != 0 {
		sets = append(sets, typed&^stand)
	}
	if rounded && typed&^stand != 0 {
		sets = append(sets, 0)
	}
	return sets
}
