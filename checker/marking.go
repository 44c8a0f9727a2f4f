package checker

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/trial"
)

// marking is the judgement of one reading of one line.
type marking struct {
	ref    *Reference
	solved *solved.System
	trial  *trial.Problem
	stage  Stage
	item   string
	line   expr.Line
	before []Answer
	turned angleWords
	text   string

	brief    bool            // whether the line is right is all that is asked
	bindings map[string]bool // of the components, by the earlier answers; see bound
}

func (r *Reference) marking(stage Stage, item string, line expr.Line) *marking {
	return &marking{ref: r, solved: r.solved, trial: r.trial, stage: stage, item: item, line: line}
}

// conventions returns what the component letters of the line may stand for: what
// the student's earlier components settle; for the rest sizes throughout, or
// signed components throughout.
func (m *marking) conventions() []solved.Signed {
	if !slices.ContainsFunc(m.line.Sides, m.hasComponent) {
		return []solved.Signed{nil}
	}
	sizes, all := make(solved.Signed, len(m.solved.Components)), make(solved.Signed, len(m.solved.Components))
	for i := range m.solved.Components {
		bound, isSigned := m.convention(&m.solved.Components[i])
		sizes[i], all[i] = bound && isSigned, !bound || isSigned
	}
	// Every letter of the line is settled: there is one convention left to try.
	if slices.Equal(sizes, all) {
		return []solved.Signed{sizes}
	}
	return []solved.Signed{sizes, all}
}

// hasComponent reports whether a tree has the letter of a component.
func (m *marking) hasComponent(n *expr.Node) bool {
	return slices.ContainsFunc(n.Names(), func(name string) bool {
		_, ok := m.solved.Component(name)
		return ok
	})
}

// convention finds what the student's last answer about a component made of it, where
// it points to the negative side; one that points to the positive side leaves it open.
func (m *marking) convention(c *solved.Component) (bound, isSigned bool) {
	if m.bindings == nil {
		m.bindings = m.bound()
	}
	isSigned, bound = m.bindings[c.Name]
	return bound, isSigned
}

// bound reads the earlier components: which are signed, by name; the last of each counts.
func (m *marking) bound() map[string]bool {
	bound := map[string]bool{}
	for _, a := range m.before {
		if a.Stage != Components {
			continue
		}
		all, _ := m.ref.Lines(a)
		for _, l := range all {
			reading, err := m.solved.LettersFor(a.Item).Read(l.Text)
			if err != nil {
				continue
			}
			sub := m.ref.marking(Components, a.Item, reading.Lines[0])
			c, side := sub.componentAsked()
			// Of a component that points along its axis, size and signed component are one, and
			// nothing can be learnt.
			if c == nil || side == nil || c.Term.Scale >= 0 && c.Term.Angle == nil {
				continue
			}
			if isSigned, same := m.signOf(c, side); same {
				bound[c.Name] = isSigned
			}
		}
	}
	return bound
}

// signOf reports whether an accepted component was written with its sign; same
// is false where size and signed component are one, and for what is no such component.
func (m *marking) signOf(c *solved.Component, side *expr.Node) (isSigned, same bool) {
	env := m.trial.Samples.Free(0, "", 0)
	m.solved.Fill(env, nil)
	value := c.Term.Value(env)
	if value >= 0 {
		return false, false
	}
	typed := m.solved.ProgramOf(side).Run(env)
	return typed < 0, math.Abs(math.Abs(typed)+value) <= trial.SlipShare*-value
}

// componentAsked finds the component that a line is about and the last side that says
// what it is. A line that names a component is about that one.
func (m *marking) componentAsked() (*solved.Component, *expr.Node) {
	name := m.item
	var value *expr.Node
	named := false
	for _, side := range m.line.Sides {
		if side.Op == expr.Name {
			if c, ok := m.solved.Component(side.Name); ok && !named && len(m.line.Sides) > 1 {
				name, named = c.Name, true
				continue
			}
		}
		value = side
	}
	c, ok := m.solved.Component(name)
	if !ok {
		return nil, nil
	}
	return c, value
}

// unknownLetter returns the first unknown name of the line.
func (m *marking) unknownLetter() *expr.Node {
	var first *expr.Node
	for _, side := range m.line.Sides {
		side.Walk(func(n *expr.Node) {
			if n.Op == expr.Name && n.Unknown && first == nil {
				first = n
			}
		})
	}
	return first
}
