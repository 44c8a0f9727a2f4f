package checker

import (
	"errors"

	"example.org/standstill/checker/expr"
)

// What a line is worth at rest, with the problem's own numbers and the solved
// unknowns, is evaluated by govaluate and decides in the end; the many samples in
// which a line is tried before that are run by expr.Program. A line without a
// value there cannot be judged.

// withoutValue returns the first side of the line that has no value at rest.
func (m *marking) withoutValue() *expr.Node {
	env := append([]float64(nil), m.solved.Values...)
	m.solved.Fill(env, nil)
	letters := m.solved.LettersAt(env)
	for _, side := range m.line.Sides {
		if _, err := m.solved.Own.Tree(side).Value(letters); errors.Is(err, expr.ErrNoValue) {
			return side
		}
	}
	return nil
}
