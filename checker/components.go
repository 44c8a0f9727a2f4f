package checker

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
)

// asked finds the component that a line is about and the last side that says
// what it is. A line that names a component is about that one.
func (m *marking) asked() (*component, *expr.Node) {
	name := m.item
	var value *expr.Node
	named := false
	for _, side := range m.line.Sides {
		if side.Op == expr.Name {
			if c, ok := m.component(side.Name); ok && !named && len(m.line.Sides) > 1 {
				name, named = c.name, true
				continue
			}
		}
		value = side
	}
	c, ok := m.component(name)
	if !ok {
		return nil, nil
	}
	return c, value
}

// markComponent judges "T1 cos α" for T1x. Every side but the component's own
// name must be the component, as a size or with its sign.
func (m *marking) markComponent() Report {
	report := m.markComponentAsTyped()
	if wide, ok := m.widened(); ok && report.Verdict == Wrong {
		if again := wide.markComponentAsTyped(); again.Verdict == Right {
			return again
		}
	}
	return report
}

func (m *marking) markComponentAsTyped() Report {
	c, value := m.asked()
	if c == nil {
		return Report{Verdict: Unread, Code: Unreadable, Message: saidWhichComponent}
	}
	m.item = c.name
	if value == nil || value.Op == expr.Name && value.Name == c.name {
		return m.almost(HoldsAlways, c.force.Name)
	}
	for _, side := range m.line.Sides {
		if side.Op == expr.Name && side.Name == c.name && len(m.line.Sides) > 1 {
			continue
		}
		if m.isComponent(side, c) {
			continue
		}
		f := m.explainComponent(side, c)
		code, ofDigits := m.digitsOfPart(side, c)
		switch {
		case f.code == Unexplained && code == Coarse:
			return m.almost(Coarse, c.force.Name)
		case f.code == Unexplained && ofDigits:
			f.code = code
		}
		return m.wrong(f)
	}
	if unit := unitOf(value); unit.Symbol != "" && unit.Dim != quantity.Force && !isZero(value) {
		return m.almost(WrongUnit, c.force.Name)
	}
	return m.right()
}

func isZero(n *expr.Node) bool { return n.Op == expr.Number && n.Num.Value == 0 }

func unitOf(n *expr.Node) quantity.Unit {
	for n.Op == expr.Neg {
		n = n.Args[0]
	}
	if n.Op == expr.Number || n.Op == expr.Measured {
		u, _ := quantity.Find(n.Unit)
		return u
	}
	return quantity.Unit{}
}

var bothSigns = []float64{1, -1}

func (m *marking) isComponent(side *expr.Node, c *component) bool {
	e := m.componentIs(side, c)
	for _, vary := range e.vary {
		if m.sameTerm(e, row{c.term}, vary, m.signsOf(&c.term), roundedShare) {
			return true
		}
	}
	// A size that was found already: put in as a number, which the first world leaves as
	// it is at rest, or in letters, as w/2 is.
	return m.fixed(side) && slices.ContainsFunc(e.vary, func(vary letterSet) bool {
		return m.isTerm(e, row{c.term}, m.free(vary, "", 0), m.signsOf(&c.term), roundedShare) || m.isTermAtRest(e, c, vary)
	})
}

func (m *marking) isTermAtRest(e *equation, c *component, vary letterSet) bool {
	for k := range tries {
		if !m.isTerm(e, row{c.term}, m.rest(vary, k), m.signsOf(&c.term), roundedShare) {
			return false
		}
	}
	return true
}

// componentIs is the equation "side = the component". Only what the student typed
// varies: at 60° T/2 is the component, though no cosine stands in it.
func (m *marking) componentIs(side *expr.Node, c *component) *equation {
	e := m.equation(side, expr.Letter(c.name), nil)
	e.vary = m.variations(side, m.literals(e.sides))
	return e
}

// signsOf lists the signs with which a component may be written: its size always, and
// with its own sign. Where a full-circle direction says it, the sign is the one at rest.
func (r *Reference) signsOf(t *term) []float64 {
	positive := t.scale > 0
	if t.force.Direction != nil {
		positive = t.value(r.solution) > 0
	}
	if positive {
		return bothSigns[:1]
	}
	return bothSigns
}

// sameTerm reports whether the left side has the value of the terms wherever the
// letters vary, with one and the same sign. A full-circle direction may turn the
// component's own sign from world to world.
func (r *Reference) sameTerm(e *equation, w row, vary letterSet, signs []float64, share float64) bool {
	tied := r.tiedFor(e)[0]
	for _, s := range signs {
		same, tried := true, 0
		for k := 0; k < mostTries && tried < tries && same; k++ {
			env := r.free(vary, tied, k)
			if math.IsNaN(w.value(env)) {
				continue // an arc cosine beyond one, say
			}
			tried++
			same = r.isTerm(e, w, env, []float64{s}, share)
		}
		if tried == 0 {
			same = r.isTerm(e, w, r.rest(0, 0), []float64{s}, share)
		}
		if same {
			return true
		}
	}
	return false
}

// isTerm compares the left side with the terms in one world. The component's slot
// is given the term's value, so that the equation's own tolerance serves.
func (r *Reference) isTerm(e *equation, w row, env []float64, signs []float64, share float64) bool {
	slot := r.slots[e.sides[1].Name]
	for _, s := range signs {
		r.fill(env, nil)
		env[slot] = s * w.value(env)
		if e.holds(env, share) {
			return true
		}
	}
	return false
}

// explainComponent finds the change of the component that gives what was typed.
func (m *marking) explainComponent(side *expr.Node, c *component) finding {
	name := c.force.Name
	e := m.componentIs(side, c)
	if c.term.scale == 0 {
		if onlyAbout(m.Reference, side, c.force.Name) {
			return finding{code: ExtraForce, about: name, all: []string{name}}
		}
		return finding{code: Unexplained, about: name, all: []string{name}}
	}
	at := place{c.body, c.axis}
	ways := m.changed(at, row{c.term}, len(changes), false)
	for _, t := range m.row(c.body, c.axis.Other()) {
		if t.force == c.force && t.scale != 0 {
			ways = append(ways, variant{code: WrongAxis, rank: len(changes), about: []string{name}, row: row{t}})
		}
	}
	if f, ok := m.matchTerm(e, ways); ok {
		return f
	}
	for _, v := range changeTwice(m.Reference, at, row{c.term}) {
		v.code = TwiceCounted
		if f, ok := m.matchTerm(e, []variant{v}); ok {
			return f
		}
	}
	var twice []variant
	for _, v := range ways {
		for _, w := range m.changed(at, v.row, len(changes), false) {
			twice = append(twice, both(v, w))
		}
	}
	if f, ok := m.matchTerm(e, twice); ok {
		return f
	}
	return finding{code: Unexplained, about: name, all: []string{name}}
}

// onlyAbout reports whether a tree speaks of that force alone.
func onlyAbout(r *Reference, n *expr.Node, force string) bool {
	for _, name := range n.Names() {
		if r.owner(name) == force {
			return true
		}
		if v, ok := r.Variable(force); ok && v.Size != nil && v.Size.Has(name) {
			return true
		}
	}
	return len(n.Names()) == 0 && math.Abs(constant(n)) > 0
}

func constant(n *expr.Node) float64 {
	v, err := n.Value(nil)
	if err != nil {
		return 0
	}
	return v
}

func (m *marking) matchTerm(e *equation, ways []variant) (finding, bool) {
	for _, v := range ways {
		signs := bothSigns
		if v.code == Sign {
			signs = bothSigns[:1]
		}
		for _, vary := range e.vary {
			if m.sameTerm(e, v.row, vary, signs, mistakeShare) {
				return finding{code: v.code, about: v.about[0], all: v.about[:1]}, true
			}
		}
	}
	return finding{}, false
}
