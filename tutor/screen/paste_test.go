// Inside the package: it feeds single bytes with a clock of its own.

package screen

import (
	"io"
	"strings"
	"testing"
	"testing/iotest"
	"time"
)

func TestPastesAreEnded(t *testing.T) {
	for _, c := range []struct{ name, sent, read string }{
		{"typing", "w down\r", "w down\r"},
		{"a paste", "\x1b[200~w down\x1b[201~\r", "\x1b[200~w down\x1b[201~\r"},
		{"two pastes", "\x1b[200~a\x1b[201~\x1b[200~b\x1b[201~", "\x1b[200~a\x1b[201~\x1b[200~b\x1b[201~"},
		{"an arrow in a paste", "\x1b[200~a\x1b[A\x1b[201~b", "\x1b[200~a\x1b[A\x1b[201~b"},
		{"no end", "\x1b[200~w down\x03", "\x1b[200~w down\x1b[201~\x03"},
		{"half an end", "\x1b[200~w\x1b[20\x03", "\x1b[200~w\x1b[20\x1b[201~\x03"},
		{"an interrupt before", "\x03\x1b[200~w\x1b[201~", "\x03\x1b[200~w\x1b[201~"},
		{"an end after the interrupt", "\x1b[200~w\x03\x1b[201~\x03", "\x1b[200~w\x1b[201~\x03\x1b[201~\x03"},
	} {
		for way, from := range map[string]io.Reader{"at once": strings.NewReader(c.sent), "in bytes": iotest.OneByteReader(strings.NewReader(c.sent))} {
			got, err := io.ReadAll(endingPastes(from))
			if err != nil || string(got) != c.read {
				t.Errorf("%s %s: %q is read as %q (%v)", c.name, way, c.sent, got, err)
			}
		}
	}
}

// TestPauseEndsAPaste: what comes long after the last of a paste is typed.
func TestPauseEndsAPaste(t *testing.T) {
	now := time.Unix(0, 0)
	e := &pasteEnder{from: iotest.OneByteReader(strings.NewReader("\x1b[200~w" + "x")), clock: func() time.Time { return now }}
	buffer := make([]byte, 16)
	var got string
	for range len("\x1b[200~w") {
		n, _ := e.Read(buffer)
		got += string(buffer[:n])
	}
	now = now.Add(longestPause + time.Millisecond)
	n, _ := e.Read(buffer)
	if got += string(buffer[:n]); got != "\x1b[200~w\x1b[201~x" {
		t.Errorf("%q", got)
	}
}

// TestEndOfAPasteFitsNoSmallBuffer: nothing is lost where the end that is put in does not
// fit, also where the last bytes come with the end of everything.
func TestEndOfAPasteFitsNoSmallBuffer(t *testing.T) {
	const sent = "\x1b[200~w\x03"
	for name, from := range map[string]io.Reader{"the end by itself": strings.NewReader(sent), "the end with the last bytes": iotest.DataErrReader(strings.NewReader(sent))} {
		e := &pasteEnder{from: from, clock: time.Now}
		buffer := make([]byte, 8)
		var got string
		for {
			n, err := e.Read(buffer)
			if got += string(buffer[:n]); err != nil {
				break
			}
		}
		if got != "\x1b[200~w\x1b[201~\x03" {
			t.Errorf("%s: %q", name, got)
		}
	}
}
