package screen

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// byHand has each student at the table predict on the measured numbers before the sums
// are shown.
type byHand struct {
	scroller
	at        int // which student; behind the last to go on
	standings []string
	then      func(*model) // goes on
	led       bool         // somebody has been led through
}

func (*byHand) step(*model) benchStep { return stepByHand }

// offer has the students predict by hand, once for each run. Otherwise, or once they go
// on, then does what comes next.
func (b *atBench) offer(m *model, then func(*model)) {
	_, why := b.table.Form.Copy()
	if b.passed[stepByHand] || len(b.table.Students) == 0 || why != "" || b.table.Form.Bad() != nil {
		then(m)
		return
	}
	b.showByHand(m, then)
}

func (b *atBench) showByHand(m *model, then func(*model)) {
	if !b.lend(m) {
		return
	}
	b.passed[stepByHand] = true
	b.hand = &byHand{then: then}
	b.hand.stand(m)
	m.sheet = b.hand
}

// askPredict offers it again, or begins at once for a student who is named.
func (m *model) askPredict() {
	name := m.bench.rest
	m.bench.showByHand(m, (*model).home)
	if name != "" && m.sheet == sheet(m.bench.hand) {
		m.bench.hand.enter(m, name)
	}
}

// stand finds out how far each has come.
func (h *byHand) stand(m *model) {
	h.standings = m.bench.table.Standings()
	h.at = min(h.at, len(h.standings))
}

func (h *byHand) question(m *model) string {
	if len(h.standings) == 0 {
		return saidNobodyPredicts
	}
	if m.bench.passed[stepResult] {
		return saidByHandLate
	}
	if h.led {
		return saidNextByHand
	}
	return saidFirstByHand
}

func (h *byHand) under(m *model, cols, rows int) []row {
	if len(h.standings) == 0 || m.bench.passed[stepResult] {
		return nil
	}
	return m.labelledText(wordNote, saidHelpless, cols)
}

func (h *byHand) typed(*model) {}

func (h *byHand) press(m *model, k tea.KeyMsg) bool {
	return picked(&h.at, len(h.standings)+1, k)
}

func (h *byHand) keys(m *model) []binding {
	if h.at == len(h.standings) && m.line.isEmpty() {
		return []binding{m.on.upDown, m.on.goOn, m.on.back, m.on.leave}
	}
	return []binding{m.on.upDown, m.on.seat, m.on.back, m.on.leave}
}

// enter begins with who is picked, or named in the line, or goes on.
func (h *byHand) enter(m *model, text string) {
	switch {
	case strings.TrimSpace(text) != "":
		s, why := m.bench.table.Called(text)
		if why != "" {
			m.say(why)
			return
		}
		m.line.set("")
		m.predict(s)
	case h.at < len(h.standings):
		m.predict(m.bench.table.Students[h.at])
	default:
		m.home()
		h.then(m)
	}
}

func (h *byHand) body(m *model, cols, rows int) []row {
	return m.besideApparatus(cols, rows, func(cols, rows int) []row {
		out := []row{m.rule(cols, stepWords()[stepByHand], "")}
		out = append(out, m.warningRows(m.bench.warnings, cols, rows-1-leastTable)...)
		var list []row
		for i, said := range h.standings {
			list = append(list, m.pickRow(i == h.at, m.look.row(plain, said)))
		}
		list = append(list, m.pickRow(h.at == len(h.standings), m.look.row(plain, wordGoOn)))
		room := rows - len(out)
		h.follow(h.at, len(list), room)
		return append(out, h.cut(list, room)...)
	})
}

// warningRows are the warnings about what was measured; where there is no room for all of
// them, the word that shows them.
func (m *model) warningRows(warnings []string, cols, most int) []row {
	var rows []row
	sign := mark{m.look.signs.kept, wordWarning, near}
	for _, w := range warnings {
		rows = append(rows, m.marked(sign, w, plain, true, cols)...)
	}
	if len(rows) > most {
		rows = m.marked(sign, saidReadWarnings, plain, true, cols)
	}
	return rows
}

func (m *model) showWarnings() {
	m.lay(wordWarnings, func(m *model, cols int) []row {
		return m.warningRows(m.bench.warnings, cols, len(m.bench.warnings)*cols)
	})
}

func (m *model) hasWarnings() bool { return m.isMeasuring() && m.bench.warnings != nil }

// predict leads a student through the stages on the measured numbers.
func (m *model) predict(s record.Student) {
	p, why := m.bench.table.Form.Copy()
	if why != "" {
		m.say(why)
		return
	}
	if !m.bench.keep(m) {
		return
	}
	desk, err := m.tutor.Seat(s)
	var lesson *tutor.Lesson
	if err == nil {
		lesson, err = desk.OpenCopy(p, m.bench.table.Run())
	}
	if err != nil {
		m.say(troubleWith(p.ID, err))
		return
	}
	m.desk, m.lesson, m.lent = desk, lesson, false
	m.actions = byHandActions()
	m.line.begin(lesson)
	m.work = newWork(m)
	m.refresh()
	m.sheet = m.work
	m.say(saidByHandNow(s.Name))
}

// toBench leads back from a prediction by hand.
func (m *model) toBench() {
	m.saveDraft()
	student := m.desk.Student
	m.desk, m.lesson, m.work, m.lent = nil, nil, nil, true
	m.actions = m.actionsAtBench()
	m.line.past = nil
	m.line.set("")
	m.refresh()
	m.bench.hand.led = true
	m.bench.hand.at = slices.IndexFunc(m.bench.table.Students, func(s record.Student) bool { return s.ID == student.ID }) + 1
	m.bench.hand.stand(m)
	m.sheet = m.bench.hand
	m.say(m.bench.table.Standing(student) + ".")
}
