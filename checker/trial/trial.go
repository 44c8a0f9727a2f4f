// Package trial knows at which values of its letters a line is tried, and how far off
// it may be there.
//
// Start with Problem, a solved system on which lines can be tried:
//
//	tolerance.go    how far off a line may be
//	samples.go      values for the letters at which a line is tried; balance.go makes a sum zero
//	known.go        what a typed number may stand for; fraction.go exact whole numbers
//	equation.go     one "left = right" of a line, ready to be tried; edited.go the same, changed
//	compare.go      does a line hold where a sum is zero, and only there
//	terms.go        a line's terms beside those of a sum; component.go one term
//	newton.go       the unknowns for which changed sums are zero
//	atrest.go       what a line is worth at rest, by govaluate
package trial

import "example.org/standstill/checker/solved"

// Problem is a solved system, ready to try lines on it.
type Problem struct {
	Solved  *solved.System
	Samples *Samples
	Numbers *Numbers
}

// NewProblem makes a solved system ready.
func NewProblem(s *solved.System) *Problem {
	return &Problem{s, &Samples{solved: s, base: map[sampleKey][]float64{}}, newNumbers(s)}
}
