// Package statics knows when bodies are at rest: their forces, axes and sums, and
// the values that make every sum zero.
//
// Start with System, what a problem says, and Compile, which makes a Model of it.
// Model.Solve gives the reference solution. Everything is in SI and radians.
//
//	statics.go    bodies, forces, axes, as a problem has them
//	model.go      the same ready for computing; compile.go makes it, dimension.go finds what letters measure
//	linear.go, newton.go   the two ways of solving, eliminate.go the quick one for small systems; physical.go what a solution must not be
//	solve.go      which way is taken; errors.go what a system can be that has no single solution
package statics

import (
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
)

// Kind is what exerts a force. It serves words, pictures and hints; the sums do
// not look at it.
type Kind string

// The kinds of force.
const (
	Tension  Kind = "tension"
	Weight   Kind = "weight"
	Normal   Kind = "normal"
	Friction Kind = "friction"
	Spring   Kind = "spring"
	Push     Kind = "push"
	Pull     Kind = "pull"
	Strut    Kind = "strut"
)

// Kinds lists every kind, for the reader of problem files.
var Kinds = []Kind{Tension, Weight, Normal, Friction, Spring, Push, Pull, Strut}

// Axis is one of a body's two axes.
type Axis uint8

// The axes.
const (
	X Axis = iota
	Y
)

func (a Axis) String() string { return [...]string{"x", "y"}[a] }

// Other returns the other axis.
func (a Axis) Other() Axis { return 1 - a }

// Side is the side of each axis that a force points to: −1, 0 or +1 for x, then
// for y. It is zero for a force that is given by its Direction.
type Side [2]int

// Force is one force on one body. Its direction is given by Points, with Angle
// measured from the axis From where Points names two sides; or by Direction,
// anticlockwise from +x, both as if x pointed to the right; XLeft says that x is
// counted positive to the left here, which turns the sign of x components. Size is nil
// for an unknown size, which then has the force's name.
type Force struct {
	On        string
	Name      string
	Kind      Kind
	Points    Side
	Angle     *expr.Node
	From      Axis
	Direction *expr.Node
	Size      *expr.Node
	XLeft     bool
}

// Given is a letter whose value the problem states. Any marks one without a
// value ("any kg"). Number keeps how it was written, in Unit.
type Given struct {
	Name   string
	Number quantity.Number
	Unit   quantity.Unit
	Minus  bool
	Any    bool
}

// Value returns the given in SI.
func (g Given) Value() float64 {
	if g.Minus {
		return -g.Number.Value * g.Unit.Factor
	}
	return g.Number.Value * g.Unit.Factor
}

// Formula is a letter whose value follows from givens: α = atan(h/a).
type Formula struct {
	Name string
	Tree *expr.Node
}

// Body is one ring, knot or block with the forces on it. Tilt is how far its x
// axis is turned anticlockwise from the horizontal, nil for not at all; XLeft says
// that x is counted positive to the left.
type Body struct {
	Name   string
	Tilt   *expr.Node
	XLeft  bool
	Forces []Force
}

// Called is how a body is called in a sentence: by its letter, or by its word with an
// article.
func Called(name string) string {
	if len(name) > 1 && name == strings.ToLower(name) {
		return "the " + name
	}
	return name
}

// Words is what a problem says of its parts for sentences and pictures; the equations
// do not look at it. Meaning says what a letter is. By says what exerts a force; its
// keys are names of forces, with the body in front where forces of one name differ
// ("pulley.TR"). Body is what the one body without a name is. Surplus lists givens that
// are there to be left aside. Above is a view from above: up in the drawing is away from
// who looks at it.
type Words struct {
	Meaning map[string]string
	By      map[string]string
	Body    string
	Surplus []string
	Above   bool
}

// ByOn returns what exerts a force on a body, "" if the problem does not say it.
func (w Words) ByOn(body, force string) string {
	if by, ok := w.By[body+"."+force]; ok {
		return by
	}
	return w.By[force]
}

// Equal is a letter that stands for several sizes that are equal.
type Equal struct {
	Letter string
	Names  []string
}

// System is what a problem says about forces. Find lists what is asked for, in
// order, Answer the units in which it is asked.
type System struct {
	Givens   []Given
	Formulas []Formula
	Words    Words
	Bodies   []Body
	Equal    []Equal
	Find     []string
	Answer   map[string]quantity.Unit
}

// Body returns the body of that name; the only one for "".
func (s *System) Body(name string) (*Body, bool) {
	for i := range s.Bodies {
		if s.Bodies[i].Name == name || name == "" && len(s.Bodies) == 1 {
			return &s.Bodies[i], true
		}
	}
	return nil, false
}

// Given returns the given of that name.
func (s *System) Given(name string) (Given, bool) {
	for _, g := range s.Givens {
		if g.Name == name {
			return g, true
		}
	}
	return Given{}, false
}

// Force returns a force of that name on the body.
func (b *Body) Force(name string) (*Force, bool) {
	for i := range b.Forces {
		if b.Forces[i].Name == name {
			return &b.Forces[i], true
		}
	}
	return nil, false
}

// Force returns the first force of that name on any body.
func (s *System) Force(name string) (*Force, bool) {
	for i := range s.Bodies {
		if f, ok := s.Bodies[i].Force(name); ok {
			return f, true
		}
	}
	return nil, false
}

// Factor is what a force's size is multiplied by to give one component: a sign
// and a function of an angle. Function is "" for a force along the axis; Sign is
// 0 for a force across it.
type Factor struct {
	Sign     int
	Function string
	Angle    *expr.Node
}

// Factor returns the force's factor for the axis.
func (f *Force) Factor(axis Axis) Factor {
	turned := 1
	if f.XLeft && axis == X {
		turned = -1
	}
	if f.Direction != nil {
		return Factor{turned, [...]string{"cos", "sin"}[axis], f.Direction}
	}
	sign := turned * f.Points[axis]
	if sign == 0 || f.Points[axis.Other()] == 0 {
		return Factor{Sign: sign}
	}
	if axis == f.From {
		return Factor{sign, "cos", f.Angle}
	}
	return Factor{sign, "sin", f.Angle}
}

// Slanted reports whether the force has components on both axes.
func (f *Force) Slanted() bool {
	return f.Direction != nil || f.Points[X] != 0 && f.Points[Y] != 0
}

// SizeNode returns the force's size as a tree: its name, or the expression.
func (f *Force) SizeNode() *expr.Node {
	if f.Size == nil {
		return expr.Letter(f.Name)
	}
	return f.Size
}

// Component returns the signed component as a tree, a zero for a force across
// the axis. It is written with the force's name.
func (f *Force) Component(axis Axis) *expr.Node {
	factor := f.Factor(axis)
	n := expr.Letter(f.Name)
	if factor.Sign == 0 {
		return expr.Constant(0)
	}
	if factor.Function != "" {
		n = expr.Join(expr.Mul, n, expr.Apply(factor.Function, factor.Angle))
	}
	if factor.Sign < 0 {
		n = expr.Minus(n)
	}
	return n
}

// Sum returns the left side of ΣF = 0 on the body along the axis, in letters;
// nil where no force has a component.
func (b *Body) Sum(axis Axis) *expr.Node {
	var sum *expr.Node
	for i := range b.Forces {
		term := b.Forces[i].Component(axis)
		switch {
		case b.Forces[i].Factor(axis).Sign == 0:
		case sum == nil:
			sum = term
		case term.Op == expr.Neg:
			sum = expr.Join(expr.Sub, sum, term.Args[0])
		default:
			sum = expr.Join(expr.Add, sum, term)
		}
	}
	return sum
}
