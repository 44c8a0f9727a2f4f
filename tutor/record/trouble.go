package record

import (
	"database/sql"
	"errors"
	"io/fs"
	"syscall"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

// What can be the matter with a record. Errors of this package match one of
// these with errors.Is, except for the rare ones that SQLite alone knows.
var (
	ErrUnopenable = errors.New("record cannot be opened")
	ErrNewer      = errors.New("record is from a newer version")
	ErrNotRecord  = errors.New("file is not a record")
	ErrDamaged    = errors.New("record is damaged")
	ErrBusy       = errors.New("record is in use")
	ErrFull       = errors.New("disk is full")
	ErrDisk       = errors.New("disk does not answer")
	ErrReadOnly   = errors.New("record cannot be written")
	ErrMoved      = errors.New("record was moved or deleted")
	ErrTooLong    = errors.New("text is too long")
	ErrTooLarge   = errors.New("record is too large")
	ErrMalformed  = errors.New("entry is malformed")
	ErrUnknown    = errors.New("not in the record")
	ErrTaken      = errors.New("the visit was taken over")
	ErrAway       = errors.New("database does not answer")
	ErrOlder      = errors.New("database is of an older version")
	ErrStopped    = errors.New("waiting for the record was stopped")
)

// An Error says what is the matter with which record.
type Error struct {
	Kind  error // one of the Err values, or nil for what is none of them
	Path  string
	Cause error // what the system or SQLite said; may be nil
}

func (e *Error) Error() string {
	text := "record"
	if e.Path != "" {
		text += " " + e.Path
	}
	if e.Kind != nil {
		text += ": " + e.Kind.Error()
	}
	if e.Cause != nil {
		text += ": " + e.Cause.Error()
	}
	return text
}

func (e *Error) Unwrap() []error {
	var chain []error
	for _, err := range []error{e.Kind, e.Cause} {
		if err != nil {
			chain = append(chain, err)
		}
	}
	return chain
}

// resultCodes says what SQLite's result codes mean for a record. An extended
// code is looked up before the plain one that it extends.
func resultCodes() map[int]error {
	return map[int]error{
		sqlite3.SQLITE_NOTADB:           ErrNotRecord,
		sqlite3.SQLITE_CORRUPT:          ErrDamaged,
		sqlite3.SQLITE_FORMAT:           ErrDamaged,
		sqlite3.SQLITE_MISMATCH:         ErrDamaged,
		sqlite3.SQLITE_CONSTRAINT:       ErrDamaged,
		sqlite3.SQLITE_ERROR:            ErrDamaged, // our statements, so: not our tables
		sqlite3.SQLITE_TOOBIG:           ErrDamaged, // longer than anything we keep
		sqlite3.SQLITE_BUSY:             ErrBusy,
		sqlite3.SQLITE_LOCKED:           ErrBusy,
		sqlite3.SQLITE_PROTOCOL:         ErrBusy,
		sqlite3.SQLITE_FULL:             ErrFull,
		sqlite3.SQLITE_IOERR:            ErrDisk,
		sqlite3.SQLITE_READONLY:         ErrReadOnly,
		sqlite3.SQLITE_CANTOPEN:         ErrReadOnly, // the journal cannot be made
		sqlite3.SQLITE_PERM:             ErrReadOnly,
		sqlite3.SQLITE_READONLY_DBMOVED: ErrMoved,
		// The writer of a foreign record ended amid a commit.
		sqlite3.SQLITE_READONLY_ROLLBACK: ErrBusy,
	}
}

// resultCode is SQLite's result code in the error, or 0.
func resultCode(err error) int {
	if e, ok := errors.AsType[*sqlite.Error](err); ok {
		return e.Code()
	}
	return 0
}

func kindOf(err error) error {
	for _, kind := range []error{ErrUnopenable, ErrNewer, ErrNotRecord, ErrDamaged, ErrBusy, ErrFull, ErrDisk,
		ErrReadOnly, ErrMoved, ErrTooLong, ErrTooLarge, ErrMalformed, ErrUnknown, ErrTaken, ErrAway, ErrOlder, ErrStopped} {
		if errors.Is(err, kind) {
			return kind
		}
	}
	if errors.Is(err, sql.ErrNoRows) {
		return ErrUnknown
	}
	if kind := serverKind(err); kind != nil {
		return kind
	}
	codes, code := resultCodes(), resultCode(err)
	if kind, ok := codes[code]; ok {
		return kind
	}
	return codes[code&0xff]
}

func isKind(err, kind error) bool { return kindOf(err) == kind }

// IsGone says whether the error means that the file of an open record is not there any
// more, or is another: what was appended before may be lost.
func IsGone(err error) bool { return isKind(err, ErrMoved) }

// IsReadOnly says whether a record could not be opened because nothing may be written
// there; [OpenForeign] may be able to read it.
func IsReadOnly(err error) bool {
	return isKind(err, ErrUnopenable) && (noRight(err) || noWriting(err))
}

// fault makes an Error of whatever went wrong with the open record.
func (r *Record) fault(err error) error { return asError(r.path, err, kindOf(err)) }

// opening makes an Error of what went wrong before the record was open: not
// being able to write, or to find the one row that every record has, means
// something else then.
func opening(path string, err error) error {
	kind := kindOf(err)
	switch kind {
	case ErrReadOnly, ErrMoved, ErrDisk:
		kind = ErrUnopenable
	case ErrUnknown:
		kind = ErrDamaged
	}
	return asError(path, err, kind)
}

func asError(path string, err, kind error) error {
	if err == nil {
		return nil
	}
	if e, ok := errors.AsType[*Error](err); ok && e.Kind == kind && e.Path != "" {
		return e
	}
	cause := err
	if err == kind {
		cause = nil
	}
	return &Error{Kind: kind, Path: path, Cause: cause}
}

// noRight says whether rights, and not the disk itself, are what is missing.
func noRight(err error) bool { return errors.Is(err, fs.ErrPermission) }

// noWriting says whether the disk or the file refuses to be written at all.
func noWriting(err error) bool {
	return errors.Is(err, syscall.EROFS) || resultCode(err)&0xff == sqlite3.SQLITE_READONLY
}
