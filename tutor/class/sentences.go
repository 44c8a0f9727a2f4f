package class

import (
	"errors"
	"fmt"
	"strings"

	"example.org/standstill/tutor/class/classfile"
)

// What is said about a file that cannot be taken in.
const (
	saidNoRight   = "This account is not allowed to read it."
	saidNotOpened = "It cannot be read."
	saidNeither   = "It is neither a hand-in nor a record."
)

func saidHandIn(err error) string {
	switch {
	case errors.Is(err, errNewerForm):
		return "It was written by a newer version of this program, and this one cannot read it."
	case errors.Is(err, errTooLarge):
		return "It is too large for a hand-in, so it was ignored."
	}
	return saidUnreadable(err)
}

// saidClockFlag marks the time of a statement that cannot be.
const saidClockFlag = "this time comes from the student's machine, and it cannot be right"

// What is said of files and students when they are collected.
const (
	saidNobodyToGive = "there is no student %q in the class, or several students match"
	saidFaultOfFile  = "It could not be read because of an error in Standstill (%v). The other files were read."
	saidAside        = " %s is not on the class list, so the entries are not counted. To count them as a student's work: class collect FILE --as STUDENT."
	saidForgotten    = " Entries skipped because the student was deleted: %d. class collect --again counts them."
	saidTooLong      = " Entries skipped because the answers are too long: %d."
)

func saidWhoseRecord(from string, names []string) string {
	for i := range names {
		names[i] = classfile.Shown(names[i])
	}
	if from != "" {
		return fmt.Sprintf("It contains nothing from %s; it contains %s.", classfile.Shown(from), strings.Join(names, ", "))
	}
	return fmt.Sprintf("It contains several students. Choose one with --from: %s.", strings.Join(names, ", "))
}

// What is said about files that were collected.
const (
	saidOthers     = "%d other files were ignored."
	saidCollected  = "Collected: %d new entries; %d were collected before."
	saidTruncated  = " The end of the file is missing; the readable part was used."
	saidUnread     = " Lines that are not entries: %d; the first is line %d."
	saidElsewhere  = " Entries skipped because the students are not on the list: %d."
	saidBesides    = " Entries skipped because they are somebody else's: %d."
	saidRefused    = " Entries skipped because their form is wrong: %d."
	saidOtherClass = " Its number key is %s."
)

// What is said of a page that is shown.
const (
	saidNothingDone   = "%s has not started %s."
	saidStands        = "Status: %s."
	saidHalfTyped     = "Typed but not checked: %s"
	saidRevealed      = "the worked solution was asked for"
	saidShowAlone     = "This does not count: the numbers do not come from this class."
	saidShowOthers    = "This does not count: these are the numbers of %s."
	saidShowNobodys   = "This does not count: nobody in the class has these numbers."
	saidShowLost      = "These entries also arrived under %s's name, and the numbers are that student's. They count for that student."
	saidShowTied      = "These entries also arrived under another student's name, and it is not clear whose they are. They count for nobody until you collect the file again with --as."
	saidShowVersion   = "This does not count: the problem file does not belong to this class."
	saidShowNotMarked = "This was not marked, because there is too much of it."
	saidShowFaulty    = "This could not be marked because of an error in Standstill."
	saidShowMeasured  = "The numbers were measured at the bench, so this is not set work."
)

// What is said while a lab is watched.
const (
	saidNoFolder = "The folder cannot be found at the moment."
	saidIdle     = "Not started: %s"
	saidInARow   = ", %d wrong in a row"
	saidAllHints = "Used all hints: %s"
	headRecent   = "Last mistakes"
)
