package checker_test

import "example.org/standstill/checker"

// numbersIn lists the places of a tree where a number stands, but no power.
func (t *tree) numbersIn() []*tree {
	if t.op == 'n' && t.text != "0" {
		return []*tree{t}
	}
	if t.op == '^' {
		return t.args[0].numbersIn()
	}
	var all []*tree
	for _, a := range t.args {
		all = append(all, a.numbersIn()...)
	}
	return all
}

// exchange returns the tree with one of its parts in place of another.
func (t *tree) exchange(old, by *tree) *tree {
	if t == old {
		return by
	}
	c := *t
	c.args = make([]*tree, len(t.args))
	for i, a := range t.args {
		c.args[i] = a.exchange(old, by)
	}
	return &c
}

// spoiled changes one number of a right line, so that the line is false by more
// than three parts in a hundred of its largest term.
func (w *writer) spoiled(u *sum) (line, bool) {
	w.numbers, w.decimals, w.parts = pick(w.Rand, 0.5, 1), pick(w.Rand, 0.5, 1), ""
	l := w.arrange(u.terms)
	if !w.isTrue(l, u) {
		return l, false
	}
	var all []*tree
	for _, side := range l.sides {
		all = append(all, side.numbersIn()...)
	}
	if len(all) == 0 {
		return l, false
	}
	old := all[w.IntN(len(all))]
	by := w.offBy(old, pick(w.Rand, 0.6, 0.75, 0.85, 0.92, 1.08, 1.15, 1.3, 1.6))
	for i := range l.sides {
		l.sides[i] = l.sides[i].exchange(old, by)
	}
	return l, l.miss(w.at) > 0.04
}

// offBy returns a number that is off by a factor.
func (w *writer) offBy(old *tree, factor float64) *tree {
	if !old.deg {
		return rounded(old.num*factor, 3)
	}
	return roundDegrees(old.num*factor, 3)
}

// spoil writes a line with a number that is off.
func (s *search) spoil(u *sum, stage checker.Stage, item, body string) {
	w := s.newWriter(s.Rand, body)
	if w.nothing(u.terms) {
		return
	}
	if l, ok := w.spoiled(u); ok && !s.bare(l) {
		s.expectWrong(stage, item, w.text(l, u.axis.String()), mistake{})
	}
}
