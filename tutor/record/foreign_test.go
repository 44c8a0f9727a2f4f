// Inside the package: it writes records that no program of ours would write.

package record

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestForeignIsReadWhole(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.db")
	r := mustOpen(t, path)
	if _, err := r.Merge(made(3*pageRows, 4)); err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(r.SaveProblem("h", "pier-sign", "title: A sign"), r.AddStudent("k7", "Kim")); err != nil {
		t.Fatal(err)
	}
	own := collect(t, r.Entries(Filter{}))
	r.Close()
	f, err := OpenForeign(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if diff := cmp.Diff(own, collect(t, f.Entries(Filter{}))); diff != "" {
		t.Errorf("entries (-own +foreign):\n%s", diff)
	}
	students, err := f.Students()
	if f.ID() != r.ID() || len(students) != 1 || err != nil || len(collect(t, f.Problems())) != 1 {
		t.Errorf("record %s, students %v, %v", f.ID(), students, err)
	}
	// Another program goes on writing to it, as on a shared folder.
	if out, err := child(t, path, "other", 2).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	if got := len(collect(t, f.Entries(Filter{}))); got != len(own)+2 {
		t.Errorf("%d entries after two were added to %d", got, len(own))
	}
}

func TestForeignByAShortPath(t *testing.T) {
	t.Chdir(filepath.Dir(putFile(t, smallRecord(t, 1))))
	f, err := OpenForeign("record.db")
	if err != nil {
		t.Fatal(err)
	}
	f.Close()
}

func TestIsAt(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.db")
	r := mustOpen(t, path)
	other := filepath.Join(filepath.Dir(path), "other.db")
	if err := os.Link(path, other); err != nil {
		t.Fatal(err)
	}
	if !r.IsAt(path) || !r.IsAt(other) || r.IsAt(path+"x") || mustMemory(t).IsAt(path) || mustMemory(t).IsAt("") {
		t.Error("a record does not know its file")
	}
}

func TestForeignIsNotWritten(t *testing.T) {
	path := putFile(t, smallRecord(t, 2))
	before := contents(t, filepath.Dir(path))
	f, err := OpenForeign(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	_, err = f.Append(Entry{})
	mustBe(t, err, ErrReadOnly)
	_, err = f.Forget("k7")
	mustBe(t, err, ErrReadOnly)
	for _, err := range []error{f.AddStudent("a", "b"), f.SetSetting("a", "b"), f.SaveProblem("a", "b", "c"),
		f.SetCache("a", nil), f.ClearCache()} {
		mustBe(t, err, ErrReadOnly)
	}
	mustBeUntouched(t, filepath.Dir(path), before)
}

// A journal left by a killed program is not played back for a foreign record:
// it can name files to be deleted. What is in the record itself is read.
func TestForeignJournalIsLeftAlone(t *testing.T) {
	committed, journal := amidCommit(t)
	path := putFile(t, committed)
	if err := os.WriteFile(path+"-journal", journal, 0o600); err != nil {
		t.Fatal(err)
	}
	before := contents(t, filepath.Dir(path))
	f, err := OpenForeign(path)
	if err != nil {
		t.Fatal(err)
	}
	if got := len(collect(t, f.Entries(Filter{}))); got != 401 {
		t.Errorf("%d entries, want 401", got)
	}
	f.Close()
	mustBeUntouched(t, filepath.Dir(path), before)
	// The journal is a real one: on a record of our own it is played back.
	if got := len(collect(t, mustOpen(t, path).Entries(Filter{}))); got != 1 {
		t.Errorf("%d entries after the journal was played back, want 1", got)
	}
}

// amidCommit gives a record of 401 entries, and the journal that makes one of
// 1 entry of it.
func amidCommit(t *testing.T) (committed, journal []byte) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "record.db")
	r := mustOpen(t, path)
	mustAppend(t, r, Entry{})
	if err := r.query("PRAGMA cache_size = 5", nil, nil); err != nil {
		t.Fatal(err)
	}
	other := mustMemory(t)
	for range 400 {
		mustAppend(t, other, Entry{Text: strings.Repeat("T1 cos α ", 50)})
	}
	err := r.write(func(tx *tx) error {
		for e, err := range other.Entries(Filter{}) {
			if err := errors.Join(err, execute(tx, insertEntry, e.values()...)); err != nil {
				return err
			}
		}
		journal = mustRead(t, path+"-journal")
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	r.Close()
	if len(journal) == 0 || journal[0] == 0 {
		t.Fatal("the journal is not in use yet")
	}
	return mustRead(t, path), journal
}

// asOurs makes the schema of a file say what ours says, whatever the file
// holds: the way to bring in values that our tables would have refused.
func asOurs(t *testing.T) []string {
	t.Helper()
	r := mustMemory(t)
	statements := []string{"PRAGMA writable_schema = ON"}
	err := r.objects(func(o object) error {
		if o.statement != "" {
			quoted := "'" + strings.ReplaceAll(o.statement, "'", "''") + "'"
			statements = append(statements, fmt.Sprintf("UPDATE sqlite_schema SET sql = %s WHERE name = '%s'", quoted, o.name))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return append(statements, "PRAGMA writable_schema = OFF")
}

const looseEntry = `CREATE TABLE entry (record, number, id, time, student, kind, problem, hash, copy,
	givens, stage, item, text, ref, detail, PRIMARY KEY (record, number, id, student)) WITHOUT ROWID`

// loosened are the statements that put a table without any checks in the
// place of ours, with the rows given, under our schema.
func loosened(t *testing.T, table string, rows ...string) []string {
	t.Helper()
	statements := []string{"DROP TABLE entry", table, "CREATE UNIQUE INDEX entry_named ON entry (id, student)",
		"CREATE INDEX entry_student ON entry (student)"}
	for _, row := range rows {
		statements = append(statements, "INSERT INTO entry VALUES ("+row+")")
	}
	return append(statements, asOurs(t)...)
}

func endlessList() []string {
	return []string{"PRAGMA writable_schema = ON", `WITH RECURSIVE n(x) AS
	(SELECT 1 UNION ALL SELECT x + 1 FROM n WHERE x < 3000) INSERT INTO sqlite_schema
	SELECT 'table', 't' || x, 't' || x, 2, 'CREATE TABLE t' || x || '(a)' FROM n`}
}

// SQLite reads the list of tables before it answers anything, in a time that
// goes with its square: a long one is refused before SQLite sees it.
func TestEndlessListOfTables(t *testing.T) {
	good := smallRecord(t, 1)
	mustBe(t, checkHeader(putFile(t, sqlFile(t, good, endlessList()...))), ErrNotRecord)
	if err := checkHeader(putFile(t, good)); err != nil {
		t.Error(err)
	}
}

func TestHostileRecords(t *testing.T) {
	good := smallRecord(t, 20)
	const ids = "zeroblob(16), 1, randomblob(16)"
	const texts = "'', '', '', '', 0, '', '', '', '', '', ''"
	hostile := map[string][]string{
		"view in place of the table": {"ALTER TABLE entry RENAME TO hidden", "CREATE VIEW entry AS SELECT * FROM hidden"},
		"view that does not end": {"DROP TABLE student", `CREATE VIEW student AS WITH RECURSIVE n(x) AS
			(SELECT 1 UNION ALL SELECT x + 1 FROM n) SELECT x AS id, x AS name, x AS place FROM n`},
		"trigger":                      {"CREATE TRIGGER entry_more AFTER INSERT ON entry BEGIN DELETE FROM student; END"},
		"a list of tables without end": endlessList(),
		"one more table":               {"CREATE TABLE more (x)"},
		"one more column":              {"ALTER TABLE entry ADD COLUMN more TEXT"},
		"computed column":              {"ALTER TABLE student ADD COLUMN more TEXT AS (hex(zeroblob(100000000)))"},
		"one table fewer":              {"DROP TABLE cache"},
		"index on an expression":       {"CREATE INDEX more ON entry (hex(zeroblob(1000000)))"},
		"full-text table":              {"CREATE VIRTUAL TABLE more USING fts5(x)"},
		"statistics":                   {"ANALYZE"},
		"write-ahead log":              {"PRAGMA journal_mode = WAL"},
		"two entry tables in one place": {"PRAGMA writable_schema = ON",
			"UPDATE sqlite_schema SET rootpage = (SELECT rootpage FROM sqlite_schema WHERE name = 'student') WHERE name = 'entry'"},
		"schema as its own table": {"PRAGMA writable_schema = ON", "UPDATE sqlite_schema SET rootpage = 1 WHERE name = 'student'"},
		"page that is not there":  {"PRAGMA writable_schema = ON", "UPDATE sqlite_schema SET rootpage = 4000 WHERE name = 'entry'"},
		"schema that is no SQL":   {"PRAGMA writable_schema = ON", "UPDATE sqlite_schema SET sql = 'CREATE TABLE entry (((((' WHERE name = 'entry'"},
		"schema that is endless": {"PRAGMA writable_schema = ON",
			"UPDATE sqlite_schema SET sql = 'CREATE TABLE entry (' || hex(zeroblob(5000000)) || ')' WHERE name = 'entry'"},
		"no name":            {"DELETE FROM record"},
		"nothing where text": loosened(t, looseEntry, ids+", 0, '', NULL, '', '', 0, '', '', '', '', '', ''"),
		"number where text":  loosened(t, looseEntry, ids+", 0, 7, '', '', '', 0, '', '', '', '', '', ''"),
		"text where number":  loosened(t, looseEntry, "zeroblob(16), 'one', randomblob(16), 0, "+texts),
		"text where time":    loosened(t, looseEntry, ids+", 'noon', "+texts),
		"bytes where text":   loosened(t, looseEntry, ids+", 0, x'00ff', '', '', '', 0, '', '', '', '', '', ''"),
		"short id":           loosened(t, looseEntry, "zeroblob(16), 1, x'01', 0, "+texts),
		"long id":            loosened(t, looseEntry, "zeroblob(16), 1, zeroblob(1000000), 0, "+texts),
		"number below one":   loosened(t, looseEntry, "zeroblob(16), -1, randomblob(16), 0, "+texts),
		"too few columns":    loosened(t, "CREATE TABLE entry (record, number, id, student, PRIMARY KEY (record, number, id, student)) WITHOUT ROWID", ids+", ''"),
		"endless text":       loosened(t, looseEntry, ids+", 0, '', '', '', '', 0, '', '', '', hex(zeroblob(3000000)), '', ''"),
		"backward order": loosened(t, strings.Replace(looseEntry, "number, id, student))", "number DESC, id, student))", 1),
			"zeroblob(16), 1, randomblob(16), 0, "+texts, "zeroblob(16), 2, randomblob(16), 0, "+texts),
	}
	for name, statements := range hostile {
		t.Run(name, func(t *testing.T) {
			path := putFile(t, sqlFile(t, good, statements...))
			before := contents(t, filepath.Dir(path))
			f, err := OpenForeign(path)
			if err == nil {
				err = readAll(f)
				f.Close()
			}
			if !errors.Is(err, ErrNotRecord) && !errors.Is(err, ErrDamaged) {
				t.Errorf("the error is %v", err)
			}
			mustBeUntouched(t, filepath.Dir(path), before)
		})
	}
}

// A record that lacks the tables at the end of the list is refused before anything is read of it.
func TestForeignLacksTheLastTables(t *testing.T) {
	_, err := OpenForeign(putFile(t, sqlFile(t, smallRecord(t, 1), "DROP TABLE student")))
	mustBe(t, err, ErrNotRecord)
}

// readAll reads everything that can be read of a record.
func readAll(r *Record) error {
	for _, f := range []Filter{{}, {Student: "k7"}, {Problem: "p", Kinds: []string{Answer}}} {
		for _, err := range r.Entries(f) {
			if err != nil {
				return err
			}
		}
	}
	for _, err := range r.Problems() {
		if err != nil {
			return err
		}
	}
	_, noStudents := r.Students()
	_, noLast := r.LastStudent()
	return errors.Join(noStudents, noLast)
}

// A text that is long, but not endless, does not keep the rest from being
// read; it is refused when it is merged.
func TestForeignLongText(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.db")
	r := mustOpen(t, path)
	mustAppend(t, r, Entry{Text: "first"})
	mustAppend(t, r, Entry{Text: "long"})
	if err := r.query("UPDATE entry SET text = hex(zeroblob(50000)) WHERE text = 'long'", nil, nil); err != nil {
		t.Fatal(err)
	}
	mustAppend(t, r, Entry{Text: "last"})
	f, err := OpenForeign(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	sum, err := mustMemory(t).Merge(f.Entries(Filter{}))
	if err != nil || sum.Added != 2 || len(sum.Refused) != 1 || sum.Refused[0].Why != ErrTooLong {
		t.Errorf("merged %+v, %v", sum, err)
	}
}

func TestForeignTooLarge(t *testing.T) {
	path := putFile(t, smallRecord(t, 1))
	if err := os.Truncate(path, MaxForeign+1); err != nil {
		t.Fatal(err)
	}
	_, err := OpenForeign(path)
	mustBe(t, err, ErrTooLarge)
}

// Bytes changed at random, most of them where the structure of the file is.
func TestForeignWithNoise(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	good := smallRecord(t, 40)
	random := rand.New(rand.NewPCG(3, 5))
	opened := 0
	for range 250 {
		content := bytes.Clone(good)
		for range 1 + random.IntN(6) {
			at := random.IntN(len(content)/4096)*4096 + random.IntN(1+random.IntN(4096))
			content[at] = byte(random.Uint32())
		}
		if mustSurvive(t, content) == nil {
			opened++
		}
	}
	if opened == 0 || opened == 250 {
		t.Errorf("%d of 250 were read through, which tries nothing", opened)
	}
}

func mustSurvive(t *testing.T, content []byte) error {
	path := putFile(t, content)
	f, err := OpenForeign(path)
	if err == nil {
		err = readAll(f)
		f.Close()
	}
	mustBeUntouched(t, filepath.Dir(path), map[string]string{path: string(content)})
	if err != nil && kindOf(err) == nil {
		t.Errorf("an error of no kind: %v", err)
	}
	return err
}

// FuzzForeign changes a sound record: each pair of patches is a place and a
// byte. With no record under it, almost nothing would get past the header.
func FuzzForeign(f *testing.F) {
	good := smallRecord(f, 12)
	f.Add([]byte{0, 0, 0}, uint32(len(good)))
	f.Add([]byte{0, 19, 2, 0, 103, 9}, uint32(len(good)))
	f.Add([]byte{16, 3, 0xff, 16, 5, 1}, uint32(9000))
	f.Fuzz(func(t *testing.T, patches []byte, size uint32) {
		content := bytes.Clone(good)
		for ; len(patches) >= 3; patches = patches[3:] {
			at := int(patches[0])<<8 | int(patches[1])
			content[at%len(content)] = patches[2]
		}
		mustSurvive(t, content[:min(int(size), len(content))])
	})
}

// FuzzForeignBytes takes any bytes as a record.
func FuzzForeignBytes(f *testing.F) {
	good := smallRecord(f, 3)
	f.Add(good)
	f.Add(good[:4096])
	f.Add([]byte("SQLite format 3\x00"))
	f.Add([]byte{})
	f.Fuzz(func(t *testing.T, content []byte) { mustSurvive(t, content) })
}
