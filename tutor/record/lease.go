package record

import (
	"database/sql"
	"errors"
	"time"
)

// A Lease says which visit of a student is the one that counts: whoever comes later takes
// it over.
type Lease struct {
	Student string
	Token   string // random; another visit has another
	Host    string // who gave the place
	Since   time.Time
}

// TakeLease gives the student's place to a new visit. Whoever had it can keep nothing
// more.
func (r *Record) TakeLease(student, host string) (Lease, error) {
	l := Lease{Student: student, Host: host, Since: toMillisecond(r.options.Now())}
	var err error
	if l.Token, err = randomID(r.options.Random); err != nil {
		return l, r.fault(err)
	}
	if len(student) > MaxText || len(host) > MaxText {
		return l, &Error{Kind: ErrTooLong, Path: r.path}
	}
	return l, r.write(func(t *tx) error {
		return execute(t, `INSERT INTO lease ({,} student, token, host, since) VALUES ({?} ?, ?, ?, ?)
			ON CONFLICT ({,} student) DO UPDATE SET token = excluded.token, host = excluded.host, since = excluded.since`,
			student, l.Token, host, l.Since.UnixMilli())
	})
}

// EndLease gives the place back, unless another visit has it by now.
func (r *Record) EndLease(l Lease) error {
	return r.write(func(t *tx) error {
		return execute(t, "DELETE FROM lease WHERE {=} student = ? AND token = ?", l.Student, l.Token)
	})
}

// Leases lists the places that are taken, by student.
func (r *Record) Leases() (map[string]Lease, error) {
	all := map[string]Lease{}
	err := r.query("SELECT student, token, host, since FROM lease WHERE {=} 1 = 1", nil, func(scan scan) error {
		var l Lease
		var ms int64
		err := scan(&l.Student, &l.Token, &l.Host, &ms)
		l.Since = toMillisecond(time.UnixMilli(ms))
		all[l.Student] = l
		return err
	})
	return all, r.fault(err)
}

// Holding gives a second handle of the record for the visit that has the lease: once that
// is taken over, what it appends gives [ErrTaken].
func (r *Record) Holding(l Lease) *Record {
	h := r.Within(r.current)
	h.lease = &l
	return h
}

// holds reports whether the lease still stands. Nobody can take it before the transaction
// ends.
func (l *Lease) holds(t *tx) (bool, error) {
	// SQLite's transaction locks the whole file; a server has to be told which row must stay as it is.
	lock := ""
	if t.numbered {
		lock = " FOR SHARE"
	}
	var token string
	err := t.row("SELECT token FROM lease WHERE {=} student = ?"+lock, []any{l.Student}, &token)
	if errors.Is(err, sql.ErrNoRows) {
		return false, nil
	}
	return token == l.Token, err
}

// mustHold is an error where the visit that uses this handle was taken over.
func (r *Record) mustHold(t *tx) error {
	if r.lease == nil {
		return nil
	}
	ok, err := r.lease.holds(t)
	if err == nil && !ok {
		err = ErrTaken
	}
	return err
}
