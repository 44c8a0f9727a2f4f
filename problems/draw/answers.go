package draw

import (
	"fmt"
	"math"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// The mistakes that take a number from other numbers of the problem. Each has a
// place in a list that once held further ones; their places are counted here so
// that the keys stay what they were.

// answers gathers what may be given in place of one unknown.
type answers struct {
	*problem
	name  string
	dim   quantity.Dimension
	value float64
	next  int
	all   []Path
}

func (a *answers) put(code Code, x float64) {
	a.all = append(a.all, Path{code, fmt.Sprintf("%s answer %d", code, a.next), a.name, x})
	a.next++
}

// pass leaves a place of the list out.
func (a *answers) pass() { a.next++ }

func (p *problem) fromAnswers(unknown string) []Path {
	slot, ok := p.Slot(unknown)
	if !ok {
		return nil
	}
	a := &answers{problem: p, name: unknown, dim: p.Variables[slot].Dim, value: p.solution[slot]}
	for _, other := range p.Variables {
		if other.Name != unknown && other.Dim == a.dim && other.Role != statics.IsGiven &&
			p.open(expr.Letter(other.Name)) && (other.Size == nil || !other.Size.Has(unknown)) {
			a.pass()
		}
	}
	for _, k := range []float64{2, 3, 4} {
		a.put(Factor, k*a.value)
		a.put(Factor, a.value/k)
	}
	for range p.factors() {
		a.pass()
		a.pass()
	}
	switch a.dim {
	case quantity.Angle:
		a.put(SineCosine, math.Pi/2-a.value)
		a.pass()
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

// open reports whether an unknown is in the tree.
func (p *problem) open(n *expr.Node) bool {
	for _, name := range n.Names() {
		v, ok := p.Variable(name)
		if !ok || v.Role == statics.IsUnknown || v.Role == statics.IsDerived && p.open(v.Size) {
			return true
		}
	}
	return false
}

// fixed reports whether a tree depends on givens alone.
func (p *problem) fixed(n *expr.Node) bool {
	for _, name := range n.Names() {
		v, ok := p.Variable(name)
		if !ok || v.Role == statics.IsUnknown || v.Role == statics.IsDerived && !p.fixed(v.Size) {
			return false
		}
	}
	return true
}

// factors counts, one entry for each, what a value may be divided by: plain numbers,
// and three functions of every given angle and of every direction made of givens.
func (p *problem) factors() []struct{} {
	n := 0
	for i, v := range p.Variables {
		switch {
		case v.Role != statics.IsGiven || p.solution[i] == 0:
		case v.Dim == quantity.None:
			n++
		case v.Dim == quantity.Angle:
			n += 3
		}
	}
	for b := range p.Bodies {
		for i := range p.Bodies[b].Forces {
			for _, axis := range []statics.Axis{statics.X, statics.Y} {
				a := p.Bodies[b].Forces[i].Factor(axis).Angle
				if a != nil && len(a.Args) > 0 && p.fixed(a) && !math.IsNaN(p.program("", a).Run(p.solution)) {
					n += 3
				}
			}
		}
	}
	return make([]struct{}, n)
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
		others := len(body.Forces) - 1
		a.next += 4 * others * (others - 1) / 2
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
