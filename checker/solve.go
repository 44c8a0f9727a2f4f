package checker

import (
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/trial"
)

// working judges lines of the stage Solve.
type working struct{ m *marking }

func (m *marking) working() working { return working{m} }

// markSolve judges a line of working: it must follow from the sums and the
// givens. A line X = number unit for an X asked for settles X.
func (w working) markSolve() Report {
	if len(w.m.line.Sides) == 1 {
		if w.m.item != "" && w.m.solved.LettersFor("").Has(w.m.item) {
			return w.markNamed()
		}
		return w.markLone()
	}
	always := true
	var settles []string
	for i := 1; i < len(w.m.line.Sides); i++ {
		l := w.markLink(i)
		if l.refused != nil {
			return *l.refused
		}
		// One link that says something is enough: w = w = m g is still a statement about w.
		always = always && l.always
		settles = append(settles, l.settles...)
	}
	switch {
	case always:
		return w.m.almost(HoldsAlways, "")
	case hasOtherUnit(w.m.solved, w.m.line):
		return w.m.almost(WrongUnit, "")
	}
	return w.settling(settles)
}

// solveLink is what one "left = right" of a line of working is worth.
type solveLink struct {
	refused *Report
	always  bool // it is true by algebra alone
	settles []string
}

func (w working) markLink(i int) solveLink {
	left, right := w.m.line.Sides[i-1], w.m.line.Sides[i]
	if name, number := statement(w.m.solved, left, right); name != "" {
		if report := w.m.values().markValue(name, number); report.Verdict != Right {
			return solveLink{refused: &report}
		}
		return solveLink{settles: settled(w.m.solved, name)}
	}
	// Not the link, whose left side may be rounded more, but the letter in front decides.
	if w.endsChain(i) {
		return solveLink{}
	}
	e := w.m.trial.Equation(left, right, w.m.conventions())
	if w.m.trial.Always(e) {
		return solveLink{always: true}
	}
	formula := formulaFor(w.m.trial, left, right)
	if !w.m.trial.Follows(e, trial.RoundedShare) || !w.m.trial.TrueAtRest(e) {
		f := w.explainLine(e)
		if formula != "" {
			f.About = formula
		}
		report := w.m.wrong(inChain(w.m.line, f, i))
		pointAt(w.m.line, &report, i)
		return solveLink{refused: &report}
	}
	if formula == "" {
		return solveLink{}
	}
	return solveLink{settles: settled(w.m.solved, formula)}
}

// settling is the report of a right line that settles these and what its chain ends in,
// in the order in which the problem asks.
func (w working) settling(settles []string) Report {
	settles = w.settledBy(settles)
	if w.isNamedChain() && w.m.values().markValue(w.m.item, w.m.line.Sides[len(w.m.line.Sides)-1]).Verdict == Right {
		settles = append(settles, settled(w.m.solved, w.m.item)...)
	}
	report := w.m.right()
	for _, name := range w.m.solved.Find {
		if slices.Contains(settles, name) {
			report.Settles = append(report.Settles, name)
		}
	}
	return report
}

// isNamedChain reports whether a line for a named unknown is worked out without its
// letter: "w sin β/sin(α + β) = 20.2 N".
func (w working) isNamedChain() bool {
	last := len(w.m.line.Sides) - 1
	if w.m.item == "" || !w.m.solved.LettersFor("").Has(w.m.item) || !expr.IsQuantity(w.m.line.Sides[last]) {
		return false
	}
	for _, side := range w.m.line.Sides[:last] {
		e := w.m.trial.Equation(expr.Letter(w.m.item), side, w.m.conventions())
		if side.Op == expr.Name || w.m.solved.Open(side) || !w.m.trial.Follows(e, trial.RoundedShare) || !w.m.trial.TrueAtRest(e) {
			return false
		}
	}
	return true
}

// endsChain reports whether the i-th link ends a chain that began with a letter
// in the right value of that letter, which may be rounded as an answer may.
func (w working) endsChain(i int) bool {
	first, last := w.m.line.Sides[0], w.m.line.Sides[i]
	if i < 2 || i != len(w.m.line.Sides)-1 || first.Op != expr.Name || !expr.IsQuantity(last) {
		return false
	}
	name, number := statement(w.m.solved, first, last)
	return name != "" && w.m.values().markValue(name, number).Verdict == Right
}

// settledBy lists what a right line settles: X of a link X = number, and X where
// the chain that begins with X ends in a number.
func (w working) settledBy(settles []string) []string {
	first, last := w.m.line.Sides[0], w.m.line.Sides[len(w.m.line.Sides)-1]
	if len(w.m.line.Sides) > 2 && first.Op == expr.Name && expr.IsQuantity(last) {
		if w.m.values().markValue(first.Name, last).Verdict == Right {
			for _, name := range settled(w.m.solved, first.Name) {
				if !slices.Contains(settles, name) {
					settles = append(settles, name)
				}
			}
		}
	}
	return settles
}

// markNamed judges an answer for the named item that is no equation.
func (w working) markNamed() Report {
	value := w.m.line.Sides[0]
	if expr.IsQuantity(value) {
		report := w.m.values().markValue(w.m.item, value)
		if report.Verdict == Right {
			report.Settles = append(report.Settles, settled(w.m.solved, w.m.item)...)
		}
		return report
	}
	e := w.m.trial.Equation(expr.Letter(w.m.item), value, w.m.conventions())
	switch {
	case w.m.trial.Always(e):
		return w.m.almost(HoldsAlways, w.m.item)
	case !w.m.trial.Follows(e, trial.RoundedShare) || !w.m.trial.TrueAtRest(e):
		f := w.explainLine(e)
		f.About = w.m.item
		return w.m.wrong(f)
	case w.m.solved.Open(value):
		return w.m.almost(StillUnknown, w.m.item)
	}
	report := w.m.right()
	if w.m.trial.IsFormula(w.m.item) {
		report.Settles = settled(w.m.solved, w.m.item)
	}
	return report
}

// markLone judges an expression with no name and no equals sign: the answer, if
// only one thing is asked for.
func (w working) markLone() Report {
	left := slices.DeleteFunc(slices.Clone(w.m.solved.Find), func(n string) bool { return n == "" })
	for _, e := range w.m.solved.Equals {
		// If all that is asked for is equal, one value answers it.
		if len(left) > 1 && len(settled(w.m.solved, e.Name)) == len(left) {
			left = left[:1]
		}
	}
	if len(left) == 1 {
		w.m.item = left[0]
		return w.markNamed()
	}
	return w.m.almost(NoEquation, "")
}

// explainLine finds why a line of working does not follow.
func (w working) explainLine(e *trial.Equation) mistake.Finding {
	if w.m.brief {
		return mistake.Finding{Code: Unexplained}
	}
	return w.m.ref.mistakes.Working(e)
}
