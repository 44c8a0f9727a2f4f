// Inside the package: it uses the room of class_test.go.

package class

import (
	"context"
	"path/filepath"
	"testing"

	"example.org/standstill/tutor/record"
)

// Whoever may only read a record can report on it.
func TestReportOfAReader(t *testing.T) {
	r := newRoom(t)
	r.type_(r.lesson("s01", "canal-lantern"), "T1 up left; T2 up right; w down")
	foreign, err := record.OpenForeign(filepath.Join(r.dir, "machine-s01", "record.db"))
	must(t, err)
	defer foreign.Close()
	m, err := OpenMarkbook(Options{Class: r.class, Bank: r.bank, Record: foreign, Now: r.book.Now})
	must(t, err)
	report, err := m.Report(context.Background())
	must(t, err)
	if report.Entries == 0 {
		t.Error("the report knows of no entries")
	}
}
