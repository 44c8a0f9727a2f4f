// Package trial knows at which values of its letters a line is tried, and how far off
// it may be there.
//
// Start with Problem, a solved system with the letters that may be typed for it:
//
//	vocabulary.go   the letters of a problem, its components and usual letters
//	samples.go      values for the letters at which a line is tried
//	known.go        what a typed number may stand for; fraction.go exact whole numbers
//	equation.go     one "left = right" of a line, ready to be tried
//	compare.go      tolerances; does a line hold where a sum is zero, and only there
//	sum.go          a sum of forces along an axis, as terms; terms.go, component.go
//	newton.go       the unknowns for which changed sums are zero
//	units.go        the problem's own units; asked.go the unit that an answer is in
//	atrest.go       what a line is worth at rest, by govaluate
package trial

import (
	"math"
	"sync"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
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

// Signed says for each component whether its letter stands for the signed
// component; otherwise for its size.
type Signed []bool

// cache keeps what is made once and used often.
type cache struct {
	programs  sync.Map // of *expr.Program, by what they work out
	sizesMade sync.Map // of *Size, by force and name
	mu        sync.Mutex
	base      map[sampleKey][]float64
	Sums      []Sum
	known     []knownValue
	drawn     []drawnAngle
	sense     []float64 // of each component at the solution: +1 or −1
	bulk      float64   // the largest force at the solution
}

type sampleKey struct {
	vary GivenSet
	tied string
	k    int
	rest bool
}

// Problem is a solved system with the letters that may be typed for it, ready to try lines.
type Problem struct {
	*statics.Model
	Solution []float64
	*Vocabulary
	*cache
	Own Units
}

func NewProblem(m *statics.Model, solution []float64, own Units) *Problem {
	p := &Problem{Model: m, Vocabulary: newLexicon(m), Own: own}
	p.cache = &cache{base: map[sampleKey][]float64{}}
	p.Solution = make([]float64, p.width)
	copy(p.Solution, solution)
	for _, c := range p.Components {
		p.bulk = math.Max(p.bulk, math.Abs(p.Solution[c.Term.Slot]))
		p.sense = append(p.sense, math.Copysign(1, c.Term.Value(p.Solution)))
	}
	p.Fill(p.Solution, nil)
	for b := range m.Bodies {
		for _, axis := range []statics.Axis{statics.X, statics.Y} {
			p.Sums = append(p.Sums, p.rowOf(b, axis))
		}
	}
	p.known, p.drawn = p.knownValues(), p.drawnAngles()
	return p
}

// Fill computes everything that follows from givens and unknowns, in place.
func (p *Problem) Fill(env []float64, signs Signed) {
	p.Derive(env)
	for _, e := range p.Equals {
		env[e.Slot] = env[e.Slots[0]]
	}
	for i := range p.Components {
		c := &p.Components[i]
		env[c.Slot] = c.Term.Value(env)
		if signs == nil || !signs[i] {
			env[c.Slot] *= p.sense[i]
		}
	}
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
	v, value, u := p.Variables[i], p.Solution[i], share(i, k)
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
	if v.Role == statics.IsUnknown && v.Dim == quantity.Force && math.Abs(value) < p.bulk/4 {
		value = math.Copysign(p.bulk/4, value)
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
	env := append([]float64(nil), p.Solution...)
	// The first sample leaves the unknowns as they are at rest, so that a line is
	// tried at least once where no force is small by chance.
	for i, v := range p.Variables {
		if v.Role == statics.IsUnknown && key.k > 0 || v.Role == statics.IsGiven && key.vary.has(i) {
			env[i] = p.varied(i, key.k)
		}
	}
	for _, e := range p.Equals {
		if key.tied != "" {
			for _, slot := range e.Slots {
				env[slot] = env[e.Slots[0]]
			}
		}
	}
	p.Fill(env, nil)
	return env
}

// makeRest varies the givens and solves again. Where the sums bend, the givens
// move only a little, so that the solution follows; where no solution is found
// they move less.
func (p *Problem) makeRest(key sampleKey) []float64 {
	reach := 1.0
	if !p.Linear() {
		reach = 0.15
	}
	start := p.unknownsAt(p.Solution)
	for try := range 12 {
		env := append([]float64(nil), p.Solution[:len(p.Variables)]...)
		for i, v := range p.Variables {
			if v.Role == statics.IsGiven && key.vary.has(i) {
				env[i] += reach * (p.varied(i, key.k+7*try) - env[i])
			}
		}
		var solved []float64
		var err error
		if p.Linear() {
			solved, err = p.Solve(env)
		} else {
			solved, err = p.SolveNear(env, start)
			reach /= 2
		}
		if err == nil {
			out := make([]float64, p.width)
			copy(out, solved)
			p.Fill(out, nil)
			return out
		}
	}
	return append([]float64(nil), p.Solution...)
}

func (p *Problem) unknownsAt(env []float64) []float64 {
	var u []float64
	for _, name := range p.Unknowns() {
		u = append(u, env[p.Slots[name]])
	}
	return u
}

// Loose returns a sample in which every letter has a value of its own.
func (p *Problem) Loose(k int) []float64 {
	env := p.Free(^GivenSet(0), "", k)
	for i := range env {
		if i >= len(p.Variables) || p.Variables[i].Role == statics.IsDerived {
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
	slot, ok := p.Slots[name]
	if !ok {
		return 0
	}
	if slot >= len(p.Variables) {
		if c, ok := p.Component(name); ok {
			set := p.givensOf(c.Force.Name)
			if f := c.Force.Factor(c.Axis); f.Angle != nil {
				set |= p.givens(f.Angle)
			}
			return set
		}
		return 0
	}
	switch v := p.Variables[slot]; v.Role {
	case statics.IsGiven:
		return 1 << slot
	case statics.IsDerived:
		return p.givens(v.Size)
	}
	return 0
}
