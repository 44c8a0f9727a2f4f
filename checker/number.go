package checker

import (
	"math"
	"slices"

	"example.org/standstill/checker/trial"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// candidate is a number that a mistake gives for a letter. They come in tiers:
// single changes, another g, pairs of changes.
type candidate struct {
	code  Code
	value float64
	// seen marks a number that stands in the problem or in its answers, such as the
	// weight: a student needs no sum to write it.
	seen bool
}

// explainValue finds the mistake whose number rounds to what was typed; the
// nearest wins, and of those that are equally near the first in order.
func (m *marking) explainValue(v asked, a given) finding {
	for tier := range 2 {
		if code, ok := nearest(m.candidates(v, tier), a); ok {
			return finding{code: code}
		}
	}
	if f := m.explainDigits(v, a); f.code != Unexplained {
		return f
	}
	if code, ok := nearest(m.candidates(v, 2), a); ok {
		return finding{code: code}
	}
	return finding{code: Unexplained}
}

// nearest picks the candidate that rounds to what was typed and lies nearest to it;
// nearly equal distances say nothing, so the first in order stays. A number that is
// seen in the problem is preferred where it lies but a little further off.
func nearest(all []candidate, a given) (Code, bool) {
	best, found := pick(all, a, func(candidate) bool { return true })
	seen, ok := pick(all, a, func(c candidate) bool { return c.seen })
	if ok && math.Abs(seen.value-best.value) > 1e-9*a.half && seen.off(a) < best.off(a)+0.4*a.half {
		best = seen
	}
	return best.code, found
}

// pick finds the nearest of the candidates that may be taken. One figure alone is
// explained only by a number that is it exactly.
func pick(all []candidate, a given, may func(candidate) bool) (best candidate, found bool) {
	for _, c := range all {
		off := c.off(a)
		fits := off <= a.half*(1+1e-9) && a.number.Figures >= 2 || off <= 1e-9*math.Abs(a.value)
		if fits && may(c) && (!found || off < best.off(a)-0.2*a.half) {
			best, found = c, true
		}
	}
	return best, found
}

// off is how far a typed number lies from the candidate. A mistake may turn a size's
// sign, which a student leaves out or not.
func (c candidate) off(a given) float64 {
	return min(math.Abs(c.value-a.value), math.Abs(math.Abs(c.value)-a.value))
}

// explainDigits names what needs no physics: a power of ten, a sign, a slip.
func (m *marking) explainDigits(v asked, a given) finding {
	ratio := a.value / v.value
	switch {
	case v.value == 0:
	case math.Abs(ratio+1) < trial.RoundedShare && v.unit.Dim != quantity.Angle:
		return finding{code: Sign}
	case ratio > 0 && isPowerOfTen(ratio, trial.RoundedShare):
		return finding{code: PowerOfTen}
	case math.Abs(ratio-1) <= 0.05:
		return finding{code: Slip}
	}
	return finding{code: Unexplained}
}

func isPowerOfTen(ratio, share float64) bool {
	power := math.Round(math.Log10(ratio))
	return power != 0 && math.Abs(ratio/math.Pow(10, power)-1) <= share
}

// candidates returns the numbers of one tier for a letter; they are made when
// first asked for.
func (m *marking) candidates(v asked, tier int) []candidate {
	key := v.name + "\x00" + string(rune('0'+tier))
	m.making.Lock()
	made, ok := m.wrongNumbers[key]
	m.making.Unlock()
	if ok {
		return made
	}
	switch tier {
	case 0:
		made = append(m.fromSums(v, m.oneChange()), m.fromAnswers(v)...)
		made = inOrder(slices.DeleteFunc(made, func(c candidate) bool {
			return math.Abs(c.value-v.value) <= trial.RoundedShare*math.Abs(v.value)
		}))
	case 1:
		made = m.fromOtherG(v)
	case 2:
		if m.Linear() {
			made = m.fromSums(v, m.twoChanges())
		}
	}
	m.making.Lock()
	m.wrongNumbers[key] = made
	m.making.Unlock()
	return made
}

// answerOrder is the order of preference among equal numbers, where it is not
// the table of changes' order: not-resolved before shared-weight, missing-force
// before factor, other-unknown before other-angle.
var answerOrder = []Code{MassForWeight, NormalEqualsWeight, Sign, SineCosine, MissingForce, OtherBody, OtherUnknown, NotResolved,
	ExtraForce, WrongAxis, OtherAngle, Tangent, Inverted, EqualTensions, SharedWeight, TwiceCounted,
	Pythagoras, WholeFactor, Radians}

func inOrder(all []candidate) []candidate {
	var sorted []candidate
	for _, code := range answerOrder {
		for _, c := range all {
			if c.code == code {
				sorted = append(sorted, c)
			}
		}
	}
	return sorted
}

// system is every sum, with changes.
type system struct {
	code  Code
	about []string
	rows  []trial.Sum
}

func (r *Reference) replaced(at trial.Place, v variant) system {
	rows := append([]trial.Sum(nil), r.Sums...)
	rows[2*at.Body+int(at.Axis)] = v.row
	return system{v.code, v.about, rows}
}

func (r *Reference) places() []trial.Place {
	var all []trial.Place
	for b := range r.Bodies {
		all = append(all, trial.Place{Body: b, Axis: statics.X}, trial.Place{Body: b, Axis: statics.Y})
	}
	return all
}

// oneChange lists the systems with one change, and those in which a habit changes
// every sum in the same way.
func (r *Reference) oneChange() []system {
	var all []system
	for _, at := range r.places() {
		for _, v := range r.singles(at) {
			if !v.apart && v.code != WrongAxis && v.code != SharedWeight && v.code != Radians && v.code != OtherG {
				all = append(all, r.replaced(at, v))
			}
		}
	}
	for _, c := range changes {
		if c.each != nil && isHabit[c.code] && !c.apart {
			all = append(all, r.habit(c))
		}
	}
	return append(all, r.inRadians())
}

// isHabit tells which mistakes a student makes everywhere at once.
var isHabit = map[Code]bool{SineCosine: true, NotResolved: true, MassForWeight: true, Tangent: true, NormalEqualsWeight: true, OtherAngle: true}

func (r *Reference) habit(c change) system {
	s := system{code: c.code}
	for _, at := range r.places() {
		w := append(trial.Sum(nil), r.SumOf(at.Body, at.Axis)...)
		for i := range w {
			if ways := c.each(r, at, w[i]); len(ways) > 0 {
				w[i] = ways[0]
			}
		}
		s.rows = append(s.rows, w)
	}
	return s
}

// inRadians takes every angle's degrees for radians.
func (r *Reference) inRadians() system {
	s := system{code: Radians}
	for _, w := range r.Sums {
		w = append(trial.Sum(nil), w...)
		for i := range w {
			w[i].Radians = true
		}
		s.rows = append(s.rows, w)
	}
	return s
}

// isCommon tells which changes are tried two at a time.
var isCommon = map[Code]bool{Sign: true, SineCosine: true, NotResolved: true, MassForWeight: true, OtherAngle: true, MissingForce: true}

// twoChanges lists the systems with two common changes, in one sum or in two.
func (r *Reference) twoChanges() []system {
	var all []system
	places := r.places()
	for p, at := range places {
		for _, first := range r.singles(at) {
			if !isCommon[first.code] || first.apart {
				continue
			}
			for _, second := range r.changed(at, first.row, first.rank+1, false) {
				if isCommon[second.code] && !second.apart {
					all = append(all, r.replaced(at, both(first, second)))
				}
			}
			one := r.replaced(at, first)
			for _, other := range places[p+1:] {
				for _, second := range r.singles(other) {
					if isCommon[second.code] && !second.apart {
						rows := append([]trial.Sum(nil), one.rows...)
						rows[2*other.Body+int(other.Axis)] = second.row
						all = append(all, system{code: earlier(first, second), rows: rows})
					}
				}
			}
		}
	}
	return all
}

func earlier(a, b variant) Code {
	if a.rank <= b.rank {
		return a.code
	}
	return b.code
}

// fromSums solves each changed system for the letter.
func (m *marking) fromSums(v asked, systems []system) []candidate {
	var all []candidate
	for _, s := range systems {
		env, ok := m.SolveSums(s.rows, m.Solution)
		if !ok {
			continue
		}
		m.Fill(env, nil)
		if x := env[v.slot]; m.agree(v, env) && !math.IsNaN(x) && math.Abs(x) < 1e4*math.Abs(v.value)+1e-9 {
			all = append(all, candidate{code: s.code, value: x})
		}
	}
	return all
}

// agree reports whether the sizes that a letter of equal sizes stands for are
// equal still.
func (m *marking) agree(v asked, env []float64) bool {
	for _, e := range m.Equals {
		for _, slot := range e.Slots {
			if e.Name == v.name && math.Abs(env[slot]-env[e.Slots[0]]) > 1e-6*math.Abs(env[slot]) {
				return false
			}
		}
	}
	return true
}

// fromOtherG works the value out with other values of g that are in use.
func (m *marking) fromOtherG(v asked) []candidate {
	slot, ok := m.Slots["g"]
	if !ok {
		return nil
	}
	var all []candidate
	for _, g := range trial.UsualG {
		env := append([]float64(nil), m.Solution[:len(m.Variables)]...)
		if math.Abs(g-env[slot]) < 1e-9 {
			continue
		}
		env[slot] = g
		if solved, ok := m.SolveSums(m.Sums, env); ok {
			m.Fill(solved, nil)
			all = append(all, candidate{code: OtherG, value: solved[v.slot]})
		}
	}
	return all
}
