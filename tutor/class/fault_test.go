// Inside the package: it uses the room of class_test.go.

package class

import (
	"strings"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/tutor/class/summary"
)

// TestFaultSpoilsOneLine lets the checker fail on one line of one student: the report
// says whose line it is, and holds everything else.
func TestFaultSpoilsOneLine(t *testing.T) {
	r := newRoom(t)
	r.solveLantern(r.lesson("s01", "canal-lantern"))
	r.type_(r.lesson("s02", "canal-lantern"), "T1 up left; T2 up right; w down", "T1x = T1 sin α", "T1x = T1 cos α")
	files := map[string][]byte{"ada.jsonl": r.handIn("s01"), "ben.jsonl": r.handIn("s02")}
	r.class.Judge = func(ref *checker.Reference, a checker.Answer, before []checker.Answer) checker.Report {
		if a.Text == "T1x = T1 sin α" {
			panic("on purpose")
		}
		return ref.Mark(a, before)
	}
	r.book = r.markbook()
	r.collect(files)
	for range 2 { // a fault is not remembered: it may be mended the next time
		report := r.report()
		want(t, "the first column", standings(report), doneWord+", in progress, not started")
		var faults []string
		for _, one := range report.Remarks {
			if one.Notice == summary.Fault {
				faults = append(faults, report.Say(one))
			}
		}
		if len(faults) != 1 || !strings.Contains(faults[0], "T1x = T1 sin α") || !strings.Contains(faults[0], "canal-lantern") {
			t.Errorf("said is %q", faults)
		}
		if cell := report.Students[1].Cells[0]; cell.Lines == 0 || cell.Item != "T1y" {
			t.Errorf("the other lines come to %+v", cell)
		}
	}
	r.class.Judge = nil
	r.book = r.markbook()
	for _, one := range r.report().Remarks {
		if one.Notice == summary.Fault {
			t.Errorf("after it is mended it is still said: %+v", one)
		}
	}
}

// TestHintAfterAnArrowIsReported is a hand-in with a line on which a hint once ended every
// report.
func TestHintAfterAnArrowIsReported(t *testing.T) {
	r := newRoom(t)
	l := r.lesson("s01", "canal-lantern")
	r.type_(l, "T1 up left; T2 up right; w down", "T1x = T1 cos α; T1y = T1 sin α; T2x = T2 cos β; T2y = T2 sin β; wx = 0; wy = w",
		"T1 cos α = T2 cos β => T1 = T2 sin β/cos α")
	_, err := l.Hint()
	must(t, err)
	r.collect(map[string][]byte{"ada.jsonl": r.handIn("s01")})
	report := r.report()
	want(t, "the first column", standings(report), "in progress, not started, not started")
	want(t, "the remarks", notices(report.Remarks), "")
}
