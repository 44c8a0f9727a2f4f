package statics

import "math"

// Unphysical says what is wrong with a solution, "" if nothing is: a string or a
// surface that would have to work the other way, an angle beyond its sides, a
// mass below nothing.
func (m *Model) Unphysical(env []float64) string {
	said := ""
	if f := m.WrongWay(env); f != nil {
		said = wrongSense(f)
	}
	for _, slot := range m.unknowns {
		v := m.Variables[slot]
		x := env[slot]
		switch {
		case said != "":
		case v.Angle && !m.TurnsFully(v.Name) && !(x > 0 && x < math.Pi/2):
			said = "the angle " + v.Name + " would not be between 0° and 90°"
		case v.Angle && !(x > -1e-9 && x < 2*math.Pi+1e-9):
			said = "the direction " + v.Name + " would be outside the range from 0° to 360°"
		case !v.Angle && m.sized(v.Name) == nil && x < 0 && !m.isForce(v.Name):
			said = v.Name + " would be negative"
		}
	}
	return said
}

// WrongWay returns the first force that would have to act the other way, nil if none would.
func (m *Model) WrongWay(env []float64) (wrong *Force) {
	m.eachForce(func(f *Force) {
		// A strut may push or pull, so its sign is no contradiction.
		if wrong == nil && f.Kind != Strut && env[m.slots[f.Name]] < -tolerance*m.largest(env) {
			wrong = f
		}
	})
	return wrong
}

func (m *Model) isForce(name string) bool { _, ok := m.Force(name); return ok }

func wrongSense(f *Force) string {
	switch f.Kind {
	case Tension:
		return "the tension " + f.Name + " would be a push, but a string can only pull"
	case Normal:
		return "the normal force " + f.Name + " would be a pull, but a surface can only push"
	}
	return "the force " + f.Name + " would act in the opposite direction to the one in the file"
}
