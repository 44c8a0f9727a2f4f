// Inside the package: it looks at what is stored, beside what is given back.

package record

import (
	"errors"
	"iter"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

func mustOpen(t testing.TB, path string) *Record {
	t.Helper()
	r, err := Open(path, Options{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close() })
	return r
}

func mustMemory(t testing.TB) *Record {
	t.Helper()
	r, err := OpenMemory(Options{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close() })
	return r
}

func mustAppend(t testing.TB, r *Record, e Entry) Entry {
	t.Helper()
	e, err := r.Append(e)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

func collect[T any](t testing.TB, all iter.Seq2[T, error]) []T {
	t.Helper()
	var list []T
	for x, err := range all {
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, x)
	}
	return list
}

func mustBe(t testing.TB, err, want error) {
	t.Helper()
	if !errors.Is(err, want) {
		t.Fatalf("error is %v, want %v", err, want)
	}
	if Sentence(err) == "" {
		t.Errorf("no sentence for %v", err)
	}
}

func TestAppendIsReadBack(t *testing.T) {
	folder := "a folder with # ? % & ü in it"
	if runtime.GOOS == "windows" {
		folder = strings.ReplaceAll(folder, "?", "!") // no name there may have one
	}
	path := filepath.Join(t.TempDir(), folder, "record.db")
	clock := time.Date(2031, 3, 9, 10, 20, 30, 123_456_789, time.FixedZone("here", 3600))
	r, err := Open(path, Options{Now: func() time.Time { return clock }, Random: rand.NewChaCha8([32]byte{})})
	if err != nil {
		t.Fatal(err)
	}
	given := Entry{Student: "k7", Kind: Answer, Problem: "pier-sign", Hash: "h", Copy: 2, Givens: "m=3.2 kg",
		Stage: "components", Item: "T1x", Text: "T1 cos 35\x00\xff \u202e=\n", Ref: "r", Detail: "d"}
	first, second := mustAppend(t, r, given), mustAppend(t, r, Entry{})

	want := given
	want.ID, want.Record, want.Number = first.ID, r.ID(), 1
	want.Time = time.Date(2031, 3, 9, 9, 20, 30, 123_000_000, time.UTC)
	if diff := cmp.Diff(want, first); diff != "" {
		t.Errorf("appended (-want +got):\n%s", diff)
	}
	if !isID(first.ID) || first.ID == second.ID || second.Number != 2 {
		t.Errorf("entries are not told apart: %v, %v", first, second)
	}
	r.Close()
	again := mustOpen(t, path)
	if diff := cmp.Diff([]Entry{first, second}, collect(t, again.Entries(Filter{}))); diff != "" {
		t.Errorf("read back (-want +got):\n%s", diff)
	}
	if got, err := again.Entry(first.ID, first.Student); err != nil || got != first {
		t.Errorf("Entry = %v, %v", got, err)
	}
	_, err = again.Entry(strings.Repeat("0", 32), "")
	mustBe(t, err, ErrUnknown)
	_, err = again.Entry("no id", "")
	mustBe(t, err, ErrUnknown)
}

func TestEntriesAreFiltered(t *testing.T) {
	r := mustMemory(t)
	kinds := []string{Answer, Hint, Disputed}
	for i := range 3 * pageRows {
		mustAppend(t, r, Entry{Student: string('a' + rune(i%2)), Problem: string('p' + rune(i%5)), Kind: kinds[i%3]})
	}
	all := collect(t, r.Entries(Filter{}))
	if len(all) != 3*pageRows {
		t.Fatalf("%d entries, want %d", len(all), 3*pageRows)
	}
	for _, f := range []Filter{
		{Student: "b"},
		{Problem: "q"},
		{Kinds: []string{Hint, Disputed}},
		{Student: "a", Problem: "r", Kinds: []string{Answer}},
		{Student: "nobody"},
	} {
		var want []Entry
		for _, e := range all {
			if (f.Student == "" || f.Student == e.Student) && (f.Problem == "" || f.Problem == e.Problem) &&
				(f.Kinds == nil || strings.Contains(strings.Join(f.Kinds, " "), e.Kind)) {
				want = append(want, e)
			}
		}
		if diff := cmp.Diff(want, collect(t, r.Entries(f))); diff != "" {
			t.Errorf("%+v (-want +got):\n%s", f, diff)
		}
	}
}

// A loop over entries holds no lock: its body may write, and may end it.
func TestEntriesLeaveTheRecordFree(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.db")
	r, other := mustOpen(t, path), mustOpen(t, path)
	for range 3 {
		mustAppend(t, r, Entry{Kind: Answer})
	}
	n := 0
	for e, err := range r.Entries(Filter{Kinds: []string{Answer}}) {
		if err != nil {
			t.Fatal(err)
		}
		mustAppend(t, r, Entry{Kind: Accepted, Ref: e.ID})
		mustAppend(t, other, Entry{Kind: Withdrawn, Ref: e.ID})
		if n++; n == 2 {
			break
		}
	}
	if all := collect(t, other.Entries(Filter{})); len(all) != 7 {
		t.Errorf("%d entries, want 7", len(all))
	}
}

func TestLongTextsAreRefused(t *testing.T) {
	r := mustMemory(t)
	long := strings.Repeat("x", MaxText)
	mustAppend(t, r, Entry{Text: long})
	_, err := r.Append(Entry{Text: long + "x"})
	mustBe(t, err, ErrTooLong)
	mustBe(t, r.SaveProblem("h", "id", strings.Repeat("x", LongestSaved+1)), ErrTooLong)
	mustBe(t, r.AddStudent(long+"x", ""), ErrTooLong)
	mustBe(t, r.SetSetting("k", long+"x"), ErrTooLong)
	mustBe(t, r.SetCache("k", make([]byte, LongestSaved+1)), ErrTooLong)
	_, err = r.Append(Entry{Copy: -1})
	mustBe(t, err, ErrMalformed)
	if all := collect(t, r.Entries(Filter{})); len(all) != 1 || all[0].Number != 1 {
		t.Errorf("refused texts left a trace: %d entries", len(all))
	}
}

func TestStudentsAndSettings(t *testing.T) {
	r := mustMemory(t)
	for _, s := range []Student{{"z1", "Zoë"}, {"a1", "Ada"}, {"z1", "Zoë B."}, {"n", "=1+2\x1b[2J\u202e/../"}} {
		if err := r.AddStudent(s.ID, s.Name); err != nil {
			t.Fatal(err)
		}
	}
	got, err := r.Students()
	want := []Student{{"z1", "Zoë B."}, {"a1", "Ada"}, {"n", "=1+2\x1b[2J\u202e/../"}}
	if diff := cmp.Diff(want, got); diff != "" || err != nil {
		t.Errorf("%v, students (-want +got):\n%s", err, diff)
	}
	if last, err := r.LastStudent(); last != "" || err != nil {
		t.Errorf("LastStudent of a new record = %q, %v", last, err)
	}
	if err := errors.Join(r.SetLastStudent("a1"), r.SetSetting("background", "dark"), r.SetSetting("background", "light")); err != nil {
		t.Fatal(err)
	}
	last, _ := r.LastStudent()
	background, _ := r.Setting("background")
	if last != "a1" || background != "light" {
		t.Errorf("remembered %q and %q", last, background)
	}
}

func TestProblemTextsStay(t *testing.T) {
	r := mustMemory(t)
	_, err := r.Problem("h1")
	mustBe(t, err, ErrUnknown)
	if err := errors.Join(r.SaveProblem("h2", "b", "two"), r.SaveProblem("h1", "a", "one"), r.SaveProblem("h1", "a", "other")); err != nil {
		t.Fatal(err)
	}
	want := []Problem{{"h1", "a", "one"}, {"h2", "b", "two"}}
	if diff := cmp.Diff(want, collect(t, r.Problems())); diff != "" {
		t.Errorf("problems (-want +got):\n%s", diff)
	}
}

func TestCacheIsThrownAway(t *testing.T) {
	r := mustMemory(t)
	if err := r.SetCaches(map[string][]byte{"v1 a": []byte("x"), "v1 b": nil}); err != nil {
		t.Fatal(err)
	}
	for key, want := range map[string]bool{"v1 a": true, "v1 b": true, "v2 a": false} {
		if _, ok, err := r.Cache(key); ok != want || err != nil {
			t.Errorf("Cache(%q) = %v, %v", key, ok, err)
		}
	}
	if err := r.ClearCache(); err != nil {
		t.Fatal(err)
	}
	if value, ok, err := r.Cache("v1 a"); value != nil || ok || err != nil {
		t.Errorf("after ClearCache: %v, %v, %v", value, ok, err)
	}
}

func TestForgetLeavesNothingButTheGap(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.db")
	r := mustOpen(t, path)
	const secret = "a line that only this student wrote"
	mustAppend(t, r, Entry{Student: "stays", Text: "another line"})
	for range 200 {
		mustAppend(t, r, Entry{Student: "goes-away", Text: secret})
	}
	err := errors.Join(r.AddStudent("goes-away", "Gone Tomorrow"), r.AddStudent("stays", "Here Still"),
		r.SetLastStudent("goes-away"), r.SetCache("goes-away", []byte(secret)))
	if err != nil {
		t.Fatal(err)
	}
	if n, err := r.Forget("goes-away"); n != 200 || err != nil {
		t.Fatalf("Forget = %d, %v", n, err)
	}
	if e := mustAppend(t, r, Entry{Student: "stays"}); e.Number != 202 {
		t.Errorf("the next number is %d, want 202", e.Number)
	}
	if all := collect(t, r.Entries(Filter{})); len(all) != 2 {
		t.Errorf("%d entries left, want 2", len(all))
	}
	last, _ := r.LastStudent()
	students, _ := r.Students()
	if last != "" || len(students) != 1 {
		t.Errorf("the student is still here: %q, %v", last, students)
	}
	r.Close()
	for _, name := range []string{path, path + "-journal"} {
		bytes, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, word := range []string{secret, "goes-away", "Gone Tomorrow"} {
			if strings.Contains(string(bytes), word) {
				t.Errorf("%s still holds %q", filepath.Base(name), word)
			}
		}
	}
}

func TestMemoryRecordsAreApart(t *testing.T) {
	a, b := mustMemory(t), mustMemory(t)
	mustAppend(t, a, Entry{})
	if all := collect(t, b.Entries(Filter{})); len(all) != 0 || a.ID() == b.ID() {
		t.Errorf("one record in memory sees another")
	}
}

func TestPragmasHold(t *testing.T) {
	r := mustOpen(t, filepath.Join(t.TempDir(), "record.db"))
	for pragma, want := range map[string]string{"busy_timeout": "80", "journal_mode": "truncate",
		"synchronous": "2", "fullfsync": "1", "secure_delete": "1", "trusted_schema": "0"} {
		var got string
		if err := r.queryRow("PRAGMA "+pragma, nil, &got); err != nil || got != want {
			t.Errorf("%s is %q, %v; want %q", pragma, got, err, want)
		}
	}
}
