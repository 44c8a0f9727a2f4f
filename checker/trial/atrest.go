package trial

import (
	"math"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
)

// LettersAt gives each letter its value in an environment.
func (p *Problem) LettersAt(env []float64) map[string]float64 {
	values := make(map[string]float64, len(p.Slots))
	for name, slot := range p.Slots {
		values[name] = env[slot]
	}
	return values
}

// TrueAtRest reports whether the equation holds at the solution itself: what is
// false there is never right, whatever it is elsewhere.
func (p *Problem) TrueAtRest(e *Equation) bool {
	for _, s := range e.Signs {
		env := append([]float64(nil), p.Solution...)
		p.Fill(env, s)
		letters := p.LettersAt(env)
		left, err := p.Own.Tree(e.Sides[0]).Value(letters)
		if err != nil {
			continue
		}
		right, err := p.Own.Tree(e.Sides[1]).Value(letters)
		if err != nil {
			continue
		}
		if _, allowed := e.off(env, RoundedShare); math.Abs(left-right) <= allowed+Hair*e.most {
			return true
		}
	}
	return false
}

// IsFormula reports whether a letter's value depends on a given without a number,
// so that only a formula can answer it.
func (p *Problem) IsFormula(name string) bool {
	slot, ok := p.Slots[name]
	if !ok {
		return false
	}
	for i, g := range p.Givens {
		if g.Any && math.Abs(p.AtRest(1<<i, 1)[slot]-p.Solution[slot]) > 1e-6*math.Abs(p.Solution[slot]) {
			return true
		}
	}
	return false
}

// Open reports whether an unknown stands in the tree.
func (p *Problem) Open(n *expr.Node) bool {
	for _, name := range n.Names() {
		slot, ok := p.Slots[name]
		if !ok || slot >= len(p.Variables) || p.Variables[slot].Role == statics.IsUnknown {
			return true
		}
		if p.Variables[slot].Role == statics.IsDerived && p.Open(p.Variables[slot].Size) {
			return true
		}
	}
	return false
}
