package class

import (
	"errors"
	"fmt"
	"strings"
)

// What is said about a file that cannot be taken in.
const (
	saidNoRight   = "It may not be read by this account."
	saidNotOpened = "It cannot be read."
	saidNeither   = "It is neither a hand-in nor a record."
)

func saidHandIn(err error) string {
	switch {
	case errors.Is(err, errNewerForm):
		return "It was written by a newer version of this program, and this one cannot read it."
	case errors.Is(err, errTooLarge):
		return "It is larger than anything that a student can hand in, so it is left alone."
	}
	return saidUnreadable(err)
}

// The headings and sentences of a report.
const (
	saidReport    = "%s (number key %s), %s: %d students, %d problems set, %d entries."
	headSet       = "Set work"
	headStudent   = "Student"
	headStudents  = "Students"
	headTime      = "  Time"
	headShare     = ", done by weight"
	headStuck     = "Stuck now"
	headByStage   = "Mistakes by stage"
	headByProblem = "Mistakes by problem"
	headKept      = "Disputed lines"
	headRemarks   = "To look at"
	saidLetters   = "F at first go, W worked out, T by trying, H with steps shown, D disputed, S solution shown, B begun, - not begun; * done after the date, ! overdue."
	saidShare     = "%s: %s of the work is done, by weight."
	saidRow       = "%s: %d of %d begun, %s in all."
	saidMore      = "… and %d more."
	saidTally     = "%s: %s, %s, %s (%s): %s"
	headIdeas     = "Ideas, from the first goes"
	saidSlipping  = "     needs it again: %s"
	saidMarks     = "s steady: the last three chances right. l learning. ! slipping: the last chance not right. n new: one chance so far. - no chance yet."
	saidTimeRule  = "Time adds up the pauses between a student's entries; of a pause of more than 10 minutes, 10 minutes count."
	saidWaits     = "not accepted so far"
	saidAccepted  = "accepted"
)

// SaidRecorded says what a report can and cannot tell.
const SaidRecorded = "A standing says what was recorded here and no more. Whoever has the program can have the numbers " +
	"and the solution of any copy, and a file on a student's own machine can be changed; what counts is what the answers come to when they are marked again."

// String says where a student is stuck.
func (s StuckRow) String() string {
	said := fmt.Sprintf("%s: %s, %s", shown(s.Name), s.Problem, place(s.Stage, s.Item))
	var parts []string
	if s.Refused > 0 {
		parts = append(parts, times(s.Refused, "line")+" refused")
	}
	if s.AllHints {
		parts = append(parts, "all hints asked for")
	} else if s.Hints > 0 {
		parts = append(parts, times(s.Hints, "hint"))
	}
	said += ": " + strings.Join(parts, ", ")
	if s.Line != "" {
		said += fmt.Sprintf("; last %s (%s)", quoted(s.Line), s.Code.Meaning())
	}
	return said + "."
}

// sayRemark words a remark: what was found and what it means for the count, no
// more.
func sayRemark(r Remark, nameOf func(string) string) string {
	who, entries, detail := nameOf(r.Student), times(r.Count, "entry"), shown(r.Detail)
	if r.Count != 1 {
		entries = fmt.Sprintf("%d entries", r.Count)
	}
	if r.Problem != "" {
		entries += " on " + shown(r.Problem)
	}
	whose := ""
	if r.Whose != "" {
		whose = nameOf(r.Whose)
	}
	switch r.Notice {
	case NumbersAlone:
		return fmt.Sprintf("%s: %s with the numbers of somebody who practises without the class. They do not count.", who, entries)
	case NumbersOthers:
		return fmt.Sprintf("%s: %s with the numbers of %s's copy. They do not count.", who, entries, whose)
	case NumbersNobodys:
		return fmt.Sprintf("%s: %s with numbers that nobody in the class has (%s). They do not count.", who, entries, detail)
	case ProblemOther:
		return fmt.Sprintf("%s: %s, made on another version of the problem file. They do not count.", who, entries)
	case TimeBackwards:
		return fmt.Sprintf("%s: %s dated before an earlier one (%s). The clock may have been put back. They count.", who, entries, detail)
	case TimeEarly:
		return fmt.Sprintf("%s: %s dated before this program existed (%s). The clock may be wrong. They count.", who, entries, detail)
	case TimeLater:
		return fmt.Sprintf("%s: %s dated after they were collected (%s). The clock may be wrong. They count.", who, entries, detail)
	case VerdictOther:
		return fmt.Sprintf("%s: %s whose verdict in the file differs from what the answer marks as (%s). What it marks as counts.", who, entries, detail)
	case EntryChanged:
		return fmt.Sprintf("%s: %s came with several contents (%s). The earlier by its own time counts.", who, entries, detail)
	case NumberTwice:
		return fmt.Sprintf("%s: %s with a number that another entry of the same record has. The record may have been copied. They count.", who, entries)
	case NumbersMissing:
		return fmt.Sprintf("%s: the entries numbered %s of the record are missing. They were deleted, or a student was forgotten there.", who, detail)
	case EntryCopied:
		return fmt.Sprintf("%s: %s came under the name of %s too. The numbers are those of %s, for whom they count.", who, entries, whose, whose)
	case EntryTied:
		return fmt.Sprintf("%s: %s came under another name of the class too, and nothing says whose they are. They count for nobody until you collect the file again with --as and the student's name.", who, entries)
	case EntryUnsettled:
		return fmt.Sprintf("%s: %s came with several contents of the same time (%s). None counts until you accept one: class accept ENTRY --text TEXT.", who, entries, detail)
	case NotOnList:
		return fmt.Sprintf("%s is not on the list: %s are kept aside. class collect --as STUDENT with the file gives them to a student.", shown(r.Student), entries)
	case Given:
		return fmt.Sprintf("%s: %s that came under the name %s. You gave them to this student.", who, entries, detail)
	case TooMuch:
		return fmt.Sprintf("%s: %s that are not marked, because there are too many or marking them takes too long.", who, entries)
	case Acceptance:
		return fmt.Sprintf("%s: %s accept or withdraw a line and are not the teacher's. They are left out.", who, entries)
	case Fault:
		return fmt.Sprintf("%s: %s could not be marked because of a fault of Standstill's own (%s). All the rest is.", who, entries, detail)
	}
	return fmt.Sprintf("%s: %s: %s.", who, entries, shown(string(r.Notice)))
}

// What keeps a student from being added to a list.
const (
	saidNoListToAdd = "the list of students in the class file is not written with one student on a line; add the student with an editor"
	saidRosterToAdd = "the students come from OneRoster files, which the next export would replace; add the student there"
	saidNoIDsToAdd  = "the list has no column for ids; add the student with an editor"
)

// saidClockFlag marks the time of a statement that cannot be.
const saidClockFlag = "the time is as the student's machine recorded it, and cannot be right"

// What is said of files and students when they are collected.
const (
	saidNobodyToGive = "there is no one student %q in the class"
	saidFaultOfFile  = "A fault of this program kept it from being read (%v). The other files are read."
	saidAside        = " %s is not on the list: the entries are kept aside. class collect --as STUDENT with this file gives them to a student."
	saidForgotten    = " Left out, because the student was forgotten: %d. class collect --again takes them in."
	saidTooLong      = " Left out, answers that are longer than a lesson takes: %d."
)

func saidWhoseRecord(from string, names []string) string {
	for i := range names {
		names[i] = shown(names[i])
	}
	if from != "" {
		return fmt.Sprintf("It holds nothing of %s; it has %s.", shown(from), strings.Join(names, ", "))
	}
	return fmt.Sprintf("It holds the work of several students or of nobody else; say with --from whose is meant: %s.", strings.Join(names, ", "))
}

// What is said about files that were collected.
const (
	saidOthers     = "%d other files were left alone."
	saidCollected  = "Collected: %d new entries; %d were here already."
	saidTruncated  = " The file breaks off; what could be read is taken."
	saidUnread     = " Lines that are no entries: %d, the first is line %d."
	saidElsewhere  = " Left out, of students who are not on the list: %d."
	saidBesides    = " Left out, of somebody else: %d."
	saidRefused    = " Left out, in a form that cannot be kept: %d."
	saidOtherClass = " It names the number key %s."
)

// What is said of a page that is shown.
const (
	saidNothingDone   = "%s has handed in nothing about %s so far."
	saidStands        = "It stands: %s."
	saidHalfTyped     = "Left half typed: %s"
	saidRevealed      = "the worked solution was asked for"
	saidShowAlone     = "This does not count: the numbers are those of somebody who practises without the class."
	saidShowOthers    = "This does not count: the numbers are those of %s's copy."
	saidShowNobodys   = "This does not count: nobody in the class has these numbers."
	saidShowLost      = "These entries came under %s's name, too, whose numbers they have. They count there."
	saidShowTied      = "These entries came under another student's name, too, and nothing says whose they are. They count for nobody until you collect the file again with --as."
	saidShowVersion   = "This does not count: the problem file is not one of this class."
	saidShowNotMarked = "This is not marked: there is too much of it."
	saidShowFaulty    = "This could not be marked because of a fault in this program."
	saidShowMeasured  = "The numbers were measured at the bench; it is no set work."
)

// What is said while a lab is watched.
const (
	saidNoFolder = "The folder is not there at the moment."
	saidIdle     = "Nothing begun: %s"
	saidInARow   = ", %d refused in a row"
	saidAllHints = "All hints asked for: %s"
	headRecent   = "Last mistakes"
)
