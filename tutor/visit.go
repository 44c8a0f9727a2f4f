package tutor

import (
	"context"

	"example.org/standstill/tutor/record"
)

// Within gives the same tutor for one visit: what it does with the record ends with the
// context that current returns at that time. See [record.Record.Within].
func (t *Tutor) Within(current func() context.Context) *Tutor {
	o := t.Options
	o.Record = o.Record.Within(current)
	return New(o)
}

// AtHost is what SavedIn returns where the record belongs to somebody else's machine.
const AtHost = "your teacher's record"

// SavedIn says where what is typed is saved, for a student to read; "" where it is not.
func (t *Tutor) SavedIn() string {
	path := t.Record.Path()
	if path != "" && t.Visitor != nil {
		return AtHost
	}
	return path
}

// IsVisit reports whether the student is one of many on somebody else's machine, and
// cannot be changed.
func (t *Tutor) IsVisit() bool { return t.Visitor != nil }

// Setting gives a remembered choice, "" for none. A visitor's choices are the visitor's
// own; the others belong to the record.
func (t *Tutor) Setting(key string) (string, error) { return t.Record.Setting(t.settingKey(key)) }

// SetSetting remembers a choice.
func (t *Tutor) SetSetting(key, value string) error {
	return t.Record.SetSetting(t.settingKey(key), value)
}

func (t *Tutor) settingKey(key string) string {
	if t.Visitor == nil {
		return key
	}
	// On a host all students share one record, but not one choice of colours.
	return key + " of " + t.Visitor.ID
}

// seatVisitor gives the visitor the place and nobody else.
func (t *Tutor) seatVisitor(name string) (s record.Student, ok bool, err error) {
	v := *t.Visitor
	if foldName(name) != foldName(v.Name) && foldName(name) != foldName(v.ID) {
		return s, false, nil
	}
	return v, true, t.Record.AddStudent(v.ID, v.Name)
}
