// Inside the package: it reads the single statements of an export.

package class

import (
	"encoding/json"
	"strings"
	"testing"
	"time"
)

// Nothing in one student's hand-in is another's work: Ben's file cannot mark Ada as
// begun.
func TestAHandInHoldsOneStudentsWork(t *testing.T) {
	r := newRoom(t)
	r.lesson("s02", "canal-lantern")
	n := 0
	mixed := append(r.handIn("s02"), edited(t, r.handIn("s02"), func(f map[string]any) {
		if f["kind"] == "begin" {
			f["student"], f["id"] = "s01", flipped(f["id"].(string))
			n++
		} else {
			clear(f)
		}
	})...)
	sum := r.collect(map[string][]byte{"ben": mixed})
	if n != 1 || sum.Files[0].Besides != 1 || sum.Added != 1 {
		t.Errorf("collected %+v", sum)
	}
	report := r.report()
	want(t, "the first column", standings(report), "not started, in progress, not started")
	want(t, "the remarks", notices(report.Remarks), "")
}

// Every statement names where it was made; a time that cannot be is as it was
// recorded, and flagged.
func TestStatementsHaveContexts(t *testing.T) {
	r := newRoom(t)
	r.solveLantern(r.lesson("s01", "canal-lantern"))
	n := 0
	data := edited(t, r.handIn("s01"), func(f map[string]any) {
		if f["kind"] == "answer" {
			if n++; n == 2 {
				f["time"] = "2041-01-01T00:00:00.000Z"
			}
		}
	})
	r.collect(map[string][]byte{"ada": data})
	var b strings.Builder
	told, err := r.book.WriteStatements(t.Context(), &b, HomePage)
	must(t, err)
	if told != 1 {
		t.Errorf("statements of %d students", told)
	}
	flagged, statements := 0, strings.Split(strings.TrimSpace(b.String()), "\n")
	for _, line := range statements {
		var one statement
		must(t, json.Unmarshal([]byte(line), &one))
		if one.Context.Platform != "Standstill" {
			t.Errorf("no context: %s", line)
		}
		at, err := time.Parse(timeForm, one.Timestamp)
		must(t, err)
		if later := at.Year() == 2041; later != (one.Context.Extensions != nil) {
			t.Errorf("flagged wrongly: %s", line)
		} else if later {
			flagged++
		}
	}
	if len(statements) != 8 || flagged == 0 {
		t.Errorf("%d statements, %d flagged", len(statements), flagged)
	}
}
