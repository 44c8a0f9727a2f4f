package screen

import (
	"io"
	"os"
	"time"
)

// What a terminal sends around a pasted text.
const (
	pasteBegins = "\x1b[200~"
	pasteEnds   = "\x1b[201~"
	interrupt   = 0x03
)

// longestPause is how long a paste may halt; what comes later is typed.
const longestPause = 2 * time.Second

// pasteEnder reads what a terminal sends, and ends a paste whose end never comes: the
// library holds everything back until then, ctrl+c included.
type pasteEnder struct {
	from    io.Reader
	clock   func() time.Time
	pasting bool
	matched int // bytes of the next mark that have come
	last    time.Time
	rest    []byte // what did not fit into the last read
	failed  error  // what the last read ended with, told after the rest
}

func (e *pasteEnder) Read(into []byte) (int, error) {
	if len(e.rest) > 0 {
		n := copy(into, e.rest)
		e.rest = e.rest[n:]
		return n, e.failure()
	}
	n, err := e.from.Read(into)
	if n == 0 {
		return n, err
	}
	e.failed = err
	now := e.clock()
	late := e.pasting && now.Sub(e.last) > longestPause
	e.last = now
	if out := e.ended(into[:n], late); out != nil {
		n = copy(into, out)
		e.rest = out[n:]
	}
	return n, e.failure()
}

// failure is what the last read ended with, once nothing of it is left.
func (e *pasteEnder) failure() error {
	if len(e.rest) > 0 {
		return nil
	}
	return e.failed
}

// ended follows the marks through some bytes. It gives nil where they can stay as they
// are, which is nearly always.
func (e *pasteEnder) ended(bytes []byte, late bool) (out []byte) {
	for i, b := range bytes {
		if e.pasting && (late && i == 0 || b == interrupt) {
			// Copied only where something must be put in.
			if out == nil {
				out = append(out, bytes[:i]...)
			}
			out = append(out, pasteEnds...)
			e.pasting, e.matched = false, 0
		}
		e.follow(b)
		if out != nil {
			out = append(out, b)
		}
	}
	return out
}

// follow notes one byte of a mark.
func (e *pasteEnder) follow(b byte) {
	mark := pasteBegins
	if e.pasting {
		mark = pasteEnds
	}
	switch {
	case b == mark[e.matched]:
		e.matched++
	// The byte that breaks one mark may begin the next.
	case b == mark[0]:
		e.matched = 1
	default:
		e.matched = 0
	}
	if e.matched == len(mark) {
		e.pasting, e.matched = !e.pasting, 0
	}
}

// pasteEnderFile is one on a terminal of this machine. Without everything that a file can
// do the library could not break off a read.
type pasteEnderFile struct {
	*os.File
	ender *pasteEnder
}

func (f pasteEnderFile) Read(into []byte) (int, error) { return f.ender.Read(into) }

// endingPastes reads what a terminal sends with every paste ended.
func endingPastes(in io.Reader) io.Reader {
	ender := &pasteEnder{from: in, clock: time.Now}
	if f, ok := in.(*os.File); ok {
		return pasteEnderFile{f, ender}
	}
	return ender
}
