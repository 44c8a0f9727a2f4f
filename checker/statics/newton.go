package statics

import (
	"math"
	"slices"

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
	jacobianShift = 1e-6
)

// solveSearching runs Newton's method from a grid of starts and wants exactly
// one solution on the sides that the problem names.
func (m *Model) solveSearching(env []float64) ([]float64, error) {
	var found [][]float64
	open := false
	for _, start := range m.starts(env) {
		out, err := m.SolveNear(env, start)
		if err == ErrOpen || err == nil && m.slides(out) {
			open = true
			continue
		}
		if err != nil || m.Unphysical(out) != "" || m.seen(found, out) {
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
func (m *Model) slides(out []float64) bool {
	u := make([]float64, len(m.unknowns))
	for i, slot := range m.unknowns {
		u[i] = out[slot]
	}
	at := append([]float64(nil), out...)
	_, err := m.step(at, u, m.at(at, u))
	return err == ErrOpen
}

func (m *Model) seen(found [][]float64, out []float64) bool {
	for _, f := range found {
		if m.near(f, out) {
			return true
		}
	}
	return false
}

func (m *Model) near(a, b []float64) bool {
	for _, slot := range m.unknowns {
		if v := m.Variables[slot]; v.Angle && m.TurnsFully(v.Name) {
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
func (m *Model) starts(env []float64) [][]float64 {
	scale := m.scale(env)
	choices := make([][]float64, len(m.unknowns))
	total := 1
	for i, slot := range m.unknowns {
		choices[i] = m.startsFor(slot, scale, env)
		total *= len(choices[i])
	}
	stride := 1 + (total-1)/mostStarts
	// A stride that shares a factor with the grid would leave whole rows out.
	for stride > 1 && (stride%2 == 0 || stride%3 == 0 || stride%5 == 0) {
		stride++
	}
	var starts [][]float64
	for k := 0; k < total; k += stride {
		start := make([]float64, len(m.unknowns))
		rest := k
		for i, c := range choices {
			start[i] = c[rest%len(c)]
			rest /= len(c)
		}
		starts = append(starts, start)
	}
	return starts
}

func (m *Model) startsFor(slot int, scale float64, env []float64) []float64 {
	v := m.Variables[slot]
	switch {
	case v.Angle && m.TurnsFully(v.Name):
		return []float64{0.35, 1.13, 1.92, 2.71, 3.49, 4.28, 5.06, 5.85}
	case v.Angle:
		return []float64{0.26, 0.61, 0.96, 1.31}
	case v.Dim.Mass == 1 && v.Dim.Length == 1:
		return []float64{scale, 0.3 * scale}
	case v.Dim.Mass == 1 && v.Dim.Time == 0:
		return []float64{scale / 9.8, scale / 30}
	}
	return []float64{0.4, 1.5, 0.05}
}

// scale is the largest force known from the givens alone, 1 N if none is.
func (m *Model) scale(env []float64) float64 {
	at := append([]float64(nil), env...)
	for _, slot := range m.unknowns {
		at[slot] = 0
	}
	m.Derive(at)
	if s := m.largest(at); s > 0 {
		return s
	}
	return 1
}

// TurnsFully reports whether a letter is part of a full-circle direction.
func (s *System) TurnsFully(name string) bool {
	for _, b := range s.Bodies {
		if slices.ContainsFunc(b.Forces, func(f Force) bool { return f.Direction != nil && f.Direction.Has(name) }) {
			return true
		}
	}
	return false
}

// SolveNear runs Newton's method from one start (a value for each of Unknowns).
func (m *Model) SolveNear(env, start []float64) ([]float64, error) {
	at := append([]float64(nil), env...)
	u := append([]float64(nil), start...)
	r := m.at(at, u)
	for range newtonSteps {
		if norm(r) <= 1e-13*m.largest(at) {
			break
		}
		step, err := m.step(at, u, r)
		if err != nil {
			return nil, err
		}
		if r = m.damped(at, u, step, r); r == nil {
			break
		}
	}
	for i, slot := range m.unknowns {
		if m.Variables[slot].Angle {
			u[i] = math.Mod(math.Mod(u[i], 2*math.Pi)+2*math.Pi, 2*math.Pi)
		}
	}
	m.at(at, u)
	if !m.balanced(at) || m.largest(at) == 0 {
		return nil, errNotConverged
	}
	return at, nil
}

// damped moves u along the step, halved until the sums get smaller; nil where
// they do not.
func (m *Model) damped(at, u, step, r []float64) []float64 {
	tried := make([]float64, len(u))
	for share := 1.0; share > math.Pow(0.5, halvings); share /= 2 {
		for i := range u {
			tried[i] = u[i] - share*step[i]
		}
		if next := m.at(at, tried); norm(next) < norm(r) {
			copy(u, tried)
			return next
		}
	}
	return nil
}

// step solves J·step = r in least squares. A direction in which no sum changes
// is ErrOpen.
func (m *Model) step(at, u, r []float64) ([]float64, error) {
	j := mat.NewDense(len(r), len(u), nil)
	moved := append([]float64(nil), u...)
	for k := range u {
		h := jacobianShift * math.Max(math.Abs(u[k]), 1e-3)
		moved[k] = u[k] + h
		up := m.at(at, moved)
		moved[k] = u[k] - h
		down := m.at(at, moved)
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
	if len(r) < len(u) || !(last > 1e-11*values[0]) {
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

// Unphysical says what is wrong with a solution, "" if nothing is: a string or a
// surface that would have to work the other way, an angle beyond its sides, a
// mass below nothing.
func (m *Model) Unphysical(env []float64) string {
	said := ""
	m.eachForce(func(f *Force) {
		size := env[m.slots[f.Name]]
		if said == "" && f.Kind != Strut && size < -tolerance*m.largest(env) {
			said = wrongSense(f)
		}
	})
	for _, slot := range m.unknowns {
		v := m.Variables[slot]
		x := env[slot]
		switch {
		case said != "":
		case v.Angle && !m.TurnsFully(v.Name) && !(x > 0 && x < math.Pi/2):
			said = "the angle " + v.Name + " comes out outside the directions of the forces"
		case v.Angle && !(x > -1e-9 && x < 2*math.Pi+1e-9):
			said = "the direction " + v.Name + " comes out larger than a full circle"
		case !v.Angle && m.sized(v.Name) == nil && x < 0 && !m.isForce(v.Name):
			said = v.Name + " comes out negative"
		}
	}
	return said
}

func (m *Model) isForce(name string) bool { _, ok := m.Force(name); return ok }

func wrongSense(f *Force) string {
	switch f.Kind {
	case Tension:
		return "the tension " + f.Name + " comes out as a push, and a string can only pull"
	case Normal:
		return "the normal force " + f.Name + " comes out as a pull, and a surface can only push"
	}
	return "the force " + f.Name + " comes out opposite to the direction in the file"
}
