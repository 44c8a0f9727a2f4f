// Inside the package: it makes single statements fail.

package record

import (
	"bytes"
	"database/sql"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// smallRecord gives the bytes of a sound record with n entries.
func smallRecord(t testing.TB, n int) []byte {
	t.Helper()
	path := filepath.Join(t.TempDir(), "record.db")
	r := mustOpen(t, path)
	for i := range n {
		mustAppend(t, r, Entry{Student: "k7", Kind: Answer, Text: fmt.Sprintf("T1 cos 35 = %d N", i)})
	}
	r.Close()
	return mustRead(t, path)
}

func mustRead(t testing.TB, path string) []byte {
	t.Helper()
	content, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return content
}

// putFile writes a file that no process has open.
func putFile(t testing.TB, content []byte) (path string) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "record.db")
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// sqlFile gives the bytes of a file that the statements make.
func sqlFile(t testing.TB, content []byte, statements ...string) []byte {
	t.Helper()
	path := filepath.Join(t.TempDir(), "made.db")
	if content != nil {
		if err := os.WriteFile(path, content, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	db.SetMaxOpenConns(1)
	for _, statement := range statements {
		if _, err := db.Exec(statement); err != nil {
			t.Fatalf("%s: %v", statement, err)
		}
	}
	db.Close()
	return mustRead(t, path)
}

// contents reads a folder: every file by its name.
func contents(t testing.TB, folder string) map[string]string {
	t.Helper()
	files := map[string]string{}
	err := filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		content, err := os.ReadFile(path)
		files[path] = string(content)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func mustBeUntouched(t testing.TB, folder string, before map[string]string) {
	t.Helper()
	if after := contents(t, folder); !maps.Equal(before, after) {
		for path := range after {
			if before[path] != after[path] {
				t.Errorf("%s was changed or made", filepath.Base(path))
			}
		}
		for path := range before {
			if _, ok := after[path]; !ok {
				t.Errorf("%s was deleted", filepath.Base(path))
			}
		}
	}
}

func TestFilesThatAreLeftAlone(t *testing.T) {
	good := smallRecord(t, 300)
	half := len(good) / 2
	cases := map[string]struct {
		content []byte
		want    error
	}{
		"words":                   {[]byte("Dear diary, today the crane stood still.\n"), ErrNotRecord},
		"zeros":                   {make([]byte, 8192), ErrNotRecord},
		"one byte":                {[]byte{0}, ErrNotRecord},
		"noise":                   {bytes.Repeat([]byte{0xde, 0xad, 0xbe, 0xef, 0x01}, 5000), ErrNotRecord},
		"another program's":       {sqlFile(t, nil, "CREATE TABLE score (name TEXT)"), ErrNotRecord},
		"another program's log":   {sqlFile(t, nil, "PRAGMA journal_mode = WAL", "CREATE TABLE score (name TEXT)"), ErrNotRecord},
		"ours by name only":       {sqlFile(t, nil, "PRAGMA application_id = 0x53746e64", "PRAGMA user_version = 1"), ErrDamaged},
		"ours without a version":  {sqlFile(t, good, "PRAGMA user_version = 0"), ErrNotRecord},
		"a negative version":      {sqlFile(t, good, "PRAGMA user_version = -1"), ErrNotRecord},
		"from a newer version":    {sqlFile(t, good, "PRAGMA user_version = 99"), ErrNewer},
		"newer, another schema":   {sqlFile(t, good, "PRAGMA user_version = 99", "DROP TABLE entry", "DROP TABLE record"), ErrNewer},
		"without entries":         {sqlFile(t, good, "DROP TABLE entry"), ErrDamaged},
		"without its own name":    {sqlFile(t, good, "DELETE FROM record"), ErrDamaged},
		"cut inside the header":   {good[:60], ErrNotRecord},
		"cut after the header":    {good[:100], ErrDamaged},
		"cut at a page":           {good[:8192], ErrDamaged},
		"cut inside a page":       {good[:half-half%4096+77], ErrDamaged},
		"the last byte missing":   {good[:len(good)-1], ErrDamaged},
		"zeros in the middle":     {overwrite(good, half, make([]byte, 4096)), ErrDamaged},
		"noise in the schema":     {overwrite(good, 2000, bytes.Repeat([]byte{0x81}, 900)), ErrDamaged},
		"a wrong page size":       {overwrite(good, 16, []byte{0xff, 0xff}), ErrNotRecord},
		"a page that is a loop":   {overwrite(good, 4096, good[:4096]), ErrDamaged},
		"another text beneath it": {overwrite(good, half, []byte(strings.Repeat("T1 sin 35 ", 300))), ErrDamaged},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			path := putFile(t, c.content)
			before := contents(t, filepath.Dir(path))
			r, err := Open(path, Options{})
			if err == nil {
				r.Close()
			}
			mustBe(t, err, c.want)
			if strings.Contains(Sentence(err), "%") || !strings.Contains(Sentence(err), path) {
				t.Errorf("the sentence is %q", Sentence(err))
			}
			mustBeUntouched(t, filepath.Dir(path), before)

			_, err = OpenForeign(path)
			if err == nil {
				t.Fatal("opened as a foreign record")
			}
			mustBeUntouched(t, filepath.Dir(path), before)
		})
	}
}

func overwrite(content []byte, at int, with []byte) []byte {
	changed := bytes.Clone(content)
	copy(changed[at:], with)
	return changed
}

// Whatever a file is cut to, it is either sound or left as it is.
func TestTruncatedAnywhere(t *testing.T) {
	good := smallRecord(t, 100)
	for size := 1; size < len(good); size += 811 {
		path := putFile(t, good[:size])
		before := contents(t, filepath.Dir(path))
		if r, err := Open(path, Options{}); err == nil {
			r.Close()
			t.Errorf("cut to %d of %d bytes, and opened", size, len(good))
		}
		mustBeUntouched(t, filepath.Dir(path), before)
	}
}

// A program that was ended between making the file and filling it leaves an
// empty one.
func TestEmptyFileIsANewRecord(t *testing.T) {
	r := mustOpen(t, putFile(t, nil))
	if e := mustAppend(t, r, Entry{}); e.Number != 1 {
		t.Errorf("the first number is %d", e.Number)
	}
}

func TestPlacesWithoutAFile(t *testing.T) {
	folder := t.TempDir()
	file := putFile(t, []byte("x"))
	for name, path := range map[string]string{
		"a folder":              folder,
		"below a file":          filepath.Join(file, "record.db"),
		"below a file's folder": filepath.Join(file, "data", "record.db"),
		"no name at all":        "a\x00b",
	} {
		t.Run(name, func(t *testing.T) {
			_, err := Open(path, Options{})
			mustBe(t, err, ErrUnopenable)
			_, err = OpenForeign(path)
			mustBe(t, err, ErrUnopenable)
		})
	}
	_, err := OpenForeign(filepath.Join(folder, "missing.db"))
	mustBe(t, err, ErrUnopenable)
	mustBeUntouched(t, folder, map[string]string{})
}

func TestDiskFull(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.db")
	r := mustOpen(t, path)
	if err := r.queryRow("PRAGMA max_page_count = 40", nil, new(int)); err != nil {
		t.Fatal(err)
	}
	kept, err := fill(r)
	mustBe(t, err, ErrFull)
	if len(kept) == 0 {
		t.Fatal("nothing was kept before the disk was full")
	}
	if got := collect(t, r.Entries(Filter{})); len(got) != len(kept) {
		t.Errorf("%d entries, %d were appended", len(got), len(kept))
	}
	r.Close()
	again := mustOpen(t, path)
	if got := collect(t, again.Entries(Filter{})); len(got) != len(kept) || got[len(got)-1] != kept[len(kept)-1] {
		t.Errorf("%d entries after opening again, %d were appended", len(got), len(kept))
	}
	if e := mustAppend(t, again, Entry{}); e.Number != int64(len(kept)+1) {
		t.Errorf("the next number is %d after %d entries", e.Number, len(kept))
	}
}

func fill(r *Record) (kept []Entry, err error) {
	for range 10_000 {
		e, err := r.Append(Entry{Text: strings.Repeat("T1 cos α ", 200)})
		if err != nil {
			return kept, err
		}
		kept = append(kept, e)
	}
	return kept, nil
}

// A commit that gives up leaves nothing behind that a later one would bring.
func TestBusyCommitLeavesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.db")
	r, err := Open(path, Options{Wait: 1})
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	mustAppend(t, r, Entry{Text: "first"})
	reader, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	defer reader.Close()
	rows, err := reader.Query("SELECT id FROM entry")
	if err != nil || !rows.Next() {
		t.Fatal("no reader", err)
	}
	_, err = r.Append(Entry{Text: "given up"})
	mustBe(t, err, ErrBusy)
	rows.Close()
	mustAppend(t, r, Entry{Text: "second"})
	if got := collect(t, r.Entries(Filter{})); len(got) != 2 || got[1].Text != "second" || got[1].Number != 2 {
		t.Errorf("kept: %v", got)
	}
}

func TestClosedRecord(t *testing.T) {
	r := mustMemory(t)
	r.Close()
	if _, err := r.Append(Entry{}); err == nil || Sentence(err) != "The record cannot be used." {
		t.Errorf("a closed record: %v, %q", err, Sentence(err))
	}
	r.Close()
}
