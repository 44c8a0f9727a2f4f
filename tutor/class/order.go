package class

import (
	"slices"
	"time"

	"example.org/standstill/tutor/record"
)

// inOrder puts one student's entries, which come record by record, in the order in
// which they happened: within a record its running number tells, between records
// the time. What a teacher accepted or took back comes last, since it is from
// another clock and always about what is there already.
func inOrder(entries []record.Entry) []record.Entry {
	times := make(map[string]time.Time, len(entries))
	var latest time.Time
	for i, e := range entries {
		if i == 0 || entries[i-1].Record != e.Record || e.Time.After(latest) {
			latest = e.Time
		}
		times[e.ID] = latest
	}
	slices.SortStableFunc(entries, func(a, b record.Entry) int {
		if x, y := isTeachers(a), isTeachers(b); x != y {
			if x {
				return 1
			}
			return -1
		}
		return times[a.ID].Compare(times[b.ID])
	})
	return entries
}

// isTeachers reports whether an entry is of a kind that only a teacher makes.
func isTeachers(e record.Entry) bool { return e.Kind == record.Accepted || e.Kind == record.Withdrawn }
