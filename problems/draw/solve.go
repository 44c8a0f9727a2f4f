package draw

import "math"

// solve finds the unknowns for which every row is zero. It starts at the right
// solution and takes Newton steps, of which one is enough where the rows are
// linear. The limits and the order of operations are part of the rules.
func (p *problem) solve(rows []row) ([]float64, bool) {
	at := append([]float64(nil), p.solution...)
	var slots []int
	for _, name := range p.Unknowns() {
		slot, _ := p.Slot(name)
		slots = append(slots, slot)
	}
	residual := make([]float64, len(rows))
	matrix := make([]float64, len(rows)*(len(slots)+1))
	steps := 1
	if !p.Linear() {
		steps = 12
	}
	was := math.Inf(1)
	for step := range steps {
		p.values(rows, at, residual)
		if step > 0 && zero(rows, residual, at, 1e-10) {
			break
		}
		// A path that wanders may end anywhere, and elsewhere on a computer that rounds
		// differently; one that comes near the right value goes straight there.
		is := norm(residual)
		if step > 1 && !(is < was/2) {
			return nil, false
		}
		was = is
		p.differences(rows, at, slots, residual, matrix)
		moves, ok := eliminate(matrix, len(rows), len(slots))
		if !ok {
			return nil, false
		}
		for j, slot := range slots {
			at[slot] += moves[j]
		}
	}
	p.values(rows, at, residual)
	if !zero(rows, residual, at, 1e-7) {
		return nil, false
	}
	return at, true
}

func norm(residual []float64) float64 {
	sum := 0.0
	for _, x := range residual {
		sum += x * x
	}
	return math.Sqrt(sum)
}

// zero reports whether every residual is small against its row's largest term.
func zero(rows []row, residual, at []float64, share float64) bool {
	for i := range rows {
		if !(math.Abs(residual[i]) <= share*rows[i].largest(at)+1e-12) {
			return false
		}
	}
	return true
}

// differences fills the augmented matrix: how each row changes with each unknown,
// and minus what the row is now.
func (p *problem) differences(rows []row, at []float64, slots []int, residual, matrix []float64) {
	width := len(slots) + 1
	for j, slot := range slots {
		was := at[slot]
		// Small against the bend of a sine, large against rounding;
		// on a straight line a long step loses no figures.
		h := 1e-6 * math.Max(math.Abs(was), 1e-3)
		if p.Linear() {
			h = math.Max(math.Abs(was), 1)
		}
		at[slot] = was + h
		p.Derive(at)
		for i := range rows {
			matrix[i*width+j] = (rows[i].value(at) - residual[i]) / h
		}
		at[slot] = was
	}
	for i := range rows {
		matrix[i*width+len(slots)] = -residual[i]
	}
}

func (p *problem) values(rows []row, at, into []float64) {
	p.Derive(at)
	for i := range rows {
		into[i] = rows[i].value(at)
	}
}

// eliminate solves the augmented system by Gauss's elimination with row
// interchange. Whether the rows beyond the columns agree is for the caller to see.
func eliminate(a []float64, rows, n int) ([]float64, bool) {
	width := n + 1
	for c := range n {
		best := c
		for i := c + 1; i < rows; i++ {
			if math.Abs(a[i*width+c]) > math.Abs(a[best*width+c]) {
				best = i
			}
		}
		// So small a pivot is what rounding left of zero.
		if c >= rows || !(math.Abs(a[best*width+c]) > 1e-11) {
			return nil, false
		}
		for k := range width {
			a[c*width+k], a[best*width+k] = a[best*width+k], a[c*width+k]
		}
		// The rows above as well, so that the values can be read off without substituting back.
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
