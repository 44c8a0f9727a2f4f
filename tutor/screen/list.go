package screen

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// list is every problem by topic and level, with how the student stands with it.
// What is typed narrows it down.
type list struct {
	frame.Scroller
	shown  views.List
	advice tutor.Advice
}

func newList(m *model) *list {
	n := &list{shown: views.List{Sections: m.desk.Sections()}}
	n.advice, _ = m.desk.Next()
	n.shown.Advised, n.shown.Why = n.advice.ID, n.advice.Why
	n.typed(m)
	n.shown.At = max(slices.IndexFunc(n.shown.Found, func(p views.Found) bool { return p.ID == n.advice.ID }), 0)
	return n
}

func (m *model) showProblems() {
	m.lend()
	m.sheet = newList(m)
}

func (n *list) question(m *model) string { return saidWhichProblem }

func (n *list) view(m *model) views.Sheet {
	v := n.shown
	v.Top = n.Seen.Top
	return v
}

func (n *list) typed(m *model) { n.shown = n.shown.Narrowed(m.line.Text()) }

func (n *list) press(m *model, k tea.KeyMsg) (ok bool) {
	if m.rows < views.LowRows {
		n.shown.First = ""
	}
	n.shown, ok = n.shown.Moved(k, n.Seen)
	return ok
}

func (n *list) enter(m *model, _ string) {
	p, ok := n.shown.Picked()
	if !ok {
		return // the note below the line says why
	}
	m.line.Set("")
	if p.ID == n.advice.ID {
		m.openAdvised(n.advice)
	} else {
		m.open(p.ID, false)
	}
}

func (n *list) keys(m *model) []frame.Binding {
	keys := []frame.Binding{m.on.UpDown, m.on.Topic, m.on.Open}
	if m.work != nil {
		keys = append(keys, m.on.Back)
	} else {
		keys = append(keys, m.on.Menu)
	}
	return append(keys, m.on.Quit)
}
