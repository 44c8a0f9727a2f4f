// Inside the package: it counts what is marked, and fills up to the bounds of the package.

package class

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// crowded is a hand-in of so many attempts at one problem, with numbers of nobody
// from copy on.
func crowded(t *testing.T, p *problems.Problem, attempts, copy int) []byte {
	t.Helper()
	var b bytes.Buffer
	fmt.Fprintf(&b, `{"standstill":"hand-in","form":1,"class":"harbour-2","student":"s01","name":"Ada","marking":"x","entries":%d,"record":"%032x"}`+"\n", 2*attempts, 7)
	for i := range attempts {
		givens := fmt.Sprintf("m=%d.5 kg alpha=40 deg beta=50 deg", 1+i)
		for n, line := range []string{`"kind":"begin"`, `"kind":"answer","stage":"diagram","text":"T1 up left; T2 up right; w down"`} {
			fmt.Fprintf(&b, `{"time":"2030-03-02T10:00:00.000Z",%s,"problem":"canal-lantern","hash":"%s","copy":%d,"givens":"%s","student":"s01","number":%d,"id":"%032x","record":"%032x"}`+"\n",
				line, p.Hash, copy+i, givens, 2*i+n+1, 2*i+n+1, 7)
		}
	}
	return b.Bytes()
}

// A small file of many attempts is bounded, and what is left out is told.
func TestManyAttempts(t *testing.T) {
	r := newRoom(t)
	p, err := r.bank.Get("canal-lantern")
	must(t, err)
	var packed bytes.Buffer
	must(t, squeeze(&packed, crowded(t, p, 300, 0)))
	if packed.Len() > 20<<10 {
		t.Fatalf("the file has %d bytes", packed.Len())
	}
	sum := r.collect(map[string][]byte{"ada": packed.Bytes()})
	if sum.Added != 600 {
		t.Errorf("added are %d", sum.Added)
	}
	want(t, "the remarks", notices(r.report().Remarks), fmt.Sprintf("s01 numbers-nobodys %d; s01 too-much %d", 2*mostAttempts, 2*(300-mostAttempts)))
}

// What no lesson can have made is left out in a sentence, and costs no memory.
func TestFilesBeyondTheBounds(t *testing.T) {
	header := `{"standstill":"hand-in","form":1,"student":"s01","record":"00000000000000000000000000000007"}` + "\n"
	entry := `{"time":"2030-03-02T10:00:00.000Z","kind":"answer","problem":"canal-lantern","student":"s01","number":1,"id":"%032x","record":"%032x","text":"%s"}` + "\n"
	for name, c := range map[string]struct{ data, said string }{
		"problem lines without end": {header + strings.Repeat(`{"file":"x"}`+"\n", 50_000), "too large for a hand-in"},
		"problem files":             {header + strings.Repeat(`{"file":"x","hash":"y"}`+"\n", 50_000), "too large for a hand-in"},
		"no entries":                {header + strings.Repeat("x\n", 50_000), "too large for a hand-in"},
		"a long answer":             {header + fmt.Sprintf(entry, 1, 7, strings.Repeat("T1; ", 2000)) + fmt.Sprintf(entry, 2, 7, "T1"), "Entries skipped because the answers are too long: 1."},
	} {
		r := newRoom(t)
		sum := r.collect(map[string][]byte{"x": []byte(c.data)})
		var b strings.Builder
		must(t, sum.WriteText(&b, r.class))
		if !strings.Contains(b.String(), c.said) {
			t.Errorf("%s: %s", name, b.String())
		}
	}
}

// An entry that cannot be judged because of a fault of ours spoils one cell: it is
// named, and everything else is there.
func TestAFaultSpoilsOneCell(t *testing.T) {
	r := newRoom(t)
	r.solveLantern(r.lesson("s01", "canal-lantern"))
	r.solveLantern(r.lesson("s02", "canal-lantern"))
	r.lesson("s02", "letter-scale")
	r.collect(map[string][]byte{"ada": r.handIn("s01"), "ben": r.handIn("s02")})
	r.book.marking = func(e record.Entry) {
		if e.Student == "s02" && e.Problem == "canal-lantern" && e.Kind == record.Answer {
			panic("index out of range")
		}
	}
	report := r.report()
	want(t, "the first column", standings(report), doneWord+", not started, not started")
	want(t, "the other cell", report.Students[1].Cells[1].Status.String(), "in progress")
	want(t, "the remarks", notices(report.Remarks), "s02 fault 7")
	if said := report.Say(report.Remarks[0]); !strings.Contains(said, "Ben Roos: 7 entries on canal-lantern could not be marked") || !strings.Contains(said, "index out of range") {
		t.Error(said)
	}
	var b strings.Builder
	must(t, r.book.Show(&b, r.class.Students[1], "canal-lantern"))
	_, err := r.book.WriteStatements(t.Context(), &b, HomePage)
	must(t, err)
	// The fault mended, the cell is there: it was not remembered.
	r.book.marking = nil
	want(t, "the first column", standings(r.report()), doneWord+", "+doneWord+", not started")
}
