package frame

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/standstill/checker/expr"
)

// NameLength is how many bytes of a text are one name: a letter with the letters,
// digits and subscripts behind it.
func NameLength(text string) int {
	first, size := utf8.DecodeRuneInString(text)
	if !unicode.IsLetter(first) {
		return 0
	}
	n := size
	for n < len(text) {
		r, size := utf8.DecodeRuneInString(text[n:])
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) && !isSubscript(r) {
			break
		}
		n += size
	}
	return n
}

func isSubscript(r rune) bool { return r >= '₀' && r <= 'ₜ' }

func RuneLength(text string) int {
	_, size := utf8.DecodeRuneInString(text)
	return max(size, 1)
}

// SetNames writes the known names in a text as they stand on paper.
func SetNames(known map[string]Shade, text string) string {
	var b strings.Builder
	for at := 0; at < len(text); {
		size := NameLength(text[at:])
		if size == 0 {
			size = RuneLength(text[at:])
		}
		name := text[at : at+size]
		if _, ok := known[name]; ok {
			name = OnPaper(name)
		}
		b.WriteString(name)
		at += size
	}
	return b.String()
}

// OnPaper is a name as it stands on paper. Unicode has a small x and no small y,
// so both stay on the line behind the digits.
func OnPaper(name string) string {
	if n := len(name) - 1; n > 1 && (name[n] == 'x' || name[n] == 'y') && name[n-1] >= '0' && name[n-1] <= '9' {
		return expr.Set(name[:n]) + name[n:]
	}
	return expr.Set(name)
}
