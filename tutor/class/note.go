package class

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"time"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/class/summary"
	"example.org/standstill/tutor/record"
)

// note remarks on an entry, and gathers an entry about it for the class's record.
func (t *taking) note(n summary.Notice, student string, about record.Entry, text string) {
	if s, ok := t.students[problems.Fold(student)]; ok {
		student = s.ID
	}
	detail := text
	if n == summary.EntryChanged {
		detail = summary.Quoted(cmp.Or(about.Text, about.Kind))
	}
	t.add(summary.Remark{Notice: n, Student: student, Problem: about.Problem, Detail: detail, Count: 1})
	note := record.Entry{Kind: record.Noted, Student: student, Problem: about.Problem,
		Ref: cmp.Or(about.ID, about.Record), Detail: string(n), Text: text}
	note.ID = idOf(note)
	// After the id is made, and the same each time: a note must not depend on when it was made.
	note.Record, note.Number, note.Time = t.Record.ID(), 1, time.UnixMilli(0)
	t.notes = append(t.notes, note)
}

// idOf makes an id of what a note says, so that saying it twice adds nothing.
func idOf(note record.Entry) string {
	data, err := json.Marshal(note)
	if err != nil {
		data = []byte(note.Ref + note.Detail + note.Text)
	}
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:16])
}

// freshNotes takes out the notes that are not in the record yet.
func (t *taking) freshNotes() []record.Entry {
	seen := map[string]bool{}
	var fresh []record.Entry
	for _, note := range t.notes {
		key := note.ID + note.Student
		if _, err := t.Record.Entry(note.ID, note.Student); err != nil && !seen[key] {
			fresh = append(fresh, note)
		}
		seen[key] = true
	}
	t.notes = nil
	return fresh
}

// keepNotes adds the notes that are not there yet.
func (t *taking) keepNotes() error {
	if len(t.notes) == 0 {
		return nil
	}
	_, err := t.Record.Merge(eachOf(t.freshNotes()))
	return err
}
