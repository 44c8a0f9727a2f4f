package expr

import (
	"regexp"
	"strings"
	"unicode"

	"example.org/standstill/checker/quantity"
)

const (
	maxLength = 500 // characters in one text
	maxDepth  = 64  // brackets, powers and functions inside one another
)

type tokenKind uint8

const (
	tokEnd tokenKind = iota
	tokNumber
	tokName
	tokFunction
	tokUnit
	tokPlus
	tokMinus
	tokTimes
	tokSlash
	tokPower
	tokOpen
	tokClose
	tokBar
	tokEquals
)

// token is a piece of the text. letter is set on a unit that could be one of the
// problem's letters too (N, m, g, s); unknown on a name that is not one.
type token struct {
	kind     tokenKind
	text     string
	num      quantity.Number
	letter   string
	unknown  bool
	pos, end int
}

// choice holds the ways in which an ambiguous text may be taken.
type choice uint8

const (
	choosePaper     choice = 1 << iota // slash: everything that touches is below it
	chooseThousands                    // comma: digit groups
	chooseLetter                       // N behind a number: the less likely of newton and normal force
	chooseName                         // "Fx =" with a force F: the name of the sum, not the component
	allChoices      = chooseName<<1 - 1
)

// scanner turns runes into tokens. met collects the choices that the text left
// open.
type scanner struct {
	letters *Letters
	runes   []rune
	at      int
	tokens  []token
	take    choice
	met     choice
}

// escapes are the sequences that terminals act on; none belongs in a formula.
var escapes = regexp.MustCompile(`\x1b(\[[0-?]*[ -/]*[@-~]|\][^\x07\x1b]*(\x07|\x1b\\)?|[@-Z\\^_])`)

// Clean drops escape sequences, control characters and direction marks, which no
// formula needs, and turns every kind of space into a plain one.
func Clean(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || r == '\n' || r == '\r':
			return ' '
		case unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Co, r) || r == unicode.ReplacementChar:
			return -1
		case unicode.IsSpace(r):
			return ' '
		}
		return r
	}, escapes.ReplaceAllString(text, ""))
}

// marks is the table of single characters that mean the same.
var marks = []struct {
	shapes string
	kind   tokenKind
}{
	{"+＋", tokPlus},
	{"-−–—‐‑⁻－", tokMinus},
	{"*·×⋅∙•∗✕", tokTimes},
	{"/÷∕⁄", tokSlash},
	{"^", tokPower},
	{"([{", tokOpen},
	{")]}", tokClose},
	{"|", tokBar},
	{"=≈≅≃⇒", tokEquals},
}

func (s *scanner) scan() error {
	for s.at < len(s.runes) {
		r := s.runes[s.at]
		var err error
		switch {
		case r == ' ' || r == '.' && s.ends():
			s.at++
		case isDigit(r) || r == '.' && isDigit(s.peek(1)):
			err = s.number()
		case r == '°' || r == 'º':
			s.put(token{kind: tokUnit, text: "deg"}, 1)
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

// ends reports whether only full stops and spaces follow.
func (s *scanner) ends() bool { return strings.Trim(string(s.runes[s.at:]), " .") == "" }

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
	if r == '=' && (s.peek(1) == '=' || s.peek(1) == '>') {
		s.put(token{kind: tokEquals, text: "="}, 2)
		return nil
	}
	if r == ':' && len(s.tokens) == 1 && s.tokens[0].kind == tokName {
		s.put(token{kind: tokEquals, text: ":"}, 1) // "T1: 20.2 N"
		return nil
	}
	if r == '½' {
		s.put(token{kind: tokNumber, num: quantity.Number{Text: "0.5", Value: 0.5, Figures: 1, Certain: 1}}, 1)
		return nil
	}
	for _, m := range marks {
		if strings.ContainsRune(m.shapes, r) {
			if m.kind == tokEquals && s.last().kind == tokEquals {
				s.at++ // "= =" is one equals sign
				return nil
			}
			s.put(token{kind: m.kind, text: string(r)}, 1)
			return nil
		}
	}
	return unreadable(s.at, s.at+1, saidStrange(r))
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

func isRun(r rune) bool {
	return unicode.IsLetter(r) || r == '_' || r >= '₀' && r <= '₉' || strings.ContainsRune(smallLetters, r)
}

const superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹"

func superscript(r rune) rune {
	for i, shape := range []rune(superscripts) {
		if r == shape {
			return rune('0' + i)
		}
	}
	if r == '⁻' {
		return '-'
	}
	return 0
}

// exponent reads raised digits as a power.
func (s *scanner) exponent() error {
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

// number reads "9.8", ".5", "5.", "7,6", "1,200", "1e3", "1.2×10^3".
func (s *scanner) number() error {
	start := s.at
	var digits strings.Builder
	s.digits(&digits)
	thousands := s.groups(&digits)
	if r := s.peek(0); r == '.' || r == ',' && !thousands && isDigit(s.peek(1)) {
		digits.WriteByte('.')
		s.at++
		s.digits(&digits)
	}
	s.power(&digits)
	return s.finish(strings.TrimSuffix(digits.String(), "."), start)
}

func (s *scanner) digits(b *strings.Builder) {
	for isDigit(s.peek(0)) {
		b.WriteRune(s.peek(0))
		s.at++
	}
}

// groups reads the digit groups of "1,200" and "1,200,000". One comma before
// three figures has two readings; two commas, or a point after one, have one.
func (s *scanner) groups(b *strings.Builder) bool {
	n := b.Len()
	if n == 0 || n > 3 || !s.group(0) || b.String()[0] == '0' {
		return false
	}
	certain := s.group(4) || s.peek(4) == '.' && isDigit(s.peek(5))
	if !certain {
		s.met |= chooseThousands
		if s.take&chooseThousands == 0 {
			return false
		}
	}
	for s.group(0) {
		s.at++
		s.digits(b)
	}
	return true
}

// group reports whether a comma and exactly three digits stand ahead.
func (s *scanner) group(ahead int) bool {
	return s.peek(ahead) == ',' && isDigit(s.peek(ahead+1)) && isDigit(s.peek(ahead+2)) &&
		isDigit(s.peek(ahead+3)) && !isDigit(s.peek(ahead+4))
}

// power reads the power of ten behind a number: "e3", "×10^3", "x 10³".
func (s *scanner) power(b *strings.Builder) {
	if r := s.peek(0); r == 'e' || r == 'E' {
		sign := 0
		if s.peek(1) == '-' || s.peek(1) == '+' || s.peek(1) == '−' {
			sign = 1
		}
		if isDigit(s.peek(1 + sign)) {
			s.at++
			s.signed(b, "e")
		}
		return
	}
	rest := s.runes[s.at:]
	i := skip(rest, 0, " ")
	if i >= len(rest) || !strings.ContainsRune("×*·xX⋅", rest[i]) {
		return
	}
	i = skip(rest, skip(rest, i+1, " "), "")
	if i+2 >= len(rest) || rest[i] != '1' || rest[i+1] != '0' {
		return
	}
	i = skip(rest, i+2, " ")
	switch {
	case i < len(rest) && rest[i] == '^':
		i = skip(rest, i+1, " ")
		if !isDigit(at(rest, i)) && !isDigit(at(rest, i+1)) {
			return
		}
		s.at += i
		s.signed(b, "×10^")
	case superscript(at(rest, i)) != 0:
		b.WriteString("×10^")
		for s.at += i; superscript(s.peek(0)) != 0; s.at++ {
			b.WriteRune(superscript(s.peek(0)))
		}
	}
}

func (s *scanner) signed(b *strings.Builder, mark string) {
	b.WriteString(mark)
	switch s.peek(0) {
	case '-', '−', '–':
		b.WriteByte('-')
		s.at++
	case '+':
		s.at++
	}
	s.digits(b)
}

func skip(runes []rune, i int, set string) int {
	for i < len(runes) && set != "" && strings.ContainsRune(set, runes[i]) {
		i++
	}
	return i
}

func at(runes []rune, i int) rune {
	if i < len(runes) {
		return runes[i]
	}
	return 0
}
