package screen

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// list is every problem by topic and level, with how the student stands with it.
// What is typed narrows it down.
type list struct {
	scroller
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
	v.Top = n.seen.Top
	return v
}

// typed keeps what holds the typed text in its title, topic, level or id.
func (n *list) typed(m *model) {
	wanted := strings.ToLower(strings.TrimSpace(m.line.Text()))
	if _, isWord := tutor.WordOf(wanted); isWord {
		wanted = ""
	}
	n.shown.Found, n.shown.At = nil, 0
	for i, section := range n.shown.Sections {
		for _, p := range section.Problems {
			if strings.Contains(strings.ToLower(p.Title+" "+section.Title+" "+p.Topic+" "+p.ID+" "+views.LevelWord(p.Level)), wanted) {
				n.shown.Found = append(n.shown.Found, views.Found{Listed: p, Section: i})
			}
		}
	}
}

func (n *list) press(m *model, k tea.KeyMsg) bool {
	if m.rows < views.LowRows {
		n.shown.First = ""
	}
	switch k.Type {
	case tea.KeyUp:
		n.shown.At--
	case tea.KeyDown:
		n.shown.At++
	case tea.KeyPgUp:
		n.shown.At -= n.seen.Room - 1
	case tea.KeyPgDown:
		n.shown.At += n.seen.Room - 1
	case tea.KeyTab:
		n.toTopic(+1)
	case tea.KeyShiftTab:
		n.toTopic(-1)
	default:
		return false
	}
	n.shown.At = min(max(n.shown.At, 0), max(len(n.shown.Found)-1, 0))
	return true
}

// toTopic goes to the first problem of the next topic, or of this one and then of
// the one before.
func (n *list) toTopic(step int) {
	first := func(i int) bool { return i == 0 || n.shown.Found[i].Section != n.shown.Found[i-1].Section }
	for i := n.shown.At + step; i >= 0 && i < len(n.shown.Found); i += step {
		if first(i) {
			n.shown.At = i
			return
		}
	}
}

func (n *list) enter(m *model, _ string) {
	if n.shown.At >= len(n.shown.Found) {
		m.say(n.shown.None())
		return
	}
	m.line.Set("")
	if p := n.shown.Found[n.shown.At]; p.ID == n.advice.ID {
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
	return append(keys, m.on.Leave)
}
