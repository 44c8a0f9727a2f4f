// Package summary knows how the work of a class is told at one moment: to a teacher who
// reads, and to other programs.
//
// Start with Report, which package class computes. How it goes out:
//
//	text.go, html.go   to be read, on a terminal and as a page
//	csv.go, json.go    as a table and as data
//	results.go         as OneRoster results for a school's gradebook
//	remark.go          what a teacher should look at
//	ideas.go           how far students have come with ideas
//	sentences.go       every sentence of it
//
// Codes are for programs and words for people; a number that is in two of the forms is the
// same in both.
package summary

import (
	"slices"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/classfile"
)

// Report is what a class's work comes to at one moment.
type Report struct {
	Name, Code string
	At         time.Time
	Work       []Column
	Students   []Row
	Stuck      []StuckRow // who gets no further now, first who had most refusals and hints
	ByStage    []Tally    // mistakes, first those of most students
	ByProblem  []Tally
	Disputed   []DisputedRow
	Ideas      []IdeaColumn
	Remarks    []Remark
	Entries    int
	Roster     classfile.Roster
}

// Column is one set problem with how many students have come how far.
type Column struct {
	problems.Heading
	Due      time.Time
	Weight   float64                   // in the share of the work that is done
	Students [tutor.RightFirst + 1]int // by status
	Spent    time.Duration             // the middle of those who are done
}

// Row is one student; Cells has a cell for each set problem, in order.
type Row struct {
	ID, Name string
	Cells    []Cell
	Spent    time.Duration
	Entries  int
	Beside   int
	Share    float64 // of the work that is done, by weight, from 0 to 1
	Ideas    []Understanding
}

// Cell is how one student stands with one problem.
type Cell struct {
	Status     tutor.Status
	Late       bool // done after the date
	Overdue    bool // not done, and the date is past
	Days       int  // late or overdue, begun ones counted
	Attempts   int
	Items      int
	RightFirst int
	Lines      int
	Refused    int
	Hints      int
	Shown      int
	Spent      time.Duration
	Begun      time.Time
	Last       time.Time
	Done       time.Time
	Stage      checker.Stage
	Item       string
}

// StuckRow is a student who gets no further with a problem.
type StuckRow struct {
	Student, Name string
	Problem       string
	Stage         checker.Stage
	Item          string
	Last          time.Time
	Stuck
}

// DisputedRow is a line that waits for the teacher's word, or has it.
type DisputedRow struct {
	Student, Name string
	DisputedLine
}

// Tally is how often a kind of mistake was made, by how many students, with one
// line as typed. Stage is empty where a tally is of a whole problem, Problem where
// it is of a stage.
type Tally struct {
	Stage    checker.Stage
	Problem  string
	Code     checker.Code
	Count    int
	Students int
	Who      []string // their ids
	Line     string
}

// isWeighted reports whether some problem counts more than another.
func (r *Report) isWeighted() bool {
	return slices.ContainsFunc(r.Work, func(c Column) bool { return c.Weight != r.Work[0].Weight })
}

// Stuck is what happened at the item in hand since a line last counted there.
type Stuck struct {
	Refused  int          `json:"refused,omitempty"`
	Hints    int          `json:"hints,omitempty"`
	AllHints bool         `json:"allHints,omitempty"`
	Line     string       `json:"line,omitempty"` // the last refused line, as typed
	Code     checker.Code `json:"code,omitempty"`
}

// DisputedLine is a line that the student disputes, or
// that a teacher accepted.
type DisputedLine struct {
	Entry    string        `json:"entry"`
	Problem  string        `json:"problem"`
	Stage    checker.Stage `json:"stage"`
	Item     string        `json:"item,omitempty"`
	Line     string        `json:"line"`
	Code     checker.Code  `json:"code,omitempty"`
	Accepted bool          `json:"accepted,omitempty"`
}
