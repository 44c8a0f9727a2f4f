package trial

import (
	"math"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// Factors lists what a value may have been divided by instead of multiplied: the plain numbers
// that are given, the functions of the given angles, and for a length the stiffnesses.
func (p *Problem) Factors(dim quantity.Dimension) []float64 {
	var all []float64
	for i, v := range p.Solved.Variables {
		x := p.Solved.Values[i]
		switch {
		case v.Role != statics.IsGiven || x == 0:
		case v.Dim == quantity.None, v.Dim == quantity.Stiffness && dim == quantity.Length:
			all = append(all, x)
		case v.Dim == quantity.Angle:
			all = append(all, math.Sin(x), math.Cos(x), math.Tan(x))
		}
	}
	for _, a := range p.Directions() {
		all = append(all, math.Sin(a.Value), math.Cos(a.Value), math.Tan(a.Value))
	}
	return all
}

// IsAWeight reports whether a value is the size of one of the weights.
func (p *Problem) IsAWeight(x float64) bool {
	for _, b := range p.Solved.Bodies {
		for _, f := range b.Forces {
			if w := p.Solved.Values[p.Solved.Slots[f.Name]]; f.Kind == statics.Weight && math.Abs(w-x) <= RoundedShare*math.Abs(x) {
				return true
			}
		}
	}
	return false
}
