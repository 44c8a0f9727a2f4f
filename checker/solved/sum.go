package solved

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// Function is what a term multiplies a size by.
type Function uint8

const (
	Whole Function = iota
	Sine
	Cosine
	TangentOf
	PerSine
	PerCosine
)

var Swapped = map[Function]Function{Sine: Cosine, Cosine: Sine}
var Upturned = map[Function]Function{Sine: PerSine, Cosine: PerCosine}

func (f Function) Of(angle float64) float64 {
	switch f {
	case Sine:
		return math.Sin(angle)
	case Cosine:
		return math.Cos(angle)
	case TangentOf:
		return math.Tan(angle)
	case PerSine:
		return 1 / math.Sin(angle)
	case PerCosine:
		return 1 / math.Cos(angle)
	}
	return 1
}

// Term is one force's component in a sum: scale · f(angle) · size. Size is nil for
// the value at Slot.
type Term struct {
	Force    *statics.Force
	Scale    float64
	Function Function
	Angle    *expr.Program
	Letter   string // the angle's letter, "" if it is an expression
	Slot     int
	Size     *Size
	Radians  bool // the angle's degrees are taken for radians
}

// Size is a size that a changed term has in place of its force's own. Name says how it
// came about, so that what it takes to work it out is made once.
type Size struct {
	Tree    *expr.Node
	name    string
	program *expr.Program
}

// Sum is one body's sum along one axis. Forces across the axis are in it with a scale of
// zero, so that a change can put them in.
type Sum []Term

// TermOf returns the force's component along the axis.
func TermOf(m *statics.Model, f *statics.Force, axis statics.Axis) Term {
	factor := f.Factor(axis)
	slot, _ := m.Slot(f.Name)
	t := Term{Force: f, Scale: float64(factor.Sign), Slot: slot}
	if factor.Function != "" {
		t.Function = map[string]Function{"sin": Sine, "cos": Cosine}[factor.Function]
		p := m.Program(factor.Angle)
		t.Angle = &p
		if factor.Angle.Op == expr.Name {
			t.Letter = factor.Angle.Name
		}
	}
	return t
}

// Value returns the term's value, in the problem's own units.
func (t *Term) Value(env []float64) float64 {
	if t.Scale == 0 {
		return 0
	}
	v := t.Scale
	if t.Size != nil {
		v *= t.Size.program.Run(env)
	} else {
		v *= env[t.Slot]
	}
	if t.Function != Whole {
		angle := t.Angle.Run(env)
		if t.Radians {
			angle /= quantity.Degree
		}
		v *= t.Function.Of(angle)
	}
	return v
}

// Value returns what the terms add up to.
func (w Sum) Value(env []float64) float64 {
	total := 0.0
	for i := range w {
		total += w[i].Value(env)
	}
	return total
}

// Largest returns the size of the largest term.
func (w Sum) Largest(env []float64) float64 {
	most := 0.0
	for i := range w {
		most = math.Max(most, math.Abs(w[i].Value(env)))
	}
	return most
}

// rowOf makes the reference sum.
func (s *System) rowOf(body int, axis statics.Axis) Sum {
	var w Sum
	for i := range s.Components {
		if c := &s.Components[i]; c.Body == body && c.Axis == axis {
			w = append(w, c.Term)
		}
	}
	return w
}

func (s *System) SumOf(body int, axis statics.Axis) Sum { return s.Sums[2*body+int(axis)] }

// SizeTree returns the tree of a term's size; nil for a size that is a letter of its own.
func (s *System) SizeTree(t Term) *expr.Node {
	if t.Size != nil {
		return t.Size.Tree
	}
	if v, ok := s.Model.Variable(t.Force.Name); ok && v.Role == statics.IsDerived {
		return v.Size
	}
	return nil
}

// WithSize gives a term another size. The name says all that is done to the size that the term
// has so far, with every letter that it brings in: bodies that share a force share what is made.
func (s *System) WithSize(t Term, name string, tree func() *expr.Node) Term {
	if t.Size != nil {
		name = t.Size.name + ", " + name
	}
	key := t.Force.Name + ": " + name
	made, ok := s.made.sizes.Load(key)
	if !ok {
		size := &Size{Tree: tree(), name: name}
		program := s.Model.Program(size.Tree)
		size.program = &program
		made, _ = s.made.sizes.LoadOrStore(key, size)
	}
	t.Size = made.(*Size)
	return t
}

// WithAngle gives a term the angle of that letter.
func (s *System) WithAngle(t Term, letter string) Term {
	t.Angle, t.Letter = s.ready("angle "+letter, func() *expr.Node { return expr.Letter(letter) }), letter
	return t
}

// ready compiles a tree once and keeps the program under its key.
func (s *System) ready(key string, tree func() *expr.Node) *expr.Program {
	if made, ok := s.made.programs.Load(key); ok {
		return made.(*expr.Program)
	}
	made := s.Model.Program(tree())
	kept, _ := s.made.programs.LoadOrStore(key, &made)
	return kept.(*expr.Program)
}

// Place is one sum: a body and an axis.
type Place struct {
	Body int
	Axis statics.Axis
}

// IsEmpty reports whether no force of the body acts along the axis.
func (s *System) IsEmpty(at Place) bool {
	return !slices.ContainsFunc(s.SumOf(at.Body, at.Axis), func(t Term) bool { return t.Scale != 0 })
}

// Places lists every sum of the problem.
func (s *System) Places() []Place {
	var all []Place
	for b := range s.Bodies {
		all = append(all, Place{b, statics.X}, Place{b, statics.Y})
	}
	return all
}
