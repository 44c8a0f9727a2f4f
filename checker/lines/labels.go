package lines

import (
	"strings"

	"example.org/standstill/checker/pattern"
)

// number matches the number or letter of a line: "2.", "a)", "(b)", "3:". Group 1 is
// what could be a factor or a number of the line itself.
var number = pattern.Of(`^(?:[0-9]{1,2}[a-z]?[)\]]|[a-zA-Z][)\]]|([(\[][0-9]{1,2}[a-z]?[)\]]|[(\[][a-z][)\]]|[0-9]{1,2}[.:](?: |$)))\s*`)

// answer matches words in front of a line that say nothing of it.
var answer = pattern.Of(`^(?i:(?:final |my )?(?:answers?|ans|results?|solutions?|sol|step [0-9]{1,2}|line [0-9]{1,2}|eqn?\.? ?\(?[0-9]{1,2}\)?|equation [0-9]{1,2}))\s*[:.]\s*`)

// bodyName matches what could be a body's name in front of a line.
var bodyName = pattern.Of(`^((?i:on |body |for )?([\pL][\pL0-9 ]{0,20}?))\s*:\s*`)

// label takes labels off the front of a piece.
func (s *splitter) label(p piece) piece {
	for {
		text := p.text()
		runes := 0
		// Hardly any line has a label, and three patterns over each of them take time.
		if !strings.ContainsAny(text, ")].:") {
			return p
		}
		if m := number().FindStringSubmatch(text); m != nil && (m[1] == "" || s.isNamed(text[len(m[0]):])) {
			runes = len([]rune(m[0]))
		} else if m := answer().FindString(text); m != "" {
			runes = len([]rune(m))
		} else if m := bodyName().FindStringSubmatch(text); m != nil && s.body(m[2]) {
			runes, p.body = len([]rune(m[0])), m[2]
		}
		if runes == 0 {
			return p
		}
		p = p.part(runes, len(p.runes))
	}
}

// isNamed reports whether a line begins with a letter that it sets equal to something:
// before it a number is a label and no factor.
func (s *splitter) isNamed(text string) bool {
	left, _, found := strings.Cut(text, "=")
	return found && s.letter(strings.TrimSpace(left))
}

// labelBefore returns where the label begins that ends in the bracket at a place, with
// a space in front of it; −1 for none.
func (s *splitter) labelBefore(i int) int {
	from := i
	for from > 0 && isWord(s.runes[from-1]) {
		from--
	}
	// “b)” and “12)”; what is longer is a word in brackets.
	if from == i || i-from > 2 || from == 0 || s.runes[from-1] != ' ' {
		return -1
	}
	return from
}
