package checker

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// What a link "left = right" of a line is, seen from the sum asked for.
type linkKind uint8

const (
	linkWrong  linkKind = iota
	linkAsked           // it is the sum
	linkAlways          // it is true by algebra alone
	linkTrue            // it is true at rest, but not the sum
	linkOther           // it is the other axis's sum
)

// sumPlace finds the body and axis that a sum is asked for.
func (m *marking) sumPlace() place {
	at := place{axis: statics.X}
	if m.stage == YSum {
		at.axis = statics.Y
	}
	for b := range m.Bodies {
		if m.Bodies[b].Name == m.item {
			at.body = b
		}
	}
	return at
}

// markSum judges the line that should be ΣF = 0 along one axis.
func (m *marking) markSum() Report {
	report := m.markSumAsTyped()
	if wide, ok := m.widened(); ok && report.Verdict != Right {
		if again := wide.markSumAsTyped(); again.Verdict == Right {
			return again
		}
	}
	return report
}

func (m *marking) markSumAsTyped() Report {
	at := m.sumPlace()
	signs := m.conventions()
	if len(m.line.Sides) == 1 {
		return m.markExpression(at, signs)
	}
	asked, always := false, true
	var wrongAxis *equation
	for i := 1; i < len(m.line.Sides); i++ {
		e := m.equation(m.line.Sides[i-1], m.line.Sides[i], signs)
		kind, f := m.link(e, at)
		switch kind {
		case linkWrong:
			return m.wrong(m.explainSum(e, at, f))
		case linkAsked:
			asked = true
		case linkOther:
			wrongAxis = e
		}
		always = always && kind == linkAlways
	}
	switch {
	case asked && m.hasOtherUnit():
		return m.almost(WrongUnit, "")
	case asked:
		return m.right()
	case always:
		return m.almost(HoldsAlways, "")
	case wrongAxis != nil:
		return m.wrong(finding{code: WrongAxis})
	}
	report := m.almost(TrueNotAsked, "")
	report.Settles = nil
	return report
}

// hasOtherUnit reports whether a term of the line is a number with a unit of
// something else than a force.
func (m *marking) hasOtherUnit() bool {
	for _, side := range m.line.Sides {
		for _, t := range addends(side, 1, nil) {
			unit := unitOf(t.node)
			if unit.Symbol != "" && unit.Dim != quantity.Force && !isZero(t.node) {
				return true
			}
		}
	}
	return false
}

// link says what an equation is. The finding is set where the equation holds
// where the sum holds, and yet its terms are a mistake's.
func (m *marking) link(e *equation, at place) (linkKind, *finding) {
	w := m.row(at.body, at.axis)
	tied := m.tiedFor(e)
	if cancels := m.cancels(w, tied[0]); cancels {
		if f, ok := m.termwise(e, at, tied[0]); ok {
			if f.code == "" {
				return linkAsked, nil
			}
			return linkWrong, &f
		}
	}
	for _, t := range tied {
		if !m.cancels(w, t) && m.matches(e, w, t, roundedShare) && m.trueAtRest(e) {
			if f, ok := m.termwise(e, at, t); ok && f.code != "" {
				return linkWrong, &f
			}
			return linkAsked, nil
		}
	}
	if m.always(e) {
		return linkAlways, nil
	}
	for _, t := range tied {
		other := m.row(at.body, at.axis.Other())
		if !m.cancels(other, t) && m.matches(e, other, t, roundedShare) {
			return linkOther, nil
		}
	}
	if m.follows(e, roundedShare) && m.trueAtRest(e) {
		return linkTrue, nil
	}
	return linkWrong, nil
}

// tiedFor says how the letters of equal sizes are taken: as one where the line
// uses such a letter, else first on their own.
func (r *Reference) tiedFor(e *equation) []string {
	if len(r.equals) == 0 {
		return []string{""}
	}
	for _, eq := range r.equals {
		if e.sides[0].Has(eq.name) || e.sides[1].Has(eq.name) {
			return []string{"tied"}
		}
	}
	return []string{"", "tied"}
}

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

// markExpression judges a sum that was not set equal to anything.
func (m *marking) markExpression(at place, signs []signed) Report {
	e := m.equation(m.line.Sides[0], expr.Constant(0), signs)
	kind, f := m.link(e, at)
	switch kind {
	case linkAsked:
		return m.almost(NoEquation, "")
	case linkOther:
		return m.wrong(finding{code: WrongAxis})
	case linkAlways, linkTrue:
		return m.almost(HoldsAlways, "")
	}
	return m.wrong(m.explainSum(e, at, f))
}

// explainSum finds what is wrong with a sum.
func (m *marking) explainSum(e *equation, at place, f *finding) finding {
	if f != nil {
		return *f
	}
	if near, ok := e.withoutForeign(); ok {
		if kind, wrong := m.link(near, at); kind != linkWrong && wrong == nil {
			return finding{code: Slip}
		}
	}
	for _, tied := range m.tiedFor(e) {
		if found, ok := m.search(e, at, tied); ok {
			return found
		}
	}
	across := place{at.body, at.axis.Other()}
	for _, tied := range m.tiedFor(e) {
		if !e.exact && m.matches(e, m.row(at.body, at.axis), tied, slipShare) {
			return finding{code: Slip}
		}
		if len(m.matching(e, m.singles(across), tied)) > 0 {
			return finding{code: WrongAxis}
		}
	}
	if found, ok := m.misplaced(e, at); ok {
		return found
	}
	return finding{code: Unexplained}
}
