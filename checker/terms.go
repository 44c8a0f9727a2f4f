package checker

import (
	"math"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// function is what a term multiplies a size by.
type function uint8

const (
	whole function = iota
	sine
	cosine
	tangent
	perSine
	perCosine
)

var swapped = map[function]function{sine: cosine, cosine: sine}
var upturned = map[function]function{sine: perSine, cosine: perCosine}

func (f function) of(angle float64) float64 {
	switch f {
	case sine:
		return math.Sin(angle)
	case cosine:
		return math.Cos(angle)
	case tangent:
		return math.Tan(angle)
	case perSine:
		return 1 / math.Sin(angle)
	case perCosine:
		return 1 / math.Cos(angle)
	}
	return 1
}

// term is one force's part in a sum: scale · f(angle) · size. size is nil for
// the value at slot.
type term struct {
	force    *statics.Force
	scale    float64
	function function
	angle    *expr.Program
	letter   string // the angle's letter, "" if it is an expression
	slot     int
	size     *expr.Program
	radians  bool // the angle's degrees are taken for radians
}

// row is one body's sum along one axis.
type row []term

func termOf(m *statics.Model, f *statics.Force, axis statics.Axis) term {
	factor := f.Factor(axis)
	slot, _ := m.Slot(f.Name)
	t := term{force: f, scale: float64(factor.Sign), slot: slot}
	if factor.Function != "" {
		t.function = map[string]function{"sin": sine, "cos": cosine}[factor.Function]
		p := m.Program(factor.Angle)
		t.angle = &p
		if factor.Angle.Op == expr.Name {
			t.letter = factor.Angle.Name
		}
	}
	return t
}

func (t *term) value(env []float64) float64 {
	if t.scale == 0 {
		return 0
	}
	v := t.scale
	if t.size != nil {
		v *= t.size.Run(env)
	} else {
		v *= env[t.slot]
	}
	if t.function != whole {
		angle := t.angle.Run(env)
		if t.radians {
			angle /= quantity.Degree
		}
		v *= t.function.of(angle)
	}
	return v
}

func (w row) value(env []float64) float64 {
	total := 0.0
	for i := range w {
		total += w[i].value(env)
	}
	return total
}

// largest is the size of the row's largest term.
func (w row) largest(env []float64) float64 {
	most := 0.0
	for i := range w {
		most = math.Max(most, math.Abs(w[i].value(env)))
	}
	return most
}

// rowOf makes the reference row. Forces across the axis stand in it with a scale
// of zero, so that a change can put them in.
func (r *Reference) rowOf(body int, axis statics.Axis) row {
	var w row
	for i := range r.components {
		if c := &r.components[i]; c.body == body && c.axis == axis {
			w = append(w, c.term)
		}
	}
	return w
}

func (r *Reference) row(body int, axis statics.Axis) row { return r.rows[2*body+int(axis)] }

// settle moves one letter so that the row becomes zero, and derives the rest. It
// reports whether that could be done. The letter is an unknown in which the row
// is linear; else a given of the set; else an unknown at all.
func (r *Reference) settle(w row, env []float64, tied bool, vary letterSet) bool {
	emptied := -1
	for _, role := range []statics.Role{statics.IsUnknown, statics.IsGiven} {
		for i, v := range r.Variables {
			was := env[i]
			if v.Role != role || role == statics.IsGiven && !vary.has(i) || !r.pivot(w, env, i, tied) {
				continue
			}
			if w.largest(env) > 1e-9*r.bulk {
				return true
			}
			// The sum is zero because nothing is left in it; better find another letter.
			if emptied < 0 {
				emptied = i
			}
			r.set(env, i, was, tied)
		}
	}
	if emptied >= 0 {
		return r.pivot(w, env, emptied, tied)
	}
	return math.Abs(w.value(env)) <= 1e-9*w.largest(env)
}

// set gives a letter a value; with tied, all that are equal to it.
func (r *Reference) set(env []float64, slot int, x float64, tied bool) {
	env[slot] = x
	if tied {
		for _, e := range r.equals {
			for _, s := range e.slots {
				if s == slot {
					for _, other := range e.slots {
						env[other] = x
					}
				}
			}
		}
	}
	r.Derive(env)
}

// pivot solves the row for the letter at slot by the secant rule, which is exact
// in one step where the row is linear.
func (r *Reference) pivot(w row, env []float64, slot int, tied bool) bool {
	was := env[slot]
	if tied && !r.leads(slot) {
		return false
	}
	a, b := was, was*1.25+1e-3
	fa := w.value(env)
	r.set(env, slot, b, tied)
	fb := w.value(env)
	scale := w.largest(env)
	if math.Abs(fb-fa) <= 1e-9*scale {
		r.set(env, slot, was, tied)
		return false
	}
	for range 40 {
		c := b - fb*(b-a)/(fb-fa)
		if math.IsNaN(c) || math.IsInf(c, 0) {
			break
		}
		a, fa = b, fb
		b = c
		r.set(env, slot, b, tied)
		fb = w.value(env)
		if math.Abs(fb) <= 1e-12*scale || fb == fa {
			break
		}
	}
	if math.Abs(fb) <= 1e-9*math.Max(scale, w.largest(env)) {
		return true
	}
	r.set(env, slot, was, tied)
	return false
}

// leads reports whether a letter is the first of its equals, or has none.
func (r *Reference) leads(slot int) bool {
	for _, e := range r.equals {
		for i, s := range e.slots {
			if s == slot && i > 0 {
				return false
			}
		}
	}
	return true
}
