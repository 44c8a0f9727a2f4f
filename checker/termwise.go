package checker

import (
	"math"
	"slices"

	"example.org/standstill/checker/trial"
)

// termwise compares the line's terms one by one with the sum's, and with those of
// mistakes that happen to hold just where the sum holds (T1 sin θ = T2 sin θ). An
// empty code says that the terms are the sum's own.
func (m *marking) termwise(e *trial.Equation, at trial.Place, tied string) (finding, bool) {
	w := m.SumOf(at.Body, at.Axis)
	if m.SameTerms(e, w, tied, trial.RoundedShare) {
		return finding{}, true
	}
	for _, k := range wholeScales {
		if m.SameTerms(e, trial.Scaled(w, k), tied, trial.RoundedShare) {
			return finding{}, true
		}
	}
	if bare, ok := trial.Divided(w); ok && !m.Always(e) && m.SameTerms(e, bare, tied, trial.RoundedShare) {
		return finding{}, true
	}
	env := m.Free(^trial.GivenSet(0), tied, 0)
	m.Balance(w, env, tied != "", ^trial.GivenSet(0))
	for _, v := range m.singles(at) {
		if v.code != SineCosine && v.code != Tangent && v.code != Inverted {
			continue
		}
		// Only a mistaken sum that is zero just where the right one is.
		if math.Abs(v.row.Value(env)) <= 1e-9*v.row.Largest(env) && m.SameTerms(e, v.row, tied, e.Fit()) {
			f := finding{code: v.code, all: slices.Clone(v.about)}
			if len(v.about) == 1 {
				f.about = v.about[0]
			}
			return f, true
		}
	}
	return finding{}, false
}

// wholeScales are what a whole sum may have been multiplied by.
var wholeScales = []float64{2, 3, 4, 1. / 2, 1. / 3, 1. / 4}
