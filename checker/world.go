package checker

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

// letterSet is a set of givens, by their place in the model.
type letterSet uint64

func (s letterSet) has(i int) bool { return i < 64 && s>>i&1 == 1 }

// signed says for each component whether its letter stands for the signed
// component; otherwise for its size.
type signed []bool

// kitchen keeps what is made once and used often.
type kitchen struct {
	programs     sync.Map // of *expr.Program, by what they work out
	mu           sync.Mutex
	base         map[worldKey][]float64
	rows         []row
	terms        map[int][]variant
	known        []knownValue
	sense        []float64 // of each component at the solution: +1 or −1
	bulk         float64   // the largest force at the solution
	wrongNumbers map[string][]candidate
}

type worldKey struct {
	vary letterSet
	tied string
	k    int
	rest bool
}

func newReference(m *statics.Model, solution []float64, own ownUnits) *Reference {
	r := &Reference{Model: m, lexicon: newLexicon(m), own: own, share: roundedShare}
	r.kitchen = &kitchen{base: map[worldKey][]float64{}, terms: map[int][]variant{}, wrongNumbers: map[string][]candidate{}}
	r.solution = make([]float64, r.width)
	copy(r.solution, solution)
	for _, c := range r.components {
		r.bulk = math.Max(r.bulk, math.Abs(r.solution[c.term.slot]))
		r.sense = append(r.sense, math.Copysign(1, c.term.value(r.solution)))
	}
	r.fill(r.solution, nil)
	for b := range m.Bodies {
		for _, axis := range []statics.Axis{statics.X, statics.Y} {
			r.rows = append(r.rows, r.rowOf(b, axis))
		}
	}
	r.known = r.knownValues()
	return r
}

// fill computes everything that follows from givens and unknowns, in place.
func (r *Reference) fill(env []float64, signs signed) {
	r.Derive(env)
	for _, e := range r.equals {
		env[e.slot] = env[e.slots[0]]
	}
	for i := range r.components {
		c := &r.components[i]
		env[c.slot] = c.term.value(env)
		if signs == nil || !signs[i] {
			env[c.slot] *= r.sense[i]
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

func (r *Reference) varied(i, k int) float64 {
	v, value, u := r.Variables[i], r.solution[i], share(i, k)
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
	if v.Role == statics.IsUnknown && v.Dim == quantity.Force && math.Abs(value) < r.bulk/4 {
		value = math.Copysign(r.bulk/4, value)
	}
	return value * (0.55 + 0.9*u)
}

// free returns the k-th free world. tied names letters of equal sizes, separated
// by spaces, whose forces get one value.
func (r *Reference) free(vary letterSet, tied string, k int) []float64 {
	return r.world(worldKey{vary, tied, k, false})
}

// rest returns the k-th world in which the bodies are at rest.
func (r *Reference) rest(vary letterSet, k int) []float64 {
	return r.world(worldKey{vary, "", k, true})
}

// world returns a copy of the named world that the caller may change.
func (r *Reference) world(key worldKey) []float64 { return r.worldIn(nil, key) }

// worldIn is world with the room of another one that is done with. A search tries
// thousands of them.
func (r *Reference) worldIn(room []float64, key worldKey) []float64 {
	r.mu.Lock()
	defer r.mu.Unlock()
	base, ok := r.base[key]
	if !ok {
		base = r.makeWorld(key)
		r.base[key] = base
	}
	return append(room[:0], base...)
}

func (r *Reference) makeWorld(key worldKey) []float64 {
	if key.rest {
		return r.makeRest(key)
	}
	env := append([]float64(nil), r.solution...)
	// The first world leaves the unknowns as they are at rest, so that a line is
	// tried at least once where no force is small by chance.
	for i, v := range r.Variables {
		if v.Role == statics.IsUnknown && key.k > 0 || v.Role == statics.IsGiven && key.vary.has(i) {
			env[i] = r.varied(i, key.k)
		}
	}
	for _, e := range r.equals {
		if key.tied != "" {
			for _, slot := range e.slots {
				env[slot] = env[e.slots[0]]
			}
		}
	}
	r.fill(env, nil)
	return env
}

// makeRest varies the givens and solves again. Where the sums bend, the givens
// move only a little, so that the solution follows; where no solution is found
// they move less.
func (r *Reference) makeRest(key worldKey) []float64 {
	reach := 1.0
	if !r.Linear() {
		reach = 0.15
	}
	start := r.unknownsAt(r.solution)
	for try := range 12 {
		env := append([]float64(nil), r.solution[:len(r.Variables)]...)
		for i, v := range r.Variables {
			if v.Role == statics.IsGiven && key.vary.has(i) {
				env[i] += reach * (r.varied(i, key.k+7*try) - env[i])
			}
		}
		var solved []float64
		var err error
		if r.Linear() {
			solved, err = r.Solve(env)
		} else {
			solved, err = r.SolveNear(env, start)
			reach /= 2
		}
		if err == nil {
			out := make([]float64, r.width)
			copy(out, solved)
			r.fill(out, nil)
			return out
		}
	}
	return append([]float64(nil), r.solution...)
}

func (r *Reference) unknownsAt(env []float64) []float64 {
	var u []float64
	for _, name := range r.Unknowns() {
		u = append(u, env[r.slots[name]])
	}
	return u
}

// loose returns a world in which every letter has a value of its own.
func (r *Reference) loose(k int) []float64 {
	env := r.free(^letterSet(0), "", k)
	for i := range env {
		if i >= len(r.Variables) || r.Variables[i].Role == statics.IsDerived {
			env[i] = 3 + 9*share(i+101, k)
		}
	}
	return env
}

// givens returns the givens that the letters of a tree depend on.
func (r *Reference) givens(n *expr.Node) letterSet {
	var set letterSet
	for _, name := range n.Names() {
		set |= r.givensOf(name)
	}
	return set
}

func (r *Reference) givensOf(name string) letterSet {
	slot, ok := r.slots[name]
	if !ok {
		return 0
	}
	if slot >= len(r.Variables) {
		if c, ok := r.component(name); ok {
			set := r.givensOf(c.force.Name)
			if f := c.force.Factor(c.axis); f.Angle != nil {
				set |= r.givens(f.Angle)
			}
			return set
		}
		return 0
	}
	switch v := r.Variables[slot]; v.Role {
	case statics.IsGiven:
		return 1 << slot
	case statics.IsDerived:
		return r.givens(v.Size)
	}
	return 0
}
