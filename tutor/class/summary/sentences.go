package summary

import (
	"fmt"
	"strings"

	"example.org/standstill/tutor/class/classfile"
)

// The headings and sentences of a report.
const (
	saidReport    = "%s (number key %s), %s: %s, %s set, %s."
	headSet       = "Set work"
	headStudent   = "Student"
	headStudents  = "Students"
	headTime      = "  Time"
	headShare     = ", work done (weighted)"
	headStuck     = "Stuck now"
	headByStage   = "Mistakes by stage"
	headByProblem = "Mistakes by problem"
	headDisputed  = "Disputed lines"
	headRemarks   = "For your attention"
	saidLetters   = "F right first time, W worked out, T by trial and error, H with steps shown, D disputed, S solution shown, P in progress, - not started; * done after the due date, ! overdue."
	saidShare     = "%s: %s of the work is done (weighted)."
	saidRow       = "%s started %d of %d problems; total time %s."
	saidMore      = "… and %d more."
	saidTally     = "%s: %s, %s, %s (%s), for example %s"
	headIdeas     = "Ideas"
	saidSlipping  = "     need more practice: %s"
	saidMarks     = "s steady: right the last three times. l learning: not steady yet. ! slipping: wrong last time. n new: practised once. - not practised yet."
	saidTimeRule  = "Time is the sum of the pauses between a student's entries; a pause of more than 10 minutes counts as 10 minutes."
	saidWaits     = "not accepted yet"
	saidAccepted  = "accepted"
)

// SaidRecorded says what a report can and cannot tell.
const SaidRecorded = "This report shows only what was recorded here. Anyone who has the program can see the numbers " +
	"and the solution for any student, and students can change the files on their own machines. Only the answers count, and the program marks them again."

// String says where a student is stuck.
func (s StuckRow) String() string {
	said := fmt.Sprintf("%s: %s, %s", classfile.Shown(s.Name), s.Problem, Place(s.Stage, s.Item))
	var parts []string
	if s.Refused > 0 {
		parts = append(parts, Times(s.Refused, "wrong line"))
	}
	// “All hints” says more than their number.
	if s.AllHints {
		parts = append(parts, "used all hints")
	} else if s.Hints > 0 {
		parts = append(parts, Times(s.Hints, "hint"))
	}
	said += ": " + strings.Join(parts, ", ")
	if s.Line != "" {
		said += fmt.Sprintf("; last %s (%s)", Quoted(s.Line), s.Code.Meaning())
	}
	return said + "."
}

// SayRemark words a remark: what was found and what it means for the count, no
// more.
func SayRemark(r Remark, nameOf func(string) string) string {
	who, entries, detail := nameOf(r.Student), Entries(r.Count), classfile.Shown(r.Detail)
	// Whole sentences for one and for several, so that each stays good English.
	doNotCount, doCount, are, accept := "It does not count.", "It counts.", "is", "accepts"
	if r.Count != 1 {
		doNotCount, doCount, are, accept = "They do not count.", "They count.", "are", "accept"
	}
	if r.Problem != "" {
		entries += " on " + classfile.Shown(r.Problem)
	}
	whose := ""
	if r.Whose != "" {
		whose = nameOf(r.Whose)
	}
	switch r.Notice {
	case NumbersAlone:
		return fmt.Sprintf("%s: %s with numbers that do not come from this class. %s", who, entries, doNotCount)
	case NumbersOthers:
		return fmt.Sprintf("%s: %s with the numbers of %s. %s", who, entries, whose, doNotCount)
	case NumbersNobodys:
		return fmt.Sprintf("%s: %s with numbers that no student in the class has (%s). %s", who, entries, detail, doNotCount)
	case ProblemOther:
		return fmt.Sprintf("%s: %s, made with another version of the problem file. %s", who, entries, doNotCount)
	case TimeBackwards:
		return fmt.Sprintf("%s: %s with a time that is before the time of an earlier entry (%s). The clock may have been set back. %s", who, entries, detail, doCount)
	case TimeEarly:
		return fmt.Sprintf("%s: %s with a time from before this program existed (%s). The clock may be wrong. %s", who, entries, detail, doCount)
	case TimeLater:
		return fmt.Sprintf("%s: %s with a time that is after the time of collection (%s). The clock may be wrong. %s", who, entries, detail, doCount)
	case VerdictOther:
		return fmt.Sprintf("%s: for %s, the verdict in the file differs from the program's (%s). The program's verdict counts.", who, entries, detail)
	case EntryChanged:
		return fmt.Sprintf("%s: there are different versions of %s (%s). The earliest version counts.", who, entries, detail)
	case NumberTwice:
		return fmt.Sprintf("%s: %s with the same number as another entry in the record. The record may have been copied. %s", who, entries, doCount)
	case NumbersMissing:
		return fmt.Sprintf("%s: some entries are missing from the record (entry numbers: %s). Either these entries were deleted, or a student was deleted from the record.", who, detail)
	case EntryCopied:
		return fmt.Sprintf("%s: %s also arrived under the name of %s. The numbers belong to %s, so this work counts only for that student.", who, entries, whose, whose)
	case EntryTied:
		return fmt.Sprintf("%s: %s also arrived under another name on the class list, and it is not clear whose work this is. This work does not count until you collect the file again with --as and the student's name.", who, entries)
	case EntryUnsettled:
		return fmt.Sprintf("%s: there are different versions of %s, all saved at the same time (%s). No version counts until you accept one. Type: standstill class accept ENTRY --text TEXT.", who, entries, detail)
	case NotOnList:
		return fmt.Sprintf("%s is not on the class list: %s %s not counted. To count this work as a student's, type: standstill class collect FILE --as STUDENT.", classfile.Shown(r.Student), entries, are)
	case Given:
		return fmt.Sprintf("%s: %s arrived under the name %s. You assigned this work to this student.", who, entries, detail)
	case TooMuch:
		return fmt.Sprintf("%s: %s %s not marked, because there is too much work to mark, or because marking takes too long.", who, entries, are)
	case Acceptance:
		return fmt.Sprintf("%s: %s that %s a line but did not come from the teacher. Only the teacher can accept a line.", who, entries, accept)
	case Fault:
		return fmt.Sprintf("%s: %s could not be marked because of an error in Standstill (%s). The other entries are marked.", who, entries, detail)
	}
	// A remark that has no sentence yet is still shown.
	return fmt.Sprintf("%s: %s: %s.", who, entries, classfile.Shown(string(r.Notice)))
}
