package statics

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// Solving where an angle, a coefficient or a product of unknowns makes the sums
// bend: Newton's method with a step that is halved until the sums get smaller
// (least squares, so that a sum too many does no harm), from several starts.

const (
	newtonSteps   = 60
	halvings      = 12
	sameSolution  = 1e-6
	mostStarts    = 240
	jacobianShift = 1e-6  // of an unknown, to either side
	leastSize     = 1e-3  // what is taken for the size of an unknown that is nearly zero
	atRest        = 1e-13 // of the largest force: no step makes the sums smaller
	flat          = 1e-11 // of the largest singular value: the sums do not change along this one
)

// search is Newton's method on one model.
type search struct{ m *Model }

// solve runs Newton's method from a grid of starts and wants exactly
// one solution on the sides that the problem names.
func (s search) solve(env []float64) ([]float64, error) {
	var found [][]float64
	open := false
	for _, start := range s.starts(env) {
		out, err := s.m.SolveNear(env, start)
		// A solution that can slide is found from many starts as many; it must not count as several.
		if err == ErrOpen || err == nil && s.slides(out) {
			open = true
			continue
		}
		if err != nil || s.m.Unphysical(out) != "" || s.seen(found, out) {
			continue
		}
		found = append(found, out)
	}
	switch {
	case len(found) == 0 && open:
		return nil, ErrOpen
	case len(found) == 0:
		return nil, ErrNoSolution
	case len(found) > 1:
		return nil, ErrSeveral
	}
	return found[0], nil
}

// slides reports whether the unknowns can move at a solution with no sum changing.
func (s search) slides(out []float64) bool {
	u := make([]float64, len(s.m.unknowns))
	for i, slot := range s.m.unknowns {
		u[i] = out[slot]
	}
	at := append([]float64(nil), out...)
	_, err := s.step(at, u, s.m.at(at, u))
	return err == ErrOpen
}

func (s search) seen(found [][]float64, out []float64) bool {
	for _, f := range found {
		if s.near(f, out) {
			return true
		}
	}
	return false
}

func (s search) near(a, b []float64) bool {
	for _, slot := range s.m.unknowns {
		if v := s.m.Variables[slot]; v.Angle && s.m.TurnsFully(v.Name) {
			// 0° and 360° are one direction.
			if math.Abs(math.Remainder(a[slot]-b[slot], 2*math.Pi)) > sameSolution {
				return false
			}
			continue
		}
		if math.Abs(a[slot]-b[slot]) > sameSolution*(math.Abs(a[slot])+math.Abs(b[slot])+sameSolution) {
			return false
		}
	}
	return true
}

// starts spreads the unknowns: angles over their range, everything else over
// sizes about the known forces (or about one, for a number without a unit).
func (s search) starts(env []float64) [][]float64 {
	scale := s.scale(env)
	choices := make([][]float64, len(s.m.unknowns))
	total := 1
	for i, slot := range s.m.unknowns {
		choices[i] = s.startsFor(slot, scale, env)
		total *= len(choices[i])
	}
	// The grid grows with the power of the unknowns; every stride-th start covers it evenly.
	stride := 1 + (total-1)/mostStarts
	// A stride that shares a factor with the grid would leave whole rows out.
	for stride > 1 && (stride%2 == 0 || stride%3 == 0 || stride%5 == 0) {
		stride++
	}
	var starts [][]float64
	for k := 0; k < total; k += stride {
		start := make([]float64, len(s.m.unknowns))
		rest := k
		for i, c := range choices {
			start[i] = c[rest%len(c)]
			rest /= len(c)
		}
		starts = append(starts, start)
	}
	return starts
}

func (s search) startsFor(slot int, scale float64, env []float64) []float64 {
	v := s.m.Variables[slot]
	switch {
	case v.Angle && s.m.TurnsFully(v.Name):
		return []float64{0.35, 1.13, 1.92, 2.71, 3.49, 4.28, 5.06, 5.85}
	case v.Angle:
		return []float64{0.26, 0.61, 0.96, 1.31}
	case v.Dim.Mass == 1 && v.Dim.Length == 1:
		return []float64{scale, 0.3 * scale}
	case v.Dim.Mass == 1 && v.Dim.Time == 0:
		// An unknown mass hangs there, as a rule: its weight is about as large as the forces that are known.
		return []float64{scale / 9.8, scale / 30}
	}
	// A coefficient of friction, a ratio or a length: plain numbers of the usual sizes.
	return []float64{0.4, 1.5, 0.05}
}

// scale is the largest force known from the givens alone, 1 N if none is.
func (s search) scale(env []float64) float64 {
	at := append([]float64(nil), env...)
	for _, slot := range s.m.unknowns {
		at[slot] = 0
	}
	s.m.Derive(at)
	if largest := s.m.largest(at); largest > 0 {
		return largest
	}
	return 1
}

// SolveNear runs Newton's method from one start (a value for each of Unknowns).
func (m *Model) SolveNear(env, start []float64) ([]float64, error) {
	by := search{m}
	at := append([]float64(nil), env...)
	u := append([]float64(nil), start...)
	r := m.at(at, u)
	for range newtonSteps {
		if norm(r) <= atRest*m.largest(at) {
			break
		}
		step, err := by.step(at, u, r)
		if err != nil {
			return nil, err
		}
		if r = by.damped(at, u, step, r); r == nil {
			break
		}
	}
	for i, slot := range m.unknowns {
		if m.Variables[slot].Angle {
			// Twice, since Mod keeps the sign of what is below nought.
			u[i] = math.Mod(math.Mod(u[i], 2*math.Pi)+2*math.Pi, 2*math.Pi)
		}
	}
	m.at(at, u)
	// All forces zero is a balance, and none that is looked for.
	if !m.balanced(at) || m.largest(at) == 0 {
		return nil, errNotConverged
	}
	return at, nil
}

// damped moves u along the step, halved until the sums get smaller; nil where
// they do not.
func (s search) damped(at, u, step, r []float64) []float64 {
	tried := make([]float64, len(u))
	for share := 1.0; share > math.Pow(0.5, halvings); share /= 2 {
		for i := range u {
			tried[i] = u[i] - share*step[i]
		}
		if next := s.m.at(at, tried); norm(next) < norm(r) {
			copy(u, tried)
			return next
		}
	}
	return nil
}

// step solves J·step = r in least squares. A direction in which no sum changes
// is ErrOpen.
func (s search) step(at, u, r []float64) ([]float64, error) {
	j := mat.NewDense(len(r), len(u), nil)
	moved := append([]float64(nil), u...)
	for k := range u {
		// Central differences with a share of the unknown: a millionth is small against the bend
		// and large against rounding.
		h := jacobianShift * math.Max(math.Abs(u[k]), leastSize)
		moved[k] = u[k] + h
		up := s.m.at(at, moved)
		moved[k] = u[k] - h
		down := s.m.at(at, moved)
		moved[k] = u[k]
		for i := range r {
			j.Set(i, k, (up[i]-down[i])/(2*h))
		}
	}
	var svd mat.SVD
	if !svd.Factorize(j, mat.SVDThin) {
		return nil, errNotConverged
	}
	values := svd.Values(nil)
	last := values[len(values)-1]
	if len(r) < len(u) || !(last > flat*values[0]) {
		return nil, ErrOpen
	}
	var step mat.Dense
	svd.SolveTo(&step, mat.NewDense(len(r), 1, append([]float64(nil), r...)), len(u))
	return mat.Col(nil, 0, &step), nil
}

func norm(r []float64) float64 {
	s := 0.0
	for _, x := range r {
		s += x * x
	}
	return math.Sqrt(s)
}
