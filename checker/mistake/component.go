package mistake

import (
	"slices"

	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/trial"
)

// Component explains why what was typed is not the component, by what makes of the component
// what was typed. The equation is that of trial.ComponentIs.
func (s *Search) Component(e *trial.Equation, c *solved.Component) Finding {
	if _, ok := s.p.Foreign(e); ok && c.Force.Slanted() {
		// With an angle from nowhere, any function of it fits something.
		return s.named(OtherAngle, c.Force.Name)
	}
	at := solved.Place{Body: c.Body, Axis: c.Axis}
	sum := solved.Sum{c.Term}
	ways := s.changed(at, sum, s.rows, false)
	// A single component has no “all terms”, but a row that changes a whole sum may still apply to it.
	for _, row := range s.rows {
		if row.Sum != nil {
			for _, change := range row.Sum(s.p, at, sum) {
				change.Row, change.Cost = row, change.Cost+row.Cost
				ways = append(ways, change)
			}
		}
	}
	best := s.cheapestWay(e, ways, nil)
	if best == nil {
		best = s.cheapestPair(e, at, ways)
	}
	if best == nil {
		return s.named(Unexplained, c.Force.Name)
	}
	return finding(best.Row, c.Force.Name)
}

// cheapestPair tries two changes of a component. A pair is made only where it gives what was typed:
// there are very many.
func (s *Search) cheapestPair(e *trial.Equation, at solved.Place, ways []Change) (best *Change) {
	for _, first := range ways {
		if first.Row.Alone {
			continue
		}
		scratch := slices.Clone(first.Sum)
		for _, row := range s.rows {
			if row.Alone {
				continue
			}
			s.eachTerm(at, first.Sum, scratch, row, func(second Change) {
				gives := func(vary solved.GivenSet) bool {
					return s.p.SameTerm(e, scratch, vary, trial.BothSigns, trial.MistakeShare)
				}
				if !slices.ContainsFunc(e.Vary, gives) {
					return
				}
				second.Sum = slices.Clone(scratch)
				best = s.cheapestWay(e, []Change{both(first, second)}, best)
			})
		}
	}
	return best
}

// cheapestWay picks among the changes that give what was typed. A component may be typed
// as a size, so a wrong sign is seen only where the sign alone is wrong.
func (s *Search) cheapestWay(e *trial.Equation, ways []Change, best *Change) *Change {
	for i := range ways {
		w := &ways[i]
		if best != nil && w.Cost >= best.Cost || !w.Row.shows(e.Form, 1) {
			continue
		}
		signs := trial.BothSigns
		if w.Row.Signed {
			// Taken with either sign, a wrong sign would explain the right component.
			signs = trial.BothSigns[:1]
		}
		for _, vary := range e.Vary {
			if s.p.SameTerm(e, w.Sum, vary, signs, trial.MistakeShare) {
				chosen := *w
				best = &chosen
				break
			}
		}
	}
	return best
}
