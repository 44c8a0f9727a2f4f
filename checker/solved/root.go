package solved

import (
	"math"

	"example.org/standstill/checker/quantity"
)

// starts are where the search for a second solution begins, as shares of the right size and in
// degrees; distinct is how far off two solutions are from each other, in radians or as a share of
// the right size.
var starts = struct {
	shares, degrees []float64
}{[]float64{-2, 0.2, 3}, []float64{-60, -20, 30, 120, 200}}

const distinct = 0.02

// SecondRoot searches for a second solution of the sums with other values of two unknowns, from a few
// fixed places; the other unknowns begin where they are right. It returns the letters by slot.
func (s *System) SecondRoot(names [2]string) (env []float64, ok bool) {
	known, places := s.Values[:len(s.Model.Variables)], [2][]float64{}
	for i, name := range names {
		if v, _ := s.Model.Variable(name); v.Angle {
			for _, d := range starts.degrees {
				places[i] = append(places[i], d*quantity.Degree)
			}
			continue
		}
		for _, share := range starts.shares {
			places[i] = append(places[i], share*known[s.Slots[name]])
		}
	}
	for _, a := range places[0] {
		for _, b := range places[1] {
			at := map[string]float64{names[0]: a, names[1]: b}
			var start []float64
			for _, name := range s.Model.Unknowns() {
				value, moved := at[name]
				if !moved {
					value = known[s.Slots[name]]
				}
				start = append(start, value)
			}
			if env, err := s.Model.SolveNear(known, start); err == nil && s.differs(names, env) {
				return env, true
			}
		}
	}
	return nil, false
}

// differs leaves out the solution itself, found again.
func (s *System) differs(names [2]string, env []float64) bool {
	for _, name := range names {
		off, scale := env[s.Slots[name]]-s.Values[s.Slots[name]], 1.0
		if v, _ := s.Model.Variable(name); v.Angle {
			// 350° and −10° are the same direction and must not count as two solutions.
			off = math.Remainder(off, 2*math.Pi)
		} else {
			scale = math.Abs(s.Values[s.Slots[name]])
		}
		if math.Abs(off) > distinct*scale {
			return true
		}
	}
	return false
}
