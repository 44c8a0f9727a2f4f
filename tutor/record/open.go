package record

import (
	"cmp"
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"time"
)

// checkedSize is up to which size a record is read through when it is opened.
// Sixteen megabytes, some sixty thousand entries, take about twenty
// milliseconds; in a larger file damage shows when it is met.
const checkedSize = 16 << 20

// Open opens the record at path, and makes it, readable for its owner alone,
// where there is none. It comes back with a record that can be written to, or
// with an error that says why not: [ErrUnopenable], [ErrNewer],
// [ErrNotRecord], [ErrDamaged], [ErrBusy] or [ErrFull]. In these cases the file
// is left as it is.
//
// A path may also be the address of a database, see [IsDatabase]: then the record is the
// book that the options name, and [ErrOlder] and [ErrAway] may come as well.
func Open(path string, o Options) (*Record, error) {
	if IsDatabase(path) {
		return openDatabase(path, o.withDefaults())
	}
	r, err := open(path, o.withDefaults())
	if err != nil {
		return nil, opening(path, err)
	}
	return r, nil
}

func open(path string, o Options) (*Record, error) {
	path, err := whole(path)
	if err != nil {
		return nil, err
	}
	size, err := place(path)
	if err != nil {
		return nil, err
	}
	// What is not ours must not even be opened for writing. What the probe
	// cannot read may be half-way in another program's commit: SQLite with
	// its locks decides.
	if size > 0 {
		if err := probe(path); isKind(err, ErrNotRecord) || isKind(err, ErrNewer) {
			return nil, err
		}
	}
	r, err := connectPatiently(path, o.Wait)
	if err != nil {
		return nil, err
	}
	r.options = o
	if r.info, err = os.Stat(path); err != nil {
		r.Close()
		return nil, err
	}
	if err := r.makeReady(size); err != nil {
		r.Close()
		return nil, err
	}
	return r, nil
}

// connectPatiently tries again while another program is in the middle of a commit.
func connectPatiently(path string, wait time.Duration) (*Record, error) {
	for until := time.Now().Add(wait); ; {
		r, err := connect(path, readWrite, ownPragmas())
		if !isKind(err, ErrBusy) || !time.Now().Before(until) {
			return r, err
		}
	}
}

// OpenMemory gives an empty record that is gone after Close, for going on
// where no file can be kept.
func OpenMemory(o Options) (*Record, error) {
	r, err := connect("", inMemory, ownPragmas())
	if err != nil {
		return nil, opening("", err)
	}
	r.options = o.withDefaults()
	if err := r.makeReady(0); err != nil {
		r.Close()
		return nil, opening("", err)
	}
	return r, nil
}

// place makes the folder and an empty file where there are none, and gives the
// size of the file. An existing file is not opened: to close it again would
// let go of the locks that this process holds on it.
func place(path string) (size int64, err error) {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return 0, &Error{Kind: ErrUnopenable, Path: path, Cause: err}
	}
	file, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o600)
	if err == nil {
		return 0, file.Close()
	}
	return regularSize(path, err)
}

// whole is the path from the root on. A bare error of the system, which Windows gives here,
// would be taken for one of a network.
func whole(path string) (string, error) {
	abs, err := filepath.Abs(path)
	if err != nil {
		return "", &Error{Kind: ErrUnopenable, Path: path, Cause: err}
	}
	return abs, nil
}

var errNoFile = errors.New("it is a folder or a device")

// regularSize gives the size of a file; without a file, why is the cause.
func regularSize(path string, why error) (int64, error) {
	info, err := os.Stat(path)
	if err != nil {
		return 0, &Error{Kind: ErrUnopenable, Path: path, Cause: cmp.Or(why, err)}
	}
	if !info.Mode().IsRegular() {
		return 0, &Error{Kind: ErrUnopenable, Path: path, Cause: errNoFile}
	}
	return info.Size(), nil
}

// makeReady goes from reading to writing, so that what is found on the way
// keeps the next step from being done.
func (r *Record) makeReady(size int64) error {
	if 0 < size && size <= checkedSize {
		if err := r.checkWhole(); err != nil {
			return err
		}
	}
	if err := r.migrate(); err != nil {
		return err
	}
	if err := r.findTables(); err != nil {
		return err
	}
	if err := r.tryWriting(); err != nil {
		return err
	}
	return r.readID()
}

// findTables finds out now, and not when something is to be kept, that a table
// is missing.
func (r *Record) findTables() error {
	for _, table := range []string{
		columns + " FROM entry", "id, name FROM student", "hash, id, text FROM problem",
		"key, value FROM setting", "key, value FROM cache",
	} {
		if err := r.query("SELECT "+table+" LIMIT 0", nil, nil); err != nil {
			return err
		}
	}
	return nil
}

func (r *Record) readID() error {
	err := r.queryRow("SELECT lower(hex(id)) FROM record WHERE one = 1", nil, &r.id)
	if err == nil && !isID(r.id) {
		return ErrDamaged
	}
	return err
}

// tryWriting finds out whether the file and its folder let us write, and takes
// it back before anything reaches the file. Writing what is there already
// would be no trial: SQLite leaves such a page alone.
func (r *Record) tryWriting() error {
	err := r.inTransaction(func(t *tx) error {
		result, err := t.exec("UPDATE record SET last = last + 1")
		if err == nil {
			err = oneRow(result)
		}
		return cmp.Or(err, errTried)
	})
	if err == errTried {
		return nil
	}
	return err
}

// errTried takes back a trial that went well.
var errTried = errors.New("tried")

func oneRow(result sql.Result) error {
	if n, err := result.RowsAffected(); err != nil || n != 1 {
		return cmp.Or(err, ErrDamaged)
	}
	return nil
}
