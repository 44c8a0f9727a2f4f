package main

import (
	"database/sql"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	_ "modernc.org/sqlite"
)

// told is a stream of what goes wrong; what is written there first frees the record.
type told struct {
	strings.Builder
	once sync.Once
	free func()
}

func (s *told) Write(p []byte) (int, error) {
	s.once.Do(s.free)
	return s.Builder.Write(p)
}

// A command that needs a record which another program is using says so, and goes on once
// it is free.
func TestCommandsSayThatTheyWait(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.db")
	if code, _, stderr := inProcess(t, "Nele\nT1 up left\nleave\n", "--plain", "--record", path); code != exitFine {
		t.Fatal(stderr)
	}
	for _, args := range [][]string{{"record", "--record", path}, {"hand-in", t.TempDir(), "--record", path}} {
		db, err := sql.Open("sqlite", "file:"+path)
		if err != nil {
			t.Fatal(err)
		}
		db.SetMaxOpenConns(1)
		if _, err := db.Exec("BEGIN EXCLUSIVE"); err != nil {
			t.Fatal(err)
		}
		errs := &told{free: func() { db.Close() }}
		var out strings.Builder
		code := run(t.Context(), args, streams{os.Stdin, &out, errs})
		if code != exitFine || !strings.HasPrefix(errs.String(), "Waiting for the record") {
			t.Errorf("%q: %d, %s%s", args, code, out.String(), errs.String())
		}
		db.Close()
	}
}
