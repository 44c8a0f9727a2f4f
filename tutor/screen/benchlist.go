package screen

import (
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// apparatus is the list of problems, one of which is built like what stands on the
// table.
type apparatus struct{ *list }

func newApparatus(m *model) apparatus {
	n := &list{shown: views.List{Sections: tutor.SectionsOf(m.tutor.Bank, nil), IsNobody: true}}
	n.typed(m)
	return apparatus{n}
}

func (apparatus) place(*model) int { return -1 }

func (a apparatus) question(*model) string { return saidWhichApparatus }

func (a apparatus) keys(m *model) []frame.Binding {
	return []frame.Binding{m.on.UpDown, m.on.Topic, m.on.Choose, m.on.Menu, m.on.Leave}
}

// enter puts the picked one on the table, with the class's g.
func (a apparatus) enter(m *model, _ string) {
	if a.shown.At >= len(a.shown.Found) {
		m.say(a.shown.None())
		return
	}
	id := a.shown.Found[a.shown.At].ID
	p, err := m.tutor.Bank.Get(id)
	if err == nil {
		p, err = m.tutor.Class.WithGravity(p)
	}
	if err != nil {
		m.say(troubleWith(id, err))
		return
	}
	m.bench.take(m, p)
}
