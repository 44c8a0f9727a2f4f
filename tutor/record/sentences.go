package record

import (
	"errors"
	"strings"
)

// sentences is everything that this package says to a student. %s is the file.
func sentences() map[error]string {
	return map[error]string{
		ErrUnopenable: "The record %s cannot be opened. It is left as it is.",
		ErrNewer:      "The record %s was written by a newer version of this program. It is left as it is.",
		ErrNotRecord:  "The file %s is not a Standstill record. It is left as it is.",
		ErrDamaged:    "The record %s is damaged. It is left as it is.",
		ErrBusy:       "The record %s is in use by another program, which has not released it.",
		ErrFull:       "The disk that holds the record %s is full. What was kept before is safe; the last entry is not kept.",
		ErrDisk:       "The disk that holds the record %s cannot be read or written, or has no room left. The last entry is not kept.",
		ErrReadOnly:   "The record %s can be read but not written. What was kept before is safe; the last entry is not kept.",
		ErrMoved:      "The record %s was moved or deleted while it was in use. The last entry is not kept.",
		ErrTooLong:    "The text is longer than the record keeps (65,536 letters of the plain alphabet).",
		ErrTooLarge:   "The file %s is larger than a record that can be taken in (one gigabyte).",
		ErrMalformed:  "The entry does not have the form that the record keeps.",
		ErrUnknown:    "What was asked for is not in the record %s.",
		ErrTaken:      "You are connected from another window now, which has taken over.",
		ErrAway:       "The database %s does not answer.",
		ErrOlder:      "The database %s was made for an older version of this program, or not made for it yet. Whoever looks after it runs the command standstill record migrate.",
		ErrStopped:    "The record %s was not free in time.",
	}
}

// unopenable says more about ErrUnopenable where the cause is known.
func unopenable(err error) string {
	switch {
	case errors.Is(err, errPassword):
		return "The address of the database %s holds a password, which others on this machine can see. Put it into the file that PGPASSFILE names (~/.pgpass)."
	case errors.Is(err, errAddress):
		return "The address %s is not that of a database. It looks like postgres://user@host/database."
	case errors.Is(err, errNoFile):
		return "The record %s cannot be opened: it is a folder or a device, not a file."
	case errors.Is(err, errNoHome):
		return "There is no folder for the record, because neither STANDSTILL_DATA nor HOME is set. Name a file with --record."
	case noRight(err):
		return "The record %s cannot be opened: this account has no right to write there. It is left as it is."
	case noWriting(err):
		return "The record %s can be read but not written, so nothing new can be kept. It is left as it is."
	}
	return sentences()[ErrUnopenable]
}

// Sentence says in whole sentences, for a student, what an error of this
// package means. The name of the file stands in it as it is.
func Sentence(err error) string {
	kind, path := kindOf(err), ""
	if e, ok := errors.AsType[*Error](err); ok {
		path = e.Path
	}
	text, known := sentences()[kind]
	switch {
	case kind == ErrUnopenable:
		text = unopenable(err)
	case !known:
		text = "The record %s cannot be used."
	}
	if path != "" {
		path = " " + path
	}
	return strings.Replace(text, " %s", path, 1)
}
