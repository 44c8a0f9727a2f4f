package trial

import (
	"math"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/solved"
)

// off returns the residual and what it may be.
func (e *Equation) off(env []float64, share float64) (residual, allowed float64) {
	residual = e.residual.Run(env)
	if e.Exact {
		// With nothing rounded in it, an equation is off by arithmetic alone. That grows with the
		// terms before they cancel, so it is measured against those.
		return residual, ExactShare * largest(e.bulks, env)
	}
	rounding := 0.0
	for _, s := range e.shifted {
		rounding += math.Abs(s.Run(env) - residual)
	}
	// Rounded numbers that each may be off explain anything once they are many; beyond this
	// size the line is wrong, however it was rounded.
	rounding = math.Min(rounding, mostRounding*e.most/10)
	return residual, math.Max(rounding*(1+Same), share*math.Min(largest(e.sizes, env), e.most))
}

// largest returns the size of the largest of several values.
func largest(terms []expr.Program, env []float64) float64 {
	most := 0.0
	for _, t := range terms {
		most = math.Max(most, math.Abs(t.Run(env)))
	}
	return most
}

// Holds reports whether the equation is true in the sample. What has no value is
// not true.
func (e *Equation) Holds(env []float64, share float64) bool {
	if e.foreign {
		return false // 36° is not 35°, near as its cosine is
	}
	residual, allowed := e.off(env, share)
	return math.Abs(residual) <= allowed+e.hair(env) && !math.IsInf(residual, 0)
}

// hair is what arithmetic alone may leave of a sum that is zero. It goes by what the terms are worth
// and not by what their letters could make: a term that is nothing, 0·T⁷, must not excuse the rest.
func (e *Equation) hair(env []float64) float64 {
	return Hair * math.Max(e.bulk, largest(e.bulks, env))
}

// Matches reports whether the equation holds exactly where the sum is zero.
func (p *Problem) Matches(e *Equation, w solved.Sum, tied string, share float64) bool {
	for _, vary := range e.Vary {
		for _, s := range e.Signs {
			if p.holdsOn(e, w, tied, vary, s, share) && p.isSharp(e, tied, vary, s) {
				return true
			}
		}
	}
	return false
}

func (p *Problem) holdsOn(e *Equation, w solved.Sum, tied string, vary solved.GivenSet, s solved.Signed, share float64) bool {
	settled := 0
	for k := 0; k < mostTries && settled < Tries; k++ {
		env := p.Samples.sampleIn(e.room, sampleKey{vary, tied, k, false})
		e.room = env
		if !p.Samples.Balance(w, env, tied != "", vary) {
			continue // a sine beyond one, say: this sample has no such balance
		}
		settled++
		p.Solved.Fill(env, s)
		if !e.Holds(env, share) {
			return false
		}
		if w.Largest(env) <= zeroShare*p.Solved.Bulk && !p.sameTermsIn(e, w, tied, vary, s, RoundedShare) {
			return false // nothing is left in the sum, and there many a line holds
		}
	}
	// The sum is zero in no sample, as one with a single term is: then only its terms can tell.
	if settled == 0 {
		return p.sameTermsIn(e, w, tied, vary, s, RoundedShare)
	}
	return true
}

// isSharp reports whether the equation fails nearly everywhere else. A sample may meet
// it by chance, so half of them may.
func (p *Problem) isSharp(e *Equation, tied string, vary solved.GivenSet, s solved.Signed) bool {
	const enough = Tries + 1
	failed := 0
	for k := 0; k < 2*enough && failed < enough; k++ {
		// Samples behind those in which the sum was balanced: the first ones would lie close to it.
		env := p.Samples.sampleIn(e.room, sampleKey{vary, tied, k + 20, false})
		e.room = env
		p.Solved.Fill(env, s)
		if !e.Holds(env, MistakeShare) {
			failed++
		}
	}
	return failed == enough
}

// Follows reports whether the equation holds wherever the bodies are at rest.
func (p *Problem) Follows(e *Equation, share float64) bool {
	for _, vary := range e.Vary {
		for _, s := range e.Signs {
			if p.followsWith(e, vary, s, share) {
				return true
			}
		}
	}
	return false
}

func (p *Problem) followsWith(e *Equation, vary solved.GivenSet, s solved.Signed, share float64) bool {
	for k := range Tries {
		env := p.Samples.sampleIn(e.room, sampleKey{vary, "", k, true})
		e.room = env
		p.Solved.Fill(env, s)
		if !e.Holds(env, share) {
			return false
		}
	}
	return true
}

// Always reports whether the equation is true by algebra alone: whatever its
// letters are, or with nothing in it that belongs to the problem.
func (p *Problem) Always(e *Equation) bool {
	if !e.letters && len(p.Numbers.Literals(e.Sides)) > 0 {
		// 10.5 = 10.5 says nothing, but 21 sin 30° = 10.5 may be a step of working: without letters
		// no sample tells them apart.
		return expr.Equal(e.Sides[0], e.Sides[1])
	}
	for k := range Tries {
		env := p.Samples.Loose(k)
		// Written so that what has no value in the sample is not true.
		if !(math.Abs(e.residual.Run(env)) <= ExactShare*largest(e.bulks, env)) {
			return false
		}
	}
	return true
}
