package record

import (
	"encoding/hex"
	"fmt"
	"io"
	"time"
)

// The kinds of entries. A record keeps entries of other kinds too, so that
// one written by a later program of the same schema loses nothing here.
const (
	Begun     = "begin"    // a problem begun, or a copy of it drawn
	Answer    = "answer"   // a line that was checked: Stage, Item, Text
	Hint      = "hint"     // a hint asked for
	Solution  = "solution" // the worked solution asked for
	Disputed  = "keep"     // a disputed line; Ref is the answer
	Accepted  = "accept"   // a teacher accepts the line Ref
	Withdrawn = "withdraw" // takes back the entry Ref, an acceptance for one
	Unsent    = "unsent"   // a line that was half typed when the program was quit
	Predicted = "predict"  // a prediction: Item is the question, Detail the choice
	Limited   = "limit"    // an answer to the question after Solve: Item, Text
	PassedOn  = "pass"     // Components passed over
	Bench     = "bench"    // a bench run: what was measured, in Text
	Renewed   = "renew"    // a new pass phrase; the old one and the keys open nothing more
	Noted     = "note"     // what was found about the entry Ref when it was collected
	Deleted   = "delete"   // entries were deleted: Text says which, of nobody by name
)

// MaxText is how many bytes a text of an entry may have.
const MaxText = 64 << 10

// An Entry is one thing that happened. The first four fields are given by
// [Record.Append]; the others are the caller's, and none is looked into.
//
// An entry about another student's entry (an acceptance) carries that
// student's id, so that it is forgotten with the rest. What a teacher does carries
// [Record.Operator] as Detail; a deletion carries no student.
type Entry struct {
	ID     string    // random: 32 hexadecimal digits
	Record string    // the record that the entry was first written to
	Number int64     // running number in that record, from 1
	Time   time.Time // UTC, to the millisecond

	Student string
	Kind    string
	Problem string // the problem's id
	Hash    string // the hash of its file; see [Record.KeepProblem]
	Copy    int    // 0 is the file's own numbers, then the student's copies
	Givens  string // the numbers drawn for the copy
	Stage   string
	Item    string
	Text    string // as typed
	Ref     string // the ID of another entry
	Detail  string // what a kind needs beyond these
}

// Append keeps an entry: it fills in ID, Record, Number and Time, and when it
// returns without an error the entry is on disk. With an error nothing was
// added and nothing lost. A text longer than [MaxText] gives [ErrTooLong].
//
// Entries that are appended at the same time share a commit. An answer takes the
// place of the half-typed lines for the same copy of the problem.
func (r *Record) Append(e Entry) (Entry, error) {
	if r.foreign {
		return Entry{}, &Error{Kind: ErrReadOnly, Path: r.path}
	}
	w := &waiting{entry: e, lease: r.lease, done: make(chan struct{})}
	if err := r.name(&w.entry); err != nil {
		return Entry{}, r.fault(err)
	}
	r.queue.add(w)
	if err := r.settle(w); err != nil {
		return Entry{}, r.fault(err)
	}
	r.last.Store(&w.entry)
	return w.entry, nil
}

// name fills in what an entry keeps through all tries.
func (r *Record) name(e *Entry) (err error) {
	if e.ID, err = randomID(r.options.Random); err != nil {
		return err
	}
	// check wants a number; the real one is given in the transaction that adds the entry.
	e.Record, e.Number = r.id, 1
	return e.check()
}

// check says whether the entry can be stored: ErrTooLong or ErrMalformed.
func (e *Entry) check() error {
	for _, text := range e.texts() {
		if len(*text) > MaxText {
			return ErrTooLong
		}
	}
	if !isID(e.ID) || !isID(e.Record) || e.Number < 1 || e.Copy < 0 {
		return ErrMalformed
	}
	return nil
}

func randomID(random io.Reader) (string, error) {
	var id [16]byte
	if _, err := io.ReadFull(random, id[:]); err != nil {
		return "", fmt.Errorf("read random id: %w", err)
	}
	return hex.EncodeToString(id[:]), nil
}

// isID tells the one way of writing an id (lower case, no gaps) from all
// others, because ids are compared as text outside and as bytes inside.
func isID(s string) bool {
	b, err := hex.DecodeString(s)
	return err == nil && len(b) == 16 && hex.EncodeToString(b) == s
}

// columns and values must name the fields in the same order.
const (
	columns = "record, number, id, time, copy, student, kind, problem, hash, givens, stage, item, text, ref, detail"

	insertEntry = "INSERT INTO entry ({,} " + columns + ") VALUES ({?} ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"
)

func (e *Entry) texts() []*string {
	return []*string{&e.Student, &e.Kind, &e.Problem, &e.Hash, &e.Givens,
		&e.Stage, &e.Item, &e.Text, &e.Ref, &e.Detail}
}

func (e *Entry) values() []any {
	v := []any{idBytes(e.Record), e.Number, idBytes(e.ID), e.Time.UnixMilli(), e.Copy}
	for _, text := range e.texts() {
		v = append(v, *text)
	}
	return v
}

// A row is where one row of columns after the other is read into.
type row struct {
	entry      Entry
	record, id []byte
	ms         int64
	into       []any
}

func newRow() *row {
	var w row
	w.into = []any{&w.record, &w.entry.Number, &w.id, &w.ms, &w.entry.Copy}
	for _, text := range w.entry.texts() {
		w.into = append(w.into, text)
	}
	return &w
}

// read gives the entry of the row that scan is at. In a file that is opened to
// be read only, SQLite knows nothing of the conditions on a table: they are
// looked at here.
func (w *row) read(scan scan) (Entry, error) {
	if err := scan(w.into...); err != nil {
		return Entry{}, err
	}
	w.entry.Record, w.entry.ID = hex.EncodeToString(w.record), hex.EncodeToString(w.id)
	w.entry.Time = toMillisecond(time.UnixMilli(w.ms))
	if len(w.record) != 16 || len(w.id) != 16 || w.entry.Number < 1 || w.entry.Copy < 0 {
		return Entry{}, ErrDamaged
	}
	return w.entry, nil
}

// idBytes takes an id that isID accepts.
func idBytes(id string) []byte {
	b, _ := hex.DecodeString(id)
	return b
}

// toMillisecond gives the time as it is read back from a record.
func toMillisecond(t time.Time) time.Time { return time.UnixMilli(t.UnixMilli()).UTC() }
