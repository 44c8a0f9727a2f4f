package statics

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
)

// What a system can be that has no single solution. The texts are for the author
// of the problem; a caller adds the place.
var (
	ErrNoSolution   = errors.New("no values satisfy all equations")
	ErrOpen         = errors.New("there are more unknowns than equations: they do not determine everything that is asked")
	ErrSeveral      = errors.New("more than one set of values satisfies all equations")
	ErrNoUnknown    = errors.New("nothing is unknown, and the forces do not balance")
	ErrIllPosed     = errors.New("the equations hardly determine the unknowns: a tiny change of a given would change the answer completely")
	errNotConverged = errors.New("not converged")
)

// tolerance is how near zero a sum must be, as a share of the largest force.
const tolerance = 1e-9

// worstCondition is the condition number (of a matrix with rows and columns
// scaled to forces of one size) beyond which a system counts as ill-posed.
const worstCondition = 1e7

// Solve returns the environment in which every sum is zero, for the givens of
// env; its unknowns are ignored. The errors are those of this package.
func (m *Model) Solve(env []float64) ([]float64, error) {
	if len(m.unknowns) == 0 {
		out := append([]float64(nil), env...)
		m.Derive(out)
		if !m.balanced(out) {
			return nil, ErrNoUnknown
		}
		return out, nil
	}
	if m.linear {
		return m.solveLinear(env)
	}
	return m.solveSearching(env)
}

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
	if rows < columns || values[columns-1] <= 1e-12*values[0] {
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
	if !m.balanced(out) {
		return nil, ErrNoSolution
	}
	return out, nil
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

// at evaluates the sums with the unknowns at u (all zero for nil).
func (m *Model) at(env, u []float64) []float64 {
	for i, slot := range m.unknowns {
		env[slot] = 0
		if u != nil {
			env[slot] = u[i]
		}
	}
	m.Derive(env)
	return m.Residuals(env, make([]float64, 0, len(m.sums)))
}

// isLinear probes whether R(u + v) − R(u) − R(v) + R(0) is zero at a few places.
func (m *Model) isLinear() bool {
	env := m.Environment()
	n := len(m.unknowns)
	u, v, both := make([]float64, n), make([]float64, n), make([]float64, n)
	for try := range 3 {
		for i := range n {
			u[i] = 0.3 + 0.37*float64(i) + 0.21*float64(try)
			v[i] = 0.9 - 0.13*float64(i) + 0.45*float64(try)
			both[i] = u[i] + v[i]
		}
		r0, ru, rv, rb := m.at(env, nil), m.at(env, u), m.at(env, v), m.at(env, both)
		for i := range r0 {
			size := math.Abs(r0[i]) + math.Abs(ru[i]) + math.Abs(rv[i]) + 1
			if !(math.Abs(rb[i]-ru[i]-rv[i]+r0[i]) <= 1e-10*size) {
				return false
			}
		}
	}
	return true
}

// balanced reports whether every sum is zero, measured against its largest term.
func (m *Model) balanced(env []float64) bool {
	largest := m.largest(env)
	for _, s := range m.sums {
		if !(math.Abs(s.value(env)) <= tolerance*largest) {
			return false
		}
	}
	return true
}

func (m *Model) largest(env []float64) float64 {
	largest := 0.0
	for _, s := range m.sums {
		for _, t := range s.terms {
			largest = math.Max(largest, math.Abs(env[t.slot]))
		}
	}
	return largest
}
