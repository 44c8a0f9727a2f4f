package checker_test

import "example.org/standstill/checker"

// bound writes a sum in component letters after answers that settle what each of
// them stands for, its size or the signed component. A spoiled one has one sign
// that does not fit.
func (s *search) bound(spoiled bool) {
	u := s.someSum()
	w := s.newWriter(s.Rand, u.body)
	w.style.subscript, w.equal = 0, false
	w.numbers, w.decimals = 0, 0
	var before []checker.Answer
	var pieces []piece
	for _, t := range u.terms {
		if t.force.Direction != nil || t.product().value(w.at) < 0 {
			return
		}
		p, answer := w.settled(t, u)
		before = append(before, answer)
		pieces = append(pieces, p)
	}
	if spoiled {
		i := w.IntN(len(pieces))
		pieces[i].neg = !pieces[i].neg
	}
	l := w.split(pieces)
	text := w.text(l, u.axis.String())
	s.before = before
	switch {
	case !spoiled && len(u.terms) > 1 && !w.nothing(u.terms):
		s.expectRight(stageOf(u.axis), u.body, text, nil)
	case spoiled && l.miss(s.at) > 0.03:
		s.expectWrong(stageOf(u.axis), u.body, text, mistake{codes: codes(checker.Sign)})
	}
	s.before = nil
}

// settled answers one component, and returns what its letter then adds to the sum.
func (w *writer) settled(t term, u *sum) (piece, checker.Answer) {
	item := t.letter
	if len(w.sys.Bodies) > 1 {
		item = u.body + "." + t.letter
	}
	typed := piece{top: append([]*tree{t.size}, w.angular(t)...)}
	signed := chance(w.Rand, 0.5)
	typed.neg = signed && t.neg
	answer := checker.Answer{Stage: checker.Components, Item: item, Text: w.style.print(typed.tree())}
	if signed {
		return piece{top: []*tree{stands(t.letter, t.signed())}}, answer
	}
	return piece{neg: t.neg, top: []*tree{stands(t.letter, t.product())}}, answer
}

// angular is the sine or cosine of a term, if it has one.
func (w *writer) angular(t term) []*tree {
	if t.fn == "" {
		return nil
	}
	return w.function(t.fn, t.angle)
}
