package tutor

import (
	"strings"

	"golang.org/x/text/unicode/norm"

	"example.org/standstill/checker/expr"
	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// longestName is how many characters of a name are kept.
const longestName = 60

// Students lists those who have practised here, in the order in which they came.
// In a class they are those of its list.
func (t *Tutor) Students() ([]record.Student, error) {
	if t.Visitor != nil {
		return []record.Student{*t.Visitor}, nil
	}
	if t.Class.Students != nil {
		return t.Class.Students, nil
	}
	return t.Record.Students()
}

// IsShared reports whether more than one student has practised here, so that it is
// worth asking who does now. A visit is one student's.
func (t *Tutor) IsShared() bool {
	if t.IsVisit() {
		return false
	}
	students, err := t.Record.Students()
	return err == nil && len(students) > 1
}

// LastStudent returns who practised last; ok is false where nobody has.
func (t *Tutor) LastStudent() (s record.Student, ok bool, err error) {
	if t.Visitor != nil {
		return t.seatVisitor(t.Visitor.ID)
	}
	id, err := t.Record.LastStudent()
	if err != nil || id == "" {
		// Somebody who is no longer on the list is not welcomed.
		return s, false, err
	}
	students, err := t.Students()
	for _, s := range students {
		if s.ID == id {
			return s, true, err
		}
	}
	return s, false, err
}

// Enrol finds the student of that name, or adds one, and remembers who it is. A
// name is the same however it is capitalised and spaced. ok is false for a name
// that is empty once control characters are dropped; nothing is kept then. In a class
// it is a name, an id or a place on its list, and ok is false for anybody else. On a
// visit it is the visitor and nobody else.
func (t *Tutor) Enrol(name string) (s record.Student, ok bool, err error) {
	name = tidyName(name)
	if name == "" {
		return s, false, nil
	}
	if t.Visitor != nil {
		return t.seatVisitor(name)
	}
	if t.Class.Students != nil {
		return t.enrolOf(name)
	}
	known, ok, err := t.Find(name)
	if err != nil {
		return s, true, err
	}
	if ok {
		return known, true, t.Record.SetLastStudent(known.ID)
	}
	s = record.Student{ID: foldName(name), Name: name}
	if err := t.Record.AddStudent(s.ID, s.Name); err != nil {
		return s, true, err
	}
	return s, true, t.Record.SetLastStudent(s.ID)
}

// Find finds the student of that name or id; ok is false where there is none.
func (t *Tutor) Find(name string) (s record.Student, ok bool, err error) {
	students, err := t.Students()
	if err != nil {
		return s, false, err
	}
	for _, known := range students {
		if foldName(known.Name) == foldName(name) || foldName(known.ID) == foldName(name) {
			return known, true, nil
		}
	}
	return s, false, nil
}

func tidyName(name string) string {
	name = strings.Join(strings.Fields(expr.Clean(norm.NFC.String(name))), " ")
	if runes := []rune(name); len(runes) > longestName {
		name = strings.TrimSpace(string(runes[:longestName]))
	}
	return name
}

// foldName makes one text of all ways of writing a name.
func foldName(name string) string {
	return problems.Fold(tidyName(name))
}
