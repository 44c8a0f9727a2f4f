package record

import "iter"

// Merged is what became of the entries given to [Record.Merge].
type Merged struct {
	Added     int
	Known     int // were here already, the same in every field
	Forgotten int // were forgotten here, and are left out
	Conflicts []Conflict
	Refused   []Refused
}

// A Conflict is an entry of a student that was here with another content, which
// was kept.
type Conflict struct {
	Here  Entry
	There Entry
}

// Refused is an entry that no record can hold, and why: [ErrTooLong] or
// [ErrMalformed].
type Refused struct {
	Entry Entry
	Why   error
}

// batch is how many entries Merge adds in one transaction: enough that the
// commits cost little, few enough that others who write need not wait long.
const batch = 20_000

// Merge adds entries of other records as a set: entries keep their id, record
// and number, one that is here already is not added again, and neither order
// nor repetition makes a difference. Nothing that is here is changed. Entries are
// told apart by id and student: the same id under another name is added, so that
// nobody can push out what another student did.
//
// On an error, from the iterator or from this record, the entries counted as
// added are kept, and the merge can be done again.
//
// What was forgotten here is left out.
func (r *Record) Merge(from iter.Seq2[Entry, error]) (Merged, error) {
	return r.merge(from, batch, false)
}

// Recall is a merge that also brings back what was forgotten.
func (r *Record) Recall(from iter.Seq2[Entry, error]) (Merged, error) {
	return r.merge(from, batch, true)
}

func (r *Record) merge(from iter.Seq2[Entry, error], batch int, recalled bool) (Merged, error) {
	var sum Merged
	var wait []Entry
	for e, err := range from {
		if err != nil {
			return sum, err
		}
		// As it will be read again, so that comparing finds it the same.
		e.Time = toMillisecond(e.Time)
		if why := e.check(); why != nil {
			sum.Refused = append(sum.Refused, Refused{e, why})
			continue
		}
		if wait = append(wait, e); len(wait) == batch {
			if err := r.mergeBatch(wait, &sum, recalled); err != nil {
				return sum, err
			}
			wait = wait[:0]
		}
	}
	err := r.mergeBatch(wait, &sum, recalled)
	return sum, err
}

func (r *Record) mergeBatch(entries []Entry, sum *Merged, recalled bool) error {
	if len(entries) == 0 {
		return nil
	}
	after := *sum
	err := r.write(func(t *tx) error {
		// Counted from the beginning, because a transaction may run twice.
		after = *sum
		rest, err := withoutForgotten(t, entries, recalled)
		if err != nil {
			return err
		}
		after.Forgotten += len(entries) - len(rest)
		added, err := r.addNew(t, rest)
		if err != nil {
			return err
		}
		for i, e := range rest {
			if err := after.count(t, e, added[i]); err != nil {
				return err
			}
		}
		return nil
	})
	if err == nil {
		*sum = after
	}
	return err
}

// addNew adds the entries that are not here yet, and says which of them these are.
func (r *Record) addNew(t *tx, entries []Entry) (added []bool, err error) {
	if r.isDatabase() {
		return insertAll(t, entries)
	}
	statement, _ := t.translate(insertEntry+" ON CONFLICT DO NOTHING", nil)
	add, err := t.Prepare(statement)
	if err != nil {
		return nil, err
	}
	defer add.Close()
	added = make([]bool, len(entries))
	for i, e := range entries {
		result, err := add.Exec(e.values()...)
		if err != nil {
			return nil, err
		}
		n, err := result.RowsAffected()
		if added[i] = n == 1; err != nil {
			return nil, err
		}
	}
	return added, nil
}

// count counts an entry, after comparing one that was here already.
func (m *Merged) count(t *tx, e Entry, added bool) error {
	if added {
		m.Added++
		return nil
	}
	here, err := newRow().read(func(into ...any) error {
		return t.row("SELECT "+columns+" FROM entry WHERE {=} id = ? AND student = ?", []any{idBytes(e.ID), e.Student}, into...)
	})
	if err != nil {
		return err
	}
	if here == e {
		m.Known++
		return nil
	}
	m.Conflicts = append(m.Conflicts, Conflict{Here: here, There: e})
	return nil
}
