package checker

import (
	"math"
	"slices"
)

// cancels reports whether a row is zero whatever its letters are.
func (r *Reference) cancels(w row, tied string) bool {
	for k := range tries {
		env := r.free(^letterSet(0), tied, k)
		if math.Abs(w.value(env)) > 1e-9*w.largest(env) {
			return false
		}
	}
	return true
}

// termwise compares the line's terms one by one with the sum's, and with those of
// mistakes that happen to hold just where the sum holds (T1 sin θ = T2 sin θ). An
// empty code says that the terms are the sum's own.
func (m *marking) termwise(e *equation, at place, tied string) (finding, bool) {
	w := m.row(at.body, at.axis)
	if m.sameTerms(e, w, tied, roundedShare) {
		return finding{}, true
	}
	for _, k := range wholeScales {
		if m.sameTerms(e, scaled(w, k), tied, roundedShare) {
			return finding{}, true
		}
	}
	if bare, ok := divided(w); ok && !m.always(e) && m.sameTerms(e, bare, tied, roundedShare) {
		return finding{}, true
	}
	env := m.free(^letterSet(0), tied, 0)
	m.settle(w, env, tied != "", ^letterSet(0))
	for _, v := range m.singles(at) {
		if v.code != SineCosine && v.code != Tangent && v.code != Inverted {
			continue
		}
		// Only a mistaken sum that is zero just where the right one is.
		if math.Abs(v.row.value(env)) <= 1e-9*v.row.largest(env) && m.sameTerms(e, v.row, tied, e.fit()) {
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

func scaled(w row, k float64) row {
	all := slices.Clone(w)
	for i := range all {
		all[i].scale *= k
	}
	return all
}

// divided returns the row without the function that all its terms share: F1 = F2 for
// F1 cos θ = F2 cos θ.
func divided(w row) (row, bool) {
	bare := slices.Clone(w)
	var first *term
	for i := range bare {
		t := &bare[i]
		if t.scale == 0 {
			continue
		}
		if t.letter == "" || t.function == whole || first != nil && (t.letter != first.letter || t.function != first.function) {
			return nil, false
		}
		if first == nil {
			first = &w[i]
		}
		t.function = whole
	}
	return bare, first != nil
}

// sameTerms reports whether the line's terms are the row's, in any order and
// perhaps all with the opposite sign, to a share of each.
func (r *Reference) sameTerms(e *equation, w row, tied string, share float64) bool {
	for _, vary := range e.vary {
		for _, s := range e.signs {
			if r.sameTermsIn(e, w, tied, vary, s, share) {
				return true
			}
		}
	}
	return false
}

func (r *Reference) sameTermsIn(e *equation, w row, tied string, vary letterSet, s signed, share float64) bool {
	for k := range tries {
		env := r.worldIn(e.room, worldKey{vary, tied, k, false})
		e.room = env
		r.fill(env, s)
		if !r.termsAgree(e, w, env, share) {
			return false
		}
	}
	return true
}

// termsAgree compares the terms in one world; those that are zero there do not count.
func (r *Reference) termsAgree(e *equation, w row, env []float64, share float64) bool {
	var typedRoom, wantRoom [16]float64
	typed, want := typedRoom[:0], wantRoom[:0]
	for i, t := range e.terms {
		v := t.Run(env)
		if e.minus[i] {
			v = -v
		}
		if v != 0 {
			typed = append(typed, v)
		}
	}
	for i := range w {
		if v := w[i].value(env); v != 0 {
			want = append(want, v)
		}
	}
	slices.Sort(want)
	slices.Sort(typed)
	if len(typed) != len(want) {
		typed, want = addedUp(typed), addedUp(want)
	}
	if len(typed) != len(want) {
		return false
	}
	if e.exact {
		share = exactShare
	}
	if alike(typed, want, share) {
		return true
	}
	for i := range typed {
		typed[i] = -typed[i]
	}
	slices.Reverse(typed)
	return alike(typed, want, share)
}

// addedUp adds up the terms that are equal: 2 T cos θ is two of them.
func addedUp(sorted []float64) []float64 {
	var sums []float64
	for i, v := range sorted {
		if i > 0 && math.Abs(v-sorted[i-1]) <= exactShare*math.Abs(v) {
			sums[len(sums)-1] += v
			continue
		}
		sums = append(sums, v)
	}
	slices.Sort(sums)
	return sums
}

func alike(a, b []float64, share float64) bool {
	for i := range a {
		if !(math.Abs(a[i]-b[i]) <= share*math.Abs(b[i])) {
			return false
		}
	}
	return true
}
