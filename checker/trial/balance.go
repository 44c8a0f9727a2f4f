package trial

import (
	"math"
	"slices"

	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
)

// Balance moves one letter so that the row becomes zero, and derives the rest. It
// reports whether that could be done. The letter is an unknown in which the row
// is linear; else a given of the set; else an unknown at all.
func (p *Problem) Balance(w solved.Sum, env []float64, tied bool, vary GivenSet) bool {
	emptied := -1
	for _, role := range []statics.Role{statics.IsUnknown, statics.IsGiven} {
		for i, v := range p.Solved.Variables {
			was := env[i]
			if v.Role != role || role == statics.IsGiven && !vary.has(i) || !p.pivot(w, env, i, tied) {
				continue
			}
			if w.Largest(env) > 1e-9*p.Solved.Bulk {
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
		for _, e := range p.Solved.Equals {
			for _, s := range e.Slots {
				if s == slot {
					for _, other := range e.Slots {
						env[other] = x
					}
				}
			}
		}
	}
	p.Solved.Derive(env)
}

// pivot solves the row for the letter at slot by the secant rule, which is exact
// in one step where the row is linear.
func (p *Problem) pivot(w solved.Sum, env []float64, slot int, tied bool) bool {
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

// SolveFor solves one sum for an unknown, with every other unknown as it is at rest.
func (p *Problem) SolveFor(w solved.Sum, slot int) (x float64, ok bool) {
	if p.Solved.Variables[slot].Role != statics.IsUnknown {
		return 0, false
	}
	env := slices.Clone(p.Solved.Values)
	if !p.pivot(w, env, slot, false) {
		return 0, false
	}
	return env[slot], true
}

// leads reports whether a letter is the first of its equals, or has none.
func (p *Problem) leads(slot int) bool {
	for _, e := range p.Solved.Equals {
		for i, s := range e.Slots {
			if s == slot && i > 0 {
				return false
			}
		}
	}
	return true
}

// IsZeroIn reports whether a sum is zero at a sample.
func IsZeroIn(w solved.Sum, env []float64) bool { return math.Abs(w.Value(env)) <= 1e-9*w.Largest(env) }
