package expr

import (
	"strings"

	"example.org/standstill/checker/quantity"
)

// spoken is the table of words that may stand in a line in the place of signs and
// numbers. What stands for tokEnd says nothing.
var spoken = []struct {
	phrases string
	kind    tokenKind
	text    string
}{
	{"is, are, equals, equal, is equal to, equal to, must be, must equal, is the same as, becomes", tokEquals, "="},
	{"plus, added to", tokPlus, "+"},
	{"minus, negative, less", tokMinus, "-"},
	{"times, multiplied by", tokTimes, "·"},
	{"over, divided by", tokSlash, "/"},
	{"zero, nothing, nil", tokNumber, "0"},
	{"one", tokNumber, "1"},
	{"two, twice, double", tokNumber, "2"},
	{"three", tokNumber, "3"},
	{"half, half of", tokNumber, "0.5"},
	{"squared", tokPower, "²"},
	{"square root of, square root", tokFunction, "sqrt"},
	{"arc sin, arc sine, inv sin, inverse sin, inverse sine, sin inverse", tokFunction, "asin"},
	{"arc cos, arc cosine, inv cos, inverse cos, inverse cosine, cos inverse", tokFunction, "acos"},
	{"arc tan, arc tangent, inv tan, inverse tan, inverse tangent, tan inverse", tokFunction, "atan"},
	{"of, the, sub, about, approximately, approx, roughly, exactly", tokEnd, ""},
}

// spokenWords is the same by phrase.
var spokenWords = func() map[string]token {
	table := map[string]token{}
	for _, row := range spoken {
		for phrase := range strings.SplitSeq(row.phrases, ", ") {
			t := token{kind: row.kind, text: row.text}
			if row.kind == tokNumber {
				t.num, _ = quantity.ParseNumber(row.text)
			}
			table[phrase] = t
		}
	}
	return table
}()

// mostWords is how many words a phrase has at most.
const mostWords = 5

// heard finds the longest phrase at a place behind a token that names one of the problem's
// letters, or stands for a sign, and where it ends.
func (l *Letters) heard(runes []rune, from int, before token) (t token, end int, ok bool) {
	ends, keys := phrasesAhead(runes, from)
	for i := len(keys) - 1; i >= 0; i-- {
		if i == 0 && l.isOwn(string(runes[from:ends[0]]), keys[0]) {
			return token{}, 0, false
		}
		if name, ok := l.phrases[keys[i]]; ok {
			return token{kind: tokName, text: l.inPlace(name, keys[i], before), said: true}, ends[i], true
		}
		if t, ok := spokenWords[keys[i]]; ok {
			return t, ends[i], true
		}
	}
	return token{}, 0, false
}

// phrasesAhead lists the phrases of one, two … words that begin at a place, in lower case,
// and where each ends.
func phrasesAhead(runes []rune, from int) (ends []int, keys []string) {
	i, key := from, ""
	for len(keys) < mostWords {
		start := i
		for i < len(runes) && (isRun(runes[i]) || isDigit(runes[i])) {
			i++
		}
		if i == start {
			break
		}
		key += strings.ToLower(normal(runes[start:i]).text)
		ends, keys = append(ends, i), append(keys, key)
		if r := at(runes, i); r == '-' {
			i++ // x-component
		} else if r != ' ' {
			break
		}
		i = skip(runes, i, " ")
		key += " "
	}
	return ends, keys
}

// isOwn reports whether a word is one of the problem's letters, or two of them as in mg;
// key is the word in lower case.
func (l *Letters) isOwn(typed, key string) bool {
	if _, exact, _ := l.resolve(typed); exact {
		return true
	}
	if len(key) != 2 {
		return false
	}
	for _, r := range typed {
		if _, exact, _ := l.resolve(string(r)); !exact {
			return false
		}
	}
	return true
}

// inPlace returns the letter that a phrase means behind a token: gravity beside a mass is
// g, alone it is the weight.
func (l *Letters) inPlace(name, phrase string, before token) string {
	if phrase == "gravity" && l.Has("g") && (before.kind == tokTimes || before.kind == tokUnit || l.Kind(before.text) == Mass) {
		return "g"
	}
	return name
}
