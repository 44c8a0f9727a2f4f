package trial

import (
	"math"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/solved"
)

// SignsOf lists the signs with which a component may be written: its size always, and
// with its own sign. Where a full-circle direction says it, the sign is the one at rest.
func (p *Problem) SignsOf(t *solved.Term) []float64 {
	positive := t.Scale > 0
	if t.Force.Direction != nil {
		positive = t.Value(p.Solved.Values) > 0
	}
	if positive {
		return BothSigns[:1]
	}
	return BothSigns
}

// SameTerm reports whether the left side has the value of the terms wherever the
// letters vary, with one and the same sign. A full-circle direction may turn the
// component's own sign from sample to sample.
func (p *Problem) SameTerm(e *Equation, w solved.Sum, vary solved.GivenSet, signs []float64, share float64) bool {
	tied := p.TiedFor(e)[0]
	for _, s := range signs {
		same, tried := true, 0
		for k := 0; k < mostTries && tried < Tries && same; k++ {
			env := p.Samples.Free(vary, tied, k)
			if math.IsNaN(w.Value(env)) {
				continue // an arc cosine beyond one, say
			}
			tried++
			same = p.IsTerm(e, w, env, []float64{s}, share)
		}
		if tried == 0 {
			same = p.IsTerm(e, w, p.Samples.AtRest(0, 0), []float64{s}, share)
		}
		if same {
			return true
		}
	}
	return false
}

// IsTerm compares the left side with the terms in one sample. The component's slot
// is given the term's value, so that the equation's own tolerance serves.
func (p *Problem) IsTerm(e *Equation, w solved.Sum, env []float64, signs []float64, share float64) bool {
	slot := p.Solved.Slots[e.Sides[1].Name]
	for _, s := range signs {
		p.Solved.Fill(env, nil)
		env[slot] = s * w.Value(env)
		if e.Holds(env, share) {
			return true
		}
	}
	return false
}

// ComponentIs is the equation "side = the component". Only what the student typed varies: at 60°
// T/2 is the component, though no cosine is in it.
func (p *Problem) ComponentIs(side *expr.Node, c *solved.Component) *Equation {
	e := p.Equation(side, expr.Letter(c.Name), nil)
	e.Vary, e.Form = p.Variations(side, p.Numbers.Literals(e.Sides)), formOf(side)
	return e
}

// BothSigns are those of a component that was written as a size, or with its sign.
var BothSigns = []float64{1, -1}
