package trial

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
)

// Equation is one "left = right" of a line, ready to be tried in a sample; for an
// expression right is zero.
type Equation struct {
	Sides    []*expr.Node
	residual expr.Program
	terms    []expr.Program
	sizes    []expr.Program // the terms with a letter, and the others as one
	minus    []bool         // the terms that are subtracted when the right side is taken over
	bulks    []expr.Program // the terms if nothing in them cancelled
	shifted  []expr.Program // residual with one rounded number at the end of its range
	Exact    bool
	bulk     float64           // the size beyond which nothing is a force of the problem
	most     float64           // the size beyond which a term is given no more slack
	Stray    bool              // a number stands for nothing known
	Vary     []solved.GivenSet // which givens vary, in the order in which they are tried
	letters  bool              // there is a letter
	rounded  float64           // the largest share by which a number may be rounded
	foreign  bool              // an angle is none of the problem's
	Form     Form
	room     []float64       // for the sample that is being tried
	Signs    []solved.Signed // conventions for components that may hold
}

// Equation prepares left = right. Names must be letters of the reference.
func (p *Problem) Equation(left, right *expr.Node, signs []solved.Signed) *Equation {
	difference := expr.Join(expr.Sub, left, right)
	e := &Equation{Sides: []*expr.Node{left, right}, Exact: true, Signs: signs}
	// Ten times as large as a product of such letters can be: what is larger than that is no term
	// of such a problem, and must not widen the tolerance of the rest.
	e.bulk = 10 * math.Max(p.Solved.Bulk, 1)
	e.most = math.Max(e.bulk, 10*p.reach(difference))
	e.residual = p.Solved.ProgramOf(difference)
	for _, side := range e.Sides {
		// A number for a whole side is a value, which may be rounded: sin θ = 0.5.
		e.Exact = e.Exact && (expr.IsZero(side) || len(side.Names()) > 0)
	}
	for _, t := range expr.Addends(difference, 1, nil) {
		e.terms = append(e.terms, p.Solved.ProgramOf(t.Node))
		e.minus = append(e.minus, t.Sign < 0)
	}
	e.bulks = p.bulksOf(difference)
	e.letters = len(difference.Names()) > 0
	e.sizes = p.sizes(difference, e.terms)
	e.Form = formOf(difference)
	literals := p.Numbers.Literals(e.Sides)
	shifted := map[float64]bool{}
	for _, l := range literals {
		e.Stray = e.Stray || l.Givens == 0
		e.foreign = e.foreign || l.foreign
		e.Exact = e.Exact && l.half == 0 && l.Givens != 0
		// The same number, typed twice, is the same value rounded.
		if l.half > 0 && !shifted[l.Node.Num.Value] {
			shifted[l.Node.Num.Value] = true
			e.shifted = append(e.shifted, p.Solved.ProgramOf(shift(difference, l)))
			e.rounded = math.Max(e.rounded, l.moves/math.Abs(l.Node.Num.Value))
		}
	}
	e.Vary = p.Variations(difference, literals)
	return e
}

// Fit is the share within which a mistake's terms must be the line's: what the
// rounding explains, for 0.892 is no sine of 0.895.
func (e *Equation) Fit() float64 { return math.Min(math.Max(e.rounded, MistakeShare), RoundedShare) }

// sizes lists what a line's tolerance is a share of: its terms, of which the programs
// are given, where numbers that are added up beside letters count as one, for
// 3500·0.643 − 2250 is as good as nothing.
func (p *Problem) sizes(difference *expr.Node, terms []expr.Program) []expr.Program {
	var sizes []expr.Program
	numbers, count := expr.Constant(0), 0
	for i, t := range expr.Addends(difference, 1, nil) {
		if len(t.Node.Names()) > 0 {
			sizes = append(sizes, terms[i])
			continue
		}
		numbers = expr.Join(expr.Add, numbers, expr.Join(expr.Mul, expr.Constant(t.Sign), t.Node))
		count++
	}
	if count < 2 || len(sizes) == 0 {
		return terms
	}
	return append(sizes, p.Solved.ProgramOf(numbers))
}

// Foreign reports whether an angle of the equation is none of the problem's, and with which
// force it was typed, "" where that is not seen.
func (p *Problem) Foreign(e *Equation) (force string, foreign bool) {
	if !e.foreign {
		return "", false
	}
	for _, side := range e.Sides {
		for _, t := range expr.Addends(side, 1, nil) {
			for _, l := range p.Numbers.Literals([]*expr.Node{t.Node}) {
				if l.foreign {
					return p.forceIn(t.Node), true
				}
			}
		}
	}
	return "", true
}

// forceIn returns the one force of which a term speaks.
func (p *Problem) forceIn(n *expr.Node) string {
	found := ""
	for _, name := range n.Names() {
		if c, ok := p.Solved.Component(name); ok {
			name = c.Force.Name
		}
		if _, ok := p.Solved.Force(p.Solved.Owner(name)); ok && p.Solved.Owner(name) != found {
			if found != "" {
				return ""
			}
			found = p.Solved.Owner(name)
		}
	}
	return found
}

// Form says what a line is made of: functions, quotients, decimals.
type Form struct{ Letters, Functions, Sines, Quotients, Decimals bool }

func formOf(n *expr.Node) Form {
	f := Form{Letters: len(n.Names()) > 0}
	n.Walk(func(n *expr.Node) {
		f.Functions = f.Functions || n.Op == expr.Call && n.Name != "sqrt"
		f.Sines = f.Sines || n.Op == expr.Call && slices.Contains([]string{"sin", "cos", "asin", "acos"}, n.Name)
		f.Quotients = f.Quotients || n.Op == expr.Div
		f.Decimals = f.Decimals || n.Op == expr.Number && !Structural(n)
	})
	return f
}

// shift returns the tree with one number moved by half its last place, wherever
// it stands.
func shift(n *expr.Node, l Literal) *expr.Node {
	moved := *l.Node
	moved.Num.Value += l.moves
	same := func(n *expr.Node) bool {
		return n.Op == expr.Number && n.Num.Value == l.Node.Num.Value && n.Unit == l.Node.Unit
	}
	return expr.Replace(n, same, &moved)
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

// Variations says which givens vary while the line is tried: those typed as
// letters; without those that a number of the line may stand for; and none, if a
// number is rounded (an intermediate result of all of them).
func (p *Problem) Variations(n *expr.Node, literals []Literal) []solved.GivenSet {
	typed := p.Solved.GivensIn(n)
	sets := []solved.GivenSet{typed}
	var stand solved.GivenSet
	rounded := false
	for _, l := range literals {
		stand |= l.Givens
		rounded = rounded || l.half > 0 || l.Givens == 0
	}
	// In m g = 3.2·9.8 the number may be the m of the other side, which then must not vary alone.
	if typed&stand != 0 {
		sets = append(sets, typed&^stand)
	}
	// A rounded number has worked in all givens, though it looks like none of them.
	if rounded && typed&^stand != 0 {
		sets = append(sets, 0)
	}
	return sets
}

// reach is how large the largest product in a tree may be, by its letters alone: T² is as large as
// the square of the largest force, and T m is that force times the mass, because a line may have
// been multiplied by any of its letters.
func (p *Problem) reach(n *expr.Node) float64 {
	switch n.Op {
	case expr.Name:
		return p.reachOf(n.Name)
	case expr.Mul:
		return p.reach(n.Args[0]) * p.reach(n.Args[1])
	case expr.Div:
		return p.reach(n.Args[0]) / p.reach(n.Args[1])
	case expr.Pow:
		if power := n.Args[1].Num.Value; n.Args[1].Op == expr.Number && power == math.Trunc(power) && math.Abs(power) < 5 {
			return math.Pow(p.reach(n.Args[0]), power)
		}
	case expr.Add, expr.Sub:
		return math.Max(p.reach(n.Args[0]), p.reach(n.Args[1]))
	case expr.Neg, expr.Size:
		return p.reach(n.Args[0])
	}
	return 1
}

func (p *Problem) reachOf(name string) float64 {
	_, isComponent := p.Solved.Component(name)
	v, known := p.Solved.Model.Variable(name)
	switch {
	case isComponent || v.Dim == quantity.Force:
		return math.Max(p.Solved.Bulk, 1)
	case known && v.Dim != quantity.Angle && v.Dim != quantity.None:
		return math.Max(math.Abs(p.Solved.Values[p.Solved.Slots[name]]), 1)
	}
	return 1
}

func (p *Problem) bulksOf(difference *expr.Node) (bulks []expr.Program) {
	for _, t := range expr.Addends(difference, 1, nil) {
		bulks = append(bulks, p.Solved.ProgramOf(bulk(t.Node)))
	}
	return bulks
}

// TiedFor says how the letters of equal sizes are taken: as one where the line
// uses such a letter, else first on their own.
func (p *Problem) TiedFor(e *Equation) []string {
	if len(p.Solved.Equals) == 0 {
		return []string{""}
	}
	for _, eq := range p.Solved.Equals {
		if e.Sides[0].Has(eq.Name) || e.Sides[1].Has(eq.Name) {
			return []string{"tied"}
		}
	}
	return []string{"", "tied"}
}
