package expr

import (
	"slices"
	"strings"

	"example.org/standstill/checker/quantity"
)

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
		// A place that no piece ends at is never reached.
		best[i].cost = 1 << 30
	}
	for i := range n {
		if best[i].cost == 1<<30 {
			continue
		}
		found = l.pieces(found[:0], run.text, i, best[i].piece)
		for _, p := range found {
			j := i + p.length
			// Strictly less, so that among equal splits the candidate that was offered first stays:
			// the problem's letters before functions.
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
			// t g is a product where the problem has both letters.
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
	// Two letters side by side may be two letters that are missing in the problem.
	if unknown == 0 || len(tokens) < 3 {
		return tokens
	}
	return []token{{kind: tokName, text: run.text, unknown: true, pos: run.at[0], end: run.at[len(run.at)-1] + 1}}
}
