package checker

import (
	"fmt"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/trial"
	"example.org/standstill/checker/wording"
)

// What is true is never called wrong because something else was asked: a sum, a value or
// a line of working among the components, another force's letter for a component where
// that holds at rest, a value in a sum. A right value that does not count yet says why.

// orTrue turns the judgement of a refused component into that of a line that is true at
// rest.
func (m *marking) orTrue(report Report) Report {
	if report.Verdict != Wrong && report.Message != wording.SaidWhichComponent || !m.isTrue() {
		return report
	}
	if _, ok := m.solved.Component(m.item); !ok {
		return Report{Verdict: Almost, Code: TrueNotAsked, Item: m.item, Message: wording.SaidTrueElsewhere}
	}
	return m.almost(TrueNotAsked, "")
}

// isTrue reports whether the line, or what it says of the component asked, follows from
// the sums and the givens, and not by algebra alone.
func (m *marking) isTrue() bool {
	sides := m.line.Sides
	if len(sides) == 1 {
		c, ok := m.solved.Component(m.item)
		if !ok || len(sides[0].Names()) == 0 || solved.SignOf(c.Term.Value(m.solved.Values)) == 0 {
			// Any multiple of zero holds at rest.
			return false // half of nothing is nothing
		}
		sides = []*expr.Node{expr.Letter(m.item), sides[0]}
	}
	always := true
	for i := 1; i < len(sides); i++ {
		e := m.trial.Equation(sides[i-1], sides[i], m.conventions())
		if !m.trial.Follows(e, trial.RoundedShare) || !m.trial.TrueAtRest(e) {
			return false
		}
		always = always && m.trial.Always(e)
	}
	return !always && !hasOtherUnit(m.solved, m.line)
}

// orTrueValue turns the judgement of a refused sum into that of a true line where it says what
// the value of a letter is, which was not asked for.
func (m *marking) orTrueValue(report Report) Report {
	if report.Verdict != Wrong {
		return report
	}
	if m.isValue() && m.isTrue() {
		return m.almost(TrueNotAsked, "")
	}
	return report
}

// isValue reports whether the line says of a letter what number it is.
func (m *marking) isValue() bool {
	sides := m.line.Sides
	if len(sides) < 2 {
		return false
	}
	name, _ := statement(m.solved, sides[0], sides[len(sides)-1])
	return name != "" && m.solved.Open(expr.Letter(name))
}

// counted looks for all that a right line of working settles: each letter of a chain of
// equal sides that is asked for, if the chain has its value. Where it settles nothing it
// says what is missing.
func (m *marking) counted(report Report) Report {
	if report.Verdict != Right {
		return report
	}
	names := m.lettersOfChain()
	var almost *Report
	for _, side := range m.line.Sides {
		if !expr.IsQuantity(side) {
			continue
		}
		for _, name := range names {
			// Each letter with each number by itself: in T1 = T2 = 25.8 N only one of the two may be meant.
			alone := *m
			alone.line.Sides = []*expr.Node{expr.Letter(name), side}
			switch judged := alone.values().markValue(name, side); {
			case judged.Verdict == Right:
				report.Settles = append(report.Settles, settled(m.solved, name)...)
			case almost == nil && judged.Code.IsUnitOnly():
				almost = &judged
			}
		}
	}
	report.Settles = slices.DeleteFunc(slices.Clone(m.solved.Find), func(name string) bool { return !slices.Contains(report.Settles, name) })
	switch {
	case len(report.Settles) > 0:
	case almost != nil:
		return *almost
	case len(names) > 0 && slices.ContainsFunc(m.line.Sides, canBeWorkedOut):
		report.Message = wording.Join(report.Message, wording.SaidWorkOut)
	case len(names) == 0 && m.isNamelessAnswer():
		report.Message = wording.Join(report.Message, wording.SaidNameIt)
	}
	return report
}

// isNamelessAnswer reports whether the line works out the value of something that is asked for and
// does not say of what: "atan(15.1/8.5) = 60.6°".
func (m *marking) isNamelessAnswer() bool {
	last := m.line.Sides[len(m.line.Sides)-1]
	if !expr.IsQuantity(last) || slices.ContainsFunc(m.line.Sides, func(side *expr.Node) bool { return side.Op == expr.Name || m.solved.Open(side) }) {
		return false
	}
	return slices.ContainsFunc(m.solved.Find, func(name string) bool {
		return !m.trial.IsFormula(name) && m.values().markValue(name, last).Verdict == Right
	})
}

// namesAllOf reports whether each of the equal sizes that a letter is for is a side of the line.
func (m *marking) namesAllOf(e solved.EqualLetter) bool {
	for _, slot := range e.Slots {
		if !slices.ContainsFunc(m.line.Sides, func(side *expr.Node) bool {
			return side.Op == expr.Name && side.Name == m.solved.Model.Variables[slot].Name
		}) {
			return false
		}
	}
	return true
}

// lettersOfChain lists the letters that the line says the value of and that are asked
// for: those that are a side alone, else the item that it was typed for.
func (m *marking) lettersOfChain() []string {
	var names []string
	for _, side := range m.line.Sides {
		if side.Op == expr.Name && len(settled(m.solved, side.Name)) > 0 && !m.trial.IsFormula(settled(m.solved, side.Name)[0]) {
			names = append(names, side.Name)
		}
	}
	for _, e := range m.solved.Equals {
		if slices.Contains(m.solved.Find, e.Name) && m.namesAllOf(e) {
			names = append(names, e.Name)
		}
	}
	if isAsked := len(settled(m.solved, m.item)) > 0 && !m.trial.IsFormula(m.item); len(names) == 0 && isAsked && (len(m.line.Sides) == 1 || m.working().isNamedChain()) {
		names = []string{m.item}
	}
	return names
}

// canBeWorkedOut reports whether a side is made of numbers and is no number yet.
func canBeWorkedOut(side *expr.Node) bool {
	return !expr.IsQuantity(side) && len(side.Names()) == 0
}

// plainer takes the bars off a letter that is a whole side: its size is what is asked.
func plainer(line expr.Line) expr.Line {
	line.Sides = slices.Clone(line.Sides)
	for i, side := range line.Sides {
		if side.Op == expr.Size && side.Args[0].Op == expr.Name {
			letter := *side.Args[0]
			letter.Pos, letter.End = side.Pos, side.End
			line.Sides[i] = &letter
		}
	}
	return line
}

// orSize says of a right component that it was taken as a size, where its sign is left
// out. Where signs are asked for, such a line is wrong.
func (m *marking) orSize(report Report) Report {
	c, side := m.componentAsked()
	if report.Verdict != Right || c == nil || side == nil {
		return report
	}
	if isSigned, same := m.signOf(c, side); same && !isSigned {
		letter := expr.Set(c.Force.Name) + c.Axis.String()
		s := m.ref.subject(Components, c.Name)
		if m.ref.rules.Signs {
			report = m.wrong(about(Sign, c.Force.Name))
			report.Message = s.Fill(fmt.Sprintf(wording.SaidSignAsked, letter))
			return report
		}
		report.AsSize = s.Fill(fmt.Sprintf(wording.SaidTakenAsSize, letter))
	}
	return report
}
