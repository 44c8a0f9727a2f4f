package expr

// settle decides for each unit that could be a letter which of the two it is: N, m, g
// behind a number. The rules, from the notation:
//
//   - s and k are letters wherever the problem has them;
//   - N or m behind a number is the unit, g is gravity but where a mass is expected;
//   - each is tried the other way, too, by itself.
//
// It returns how many of them could be taken the other way.
func (s *scanner) settle() int {
	start, free := 0, 0
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
				free += s.settleOne(i, mass, side, free)
			}
		}
	}
	return free
}

// settleOne settles one token; free is how many before it could be taken either way.
// It returns 1 where this one could.
func (s *scanner) settleOne(i int, mass bool, side [2]int, free int) int {
	t := &s.tokens[i]
	behind := i > side[0] && (s.tokens[i-1].kind == tokNumber || s.tokens[i-1].kind == tokClose) && !s.isArgument(i)
	unit := behind
	if t.text == "g" {
		unit = mass && behind && side[1]-side[0] <= 3
	}
	counts := 0
	switch {
	case t.text == "s":
		unit = false
	case behind && free < mostFlips:
		counts = 1
		unit = unit == (s.flips>>free&1 == 0)
	}
	if unit {
		t.letter = ""
		return counts
	}
	s.letterly++
	*t = token{kind: tokName, text: t.letter, pos: t.pos, end: t.end}
	return counts
}

// mostFlips is how many units of one line are tried as letters; of those behind, each
// is taken as is usual.
const mostFlips = 4

// isArgument reports whether a token stands behind a function's power, as the s of
// sin² s does.
func (s *scanner) isArgument(i int) bool {
	return i > 2 && s.tokens[i-1].kind == tokNumber && s.tokens[i-2].kind == tokPower && s.tokens[i-3].kind == tokFunction
}

// isMass reports whether a side is a single letter that is a mass.
func (s *scanner) isMass(side [2]int) bool {
	return side[1]-side[0] == 1 && s.tokens[side[0]].kind == tokName &&
		s.letters.Kind(s.tokens[side[0]].text) == Mass
}
