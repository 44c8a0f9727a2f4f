package statics

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// worstCondition is the condition number (of a matrix with rows and columns
// scaled to forces of one size) beyond which a system counts as ill-posed.
const worstCondition = 1e7

// singular is the share of the largest singular value below which one is zero; straight how far
// sums may be from linear by rounding, as a share of their size.
const (
	singular = 1e-12
	straight = 1e-10
)

// refinements is how often a solution that misses the balance by rounding is made better.
const refinements = 4

// solveLinear solves A·u = b by singular values, so that a sum that is 0 = 0 or
// repeats another is no equation to count.
func (m *Model) solveLinear(env []float64) ([]float64, error) {
	a, b := m.matrix(env)
	rows, columns := a.Dims()
	var svd mat.SVD
	if !svd.Factorize(a, mat.SVDThin) {
		return nil, ErrNoSolution
	}
	values := svd.Values(nil)
	// Rank by singular values and not by counting sums: x sums of forces that are all vertical
	// are 0 = 0.
	if rows < columns || values[columns-1] <= singular*values[0] {
		return nil, ErrOpen
	}
	if values[0]/values[columns-1] > worstCondition {
		return nil, ErrIllPosed
	}
	var u mat.Dense
	svd.SolveTo(&u, mat.NewDense(rows, 1, b), columns)
	out := append([]float64(nil), env...)
	for i, slot := range m.unknowns {
		out[slot] = u.At(i, 0)
	}
	m.Derive(out)
	for round := 0; round < refinements && !m.balanced(out); round++ {
		m.refine(out, &svd)
	}
	// Least squares give an answer to sums that contradict each other, too.
	if !m.balanced(out) {
		return nil, ErrNoSolution
	}
	return out, nil
}

// refine adds what the sums still miss. The coefficients are differences of sums, so
// forces of some 10⁷ N and more leave them with few digits; each round adds as many again.
func (m *Model) refine(out []float64, svd *mat.SVD) {
	missed := m.Residuals(out, nil)
	var more mat.Dense
	svd.SolveTo(&more, mat.NewDense(len(missed), 1, missed), len(m.unknowns))
	for i, slot := range m.unknowns {
		out[slot] -= more.At(i, 0)
	}
	m.Derive(out)
}

// matrix returns the coefficients of the unknowns and the negative of the rest,
// one row for each sum.
func (m *Model) matrix(env []float64) (*mat.Dense, []float64) {
	at := append([]float64(nil), env...)
	rest := m.at(at, nil)
	a := mat.NewDense(len(m.sums), len(m.unknowns), nil)
	unit := make([]float64, len(m.unknowns))
	for j := range m.unknowns {
		clear(unit)
		unit[j] = 1
		for i, r := range m.at(at, unit) {
			a.Set(i, j, r-rest[i])
		}
	}
	for i := range rest {
		rest[i] = -rest[i]
	}
	return a, rest
}

// isLinear probes whether R(u + v) − R(u) − R(v) + R(0) is zero at a few places.
func (m *Model) isLinear() bool {
	env := m.Environment()
	n := len(m.unknowns)
	u, v, both := make([]float64, n), make([]float64, n), make([]float64, n)
	for try := range 3 {
		for i := range n {
			// Numbers without a pattern, so that a product of unknowns does not cancel by chance; below
			// one radian, where a sine is bent enough to be seen.
			u[i] = 0.3 + 0.37*float64(i) + 0.21*float64(try)
			v[i] = 0.9 - 0.13*float64(i) + 0.45*float64(try)
			both[i] = u[i] + v[i]
		}
		r0, ru, rv, rb := m.at(env, nil), m.at(env, u), m.at(env, v), m.at(env, both)
		for i := range r0 {
			size := math.Abs(r0[i]) + math.Abs(ru[i]) + math.Abs(rv[i]) + 1
			if !(math.Abs(rb[i]-ru[i]-rv[i]+r0[i]) <= straight*size) {
				return false
			}
		}
	}
	return true
}
