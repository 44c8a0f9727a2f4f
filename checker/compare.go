package checker

import (
	"math"

	"example.org/standstill/checker/expr"
)

// Tolerances, as shares of the largest term of the line. Letters and exact
// numbers must agree to rounding of the machine; a line with rounded numbers may
// be off by what the rounding can do, and by one part in a hundred in any case.
// A mistake must fit better than that to be named.
const (
	exactShare   = 1e-7
	roundedShare = 0.01
	mistakeShare = 0.003
	slipShare    = 0.05
	mostRounding = 0.05  // of the largest force
	hair         = 1e-11 // of what a sum that is zero is worth to the machine
	tries        = 3
	mostTries    = 12
)

// off returns the residual and what it may be.
func (e *equation) off(env []float64, share float64) (residual, allowed float64) {
	residual = e.residual.Run(env)
	if e.exact {
		return residual, exactShare * largest(e.bulks, env)
	}
	if e.foreign {
		share = math.Min(share, mistakeShare) // 36° is not 35°, near as its cosine is
	}
	rounding := 0.0
	for _, s := range e.shifted {
		rounding += math.Abs(s.Run(env) - residual)
	}
	rounding = math.Min(rounding, mostRounding*e.most/10)
	return residual, math.Max(rounding*(1+1e-9), share*math.Min(largest(e.sizes, env), e.most))
}

// largest returns the size of the largest of several values.
func largest(terms []expr.Program, env []float64) float64 {
	most := 0.0
	for _, t := range terms {
		most = math.Max(most, math.Abs(t.Run(env)))
	}
	return most
}

// holds reports whether the equation is true in the world. What has no value is
// not true.
func (e *equation) holds(env []float64, share float64) bool {
	residual, allowed := e.off(env, share)
	return math.Abs(residual) <= allowed+hair*e.most && !math.IsInf(residual, 0)
}

// matches reports whether the equation holds exactly where the row is zero.
func (r *Reference) matches(e *equation, w row, tied string, share float64) bool {
	for _, vary := range e.vary {
		for _, s := range e.signs {
			if r.holdsOn(e, w, tied, vary, s, share) && r.isSharp(e, tied, vary, s) {
				return true
			}
		}
	}
	return false
}

func (r *Reference) holdsOn(e *equation, w row, tied string, vary letterSet, s signed, share float64) bool {
	settled := 0
	for k := 0; k < mostTries && settled < tries; k++ {
		env := r.worldIn(e.room, worldKey{vary, tied, k, false})
		e.room = env
		if !r.settle(w, env, tied != "", vary) {
			continue // a sine beyond one, say: this world has no such balance
		}
		settled++
		r.fill(env, s)
		if !e.holds(env, share) {
			return false
		}
		if w.largest(env) <= 1e-9*r.bulk && !r.sameTermsIn(e, w, tied, vary, s, roundedShare) {
			return false // nothing is left in the sum, and there many a line holds
		}
	}
	if settled == 0 {
		return r.sameTermsIn(e, w, tied, vary, s, roundedShare)
	}
	return true
}

// isSharp reports whether the equation fails nearly everywhere else. A world may meet
// it by chance, so half of them may.
func (r *Reference) isSharp(e *equation, tied string, vary letterSet, s signed) bool {
	const enough = tries + 1
	failed := 0
	for k := 0; k < 2*enough && failed < enough; k++ {
		env := r.worldIn(e.room, worldKey{vary, tied, k + 20, false})
		e.room = env
		r.fill(env, s)
		if !e.holds(env, mistakeShare) {
			failed++
		}
	}
	return failed == enough
}

// follows reports whether the equation holds wherever the bodies are at rest.
func (r *Reference) follows(e *equation, share float64) bool {
	for _, vary := range e.vary {
		for _, s := range e.signs {
			if r.followsWith(e, vary, s, share) {
				return true
			}
		}
	}
	return false
}

func (r *Reference) followsWith(e *equation, vary letterSet, s signed, share float64) bool {
	for k := range tries {
		env := r.worldIn(e.room, worldKey{vary, "", k, true})
		e.room = env
		r.fill(env, s)
		if !e.holds(env, share) {
			return false
		}
	}
	return true
}

// always reports whether the equation is true by algebra alone: whatever its
// letters are, or with nothing in it that belongs to the problem.
func (r *Reference) always(e *equation) bool {
	if !e.letters && len(r.literals(e.sides)) > 0 {
		return false
	}
	for k := range tries {
		env := r.loose(k)
		if !(math.Abs(e.residual.Run(env)) <= exactShare*largest(e.bulks, env)) {
			return false
		}
	}
	return true
}
