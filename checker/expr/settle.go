package expr

import (
	"regexp"
	"strings"
	"unicode/utf8"
)

// settle decides for each unit that could be a letter which of the two it is,
// side by side of the equation. The rules, from the notation:
//
//   - N, m or s behind a number is the unit when nothing else on that side is a
//     letter, else the letter; the other reading is kept as a second one;
//   - g behind a number is grams where a mass is expected, else gravity; the other
//     reading is kept here, too.
func (s *scanner) settle() {
	start := 0
	sides := [][2]int{}
	for i, t := range s.tokens {
		if t.kind == tokEquals || t.kind == tokEnd {
			sides = append(sides, [2]int{start, i})
			start = i + 1
		}
	}
	for k, side := range sides {
		alone := !s.hasLetter(side)
		mass := s.letters.mass || k > 0 && s.isMass(sides[k-1])
		for i := side[0]; i < side[1]; i++ {
			if s.tokens[i].letter != "" {
				s.settleOne(i, alone, mass, side)
			}
		}
	}
}

func (s *scanner) settleOne(i int, alone, mass bool, side [2]int) {
	t := &s.tokens[i]
	unit := alone && i > side[0] && s.tokens[i-1].kind != tokName && !s.isArgument(i)
	behind := i > side[0] && s.tokens[i-1].kind == tokNumber && !s.isArgument(i)
	if t.text == "g" {
		unit = mass && behind && side[1]-side[0] <= 3
	}
	if behind {
		// "0.45 N" can be μ times the normal force, "P − 196 N" can end in newtons,
		// "850 g·g" can be a mass in grams times gravity.
		s.met |= chooseLetter
		unit = unit == (s.take&chooseLetter == 0)
	}
	if unit {
		t.letter = ""
		return
	}
	*t = token{kind: tokName, text: t.letter, pos: t.pos, end: t.end}
}

// isArgument reports whether a token stands behind a function's power, as the s of
// sin² s does.
func (s *scanner) isArgument(i int) bool {
	return i > 2 && s.tokens[i-1].kind == tokNumber && s.tokens[i-2].kind == tokPower && s.tokens[i-3].kind == tokFunction
}

func (s *scanner) hasLetter(side [2]int) bool {
	for _, t := range s.tokens[side[0]:side[1]] {
		if t.kind == tokName {
			return true
		}
	}
	return false
}

// isMass reports whether a side is a single letter that is a mass.
func (s *scanner) isMass(side [2]int) bool {
	return side[1]-side[0] == 1 && s.tokens[side[0]].kind == tokName &&
		s.letters.Kind(s.tokens[side[0]].text) == Mass
}

// lead matches a word that joins a line to the one above it.
var lead = regexp.MustCompile(`^\s*(?:(?i:so|therefore|hence|thus|then|which gives|gives|i\.e\.)\s+|∴\s*)`)

// sumName matches the name of a sum in front of an equation. Groups: 1 the plain
// form without a sum sign (which could be a component of a force F), 2 and 3 the
// axis.
var sumName = regexp.MustCompile(`^\s*(?:(?:[ΣΣ∑]|(?i:sum|net|total|sigma))\s*(?i:of\s+)?(?:the\s+)?(?i:forces?|F)?\s*(?i:in|along)?\s*[_,]?\{?\s*(?i:net)?,?\s*([xyXYₓ])\}?(?i:-?\s*direction)?|(?i:F)_?\{?(?i:net|tot|total),?\s*([xyXY])\}?)\s*(?:=\s*0\s*:|[=:])`)

// innerName matches the name of a sum, or m·a, that stands inside a chain, as in
// "… = ΣFx = 0". Group 1 is what can be left out.
var innerName = regexp.MustCompile(`=\s*([ΣΣ∑]\s*F?_?\{?\s*[xyXYₓ]\}?\s*=|m\s*[·*]?\s*a\s*=)\s*0`)

// withoutInnerNames blanks the names of sums inside a chain.
func (l *Letters) withoutInnerNames(text string) string {
	at := innerName.FindStringSubmatchIndex(text)
	if at == nil || strings.HasPrefix(text[at[2]:], "m") && l.knows("a") {
		return text
	}
	return text[:at[2]] + strings.Repeat(" ", utf8.RuneCountInString(text[at[2]:at[3]])) + text[at[3]:]
}

var plainName = regexp.MustCompile(`^\s*(?:F_?\{?([xyₓ])\}?\s*([=:])|(?i:(?:horizontal|vertical)(?:ly)?\s*:)|([xyXY])\s*:)`)

// sumLabel cuts the name of a sum off the front of a line. It returns how many
// runes it took and the axis, "" for neither.
func (s *scanner) sumLabel(text string) (runes int, axis string) {
	if m := sumName.FindStringSubmatch(text); m != nil {
		return len([]rune(m[0])), axisOf(m[1] + m[2])
	}
	m := plainName.FindStringSubmatch(text)
	if m == nil {
		return 0, ""
	}
	if m[2] == "=" && (s.letters.knows("Fx") || s.letters.knows("Fy")) {
		s.met |= chooseName
		if s.take&chooseName == 0 {
			return 0, ""
		}
	}
	return len([]rune(m[0])), axisOf(m[1] + m[3])
}

func (l *Letters) knows(spelling string) bool { _, _, ok := l.resolve(spelling); return ok }

func axisOf(letter string) string {
	switch letter {
	case "x", "X", "ₓ":
		return "x"
	case "y", "Y":
		return "y"
	}
	return ""
}
