package screen

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/bench"
)

// cautions are read before anything is measured.
type cautions struct{ scroller }

func (*cautions) step(*model) benchStep { return stepCautions }

func (*cautions) question(*model) string { return saidReadAloud }

func (*cautions) under(*model, int, int) []row { return nil }

func (*cautions) typed(*model) {}

func (c *cautions) press(_ *model, k tea.KeyMsg) bool { return c.scroller.press(k) }

func (c *cautions) keys(m *model) []binding {
	keys := []binding{m.on.goOn}
	if c.more() {
		keys = append(keys, m.on.scrollHere)
	}
	return append(keys, m.on.menu, m.on.leave)
}

// enter goes on, once the last of them was seen. What was typed already is most likely
// names.
func (c *cautions) enter(m *model, text string) {
	if c.top+c.room < c.rows {
		c.scroller.press(tea.KeyMsg{Type: tea.KeyPgDown})
		return
	}
	m.bench.passed[stepCautions] = true
	m.bench.to(m, &seats{})
	if text == "" {
		text = strings.Join(m.bench.Names, ", ")
	}
	m.line.set(text)
}

func (c *cautions) body(m *model, cols, rows int) []row {
	out := []row{m.rule(cols, wordCautions, "")}
	return append(out, c.cut(cautionRows(m, cols), rows-1)...)
}

func cautionRows(m *model, cols int) []row {
	var rows []row
	for _, said := range bench.Cautions() {
		rows = append(rows, m.pointRows(said, cols)...)
	}
	return rows
}

// pointRows is one of several points, behind a sign.
func (m *model) pointRows(said string, cols int) []row {
	var rows []row
	for i, part := range m.look.wrap(said, cols-4) {
		r := row{gap(3)}
		if i == 0 {
			r = row{gap(1), m.look.text(near, m.look.signs.kept), gap(1)}
		}
		rows = append(rows, append(r, m.tint(plain, part, true)...))
	}
	return rows
}

// seats asks who is at the table: at the beginning for all, later for those who join.
type seats struct {
	joining   bool
	standings []string
}

func (*seats) step(*model) benchStep { return stepNames }

func (s *seats) question(*model) string {
	if s.joining {
		return saidJoining
	}
	return saidWhoIsHere
}

func (s *seats) under(m *model, cols, rows int) []row {
	out := m.labelledText(wordSample, saidNamesSample, cols)
	if s.joining {
		return out
	}
	return append(out, m.labelledText("", saidNobodyYet, cols)...)
}

func (*seats) typed(*model) {}

func (*seats) press(*model, tea.KeyMsg) bool { return false }

func (s *seats) keys(m *model) []binding {
	if s.joining {
		return []binding{m.on.goOn, m.on.back, m.on.leave}
	}
	return []binding{m.on.goOn, m.on.menu, m.on.leave}
}

// enter seats all who are named; a name that cannot be stays in the line.
func (s *seats) enter(m *model, text string) {
	b := m.bench
	if !s.joining {
		b.table.Students = nil
	}
	if why := b.table.Enrol(text); why != "" {
		m.say(why)
		return
	}
	m.line.set("")
	if s.joining {
		m.home()
	} else {
		s.goOn(m)
	}
	if !s.joining || text != "" {
		m.say(b.table.Seated())
	}
	b.keep(m)
}

// goOn offers earlier runs of the apparatus, else the empty form.
func (s *seats) goOn(m *model) {
	m.bench.passed[stepNames] = true
	if earlier := newRuns(m, m.bench.table.Form.Problem().ID); earlier != nil {
		m.bench.to(m, earlier)
		return
	}
	m.bench.to(m, m.bench.form)
}

func (s *seats) body(m *model, cols, rows int) []row {
	out := []row{m.rule(cols, wordTable, "")}
	for _, name := range s.standings {
		out = append(out, m.look.rows(plain, name, cols)...)
	}
	if s.standings != nil {
		out = append(out, nil)
	}
	for _, said := range []string{saidShared, tutor.SaidWhoSees(m.tutor.Kept())} {
		out = append(append(out, m.look.rows(quiet, said, cols)...), nil)
	}
	return out
}

// showTable lists who is at the table, and takes others in.
func (m *model) showTable() {
	if m.bench.rest != "" {
		(&seats{joining: true}).enter(m, m.bench.rest)
		return
	}
	m.bench.show(m, &seats{joining: true, standings: m.bench.table.Standings()})
}
