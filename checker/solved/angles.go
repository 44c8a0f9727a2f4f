package solved

import (
	"math"
	"strings"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// AngleLetters lists the letters that stand for angles: those of forces, and that of the slope
// under the body.
func (s *System) AngleLetters(body int) []string {
	var letters []string
	for _, v := range s.Variables {
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

// ComponentsOf returns a force's components at rest, in the problem's own units.
func (s *System) ComponentsOf(f *statics.Force) (x, y float64) {
	for i := range s.Components {
		c := &s.Components[i]
		if c.Force != f {
			continue
		}
		if c.Axis == statics.X {
			x = c.Term.Value(s.Values)
		} else {
			y = c.Term.Value(s.Values)
		}
	}
	return x, y
}

// BodyName is how a body is called in a sentence: by its letter, or by its word with an article.
func (s *System) BodyName(b int) string {
	name := s.Bodies[b].Name
	if len(name) > 1 && name == strings.ToLower(name) {
		return "the " + name
	}
	return name
}
