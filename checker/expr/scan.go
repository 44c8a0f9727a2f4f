package expr

import (
	"slices"
	"strings"

	"example.org/standstill/checker/quantity"
)

// scanner turns runes into tokens. take says how to read what can be read in two ways; met
// collects the choices that the text left open.
type scanner struct {
	letters *Letters
	runes   []rune
	at      int
	tokens  []token
	take    choice
	met     choice
}

// marks is the table of single characters that mean the same.
var marks = []struct {
	shapes string
	kind   tokenKind
}{
	{"+", tokPlus},
	{"-−–—‐‑⁻", tokMinus},
	{"*·×⋅∙•∗✕", tokTimes},
	{"/÷∕⁄", tokSlash},
	{":", tokRatio},
	{"^", tokPower},
	{"([{", tokOpen},
	{")]}", tokClose},
	{"|", tokBar},
}

func (s *scanner) scan() error {
	for s.at < len(s.runes) {
		r := s.runes[s.at]
		var err error
		switch {
		case r == ' ' || (r == '.' || r == '…') && s.ends():
			s.at++
		case isDigit(r) || r == '.' && isDigit(s.peek(1)):
			err = s.number()
		case r == '°' || r == '%':
			s.put(token{kind: tokUnit, text: map[rune]string{'°': "deg", '%': "%"}[r]}, 1)
		case r == '√':
			s.put(token{kind: tokFunction, text: "sqrt"}, 1)
		case superscript(r) != 0:
			err = s.exponent()
		case isRun(r):
			err = s.run()
		default:
			err = s.mark(r)
		}
		if err != nil {
			return err
		}
	}
	s.tokens = append(s.tokens, token{kind: tokEnd, pos: len(s.runes), end: len(s.runes)})
	return nil
}

// ends reports whether only full stops, points and spaces follow.
func (s *scanner) ends() bool { return strings.Trim(string(s.runes[s.at:]), " .…") == "" }

// here is the scanner's place.
func (s *scanner) here() place { return place{s.letters, s.runes, s.at} }

func (s *scanner) put(t token, length int) {
	t.pos, t.end = s.at, s.at+length
	s.tokens = append(s.tokens, t)
	s.at += length
}

func (s *scanner) peek(ahead int) rune {
	if s.at+ahead < len(s.runes) {
		return s.runes[s.at+ahead]
	}
	return 0
}

func (s *scanner) last() token {
	if len(s.tokens) == 0 {
		return token{}
	}
	return s.tokens[len(s.tokens)-1]
}

func (s *scanner) mark(r rune) error {
	if r == '*' && s.peek(1) == '*' {
		s.put(token{kind: tokPower, text: "**"}, 2)
		return nil
	}
	if n, sign := s.relation(); n > 0 {
		// Arrows and words for "is" often stand beside the sign itself.
		if s.last().kind == tokEquals && sign == "=" {
			s.at += n // "= =" is one equals sign
			return nil
		}
		s.put(token{kind: tokEquals, text: sign}, n)
		return nil
	}
	// Only behind the first letter: further on, a colon is a ratio.
	if r == ':' && len(s.tokens) == 1 && s.tokens[0].kind == tokName && !s.isRatio() {
		s.put(token{kind: tokEquals, text: "="}, 1) // "T1: 20.2 N"
		return nil
	}
	if (r == '(' || r == '[') && s.bracketed() {
		return nil
	}
	if r == '½' {
		s.put(token{kind: tokNumber, num: quantity.Number{Text: "0.5", Value: 0.5, Figures: 1, Certain: 1}}, 1)
		return nil
	}
	for _, m := range marks {
		if strings.ContainsRune(m.shapes, r) {
			s.put(token{kind: m.kind, text: string(r)}, 1)
			return nil
		}
	}
	return unreadable(s.at, s.at+1, saidStrange(r))
}

// relations is the table of signs between two sides, the longest first. What is nearly
// equal counts as equal, and an arrow that is left inside a statement is an equals sign.
var relations = []struct{ shapes, sign string }{
	{"<==> <=> <-> --> ==> ~= =~ == := => -> =:", "="},
	{"<= =< ≤", "≤"}, {">= ≥", "≥"}, {"< ≪", "<"}, {"> ≫", ">"}, {"!= ≠", "≠"},
	{"= ≈ ≅ ≃ ≐ ≒ ∼ ~ ≡ ⇒ → ⇔", "="},
}

// relation finds the sign between two sides that stands here.
func (s *scanner) relation() (length int, sign string) {
	if next := skip(s.runes, s.at+1, " "); s.runes[s.at] == ':' && at(s.runes, next) == '=' {
		return next + 1 - s.at, "=" // ":=", with spaces between or none
	}
	ahead := string(s.runes[s.at:min(len(s.runes), s.at+4)])
	for _, row := range relations {
		for shape := range strings.FieldsSeq(row.shapes) {
			if strings.HasPrefix(ahead, shape) {
				return runesIn(shape), row.sign
			}
		}
	}
	return 0, ""
}

// isRatio decides what a colon behind a letter is: a ratio if an equals sign follows
// ("P:R = cos 56"), though "T1: T2 = 25.8 N" can be meant as a chain.
func (s *scanner) isRatio() bool {
	if !strings.ContainsAny(string(s.runes[s.at:]), "=≈≅≃~") {
		return false
	}
	s.met |= chooseEquals
	return s.take&chooseEquals == 0
}

// number reads a number. Behind a function, 1 275 is two.
func (s *scanner) number() error {
	n := numberScan{runes: s.runes, at: s.at, take: s.take, alone: s.last().kind == tokFunction || s.isPower()}
	text, start := n.read(), s.at
	s.at, s.met = n.at, s.met|n.met
	return s.finish(text, start)
}

// isPower reports whether a number ahead is a power: behind a power sign, with its own sign or not.
// The −1 of "sin^-1 320/607" is no group of 1 320.
func (s *scanner) isPower() bool {
	at := len(s.tokens) - 1
	if at >= 0 && s.tokens[at].kind == tokMinus {
		at--
	}
	return at >= 0 && s.tokens[at].kind == tokPower
}

// exponent reads raised digits as a power.
func (s *scanner) exponent() error {
	// The sign that is not there has no width, so that a mark under it takes no room.
	s.put(token{kind: tokPower, text: "^"}, 0)
	if s.runes[s.at] == '⁻' {
		s.put(token{kind: tokMinus, text: "-"}, 1)
	}
	start := s.at
	var digits strings.Builder
	for s.at < len(s.runes) && superscript(s.runes[s.at]) > '-' {
		digits.WriteRune(superscript(s.runes[s.at]))
		s.at++
	}
	return s.finish(digits.String(), start)
}

// finish appends the number whose digits were read from start to the scanner's
// place.
func (s *scanner) finish(digits string, start int) error {
	num, err := quantity.ParseNumber(digits)
	if err != nil {
		return unreadable(start, s.at, saidNumber)
	}
	s.tokens = append(s.tokens, token{kind: tokNumber, num: num, pos: start, end: s.at})
	return nil
}

// run reads letters that stand together: a unit behind a number, or letters and
// functions that touch ("mgsinθ").
func (s *scanner) run() error {
	behind := s.last().kind
	// A unit first: behind a number, m is metres as a rule, and decideUnits looks at it once more.
	if behind == tokNumber || behind == tokClose {
		if n, symbol := s.here().unit(); n > 0 {
			s.unitToken(n, symbol)
			return nil
		}
	}
	if t, end, ok := s.letters.heard(s.runes, s.at, s.last()); ok {
		s.say(t, end)
		return nil
	}
	end := s.runEnd()
	pieces := s.letters.split(normal(s.runes[s.at:end]))
	for _, p := range pieces {
		p.pos += s.at
		p.end += s.at
		s.tokens = append(s.tokens, s.apart(p)...)
	}
	s.at = end
	return nil
}

// apart takes "ACOS", as a spreadsheet writes the inverse, for a letter A times a cosine in one of its
// readings, where the problem has such a letter.
func (s *scanner) apart(t token) []token {
	_, isLetter := s.letters.typed["A"]
	if text := string(s.runes[t.pos:t.end]); t.kind != tokFunction || !isLetter || text != "ASIN" && text != "ACOS" && text != "ATAN" {
		return []token{t}
	}
	s.met |= chooseLetter
	if s.take&chooseLetter == 0 {
		return []token{t}
	}
	letter := token{kind: tokName, text: "A", pos: t.pos, end: t.pos + 1}
	t.text, t.pos = t.text[1:], t.pos+1
	return []token{letter, t}
}

// runEnd finds where letters, digits and subscripts that touch come to an end.
// A dot belongs inside a body's name ("A.T1x") or a number ("cos35.5").
func (s *scanner) runEnd() int {
	i := s.at
	for i < len(s.runes) {
		r, next := s.runes[i], at(s.runes, i+1)
		switch {
		case isRun(r) || isDigit(r):
		case r == '.' && (isRun(next) || isDigit(next)):
		case r == ',' && isDigit(next) && i > s.at && isDigit(s.runes[i-1]): // cos55,3
		case r == '{' && s.runes[i-1] == '_':
			if j := slices.Index(s.runes[i:], '}'); j > 0 && j < 8 {
				i += j
				break
			}
			return i
		// A comma before x or y belongs to an index, T1,x, unless it parts two letters of a list.
		case r == ',' && (next == 'x' || next == 'y') && !isRun(at(s.runes, i+2)) && !isDigit(at(s.runes, i+2)) && i > s.at: // T1,x
			if !s.letters.knows(normal(s.runes[s.at:i]).text + string(next)) {
				return i
			}
		default:
			return i
		}
		i++
	}
	return i
}

func (s *scanner) unitToken(length int, symbol string) {
	spelling := string(s.runes[s.at : s.at+length])
	t := token{kind: tokUnit, text: symbol}
	if isOneUnit(spelling) {
		t.letter = s.here().ambiguous(spelling)
	}
	s.put(t, length)
}

// bracketed reads a unit in brackets of its own behind a number, as in 25.8 [N].
func (s *scanner) bracketed() bool {
	if s.last().kind != tokNumber {
		return false
	}
	inner := s.here()
	inner.at = skip(s.runes, s.at+1, " ")
	length, symbol := inner.unit()
	if length == 0 {
		return false
	}
	end := skip(s.runes, inner.at+length, " ")
	if r := at(s.runes, end); r != ')' && r != ']' {
		return false
	}
	t := token{kind: tokUnit, text: symbol}
	if spelling := string(s.runes[inner.at : inner.at+length]); isOneUnit(spelling) {
		t.letter = inner.ambiguous(spelling)
	}
	s.put(t, end+1-s.at)
	return true
}

// say puts the token that a phrase stands for.
func (s *scanner) say(t token, end int) {
	length := end - s.at
	switch {
	case t.kind == tokEnd, t.kind == tokEquals && s.last().kind == tokEquals:
		s.at = end
	case t.kind == tokPower:
		s.put(token{kind: tokPower, text: "^"}, 0)
		two, _ := quantity.ParseNumber("2")
		s.put(token{kind: tokNumber, num: two}, length)
	default:
		s.put(t, length)
	}
}
