package trial

import (
	"math"
	"sync"

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

// Samples makes sets of values, each once. It may be used by several goroutines.
type Samples struct {
	solved *solved.System
	mu     sync.Mutex
	base   map[sampleKey][]float64
}

type sampleKey struct {
	vary solved.GivenSet
	tied string
	k    int
	rest bool
}

// share returns the k-th of a sequence of numbers between 0 and 1 that belongs
// to place i (splitmix64).
func share(i, k int) float64 {
	z := uint64(i+1)*0x9E3779B97F4A7C15 + uint64(k+1)*0xD1B54A32D192ED03
	z = (z ^ z>>30) * 0xBF58476D1CE4E5B9
	z = (z ^ z>>27) * 0x94D049BB133111EB
	return float64((z^z>>31)>>11) / (1 << 53)
}

func (s *Samples) varied(i, k int) float64 {
	v, value, u := s.solved.Model.Variables[i], s.solved.Values[i], share(i, k)
	if v.Dim == quantity.Angle {
		if value > 0.02 && value < 1.55 {
			// Between 8° and 82°: sine and cosine are both felt, and no angle is near 0, 90° or its double.
			return (8 + 74*u) * quantity.Degree
		}
		// A full-circle direction or a right angle stays in its quarter as a rule, with the signs
		// that belong to it.
		return value + (u-0.5)*40*quantity.Degree
	}
	if value == 0 && v.Role == statics.IsGiven {
		return u
	}
	// A force that is small beside the others must still be felt.
	if v.Role == statics.IsUnknown && v.Dim == quantity.Force && math.Abs(value) < s.solved.Bulk/4 {
		value = math.Copysign(s.solved.Bulk/4, value)
	}
	// From about half to one and a half: never zero, never the other sign, and not the value itself,
	// with which every line about rest would hold.
	return value * (0.55 + 0.9*u)
}

// Free returns the k-th free sample. tied names letters of equal sizes, separated
// by spaces, whose forces get one value.
func (s *Samples) Free(vary solved.GivenSet, tied string, k int) []float64 {
	return s.sample(sampleKey{vary, tied, k, false})
}

// AtRest returns the k-th sample in which the bodies are at rest.
func (s *Samples) AtRest(vary solved.GivenSet, k int) []float64 {
	return s.sample(sampleKey{vary, "", k, true})
}

// sample returns a copy of the named sample that the caller may change.
func (s *Samples) sample(key sampleKey) []float64 { return s.sampleIn(nil, key) }

// sampleIn is sample with the room of another one that is done with. A search tries
// thousands of them.
func (s *Samples) sampleIn(room []float64, key sampleKey) []float64 {
	s.mu.Lock()
	defer s.mu.Unlock()
	base, ok := s.base[key]
	if !ok {
		base = s.makeSample(key)
		s.base[key] = base
	}
	return append(room[:0], base...)
}

func (s *Samples) makeSample(key sampleKey) []float64 {
	if key.rest {
		return s.makeRest(key)
	}
	env := append([]float64(nil), s.solved.Values...)
	// The first sample leaves the unknowns as they are at rest, so that a line is
	// tried at least once where no force is small by chance.
	for i, v := range s.solved.Model.Variables {
		if v.Role == statics.IsUnknown && key.k > 0 || v.Role == statics.IsGiven && key.vary.Has(i) {
			env[i] = s.varied(i, key.k)
		}
	}
	for _, e := range s.solved.Equals {
		if key.tied != "" {
			for _, slot := range e.Slots {
				env[slot] = env[e.Slots[0]]
			}
		}
	}
	s.solved.Fill(env, nil)
	return env
}

// makeRest varies the givens and solves again. Where the sums bend, the givens
// move only a little, so that the solution follows; where no solution is found
// they move less.
func (s *Samples) makeRest(key sampleKey) []float64 {
	reach := 1.0
	if !s.solved.Model.Linear() {
		// Newton's method follows the solution only from near; farther off it may find another one,
		// with an angle on the other side.
		reach = 0.15
	}
	start := s.unknownsAt(s.solved.Values)
	for try := range 12 {
		env := append([]float64(nil), s.solved.Values[:len(s.solved.Model.Variables)]...)
		for i, v := range s.solved.Model.Variables {
			if v.Role == statics.IsGiven && key.vary.Has(i) {
				// Seven samples further, so that a second try of this sample is no first try of the next.
				env[i] += reach * (s.varied(i, key.k+7*try) - env[i])
			}
		}
		var solved []float64
		var err error
		if s.solved.Model.Linear() {
			solved, err = s.solved.Model.Solve(env)
		} else {
			solved, err = s.solved.Model.SolveNear(env, start)
			reach /= 2
		}
		if err == nil {
			out := make([]float64, len(s.solved.Values))
			copy(out, solved)
			s.solved.Fill(out, nil)
			return out
		}
	}
	// The problem as it stands is at rest, if nothing else is; a line is then tried there alone.
	return append([]float64(nil), s.solved.Values...)
}

func (s *Samples) unknownsAt(env []float64) []float64 {
	var u []float64
	for _, name := range s.solved.Model.Unknowns() {
		u = append(u, env[s.solved.Slots[name]])
	}
	return u
}

// Loose returns a sample in which every letter has a value of its own.
func (s *Samples) Loose(k int) []float64 {
	env := s.Free(^solved.GivenSet(0), "", k)
	for i := range env {
		if i >= len(s.solved.Model.Variables) || s.solved.Model.Variables[i].Role == statics.IsDerived {
			// Numbers of one size that have nothing to do with each other. The places behind 100 are
			// used for nothing else.
			env[i] = 3 + 9*share(i+101, k)
		}
	}
	return env
}
