package record

import (
	"errors"
	"strings"
)

// sentences is everything that this package says to a student. %s is the file.
func sentences() map[error]string {
	return map[error]string{
		ErrUnopenable: "The record %s cannot be opened. The record was not changed.",
		ErrNewer:      "The record %s was written by a newer version of this program. The record was not changed.",
		ErrNotRecord:  "The file %s is not a Standstill record. The file was not changed.",
		ErrDamaged:    "The record %s is damaged. The record was not changed.",
		ErrBusy:       "The record %s cannot be used now, because another program is using it.",
		ErrFull:       "The disk with the record %s is full. Earlier entries are safe, but the last entry was not saved.",
		ErrDisk:       "The disk with the record %s cannot be read or written, or is full. The last entry was not saved.",
		ErrReadOnly:   "The record %s can be read but not changed. Earlier entries are safe, but the last entry was not saved.",
		ErrMoved:      "The record %s was moved or deleted while it was in use. The last entry was not saved.",
		ErrTooLong:    "The text is too long for the record. The limit is 65,536 characters.",
		ErrTooLarge:   "The file %s is too large. The limit for a record is one gigabyte.",
		ErrMalformed:  "The entry is not valid, so it was not added to the record.",
		ErrUnknown:    "The record %s does not contain this entry or this student.",
		ErrTaken:      "You are now connected from another window, so the lesson in this window has stopped.",
		ErrAway:       "The database %s is not available.",
		ErrOlder:      "The database %s was set up for an older version of this program, or has not been set up yet. The owner of the database has to run the command standstill record migrate.",
		ErrStopped:    "Another program used the record %s for too long. Try again.",
	}
}

// unopenable says more about ErrUnopenable where the cause is known.
func unopenable(err error) string {
	switch {
	case errors.Is(err, errPassword):
		return "The address of the database %s contains a password. Other users of this machine can see the address, so put the password into the file that PGPASSFILE names (~/.pgpass)."
	case errors.Is(err, errAddress):
		return "The address %s is not the address of a database. The address has the form postgres://user@host/database."
	case isMistrusted(err):
		return "The certificate of the database %s cannot be verified. Put the root certificate of the database's owner into ~/.postgresql/root.crt, or name the certificate file with sslrootcert=FILE in the address."
	case isUnencrypted(err):
		return "The database server for %s does not encrypt connections, so nothing was sent. Ask the administrator of the server to turn on encryption."
	case serverSays(err, "28"):
		return "The database %s does not accept this user. Check the user name in the address and the password in the file that PGPASSFILE names (~/.pgpass)."
	case serverSays(err, "3D"):
		return "There is no database %s on the server."
	case errors.Is(err, errNoFile):
		return "The record %s cannot be opened, because it is a folder or a device, not a file."
	case errors.Is(err, errNoHome):
		return "There is no folder for the record, because neither STANDSTILL_DATA nor HOME is set. Give the path of the record file with --record."
	case noRight(err):
		return "The record %s cannot be opened, because this account is not allowed to write to the record's folder. The record was not changed."
	case noWriting(err):
		return "The record %s can be read but not changed, so nothing new can be saved."
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
