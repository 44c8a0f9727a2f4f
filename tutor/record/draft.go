package record

import "time"

// A Draft is a half-typed line. There is one for a student and an item of a copy of a
// problem; it is overwritten, and no entry: what was not checked did not happen.
type Draft struct {
	Student string
	Problem string
	Hash    string
	Givens  string
	Copy    int
	Stage   string
	Item    string
	Text    string
	Time    time.Time // of the last change, UTC
}

func draftOf(e *Entry) Draft {
	return Draft{Student: e.Student, Problem: e.Problem, Hash: e.Hash, Givens: e.Givens, Copy: e.Copy}
}

// copyKey names the copy of a problem that the line is about.
func (d Draft) copyKey() []any { return []any{d.Student, d.Problem, d.Hash, d.Givens, d.Copy} }

func (d Draft) key() []any { return append(d.copyKey(), d.Stage, d.Item) }

const (
	keepDraft = `INSERT INTO draft ({,} student, problem, hash, givens, copy, stage, item, text, time)
		VALUES ({?} ?, ?, ?, ?, ?, ?, ?, ?, ?)
		ON CONFLICT ({,} student, problem, hash, givens, copy, stage, item) DO UPDATE SET text = excluded.text, time = excluded.time`
	dropDraft = dropDrafts + " AND stage = ? AND item = ?"
	// There is one line to type in: what was typed for another item of the copy before it
	// is over with the answer, too.
	dropDrafts = "DELETE FROM draft WHERE {=} student = ? AND problem = ? AND hash = ? AND givens = ? AND copy = ?"
)

// SaveDraft saves a half-typed line in the place of the one before; an empty Text
// deletes that. Time is filled in.
func (r *Record) SaveDraft(d Draft) error {
	for _, text := range []string{d.Student, d.Problem, d.Hash, d.Givens, d.Stage, d.Item, d.Text} {
		if len(text) > MaxText {
			return &Error{Kind: ErrTooLong, Path: r.path}
		}
	}
	return r.write(func(tx *tx) error {
		if err := r.mustHold(tx); err != nil {
			return err
		}
		if d.Text == "" {
			return execute(tx, dropDraft, d.key()...)
		}
		return execute(tx, keepDraft, append(d.key(), d.Text, r.options.Now().UnixMilli())...)
	})
}

// Drafts gives the half-typed lines of a student, the oldest first.
func (r *Record) Drafts(student string) ([]Draft, error) {
	if r.foreign {
		return nil, nil // of an older version, it may have none
	}
	var drafts []Draft
	err := r.query(`SELECT student, problem, hash, givens, copy, stage, item, text, time FROM draft
		WHERE {=} student = ? ORDER BY time`, []any{student}, func(scan scan) error {
		var d Draft
		var ms int64
		err := scan(&d.Student, &d.Problem, &d.Hash, &d.Givens, &d.Copy, &d.Stage, &d.Item, &d.Text, &ms)
		d.Time = toMillisecond(time.UnixMilli(ms))
		drafts = append(drafts, d)
		return err
	})
	return drafts, r.fault(err)
}
