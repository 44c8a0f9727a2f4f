package checker

import (
	"slices"

	"example.org/standstill/checker/diagram"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
	"example.org/standstill/checker/wording"
)

// sentence finds what is to be said of a line.
type sentence struct{ m *marking }

func (m *marking) sentence() sentence { return sentence{m} }

// What a sentence about a line needs to know of it.

// subject returns what sentences about an item speak of.
func (r *Reference) subject(stage Stage, item string) *wording.Subject {
	s := wording.About(r.solved, stage, item)
	s.Signed = r.rules.Signs
	return s
}

// subject is what is to be said of the line, by what was found.
func (j sentence) subject(f mistake.Finding) *wording.Subject {
	s := j.m.ref.subject(j.m.stage, j.m.item)
	if f.Used != nil && (j.m.stage != Solve || f.Code == MissingForce && f.About != "" && j.types(f.About)) {
		s.Using(*f.Used) // a line of working that has the force lacks it where it comes from
	}
	foreign := j.m.stage == Diagram && s.Body != nil && f.About != "" && !hasForce(s.Body, f.About)
	if !foreign {
		s.Name(f.About)
	}
	for _, name := range f.All {
		if s.Find(name) == nil || foreign {
			s.Stranger = wording.Stranger(name)
			continue
		}
		s.Among = append(s.Among, name)
	}
	if f.Row != nil && f.Row.Strange == mistake.SecondWeight {
		s.Force = solved.OnlyOf(s.Body, statics.Weight)
	}
	s.What, s.Instead = f.What, f.Instead
	s.NoForce = j.m.stage == Diagram && j.isLetterOfValue(s.Stranger)
	s.Typed = j.measures()
	if j.m.stage == Solve {
		s.Unknown, s.Valued = j.valued(f)
	}
	for _, side := range j.m.line.Sides {
		for _, name := range side.Names() {
			if name != j.m.item && j.m.solved.Model.Has(name) && j.m.solved.Open(expr.Letter(name)) && !slices.Contains(s.Open, name) {
				s.Open = append(s.Open, name)
			}
		}
	}
	s.Minus, s.Letters = j.minus(), j.lettersWritten()
	return s
}

// strangeForce finds what is odd about a force that the problem does not have: it may be a weight,
// beside the one that there is or where there is none, or friction where there is none.
func (j sentence) strangeForce(f mistake.Finding) mistake.StrangeForce {
	s := j.m.ref.subject(j.m.stage, j.m.item)
	if f.Code != ExtraForce || f.About != "" || len(f.All) != 1 || s.Body == nil {
		return mistake.NotStrange
	}
	switch kind := diagram.KindOf(f.All[0]); {
	case kind == statics.Weight && solved.OnlyOf(s.Body, kind) != nil:
		return mistake.SecondWeight
	case kind == statics.Weight && !solved.HasKind(s.Body, kind):
		return mistake.NoWeightHere
	case kind == statics.Friction && !solved.HasKind(s.Body, kind):
		return mistake.NoFrictionHere
	}
	return mistake.NotStrange
}

// valued returns the letter whose value the line states, if it does.
func (j sentence) valued(f mistake.Finding) (letter string, ok bool) {
	if len(j.m.line.Sides) == 1 {
		return j.m.item, expr.IsQuantity(j.m.line.Sides[0]) || f.Code.IsOfValue()
	}
	for i := 1; i < len(j.m.line.Sides); i++ {
		if name, _ := statement(j.m.solved, j.m.line.Sides[i-1], j.m.line.Sides[i]); name != "" && (f.About == "" || f.About == name) {
			return name, true
		}
	}
	return j.m.item, false
}

// lettersWritten lists the letters of components that stand in a sum and that an earlier line
// settles, as a size or with a sign.
func (j sentence) lettersWritten() []wording.Written {
	if j.m.stage != XSum && j.m.stage != YSum {
		return nil
	}
	var all []wording.Written
	for i := range j.m.solved.Components {
		c := &j.m.solved.Components[i]
		if !j.types(c.Name) {
			continue
		}
		if bound, isSigned := j.m.convention(c); bound {
			all = append(all, wording.Written{Component: c, IsSigned: isSigned})
		}
	}
	return all
}

// types reports whether a letter stands in the line.
func (j sentence) types(name string) bool {
	return slices.ContainsFunc(j.m.line.Sides, func(n *expr.Node) bool { return n.Has(name) })
}

// isLetterOfValue reports whether a letter of the problem stands for something else than a force.
func (j sentence) isLetterOfValue(name string) bool {
	letter, ok := j.m.ref.LetterOf(name, j.m.item)
	v, known := j.m.solved.Model.Variable(letter)
	return ok && known && v.Dim != quantity.Force
}

// minus reports whether the value in the line has a minus sign.
func (j sentence) minus() bool {
	return slices.ContainsFunc(j.m.line.Sides, func(n *expr.Node) bool { return n.Op == expr.Neg && expr.IsQuantity(n) })
}

// measures finds what the terms of the line measure. Plain numbers do not count: they are in the
// unit that is asked.
func (j sentence) measures() wording.Measured {
	var all wording.Measured
	for _, side := range j.m.line.Sides {
		if c, ok := j.m.solved.Component(side.Name); ok && j.m.stage == Components && c.Name == j.m.item {
			continue
		}
		for _, t := range expr.Addends(side, 1, nil) {
			d, _, known := dimensionOf(j.m.solved, t.Node)
			if !known || expr.IsZero(t.Node) || len(t.Node.Names()) == 0 && !isOnlyFunctions(t.Node) {
				continue
			}
			all.Mixed = all.Mixed || all.Known && d != all.Dim
			all.Mass = all.Mass || d == quantity.Mass
			all.Dim, all.Known = d, true
		}
	}
	return all
}

// isOnlyFunctions reports whether a term without letters is made of functions alone, as in cos 35°:
// no number in it can be a force whose unit was left out.
func isOnlyFunctions(n *expr.Node) bool {
	switch n.Op {
	case expr.Call:
		return true
	case expr.Neg, expr.Mul, expr.Div:
		return !slices.ContainsFunc(n.Args, func(arg *expr.Node) bool { return !isOnlyFunctions(arg) })
	}
	return false
}

// saidWrong words the finding: the sentence of the mistake for what was typed, else that of
// another row of its code, else that of what is unexplained. It also says which mistake that is,
// among all that have its code.
func (j sentence) saidWrong(f mistake.Finding) (text string, is sameness) {
	var all []wording.Said
	if f.Row != nil {
		all = append(all, f.Row.Said)
	}
	s := j.subject(f)
	text, asWritten := s.Line(append(all, j.m.ref.texts(f.Code, Unexplained)...))
	if f.Second {
		text = wording.Join(text, wording.SaidSecond)
	}
	return text, j.sameness(f, asWritten)
}

// saidAlmost words what must be mended before a right line counts.
func (j sentence) saidAlmost(code Code, about string) string {
	text, _ := j.subject(mistake.Finding{Code: code, About: about}).Line(j.m.ref.texts(code, HoldsAlways))
	return text
}

// texts lists what the rows of some codes say.
func (r *Reference) texts(codes ...Code) []wording.Said {
	var all []wording.Said
	for _, code := range codes {
		for _, row := range r.mistakes.Rows(code) {
			all = append(all, row.Said)
		}
	}
	return all
}

func hasForce(b *statics.Body, name string) bool { _, ok := b.Force(name); return ok }
