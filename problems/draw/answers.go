package draw

import (
	"fmt"
	"math"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// The mistakes that take a number from other numbers of the problem.

// answers gathers what may be given in place of one unknown.
type answers struct {
	*problem
	name  string
	dim   quantity.Dimension
	value float64
	all   []Path
}

func (a *answers) put(code Code, x float64) {
	a.all = append(a.all, Path{code, fmt.Sprintf("%s answer %d", code, len(a.all)), a.name, x})
}

func (p *problem) fromAnswers(unknown string) []Path {
	slot, ok := p.Slot(unknown)
	if !ok {
		return nil
	}
	a := &answers{problem: p, name: unknown, dim: p.Variables[slot].Dim, value: p.solution[slot]}
	for _, k := range []float64{2, 3, 4} {
		a.put(Factor, k*a.value)
		a.put(Factor, a.value/k)
	}
	switch a.dim {
	case quantity.Angle:
		a.put(SineCosine, math.Pi/2-a.value)
		// The direction of the resultant in place of the force that balances it.
		a.put(Sign, a.value+math.Pi)
		a.put(Sign, a.value-math.Pi)
	case quantity.Mass:
		if g, ok := p.Slot("g"); ok {
			a.put(MassForWeight, a.value*p.solution[g])
			a.put(MassForWeight, a.value/p.solution[g])
		}
	case quantity.Force:
		a.forces()
	}
	return a.all
}

// forces lists what a force is taken for: the mass behind it, the weight, a share
// of the weight.
func (a *answers) forces() {
	if g, ok := a.Slot("g"); ok {
		a.put(MassForWeight, a.value/a.solution[g])
	}
	for b := range a.Bodies {
		body := &a.Bodies[b]
		on, here := body.Force(a.name)
		if !here {
			continue
		}
		if weight := onlyOf(body, statics.Weight); weight != nil && weight != on {
			slot, _ := a.Slot(weight.Name)
			a.fromWeight(body, on, weight, a.solution[slot])
		}
	}
}

func (a *answers) fromWeight(body *statics.Body, on, weight *statics.Force, w float64) {
	switch {
	case on.Kind == statics.Normal:
		a.put(NormalEqualsWeight, w)
	case on.Kind == statics.Friction:
		a.frictionOf(body, on, weight, w)
	case on.Kind != statics.Tension:
	case onlyOf(body, statics.Tension) == nil:
		a.put(SharedWeight, w/2)
		a.put(SharedWeight, w)
	default:
		a.put(NotResolved, w)
		a.put(Factor, w/2)
	}
}

// frictionOf works the friction out from the whole weight.
func (a *answers) frictionOf(body *statics.Body, on, weight *statics.Force, w float64) {
	normal := onlyOf(body, statics.Normal)
	if on.Size == nil || normal == nil || !on.Size.Has(normal.Name) {
		return
	}
	env := append([]float64(nil), a.solution...)
	slot, _ := a.Slot(normal.Name)
	env[slot] = w
	a.put(NormalEqualsWeight, a.program("", on.Size).Run(env))
}
