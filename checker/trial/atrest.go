package trial

import (
	"math"

	"example.org/standstill/checker/statics"
)

// TrueAtRest reports whether the equation holds at the solution itself: what is
// false there is never right, whatever it is elsewhere.
func (p *Problem) TrueAtRest(e *Equation) bool {
	for _, s := range e.Signs {
		env := append([]float64(nil), p.Solved.Values...)
		p.Solved.Fill(env, s)
		letters := p.Solved.LettersAt(env)
		left, err := p.Solved.Own.Tree(e.Sides[0]).Value(letters)
		if err != nil {
			continue
		}
		right, err := p.Solved.Own.Tree(e.Sides[1]).Value(letters)
		if err != nil {
			continue
		}
		if _, allowed := e.off(env, RoundedShare); math.Abs(left-right) <= allowed+e.hair(env) {
			return true
		}
	}
	return false
}

// IsFormula reports whether a letter's value depends on a given without a number,
// so that only a formula can answer it.
func (p *Problem) IsFormula(name string) bool {
	slot, ok := p.Solved.Slots[name]
	if !ok {
		return false
	}
	for i, g := range p.Solved.Givens {
		if g.Any && math.Abs(p.Samples.AtRest(1<<i, 1)[slot]-p.Solved.Values[slot]) > Felt*math.Abs(p.Solved.Values[slot]) {
			return true
		}
	}
	return false
}

// IsAWeight reports whether a value is the size of one of the weights.
func (p *Problem) IsAWeight(x float64) bool {
	for _, b := range p.Solved.Bodies {
		for _, f := range b.Forces {
			if w := p.Solved.Values[p.Solved.Slots[f.Name]]; f.Kind == statics.Weight && math.Abs(w-x) <= RoundedShare*math.Abs(x) {
				return true
			}
		}
	}
	return false
}
