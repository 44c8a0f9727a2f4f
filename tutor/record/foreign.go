package record

import (
	"encoding/binary"
	"io"
	"os"

	sqlite3 "modernc.org/sqlite/lib"
)

// MaxForeign is how many bytes another record may have to be opened.
const MaxForeign = 1 << 30

// OpenForeign opens a record that somebody handed in, to be read only: all
// writing on it gives [ErrReadOnly]. It must not be a record that this process
// has open, see [Record.IsAt]. The file may be on a disk that cannot be
// written, and it is not trusted: it must have our tables and nothing beside
// them, and be sound in itself, before anything is read from it. Nothing is
// written, neither into the file nor beside it.
//
// Errors are those of [Open] and [ErrTooLarge]. What a field of an entry says
// is as it was handed in.
func OpenForeign(path string) (*Record, error) {
	r, err := openForeign(path)
	if err != nil {
		return nil, opening(path, err)
	}
	return r, nil
}

func openForeign(path string) (*Record, error) {
	path, err := whole(path)
	if err != nil {
		return nil, err
	}
	size, err := regularSize(path, nil)
	switch {
	case err != nil:
		return nil, err
	case size == 0:
		return nil, ErrNotRecord
	case size > MaxForeign:
		return nil, ErrTooLarge
	}
	if err := checkHeader(path); err != nil {
		return nil, err
	}
	r, err := openForeignAs(path, readOnly)
	if err != nil && readableAsItIs(err) {
		return openForeignAs(path, immutable)
	}
	return r, err
}

// readableAsItIs tells the errors that come from what is around the file: no
// locks to be had, or a journal that was left behind. The journal of a foreign
// record is never played back, not even into a copy: it may name any other
// file of ours to be deleted when it is done.
func readableAsItIs(err error) bool {
	code := resultCode(err)
	switch code & 0xff {
	case sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_IOERR, sqlite3.SQLITE_PROTOCOL:
		return true
	}
	return code == sqlite3.SQLITE_READONLY_ROLLBACK
}

// checkHeader looks at the first bytes of a file before SQLite may. A file that
// asks for a write-ahead log is refused: no record does, and SQLite would make
// two files beside it, even for reading. So is one whose list of tables is
// longer than a page: SQLite reads that list before all else, and takes hours
// over one of millions. (A longer list of our own would need another bound.)
func checkHeader(path string) error {
	file, err := os.Open(path)
	if err != nil {
		return &Error{Kind: ErrUnopenable, Path: path, Cause: err}
	}
	defer file.Close()
	// The header has 100 bytes; the next one is the kind of the first page, where the list of tables is.
	h := make([]byte, 101)
	if _, err := io.ReadFull(file, h); err != nil {
		return ErrNotRecord
	}
	const rollback, leaf = "\x01\x01", 0x0d
	if string(h[:16]) != "SQLite format 3\x00" || string(h[18:20]) != rollback {
		return ErrNotRecord
	}
	// The application id and the user version, at their places in the file format.
	if err := known(int(binary.BigEndian.Uint32(h[68:])), int(int32(binary.BigEndian.Uint32(h[60:])))); err != nil {
		return err
	}
	if h[100] != leaf {
		return ErrNotRecord
	}
	return nil
}

func openForeignAs(path, mode string) (*Record, error) {
	r, err := connect(path, mode, foreignPragmas())
	if err != nil {
		return nil, err
	}
	r.foreign = true
	if err := r.trust(); err != nil {
		r.Close()
		return nil, err
	}
	return r, nil
}

// trust looks at everything in the file before anything in it is used.
func (r *Record) trust() error {
	if err := r.setLimits(foreignLimits()); err != nil {
		return err
	}
	if err := r.compareSchema(); err != nil {
		return err
	}
	if err := r.checkWhole(); err != nil {
		return err
	}
	return r.readID()
}

type object struct{ kind, name, table, statement string }

// compareSchema holds the tables and indexes of the file, to the letter,
// against those that the migrations make. So there is no view, trigger,
// check or computed column in it that is not ours.
// A record of an older version has the tables of that version; what is read from
// them is the same in all versions.
func (r *Record) compareSchema() error {
	var version int
	if err := r.queryRow("PRAGMA user_version", nil, &version); err != nil {
		return err
	}
	model, err := openModel(version)
	if err != nil {
		return err
	}
	defer model.Close()
	var want []object
	if err := model.objects(func(o object) error {
		want = append(want, o)
		return nil
	}); err != nil {
		return err
	}
	n := 0
	err = r.objects(func(o object) error {
		if n == len(want) || o != want[n] {
			return ErrNotRecord
		}
		n++
		return nil
	})
	if err == nil && n < len(want) {
		return ErrNotRecord
	}
	return err
}

// openModel makes an empty record as it was at a version.
func openModel(version int) (*Record, error) {
	r, err := connect("", inMemory, ownPragmas())
	if err != nil {
		return nil, err
	}
	r.options = Options{}.withDefaults()
	if err := r.migrateTo(version); err != nil {
		r.Close()
		return nil, err
	}
	return r, nil
}

func (r *Record) objects(each func(object) error) error {
	const query = `SELECT type, name, tbl_name, coalesce(sql, '') FROM sqlite_schema ORDER BY name, type`
	return r.query(query, nil, func(scan scan) error {
		var o object
		if err := scan(&o.kind, &o.name, &o.table, &o.statement); err != nil {
			return err
		}
		return each(o)
	})
}
