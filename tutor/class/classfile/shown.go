package classfile

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"unicode"

	"example.org/standstill/checker/expr"
)

// longestShown is how many characters of a text from outside are shown in one
// place.
const longestShown = 400

// Shown makes a text from outside harmless on a terminal and in a list: one line,
// and a sign in the place of whatever acts instead of being seen. What is kept
// stays as it came.
func Shown(text string) string {
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
	case expr.Acts(r):
		return unicode.ReplacementChar
	}
	return r
}

// WriteJSON writes a value, indented or on one line. Characters that would act on a
// terminal are written as escapes, which mean the same to whoever reads JSON.
func WriteJSON(w io.Writer, value any, indent string) error {
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", indent)
	if err := encoder.Encode(value); err != nil {
		return err
	}
	_, err := io.WriteString(w, escaped(b.String()))
	return err
}

// escaped writes what acts as an escape of JSON, in whose texts alone it can stand.
func escaped(text string) string {
	if strings.IndexFunc(text, actsInJSON) < 0 {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		switch {
		case !actsInJSON(r):
			b.WriteRune(r)
		case r > 0xffff:
			r -= 0x10000
			fmt.Fprintf(&b, `\u%04x\u%04x`, 0xd800+r>>10, 0xdc00+r&0x3ff)
		default:
			fmt.Fprintf(&b, `\u%04x`, r)
		}
	}
	return b.String()
}

func actsInJSON(r rune) bool { return r != '\n' && expr.Acts(r) }
