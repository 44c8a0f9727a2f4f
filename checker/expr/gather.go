package expr

import (
	"slices"
	"unicode"
)

// gather puts together what is one letter typed in pieces: T 1, T(1), T[1], T1 x. It
// does so only where the first piece alone is no letter of the problem.
func (s *stream) gather() {
	for i := 0; i+1 < len(s.tokens); i++ {
		t := s.tokens[i]
		if t.kind != tokName {
			continue
		}
		// Where T alone is a letter, T 1 is a product, odd as it looks.
		if n, length := s.index(i + 1); t.unknown && length > 0 {
			s.join(i, length, t.text+n)
		}
		if again := s.tokens[i+1]; t.said && again.kind == tokName && again.text == t.text {
			s.tokens = slices.Delete(s.tokens, i, i+1) // "the mass m"
			continue
		}
		if axis, length := s.axisBehind(); i == 0 && !s.tokens[0].unknown && length > 0 {
			s.join(0, length, s.tokens[0].text+axis)
		}
	}
}

// axisBehind reads the axis of a component that stands apart from its letter in front of an
// equals sign, T1 x = or T1(x) =, and says how many tokens it takes.
func (s *stream) axisBehind() (axis string, length int) {
	kinds := func(want ...tokenKind) bool {
		for i, kind := range want {
			if i+1 >= len(s.tokens) || s.tokens[i+1].kind != kind {
				return false
			}
		}
		return true
	}
	switch {
	case kinds(tokName, tokEquals) && s.tokens[1].unknown:
		return s.tokens[1].text, 1
	case kinds(tokOpen, tokName, tokClose, tokEquals) && s.tokens[2].unknown:
		return s.tokens[2].text, 3
	}
	return "", 0
}

// index reads a whole number, in brackets or bare, and says how many tokens it takes.
func (s *stream) index(i int) (text string, length int) {
	if s.isIndex(i) {
		return s.tokens[i].num.Text, 1
	}
	if s.tokens[i].kind == tokOpen && s.isIndex(i+1) && s.tokens[i+2].kind == tokClose {
		return s.tokens[i+1].num.Text, 3
	}
	return "", 0
}

func (s *stream) isIndex(i int) bool {
	return s.tokens[i].kind == tokNumber && len(s.tokens[i].num.Text) == 1 && unicode.IsDigit(rune(s.tokens[i].num.Text[0]))
}

// join makes one token of the i-th and those behind it, if their text is a letter of
// the problem.
func (s *stream) join(i, more int, text string) {
	name, _, ok := s.letters.resolve(normal([]rune(text)).text)
	if !ok || s.letters.Kind(name) == Angle {
		return
	}
	s.tokens[i] = token{kind: tokName, text: name, pos: s.tokens[i].pos, end: s.tokens[i+more].end}
	s.tokens = append(s.tokens[:i+1], s.tokens[i+1+more:]...)
}
