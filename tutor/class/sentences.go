package class

import (
	"errors"
	"fmt"
	"strings"

	"example.org/standstill/tutor/class/classfile"
)

// What is said about a file that cannot be taken in.
const (
	saidNoRight   = "This account is not allowed to read the file."
	saidNotOpened = "The file cannot be read."
	saidNeither   = "The file is neither a hand-in nor a record."
)

func saidHandIn(err error) string {
	switch {
	case errors.Is(err, errNewerForm):
		return "The file was written by a newer version of this program, and this version cannot read it."
	case errors.Is(err, errTooLarge):
		return "The file is too large for a hand-in, so it was ignored."
	}
	return saidUnreadable(err)
}

// saidClockFlag marks the time of a statement that cannot be.
const saidClockFlag = "the student's machine gave this time, which cannot be right"

// What is said of files and students when they are collected.
const (
	saidNobodyToGive = "there is no student %q in the class, or several students have this name"
	saidFaultOfFile  = "This file could not be read because of an error in Standstill (%v). The other files were read."
	saidAside        = " %s is not on the class list, so these entries are not counted. To count the entries as a student's work, type: standstill class collect FILE --as STUDENT."
	saidForgotten    = " Entries skipped because the student was deleted: %d. To count these entries, collect the file again with --again."
	saidTooLong      = " Entries skipped because the answers are too long: %d."
)

func saidWhoseRecord(from string, names []string) string {
	for i := range names {
		names[i] = classfile.Shown(names[i])
	}
	if from != "" {
		return fmt.Sprintf("The file contains no work by %s. It contains work by %s.", classfile.Shown(from), strings.Join(names, ", "))
	}
	return fmt.Sprintf("The file contains the work of several students. Choose one student with --from: %s.", strings.Join(names, ", "))
}

// What is said about files that were collected.
const (
	saidOthers     = "Other files, which were ignored: %d."
	saidCollected  = "New entries: %d. Entries that were collected before: %d."
	saidTruncated  = " The end of the file is missing. The lines that can be read were used."
	saidUnread     = " Lines that are not entries: %d; the first is line %d."
	saidElsewhere  = " Entries skipped because the students are not on the list: %d."
	saidBesides    = " Entries skipped because they belong to another student: %d."
	saidRefused    = " Entries skipped because they are not valid: %d."
	saidOtherClass = " The file was made with a different number key, %s."
)

// What is said of a page that is shown.
const (
	saidNothingDone   = "%s has not started %s."
	saidStands        = "Status: %s."
	saidHalfTyped     = "Typed but not checked: %s"
	saidRevealed      = "the student looked at the worked solution"
	saidShowAlone     = "This work does not count, because its numbers do not come from this class."
	saidShowOthers    = "This work does not count, because its numbers belong to %s."
	saidShowNobodys   = "This work does not count, because no student in the class has these numbers."
	saidShowLost      = "These entries also arrived under the name of %s. The numbers belong to that student, so the entries count only for that student."
	saidShowTied      = "These entries also arrived under the name of another student, and it is not clear whose work this is. The entries do not count until you collect the file again with --as and the student's name."
	saidShowVersion   = "This work does not count, because the problem file does not belong to this class."
	saidShowNotMarked = "This work was not marked, because there is too much of it."
	saidShowFaulty    = "This work could not be marked because of an error in Standstill."
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
