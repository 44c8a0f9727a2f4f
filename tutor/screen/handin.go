package screen

import (
	"example.org/standstill/checker"
	"example.org/standstill/tutor"
)

// handIn hands a line in. What is refused stays in the line.
func (m *model) handIn(text string) {
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
	m.told = m.tellOf(result.Line)
	if result.Line.Counts() || result.Line.Code.IsElsewhere() {
		m.line.set("")
	} else {
		m.line.set(result.Line.Text)
		m.line.point(result.Line.Report)
		m.told.line = m.line.text()
	}
	m.refresh()
	m.onward(result)
}

// tellOf is what is said of a line: of the first of its statements that is not right, or
// what is remarked on one that is.
func (m *model) tellOf(l *tutor.Line) told {
	var remark told
	for i, part := range l.Statements() {
		t := told{text: saidOf(l, i), mark: m.markOf(l, part)}
		switch {
		case t.text == "":
		case part.Verdict != checker.Right:
			return t
		case remark.text == "":
			remark = t
		}
	}
	return remark
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

// passOver goes straight to the sums, or says why not.
func (m *model) passOver() {
	var why string
	if !m.do(func() (err error) { why, err = m.lesson.PassOver(); return err }) {
		return
	}
	m.sheet = m.work
	m.say(why)
}
