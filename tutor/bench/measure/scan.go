package measure

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/quantity"
)

// longestValue is how many characters of a measured value are read.
const longestValue = 500

// tokenKind is what a piece of a measured value is.
type tokenKind uint8

const (
	tokenEnd tokenKind = iota
	tokenNumber
	tokenUnit
	tokenPercent
	tokenSemicolon
	tokenWord // plusMinus and the words of words()
)

// token is one piece. Of a number, minus and number are set, and last is the
// uncertainty of its last figures, as in 0.500(5), "" for none; unit is set for a
// unit, and for a number that holds its own, as in 20°30'.
type token struct {
	kind   tokenKind
	text   string
	minus  bool
	number quantity.Number
	last   string
	unit   quantity.Unit
}

// plusMinus is the word that every spelling of ± becomes.
const plusMinus = "±"

// words is the table of what may stand between numbers, with other spellings.
func words() []struct{ word, spellings string } {
	return []struct{ word, spellings string }{
		{plusMinus, "± +- +/- +−"},
		{"U", "U"}, {"u", "u"}, {"k", "k"}, {"div", "division div. div"}, {"zero", "zero"}, {"max", "max"}, {"to", "to"}, {"exact", "exactly exact"},
	}
}

var numeral = pattern.Of(`^([-−–]?)\s*((?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][-+]?\d+|\s*[×x*·]\s*10\^-?\d+)?)(?:\((\d+)\))?`)

// minutes are degrees with minutes of arc, or these alone: 20°30', 30'.
var minutes = pattern.Of(`^([-−–]?)(?:(\d+)\s*°\s*)?(\d{1,2}(?:[.,]\d+)?)\s*['′’]`)

// minutesToken is a number of degrees; its last place is a minute, or what was typed
// of one.
func minutesToken(m []string) token {
	whole, _ := strconv.ParseFloat(m[2], 64) // "" is none, which is 0
	n, _ := quantity.ParseNumber(strings.Replace(m[3], ",", ".", 1))
	half := n.Half / 60
	// A sixtieth has no end in decimals; a millionth of a degree is far below a minute.
	n = quantity.Exact(math.Round((whole+n.Value/60)*1e6) / 1e6)
	n.Half, n.Wide = half, half
	deg, _ := quantity.Find("deg")
	return token{kind: tokenNumber, text: m[0], minus: m[1] != "", number: n, unit: deg}
}

// mostNumber is the largest number that is read. No apparatus gives a larger one, and the squares
// of uncertainties have to stay finite.
const mostNumber = 1e12

var powerOfTen = pattern.Of(`\s*[×x*·]\s*10\^`)

// scan takes a text apart. why is the sentence for what cannot be read.
func scan(text string) (tokens []token, why string) {
	text = strings.TrimSpace(expr.Clean(text))
	if utf8.RuneCountInString(text) > longestValue {
		return nil, saidTooLong
	}
	text = unbracketed(text)
	open := 0 // brackets round a quality, as in 14.2 N (± 0.1 N)
	for text != "" {
		switch {
		case text[0] == '(' && StartsWithQuality(text[1:]):
			open++
			text = strings.TrimLeft(text[1:], " ")
		case text[0] == ')' && open > 0:
			open--
			text = strings.TrimLeft(text[1:], " ")
			continue
		}
		// The comma of “14.2 N, ± 0.1 N” only separates.
		if rest, found := strings.CutPrefix(text, ","); found && StartsWithQuality(rest) {
			text = strings.TrimLeft(rest, " ")
		}
		t, rest, why := first(text)
		if why != "" {
			return nil, why
		}
		tokens = append(tokens, t)
		text = strings.TrimLeft(rest, " ")
	}
	return tokens, ""
}

// StartsWithQuality reports whether one of the words, such as ± or div, comes next: a comma before it
// separates, and is no decimal comma.
func StartsWithQuality(text string) bool {
	_, _, ok := wordAt(strings.TrimLeft(text, " "))
	return ok
}

// unbracketed takes off the brackets of "(0.500 ± 0.005) kg".
func unbracketed(text string) string {
	if inside, found := strings.CutPrefix(text, "("); found {
		if i := strings.LastIndexByte(inside, ')'); i >= 0 && strings.Count(inside, "(") < strings.Count(inside, ")") {
			return strings.TrimSpace(inside[:i]) + " " + strings.TrimSpace(inside[i+1:])
		}
	}
	return text
}

// first reads the token at the beginning.
func first(text string) (t token, rest, why string) {
	if word, rest, ok := wordAt(text); ok {
		return token{kind: tokenWord, text: word}, rest, ""
	}
	// Before the plain numeral, which would read the 20 of 20°30' alone.
	if m := minutes().FindStringSubmatch(text); m != nil {
		return minutesToken(m), text[len(m[0]):], ""
	}
	if m := numeral().FindStringSubmatch(text); m != nil {
		return numberToken(m, text[len(m[0]):])
	}
	switch text[0] {
	case ';':
		return token{kind: tokenSemicolon, text: ";"}, text[1:], ""
	case '%':
		return token{kind: tokenPercent, text: "%"}, text[1:], ""
	case ',':
		return t, "", saidCommaBetween
	}
	return unitToken(text)
}

// wordAt finds one of the words at the beginning.
func wordAt(text string) (word, rest string, ok bool) {
	for _, w := range words() {
		for _, s := range strings.Fields(w.spellings) {
			if rest, ok := cutWord(text, s); ok {
				return w.word, rest, true
			}
		}
	}
	return "", "", false
}

// cutWord takes a word off. Letter case does not matter but for the words of one
// letter: U is not u. A word of letters ends where no letter follows; behind k there
// may be an equals sign.
func cutWord(text, word string) (rest string, ok bool) {
	// A capital U is an expanded uncertainty and a small u a standard one: half as much.
	if len(text) < len(word) || !strings.EqualFold(text[:len(word)], word) || len(word) == 1 && text[:1] != word {
		return "", false
	}
	rest = text[len(word):]
	if after, found := strings.CutPrefix(strings.TrimLeft(rest, " "), "="); found && word == "k" {
		return after, true
	}
	r, _ := utf8.DecodeRuneInString(rest)
	switch {
	case strings.HasSuffix(word, "."):
		return rest, !unicode.IsDigit(r) // div .5 is a number behind a word
	case word == plusMinus, !unicode.IsLetter(rune(word[0])):
		return rest, true
	}
	return rest, !unicode.IsLetter(r)
}

func numberToken(m []string, rest string) (t token, _, why string) {
	typed := powerOfTen().ReplaceAllString(m[2], "×10^")
	// “34.5, 35” could be two readings, which are separated by semicolons.
	if strings.HasSuffix(typed, ",") && (rest == "" || rest[0] == ' ') && !StartsWithQuality(rest) {
		return t, "", saidCommaBetween
	}
	switch {
	case strings.HasPrefix(rest, ".") || strings.HasPrefix(rest, ",") && strings.Contains(typed, ","):
		return t, "", saidTwoPoints(m[0] + rest[:1])
	case strings.HasPrefix(rest, ",") && !StartsWithQuality(rest[1:]):
		return t, "", saidCommaBetween
	}
	typed = strings.TrimSuffix(strings.Replace(typed, ",", ".", 1), ".")
	n, err := quantity.ParseNumber(typed)
	if err != nil || n.Value > mostNumber {
		return t, "", saidOutOfReach(m[0])
	}
	return token{kind: tokenNumber, text: m[0], minus: m[1] != "", number: n, last: m[3]}, rest, ""
}

// unitToken reads the longest unit that no letter follows.
func unitToken(text string) (t token, rest, why string) {
	spellings := quantity.Spellings()
	// “mm” before “m”, “N/m” before “N”.
	slices.SortFunc(spellings, func(a, b string) int { return cmp.Compare(len(b), len(a)) })
	for _, s := range spellings {
		rest, found := strings.CutPrefix(text, s)
		if r, _ := utf8.DecodeRuneInString(rest); !found || unicode.IsLetter(r) || r == '/' || r == '^' {
			continue
		}
		unit, _ := quantity.Find(s)
		return token{kind: tokenUnit, text: s, unit: unit}, rest, ""
	}
	end := strings.IndexAny(text, " ;")
	if end < 0 {
		end = len(text)
	}
	return t, "", saidUnknownWord(Shorten(text[:max(end, 1)]))
}

// Shorten keeps a message from growing with what was typed.
func Shorten(text string) string {
	const longest = 30
	if runes := []rune(text); len(runes) > longest {
		return string(runes[:longest]) + "…"
	}
	return text
}
