package record

import (
	"cmp"
	"iter"
	"math"
	"strings"
)

// A Filter chooses entries. Empty fields choose all.
type Filter struct {
	Student string
	Problem string
	Kinds   []string
}

// pageRows is how many entries are read under one lock. Between pages the
// file is free: a long report does not keep students from writing, and the
// loop's body may use the record.
const pageRows = 500

// Entries gives the entries that the filter chooses, ordered by record and
// then by running number; the order does not depend on the order of merging.
// What is appended to this record during the loop is given at its end. An
// error ends the loop.
func (r *Record) Entries(f Filter) iter.Seq2[Entry, error] {
	return func(yield func(Entry, error) bool) {
		// Before every entry, also in a file that somebody made with strange numbers.
		at := Entry{Number: math.MinInt64}
		for {
			page, err := r.page(f, at)
			for _, e := range page {
				if !yield(e, nil) {
					return
				}
			}
			if err != nil {
				yield(Entry{}, err)
				return
			}
			if len(page) < pageRows {
				return
			}
			// In pages and from the last entry on, because no query may stay open while the caller writes.
			at = page[len(page)-1]
		}
	}
}

// page reads the entries that follow at. Each must come after the one before:
// in a file that was made to be unordered the loop over pages would not end.
func (r *Record) page(f Filter, at Entry) ([]Entry, error) {
	query, args := f.query(at)
	var page []Entry
	row := newRow()
	err := r.query(query, args, func(scan scan) error {
		e, err := row.read(scan)
		if err != nil {
			return err
		}
		if !at.before(e) {
			return ErrDamaged
		}
		page, at = append(page, e), e
		return nil
	})
	return page, r.fault(err)
}

func (e Entry) before(other Entry) bool {
	if c := strings.Compare(e.Record, other.Record); c != 0 {
		return c < 0
	}
	return cmp.Or(cmp.Compare(e.Number, other.Number), strings.Compare(e.ID, other.ID), strings.Compare(e.Student, other.Student)) < 0
}

func (f Filter) query(at Entry) (string, []any) {
	var q strings.Builder
	q.WriteString("SELECT " + columns + " FROM entry WHERE {=} (record, number, id, student) > (?, ?, ?, ?)")
	args := []any{idBytes(at.Record), at.Number, idBytes(at.ID), at.Student}
	if f.Student != "" {
		q.WriteString(" AND student = ?")
		args = append(args, f.Student)
	}
	if f.Problem != "" {
		q.WriteString(" AND problem = ?")
		args = append(args, f.Problem)
	}
	if len(f.Kinds) > 0 {
		q.WriteString(" AND kind IN (?" + strings.Repeat(", ?", len(f.Kinds)-1) + ")")
		for _, kind := range f.Kinds {
			args = append(args, kind)
		}
	}
	q.WriteString(" ORDER BY record, number, id, student LIMIT ?")
	return q.String(), append(args, pageRows)
}

// Entry gives the student's entry with the id; [ErrUnknown] if there is none. The
// same id under another student's name is another entry.
func (r *Record) Entry(id, student string) (Entry, error) {
	if !isID(id) {
		return Entry{}, &Error{Kind: ErrUnknown, Path: r.path}
	}
	e, err := newRow().read(func(into ...any) error {
		return r.queryRow("SELECT "+columns+" FROM entry WHERE {=} id = ? AND student = ?", []any{idBytes(id), student}, into...)
	})
	return e, r.fault(err)
}
