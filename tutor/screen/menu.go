package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// menu lists everything that can be done now.
type menu struct {
	onLesson
	frame.Scroller
	at int
}

// open lists the actions that can be done now.
func (n *menu) open(m *model) []action {
	var can []action
	for _, a := range m.actions {
		// What cannot be done now is not listed: there is no grey item to wonder about.
		if a.menu != "" && a.can(m) {
			can = append(can, a)
		}
	}
	return can
}

func (n *menu) press(m *model, k tea.KeyMsg) bool {
	can := n.open(m)
	if k.Type == tea.KeyEnter {
		m.home()
		// After home, because it may lay a sheet of its own.
		can[n.at].do(m)
		return true
	}
	at, ok := frame.PickedInTurn(n.at, len(can), k)
	n.at = at
	return ok
}

// typed closes the menu: what is typed belongs to the problem.
func (n *menu) typed(m *model) {
	m.home()
	m.sheet.typed(m)
}

func (n *menu) keys(m *model) []frame.Binding {
	return []frame.Binding{m.on.UpDown, m.on.Choose, m.on.Back, m.on.Leave}
}

func (n *menu) view(m *model) views.Sheet {
	v := views.Menu{At: n.at, Top: n.Seen.Top, Beneath: m.beneath()}
	for _, a := range n.open(m) {
		v.Items = append(v.Items, views.ItemOf(a.menu, a.key, a.word))
	}
	return v
}

func (m *model) openMenu() { m.sheet = &menu{} }

func meaning(w tutor.Word) string {
	for _, h := range tutor.Words() {
		if h.Word == w {
			return saidMeaning(h.Does)
		}
	}
	return ""
}
