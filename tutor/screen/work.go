package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// work is the sheet of the problem in hand.
type work struct {
	topic   string
	scroll  int // rows of the page below what is shown
	seen    frame.Seen
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
	// A new line is at the end of the page, and must be seen.
	w.scroll = 0
	if m.now.Open && m.now.Ask.Stage == checker.Diagram {
		w.chooser.begin(m.lesson.Ref, m.now.Ask.Item)
		w.follow(m)
		return
	}
	w.chooser.active = false
}

func (w *work) question(m *model) string {
	if m.now.Open {
		return m.now.Ask.Question
	}
	return m.now.Done
}

func (w *work) view(m *model) views.Sheet { return w.shown(m) }

func (w *work) shown(m *model) views.Work {
	return views.Work{Lesson: &m.now, Reading: m.reading, Offers: w.chooser.offered(), Told: m.told.Text, Scroll: w.scroll}
}

func (w *work) Saw(seen frame.Seen) { w.seen = seen }

// keys are those of the stage first, then the same everywhere.
func (w *work) keys(m *model) []frame.Binding {
	var keys []frame.Binding
	for _, a := range m.actions {
		if a.Word == goToBench {
			keys = append(keys, a.Key) // the way back
		}
	}
	switch {
	case w.chooser.active:
		keys = append(keys, m.on.Point, m.on.NextForce)
	case m.choosing():
		keys = append(keys, m.on.ToForces)
	case m.now.Open && m.stage() == checker.Components && len(m.now.Ask.Open) > 1:
		keys = append(keys, m.on.NextComponent)
	}
	if !m.now.Open && m.line.IsEmpty() {
		keys = append(keys, m.on.Compare, m.on.Angles)
	} else {
		keys = append(keys, m.on.Check)
	}
	for _, a := range m.actions {
		if (a.Word == tutor.AskHint || a.Word == tutor.AskText) && a.Can(m) {
			keys = append(keys, a.Key)
		}
	}
	return append(keys, m.on.Menu, m.on.Quit)
}

func (w *work) press(m *model, k tea.KeyMsg) bool {
	switch {
	case k.Type == tea.KeyPgUp:
		// Counted from the end, so that the page stays there as it grows.
		w.scroll = min(w.scroll+1, max(w.seen.Rows-w.seen.Room, 0))
		return true
	case k.Type == tea.KeyPgDown:
		w.scroll = max(w.scroll-1, 0)
		return true
	case k.Type == tea.KeyTab && m.now.Open && m.stage() == checker.Components:
		m.nextComponent(+1)
		return true
	case k.Type == tea.KeyShiftTab && m.now.Open && m.stage() == checker.Components:
		m.nextComponent(-1)
		return true
	// Only then: during the stages Tab goes from one item to the next.
	case !m.now.Open && k.Type == tea.KeyTab:
		m.turnAngles()
		return true
	case m.choosing():
		changed, ok := w.chooser.press(k)
		if changed {
			m.line.Set(w.chooser.text())
			m.read()
			w.follow(m)
		}
		return ok
	}
	return false
}

// follow chooses the forces that the line names. What cannot be read yet changes nothing.
func (w *work) follow(m *model) {
	if m.reading.Echo != "" || m.line.IsEmpty() {
		w.chooser.follow(m.reading.Echo)
	}
}

// nextComponent takes up the next item that is open.
func (m *model) nextComponent(step int) {
	open := m.now.Ask.Open
	for i, item := range open {
		if item == m.now.Ask.Item {
			// Go's remainder of a negative number is negative.
			m.lesson.Choose(open[(i+step+len(open))%len(open)])
			break
		}
	}
	m.refresh()
}

func (w *work) typed(m *model) {
	if m.choosing() {
		// Whoever types does not steer with the arrows; they go through earlier lines again.
		w.chooser.active = false
		w.follow(m)
	}
}

// enter hands the line in. Once all is done, an empty line leads on.
func (w *work) enter(m *model, text string) {
	if !m.now.Open && m.line.IsEmpty() {
		m.sheet = newSolution(m)
		return
	}
	m.check(text)
}
