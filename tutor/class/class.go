// Package class knows the teacher's side: who is in a class and what is set, what
// students hand in, and what it comes to.
//
// A Class is read from a file (Read). Students hand in what they did
// (HandIn.File); a Markbook takes that in (Markbook.Collect), marks every answer
// again against the student's own copy and sums up (Markbook.Report). How it
// hangs together:
//
//	read.go, settings.go, write.go, draft.go   the class file
//	list.go, roster.go      students from a CSV list or a OneRoster folder
//	handin.go, handed.go    one student's entries as a file, and back
//	search.go, collect.go, note.go   hand-ins and whole records → the class's record
//	attempt.go    the attempts of a history, each with whose numbers it has
//	sheet.go, clock.go, cache.go      one student's work, computed or remembered
//	report.go, tally.go     the class's work; where it goes wrong
//	text.go, csv.go, html.go, json.go, results.go, xapi.go   a report on the way out
//	show.go, accept.go      one page, and a line that the teacher takes as right
//	watch.go                a lab, live
//	remark.go               what a teacher should look at
//	sentences.go            every sentence
//
// Nothing that comes from a file is believed: completion is what re-marks, and
// what does not fit is told, neither hidden nor called by a bad name.
package class

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
	if len(found) == 1 && who != "" {
		return found[0], true
	}
	return s, false
}

// Called returns a student's name, or the id where the list has none.
func (c *Class) Called(id string) string {
	for _, s := range c.Students {
		if problems.Fold(s.ID) == problems.Fold(id) && s.Name != "" {
			return shown(s.Name)
		}
	}
	return shown(id)
}
