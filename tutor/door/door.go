// Package door is what everything but the screens writes through: the lines of commands
// and those of a lesson.
package door

import (
	"bytes"
	"io"
	"unicode/utf8"

	"example.org/standstill/checker/expr"
)

// Door leads to an output. Whatever came from a file, a name or a record, nothing in it
// acts on the terminal: a character that would is shown as the replacement character.
type Door struct {
	out   io.Writer
	begun bool
	rest  []byte // the beginning of a character that is not whole yet
	cr    bool   // a carriage return that may be half of a line's end

	trouble error // the first error of the stream behind
}

// To makes a door to an output.
func To(out io.Writer) *Door { return &Door{out: out} }

// Trouble is the first error of the output behind, nil for none.
func (d *Door) Trouble() error { return d.trouble }

// Write never writes less than it was given without an error.
func (d *Door) Write(p []byte) (int, error) {
	text := append(d.rest, p...)
	d.rest = nil
	var b bytes.Buffer
	for len(text) > 0 {
		r, size := utf8.DecodeRune(text)
		// The end of a write may cut a character; its beginning waits for the next write.
		if r == utf8.RuneError && size <= 1 && !utf8.FullRune(text) {
			d.rest = bytes.Clone(text)
			break
		}
		text = text[size:]
		d.put(&b, r)
		d.begun = true
	}
	if _, err := d.out.Write(b.Bytes()); err != nil {
		if d.trouble == nil {
			d.trouble = err
		}
		return 0, err
	}
	return len(p), nil
}

// put writes one character. Line ends of both kinds, tabs, and the mark that a
// spreadsheet wants at the very beginning are harmless.
func (d *Door) put(b *bytes.Buffer, r rune) {
	// Only the next character tells whether a carriage return ends a line.
	if d.cr && r != '\n' {
		b.WriteRune(utf8.RuneError)
	} else if d.cr {
		b.WriteByte('\r')
	}
	d.cr = r == '\r'
	switch {
	case d.cr:
	case r == '\n', r == '\t', r == '\ufeff' && !d.begun:
		b.WriteRune(r)
	case expr.Acts(r):
		b.WriteRune(utf8.RuneError)
	default:
		b.WriteRune(r)
	}
}

// Behind gives the stream that a door leads to: screens write to it themselves.
func Behind(w any) any {
	if d, ok := w.(*Door); ok {
		return d.out
	}
	return w
}
