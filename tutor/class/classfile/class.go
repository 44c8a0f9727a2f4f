// Package classfile knows the file in which a teacher says who is in a class and
// what is set: it is read (Read), made from answers (Draft), added to (Add) and packed
// into one file with its problems (Class.Pack).
//
//	read.go, settings.go, own.go   what a file says
//	write.go, draft.go, add.go     a file that is written
//	list.go, roster.go, rows.go    students from a CSV list or a OneRoster folder
//	shown.go, plain.go             what comes from a file, made harmless for a terminal or plain for an id
//	sentences.go                   what cannot be added to, in sentences
package classfile

import (
	"strings"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// Class is what a class file says: what the lesson takes of it, and where the list
// of students came from.
type Class struct {
	tutor.Class
	Roster  Roster
	Teacher string         // who may look on at a host; "" for nobody
	Bank    *problems.Bank // the problems that can be set, the class's own among them

	From   []string          // folders of own problems, as the file names them
	Packed []Packed          // own problems that the file itself holds
	Broken problems.Findings // what is wrong with own problems that are not set
}

// Student finds who is meant by an id, a name, a place on the list, or the
// beginning of a name that fits only one.
func (c *Class) Student(who string) (s record.Student, ok bool) {
	if s, ok = c.Class.Student(who); ok {
		return s, true
	}
	who = problems.Fold(who)
	var found []record.Student
	for _, s := range c.Students {
		if strings.HasPrefix(problems.Fold(s.Name), who) {
			found = append(found, s)
		}
	}
	// Every name begins with nothing.
	if len(found) == 1 && who != "" {
		return found[0], true
	}
	return s, false
}

// Called returns a student's name, or the id where the list has none.
func (c *Class) Called(id string) string {
	for _, s := range c.Students {
		if problems.Fold(s.ID) == problems.Fold(id) && s.Name != "" {
			return Shown(s.Name)
		}
	}
	return Shown(id)
}
