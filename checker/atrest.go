package checker

import (
	"errors"
	"math"

	"example.org/standstill/checker/expr"
)

// What a line is worth at rest, with the problem's own numbers and the solved
// unknowns, is evaluated by govaluate and decides in the end; the many worlds in
// which a line is tried before that are run by expr.Program. A line without a
// value there cannot be judged.

// lettersAt gives each letter its value in an environment.
func (r *Reference) lettersAt(env []float64) map[string]float64 {
	values := make(map[string]float64, len(r.slots))
	for name, slot := range r.slots {
		values[name] = env[slot]
	}
	return values
}

// worthless returns the first side of the line that has no value at rest.
func (m *marking) worthless() *expr.Node {
	env := append([]float64(nil), m.solution...)
	m.fill(env, nil)
	letters := m.lettersAt(env)
	for _, side := range m.line.Sides {
		if _, err := m.own.tree(side).Value(letters); errors.Is(err, expr.ErrNoValue) {
			return side
		}
	}
	return nil
}

// trueAtRest reports whether the equation holds at the solution itself: what is
// false there is never right, whatever it is elsewhere.
func (r *Reference) trueAtRest(e *equation) bool {
	for _, s := range e.signs {
		env := append([]float64(nil), r.solution...)
		r.fill(env, s)
		letters := r.lettersAt(env)
		left, err := r.own.tree(e.sides[0]).Value(letters)
		if err != nil {
			continue
		}
		right, err := r.own.tree(e.sides[1]).Value(letters)
		if err != nil {
			continue
		}
		if _, allowed := e.off(env, roundedShare); math.Abs(left-right) <= allowed+hair*e.most {
			return true
		}
	}
	return false
}
