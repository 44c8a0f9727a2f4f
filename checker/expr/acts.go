package expr

import "unicode"

// Acts reports a character that a terminal, a page or a list obeys instead of
// showing it: control characters, marks of direction and other marks without a
// shape, separators of lines. What joins letters in some scripts acts on nothing.
// It is the one rule of what may be shown of a text that came from outside.
func Acts(r rune) bool {
	const nonJoiner, joiner = '\u200c', '\u200d'
	return r != nonJoiner && r != joiner && (unicode.IsControl(r) || unicode.In(r, unicode.Cf, unicode.Co, unicode.Zl, unicode.Zp))
}
