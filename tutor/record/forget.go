package record

import (
	"crypto/hmac"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"errors"
	"io"
	"time"
)

// Forget deletes a student with all entries that carry the id, and the cache,
// which may hold what was computed from them. The bytes are overwritten in the
// file; what the disk itself keeps of them is out of reach. The running
// numbers are not given again. Forget gives the number of entries deleted.
//
// [Record.Merge] does not bring back what was forgotten. For that a hash of each entry is
// kept, from which nobody can tell whose it was.
func (r *Record) Forget(student string) (deleted int, err error) {
	return r.forget("student = ?", student, func(t *tx) error { return forgetStudent(t, student) })
}

// ForgetBefore does so with all entries and half-typed lines from before a time, and with
// the students of whom nothing is left then.
func (r *Record) ForgetBefore(at time.Time) (deleted int, err error) {
	return r.forget("time < ?", at.UnixMilli(), func(t *tx) error {
		if err := execute(t, "DELETE FROM draft WHERE {=} time < ?", at.UnixMilli()); err != nil {
			return err
		}
		gone, err := studentsOfNothing(t)
		if err != nil {
			return err
		}
		for _, student := range gone {
			if err := forgetStudent(t, student); err != nil {
				return err
			}
		}
		return nil
	})
}

// forget deletes some entries and the cache, and does in the same commit what else there is
// to do.
func (r *Record) forget(which string, arg any, more func(*tx) error) (deleted int, err error) {
	err = r.write(func(t *tx) (err error) {
		if deleted, err = r.forgetEntries(t, which, arg); err != nil {
			return err
		}
		if err := more(t); err != nil {
			return err
		}
		// Whatever is cached may be made of the entries that go.
		return execute(t, "DELETE FROM cache WHERE {=} 1 = 1")
	})
	if err != nil {
		return 0, err
	}
	return deleted, nil
}

// CountBefore says how many entries ForgetBefore would delete.
func (r *Record) CountBefore(at time.Time) (n int, err error) {
	err = r.queryRow("SELECT count(*) FROM entry WHERE {=} time < ?", []any{at.UnixMilli()}, &n)
	return n, r.fault(err)
}

func forgetStudent(t *tx, student string) error {
	return errors.Join(
		execute(t, "DELETE FROM student WHERE {=} id = ?", student),
		execute(t, "DELETE FROM lease WHERE {=} student = ?", student),
		execute(t, "DELETE FROM draft WHERE {=} student = ?", student),
		// Or the next start would greet the student who was forgotten.
		execute(t, "DELETE FROM setting WHERE {=} key = ? AND value = ?", lastStudent, student))
}

// studentsOfNothing are those who have neither an entry nor a half-typed line, nor are
// there at this moment.
func studentsOfNothing(t *tx) (ids []string, err error) {
	const query = `SELECT id FROM student WHERE {=} id NOT IN (SELECT student FROM entry WHERE {=} 1 = 1)
		AND id NOT IN (SELECT student FROM draft WHERE {=} 1 = 1) AND id NOT IN (SELECT student FROM lease WHERE {=} 1 = 1)`
	err = t.each(query, nil, func(scan scan) error {
		var id string
		err := scan(&id)
		ids = append(ids, id)
		return err
	})
	return ids, err
}

// forgetEntries deletes entries and keeps their hashes. What was noted about an entry is
// made anew by whoever collects it, and is not remembered.
func (r *Record) forgetEntries(t *tx, which string, arg any) (deleted int, err error) {
	key, err := r.forgettingKey(t)
	if err != nil {
		return 0, err
	}
	var hashes [][]byte
	err = t.each("DELETE FROM entry WHERE {=} "+which+" RETURNING id, student, kind", []any{arg}, func(scan scan) error {
		var id []byte
		var student, kind string
		err := scan(&id, &student, &kind)
		if deleted++; kind != Noted {
			hashes = append(hashes, forgottenHash(key, hex.EncodeToString(id), student))
		}
		return err
	})
	if err != nil {
		return 0, err
	}
	return deleted, eachHash(t, hashes,
		"INSERT INTO forgotten (hash) VALUES (?) ON CONFLICT DO NOTHING",
		"INSERT INTO forgotten ({,} hash) SELECT {?} u.* FROM unnest(?::bytea[]) AS u ON CONFLICT DO NOTHING")
}

// eachHash does something with every hash: in a file one after the other, in a database
// all at once.
func eachHash(t *tx, hashes [][]byte, one, all string) error {
	if len(hashes) == 0 {
		return nil
	}
	if t.numbered {
		return execute(t, all, hashes)
	}
	for _, hash := range hashes {
		if err := execute(t, one, hash); err != nil {
			return err
		}
	}
	return nil
}

// settingForgetting is the key of the hashes, made when something is first forgotten.
const settingForgetting = "forgetting key"

func (r *Record) forgettingKey(t *tx) ([]byte, error) {
	key, err := keptKey(t)
	if err != nil || key != nil {
		return key, err
	}
	fresh := make([]byte, 32)
	if _, err := io.ReadFull(r.options.Random, fresh); err != nil {
		return nil, err
	}
	// Another machine may have made one at the same moment.
	const add = "INSERT INTO setting ({,} key, value) VALUES ({?} ?, ?) ON CONFLICT DO NOTHING"
	if err := execute(t, add, settingForgetting, hex.EncodeToString(fresh)); err != nil {
		return nil, err
	}
	return keptKey(t)
}

// keptKey is nil where nothing was ever forgotten.
func keptKey(t *tx) ([]byte, error) {
	var text string
	err := t.row("SELECT value FROM setting WHERE {=} key = ?", []any{settingForgetting}, &text)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	key, err := hex.DecodeString(text)
	if err != nil || len(key) == 0 {
		return nil, ErrDamaged
	}
	return key, nil
}

func forgottenHash(key []byte, id, student string) []byte {
	h := hmac.New(sha256.New, key)
	io.WriteString(h, id+"\x00"+student)
	return h.Sum(nil)
}

// withoutForgotten leaves out what was forgotten; recalled, it counts as forgotten no
// longer.
func withoutForgotten(t *tx, entries []Entry, recalled bool) (rest []Entry, err error) {
	key, err := keptKey(t)
	if err != nil || key == nil {
		return entries, err
	}
	hashes := make([][]byte, len(entries))
	for i, e := range entries {
		hashes[i] = forgottenHash(key, e.ID, e.Student)
	}
	if recalled {
		return entries, eachHash(t, hashes, "DELETE FROM forgotten WHERE hash = ?", "DELETE FROM forgotten WHERE {=} hash = ANY(?::bytea[])")
	}
	gone, err := amongForgotten(t, hashes)
	if err != nil || len(gone) == 0 {
		return entries, err
	}
	for i, e := range entries {
		if !gone[string(hashes[i])] {
			rest = append(rest, e)
		}
	}
	return rest, nil
}

func amongForgotten(t *tx, hashes [][]byte) (map[string]bool, error) {
	gone := map[string]bool{}
	found := func(scan scan) error {
		var hash []byte
		err := scan(&hash)
		gone[string(hash)] = true
		return err
	}
	if t.numbered {
		return gone, t.each("SELECT hash FROM forgotten WHERE {=} hash = ANY(?::bytea[])", []any{hashes}, found)
	}
	for _, hash := range hashes {
		if err := t.each("SELECT hash FROM forgotten WHERE hash = ?", []any{hash}, found); err != nil {
			return nil, err
		}
	}
	return gone, nil
}
