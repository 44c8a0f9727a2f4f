package screen

import (
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
)

// handIn hands a line in. What is refused stays in the line.
func (m *model) handIn(text string) {
	if anew := m.typedAnew(text); anew != "" {
		text = anew
		m.line.set(text)
	}
	if m.choosesItem(text) {
		m.line.set("")
		m.refresh()
		m.say(saidNamed(m.stage(), m.now.ask.Item))
		return
	}
	var result tutor.Result
	if !m.do(func() (err error) { result, err = m.lesson.HandIn(text); return err }) {
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
		m.line.point(result.Line.Report)
	}
	m.refresh()
	m.onward(result)
}

// typedAnew finds a whole new answer that was typed into the refused line without
// emptying it first: it is right by itself where all of it is not, or both are
// equations.
func (m *model) typedAnew(text string) string {
	anew := m.line.typedInto()
	if anew == "" || m.verdict(text) == checker.Right {
		return ""
	}
	if m.verdict(anew) == checker.Right {
		return anew
	}
	if strings.ContainsAny(anew[1:], "=≈") && strings.ContainsAny(m.line.last(), "=≈") && !strings.ContainsAny(anew[:1], "=≈;,+-*/") {
		return anew
	}
	return ""
}

// verdict is what would be said of a text, which is not kept.
func (m *model) verdict(text string) checker.Verdict {
	item := ""
	if m.now.open && m.stage() != checker.Solve {
		item = m.now.ask.Item
	}
	return m.lesson.Ref.Mark(checker.Answer{Stage: m.stage(), Item: item, Text: text}, nil).Verdict
}

// choosesItem takes up an item that is typed by its name alone.
func (m *model) choosesItem(text string) bool {
	if !m.now.open || m.stage() == checker.Solve {
		return false
	}
	item, ok := m.lesson.Named(m.stage(), text)
	return ok && m.lesson.Choose(item)
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
