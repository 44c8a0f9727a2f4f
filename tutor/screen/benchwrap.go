package screen

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/standstill/checker/quantity"
)

// tie stands between a number and its unit while a text is wrapped. It is a character of
// seven bits that no sentence holds, so that every instance may show it.
const tie = "`"

// wrapMeasured wraps a text like wrap, but parts no number from its unit, and no letter
// from its value.
func (l *look) wrapMeasured(text string, width int) []string {
	words := strings.Fields(text)
	var b strings.Builder
	for i, word := range words {
		switch {
		case i > 0 && (endsInDigit(words[i-1]) && isUnit(word) || isEquation(words[i-1], word)):
			b.WriteString(tie)
		case i > 0:
			b.WriteByte(' ')
		}
		b.WriteString(word)
	}
	lines := l.wrap(b.String(), width)
	for i := range lines {
		lines[i] = strings.ReplaceAll(lines[i], tie, " ")
	}
	return lines
}

// isEquation reports whether two words belong to a letter and its value, as in u = 0.3 N.
func isEquation(before, word string) bool {
	return word == "=" && utf8.RuneCountInString(before) <= 2 || before == "=" && strings.ContainsAny(word, "0123456789")
}

func endsInDigit(word string) bool {
	last, _ := utf8.DecodeLastRuneInString(word)
	return unicode.IsDigit(last)
}

// isUnit reports whether a word is a unit or a share, with whatever sign ends its part of
// the sentence.
func isUnit(word string) bool {
	word = strings.TrimRight(word, ".,;:)")
	_, found := quantity.Find(word)
	return found || word == "%"
}
