package bench

import (
	"slices"

	"example.org/standstill/tutor/bench"
)

// placed is a sheet that belongs to a step of the script.
type placed interface{ place(*Bench) int }

// step is the one in hand: that of the sheet, else of the one under it.
func (b *Bench) step() int {
	for _, s := range []sheet{b.sheet, b.base} {
		if s, ok := s.(placed); ok {
			return s.place(b)
		}
	}
	return b.at
}

// goOn goes to the first step from one on that has something to ask.
func (b *Bench) goOn(from int) {
	for i := from; i < len(b.Table.Steps); i++ {
		s := &b.Table.Steps[i]
		b.at = i
		switch {
		case s.Kinds != nil:
			b.to(b.form)
			b.form.first(b, s.Kinds)
			return
		// The result asks nothing: it is shown.
		case s.Ask == nil:
			b.openOutcome(&outcome{page: bench.PageResult})
			return
		}
		if q, ok := s.Ask(&b.Table); ok {
			b.put(i, q, func(b *Bench) { b.goOn(i) })
			return
		}
	}
	b.home()
}

// put lays the question of a step.
func (b *Bench) put(step int, q *bench.Question, then func(*Bench)) {
	s := &b.Table.Steps[step]
	a := &asking{step: step, title: s.Title, q: q, then: then}
	if s.Shows != nil {
		a.shows = s.Shows(&b.Table)
	}
	// Before the values there is no form to go back to.
	if b.form == nil || step < b.Table.Named(bench.StepValues) {
		b.base, b.lent = a, true
	} else if !b.lend() {
		return
	}
	b.ask(a)
}

// nameless reports whether steps have no name of their own.
func nameless(steps []bench.Step) bool {
	return !slices.ContainsFunc(steps, func(s bench.Step) bool { return s.Name != "" })
}
