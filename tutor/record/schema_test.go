// Inside the package: it uses the records of record_test.go.

package record

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// versionOne is a record of a student's first minutes as a program of version 1
// of the schema wrote it.
const versionOne = "testdata/version1.db"

func versionOneCopy(t *testing.T) string {
	t.Helper()
	data, err := os.ReadFile(versionOne)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "record.db")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func allOf(t *testing.T, r *Record) []Entry {
	t.Helper()
	var all []Entry
	for e, err := range r.Entries(Filter{}) {
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, e)
	}
	return all
}

// A record of an older version is read as it is where it is somebody else's, and
// brought to today's version where it is ours; the entries are the same.
func TestOlderVersion(t *testing.T) {
	foreign, err := OpenForeign(versionOneCopy(t))
	if err != nil {
		t.Fatal(err)
	}
	defer foreign.Close()
	want := allOf(t, foreign)
	if len(want) < 6 {
		t.Fatalf("only %d entries in %s", len(want), versionOne)
	}
	path := versionOneCopy(t)
	for range 2 {
		own, err := Open(path, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(want, allOf(t, own)); diff != "" {
			t.Errorf("the migration changed entries:\n%s", diff)
		}
		own.Close()
	}
	own, err := Open(path, Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer own.Close()
	if e := mustAppend(t, own, Entry{Student: "noor", Kind: Hint}); e.Number <= want[len(want)-1].Number {
		t.Errorf("the next number is %d after %d", e.Number, want[len(want)-1].Number)
	}
	again, err := OpenForeign(path)
	if err != nil {
		t.Fatal("the migrated record is not taken as one:", err)
	}
	again.Close()
}

// Entries under another student's name take no place of the entries that they
// were copied from, whichever comes first.
func TestOneIDUnderTwoNames(t *testing.T) {
	source := mustMemory(t)
	honest := []Entry{mustAppend(t, source, Entry{Student: "aylin", Kind: Answer, Text: "T1 = 3 N"})}
	copied := []Entry{honest[0]}
	copied[0].Student = "bo"
	var before []Entry
	for _, order := range [][][]Entry{{honest, copied}, {copied, honest}, {copied, honest, copied, honest}} {
		r := mustMemory(t)
		for _, list := range order {
			if sum, err := r.Merge(each(list)); err != nil || sum.Conflicts != nil {
				t.Fatalf("%+v, %v", sum, err)
			}
		}
		got := allOf(t, r)
		if len(got) != 2 || before != nil && !cmp.Equal(got, before) {
			t.Errorf("kept %v after %v", got, before)
		}
		before = got
		for _, want := range []Entry{honest[0], copied[0]} {
			if e, err := r.Entry(want.ID, want.Student); err != nil || e != want {
				t.Errorf("found %v, %v; want %v", e, err, want)
			}
		}
		if shared, err := r.Shared(); err != nil || !cmp.Equal(shared, []Entry{honest[0], copied[0]}) {
			t.Errorf("shared are %v, %v", shared, err)
		}
		if found, err := r.Find(honest[0].ID[:8]); err != nil || len(found) != 2 {
			t.Errorf("found %v, %v", found, err)
		}
	}
}
