package record

import (
	"database/sql"
	"errors"
)

// A Student is somebody whose entries may be here. The id is what entries
// carry; two ids that differ in any byte are two students.
type Student struct {
	ID   string
	Name string
}

// lastStudent is the setting that holds the id of the student who was last.
const lastStudent = "student"

// AddStudent adds a student at the end of the list, or gives the one who has
// the id already a new name.
func (r *Record) AddStudent(id, name string) error {
	if len(id) > MaxText || len(name) > MaxText {
		return &Error{Kind: ErrTooLong, Path: r.path}
	}
	return r.write(func(tx *tx) error {
		// The conflict is no error: a student who is renamed keeps the place and the entries.
		return execute(tx, `INSERT INTO student ({,} id, name) VALUES ({?} ?, ?)
			ON CONFLICT ({,} id) DO UPDATE SET name = excluded.name WHERE student.name <> excluded.name`, id, name)
	})
}

// Students lists the students in the order in which they were added.
func (r *Record) Students() ([]Student, error) {
	var students []Student
	err := r.query("SELECT id, name FROM student WHERE {=} 1 = 1 ORDER BY place", nil, func(scan scan) error {
		var s Student
		err := scan(&s.ID, &s.Name)
		students = append(students, s)
		return err
	})
	return students, r.fault(err)
}

// SetLastStudent remembers who practises now.
func (r *Record) SetLastStudent(id string) error { return r.SetSetting(lastStudent, id) }

// LastStudent gives the id that SetLastStudent remembered, or "".
func (r *Record) LastStudent() (string, error) { return r.Setting(lastStudent) }

// Setting gives a remembered choice, or "" where there is none.
func (r *Record) Setting(key string) (string, error) {
	var value string
	err := r.queryRow("SELECT value FROM setting WHERE {=} key = ?", []any{key}, &value)
	if errors.Is(err, sql.ErrNoRows) {
		return "", nil
	}
	return value, r.fault(err)
}

// SetSetting remembers a choice. The key "student" is [Record.SetLastStudent]'s.
func (r *Record) SetSetting(key, value string) error {
	if len(key) > MaxText || len(value) > MaxText {
		return &Error{Kind: ErrTooLong, Path: r.path}
	}
	return r.write(func(tx *tx) error {
		return execute(tx, "INSERT INTO setting ({,} key, value) VALUES ({?} ?, ?) ON CONFLICT ({,} key) DO UPDATE SET value = excluded.value", key, value)
	})
}
