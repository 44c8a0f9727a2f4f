package record

import (
	"database/sql"
	"errors"
	"iter"
)

// LongestSaved is how many bytes a problem file or a cached value may have.
const LongestSaved = 1 << 20

// A Problem is the text of a problem file that was seen.
type Problem struct {
	Hash string
	ID   string
	Text string
}

// SaveProblem saves the text of a problem file under its hash. What is saved
// under a hash stays: a second text for it is not looked at. Whoever takes
// texts from another record must see for itself that they have their hash.
func (r *Record) SaveProblem(hash, id, text string) error {
	if len(hash) > MaxText || len(id) > MaxText || len(text) > LongestSaved {
		return &Error{Kind: ErrTooLong, Path: r.path}
	}
	return r.write(func(tx *tx) error {
		return execute(tx, "INSERT INTO problem ({,} hash, id, text) VALUES ({?} ?, ?, ?) ON CONFLICT DO NOTHING",
			hash, id, text)
	})
}

// Problem gives the problem file saved under the hash; [ErrUnknown] if none is.
func (r *Record) Problem(hash string) (Problem, error) {
	p := Problem{Hash: hash}
	err := r.queryRow("SELECT id, text FROM problem WHERE {=} hash = ?", []any{hash}, &p.ID, &p.Text)
	return p, r.fault(err)
}

// Problems gives all problem files, ordered by hash. An error ends the loop.
func (r *Record) Problems() iter.Seq2[Problem, error] {
	return func(yield func(Problem, error) bool) {
		// Only the hashes are read under one lock; the texts follow one
		// by one, so that nobody who writes has to wait for all of them.
		var hashes []string
		err := r.query("SELECT hash FROM problem WHERE {=} 1 = 1 ORDER BY hash", nil, func(scan scan) error {
			var hash string
			err := scan(&hash)
			hashes = append(hashes, hash)
			return err
		})
		if err != nil {
			yield(Problem{}, r.fault(err))
			return
		}
		for _, hash := range hashes {
			if p, err := r.Problem(hash); !yield(p, err) || err != nil {
				return
			}
		}
	}
}

// Cache gives the value that [Record.SetCache] put under the key, or nil and
// false. A cached value may vanish at any time.
func (r *Record) Cache(key string) (value []byte, ok bool, err error) {
	err = r.queryRow("SELECT value FROM cache WHERE {=} key = ?", []any{key}, &value)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, false, nil
	}
	return value, err == nil, r.fault(err)
}

// SetCache puts a value under a key that names everything the value depends
// on, the checker's version among it.
func (r *Record) SetCache(key string, value []byte) error {
	return r.SetCaches(map[string][]byte{key: value})
}

// SetCaches puts many values at the price of one commit.
func (r *Record) SetCaches(values map[string][]byte) error {
	for key, value := range values {
		if len(key) > MaxText || len(value) > LongestSaved {
			return &Error{Kind: ErrTooLong, Path: r.path}
		}
	}
	return r.write(func(tx *tx) error {
		for key, value := range values {
			// nil would be NULL, which the table refuses.
			if value == nil {
				value = []byte{}
			}
			if err := execute(tx, "INSERT INTO cache ({,} key, value) VALUES ({?} ?, ?) ON CONFLICT ({,} key) DO UPDATE SET value = excluded.value", key, value); err != nil {
				return err
			}
		}
		return nil
	})
}

// ClearCache throws away everything that SetCache put.
func (r *Record) ClearCache() error {
	return r.write(func(tx *tx) error { return execute(tx, "DELETE FROM cache WHERE {=} 1 = 1") })
}
