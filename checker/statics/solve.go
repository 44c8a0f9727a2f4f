package statics

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
	return search{m}.solve(env)
}
