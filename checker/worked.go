package checker

import "example.org/standstill/checker/derivation"

// Step is one stage of the worked solution.
type Step = derivation.Step

// Worked returns the worked solution, stage by stage.
func (r *Reference) Worked() []Step {
	forces := make([][]string, len(r.Bodies))
	for i := range r.Bodies {
		s := r.subject(Diagram, r.Bodies[i].Name)
		for k := range s.Body.Forces {
			forces[i] = append(forces[i], s.Describe(&s.Body.Forces[k]))
		}
	}
	return derivation.Worked(r.solved, forces, r.trial.IsFormula)
}
