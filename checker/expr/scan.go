package expr

import (
	"strings"
	"unicode"

	"example.org/standstill/checker/pattern"
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
	tokRatio
)

// token is a piece of the text. letter is set on a unit that could be one of the
// problem's letters too (N, m, g, s); unknown on a name that is not one, said on one that
// was typed in words.
type token struct {
	kind     tokenKind
	text     string
	num      quantity.Number
	letter   string
	unknown  bool
	said     bool
	pos, end int
}

// choice holds the ways in which an ambiguous text may be taken.
type choice uint8

const (
	choosePaper     choice = 1 << iota // slash: everything that touches is below it
	chooseThousands                    // comma: digit groups
	chooseName                         // "Fx =" with a force F: the name of the sum, not the component
	chooseFactor                       // "2. T": the less likely of a label and a factor
	chooseArgument                     // "atan a/b": the less likely of the whole quotient and its first factor
	chooseEquals                       // "P: R =": an equals sign, not a ratio
	allChoices      = chooseEquals<<1 - 1
)

// scanner turns runes into tokens. take and flips say how to read what can be read in
// two ways: flips has a bit for each unit that could be a letter. met collects the choices
// that the text left open; letterly counts the units that became letters, and named
// says that "Fx =" was taken for the name of a sum.
type scanner struct {
	letters  *Letters
	runes    []rune
	at       int
	tokens   []token
	take     choice
	flips    uint8
	met      choice
	letterly int
	named    bool
}

// escapes are the sequences that terminals act on; none belongs in a formula.
var escapes = pattern.Of(`\x1b(\[[0-?]*[ -/]*[@-~]|\][^\x07\x1b]*(\x07|\x1b\\)?|[@-Z\\^_])`)

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
	}, escapes().ReplaceAllString(text, ""))
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
		case r == ' ' || r == '.' && s.ends():
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
	if n, sign := s.relation(); n > 0 {
		if s.last().kind == tokEquals && sign == "=" {
			s.at += n // "= =" is one equals sign
			return nil
		}
		s.put(token{kind: tokEquals, text: sign}, n)
		return nil
	}
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

// number reads "9.8", ".5", "5.", "7,6", "1,200", "1 275", "1e3", "1.2×10^3". Points that
// say that digits go on are left out.
func (s *scanner) number() error {
	start := s.at
	var digits strings.Builder
	s.digits(&digits)
	thousands := s.groups(&digits) || s.spacedGroups(&digits)
	if r := s.peek(0); !s.goesOn() && (r == '.' || r == ',' && !thousands && isDigit(s.peek(1))) {
		digits.WriteByte('.')
		s.at++
		s.digits(&digits)
	}
	if s.goesOn() {
		s.at = skip(s.runes, s.at, ".…")
	}
	s.power(&digits)
	return s.finish(strings.TrimSuffix(digits.String(), "."), start)
}

// goesOn reports whether the points stand here that say that digits go on.
func (s *scanner) goesOn() bool {
	return s.peek(0) == '…' || s.peek(0) == '.' && s.peek(1) == '.'
}

// spacedGroups reads digit groups with a space between them, as in 1 275: one to three
// figures, then threes. Behind a function they are two numbers.
func (s *scanner) spacedGroups(b *strings.Builder) bool {
	n := b.Len()
	if n == 0 || n > 3 || b.String()[0] == '0' || s.last().kind == tokFunction {
		return false
	}
	found := false
	for s.peek(0) == ' ' && isDigit(s.peek(1)) && isDigit(s.peek(2)) && isDigit(s.peek(3)) && !isDigit(s.peek(4)) {
		s.at++
		s.digits(b)
		found = true
	}
	return found
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
	if i >= len(rest) || !strings.ContainsRune("×*·xX⋅∙", rest[i]) {
		return
	}
	i = skip(rest, i+1, " ")
	if i+2 >= len(rest) || rest[i] != '1' || rest[i+1] != '0' {
		return
	}
	i = skip(rest, i+2, " ")
	switch {
	case at(rest, i) == '^':
		s.raised(b, rest, i+1)
	case at(rest, i) == '*' && at(rest, i+1) == '*':
		s.raised(b, rest, i+2)
	case superscript(at(rest, i)) != 0:
		b.WriteString("×10^")
		for s.at += i; superscript(s.peek(0)) != 0; s.at++ {
			b.WriteRune(superscript(s.peek(0)))
		}
	}
}

// raised reads the exponent of a power of ten from the i-th rune of the rest: 3, -3, {3}.
func (s *scanner) raised(b *strings.Builder, rest []rune, i int) {
	i = skip(rest, i, " ")
	closing := map[rune]rune{'{': '}', '(': ')'}[at(rest, i)]
	if closing != 0 {
		i++
	}
	end := i
	if r := at(rest, end); r == '-' || r == '−' || r == '–' || r == '+' {
		end++
	}
	digits := end
	for isDigit(at(rest, end)) {
		end++
	}
	if end == digits || closing != 0 && at(rest, end) != closing {
		return
	}
	s.at += i
	s.signed(b, "×10^")
	if closing != 0 {
		s.at++
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
