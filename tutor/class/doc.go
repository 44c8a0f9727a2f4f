// Package class knows the teacher's side: what students hand in, and what it comes to.
//
// A class is read from a file by package classfile. Students hand in what they did
// (HandIn.File); a Markbook takes that in (Markbook.Collect), marks every answer
// again against the student's own copy and sums up (Markbook.Report); package summary
// tells it. How it hangs together:
//
//	handin.go, handed.go    one student's entries as a file, and back
//	search.go, collect.go, note.go   hand-ins and whole records → the class's record; limits.go how much of them
//	markbook.go, owner.go   the class with all that was collected; whose an entry is
//	forget.go     a student whose work is deleted
//	attempt.go    the attempts of a history, each with whose numbers it has; variants.go entries in several versions
//	sheet.go, ideas.go, clock.go, cache.go   one student's work, computed or remembered
//	report.go, tally.go     the class's work; where it goes wrong
//	xapi.go                 every line as a statement for a learning record store
//	show.go, accept.go      one page, and a line that the teacher takes as right
//	watch.go                a lab, live
//	remark.go     how what a teacher should look at is gathered; taken.go what came of the files that were collected
//	sentences.go            every sentence
//
// Nothing that comes from a file is believed: completion is what re-marks, and
// what does not fit is told, neither hidden nor called by a bad name.
package class
