// Package trial knows at which values of its letters a line is tried, and how far off
// it may be there.
//
// Start with Problem, a solved system on which lines can be tried:
//
//	samples.go      values for the letters at which a line is tried; balance.go makes a sum zero
//	known.go        what a typed number may stand for; fraction.go exact whole numbers
//	equation.go     one "left = right" of a line, ready to be tried
//	compare.go      tolerances; does a line hold where a sum is zero, and only there
//	terms.go        a line's terms beside those of a sum; component.go one term
//	newton.go       the unknowns for which changed sums are zero
//	atrest.go       what a line is worth at rest, by govaluate
package trial

import (
	"math"
	"sync"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
)

// A line is tried at sets of values for its letters. Three kinds of set:
//
//   - free: every unknown has some value, no sum need be zero;
//   - rest: the unknowns are those that make every sum zero;
//   - loose: even derived letters and components have values of their own, so
//     that only what holds by algebra alone holds.
//
// Givens that a student wrote as letters vary; those written as numbers keep
// their value. The values come from a fixed sequence, not from chance.

// GivenSet is a set of givens, by their place in the model.
type GivenSet uint64

func (s GivenSet) has(i int) bool { return i < 64 && s>>i&1 == 1 }

// cache keeps what is made once and used often.
type cache struct {
	mu    sync.Mutex
	base  map[sampleKey][]float64
	known []knownValue
	drawn []drawnAngle
}

type sampleKey struct {
	vary GivenSet
	tied string
	k    int
	rest bool
}

// Problem is a solved system, ready to try lines on it.
type Problem struct {
	Solved *solved.System
	*cache
}

// NewProblem makes a solved system ready.
func NewProblem(s *solved.System) *Problem {
	p := &Problem{Solved: s, cache: &cache{base: map[sampleKey][]float64{}}}
	p.known, p.drawn = p.knownValues(), p.drawnAngles()
	return p
}

// share returns the k-th of a sequence of numbers between 0 and 1 that belongs
// to place i (splitmix64).
func share(i, k int) float64 {
	z := uint64(i+1)*0x9E3779B97F4A7C15 + uint64(k+1)*0xD1B54A32D192ED03
	z = (z ^ z>>30) * 0xBF58476D1CE4E5B9
	z = (z ^ z>>27) * 0x94D049BB133111EB
	return float64((z^z>>31)>>11) / (1 << 53)
}

func (p *Problem) varied(i, k int) float64 {
	v, value, u := p.Solved.Variables[i], p.Solved.Values[i], share(i, k)
	if v.Dim == quantity.Angle {
		if value > 0.02 && value < 1.55 {
			return (8 + 74*u) * quantity.Degree
		}
		return value + (u-0.5)*40*quantity.Degree
	}
	if value == 0 && v.Role == statics.IsGiven {
		return u
	}
	// A force that is small beside the others must still be felt.
	if v.Role == statics.IsUnknown && v.Dim == quantity.Force && math.Abs(value) < p.Solved.Bulk/4 {
		value = math.Copysign(p.Solved.Bulk/4, value)
	}
	return value * (0.55 + 0.9*u)
}

// Free returns the k-th free sample. tied names letters of equal sizes, separated
// by spaces, whose forces get one value.
func (p *Problem) Free(vary GivenSet, tied string, k int) []float64 {
	return p.sample(sampleKey{vary, tied, k, false})
}

// AtRest returns the k-th sample in which the bodies are at rest.
func (p *Problem) AtRest(vary GivenSet, k int) []float64 {
	return p.sample(sampleKey{vary, "", k, true})
}

// sample returns a copy of the named sample that the caller may change.
func (p *Problem) sample(key sampleKey) []float64 { return p.sampleIn(nil, key) }

// sampleIn is sample with the room of another one that is done with. A search tries
// thousands of them.
func (p *Problem) sampleIn(room []float64, key sampleKey) []float64 {
	p.mu.Lock()
	defer p.mu.Unlock()
	base, ok := p.base[key]
	if !ok {
		base = p.makeSample(key)
		p.base[key] = base
	}
	return append(room[:0], base...)
}

func (p *Problem) makeSample(key sampleKey) []float64 {
	if key.rest {
		return p.makeRest(key)
	}
	env := append([]float64(nil), p.Solved.Values...)
	// The first sample leaves the unknowns as they are at rest, so that a line is
	// tried at least once where no force is small by chance.
	for i, v := range p.Solved.Variables {
		if v.Role == statics.IsUnknown && key.k > 0 || v.Role == statics.IsGiven && key.vary.has(i) {
			env[i] = p.varied(i, key.k)
		}
	}
	for _, e := range p.Solved.Equals {
		if key.tied != "" {
			for _, slot := range e.Slots {
				env[slot] = env[e.Slots[0]]
			}
		}
	}
	p.Solved.Fill(env, nil)
	return env
}

// makeRest varies the givens and solves again. Where the sums bend, the givens
// move only a little, so that the solution follows; where no solution is found
// they move less.
func (p *Problem) makeRest(key sampleKey) []float64 {
	reach := 1.0
	if !p.Solved.Linear() {
		reach = 0.15
	}
	start := p.unknownsAt(p.Solved.Values)
	for try := range 12 {
		env := append([]float64(nil), p.Solved.Values[:len(p.Solved.Variables)]...)
		for i, v := range p.Solved.Variables {
			if v.Role == statics.IsGiven && key.vary.has(i) {
				env[i] += reach * (p.varied(i, key.k+7*try) - env[i])
			}
		}
		var solved []float64
		var err error
		if p.Solved.Linear() {
			solved, err = p.Solved.Solve(env)
		} else {
			solved, err = p.Solved.SolveNear(env, start)
			reach /= 2
		}
		if err == nil {
			out := make([]float64, len(p.Solved.Values))
			copy(out, solved)
			p.Solved.Fill(out, nil)
			return out
		}
	}
	return append([]float64(nil), p.Solved.Values...)
}

func (p *Problem) unknownsAt(env []float64) []float64 {
	var u []float64
	for _, name := range p.Solved.Unknowns() {
		u = append(u, env[p.Solved.Slots[name]])
	}
	return u
}

// Loose returns a sample in which every letter has a value of its own.
func (p *Problem) Loose(k int) []float64 {
	env := p.Free(^GivenSet(0), "", k)
	for i := range env {
		if i >= len(p.Solved.Variables) || p.Solved.Variables[i].Role == statics.IsDerived {
			env[i] = 3 + 9*share(i+101, k)
		}
	}
	return env
}

// givens returns the givens that the letters of a tree depend on.
func (p *Problem) givens(n *expr.Node) GivenSet {
	var set GivenSet
	for _, name := range n.Names() {
		set |= p.givensOf(name)
	}
	return set
}

func (p *Problem) givensOf(name string) GivenSet {
	slot, ok := p.Solved.Slots[name]
	if !ok {
		return 0
	}
	if slot >= len(p.Solved.Variables) {
		if c, ok := p.Solved.Component(name); ok {
			set := p.givensOf(c.Force.Name)
			if f := c.Force.Factor(c.Axis); f.Angle != nil {
				set |= p.givens(f.Angle)
			}
			return set
		}
		return 0
	}
	switch v := p.Solved.Variables[slot]; v.Role {
	case statics.IsGiven:
		return 1 << slot
	case statics.IsDerived:
		return p.givens(v.Size)
	}
	return 0
}
