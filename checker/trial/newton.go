package trial

import (
	"math"

	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
)

// SolveSums finds the unknowns for which every sum is zero, from the givens of
// env; it starts at env's own unknowns and takes Newton steps, of which one is
// enough where the rows are linear.
func (s *Samples) SolveSums(rows []solved.Sum, env []float64) ([]float64, bool) {
	at := make([]float64, len(s.solved.Values))
	copy(at, env)
	slots := s.unknownSlots()
	residual := make([]float64, len(rows))
	matrix, moves := augmented(len(rows), len(slots)), make([]float64, len(slots))
	steps := 1
	if !s.solved.Model.Linear() {
		steps = 12
	}
	for step := range steps {
		s.rowValues(rows, at, residual)
		// One step is always made: the first sample may be near zero by the problem's own solution.
		if step > 0 && zero(rows, residual, at, nearlyThere) {
			break
		}
		s.differences(rows, at, slots, residual, matrix)
		if _, ok := statics.Eliminate(matrix, moves, Hair); !ok {
			return nil, false
		}
		for j, slot := range slots {
			at[slot] += moves[j]
		}
	}
	s.rowValues(rows, at, residual)
	// More sums than unknowns, or sums with a mistake that contradict each other, have no solution;
	// elimination does not notice.
	if !zero(rows, residual, at, ExactShare) {
		return nil, false
	}
	return at, true
}

// zero reports whether every residual is small against its row's largest term.
func zero(rows []solved.Sum, residual, at []float64, share float64) bool {
	for i := range rows {
		if !(math.Abs(residual[i]) <= share*rows[i].Largest(at)+converged) {
			return false
		}
	}
	return true
}

// augmented is room for the coefficients and the right-hand sides of n unknowns.
func augmented(rows, n int) [][]float64 {
	all := make([]float64, rows*(n+1))
	matrix := make([][]float64, rows)
	for i := range matrix {
		matrix[i], all = all[:n+1], all[n+1:]
	}
	return matrix
}

// differences fills the augmented matrix: how each row changes with each
// unknown, and minus what the row is now.
func (s *Samples) differences(rows []solved.Sum, at []float64, slots []int, residual []float64, matrix [][]float64) {
	for j, slot := range slots {
		was := at[slot]
		h := slopeStep * math.Max(math.Abs(was), leastSize)
		if s.solved.Model.Linear() {
			// Where the sums are linear, a difference over any step is the slope itself, and a long
			// step loses no figures.
			h = math.Max(math.Abs(was), 1)
		}
		at[slot] = was + h
		s.solved.Model.Derive(at)
		for i := range rows {
			matrix[i][j] = (rows[i].Value(at) - residual[i]) / h
		}
		at[slot] = was
	}
	for i := range rows {
		matrix[i][len(slots)] = -residual[i]
	}
}

func (s *Samples) rowValues(rows []solved.Sum, at, into []float64) {
	s.solved.Model.Derive(at)
	for i := range rows {
		into[i] = rows[i].Value(at)
	}
}

func (s *Samples) unknownSlots() []int {
	var slots []int
	for _, name := range s.solved.Model.Unknowns() {
		slots = append(slots, s.solved.Slots[name])
	}
	return slots
}
