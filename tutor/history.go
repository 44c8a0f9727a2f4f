package tutor

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"example.org/standstill/tutor/record"
)

// A History is what one student did, sorted into attempts. The desk, the class
// and the bench see a student's entries through it, so that they agree on what
// came first and what belongs together.
type History struct {
	Attempts []*Attempt // as they were begun
	Runs     []*Run     // the same

	of      map[string][]*Attempt // by problem, oldest first
	touches int
}

// Run is one run at the bench, with its entries in the order in which they happened: one
// for each student at the table, each time it was kept. ID is that of the first.
type Run struct {
	ID      string
	Entries []record.Entry
}

// Attempt is one copy of a problem that a student worked on, with its entries in
// the order in which they happened.
type Attempt struct {
	Problem string
	Hash    string // of the problem file
	Givens  string
	Copy    int
	Entries []record.Entry

	touched int   // when it was worked on last, counted in entries
	page    *Page // the desk's, made when it is first looked at
	trouble error
	past    PastPage // the desk's, of that many entries
	summed  int
}

// HistoryOf makes a history of entries in any order.
func HistoryOf(entries []record.Entry) *History {
	h := &History{of: map[string][]*Attempt{}}
	for _, e := range InOrder(entries) {
		h.Add(e)
	}
	return h
}

// pageKinds are the kinds of entries that a page is made of. One of another kind,
// such as a later program's, begins no attempt.
var pageKinds = []string{record.Begun, record.Answer, record.Hint, record.Solution, record.Disputed, record.Accepted, record.Withdrawn, record.Unsent,
	record.Predicted, record.Limited, record.PassedOn}

// Add files an entry that happened after all others to its attempt; nil for an
// entry of no page.
func (h *History) Add(e record.Entry) *Attempt {
	if e.Kind == record.Bench {
		// The first entry of a run names it; the others refer to that one.
		run := h.runOf(cmp.Or(e.Ref, e.ID))
		run.Entries = append(run.Entries, e)
	}
	if e.Problem == "" || !slices.Contains(pageKinds, e.Kind) {
		return nil
	}
	a := h.attemptOf(e)
	h.touches++
	a.touched = h.touches
	a.Entries = append(a.Entries, e)
	return a
}

func (h *History) runOf(id string) *Run {
	for _, run := range h.Runs {
		if run.ID == id {
			return run
		}
	}
	h.Runs = append(h.Runs, &Run{ID: id})
	return h.Runs[len(h.Runs)-1]
}

// Of lists the attempts at a problem, oldest first.
func (h *History) Of(problem string) []*Attempt { return h.of[problem] }

func (h *History) attemptOf(e record.Entry) *Attempt {
	for _, a := range h.of[e.Problem] {
		if a.Holds(e) {
			return a
		}
	}
	a := &Attempt{Problem: e.Problem, Hash: e.Hash, Givens: e.Givens, Copy: e.Copy}
	h.of[e.Problem] = append(h.of[e.Problem], a)
	h.Attempts = append(h.Attempts, a)
	return a
}

// Holds reports whether an entry is about this very copy of the problem.
func (a *Attempt) Holds(e record.Entry) bool {
	return a.Problem == e.Problem && a.Hash == e.Hash && a.Givens == e.Givens && a.Copy == e.Copy
}

// Measured reports whether the numbers come from the bench.
func (a *Attempt) Measured() bool {
	return len(a.Entries) > 0 && a.Entries[0].Kind == record.Begun && a.Entries[0].Ref != ""
}

// InOrder puts one student's entries, which may come from several machines, in the
// order in which they happened: within a record its running number tells, since
// clocks are put back, and between records the time. What a teacher accepted or
// took back comes last, since it is from another clock and always about what is
// there already. The times stay as they were recorded.
func InOrder(entries []record.Entry) []record.Entry {
	byRecord := slices.Clone(entries)
	slices.SortStableFunc(byRecord, inRecord)
	timed := make([]timedEntry, len(byRecord))
	var latest time.Time
	for i, e := range byRecord {
		// A clock that was put back must not move an entry before those that it followed.
		if i == 0 || byRecord[i-1].Record != e.Record || e.Time.After(latest) {
			latest = e.Time
		}
		timed[i] = timedEntry{e, latest}
	}
	slices.SortStableFunc(timed, func(a, b timedEntry) int {
		if x, y := OfTeacher(a.entry), OfTeacher(b.entry); x != y {
			if x {
				return 1
			}
			return -1
		}
		return a.at.Compare(b.at)
	})
	for i, t := range timed {
		byRecord[i] = t.entry
	}
	return byRecord
}

// inRecord compares entries by record, number and id.
func inRecord(a, b record.Entry) int {
	return cmp.Or(strings.Compare(a.Record, b.Record), cmp.Compare(a.Number, b.Number), strings.Compare(a.ID, b.ID))
}

// timedEntry is an entry with the time of the latest entry of its record up to it.
type timedEntry struct {
	entry record.Entry
	at    time.Time
}

// OfTeacher reports whether an entry is of a kind that only a teacher makes.
func OfTeacher(e record.Entry) bool { return e.Kind == record.Accepted || e.Kind == record.Withdrawn }
