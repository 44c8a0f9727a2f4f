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
func (s *Samples) Balance(w solved.Sum, env []float64, tied bool, vary solved.GivenSet) bool {
	emptied := -1
	// An unknown first: a given that moves may be one that the line has as a number.
	for _, role := range []statics.Role{statics.IsUnknown, statics.IsGiven} {
		for i, v := range s.solved.Model.Variables {
			was := env[i]
			if v.Role != role || role == statics.IsGiven && !vary.Has(i) || !s.pivot(w, env, i, tied) {
				continue
			}
			if w.Largest(env) > zeroShare*s.solved.Bulk {
				return true
			}
			// The sum is zero because nothing is left in it; better find another letter.
			if emptied < 0 {
				emptied = i
			}
			s.set(env, i, was, tied)
		}
	}
	if emptied >= 0 {
		return s.pivot(w, env, emptied, tied)
	}
	return math.Abs(w.Value(env)) <= zeroShare*w.Largest(env)
}

// set gives a letter a value; with tied, all that are equal to it.
func (s *Samples) set(env []float64, slot int, x float64, tied bool) {
	env[slot] = x
	if tied {
		for _, e := range s.solved.Equals {
			for _, s := range e.Slots {
				if s == slot {
					for _, other := range e.Slots {
						env[other] = x
					}
				}
			}
		}
	}
	s.solved.Model.Derive(env)
}

// pivot solves the row for the letter at slot by the secant rule, which is exact
// in one step where the row is linear.
func (s *Samples) pivot(w solved.Sum, env []float64, slot int, tied bool) bool {
	was := env[slot]
	if tied && !s.leads(slot) {
		return false
	}
	// The nudge moves a letter that is zero, which no factor does.
	a, b := was, was*farther+nudge
	fa := w.Value(env)
	s.set(env, slot, b, tied)
	fb := w.Value(env)
	scale := w.Largest(env)
	if math.Abs(fb-fa) <= zeroShare*scale {
		s.set(env, slot, was, tied)
		return false
	}
	for range 40 {
		c := b - fb*(b-a)/(fb-fa)
		if math.IsNaN(c) || math.IsInf(c, 0) {
			break
		}
		a, fa = b, fb
		b = c
		s.set(env, slot, b, tied)
		fb = w.Value(env)
		if math.Abs(fb) <= converged*scale || fb == fa {
			break
		}
	}
	if math.Abs(fb) <= zeroShare*math.Max(scale, w.Largest(env)) {
		return true
	}
	// What was tried must leave no trace: the next letter is tried in the same sample.
	s.set(env, slot, was, tied)
	return false
}

// SolveFor solves one sum for an unknown, with every other unknown as it is at rest.
func (s *Samples) SolveFor(w solved.Sum, slot int) (x float64, ok bool) {
	if s.solved.Model.Variables[slot].Role != statics.IsUnknown {
		return 0, false
	}
	env := slices.Clone(s.solved.Values)
	if !s.pivot(w, env, slot, false) {
		return 0, false
	}
	return env[slot], true
}

// leads reports whether a letter is the first of its equals, or has none.
func (s *Samples) leads(slot int) bool {
	for _, e := range s.solved.Equals {
		for i, s := range e.Slots {
			if s == slot && i > 0 {
				return false
			}
		}
	}
	return true
}

// IsZeroIn reports whether a sum is zero at a sample.
func IsZeroIn(w solved.Sum, env []float64) bool {
	return math.Abs(w.Value(env)) <= zeroShare*w.Largest(env)
}
