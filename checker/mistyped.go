package checker

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
)

// A given is exact: 3.21 kg is not the 3.2 kg of the problem, though the line comes out within the
// tolerance.

// muchBetter is what share of the line's misfit may be left with the given in place.
const muchBetter = 0.2

// orMistyped turns the judgement of a line that would be right with a given in the place of a
// number near it into that of a slip; one that is accepted only if the given fits much better.
func (m *marking) orMistyped(report Report) Report {
	if report.Verdict != Right && report.Verdict != Wrong {
		return report
	}
	number := m.mistyped(report.Verdict == Right)
	if number == nil {
		return report
	}
	slip := m.wrong(m.ref.mistakes.Mistyped())
	slip.Item, slip.Pos, slip.End = report.Item, number.Pos, number.End
	return slip
}

// mistyped finds the number of the line that should be a given.
func (m *marking) mistyped(accepted bool) *expr.Node {
	for _, l := range m.trial.Numbers.Literals(m.line.Sides) {
		name, ok := m.trial.Numbers.NearGiven(l)
		if !ok || isAnswer(m.line, l.Node) {
			continue
		}
		c := *m
		c.line.Sides, c.brief = nil, true
		for _, side := range m.line.Sides {
			is := func(n *expr.Node) bool { return n == l.Node }
			c.line.Sides = append(c.line.Sides, expr.Replace(side, is, expr.Letter(name)))
		}
		// A right line with a number near a given may be right by its own number, a rounded
		// force of about that size say; then the given fits no better.
		if accepted && c.misfit() > muchBetter*m.misfit() {
			continue
		}
		if c.markForStage().Verdict == Right {
			return l.Node
		}
	}
	return nil
}

// isAnswer reports whether a number is a side that says the value of a letter.
func isAnswer(line expr.Line, number *expr.Node) bool {
	sides := line.Sides
	return slices.ContainsFunc(sides, func(n *expr.Node) bool { return n == number || n.Op == expr.Neg && n.Args[0] == number }) &&
		(len(sides) == 1 || slices.ContainsFunc(sides, func(n *expr.Node) bool { return n.Op == expr.Name }))
}

// misfit is how far the sides of the line are from each other at rest, whatever their signs.
func (m *marking) misfit() float64 {
	sides := m.line.Sides
	if len(sides) == 1 {
		other := expr.Constant(0)
		if c, ok := m.solved.Component(m.item); ok && m.stage == Components {
			other = expr.Letter(c.Name)
		}
		sides = []*expr.Node{sides[0], other}
	}
	env := slices.Clone(m.solved.Values)
	m.solved.Fill(env, nil)
	most := 0.0
	for i := 1; i < len(sides); i++ {
		a, b := m.solved.ProgramOf(sides[i-1]).Run(env), m.solved.ProgramOf(sides[i]).Run(env)
		most = math.Max(most, math.Abs(math.Abs(a)-math.Abs(b)))
	}
	return most
}
