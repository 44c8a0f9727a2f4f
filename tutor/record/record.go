// Package record knows how every answer that was checked is saved.
//
// A record is one SQLite file of entries, or a book in a PostgreSQL database: what
// happened, never what was thought of it. Start reading at [Entry], then
// [Record.Append] and [Record.Entries]. Texts are stored as they came: who shows
// them must mind control characters.
//
//	entry.go, draft.go              an entry, and a half-typed line that is none
//	record.go, queue.go             a record in use: turns, transactions, the entries that wait for a commit
//	open.go, path.go                how a file is found and told to be ours before anything is written to it
//	schema.go, migrations/          the tables of a file; postgres/ those of a database
//	sqlite.go, postgres.go          the two stores; statement.go one text of a statement for both
//	read.go, counts.go, shared.go   entries that are read, counted, or stand under several names
//	students.go, keep.go            students and settings; problem files and cached values
//	lease.go, door.go               which visit of a student counts, and how a student proves who it is
//	merge.go, copy.go, foreign.go   entries of other records
//	forget.go, operator.go          what is deleted, and who did it
//	holds.go                        whether what was saved is still there
//	trouble.go, sentences.go        what can be the matter, and how it is said
package record

import (
	"context"
	"crypto/rand"
	"database/sql"
	"errors"
	"io"
	"os"
	"sync/atomic"
	"time"
)

// Options are the things that a record takes from outside. The zero value
// works.
type Options struct {
	// Now is the clock; time.Now if nil.
	Now func() time.Time
	// Random is where ids come from; crypto/rand if nil.
	Random io.Reader
	// Wait is how long a call waits while other programs write to the same
	// file, before it gives up with [ErrBusy]; 30 seconds if zero.
	Wait time.Duration
	// Book is which of the books of a database is meant, the code of a class for one; it
	// says nothing about a file.
	Book string
	// Host is what this machine is called in a database; its own name if empty.
	Host string
}

func (o Options) withDefaults() Options {
	if o.Now == nil {
		o.Now = time.Now
	}
	if o.Random == nil {
		o.Random = rand.Reader
	}
	if o.Wait == 0 {
		o.Wait = 30 * time.Second
	}
	return o
}

// A Record is one open file of entries. It may be used by several goroutines
// and the file by several programs at once.
//
// Errors are of type [*Error] and match one of the Err values of this package
// with errors.Is; [Sentence] says them to a student.
type Record struct {
	*file
	current func() context.Context // see Within
	last    *atomic.Pointer[Entry] // what was appended last through this handle
	lease   *Lease                 // of the visit that uses this handle
}

// A file is what all handles of one record share.
type file struct {
	path    string
	id      string
	foreign bool
	dialect dialect
	options Options
	info    os.FileInfo // as it was opened; nil in memory
	queue   queue
	doors   doorFile

	// One connection for life: limits and pragmas belong to a connection, and
	// a record in memory is its connection. Whoever uses it has put a value into
	// turn and takes it out again; a mutex could not be left waiting for.
	turn chan struct{}
	db   *sql.DB
	conn *sql.Conn // nil where db is a database server's
}

func (f *file) isDatabase() bool { return f.conn == nil }

func (f *file) translate(statement string, args []any) (string, []any) {
	return f.dialect.translate(statement, args)
}

func (f *file) readAll(rows *sql.Rows, each func(scan) error) error {
	return f.dialect.readAll(rows, each)
}

func newRecord(path string, db *sql.DB, conn *sql.Conn) *Record {
	f := &file{path: path, db: db, conn: conn, turn: make(chan struct{}, 1)}
	return &Record{file: f, current: context.Background, last: new(atomic.Pointer[Entry])}
}

// Within gives a second handle of the same open record. A call on it asks for the
// context that it has to end with when it begins, and gives up with [ErrStopped] once
// that is done: nothing was kept then. So a lesson hands its context to all that it does
// with the record, and what waits can be left.
func (r *Record) Within(current func() context.Context) *Record {
	return &Record{r.file, current, new(atomic.Pointer[Entry]), r.lease}
}

// ID is the random name that the record got when it was made: 32 hexadecimal
// digits.
func (r *Record) ID() string { return r.id }

// Path is the file from the root on; empty for a record in memory.
func (r *Record) Path() string { return r.path }

// IsAt says whether the path leads to the file of this record. Nobody but the
// record may open its file in this process: closing it again would let go of
// the locks that keep other programs out.
func (r *Record) IsAt(path string) bool {
	own, err := os.Stat(r.path)
	if err != nil {
		return false
	}
	other, err := os.Stat(path)
	return err == nil && os.SameFile(own, other)
}

// MayWrite says whether entries can be added: not to a foreign record, nor to a database
// that this program may only read.
func (r *Record) MayWrite() bool { return !r.foreign }

// Now is the time by the record's clock, which is that of its entries.
func (r *Record) Now() time.Time { return r.options.Now() }

// Close lets go of the file. Everything appended is on disk already. Close
// may be called twice.
func (r *Record) Close() error {
	// Not while another goroutine is in the middle of a commit.
	r.turn <- struct{}{}
	defer r.give()
	if r.conn != nil {
		r.conn.Close()
	}
	return r.db.Close()
}

// give ends the turn of whoever uses the connection.
func (f *file) give() { <-f.turn }

// take waits for the turn to use the connection.
func (f *file) take(ctx context.Context) error {
	// A free turn is taken even if the context is done; one select of both would choose by chance.
	select {
	case f.turn <- struct{}{}:
		return nil
	default:
	}
	select {
	case f.turn <- struct{}{}:
		return nil
	case <-ctx.Done():
		return ErrStopped
	}
}

// pause is how long SQLite asks on its own whether another program has let go of the
// file. Its own pauses get longer and longer, so that a program that writes on and on
// would keep others from their turn for seconds; beginning again with the shortest gives
// all about the same chance. Between two tries others of this process may read.
const pause = 80 * time.Millisecond

// patiently does something with the store, again and again while another program holds
// the file or the database is away, until Options.Wait is over or the context done.
func (r *Record) patiently(do func(ctx context.Context, on reader) error) error {
	ctx := r.current()
	for until := time.Now().Add(r.options.Wait); ; {
		err := r.once(ctx, do)
		switch {
		case !passes(err):
			return err
		case ctx.Err() != nil:
			return ErrStopped
		case !time.Now().Before(until):
			return err
		}
		r.rest(ctx, err)
	}
}

// once does something in its turn. A connection of SQLite's takes no context: it would
// start a goroutine for each query.
func (r *Record) once(ctx context.Context, do func(context.Context, reader) error) error {
	if r.isDatabase() {
		try, cancel := context.WithTimeout(ctx, longestTry)
		defer cancel()
		return do(try, r.db)
	}
	if err := r.take(ctx); err != nil {
		return err
	}
	defer r.give()
	return do(context.Background(), r.conn)
}

// longestTry is how long a server may take to answer before it is asked again.
const longestTry = 5 * time.Second

// passes tells what may be over in a moment: another program, or a server that is
// started again.
func passes(err error) bool { return isKind(err, ErrBusy) || isKind(err, ErrAway) }

// rest waits between two tries at a server that does not answer; SQLite has waited
// already.
func (r *Record) rest(ctx context.Context, err error) {
	if !r.isDatabase() {
		return
	}
	select {
	case <-ctx.Done():
	case <-time.After(200 * time.Millisecond):
	}
}

// reader is what queries are run on: a connection, or any of several.
type reader interface {
	QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error)
	QueryRowContext(ctx context.Context, query string, args ...any) *sql.Row
}

// queryRow runs a query that gives one row and scans it. Without a row the
// error is sql.ErrNoRows.
func (r *Record) queryRow(query string, args []any, into ...any) error {
	query, args = r.translate(query, args)
	return r.patiently(func(ctx context.Context, on reader) error {
		return scanned(r.dialect.scanned(on.QueryRowContext(ctx, query, args...).Scan, into))
	})
}

// query calls each for every row. The rows are read to the end before other
// calls go on, so each must be quick and must not use the record.
func (r *Record) query(query string, args []any, each func(scan) error) error {
	query, args = r.translate(query, args)
	return r.patiently(func(ctx context.Context, on reader) error {
		rows, err := on.QueryContext(ctx, query, args...)
		if err != nil {
			return err
		}
		return r.readAll(rows, each)
	})
}

type scan func(into ...any) error

// scanned hides what a value of the wrong type looked like: the error of
// database/sql quotes it, however long and whatever it is.
func scanned(err error) error {
	if err == nil || errors.Is(err, sql.ErrNoRows) || resultCode(err) != 0 || kindOf(err) != nil {
		return err
	}
	return ErrDamaged
}

// write runs do in a transaction, which is on disk when write returns nil and has left
// no trace of do when it does not. In a file others share the commit. A server may have
// taken a transaction although it could not say so: do may run again then, and has to
// come to the same.
func (r *Record) write(do func(*tx) error) error {
	if r.foreign {
		return &Error{Kind: ErrReadOnly, Path: r.path}
	}
	if r.isDatabase() {
		return r.fault(r.inTransaction(do))
	}
	w := &waiting{do: do, done: make(chan struct{})}
	r.queue.add(w)
	return r.fault(r.settle(w))
}

func (r *Record) inTransaction(do func(*tx) error) error {
	until := time.Now().Add(r.options.Wait)
	return r.patiently(func(ctx context.Context, on reader) error {
		t, err := r.begin(ctx, on)
		if err != nil {
			return err
		}
		return r.finish(r.current(), until, t, do(t))
	})
}

func (f *file) begin(ctx context.Context, on reader) (*tx, error) {
	t, err := on.(interface {
		BeginTx(context.Context, *sql.TxOptions) (*sql.Tx, error)
	}).BeginTx(ctx, nil)
	return &tx{t, f.dialect, ctx}, err
}

// finish commits a transaction, or takes it back if something went wrong in it.
func (f *file) finish(ctx context.Context, until time.Time, t *tx, err error) error {
	if err != nil {
		t.Rollback()
		return err
	}
	if err = t.Commit(); f.isDatabase() || err == nil {
		return err
	}
	// A commit that finds readers in its way leaves SQLite's transaction open. It is
	// tried again; given up, it must be ended here, or the next commit would bring what
	// the caller was told is not kept.
	for isKind(err, ErrBusy) && ctx.Err() == nil && time.Now().Before(until) {
		_, err = f.conn.ExecContext(context.Background(), "COMMIT")
	}
	if err != nil {
		f.conn.ExecContext(context.Background(), "ROLLBACK")
	}
	return err
}
