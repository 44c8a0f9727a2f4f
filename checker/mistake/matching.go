package mistake

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/trial"
)

// What an explanation costs more than its mistakes do by themselves, by the way in which the
// line comes out of them.
const (
	costFromSystem = 1 // it follows from the sums with a mistake in one of them
	costUnseen     = 2 // a force is concerned that the line does not speak of
)

// foreignAngle finds an angle that is none of the problem's. With it, nothing else can be told.
func (s *Search) foreignAngle(e *trial.Equation) (Finding, bool) {
	force, ok := s.p.Foreign(e)
	switch {
	case !ok:
		return Finding{}, false
	case force == "":
		return s.named(OtherAngle), true
	}
	return s.named(OtherAngle, force), true
}

// fromOtherSums finds the mistakes in other sums, where what follows from one of them was put into
// this one.
func (s *Search) fromOtherSums(e *trial.Equation, at solved.Place) []Change {
	others := slices.DeleteFunc(slices.Clone(s.oneMistake()), func(one system) bool { return !one.all && one.at == at })
	return s.fromSystems(e, others)
}

// fromLine asks each row whether the equation shows its mistake by itself; last asks those that
// have to wait until nothing else explains it.
func (s *Search) fromLine(e *trial.Equation, last bool) (Finding, bool) {
	for _, row := range s.rows {
		if row.Line == nil || row.LineLast != last {
			continue
		}
		if about, ok := row.Line(s.p, e); ok {
			return finding(row, about...), true
		}
	}
	return Finding{}, false
}

// matching keeps the changes after which the equation would be right, and adds to their cost
// how far the line's terms are from theirs.
func (s *Search) matching(e *trial.Equation, changes []Change, tied string) []Change {
	var found []Change
	for _, c := range changes {
		if c.Row.shows(e.Form, len(c.About)) && s.p.Matches(e, c.Sum, tied, trial.MistakeShare) {
			found = s.weighed(found, e, c, tied)
		}
	}
	return found
}

// weighed appends a change with what it costs more, the less the line's terms are like its own.
func (s *Search) weighed(found []Change, e *trial.Equation, c Change, tied string) []Change {
	if c.second != nil && c.Row.Absent && len(c.About) == 1 && (e.Sides[0].Has(c.About[0]) || e.Sides[1].Has(c.About[0])) {
		c.Row, c.About = c.second.Row, c.second.About // what the line speaks of is not missing
	}
	if len(c.About) > 1 {
		c.Cost += costOfForce * float64(len(c.About)-1)
	}
	// Hardly a cost, but enough to choose among changes that give the same numbers.
	if !s.p.InLetters(e, c.Sum, e.Fit()) {
		c.Cost += costOfTwin
	}
	switch s.p.Likeness(e, c.Sum, tied, e.Fit()) {
	case trial.Turned:
		c.Cost += costOfTurned
	case trial.Apart:
		// Too free to be told from the zero of a sum alone: it would explain nearly any line.
		if c.seen {
			return found
		}
		c.Cost += costOfApart
	}
	return append(found, s.spoken(e, c))
}

// pairs tries two changes; the second is never a cheaper row than the first, so that no pair is
// tried twice.
func (s *Search) pairs(e *trial.Equation, at solved.Place, tied string) []Change {
	var found []Change
	for _, first := range s.one(at) {
		if first.Row.Alone {
			continue
		}
		scratch := slices.Clone(first.Sum)
		for _, row := range s.rows {
			if row.Alone || row.Cost < first.Row.Cost || !row.shows(e.Form, 1) {
				continue
			}
			s.eachTerm(at, first.Sum, scratch, row, func(second Change) {
				if s.p.Matches(e, second.Sum, tied, trial.MistakeShare) {
					second.Sum = slices.Clone(second.Sum)
					found = s.weighed(found, e, both(first, second), tied)
				}
			})
		}
	}
	return found
}

// spoken adds to the cost of a change that is about forces of which the line does not speak: what
// is said of them would lead nowhere.
func (s *Search) spoken(e *trial.Equation, c Change) Change {
	if e.Form.Decimals || c.Row.Absent {
		return c // a number may be the size of any of them
	}
	for _, name := range c.About {
		if !s.p.Solved.SpeaksOf(e.Sides[0], name) && !s.p.Solved.SpeaksOf(e.Sides[1], name) {
			c.Cost += costUnseen
			c.unspoken = true
			return c
		}
	}
	return c
}

// fromSystems tries the line where the bodies would be at rest if one of the sums had a mistake
// in it.
func (s *Search) fromSystems(e *trial.Equation, systems []system) []Change {
	var found []Change
	unknowns := unknownsOf(s.p, e)
	for _, one := range systems {
		if one.row.shows(e.Form, len(one.about)) && one.gives(s.p, e, unknowns) {
			c := Change{Row: one.row, Cost: one.cost + costFromSystem, About: one.about}
			if !one.all {
				c.used = &one.at
			}
			found = append(found, s.spoken(e, c))
		}
	}
	return found
}

// gives reports whether the line holds wherever these sums are zero.
func (y system) gives(p *trial.Problem, e *trial.Equation, unknowns []int) bool {
	for _, vary := range e.Vary {
		for _, signs := range e.Signs {
			if y.givesWith(p, e, unknowns, vary, signs) {
				return true
			}
		}
	}
	return false
}

func (y system) givesWith(p *trial.Problem, e *trial.Equation, unknowns []int, vary solved.GivenSet, signs solved.Signed) bool {
	for k := range trial.Tries {
		env, ok := p.Samples.SolveSums(y.sums, p.Samples.AtRest(vary, k))
		if !ok {
			return false
		}
		p.Solved.Fill(env, signs)
		if vanishes(p, unknowns, env) || !e.Holds(env, trial.MistakeShare) {
			return false
		}
	}
	return true
}

// unknownsOf lists the slots of the unknowns in a line.
func unknownsOf(p *trial.Problem, e *trial.Equation) (slots []int) {
	for _, side := range e.Sides {
		for _, name := range side.Names() {
			slot, ok := p.Solved.Slots[name]
			if ok && slot < len(p.Solved.Model.Variables) && p.Solved.Open(expr.Letter(name)) {
				slots = append(slots, slot)
			}
		}
	}
	return slots
}

// vanishes reports whether an unknown of the line is zero, or a coefficient of it is one, where what
// the line says of it does not show.
func vanishes(p *trial.Problem, unknowns []int, env []float64) bool {
	for _, slot := range unknowns {
		isOne := p.Solved.Model.Variables[slot].Dim == quantity.None && math.Abs(env[slot]-1) <= trial.Felt
		if isOne || math.Abs(env[slot]) <= trial.Felt*math.Abs(p.Solved.Values[slot]) {
			return true
		}
	}
	return false
}

// cheapest picks the explanation, if there is one that is cheap enough. Where several of the same
// mistake cost the same, the force is left open unless they agree on it.
func cheapest(found []Change) (f Finding, ok bool) {
	if len(found) == 0 {
		return Finding{}, false
	}
	best := found[0]
	for _, c := range found[1:] {
		if c.Cost < best.Cost-hair {
			best = c
		}
	}
	if best.Cost > mostCost {
		return Finding{}, false
	}
	f = Finding{Code: best.Row.Code, Row: best.Row, All: slices.Clone(best.About), Used: best.used}
	for _, c := range found {
		// A mistake with one force and one with two forces are told in different words.
		if c.Row.Code != best.Row.Code || c.Cost > best.Cost+hair || len(c.About) != len(best.About) {
			continue
		}
		if f.Used != nil && (c.used == nil || *c.used != *f.Used) {
			f.Used = nil
		}
		for _, name := range c.About {
			if !slices.Contains(f.All, name) {
				f.All = append(f.All, name)
			}
		}
	}
	if len(f.All) == 1 {
		f.About = f.All[0]
	}
	return f, true
}
