package checker

import (
	"strings"

	"example.org/standstill/checker/diagram"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/lines"
)

// markDiagram judges a typed force diagram of one body, which is one line whatever it is
// parted by.
func (r *Reference) markDiagram(a Answer) Report {
	m := r.marking(Diagram, a.Item, expr.Line{})
	report := m.drawn(diagram.Read(r.solved, a.Item, a.Text))
	report.Stage, report.Item, report.Text, report.To = Diagram, a.Item, a.Text, len([]rune(lines.Clean(a.Text)))
	if report.Verdict != Unread {
		report.Answers = []string{a.Item}
	}
	return report
}

// drawn is the report of a diagram that was read.
func (m *marking) drawn(d diagram.Reading) Report {
	report := Report{Verdict: Right}
	switch {
	case d.Unread != nil:
		report = Report{Verdict: Unread, Code: d.Unread.Code, Message: d.Unread.Message, Pos: d.Unread.From, End: d.Unread.To}
	case d.Wrong != nil:
		report = m.wrong(*d.Wrong)
	}
	report.Read = strings.Join(d.Read, "; ")
	return report
}
