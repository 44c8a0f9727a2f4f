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
	"time"

	"golang.org/x/text/cases"
	"golang.org/x/text/unicode/norm"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// Class is what stands in a class file. Code chooses the numbers that students
// get: another code, other numbers.
type Class struct {
	Name     string
	Code     string
	Students []record.Student
	Work     []Set
	Settings
	Roster Roster
}

// Set is one problem that is set. A zero Due has no date; else work done later
// is late.
type Set struct {
	problems.Heading
	Due time.Time
}

// Settings are a class's choices; the zero value leaves everything to the
// program. Gravity is a value with its unit, "9.81 m/s^2", that stands where a
// problem takes the usual one; Tolerance a share, 0.02 for 2 %.
type Settings struct {
	Gravity    string
	Tolerance  float64
	NoHints    bool
	NoSolution bool
}

// fold makes one text of all ways of writing an id: the way in which drawing
// numbers compares them.
func fold(id string) string {
	return norm.NFC.String(cases.Fold().String(norm.NFC.String(strings.TrimSpace(id))))
}

// Student finds who is meant by an id, a name, or the beginning of a name that
// fits only one.
func (c *Class) Student(who string) (s record.Student, ok bool) {
	who = fold(who)
	for _, by := range []func(record.Student) bool{
		func(s record.Student) bool { return fold(s.ID) == who },
		func(s record.Student) bool { return fold(s.Name) == who },
		func(s record.Student) bool { return strings.HasPrefix(fold(s.Name), who) },
	} {
		var found []record.Student
		for _, s := range c.Students {
			if by(s) {
				found = append(found, s)
			}
		}
		if len(found) == 1 && who != "" {
			return found[0], true
		}
	}
	return s, false
}

// Called returns a student's name, or the id where the list has none.
func (c *Class) Called(id string) string {
	for _, s := range c.Students {
		if fold(s.ID) == fold(id) && s.Name != "" {
			return shown(s.Name)
		}
	}
	return shown(id)
}

// Rules are what the class sets, as the tutor takes it.
func (c *Class) Rules() tutor.Class {
	rules := tutor.Class{Code: c.Code, Name: c.Name, Students: c.Students, Gravity: c.Gravity, Tolerance: c.Tolerance,
		NoHints: c.NoHints, NoSolution: c.NoSolution}
	for _, set := range c.Work {
		rules.Work = append(rules.Work, tutor.Set{Problem: set.ID, Due: set.Due})
	}
	return rules
}
