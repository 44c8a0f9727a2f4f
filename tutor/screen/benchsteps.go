package screen

import (
	"slices"

	"example.org/standstill/tutor/bench"
)

// benchStep is a part of a run, in the order in which a table goes through it.
type benchStep int

const (
	stepCautions benchStep = iota
	stepNames
	stepValues
	stepByHand
	stepReadings
	stepResult
	benchSteps

	noStep benchStep = -1 // nothing is on the table yet
)

// stepWords name the steps on the rope.
func stepWords() [benchSteps]string {
	return [benchSteps]string{"Caution", "Names", "Values", "By hand", "Readings", "Result"}
}

// stepped is a sheet that belongs to a step.
type stepped interface{ step(*model) benchStep }

// step is the one in hand: that of the sheet, else of the one under it.
func (b *atBench) step(m *model) benchStep {
	for _, s := range []sheet{m.sheet, b.base} {
		if s, ok := s.(stepped); ok {
			return s.step(m)
		}
	}
	return noStep
}

// steps are the words of a run on their rope, taut as far as the table has come.
func (m *model) steps() row {
	at := m.bench.step(m)
	spans := make([]span, benchSteps)
	for i, word := range stepWords() {
		switch step := benchStep(i); {
		case step == at:
			spans[i] = m.look.text(bold, m.look.signs.handLeft+" "+word+" "+m.look.signs.handRight)
		case m.bench.isDone(step):
			spans[i] = m.look.text(good, " "+m.look.signs.done+" "+word+" ")
		default:
			spans[i] = m.look.text(quiet, " "+word+" ")
		}
	}
	return m.alongRope(spans, int(at))
}

// isDone reports whether a step holds what belongs there.
func (b *atBench) isDone(s benchStep) bool {
	switch s {
	case stepNames:
		return len(b.table.Students) > 0
	case stepValues, stepReadings:
		return b.holds(s == stepReadings)
	}
	return b.passed[s]
}

// holds reports whether a value that can be used stands in the form; a reading, or
// what is put into the sums.
func (b *atBench) holds(reading bool) bool {
	return b.table.Form != nil && slices.ContainsFunc(b.table.Form.Fields, func(e bench.Field) bool {
		return (e.Kind == bench.Reading) == reading && e.Good()
	})
}

// benchTop is the apparatus and who is at the table.
func (m *model) benchTop() (title, right string) {
	if m.bench.table.Form == nil {
		return saidProgram, wordBench
	}
	right = wordBench
	if names := m.bench.names(); names != "" {
		right += " " + m.look.signs.dash + " " + names
	}
	return m.bench.table.Form.Problem().Title, right
}
