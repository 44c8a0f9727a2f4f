package screen

import (
	"example.org/standstill/checker"
	"example.org/standstill/tutor"
)

// handIn hands a line in. What is refused stays in the line.
func (m *model) handIn(text string) {
	if anew := m.lesson.Anew(text, m.line.last(), m.line.fault); anew != text {
		text = anew
		m.line.set(text)
	}
	if m.lesson.ChooseNamed(text) {
		m.line.set("")
		m.refresh()
		m.say(saidNamed(m.stage(), m.now.ask.Item))
		return
	}
	var result tutor.Result
	if !m.do(func() (err error) { result, err = m.lesson.HandIn(text); return err }) {
		return
	}
	if result.Said != "" {
		m.questionAnswered(result)
		return
	}
	if result.Line == nil {
		m.say(saidEmpty)
		return
	}
	m.line.remember(result.Line.Text)
	m.sheet = m.work
	if result.Line.Counts() || result.Line.Code == checker.TrueNotAsked {
		m.line.set("")
	} else {
		m.line.set(result.Line.Text)
		m.line.point(result.Line.Report)
	}
	m.refresh()
	m.onward(result)
}

// onward says what comes after a line that counts.
func (m *model) onward(r tutor.Result) {
	if r.Moved {
		m.say(saidMoved(m.now.ask.Title, m.skipped()))
	}
}

// skipped lists the stages just before the one in hand that ask for nothing.
func (m *model) skipped() []string {
	var titles []string
	for _, stage := range checker.Stages {
		if stage == m.now.ask.Stage {
			break
		}
		if m.lesson.Nothing(stage) {
			titles = append(titles, tutor.Title(stage))
		}
	}
	return titles
}

// questionAnswered says what came of a prediction, or of the answer to the question after
// Solve.
func (m *model) questionAnswered(r tutor.Result) {
	if r.Line != nil {
		m.line.remember(r.Line.Text)
		m.line.set("")
	}
	m.sheet = m.work
	m.refresh()
	m.say(r.Said)
}
