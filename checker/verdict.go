package checker

import (
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
)

// wrong says of the line what was found.
func (m *marking) wrong(f mistake.Finding) Report {
	if odd := m.sentence().strangeForce(f); odd != mistake.NotStrange {
		f = m.ref.mistakes.StrangeForce(odd, f.All[0])
	}
	report := Report{Verdict: Wrong, Code: f.Code, About: f.About, Item: m.item}
	report.Message, report.is = m.sentence().saidWrong(f)
	report.row, report.used = f.Row, f.Used
	report.Pos, report.End = m.where(f)
	return report
}

// almost says of a right line what must be mended before it counts.
func (m *marking) almost(code Code, about string) Report {
	return Report{Verdict: Almost, Code: code, About: about, Item: m.item, Message: m.sentence().saidAlmost(code, about)}
}

// right says that the line is right. A right line of working settles something or nothing, and
// says so by a list that is not nil.
func (m *marking) right() Report {
	report := Report{Verdict: Right, Item: m.item}
	if m.stage == Solve {
		report.Settles = []string{}
	}
	return report
}

// where finds the part of the line that a finding is about: the term with the
// force or angle concerned, else the last side. Positions are rune offsets into
// the typed text.
func (m *marking) where(f mistake.Finding) (pos, end int) {
	if len(m.line.Sides) == 0 {
		return 0, 0
	}
	for _, side := range m.line.Sides {
		// The name of the component asked for is never the part that is wrong.
		if c, ok := m.solved.Component(side.Name); ok && side.Op == expr.Name && m.stage == Components && c.Name == m.item {
			continue
		}
		for _, term := range expr.Addends(side, 1, nil) {
			if f.About != "" && m.solved.SpeaksOf(term.Node, f.About) {
				return term.Node.Pos, term.Node.End
			}
		}
	}
	last := m.line.Sides[len(m.line.Sides)-1]
	return last.Pos, last.End
}

// about is a finding that concerns one force.
func about(code Code, name string) mistake.Finding {
	return mistake.Finding{Code: code, About: name, All: []string{name}}
}
