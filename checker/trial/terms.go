package trial

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
)

// Cancels reports whether a sum is zero whatever its letters are.
func (p *Problem) Cancels(w solved.Sum, tied string) bool {
	for k := range Tries {
		env := p.Samples.Free(^solved.GivenSet(0), tied, k)
		if math.Abs(w.Value(env)) > zeroShare*w.Largest(env) {
			return false
		}
	}
	return true
}

// SameTerms reports whether the line's terms are the sum's, in any order and
// perhaps all with the opposite sign, to a share of each.
func (p *Problem) SameTerms(e *Equation, w solved.Sum, tied string, share float64) bool {
	return p.Likeness(e, w, tied, share) != Apart
}

// Likeness says how the terms of a line are like those of a sum.
type Likeness uint8

// The likenesses. Turned has every term with the opposite sign, as a whole sum may be
// written; where all terms are on one side, the signs are seen against the axis.
const (
	Apart Likeness = iota
	Turned
	AsTyped
)

// Likeness compares the line's terms with the sum's, in any order, to a share of each.
func (p *Problem) Likeness(e *Equation, w solved.Sum, tied string, share float64) Likeness {
	best := Apart
	for _, vary := range e.Vary {
		for _, s := range e.Signs {
			best = max(best, p.likenessIn(e, w, tied, vary, s, share))
		}
	}
	if best == Turned && !expr.IsZero(e.Sides[0]) && !expr.IsZero(e.Sides[1]) {
		return AsTyped // what is on which side is free
	}
	return best
}

func (p *Problem) sameTermsIn(e *Equation, w solved.Sum, tied string, vary solved.GivenSet, s solved.Signed, share float64) bool {
	return p.likenessIn(e, w, tied, vary, s, share) != Apart
}

func (p *Problem) likenessIn(e *Equation, w solved.Sum, tied string, vary solved.GivenSet, s solved.Signed, share float64) Likeness {
	like := AsTyped
	for k := range Tries {
		env := p.Samples.sampleIn(e.room, sampleKey{vary, tied, k, false})
		e.room = env
		p.Solved.Fill(env, s)
		if like = min(like, p.termsAgree(e, w, env, share)); like == Apart {
			return Apart
		}
	}
	return like
}

// InLetters reports whether the terms are alike with each force taken by itself, even where the
// problem makes some of them equal.
func (p *Problem) InLetters(e *Equation, w solved.Sum, share float64) bool {
	for _, vary := range e.Vary {
		for _, s := range e.Signs {
			env := slices.Clone(p.Samples.sampleIn(e.room, sampleKey{vary, "", 0, false}))
			p.Solved.Fill(env, s)
			for i, v := range p.Solved.Model.Variables {
				if v.Dim == quantity.Force && v.Role != statics.IsGiven {
					// Eighths by place pull apart what is equal at rest, two tensions on one pulley say, and
					// stay in a range in which every term is still felt.
					env[i] *= 1 + float64(i+1)/8
				}
			}
			if p.termsAgree(e, w, env, share) != Apart {
				return true
			}
		}
	}
	return false
}

// termsAgree compares the terms in one sample; those that are zero there do not count.
func (p *Problem) termsAgree(e *Equation, w solved.Sum, env []float64, share float64) Likeness {
	// Thousands of sums are compared for one wrong line; sixteen terms fit without an allocation.
	var typedRoom, wantRoom [16]float64
	typed, want := typedRoom[:0], wantRoom[:0]
	for i, t := range e.terms {
		v := t.Run(env)
		if e.minus[i] {
			v = -v
		}
		if v != 0 {
			typed = append(typed, v)
		}
	}
	for i := range w {
		if v := w[i].Value(env); v != 0 {
			want = append(want, v)
		}
	}
	slices.Sort(want)
	slices.Sort(typed)
	if len(typed) != len(want) {
		// T cos θ + T cos θ is one term on paper and two in the sum, or the other way round.
		typed, want = addedUp(typed), addedUp(want)
	}
	if len(typed) != len(want) {
		return Apart
	}
	if e.Exact {
		share = ExactShare
	}
	if alike(typed, want, share) {
		return AsTyped
	}
	for i := range typed {
		typed[i] = -typed[i]
	}
	slices.Reverse(typed)
	if alike(typed, want, share) {
		return Turned
	}
	return Apart
}

// Divided returns the sum without the function that all its terms share: F1 = F2 for
// F1 cos θ = F2 cos θ.
func Divided(w solved.Sum) (solved.Sum, bool) {
	bare := slices.Clone(w)
	var first *solved.Term
	for i := range bare {
		t := &bare[i]
		if t.Scale == 0 {
			continue
		}
		if t.Letter == "" || t.Function == solved.Whole || first != nil && (t.Letter != first.Letter || t.Function != first.Function) {
			return nil, false
		}
		if first == nil {
			first = &w[i]
		}
		t.Function = solved.Whole
	}
	return bare, first != nil
}

// addedUp adds up the terms that are equal: 2 T cos θ is two of them.
func addedUp(sorted []float64) []float64 {
	var sums []float64
	for i, v := range sorted {
		if i > 0 && math.Abs(v-sorted[i-1]) <= ExactShare*math.Abs(v) {
			sums[len(sums)-1] += v
			continue
		}
		sums = append(sums, v)
	}
	slices.Sort(sums)
	return sums
}

func alike(a, b []float64, share float64) bool {
	for i := range a {
		if !(math.Abs(a[i]-b[i]) <= share*math.Abs(b[i])) {
			return false
		}
	}
	return true
}
