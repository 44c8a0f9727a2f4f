package expr

import "slices"

// decideUnits decides for each unit that could be a letter which of the two it is: N, m, g
// behind a number. The rules, from the notation:
//
//   - s and k are letters wherever the problem has them;
//   - N or m behind a number is the unit, g is gravity but where a mass is expected;
//   - each is tried the other way, too, by itself.
//
// flips has a bit for each that is taken the other way. It returns how many could be, and how
// many became letters.
func (s *stream) decideUnits(flips uint8) (free, letterly int) {
	start := 0
	sides := [][2]int{}
	for i, t := range s.tokens {
		if t.kind == tokEquals || t.kind == tokEnd {
			sides = append(sides, [2]int{start, i})
			start = i + 1
		}
	}
	for k, side := range sides {
		mass := s.letters.mass || k > 0 && s.isMass(sides[k-1])
		for i := side[0]; i < side[1]; i++ {
			if s.tokens[i].letter != "" {
				unit, counts := s.isUnit(i, mass, side)
				if counts && free < mostFlips {
					unit = unit == (flips>>free&1 == 0)
					free++
				}
				letterly += s.decideUnit(i, unit)
			}
		}
	}
	return free, letterly
}

// isUnit reports whether a token is usually a unit; open says that it could be a letter as well.
func (s *stream) isUnit(i int, mass bool, side [2]int) (unit, open bool) {
	t := &s.tokens[i]
	behind := i > side[0] && (s.tokens[i-1].kind == tokNumber || s.tokens[i-1].kind == tokClose) && !s.isArgument(i)
	switch t.text {
	// No problem at rest has a time in it; s is an elongation where the problem has it.
	case "s":
		return false, false
	// m = 850 g wants grams, m g = 31 N wants gravity: a mass on the other side, and little else here.
	case "g":
		return mass && behind && side[1]-side[0] <= 3, behind
	}
	return behind, behind
}

// decideUnit makes a token a unit or a letter. It returns how many letters it made.
func (s *stream) decideUnit(i int, unit bool) int {
	t := &s.tokens[i]
	if unit {
		t.letter = ""
		return 0
	}
	*t = token{kind: tokName, text: t.letter, pos: t.pos, end: t.end}
	return 1
}

// mostFlips is how many units of one line are tried as letters; of those behind, each
// is taken as is usual.
const mostFlips = 4

// isArgument reports whether a token stands behind a function's power, as the s of
// sin² s does.
func (s *stream) isArgument(i int) bool {
	return i > 2 && s.tokens[i-1].kind == tokNumber && s.tokens[i-2].kind == tokPower && s.tokens[i-3].kind == tokFunction
}

// isMass reports whether a side is a single letter that is a mass.
func (s *stream) isMass(side [2]int) bool {
	return side[1]-side[0] == 1 && s.tokens[side[0]].kind == tokName &&
		s.letters.Kind(s.tokens[side[0]].text) == Mass
}

// place gives the tokens their positions in the cleaned text.
func (s *stream) place(p *page) {
	for i := range s.tokens {
		t := &s.tokens[i]
		empty := t.pos == t.end
		t.pos = p.from(t.pos)
		if empty {
			t.end = t.pos
		} else {
			t.end = p.from(t.end-1) + 1
		}
	}
}

// trim drops an equals sign or arrow at the start of a line, which only joins it
// to the one above, and a degree sign behind an angle's letter, which says nothing;
// and it takes an x that is between no two factors for a letter.
func (s *stream) trim(runes []rune) {
	for len(s.tokens) > 2 && s.tokens[0].kind == tokEquals {
		s.tokens = s.tokens[1:]
	}
	// From the end, since what is deleted moves all that is behind it.
	for i := len(s.tokens) - 1; i > 0; i-- {
		if t, before := s.tokens[i], s.tokens[i-1]; t.kind == tokUnit && t.text == "deg" &&
			before.kind == tokName && s.letters.Kind(before.text) == Angle {
			s.tokens = slices.Delete(s.tokens, i, i+1)
		}
	}
	for i, t := range s.tokens {
		if t.kind != tokTimes || runes[t.pos] != 'x' && runes[t.pos] != 'X' {
			continue
		}
		switch s.tokens[i+1].kind {
		case tokEquals, tokEnd, tokPlus, tokMinus, tokClose, tokPower:
			s.tokens[i] = token{kind: tokName, text: "x", unknown: true, pos: t.pos, end: t.end}
		}
	}
}
