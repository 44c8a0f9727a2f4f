package solved

// Stage is one of the five steps of a solution.
type Stage string

// The stages, in order.
const (
	Diagram    Stage = "diagram"
	Components Stage = "components"
	XSum       Stage = "x-sum"
	YSum       Stage = "y-sum"
	Solve      Stage = "solve"
)

// Stages lists the stages in order.
var Stages = []Stage{Diagram, Components, XSum, YSum, Solve}

// Items lists what a stage asks for, in order: one empty item where there is only one, else
// components, bodies or unknowns.
func (s *System) Items(stage Stage) []string {
	var items []string
	switch stage {
	case Components:
		for _, c := range s.Components {
			items = append(items, c.Name)
		}
	case Solve:
		items = append(items, s.Find...)
	default:
		for _, b := range s.Bodies {
			items = append(items, b.Name)
		}
	}
	return items
}
