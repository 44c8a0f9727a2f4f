package checker

import "example.org/standstill/checker/wording"

// judged judges the line for its stage, with its numbers as they stand.
func (m *marking) judged() Report {
	switch m.stage {
	case Components:
		return m.orSize(m.orTrue(m.markComponent()))
	case XSum, YSum:
		return m.orOtherSum(m.sums().markSum())
	case Solve:
		m.line = plainer(m.line)
		return m.strict(m.counted(m.working().markSolve()))
	}
	return Report{Verdict: Unread, Code: Unreadable, Message: wording.SaidNoStage}
}
