package expr

import (
	"slices"
	"strings"
	"unicode"

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

// spokenAt reads words at the scanner's place: the longest phrase that names one of the
// problem's letters, or stands for a sign. It reports whether there was one.
func (s *scanner) spokenAt() bool {
	ends, keys := s.phrasesAhead()
	for i := len(keys) - 1; i >= 0; i-- {
		if i == 0 && s.isOwn(keys[0], ends[0]) {
			return false
		}
		if name, ok := s.letters.phrases[keys[i]]; ok {
			s.put(token{kind: tokName, text: s.letters.inPlace(name, keys[i], s.last()), said: true}, ends[i]-s.at)
			return true
		}
		if t, ok := spokenWords[keys[i]]; ok {
			s.say(t, ends[i])
			return true
		}
	}
	return false
}

// phrasesAhead lists the phrases of one, two … words that begin here, in lower case,
// and where each ends.
func (s *scanner) phrasesAhead() (ends []int, keys []string) {
	i, key := s.at, ""
	for len(keys) < mostWords {
		start := i
		for i < len(s.runes) && (isRun(s.runes[i]) || isDigit(s.runes[i])) {
			i++
		}
		if i == start {
			break
		}
		key += strings.ToLower(normal(s.runes[start:i]).text)
		ends, keys = append(ends, i), append(keys, key)
		if r := at(s.runes, i); r == '-' {
			i++ // x-component
		} else if r != ' ' {
			break
		}
		i = skip(s.runes, i, " ")
		key += " "
	}
	return ends, keys
}

// isOwn reports whether a word is one of the problem's letters, or two of them as in mg.
func (s *scanner) isOwn(key string, end int) bool {
	typed := string(s.runes[s.at:end])
	if _, exact, _ := s.letters.resolve(typed); exact {
		return true
	}
	if len(key) != 2 {
		return false
	}
	for _, r := range typed {
		if _, exact, _ := s.letters.resolve(string(r)); !exact {
			return false
		}
	}
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

// Phrase makes a name in words known for a letter: "normal force", "tension 1". Letter
// case does not matter; a phrase that is taken stays with its first owner.
func (l *Letters) Phrase(words, name string) {
	if l.phrases == nil {
		l.phrases = map[string]string{}
	}
	key := strings.ToLower(normal([]rune(strings.Join(strings.Fields(words), " "))).text)
	if _, taken := l.phrases[key]; !taken {
		l.phrases[key] = name
	}
}

// inPlace returns the letter that a phrase means behind a token: gravity beside a mass is
// g, alone it is the weight.
func (l *Letters) inPlace(name, phrase string, before token) string {
	if phrase == "gravity" && l.Has("g") && (before.kind == tokTimes || before.kind == tokUnit || l.Kind(before.text) == Mass) {
		return "g"
	}
	return name
}

// Body makes the name of a body known, which may stand in front of a line.
func (l *Letters) Body(name string) { l.bodies = append(l.bodies, name) }

// gather puts together what is one letter typed in pieces: T 1, T(1), T[1], T1 x. It
// does so only where the first piece alone is no letter of the problem.
func (s *scanner) gather() {
	for i := 0; i+1 < len(s.tokens); i++ {
		t := s.tokens[i]
		if t.kind != tokName {
			continue
		}
		if n, length := s.index(i + 1); t.unknown && length > 0 {
			s.join(i, length, t.text+n)
		}
		if again := s.tokens[i+1]; t.said && again.kind == tokName && again.text == t.text {
			s.tokens = slices.Delete(s.tokens, i, i+1) // "the mass m"
			continue
		}
		if axis, length := s.axisBehind(); i == 0 && !s.tokens[0].unknown && length > 0 {
			s.join(0, length, s.tokens[0].text+axis)
		}
	}
}

// axisBehind reads the axis of a component that stands apart from its letter in front of an
// equals sign, T1 x = or T1(x) =, and says how many tokens it takes.
func (s *scanner) axisBehind() (axis string, length int) {
	kinds := func(want ...tokenKind) bool {
		for i, kind := range want {
			if i+1 >= len(s.tokens) || s.tokens[i+1].kind != kind {
				return false
			}
		}
		return true
	}
	switch {
	case kinds(tokName, tokEquals) && s.tokens[1].unknown:
		return s.tokens[1].text, 1
	case kinds(tokOpen, tokName, tokClose, tokEquals) && s.tokens[2].unknown:
		return s.tokens[2].text, 3
	}
	return "", 0
}

// index reads a whole number, in brackets or bare, and says how many tokens it takes.
func (s *scanner) index(i int) (text string, length int) {
	if s.isIndex(i) {
		return s.tokens[i].num.Text, 1
	}
	if s.tokens[i].kind == tokOpen && s.isIndex(i+1) && s.tokens[i+2].kind == tokClose {
		return s.tokens[i+1].num.Text, 3
	}
	return "", 0
}

func (s *scanner) isIndex(i int) bool {
	return s.tokens[i].kind == tokNumber && len(s.tokens[i].num.Text) == 1 && unicode.IsDigit(rune(s.tokens[i].num.Text[0]))
}

// join makes one token of the i-th and those behind it, if their text is a letter of
// the problem.
func (s *scanner) join(i, more int, text string) {
	name, _, ok := s.letters.resolve(normal([]rune(text)).text)
	if !ok || s.letters.Kind(name) == Angle {
		return
	}
	s.tokens[i] = token{kind: tokName, text: name, pos: s.tokens[i].pos, end: s.tokens[i+more].end}
	s.tokens = append(s.tokens[:i+1], s.tokens[i+1+more:]...)
}
