//go:build unix

package screen_test

import (
	"database/sql"
	"os"
	"path/filepath"
	"strings"
	"testing"

	_ "modernc.org/sqlite"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
)

// lock holds a record as another program does; the program under test is a process of
// its own.
func lock(t *testing.T, path string) (release func()) {
	t.Helper()
	db, err := sql.Open("sqlite", "file:"+path+"?_pragma=busy_timeout(10000)")
	if err != nil {
		t.Fatal(err)
	}
	db.SetMaxOpenConns(1)
	if _, err := db.Exec("BEGIN IMMEDIATE"); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { db.Close() })
	return func() { db.Close() }
}

const rightForces = "T1 up left; T2 up right; w down"

// atLantern opens a problem on a record of its own.
func atLantern(t *testing.T, program string) (m *terminal, record string) {
	t.Helper()
	record = filepath.Join(t.TempDir(), "record.db")
	m = start(t, program, 100, 30, nil, "--record", record)
	m.sees("Who is practising?")
	m.send("Nele" + enter)
	m.sees("nothing is lost")
	m.send("canal" + enter)
	m.sees("▸ " + tutor.Title(checker.Diagram))
	return m, record
}

func TestRecordLockedByAnotherProgram(t *testing.T) {
	program := build(t)
	components := tutor.Title(checker.Components)
	t.Run("it becomes free", func(t *testing.T) {
		m, record := atLantern(t, program)
		release := lock(t, record)
		m.send(rightForces + enter)
		m.sees("line is not saved yet", rightForces)
		m.send("T1 cos") // typed ahead
		release()
		m.sees("▸ "+components, "T1 cos")
		m.send(ctrlC)
		m.ends()
	})
	t.Run("the student stops waiting and checks the line again", func(t *testing.T) {
		m, record := atLantern(t, program)
		release := lock(t, record)
		m.send(rightForces + enter)
		m.sees("line is not saved yet")
		m.send(escape)
		m.sees("Your last line does not count", rightForces)
		release()
		m.send(enter)
		m.sees("▸ " + components)
		m.send(ctrlC)
		m.ends()
	})
	t.Run("the student leaves", func(t *testing.T) {
		m, record := atLantern(t, program)
		lock(t, record)
		m.send(rightForces + enter)
		m.sees("line is not saved yet")
		m.send(ctrlC)
		if said := m.ends(); promisesAll(said) || !strings.Contains(flat(said), "for too long") {
			t.Fatalf("leaving says %q", said[max(0, len(said)-400):])
		}
	})
}

// promisesAll reports whether everything is said to be kept.
func promisesAll(said string) bool {
	return strings.Contains(flat(said), "Your work is saved, and so is the line")
}

func flat(text string) string { return strings.Join(strings.Fields(text), " ") }

func TestRecordGoneWhileInUse(t *testing.T) {
	program := build(t)
	for name, harm := range map[string]func(path string) error{
		"deleted": os.Remove,
		"moved":   func(path string) error { return os.Rename(path, path+".moved") },
		"written over": func(path string) error {
			return os.WriteFile(path, []byte(strings.Repeat("Dear diary, today the crane stood still.\n", 2000)), 0o600)
		},
	} {
		t.Run(name, func(t *testing.T) {
			m, record := atLantern(t, program)
			m.send(rightForces + enter)
			m.sees("▸ " + tutor.Title(checker.Components))
			if err := harm(record); err != nil {
				t.Fatal(err)
			}
			m.send("T1 cos alpha" + enter)
			m.sees("type it again")
			m.send(ctrlC)
			if said := m.ends(); promisesAll(said) || !strings.Contains(flat(said), "moved or deleted") {
				t.Fatalf("leaving says %q", said[max(0, len(said)-400):])
			}
		})
	}
}
