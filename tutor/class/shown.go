package class

import (
	"strings"
	"unicode"
)

// longestShown is how many characters of a text from outside are shown in one
// place.
const longestShown = 400

// shown makes a text from outside harmless on a terminal and in a list: one line,
// and a sign in the place of whatever acts instead of being seen. What is kept
// stays as it came.
func shown(text string) string {
	text = strings.Join(strings.Fields(strings.Map(harmless, text)), " ")
	if runes := []rune(text); len(runes) > longestShown {
		text = string(runes[:longestShown]) + "…"
	}
	return text
}

func harmless(r rune) rune {
	switch {
	case unicode.IsSpace(r):
		return ' '
	case unicode.IsControl(r), unicode.In(r, unicode.Cf, unicode.Co, unicode.Zl, unicode.Zp):
		return unicode.ReplacementChar
	}
	return r
}

// shortID is as much of an entry's id as a teacher types.
func shortID(id string) string { return id[:min(8, len(id))] }
