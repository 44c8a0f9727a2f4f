package solved

import (
	"math"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// AngleLetters lists the letters that stand for angles: those of forces, and that of the slope
// under the body.
func (s *System) AngleLetters(body int) []string {
	var letters []string
	for _, v := range s.Model.Variables {
		tilts := s.Bodies[body].Tilt != nil && s.Bodies[body].Tilt.Has(v.Name) && v.Dim == quantity.Angle
		if v.Angle || tilts {
			letters = append(letters, v.Name)
		}
	}
	return letters
}

// AngleValues lists the sizes of the angles at which the body's forces are drawn, in radians.
func (s *System) AngleValues(body *statics.Body) []float64 {
	var all []float64
	for i := range body.Forces {
		f := &body.Forces[i]
		if factor := f.Factor(statics.X); f.Slanted() && factor.Angle != nil {
			if a := s.ProgramOf(factor.Angle).Run(s.Values); !math.IsNaN(a) {
				all = append(all, a)
			}
		}
	}
	return all
}
