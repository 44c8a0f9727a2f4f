// Inside the package: it reads problem files as the markbook does, on the way to a report.

package class

import (
	"strings"
	"testing"
)

// A problem file goes by the hash of its text: one that came under another's is not kept,
// and one that was put into the record under another's is not used.
func TestAProblemUnderAnothersHash(t *testing.T) {
	r := newRoom(t)
	forged := strings.Repeat("ab", 32)
	r.type_(r.lesson("s01", "canal-lantern"), "T1 up left; T2 up right; w down")
	data := edited(t, r.handIn("s01"), func(f map[string]any) {
		if f["hash"] != nil {
			f["hash"] = forged
		}
	})
	r.collect(map[string][]byte{"ada": data})
	if _, err := r.book.Record.Problem(forged); err == nil {
		t.Error("the file of a hand-in is kept under a hash that is not its own")
	}
	want(t, "the first column", standings(r.report()), "not started, not started, not started")
	p, err := r.bank.Get("canal-lantern")
	must(t, err)
	must(t, r.book.Record.SaveProblem(forged, p.ID, string(p.Raw)))
	clear(r.book.read)
	if _, err := r.book.savedProblem(forged); err != errOtherVersion {
		t.Errorf("a file in the record under another's hash is used: %v", err)
	}
}
