package solved

import (
	"math"

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
	// Not multiplied out: 1/sin 0° is infinite, and nothing times infinity is no number.
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
			// The number of degrees goes into the function as if it were radians.
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

// Place is one sum: a body and an axis.
type Place struct {
	Body int
	Axis statics.Axis
}
