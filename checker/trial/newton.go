package trial

import (
	"math"

	"example.org/standstill/checker/solved"
)

// SolveSums finds the unknowns for which every sum is zero, from the givens of
// env; it starts at env's own unknowns and takes Newton steps, of which one is
// enough where the rows are linear. Elimination is written out here because it
// runs hundreds of times for one wrong number; package statics solves the
// reference itself with singular values.
func (s *Samples) SolveSums(rows []solved.Sum, env []float64) ([]float64, bool) {
	at := make([]float64, len(s.solved.Values))
	copy(at, env)
	slots := s.unknownSlots()
	residual := make([]float64, len(rows))
	matrix := make([]float64, len(rows)*(len(slots)+1))
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
		moves, ok := eliminate(matrix, len(rows), len(slots))
		if !ok {
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

// differences fills the augmented matrix: how each row changes with each
// unknown, and minus what the row is now.
func (s *Samples) differences(rows []solved.Sum, at []float64, slots []int, residual, matrix []float64) {
	width := len(slots) + 1
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
			matrix[i*width+j] = (rows[i].Value(at) - residual[i]) / h
		}
		at[slot] = was
	}
	for i := range rows {
		matrix[i*width+len(slots)] = -residual[i]
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

// eliminate solves the augmented system by Gauss's elimination with row
// interchange. Rows may outnumber columns; whether they agree is for the caller
// to see.
func eliminate(a []float64, rows, n int) ([]float64, bool) {
	width := n + 1
	for c := range n {
		best := c
		for i := c + 1; i < rows; i++ {
			if math.Abs(a[i*width+c]) > math.Abs(a[best*width+c]) {
				best = i
			}
		}
		if c >= rows || !(math.Abs(a[best*width+c]) > Hair) {
			return nil, false
		}
		for k := range width {
			a[c*width+k], a[best*width+k] = a[best*width+k], a[c*width+k]
		}
		for i := range rows {
			if i == c {
				continue
			}
			f := a[i*width+c] / a[c*width+c]
			for k := c; f != 0 && k < width; k++ {
				a[i*width+k] -= f * a[c*width+k]
			}
		}
	}
	x := make([]float64, n)
	for c := range n {
		x[c] = a[c*width+n] / a[c*width+c]
	}
	return x, true
}
