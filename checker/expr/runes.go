package expr

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/standstill/checker/pattern"
)

const (
	maxLength = 500 // characters in one text
	maxDepth  = 64  // brackets, powers and functions inside one another
)

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

func runesIn(text string) int { return utf8.RuneCountInString(text) }

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

// The letters that Unicode has as subscripts, and what they are.
const (
	smallLetters = "ₐₑₒₓₕₖₗₘₙₚₛₜᵢᵣᵤᵥⱼᵦᵧᵨᵩᵪ"
	theirLetters = "aeoxhklmnpstiruvjβγρφχ"
)
