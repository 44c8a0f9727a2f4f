package tutor_test

import (
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// The order of a history depends on what happened alone: two machines, a clock
// that was put back, and a teacher with a clock of another year.
func TestOrderOfAHistory(t *testing.T) {
	at := func(minute int) time.Time { return time.Date(2030, 3, 2, 10, minute, 0, 0, time.UTC) }
	entry := func(machine string, number int64, minute int, text string) record.Entry {
		return record.Entry{ID: machine + text, Record: machine, Number: number, Time: at(minute), Kind: record.Answer, Problem: "canal-lantern", Text: text}
	}
	entries := []record.Entry{
		entry("lab", 1, 0, "a"), entry("lab", 2, 10, "b"), entry("lab", 3, 5, "d"), // its clock was put back
		entry("home", 1, 7, "z"), entry("home", 2, 10, "c"), entry("home", 3, 20, "e"),
	}
	accepted := record.Entry{ID: "x", Record: "desk", Number: 1, Time: at(-60), Kind: record.Accepted, Problem: "canal-lantern", Text: "f"}
	entries = append(entries, accepted)
	random := rand.New(rand.NewPCG(1, 2))
	for range 50 {
		random.Shuffle(len(entries), func(i, j int) { entries[i], entries[j] = entries[j], entries[i] })
		var order strings.Builder
		for _, e := range tutor.HistoryOf(entries).Attempts[0].Entries {
			order.WriteString(e.Text)
		}
		// Of the same minute the record with the smaller id comes first.
		if order.String() != "azcbdef" {
			t.Fatalf("the order is %s", order.String())
		}
	}
}

// Another copy, other numbers or another file make another attempt; a run at the
// bench and a note are of none.
func TestAttemptsOfAHistory(t *testing.T) {
	one := record.Entry{Problem: "p", Hash: "h", Givens: "m=1", Kind: record.Begun}
	other := []func(*record.Entry){
		func(*record.Entry) {},
		func(e *record.Entry) { e.Copy = 1 },
		func(e *record.Entry) { e.Givens = "m=2" },
		func(e *record.Entry) { e.Hash = "other" },
		func(e *record.Entry) { e.Problem = "q" },
	}
	var entries []record.Entry
	for i, change := range append(other, other...) {
		e := one
		e.Number = int64(i)
		change(&e)
		entries = append(entries, e)
	}
	for _, kind := range []string{record.Bench, record.Noted, "of a later program"} {
		entries = append(entries, record.Entry{Problem: "p", Kind: kind})
	}
	h := tutor.HistoryOf(entries)
	if len(h.Attempts) != len(other) || len(h.Of("p")) != 4 || len(h.Of("q")) != 1 {
		t.Fatalf("%d attempts, %d of p, %d of q", len(h.Attempts), len(h.Of("p")), len(h.Of("q")))
	}
	for _, a := range h.Attempts {
		if len(a.Entries) != 2 {
			t.Errorf("an attempt has %d entries", len(a.Entries))
		}
	}
}
