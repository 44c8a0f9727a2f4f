package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// menu lists everything that can be done now.
type menu struct {
	onLesson
	frame.Scroller
	at int
}

func (n *menu) press(m *model, k tea.KeyMsg) bool {
	can := m.actions.Offered(m)
	if k.Type == tea.KeyEnter {
		m.home()
		// After home, because it may lay a sheet of its own.
		can[n.at].Do(m)
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
	return []frame.Binding{m.on.UpDown, m.on.Choose, m.on.Back, m.on.Quit}
}

func (n *menu) view(m *model) views.Sheet {
	return views.Menu{Items: m.actions.Offered(m).Items(), At: n.at, Top: n.Seen.Top, Beneath: m.beneath()}
}

func (m *model) openMenu() { m.sheet = &menu{} }
