package solved

import (
	"math"

	"example.org/standstill/checker/statics"
)

// Where forces really point.

// Room returns a force's unit vector in the room, from the solved problem: x to
// the right, y up. The force's line is turned by the body's tilt.
func (s *System) Room(body *statics.Body, f *statics.Force) (x, y float64) {
	bx, by := s.UnitVector(f)
	tilt := s.Tilt(body)
	return bx*math.Cos(tilt) - by*math.Sin(tilt), bx*math.Sin(tilt) + by*math.Cos(tilt)
}

// Tilt returns how far a body's x axis is turned, in radians.
func (s *System) Tilt(body *statics.Body) float64 {
	if body.Tilt == nil {
		return 0
	}
	return s.ProgramOf(body.Tilt).Run(s.Values)
}

// Slope returns how far the surface under a body rises to the right: its tilted
// axis, or where the axes are level, the line across its normal force.
func (s *System) Slope(body *statics.Body) float64 {
	tilt := s.Tilt(body)
	if normal := OnlyOf(body, statics.Normal); tilt == 0 && normal != nil {
		x, y := s.Room(body, normal)
		// The surface is at right angles to its normal force.
		return math.Atan2(y, x) - math.Pi/2
	}
	return tilt
}

// UnitVector returns a force's unit vector on its body's axes, x to the right or up the
// slope wherever the problem counts it positive.
func (s *System) UnitVector(f *statics.Force) (x, y float64) {
	var xy [2]float64
	for _, axis := range []statics.Axis{statics.X, statics.Y} {
		t := TermOf(s.Model, f, axis)
		xy[axis] = t.Scale
		if t.Angle != nil {
			xy[axis] *= t.Function.Of(t.Angle.Run(s.Values))
		}
	}
	// The term has the problem's sign, which is the opposite one here.
	if f.XLeft {
		xy[statics.X] = -xy[statics.X]
	}
	return xy[0], xy[1]
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

// IsTilted reports whether a body's axes are not level.
func (s *System) IsTilted(body *statics.Body) bool { return math.Abs(math.Sin(s.Tilt(body))) > hardly }

// hardly is what a component of a unit vector may be and still be none: cos 90° is not quite zero
// to the machine.
const hardly = 1e-6

// SignOf returns the side to which a component of a unit vector points, 0 for none.
func SignOf(x float64) int {
	switch {
	case x > hardly:
		return 1
	case x < -hardly:
		return -1
	}
	return 0
}
