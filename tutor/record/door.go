package record

import (
	"database/sql"
	"encoding/json"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"time"
)

// A Door is how a student proves who it is: the hash of a pass phrase, public keys, or
// both. What stands in them is their maker's.
type Door struct {
	Hash string   `json:"hash,omitempty"`
	Keys []string `json:"keys,omitempty"`
}

// doorFile caches what lies beside a record in a file: its doors are not in it, because a
// record is handed on and read by others.
type doorFile struct {
	mu   sync.Mutex
	size int64
	time time.Time
	all  map[string]Door
}

const doorEnding = ".doors"

// Door gives a student's door; the zero Door is one that nobody can open. The errors are
// those of the record.
func (r *Record) Door(student string) (Door, error) {
	if !r.isDatabase() {
		all, err := r.doorsBeside()
		return all[student], err
	}
	var d Door
	var keys string
	err := r.queryRow("SELECT hash, keys FROM door WHERE {=} student = ?", []any{student}, &d.Hash, &keys)
	if errors.Is(err, sql.ErrNoRows) {
		return Door{}, nil
	}
	if keys != "" {
		d.Keys = strings.Split(keys, "\n")
	}
	return d, r.fault(err)
}

// SetDoors changes the doors of students. In a file they lie beside the record, for its
// owner alone.
func (r *Record) SetDoors(change map[string]Door) error {
	return r.write(func(t *tx) error {
		if !r.isDatabase() {
			return r.writeDoors(change) // the transaction keeps other programs out meanwhile
		}
		for student, d := range change {
			err := execute(t, `INSERT INTO door ({,} student, hash, keys) VALUES ({?} ?, ?, ?)
				ON CONFLICT ({,} student) DO UPDATE SET hash = excluded.hash, keys = excluded.keys`,
				student, d.Hash, strings.Join(d.Keys, "\n"))
			if err != nil {
				return err
			}
		}
		return nil
	})
}

// doorsBeside reads the file beside the record when it has changed.
func (r *Record) doorsBeside() (map[string]Door, error) {
	f := &r.doors
	f.mu.Lock()
	defer f.mu.Unlock()
	if r.path == "" {
		return f.all, nil
	}
	info, err := os.Stat(r.path + doorEnding)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	// Another program may have written it; size and time tell this without reading the file at every login.
	if err == nil && (f.all == nil || info.Size() != f.size || !info.ModTime().Equal(f.time)) {
		f.all, err = readDoors(r.path + doorEnding)
		f.size, f.time = info.Size(), info.ModTime()
	}
	if err != nil {
		return nil, &Error{Kind: ErrDisk, Path: r.path + doorEnding, Cause: err}
	}
	return f.all, nil
}

func readDoors(path string) (map[string]Door, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	all := map[string]Door{}
	return all, json.Unmarshal(data, &all)
}

// writeDoors writes a new file and puts it in the place of the old one.
func (r *Record) writeDoors(change map[string]Door) error {
	all, err := map[string]Door{}, error(nil)
	if r.path != "" {
		// From the disk and not from memory, where a change by another program would be missing.
		if all, err = readDoors(r.path + doorEnding); errors.Is(err, fs.ErrNotExist) {
			all, err = map[string]Door{}, nil
		}
	}
	if err != nil {
		return err
	}
	for student, d := range change {
		all[student] = d
	}
	r.doors.mu.Lock()
	defer r.doors.mu.Unlock()
	// Even if writing fails: then the file says what holds.
	r.doors.all = nil
	if r.path == "" {
		r.doors.all = all
		return nil
	}
	data, err := json.MarshalIndent(all, "", "\t")
	if err != nil {
		return err
	}
	return replaceFile(r.path+doorEnding, data)
}

// replaceFile writes a file for its owner alone; after a crash it is the old or the new
// one, and whole.
func replaceFile(path string, data []byte) error {
	file, err := os.CreateTemp(filepath.Dir(path), filepath.Base(path)+"-*")
	if err != nil {
		return err
	}
	_, err = file.Write(data)
	// On the disk before it gets its name, or a crash could leave an empty file under that name.
	err = errors.Join(err, file.Sync(), file.Close())
	if err == nil {
		err = os.Rename(file.Name(), path)
	}
	if err != nil {
		os.Remove(file.Name())
	}
	return err
}
