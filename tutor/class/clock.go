package class

import (
	"fmt"
	"time"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/summary"
	"example.org/standstill/tutor/record"
)

// timeSpent gives each entry the time since the one before it.
func timeSpent(entries []record.Entry) map[string]time.Duration {
	spent := make(map[string]time.Duration, len(entries))
	var last time.Time
	for _, e := range entries {
		if tutor.OfTeacher(e) || e.Kind == record.Noted {
			continue
		}
		// A clock that was put back gives no time at all, rather than less than none.
		if pause := e.Time.Sub(last); !last.IsZero() && pause > 0 {
			spent[e.ID] = min(pause, longestPause)
		}
		last = e.Time
	}
	return spent
}

// Times before which no entry can have been made, and how far a clock may be put
// back without a word.
const (
	firstYear = 2026
	putBack   = 2 * time.Minute
)

// clock remarks on times that cannot be. The entries come record by record.
func (s *sheeting) clock(entries []record.Entry) {
	var last record.Entry
	for _, e := range entries {
		if tutor.OfTeacher(e) || e.Kind == record.Noted {
			continue
		}
		if e.Time.Year() < firstYear {
			s.remark(summary.TimeEarly, e.Problem, "", e.Time.Format(time.DateTime), 1)
		}
		if last.Record == e.Record && last.Number == e.Number {
			s.remark(summary.NumberTwice, e.Problem, "", "", 1)
		}
		if last.Record == e.Record && e.Time.Before(last.Time.Add(-putBack)) {
			s.remark(summary.TimeBackwards, e.Problem, "", e.Time.Format(time.DateTime), 1)
		}
		last = e
	}
}

// notes repeats what was found when entries were collected.
func (s *sheeting) notes(entries []record.Entry) {
	for _, e := range entries {
		notice := summary.Notice(e.Detail)
		if e.Kind != record.Noted || notice == summary.EntryChanged || notice == summary.NumbersMissing && closed(e, entries) {
			continue // what changed is told by settle
		}
		s.remark(notice, e.Problem, "", e.Text, 1)
	}
}

// closed reports whether numbers that were missing have come since.
func closed(note record.Entry, entries []record.Entry) bool {
	var from, to int64
	if n, err := fmt.Sscanf(note.Text, "%d-%d", &from, &to); n != 2 || err != nil {
		return false
	}
	have := map[int64]bool{}
	for _, e := range entries {
		if e.Record == note.Ref && from <= e.Number && e.Number <= to {
			have[e.Number] = true
		}
	}
	// Numbers and not entries are counted: one number may have come twice.
	return int64(len(have)) == to-from+1
}
