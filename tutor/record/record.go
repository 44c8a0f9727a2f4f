// Package record knows how every answer that was handed in is kept on disk.
//
// A record is one SQLite file of entries: what happened, never what was
// thought of it. Start reading at [Entry], then [Record.Append] and
// [Record.Entries]; open.go says how a file is told to be ours before
// anything is written to it, and migrations holds the tables. Texts are
// stored as they came: who shows them must mind control characters.
package record

import (
	"context"
	"crypto/rand"
	"database/sql"
	"errors"
	"io"
	"os"
	"sync"
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
	path    string
	id      string
	foreign bool
	options Options

	// One connection for life: limits and pragmas belong to a connection, and
	// a record in memory is its connection.
	mu   sync.Mutex
	db   *sql.DB
	conn *sql.Conn
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

// Close lets go of the file. Everything appended is on disk already. Close
// may be called twice.
func (r *Record) Close() error {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.conn.Close()
	return r.db.Close()
}

// queryRow runs a query that gives one row and scans it. Without a row the
// error is sql.ErrNoRows.
func (r *Record) queryRow(query string, args []any, into ...any) error {
	r.mu.Lock()
	defer r.mu.Unlock()
	row := r.conn.QueryRowContext(context.Background(), query, args...)
	if err := row.Err(); err != nil {
		return err
	}
	return scanned(row.Scan(into...))
}

// query calls each for every row. The rows are read to the end before other
// calls go on, so each must be quick and must not use the record.
func (r *Record) query(query string, args []any, each func(scan) error) error {
	r.mu.Lock()
	defer r.mu.Unlock()
	rows, err := r.conn.QueryContext(context.Background(), query, args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	read := func(into ...any) error { return scanned(rows.Scan(into...)) }
	for rows.Next() {
		if err := each(read); err != nil {
			return err
		}
	}
	return rows.Err()
}

type scan func(into ...any) error

// scanned hides what a value of the wrong type looked like: the error of
// database/sql quotes it, however long and whatever it is.
func scanned(err error) error {
	if err == nil || errors.Is(err, sql.ErrNoRows) || resultCode(err) != 0 {
		return err
	}
	return ErrDamaged
}

// write runs do in a transaction of its own, which is on disk when write
// returns nil and has left no trace when it does not.
func (r *Record) write(do func(*sql.Tx) error) error {
	if r.foreign {
		return &Error{Kind: ErrReadOnly, Path: r.path}
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.fault(r.inTransaction(do))
}

func (r *Record) inTransaction(do func(*sql.Tx) error) error {
	tx, err := r.begin()
	if err != nil {
		return err
	}
	if err := do(tx); err != nil {
		tx.Rollback()
		return err
	}
	if err := tx.Commit(); err != nil {
		// A commit that had to give up waiting for readers leaves the
		// transaction open: unless it is ended here, the next commit would
		// bring what the caller was told is not kept.
		r.conn.ExecContext(context.Background(), "ROLLBACK")
		return err
	}
	return nil
}

// begin waits for its turn to write. SQLite asks less and less often, up to
// ten times a second, so that a program that writes on and on keeps others
// from their turn for seconds; asking again every few milliseconds gives all
// about the same chance.
func (r *Record) begin() (*sql.Tx, error) {
	if err := r.setBusyTimeout(min(turn, r.options.Wait)); err != nil {
		return nil, err
	}
	for until := time.Now().Add(r.options.Wait); ; {
		tx, err := r.conn.BeginTx(context.Background(), nil)
		if isKind(err, ErrBusy) && time.Now().Before(until) {
			continue
		}
		if again := r.setBusyTimeout(r.options.Wait); err == nil && again != nil {
			tx.Rollback()
			return nil, again
		}
		return tx, err
	}
}

// turn is how long SQLite asks on its own, before it begins again with the
// shortest pause.
const turn = 80 * time.Millisecond

func (r *Record) setBusyTimeout(wait time.Duration) error {
	_, err := r.conn.ExecContext(context.Background(), "PRAGMA "+busyTimeout(wait))
	return err
}
