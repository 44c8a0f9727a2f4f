// Inside the package: it fills a hand-in up to a bound of the package.

package class

import (
	"bytes"
	"context"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/standstill/tutor/record"
)

// TestWatchFollowsRecordsAtWork looks at a folder while students write to records
// in it.
func TestWatchFollowsRecordsAtWork(t *testing.T) {
	r := newRoom(t)
	r.class.Students[2].Name = "Cem\x1b[2J"
	w := &Watch{Class: r.class, Bank: r.bank, Paths: []string{r.dir}}
	defer w.Close()
	view := func() string {
		t.Helper()
		v, err := w.View(context.Background())
		must(t, err)
		return v
	}
	want(t, "the empty view", view(), "Not started: Ada Berg, Ben Roos, Cem\ufffd[2J\n")
	l := r.lesson("s02", "canal-lantern")
	r.type_(l, "T1 up left; T2 up right; w down", "T1x = T1 sin α")
	clock := l.Lines()[1].Time.Local().Format("15:04")
	want(t, "the view", view(), "Ben Roos: canal-lantern, components T1x, 2 lines, last at "+clock+", 1 wrong in a row\n"+
		"Not started: Ada Berg, Cem\ufffd[2J\n"+
		"Last mistakes\n  "+clock+"  Ben Roos, canal-lantern, components: “T1x = T1 sin α” (sine and cosine swapped)\n")
	for range 3 {
		_, err := l.Hint()
		must(t, err)
	}
	if v := view(); !strings.Contains(v, "Used all hints: Ben Roos (canal-lantern, components T1x)\n") {
		t.Error(v)
	}
	if again := view(); again != view() {
		t.Error("the view changes by itself")
	}
	w.Paths = []string{filepath.Join(r.dir, "pulled-out")}
	if _, err := w.View(context.Background()); err == nil {
		t.Error("a folder that is not there is no error")
	}
}

func TestLargeHandInsAreCompressed(t *testing.T) {
	r := newRoom(t)
	r.lesson("s01", "canal-lantern")
	long := strings.Repeat("T1 up left; ", 300)
	for range 90 {
		for _, text := range []string{long, "T1 up"} {
			_, err := r.desks["s01"].Append(record.Entry{Student: "s01", Problem: "canal-lantern", Kind: record.Unsent, Text: text})
			must(t, err)
		}
	}
	s, _ := r.class.Student("ada berg")
	h := HandIn{Tutor: r.tutorOf(r.desks["s01"], r.class.Class), Student: s, Now: r.now}
	data, name, entries, err := h.File()
	must(t, err)
	if !strings.HasSuffix(name, ".jsonl.gz") || len(data) > compressAbove {
		t.Errorf("%s has %d bytes", name, len(data))
	}
	if sum := r.collect(map[string][]byte{name: data}); sum.Added != entries || entries != 181 {
		t.Errorf("%d of %d came back", sum.Added, entries)
	}
}

// A file that cannot be read is named, and looked at again until it can be.
func TestWatchNamesWhatItCannotRead(t *testing.T) {
	r := newRoom(t)
	r.solveLantern(r.lesson("s01", "canal-lantern"))
	data := r.handIn("s01")
	folder := r.folder(map[string][]byte{"ada.jsonl": bytes.Replace(data, []byte(`"form":1`), []byte(`"form":9`), 1), "readme.txt": []byte("hello")})
	w := &Watch{Class: r.class, Bank: r.bank, Paths: []string{folder}, Now: func() time.Time { return r.now }}
	defer w.Close()
	for range 2 {
		v, err := w.View(context.Background())
		must(t, err)
		want(t, "the view", v, "Not started: Ada Berg, Ben Roos, Cem Acar\nada.jsonl: The file was written by a newer version of this program, and this version cannot read it.\n")
	}
	must(t, writeFile(filepath.Join(folder, "ada.jsonl"), data))
	v, err := w.View(context.Background())
	must(t, err)
	if !strings.HasPrefix(v, "Ada Berg: canal-lantern, "+doneWord) || strings.Contains(v, "newer") {
		t.Error(v)
	}
}
