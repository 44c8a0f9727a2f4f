package checker

import (
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/trial"
)

// markSolve judges a line of working: it must follow from the sums and the
// givens. A line X = number unit for an X asked for settles X.
func (m *marking) markSolve() Report {
	if len(m.line.Sides) == 1 {
		if m.item != "" && m.solved.LettersFor("").Has(m.item) {
			return m.markNamed()
		}
		return m.markLone()
	}
	always := true
	var settles []string
	for i := 1; i < len(m.line.Sides); i++ {
		l := m.markLink(i)
		if l.refused != nil {
			return *l.refused
		}
		always = always && l.always
		settles = append(settles, l.settles...)
	}
	switch {
	case always:
		return m.almost(HoldsAlways, "")
	case m.hasOtherUnit():
		return m.almost(WrongUnit, "")
	}
	return m.settling(settles)
}

// solveLink is what one "left = right" of a line of working is worth.
type solveLink struct {
	refused *Report
	always  bool // it is true by algebra alone
	settles []string
}

func (m *marking) markLink(i int) solveLink {
	left, right := m.line.Sides[i-1], m.line.Sides[i]
	if name, number := m.statement(left, right); name != "" {
		if report := m.markValue(name, number); report.Verdict != Right {
			return solveLink{refused: &report}
		}
		return solveLink{settles: m.settled(name)}
	}
	if m.endsChain(i) {
		return solveLink{}
	}
	e := m.trial.Equation(left, right, m.conventions())
	if m.trial.Always(e) {
		return solveLink{always: true}
	}
	formula := m.formulaFor(left, right)
	if !m.trial.Follows(e, trial.RoundedShare) || !m.trial.TrueAtRest(e) {
		f := m.explainLine(e)
		if formula != "" {
			f.About = formula
		}
		report := m.wrong(m.inChain(f, i))
		m.pointAt(&report, i)
		return solveLink{refused: &report}
	}
	if formula == "" {
		return solveLink{}
	}
	return solveLink{settles: m.settled(formula)}
}

// settling is the report of a right line that settles these and what its chain ends in,
// in the order in which the problem asks.
func (m *marking) settling(settles []string) Report {
	settles = m.settledBy(settles)
	if m.isNamedChain() && m.markValue(m.item, m.line.Sides[len(m.line.Sides)-1]).Verdict == Right {
		settles = append(settles, m.settled(m.item)...)
	}
	report := m.right()
	for _, name := range m.solved.Find {
		if slices.Contains(settles, name) {
			report.Settles = append(report.Settles, name)
		}
	}
	return report
}

// isNamedChain reports whether a line for a named unknown is worked out without its
// letter: "w sin β/sin(α + β) = 20.2 N".
func (m *marking) isNamedChain() bool {
	last := len(m.line.Sides) - 1
	if m.item == "" || !m.solved.LettersFor("").Has(m.item) || !expr.IsQuantity(m.line.Sides[last]) {
		return false
	}
	for _, side := range m.line.Sides[:last] {
		e := m.trial.Equation(expr.Letter(m.item), side, m.conventions())
		if side.Op == expr.Name || m.solved.Open(side) || !m.trial.Follows(e, trial.RoundedShare) || !m.trial.TrueAtRest(e) {
			return false
		}
	}
	return true
}

// formulaFor returns the unknown that a link answers by a formula of givens, ""
// for none.
func (m *marking) formulaFor(left, right *expr.Node) string {
	if left.Op != expr.Name {
		left, right = right, left
	}
	if left.Op == expr.Name && m.trial.IsFormula(left.Name) && !m.solved.Open(right) {
		return left.Name
	}
	return ""
}

// endsChain reports whether the i-th link ends a chain that began with a letter
// in the right value of that letter, which may be rounded as an answer may.
func (m *marking) endsChain(i int) bool {
	first, last := m.line.Sides[0], m.line.Sides[i]
	if i < 2 || i != len(m.line.Sides)-1 || first.Op != expr.Name || !expr.IsQuantity(last) {
		return false
	}
	name, number := m.statement(first, last)
	return name != "" && m.markValue(name, number).Verdict == Right
}

// settledBy lists what a right line settles: X of a link X = number, and X where
// the chain that begins with X ends in a number.
func (m *marking) settledBy(settles []string) []string {
	first, last := m.line.Sides[0], m.line.Sides[len(m.line.Sides)-1]
	if len(m.line.Sides) > 2 && first.Op == expr.Name && expr.IsQuantity(last) {
		if m.markValue(first.Name, last).Verdict == Right {
			for _, name := range m.settled(first.Name) {
				if !slices.Contains(settles, name) {
					settles = append(settles, name)
				}
			}
		}
	}
	return settles
}

// statement takes "X = number" apart, in either order. X is a letter of the
// system; a chain's inner links are no statements but for the last.
func (m *marking) statement(left, right *expr.Node) (name string, number *expr.Node) {
	if expr.IsQuantity(left) {
		left, right = right, left
	}
	if left.Op != expr.Name || !expr.IsQuantity(right) {
		return "", nil
	}
	if _, ok := m.solved.Variable(left.Name); ok {
		return left.Name, right
	}
	for _, e := range m.solved.Equals {
		if e.Name == left.Name {
			return left.Name, right
		}
	}
	return "", nil
}

// settled lists the unknowns asked for that a letter stands for.
func (m *marking) settled(name string) []string {
	names := []string{name}
	for _, e := range m.solved.Equals {
		if e.Name == name {
			names = nil
			for _, slot := range e.Slots {
				names = append(names, m.solved.Variables[slot].Name)
			}
		}
	}
	return slices.DeleteFunc(names, func(n string) bool { return !slices.Contains(m.solved.Find, n) })
}

// markNamed judges an answer for the named item that is no equation.
func (m *marking) markNamed() Report {
	value := m.line.Sides[0]
	if expr.IsQuantity(value) {
		report := m.markValue(m.item, value)
		if report.Verdict == Right {
			report.Settles = append(report.Settles, m.settled(m.item)...)
		}
		return report
	}
	e := m.trial.Equation(expr.Letter(m.item), value, m.conventions())
	switch {
	case m.trial.Always(e):
		return m.almost(HoldsAlways, m.item)
	case !m.trial.Follows(e, trial.RoundedShare) || !m.trial.TrueAtRest(e):
		f := m.explainLine(e)
		f.About = m.item
		return m.wrong(f)
	case m.solved.Open(value):
		return m.almost(StillUnknown, m.item)
	}
	report := m.right()
	if m.trial.IsFormula(m.item) {
		report.Settles = m.settled(m.item)
	}
	return report
}

// markLone judges an expression with no name and no equals sign: the answer, if
// only one thing is asked for.
func (m *marking) markLone() Report {
	left := slices.DeleteFunc(slices.Clone(m.solved.Find), func(n string) bool { return n == "" })
	for _, e := range m.solved.Equals {
		if len(left) > 1 && len(m.settled(e.Name)) == len(left) {
			left = left[:1]
		}
	}
	if len(left) == 1 {
		m.item = left[0]
		return m.markNamed()
	}
	return m.almost(NoEquation, "")
}

// explainLine finds why a line of working does not follow.
func (m *marking) explainLine(e *trial.Equation) mistake.Finding {
	if m.brief {
		return mistake.Finding{Code: Unexplained}
	}
	return m.ref.mistakes.Working(e)
}

// inChain tells a link of a chain that is a slip of working from one that is a mistake in the
// physics: between two numbers, or where nothing explains it.
func (m *marking) inChain(f mistake.Finding, i int) mistake.Finding {
	sides := m.line.Sides
	numbers := len(sides[i-1].Names()) == 0 && len(sides[i].Names()) == 0
	if len(sides) < 3 || i < 2 || !numbers && f.Code != Unexplained && f.Code != DoesNotFollow {
		return f
	}
	return mistake.Finding{Code: Link}
}

// pointAt marks the equals sign that a report about a link is about.
func (m *marking) pointAt(report *Report, i int) {
	if report.Code == Link {
		report.Pos, report.End = m.line.Sides[i-1].End, m.line.Sides[i].Pos
	}
}
