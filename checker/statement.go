package checker

import (
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/trial"
)

// statement takes "X = number" apart, in either order. X is a letter of the
// system; a chain's inner links are no statements but for the last.
func statement(s *solved.System, left, right *expr.Node) (name string, number *expr.Node) {
	if expr.IsQuantity(left) {
		left, right = right, left
	}
	if left.Op != expr.Name || !expr.IsQuantity(right) {
		return "", nil
	}
	if _, ok := s.Model.Variable(left.Name); ok {
		return left.Name, right
	}
	for _, e := range s.Equals {
		if e.Name == left.Name {
			return left.Name, right
		}
	}
	return "", nil
}

// settled lists the unknowns asked for that a letter stands for: all that it is the letter of, or
// the size that the force has by its file.
func settled(s *solved.System, name string) []string {
	names := []string{name}
	if f, ok := s.Force(name); ok && f.Size != nil && f.Size.Op == expr.Name {
		names = append(names, f.Size.Name)
	}
	for _, e := range s.Equals {
		if e.Name == name {
			// A letter of equal sizes stands for those, and is itself none that is asked for.
			names = nil
			for _, slot := range e.Slots {
				names = append(names, s.Model.Variables[slot].Name)
			}
		}
	}
	return slices.DeleteFunc(names, func(n string) bool { return !slices.Contains(s.Find, n) })
}

// formulaFor returns the unknown that a link answers by a formula of givens, ""
// for none.
func formulaFor(p *trial.Problem, left, right *expr.Node) string {
	if left.Op != expr.Name {
		left, right = right, left
	}
	if left.Op == expr.Name && p.IsFormula(left.Name) && !p.Solved.Open(right) {
		return left.Name
	}
	return ""
}
