package classfile

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// PlainName keeps small letters, digits and hyphens of a text; other letters lose
// their marks.
func PlainName(text, instead string) string {
	var b strings.Builder
	for _, r := range norm.NFD.String(strings.ToLower(text)) {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			b.WriteRune(r)
		// Taken apart, é is an e and a mark; the mark is left out.
		case unicode.Is(unicode.Mn, r):
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	name := strings.Trim(b.String()[:min(b.Len(), 40)], "-")
	if name == "" {
		return instead
	}
	return name
}
