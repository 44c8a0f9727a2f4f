package class

import (
	"cmp"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// note remarks on an entry, and gathers an entry about it for the class's record.
func (t *taking) note(n Notice, student string, about record.Entry, text string) {
	if s, ok := t.students[problems.Fold(student)]; ok {
		student = s.ID
	}
	t.add(Remark{Notice: n, Student: student, Problem: about.Problem, Detail: text, Count: 1})
	t.notes = append(t.notes, record.Entry{Kind: record.Noted, Student: student, Problem: about.Problem,
		Ref: cmp.Or(about.ID, about.Record), Detail: string(n), Text: text})
}

// keepNotes adds the notes that are not there yet.
func (t *taking) keepNotes() error {
	there := map[record.Entry]bool{}
	asked := map[string]bool{}
	for _, note := range t.notes {
		if !asked[note.Student] {
			asked[note.Student] = true
			for e, err := range t.Record.Entries(record.Filter{Student: note.Student, Kinds: []string{record.Noted}}) {
				if err != nil {
					return err
				}
				there[bare(e)] = true
			}
		}
		if there[bare(note)] {
			continue
		}
		there[bare(note)] = true
		if _, err := t.Record.Append(note); err != nil {
			return err
		}
	}
	return nil
}

// bare is what a note says, without when it was made.
func bare(note record.Entry) record.Entry {
	return record.Entry{Student: note.Student, Problem: note.Problem, Ref: note.Ref, Detail: note.Detail, Text: note.Text}
}
