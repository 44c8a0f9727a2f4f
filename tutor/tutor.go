// Package tutor knows how a lesson goes: which problem, which stage, what an
// answer leads to, when a hint is given and what comes next.
//
// Start with New, then Tutor.Seat for a student's Desk and Desk.Open for a
// Lesson. A Lesson is a Page that is written on: Lesson.Check judges a line and
// saves it before it returns. How it hangs together:
//
//	page.go, judge.go   the entries of a record → what stands on the page; strict.go what a class asks beyond
//	fence.go            what keeps a fault of ours in one line
//	stages.go, ask.go   what is in hand and what is asked
//	lesson.go, hint.go  what a student can do; typed.go, draft.go a text before it is checked
//	history.go, desk.go   all that one student has done, and every attempt; measured.go those of the bench
//	source.go           the problem file that an entry was made on
//	class.go, students.go what a class sets, and who practises
//	status.go, progress.go   what a page comes to, by what was right first time; the best of all attempts
//	ideas.go, past.go   ideas, which mistake spoils one, and how far a student is
//	catalogue.go, next.go   the list of problems, and what comes next
//	remark.go           what the lesson says of a line beside the judgement
//	predict.go, limit.go   the questions before the sums and after Solve
//	fading.go, lost.go  less help as ideas become steady; help for somebody who is lost
//	visit.go            what one visit of a student may do
//	whatif.go           other angles, once a problem is solved
//	words.go, sentences.go   what may be typed beside formulas; what is said; given.go, guide.go the givens and
//	                         the worked solution in words
//
// Nothing is saved but what happened: everything else is computed from the
// entries of the record by the checker, so that a lesson that was broken off
// anywhere comes back to the same place. There is no terminal here, no SQL and
// no drawing.
package tutor

import (
	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// Options are what a tutor works with. Bank and Record are needed; the zero Class is
// for students who practise alone.
type Options struct {
	Bank   *problems.Bank
	Record *record.Record
	Class  Class
	// Visitor is who practises and stays: on a machine that serves many, nobody else can
	// take the place, and nothing of the machine itself is named. nil on the student's own
	// machine.
	Visitor *record.Student
	// Told is called with each line that was saved; nil for nobody who wants to know.
	Told func(*problems.Problem, *Line)
}

// Tutor leads lessons. It holds nothing of its own, so that one may serve many
// students.
type Tutor struct {
	Options
}

// New makes a tutor.
func New(o Options) *Tutor { return &Tutor{o} }
