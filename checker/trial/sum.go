package trial

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
func (p *Problem) rowOf(body int, axis statics.Axis) Sum {
	var w Sum
	for i := range p.Components {
		if c := &p.Components[i]; c.Body == body && c.Axis == axis {
			w = append(w, c.Term)
		}
	}
	return w
}

func (p *Problem) SumOf(body int, axis statics.Axis) Sum { return p.Sums[2*body+int(axis)] }

// Balance moves one letter so that the row becomes zero, and derives the rest. It
// reports whether that could be done. The letter is an unknown in which the row
// is linear; else a given of the set; else an unknown at all.
func (p *Problem) Balance(w Sum, env []float64, tied bool, vary GivenSet) bool {
	emptied := -1
	for _, role := range []statics.Role{statics.IsUnknown, statics.IsGiven} {
		for i, v := range p.Variables {
			was := env[i]
			if v.Role != role || role == statics.IsGiven && !vary.has(i) || !p.pivot(w, env, i, tied) {
				continue
			}
			if w.Largest(env) > 1e-9*p.bulk {
				return true
			}
			// The sum is zero because nothing is left in it; better find another letter.
			if emptied < 0 {
				emptied = i
			}
			p.set(env, i, was, tied)
		}
	}
	if emptied >= 0 {
		return p.pivot(w, env, emptied, tied)
	}
	return math.Abs(w.Value(env)) <= 1e-9*w.Largest(env)
}

// set gives a letter a value; with tied, all that are equal to it.
func (p *Problem) set(env []float64, slot int, x float64, tied bool) {
	env[slot] = x
	if tied {
		for _, e := range p.Equals {
			for _, s := range e.Slots {
				if s == slot {
					for _, other := range e.Slots {
						env[other] = x
					}
				}
			}
		}
	}
	p.Derive(env)
}

// pivot solves the row for the letter at slot by the secant rule, which is exact
// in one step where the row is linear.
func (p *Problem) pivot(w Sum, env []float64, slot int, tied bool) bool {
	was := env[slot]
	if tied && !p.leads(slot) {
		return false
	}
	a, b := was, was*1.25+1e-3
	fa := w.Value(env)
	p.set(env, slot, b, tied)
	fb := w.Value(env)
	scale := w.Largest(env)
	if math.Abs(fb-fa) <= 1e-9*scale {
		p.set(env, slot, was, tied)
		return false
	}
	for range 40 {
		c := b - fb*(b-a)/(fb-fa)
		if math.IsNaN(c) || math.IsInf(c, 0) {
			break
		}
		a, fa = b, fb
		b = c
		p.set(env, slot, b, tied)
		fb = w.Value(env)
		if math.Abs(fb) <= 1e-12*scale || fb == fa {
			break
		}
	}
	if math.Abs(fb) <= 1e-9*math.Max(scale, w.Largest(env)) {
		return true
	}
	p.set(env, slot, was, tied)
	return false
}

// leads reports whether a letter is the first of its equals, or has none.
func (p *Problem) leads(slot int) bool {
	for _, e := range p.Equals {
		for i, s := range e.Slots {
			if s == slot && i > 0 {
				return false
			}
		}
	}
	return true
}

// SizeTree returns the tree of a term's size; nil for a size that is a letter of its own.
func (p *Problem) SizeTree(t Term) *expr.Node {
	if t.Size != nil {
		return t.Size.Tree
	}
	if v, ok := p.Variable(t.Force.Name); ok && v.Role == statics.IsDerived {
		return v.Size
	}
	return nil
}

// WithSize gives a term another size. The name says all that is done to the size that the term
// has so far, with every letter that it brings in: bodies that share a force share what is made.
func (p *Problem) WithSize(t Term, name string, tree func() *expr.Node) Term {
	if t.Size != nil {
		name = t.Size.name + ", " + name
	}
	key := t.Force.Name + ": " + name
	made, ok := p.sizesMade.Load(key)
	if !ok {
		size := &Size{Tree: tree(), name: name}
		program := p.Program(size.Tree)
		size.program = &program
		made, _ = p.sizesMade.LoadOrStore(key, size)
	}
	t.Size = made.(*Size)
	return t
}

// WithAngle gives a term the angle of that letter.
func (p *Problem) WithAngle(t Term, letter string) Term {
	t.Angle, t.Letter = p.ready("angle "+letter, func() *expr.Node { return expr.Letter(letter) }), letter
	return t
}

// IsZeroIn reports whether a sum is zero at a sample.
func IsZeroIn(w Sum, env []float64) bool { return math.Abs(w.Value(env)) <= 1e-9*w.Largest(env) }
