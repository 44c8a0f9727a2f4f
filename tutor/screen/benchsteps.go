package screen

import (
	"slices"
	"strings"

	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// placed is a sheet that belongs to a step of the script.
type placed interface{ place(*model) int }

// step is the one in hand: that of the sheet, else of the one under it.
func (b *atBench) step(m *model) int {
	for _, s := range []sheet{m.sheet, b.base} {
		if s, ok := s.(placed); ok {
			return s.place(m)
		}
	}
	return b.at
}

// goOn goes to the first step from one on that has something to ask.
func (b *atBench) goOn(m *model, from int) {
	for i := from; i < len(b.table.Steps); i++ {
		s := &b.table.Steps[i]
		b.at = i
		switch {
		case s.Kinds != nil:
			b.to(m, b.form)
			b.form.first(m, s.Kinds)
			return
		case s.Ask == nil:
			m.openOutcome(&outcome{page: bench.PageResult})
			return
		}
		if q, ok := s.Ask(&b.table); ok {
			b.put(m, i, q, func(m *model) { b.goOn(m, i) })
			return
		}
	}
	m.home()
}

// put lays the question of a step.
func (b *atBench) put(m *model, step int, q *bench.Question, then func(*model)) {
	s := &b.table.Steps[step]
	a := &asking{step: step, title: s.Title, q: q, then: then}
	if s.Shows != nil {
		a.shows = s.Shows(&b.table)
	}
	if b.form == nil || step < b.table.Named(bench.StepValues) {
		b.base, m.lent = a, true
	} else if !b.lend(m) {
		return
	}
	b.ask(m, a)
}

// steps are the words of a run on their rope, taut as far as the table has come.
func (m *model) steps() views.Rope {
	at := m.bench.step(m)
	rope := views.Rope{Reached: -1}
	for i, s := range m.bench.table.Steps {
		switch word := s.Name; {
		case word == "":
			continue
		case i == at, i < at && m.bench.nameless(i+1, at):
			rope.Reached = len(rope.Words)
			rope.Words = append(rope.Words, views.InHand(m.look, word))
		case m.bench.table.Form != nil && s.IsDone != nil && s.IsDone(&m.bench.table):
			rope.Words = append(rope.Words, m.look.Text(frame.Good, " "+m.look.Signs.Done+" "+word+" "))
		default:
			rope.Words = append(rope.Words, m.look.Text(frame.Quiet, " "+word+" "))
		}
	}
	return rope
}

// nameless reports whether the steps from one to another have no name of their own.
func (b *atBench) nameless(from, to int) bool {
	return !slices.ContainsFunc(b.table.Steps[from:to+1], func(s bench.Step) bool { return s.Name != "" })
}

// benchTop is the apparatus and who is at the table.
func (m *model) benchTop() (title, right string) {
	if m.bench.table.Form == nil {
		return saidProgram, wordBench
	}
	right = wordBench
	if names := strings.Join(bench.NamesOf(m.bench.table.Students), ", "); names != "" {
		right += " " + m.look.Signs.Dash + " " + names
	}
	return m.bench.table.Form.Problem().Title, right
}
