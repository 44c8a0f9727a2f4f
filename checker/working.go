package checker

import (
	"math"
	"slices"

	"example.org/standstill/checker/trial"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
)

// explained is one way to understand a line that does not follow.
type explained struct {
	code  Code
	rank  int
	about []string
}

// explainLine finds why a line of working does not follow: it follows from sums
// with one mistake in them, or one change of the line itself would make it
// follow.
func (m *marking) explainLine(e *trial.Equation) finding {
	if m.isTension(e.Sides[0]) && m.isTension(e.Sides[1]) {
		return finding{code: EqualTensions, all: []string{e.Sides[0].Name, e.Sides[1].Name}}
	}
	if near, ok := e.WithoutForeign(); ok && m.Follows(near, trial.RoundedShare) {
		return finding{code: Slip}
	}
	if f, ok := m.fromOneSum(e); ok {
		return f
	}
	ways := append(m.fromWrongSums(e), m.fromEdits(e)...)
	if len(ways) == 0 {
		return m.fromValue(e)
	}
	slices.SortStableFunc(ways, func(a, b explained) int { return a.rank - b.rank })
	best := ways[0]
	f := finding{code: best.code, all: best.about}
	for _, w := range ways[1:] {
		if w.code == best.code && !slices.Equal(w.about, best.about) {
			return finding{code: best.code}
		}
	}
	if len(best.about) == 1 {
		f.about = best.about[0]
	}
	return f
}

// fromValue names a line X = … by the number that comes out of it, as "T = P + w" by
// the sum of the two. With an unknown in it, the number must be met exactly.
func (m *marking) fromValue(e *trial.Equation) finding {
	letter, formula := e.Sides[0], e.Sides[1]
	if letter.Op != expr.Name {
		letter, formula = formula, letter
	}
	if letter.Op != expr.Name || m.Open(formula) && !e.Exact {
		return finding{code: DoesNotFollow}
	}
	env := append([]float64(nil), m.Solution...)
	value := m.ProgramOf(formula).Run(env)
	v := m.valueOf(letter.Name)
	for tier := range 2 {
		for _, c := range m.candidates(v, tier) {
			if math.Abs(c.value-value) <= e.Fit()*math.Abs(value) && (!e.Exact || math.Abs(c.value-value) <= trial.ExactShare*math.Abs(value)) {
				return finding{code: c.code, about: m.aboutOf(letter.Name), all: []string{letter.Name}}
			}
		}
	}
	return finding{code: DoesNotFollow}
}

// fromOneSum finds the one change of a sum that gives the line as it stands.
func (m *marking) fromOneSum(e *trial.Equation) (finding, bool) {
	var all, alike []variant
	for _, tied := range m.TiedFor(e) {
		for _, at := range m.places() {
			for _, v := range m.matching(e, m.singles(at), tied) {
				if v.code == WrongAxis {
					continue
				}
				all = append(all, v)
				if m.SameTerms(e, v.row, tied, e.Fit()) {
					alike = append(alike, v)
				}
			}
		}
		if len(all) > 0 {
			break
		}
	}
	if len(alike) > 0 {
		all = alike
	}
	if len(all) == 0 {
		return finding{}, false
	}
	return m.simplest(all), true
}

// isTension reports whether a side is nothing but a string's letter.
func (m *marking) isTension(n *expr.Node) bool {
	if n.Op != expr.Name {
		return false
	}
	f, ok := m.Force(n.Name)
	return ok && f.Kind == statics.Tension
}

func rankOfCode(code Code) int {
	return slices.IndexFunc(changes, func(c change) bool { return c.code == code })
}

// fromWrongSums tries the line where the bodies would be at rest if one of the
// sums had a mistake in it.
func (m *marking) fromWrongSums(e *trial.Equation) []explained {
	var found []explained
	for _, s := range m.oneChange() {
		if s.code != Radians && carries(e.Form, s.code, len(s.about)) && m.followsFrom(e, s) {
			found = append(found, explained{s.code, rankOfCode(s.code), s.about})
		}
	}
	return found
}

func (m *marking) followsFrom(e *trial.Equation, s system) bool {
	for _, vary := range e.Vary {
		for _, signs := range e.Signs {
			if m.holdsIn(e, s, vary, signs) {
				return true
			}
		}
	}
	return false
}

func (m *marking) holdsIn(e *trial.Equation, s system, vary trial.GivenSet, signs trial.Signed) bool {
	for k := range trial.Tries {
		env, ok := m.SolveSums(s.rows, m.AtRest(vary, k))
		if !ok {
			return false
		}
		m.Fill(env, signs)
		if m.vanishes(e, env) || !e.Holds(env, trial.MistakeShare) {
			return false
		}
	}
	return true
}

// vanishes reports whether an unknown of the line is zero, where what the line
// says of it does not show.
func (m *marking) vanishes(e *trial.Equation, env []float64) bool {
	for _, side := range e.Sides {
		for _, name := range side.Names() {
			slot, ok := m.Slots[name]
			if ok && slot < len(m.Variables) && m.Open(expr.Letter(name)) && math.Abs(env[slot]) <= 1e-6*math.Abs(m.Solution[slot]) {
				return true
			}
		}
	}
	return false
}

// edit is a change of the typed line itself.
type edit struct {
	code Code
	tree *expr.Node
}

// mostEdited is how many nodes a line may have to be edited; what students write has
// fewer, and each edit is a tree of its own.
const mostEdited = 40

// fromEdits tries the line with one change made to what was typed.
func (m *marking) fromEdits(e *trial.Equation) []explained {
	difference := expr.Join(expr.Sub, e.Sides[0], e.Sides[1])
	if difference.Size() > mostEdited {
		return nil
	}
	share := trial.RoundedShare
	if e.Exact {
		share = trial.ExactShare
	}
	var found []explained
	for _, ed := range m.edits(difference) {
		mended := m.Edited(e, ed.tree)
		if !m.Follows(mended, share) {
			continue
		}
		if !m.EditedAlways(mended, ed.tree) {
			found = append(found, explained{ed.code, rankOfCode(ed.code), nil})
		}
	}
	return found
}

// edits lists the trees that one change of the typed line gives.
func (m *marking) edits(difference *expr.Node) []edit {
	all := m.editsBelow(difference, func(n *expr.Node) *expr.Node { return n })
	left, right := difference.Args[0], difference.Args[1]
	for _, k := range []float64{2, 0.5} {
		all = append(all, edit{WholeFactor, expr.Join(expr.Sub, left, expr.Join(expr.Mul, expr.Constant(k), right))})
	}
	return all
}

// editsBelow lists the edits at a node and below it; within puts a changed node
// back in its place.
func (m *marking) editsBelow(n *expr.Node, within func(*expr.Node) *expr.Node) []edit {
	var all []edit
	for _, e := range m.editsAt(n) {
		all = append(all, edit{e.code, within(e.tree)})
	}
	for i := range n.Args {
		all = append(all, m.editsBelow(n.Args[i], func(changed *expr.Node) *expr.Node {
			c := *n
			c.Args = slices.Clone(n.Args)
			c.Args[i] = changed
			return within(&c)
		})...)
	}
	return all
}

func (m *marking) editsAt(n *expr.Node) []edit {
	switch n.Op {
	case expr.Add:
		return []edit{{Sign, expr.Join(expr.Sub, n.Args[0], n.Args[1])}, {ExtraForce, n.Args[0]}, {ExtraForce, n.Args[1]}}
	case expr.Sub:
		return []edit{{Sign, expr.Join(expr.Add, n.Args[0], n.Args[1])}, {ExtraForce, n.Args[0]}}
	case expr.Neg:
		return []edit{{Sign, n.Args[0]}}
	case expr.Div:
		return []edit{{Inverted, expr.Join(expr.Div, n.Args[1], n.Args[0])}, {Inverted, expr.Join(expr.Mul, n.Args[0], n.Args[1])}}
	case expr.Mul:
		return m.editsOfProduct(n)
	case expr.Call:
		return editsOfCall(n)
	case expr.Name:
		return m.editsOfName(n)
	}
	return nil
}

func editsOfCall(n *expr.Node) []edit {
	arg := n.Args[0]
	switch n.Name {
	case "sin":
		return []edit{{SineCosine, expr.Apply("cos", arg)}}
	case "cos":
		return []edit{{SineCosine, expr.Apply("sin", arg)}}
	case "tan":
		return []edit{{Tangent, expr.Apply("sin", arg)}, {Tangent, expr.Apply("cos", arg)}, {Inverted, expr.Apply("cot", arg)}}
	case "asin":
		return []edit{{SineCosine, expr.Apply("acos", arg)}}
	case "acos":
		return []edit{{SineCosine, expr.Apply("asin", arg)}}
	}
	return nil
}

// editsOfProduct puts the normal force where m·g was written.
func (m *marking) editsOfProduct(n *expr.Node) []edit {
	a, b := n.Args[0], n.Args[1]
	all := []edit{{Inverted, expr.Join(expr.Div, a, b)}, {Inverted, expr.Join(expr.Div, b, a)}}
	if a.Op != expr.Name || b.Op != expr.Name || b.Name != "g" {
		return all
	}
	for i := range m.Bodies {
		if normal := trial.OnlyOf(&m.Bodies[i], statics.Normal); normal != nil {
			all = append(all, edit{NormalEqualsWeight, expr.Letter(normal.Name)})
		}
	}
	return all
}

func (m *marking) editsOfName(n *expr.Node) []edit {
	var all []edit
	v, ok := m.Variable(n.Name)
	if !ok {
		return nil
	}
	for _, other := range m.Variables {
		if other.Angle && v.Angle && other.Name != v.Name {
			all = append(all, edit{OtherAngle, expr.Letter(other.Name)})
		}
	}
	if m.LettersFor("").Kind(n.Name) == expr.Mass && m.Has("g") {
		all = append(all, edit{MassForWeight, expr.Join(expr.Mul, n, expr.Letter("g"))})
	}
	for i := range m.Bodies {
		all = append(all, m.editsOfForce(&m.Bodies[i], n.Name)...)
	}
	return all
}

func (m *marking) editsOfForce(body *statics.Body, name string) []edit {
	f, here := body.Force(name)
	if !here {
		return nil
	}
	var all []edit
	for _, axis := range []statics.Axis{statics.X, statics.Y} {
		if factor := f.Factor(axis); f.Slanted() && factor.Angle != nil {
			all = append(all, edit{NotResolved, expr.Join(expr.Mul, expr.Letter(name), expr.Apply(factor.Function, factor.Angle))})
		}
	}
	if normal := trial.OnlyOf(body, statics.Normal); f.Kind == statics.Weight && normal != nil {
		all = append(all, edit{NormalEqualsWeight, expr.Letter(normal.Name)})
	}
	for i := range body.Forces {
		if other := &body.Forces[i]; other != f && f.Kind == statics.Tension && other.Kind == f.Kind {
			all = append(all, edit{EqualTensions, expr.Letter(other.Name)})
		}
	}
	for b := range m.Bodies {
		for i := range m.Bodies[b].Forces {
			other := &m.Bodies[b].Forces[i]
			if &m.Bodies[b] != body && f.Kind == statics.Weight && other.Kind == f.Kind && other.Name != name {
				all = append(all, edit{OtherBody, expr.Letter(other.Name)})
			}
		}
	}
	return all
}
