package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
)

// work is the sheet of the problem in hand.
type work struct {
	topic   string
	scroll  int // rows of the page below what is shown
	chooser chooser
}

func newWork(m *model) *work {
	w := &work{topic: m.lesson.Problem.Topic}
	for _, s := range m.desk.Sections() {
		if s.ID == w.topic {
			w.topic = s.Title
		}
	}
	return w
}

// refresh follows a change of the lesson.
func (w *work) refresh(m *model) {
	w.scroll = 0
	if m.now.open && m.now.ask.Stage == checker.Diagram {
		w.chooser.begin(m)
		return
	}
	w.chooser.active = false
}

func (w *work) question(m *model) string {
	if m.now.open {
		return m.now.ask.Question
	}
	return m.now.done
}

// keys are those of the stage first, then the same everywhere.
func (w *work) keys(m *model) []binding {
	var keys []binding
	for _, a := range m.actions {
		if a.word == goToBench {
			keys = append(keys, a.key) // the way back
		}
	}
	switch {
	case w.chooser.active:
		keys = append(keys, m.on.point, m.on.nextForce)
	case m.choosing():
		keys = append(keys, m.on.toForces)
	case m.now.open && m.stage() == checker.Components && len(m.now.ask.Open) > 1:
		keys = append(keys, m.on.nextPart)
	}
	if !m.now.open && m.line.isEmpty() {
		keys = append(keys, m.on.compare, m.on.angles)
	} else {
		keys = append(keys, m.on.handIn)
	}
	for _, a := range m.actions {
		if (a.word == tutor.AskHint || a.word == tutor.AskText) && a.can(m) {
			keys = append(keys, a.key)
		}
	}
	return append(keys, m.on.menu, m.on.leave)
}

func (w *work) press(m *model, k tea.KeyMsg) bool {
	switch {
	case k.Type == tea.KeyPgUp:
		w.scroll = min(w.scroll+1, len(m.paper(m.cols)))
		return true
	case k.Type == tea.KeyPgDown:
		w.scroll = max(w.scroll-1, 0)
		return true
	case k.Type == tea.KeyTab && m.now.open && m.stage() == checker.Components:
		m.nextPart(+1)
		return true
	case k.Type == tea.KeyShiftTab && m.now.open && m.stage() == checker.Components:
		m.nextPart(-1)
		return true
	case !m.now.open && k.Type == tea.KeyTab:
		m.turnAngles()
		return true
	case m.choosing():
		return w.chooser.press(m, k)
	}
	return false
}

// nextPart takes up the next item that is open.
func (m *model) nextPart(step int) {
	open := m.now.ask.Open
	for i, item := range open {
		if item == m.now.ask.Item {
			m.lesson.Choose(open[(i+step+len(open))%len(open)])
			break
		}
	}
	m.refresh()
}

func (w *work) typed(m *model) {
	if m.choosing() {
		w.chooser.active = false
		w.chooser.follow(m)
	}
}

// enter hands the line in. Once all is done, an empty line leads on.
func (w *work) enter(m *model, text string) {
	if !m.now.open && m.line.isEmpty() {
		m.sheet = newSolution(m)
		return
	}
	m.handIn(text)
}

// under is the read-back of what is typed; in an empty line, a sample of what can
// be typed and the problem's letters.
func (w *work) under(m *model, cols, rows int) []frame.Row {
	width := cols - gutter - 1
	if word, ok := m.wordOf(m.line.text()); ok {
		return []frame.Row{m.labelled(wordMeans, m.look.Row(frame.Plain, m.whatItDoes(word)))}
	}
	if m.line.isEmpty() {
		return w.sample(m, width, rows)
	}
	if m.now.echo == "" {
		return []frame.Row{m.labelled(wordRead, m.look.Row(frame.Quiet, saidUnreadable))}
	}
	return m.labelledAll(wordRead, m.reading(width, rows))
}

func (w *work) sample(m *model, width, room int) []frame.Row {
	if !m.now.open {
		return nil
	}
	rows := m.labelledText(wordSample, m.now.ask.Sample, width+gutter+1)
	rows = rows[:min(len(rows), 2)]
	if m.choosing() || len(rows) >= room { // while choosing, letters would tell which forces act
		return rows
	}
	for i, part := range m.look.Wrap(m.now.ask.Letters, width) {
		if i < 2 {
			rows = append(rows, m.labelled("", m.tint(frame.Quiet, part, true)))
		}
	}
	return rows
}

func (m *model) labelledAll(word string, rows []frame.Row) []frame.Row {
	base := len(rows) / 2
	for i := range rows {
		label := ""
		if i == base {
			label = word
		}
		rows[i] = m.labelled(label, rows[i])
	}
	return rows
}
