package screen

import (
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
)

// apparatus is the list of problems, one of which is built like what stands on the
// table.
type apparatus struct{ *list }

func newApparatus(m *model) apparatus {
	n := &list{shelves: shelvesOf(m.tutor.Bank), nobody: true}
	n.typed(m)
	return apparatus{n}
}

// shelvesOf are the problems of a bank by topic, whoever asks.
func shelvesOf(bank *problems.Bank) []tutor.Shelf {
	var shelves []tutor.Shelf
	for _, topic := range problems.Topics() {
		shelf := tutor.Shelf{Topic: topic}
		for _, h := range bank.List() {
			if h.Topic == topic.ID {
				shelf.Problems = append(shelf.Problems, tutor.Listed{Heading: h})
			}
		}
		if shelf.Problems != nil {
			shelves = append(shelves, shelf)
		}
	}
	return shelves
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
