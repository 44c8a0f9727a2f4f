package checker

import (
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/wording"
)

// markReading judges one reading of a line.
func (m *marking) markReading() Report {
	if letter := m.unknownLetter(); letter != nil {
		return m.unknownLetters().markUnknownLetter(letter)
	}
	if m.line.Unequal {
		return m.wrong(mistake.Finding{Code: Unbalanced}) // at rest no side wins
	}
	if side := m.withoutValue(); side != nil {
		return Report{Verdict: Unread, Code: Unreadable, Item: m.item, Pos: side.Pos, End: side.End, Message: expr.SaidNoValue}
	}
	return m.markKnownLetters()
}

// markKnownLetters judges a line that has no letters but those of the problem.
func (m *marking) markKnownLetters() Report { return m.orMistyped(m.markForStage()) }

// markForStage judges the line for its stage, with its numbers as they stand.
func (m *marking) markForStage() Report {
	switch m.stage {
	case Components:
		return m.orSize(m.orTrue(m.markComponent()))
	case XSum, YSum:
		return m.orTrueValue(m.sums().markSum())
	case Solve:
		m.line = plainer(m.line)
		return m.strict(m.counted(m.working().markSolve()))
	}
	return Report{Verdict: Unread, Code: Unreadable, Message: wording.SaidNoStage}
}
