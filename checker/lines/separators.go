package lines

import (
	"slices"
	"strings"
	"unicode"

	"example.org/standstill/checker/expr"
)

// separator is one thing that stands between two lines.
type separator struct {
	text      string
	concludes bool // what follows is a conclusion
	arrow     bool // behind an equation it separates, behind a letter it is an equals sign
}

// signs are the separators that are no words, those that begin like another after it.
var signs = []separator{
	{text: ";"}, {text: "；"}, {text: "\n"}, {text: "&"},
	{text: "∴", concludes: true}, {text: "∵"},
	{text: "<=>", concludes: true, arrow: true}, {text: "<->", concludes: true, arrow: true},
	{text: "⇔", concludes: true, arrow: true}, {text: "⟺", concludes: true, arrow: true}, {text: "↔", concludes: true, arrow: true},
	{text: "⇒", concludes: true, arrow: true}, {text: "⟹", concludes: true, arrow: true},
	{text: "→", concludes: true, arrow: true}, {text: "⟶", concludes: true, arrow: true}, {text: "↦", concludes: true, arrow: true},
	{text: "==>", concludes: true, arrow: true}, {text: "=>", concludes: true, arrow: true},
	{text: "-->", concludes: true, arrow: true}, {text: "->", concludes: true, arrow: true},
	{text: "–>", concludes: true, arrow: true}, {text: "−>", concludes: true, arrow: true}, {text: "—>", concludes: true, arrow: true},
}

// beginnings are the runes that signs begin with: few runes of a line are such.
const beginnings = ";；\n&∴∵<⇔⟺↔⇒⟹→⟶↦=-–−—"

// words are the separators that are words, the longer first. One that is a letter of
// the problem is none.
var words = []separator{
	{text: "which gives", concludes: true}, {text: "this gives", concludes: true}, {text: "so that", concludes: true},
	{text: "and so", concludes: true}, {text: "and then", concludes: true}, {text: "and hence", concludes: true},
	{text: "and therefore", concludes: true}, {text: "it follows that", concludes: true},
	{text: "and"}, {text: "so", concludes: true}, {text: "therefore", concludes: true}, {text: "hence", concludes: true},
	{text: "thus", concludes: true}, {text: "then", concludes: true}, {text: "gives", concludes: true}, {text: "giving", concludes: true},
	{text: "implies", concludes: true}, {text: "i.e.", concludes: true}, {text: "ie", concludes: true},
}

// longestLabel is how many runes of a line are looked at for the name of an axis.
const longestLabel = 60

// split finds the pieces between separators.
func (s *splitter) split() {
	start, depth, concludes := 0, 0, false
	end := func(to int) {
		p := s.cut(start, to)
		p.concludes = concludes
		s.pieces = append(s.pieces, p)
	}
	for i := 0; i < len(s.runes); {
		if i == start {
			row, _, _ := strings.Cut(string(s.runes[i:min(len(s.runes), i+longestLabel)]), "\n")
			i += expr.AxisLabel(row) // the arrow of "R(→):" separates nothing
			if i >= len(s.runes) {
				break
			}
		}
		r := s.runes[i]
		if sep, length := s.separatorAt(i, start, depth); length > 0 {
			if sep.arrow && s.isPlain(start, i) {
				for next := i + length; s.rune(next) == ' ' || s.rune(next) == '>'; next++ {
					if s.runes[next] == '>' {
						length = next + 1 - i // what is left of "=>>" would be an arrow again
					}
				}
				s.blank(i, length, '=')
				i += length
				continue
			}
			if sep.text == "&" && s.aligns(i) {
				s.blank(i, length, ' ')
				i += length
				continue
			}
			end(i)
			i += length
			start, depth, concludes = i, 0, sep.concludes
			continue
		}
		switch r {
		case '(', '[', '{':
			depth++
		case ')', ']', '}':
			if label := s.labelBefore(i); depth == 0 && r != '}' && label > start {
				end(label) // "T1 = 20 N  b) T2 = 26 N"
				start, concludes = label, false
			}
			depth = max(depth-1, 0)
		}
		i++
	}
	end(len(s.runes))
}

// separatorAt finds the separator that begins at a place, and how many runes it takes;
// none is 0 long.
func (s *splitter) separatorAt(i, start, depth int) (separator, int) {
	rest := s.runes[i:]
	for _, sign := range signs {
		if !strings.ContainsRune(beginnings, rest[0]) {
			break
		}
		length := prefix(rest, sign.text)
		if length > 0 {
			return sign, length
		}
	}
	if rest[0] == ',' || rest[0] == '，' {
		if s.comma(i, depth) {
			return separator{text: ","}, 1
		}
		return separator{}, 0
	}
	if unicode.IsLetter(rest[0]) && (i == 0 || !isWord(s.runes[i-1])) {
		return s.wordAt(i)
	}
	return separator{}, 0
}

// prefix returns how many runes a text takes at the front, in any letter case, 0 for
// none. A space stands for one or more.
func prefix(runes []rune, text string) int {
	n := 0
	for _, want := range text {
		switch {
		case n >= len(runes):
			return 0
		case want == ' ':
			if runes[n] != ' ' {
				return 0
			}
			for n < len(runes) && runes[n] == ' ' {
				n++
			}
		case unicode.ToLower(runes[n]) == want:
			n++
		default:
			return 0
		}
	}
	return n
}

// wordAt finds a separating word that begins at a place.
func (s *splitter) wordAt(i int) (separator, int) {
	for _, word := range words {
		length := prefix(s.runes[i:], word.text)
		if length == 0 || i+length < len(s.runes) && isWord(s.runes[i+length]) {
			continue
		}
		if s.letter(string(s.runes[i : i+length])) {
			continue
		}
		if s.rune(i+length) == ':' {
			length++ // "so: T1 = 20 N"
		}
		return word, length
	}
	return separator{}, 0
}

// comma reports whether the comma at a place stands between lines: not inside a
// number, a bracket or an index (T1,x).
func (s *splitter) comma(i, depth int) bool {
	before, after := s.rune(i-1), s.rune(i+1)
	switch {
	case after == 0 || before == 0 || after == ' ' || before == ' ' || after == '\n':
		return true
	case depth > 0 || isDigit(before) && isDigit(after):
		return false
	case (after == 'x' || after == 'y') && !isWord(s.rune(i+2)) && s.endsName(i):
		return false
	}
	return true
}

// endsName reports whether a name with a letter in front ends before a place.
func (s *splitter) endsName(i int) bool {
	from := i
	for from > 0 && isWord(s.runes[from-1]) {
		from--
	}
	return from < i && unicode.IsLetter(s.runes[from])
}

func (s *splitter) rune(i int) rune {
	if i < 0 || i >= len(s.runes) {
		return 0
	}
	return s.runes[i]
}

// isPlain reports whether no equation, but something, stands between two places.
func (s *splitter) isPlain(from, to int) bool {
	return !slices.ContainsFunc(s.runes[from:to], isEquals) && strings.TrimSpace(string(s.runes[from:to])) != ""
}

// aligns reports whether an ampersand stands beside an equals sign, as where equations
// are set one under the other.
func (s *splitter) aligns(i int) bool {
	before, after := i-1, i+1
	for s.rune(before) == ' ' {
		before--
	}
	for s.rune(after) == ' ' {
		after++
	}
	if strings.ContainsRune("<>", s.rune(before)) || strings.ContainsRune("<>", s.rune(after)) {
		return false // without it there would be an arrow
	}
	return isEquals(s.rune(before)) || isEquals(s.rune(after))
}

// blank puts one sign in the place of several.
func (s *splitter) blank(i, length int, by rune) {
	for j := range length {
		s.runes[i+j] = ' '
	}
	s.runes[i] = by
}

func isEquals(r rune) bool { return strings.ContainsRune("=＝≈≅≃", r) && r != 0 }

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

// isWord reports whether a rune can stand inside a letter with its index.
func isWord(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_' }
