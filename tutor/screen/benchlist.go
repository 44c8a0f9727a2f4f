package screen

import (
	"example.org/standstill/tutor"
)

// apparatus is the list of problems, one of which is built like what stands on the
// table.
type apparatus struct{ *list }

func newApparatus(m *model) apparatus {
	n := &list{sections: tutor.SectionsOf(m.tutor.Bank, nil), nobody: true}
	n.typed(m)
	return apparatus{n}
}

func (apparatus) place(*model) int { return -1 }

func (a apparatus) question(*model) string { return saidWhichApparatus }

func (a apparatus) keys(m *model) []binding {
	return []binding{m.on.upDown, m.on.topic, m.on.choose, m.on.menu, m.on.leave}
}

// enter puts the picked one on the table, with the class's g.
func (a apparatus) enter(m *model, _ string) {
	if a.at >= len(a.found) {
		m.say(a.none())
		return
	}
	id := a.found[a.at].ID
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
