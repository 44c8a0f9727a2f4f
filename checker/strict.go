package checker

import (
	"fmt"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/wording"
)

// strict applies the rules to a right line of working, and says what the line works out.
func (m *marking) strict(report Report) Report {
	if report.Verdict != Right {
		return report
	}
	report.Working = m.worksOut()
	if len(report.Settles) > 0 && m.isShortOfFigures() {
		about := report.Settles[0]
		short := m.almost(Coarse, about)
		short.Message = fmt.Sprintf(wording.SaidFigures, expr.Set(about), m.ref.rules.Figures)
		return short
	}
	return report
}

// isShortOfFigures reports whether a number of the line is typed with fewer figures than
// the rules ask for. Zero has no figures to count.
func (m *marking) isShortOfFigures() bool {
	for _, side := range m.line.Sides {
		if !expr.IsQuantity(side) {
			continue
		}
		number := side
		if side.Op == expr.Neg {
			number = side.Args[0]
		}
		if number.Num.Value != 0 && number.Num.Figures < m.ref.rules.Figures {
			return true
		}
	}
	return false
}

// worksOut lists the unknowns asked for that the line says something of beyond their
// value: none where it states a value and no more.
func (m *marking) worksOut() (names []string) {
	if !slices.ContainsFunc(m.line.Sides, func(side *expr.Node) bool { return !expr.IsQuantity(side) && side.Op != expr.Name }) &&
		slices.ContainsFunc(m.line.Sides, expr.IsQuantity) {
		return nil
	}
	letters := []string{m.item}
	for _, side := range m.line.Sides {
		letters = append(letters, side.Names()...)
	}
	for _, name := range m.solved.Find {
		if slices.ContainsFunc(letters, func(letter string) bool { return slices.Contains(settled(m.solved, letter), name) }) {
			names = append(names, name)
		}
	}
	return names
}

// SaidNoWorking is what is said of a right value that has no working.
func (r *Reference) SaidNoWorking(name string) string {
	m := r.marking(Solve, name, expr.Line{})
	return m.sentence().saidAlmost(NoWorking, name)
}
