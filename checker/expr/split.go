package expr

import (
	"slices"
	"strings"
	"unicode"

	"example.org/standstill/checker/quantity"
)

// functions is the table of functions with every spelling.
var functions = []struct{ spelling, name string }{
	{"sin", "sin"}, {"cos", "cos"}, {"tan", "tan"},
	{"asin", "asin"}, {"acos", "acos"}, {"atan", "atan"},
	{"arcsin", "asin"}, {"arccos", "acos"}, {"arctan", "atan"},
	{"sqrt", "sqrt"}, {"root", "sqrt"},
	{"cot", "cot"}, {"sec", "sec"}, {"csc", "csc"}, {"cosec", "csc"},
	{"sine", "sin"}, {"cosine", "cos"}, {"tangent", "tan"},
	{"abs", "abs"}, {"fabs", "abs"},
	{"sen", "sin"}, {"tg", "tan"}, {"ctg", "cot"}, {"cotg", "cot"},
	{"arcsen", "asin"}, {"arctg", "atan"}, {"invsin", "asin"}, {"invcos", "acos"}, {"invtan", "atan"},
	{"radians", "radians"}, {"deg2rad", "radians"}, {"degrees", "degrees"}, {"rad2deg", "degrees"},
}

// unitSpellings holds every spelling of a unit, longest first, as runes.
var unitSpellings = func() [][]rune {
	var all [][]rune
	for _, s := range quantity.Spellings() {
		if s != "none" {
			all = append(all, []rune(s))
		}
	}
	slices.SortStableFunc(all, func(a, b []rune) int { return len(b) - len(a) })
	return all
}()

// run reads letters that stand together: a unit behind a number, or letters and
// functions that touch ("mgsinθ").
func (s *scanner) run() error {
	behind := s.last().kind
	if behind == tokNumber || behind == tokClose {
		if n, symbol := s.unit(); n > 0 {
			s.unitToken(n, symbol)
			return nil
		}
	}
	if s.spokenAt() {
		return nil
	}
	end := s.runEnd()
	pieces := s.letters.split(normal(s.runes[s.at:end]))
	for _, p := range pieces {
		p.pos += s.at
		p.end += s.at
		s.tokens = append(s.tokens, p)
	}
	s.at = end
	return nil
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

// unit finds the longest unit that stands at this place as a word of its own, in
// any letter case where no letter of the problem is meant.
func (s *scanner) unit() (length int, symbol string) {
	length, symbol = s.tableUnit()
	if end, made, ok := s.madeUnit(s.at); ok && end-s.at > length {
		return end - s.at, made
	}
	return length, symbol
}

func (s *scanner) tableUnit() (length int, symbol string) {
	for _, fold := range []bool{false, true} {
		for _, spelling := range unitSpellings {
			if !s.spells(spelling, fold) {
				continue
			}
			text := string(spelling)
			if fold && s.ambiguous(text) != "" {
				return 0, ""
			}
			unit, _ := quantity.Find(text)
			return len(spelling), unit.Symbol
		}
	}
	return 0, ""
}

func (s *scanner) spells(spelling []rune, fold bool) bool {
	if s.at+len(spelling) > len(s.runes) {
		return false
	}
	for i, r := range spelling {
		have := s.runes[s.at+i]
		if have != r && !(fold && unicode.ToLower(have) == unicode.ToLower(r)) {
			return false
		}
	}
	return s.unitEnds(s.at + len(spelling))
}

// ambiguous returns the problem's letter that a unit's spelling could be as well.
func (s *scanner) ambiguous(spelling string) string {
	head, _, _ := strings.Cut(spelling, "/")
	name, exact, ok := s.letters.resolve(head)
	if ok && exact {
		return name
	}
	return ""
}

func (s *scanner) unitToken(length int, symbol string) {
	spelling := string(s.runes[s.at : s.at+length])
	t := token{kind: tokUnit, text: symbol}
	if isOneUnit(spelling) {
		t.letter = s.ambiguous(spelling)
	}
	s.put(t, length)
}

// Costs of a way to split a run: known pieces are cheap, a digit behind a letter
// that has no such subscript is dearer than an unknown letter with a subscript.
const (
	costKnown   = 10
	costFolded  = 11
	costTimes   = 15
	costCapital = 25
	costUnknown = 1000
	costDigit   = 2000
)

// split cuts a run into the problem's letters, functions and numbers, so that as
// little as possible is left unknown and the longest letters win.
func (l *Letters) split(run normalised) []token {
	n := len(run.text)
	type step struct {
		cost int
		from int
		piece
	}
	best := make([]step, n+1)
	var found []piece
	for i := 1; i <= n; i++ {
		best[i].cost = 1 << 30
	}
	for i := range n {
		if best[i].cost == 1<<30 {
			continue
		}
		found = l.pieces(found[:0], run.text, i, best[i].piece)
		for _, p := range found {
			j := i + p.length
			if c := best[i].cost + p.cost; c < best[j].cost {
				best[j] = step{cost: c, from: i, piece: p}
			}
		}
	}
	var tokens []token
	for j := n; j > 0; j = best[j].from {
		t := best[j].token
		t.pos, t.end = run.at[best[j].from], run.at[j-1]+1
		tokens = append(tokens, t)
	}
	slices.Reverse(tokens)
	return wholeWord(run, tokens)
}

// piece is one candidate of a split.
type piece struct {
	token
	length int
	cost   int
}

// pieces appends the candidates that begin at a place.
func (l *Letters) pieces(found []piece, text string, i int, before piece) []piece {
	rest := text[i:]
	for j := 1; j <= min(len(rest), 14); j++ {
		if name, exact, ok := l.resolve(rest[:j]); ok {
			cost := costFolded
			if exact {
				cost = costKnown
			}
			found = append(found, piece{token{kind: tokName, text: name}, j, cost})
		}
	}
	for _, f := range functions {
		if len(f.spelling) <= len(rest) && strings.EqualFold(rest[:len(f.spelling)], f.spelling) {
			cost := costKnown
			if _, letter := l.typed[rest[:1]]; letter && len(rest) > 1 && strings.HasPrefix(rest, "A") && !isCapital(rest[:2]) {
				cost = costCapital // "Acosδ" is A times a cosine where there is a letter A
			}
			if f.spelling == "tg" && l.areOwn(rest[:2]) {
				cost = costCapital
			}
			found = append(found, piece{token{kind: tokFunction, text: f.name}, len(f.spelling), cost})
		}
	}
	if strings.HasPrefix(rest, "π") || len(rest) > 1 && strings.EqualFold(rest[:2], "pi") {
		num := quantity.Number{Text: "π", Value: 180 * quantity.Degree, Figures: 17, Certain: 17}
		found = append(found, piece{token{kind: tokNumber, num: num}, 2, costKnown + 1})
	}
	if rest[0] == '.' || rest[0] == 'x' || rest[0] == 'X' {
		if _, _, taken := l.resolve(rest[:1]); !taken {
			found = append(found, piece{token{kind: tokTimes, text: "·"}, 1, costTimes})
		}
	}
	if p, ok := numeral(rest, before); ok {
		found = append(found, p)
	}
	return strangers(found, rest)
}

// isCapital reports whether all letters are capitals, as spreadsheets write functions.
func isCapital(text string) bool { return strings.ToUpper(text) == text }

// areOwn reports whether each of the characters is a letter of the problem as it stands.
func (l *Letters) areOwn(text string) bool {
	for _, r := range text {
		if _, own := l.typed[string(r)]; !own {
			return false
		}
	}
	return true
}

// numeral reads digits inside a run ("cos35T1"). Behind a letter they would be a
// subscript that the problem does not have.
func numeral(rest string, before piece) (piece, bool) {
	n := len(rest) - len(strings.TrimLeft(rest, "0123456789"))
	if n == 0 {
		return piece{}, false
	}
	if tail := rest[n:]; len(tail) > 1 && tail[0] == '.' && isDigit(rune(tail[1])) {
		n += 1 + len(tail[1:]) - len(strings.TrimLeft(tail[1:], "0123456789"))
	}
	num, err := quantity.ParseNumber(rest[:n])
	if err != nil {
		return piece{}, false
	}
	cost := costKnown
	if before.kind == tokName {
		cost = costDigit
	}
	return piece{token{kind: tokNumber, num: num}, n, cost}, true
}

// strangers offers an unknown letter, with its digits and its component's axis.
func strangers(found []piece, rest string) []piece {
	offer := func(n int) {
		digits := len(rest[n:]) - len(strings.TrimLeft(rest[n:], "0123456789"))
		for _, end := range []int{n, n + digits} {
			found = append(found, piece{token{kind: tokName, text: rest[:end], unknown: true}, end, costUnknown})
		}
	}
	for _, g := range greek {
		if strings.HasPrefix(rest, g.name) {
			offer(len(g.name))
		}
	}
	_, size := utf8Rune(rest)
	offer(size)
	return found
}

func utf8Rune(s string) (rune, int) {
	for i, r := range s {
		if i == 0 {
			return r, len(string(r))
		}
	}
	return 0, 1
}

// wholeWord gives back a run as one word where it is no mathematics: a word of
// some language has letters that are unknown and no function.
func wholeWord(run normalised, tokens []token) []token {
	unknown := 0
	for _, t := range tokens {
		if t.kind == tokFunction || t.kind == tokNumber {
			return tokens
		}
		if t.unknown {
			unknown++
		}
	}
	if unknown == 0 || len(tokens) < 3 {
		return tokens
	}
	return []token{{kind: tokName, text: run.text, unknown: true, pos: run.at[0], end: run.at[len(run.at)-1] + 1}}
}
