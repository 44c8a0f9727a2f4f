package checker

import (
	"math"

	"example.org/standstill/checker/trial"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// fromAnswers lists numbers that come from other numbers of the problem rather
// than from a wrong sum.
func (m *marking) fromAnswers(v asked) []candidate {
	var all []candidate
	put := func(code Code, x float64) { all = append(all, candidate{code, x, isSeen[code]}) }
	for i, other := range m.Variables {
		if other.Name == v.name || other.Dim != v.unit.Dim || other.Role == statics.IsGiven {
			continue
		}
		if m.Open(m.LetterNode(i)) && (other.Size == nil || !other.Size.Has(v.name)) {
			put(OtherUnknown, m.Solution[i])
		}
	}
	for _, k := range []float64{2, 3, 4} {
		put(WholeFactor, k*v.value)
		put(WholeFactor, v.value/k)
	}
	for _, f := range m.factors() {
		put(Inverted, v.value*f*f)
		put(Inverted, v.value/(f*f))
	}
	switch v.unit.Dim {
	case quantity.Angle:
		put(SineCosine, math.Pi/2-v.value)
		put(Radians, v.value*quantity.Degree)
		// The direction of the sum in place of the one that balances it.
		put(Sign, v.value+math.Pi)
		put(Sign, v.value-math.Pi)
	case quantity.None:
		put(Inverted, 1/v.value)
	case quantity.Mass:
		m.putMasses(v, put)
	case quantity.Force:
		m.putForces(v, put)
	}
	return all
}

// isSeen tells which of these numbers stand in the problem or in its answers.
var isSeen = map[Code]bool{OtherUnknown: true, OtherBody: true, SharedWeight: true, NotResolved: true, NormalEqualsWeight: true}

// factors lists what a value may have been divided by instead of multiplied: the
// plain numbers that are given, and the functions of the given angles.
func (m *marking) factors() []float64 {
	var all []float64
	for i, v := range m.Variables {
		x := m.Solution[i]
		switch {
		case v.Role != statics.IsGiven || x == 0:
		case v.Dim == quantity.None:
			all = append(all, x)
		case v.Dim == quantity.Angle:
			all = append(all, math.Sin(x), math.Cos(x), math.Tan(x))
		}
	}
	for _, a := range m.Directions() {
		all = append(all, math.Sin(a.Value), math.Cos(a.Value), math.Tan(a.Value))
	}
	return all
}

func (m *marking) putMasses(v asked, put func(Code, float64)) {
	if g, ok := m.Slots["g"]; ok {
		put(MassForWeight, v.value*m.Solution[g])
		put(MassForWeight, v.value/m.Solution[g])
	}
	for i, other := range m.Variables {
		if other.Dim == quantity.Mass && other.Role == statics.IsGiven && other.Name != v.name {
			put(OtherBody, m.Solution[i])
		}
	}
}

// putForces lists what students take a force for: its share of the weight, the
// whole weight, the mass behind it, sizes put together as if at a right angle.
func (m *marking) putForces(v asked, put func(Code, float64)) {
	if g, ok := m.Slots["g"]; ok {
		put(MassForWeight, v.value/m.Solution[g])
	}
	for b := range m.Bodies {
		body := &m.Bodies[b]
		on, here := body.Force(v.forceName())
		if !here {
			continue
		}
		if weight := trial.OnlyOf(body, statics.Weight); weight != nil && weight != on {
			w := m.Solution[m.Slots[weight.Name]]
			switch on.Kind {
			case statics.Normal:
				put(NormalEqualsWeight, w)
			case statics.Friction:
				m.putFriction(body, on, put)
			case statics.Tension:
				m.putShares(body, w, put)
			}
		}
		m.putPairs(body, on, put)
	}
}

// putShares deals the weight out to strings: half of it or all of it to each of
// several.
func (m *marking) putShares(body *statics.Body, w float64, put func(Code, float64)) {
	if trial.OnlyOf(body, statics.Tension) == nil {
		put(SharedWeight, w/2)
		put(SharedWeight, w)
		return
	}
	put(NotResolved, w)
	put(WholeFactor, w/2)
}

// putFriction works the friction out from the whole weight.
func (m *marking) putFriction(body *statics.Body, on *statics.Force, put func(Code, float64)) {
	normal, weight := trial.OnlyOf(body, statics.Normal), trial.OnlyOf(body, statics.Weight)
	if on.Size == nil || normal == nil || !on.Size.Has(normal.Name) {
		return
	}
	env := append([]float64(nil), m.Solution...)
	env[m.Slots[normal.Name]] = env[m.Slots[weight.Name]]
	put(NormalEqualsWeight, m.ProgramOf(on.Size).Run(env))
}

func (m *marking) putPairs(body *statics.Body, on *statics.Force, put func(Code, float64)) {
	var sizes []float64
	for i := range body.Forces {
		if f := &body.Forces[i]; f != on {
			sizes = append(sizes, m.Solution[m.Slots[f.Name]])
		}
	}
	for i, a := range sizes {
		for _, b := range sizes[:i] {
			put(Pythagoras, math.Hypot(a, b))
			put(Pythagoras, math.Sqrt(math.Abs(a*a-b*b)))
			put(Pythagoras, a+b)
			put(Pythagoras, math.Abs(a-b))
		}
	}
}

func (v asked) forceName() string {
	if v.force == nil {
		return ""
	}
	return v.force.Name
}
