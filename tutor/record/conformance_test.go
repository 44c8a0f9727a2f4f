// Inside the package: it looks at ids, times and pages as both stores write them.

package record

import (
	"context"
	"crypto/rand"
	"encoding/hex"
	"errors"
	"fmt"
	"iter"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// databaseVariable holds the address of a database that tests may fill.
const databaseVariable = "STANDSTILL_POSTGRES"

// bookOf gives a test the address of the database and a book of its own.
func bookOf(t testing.TB) (location, book string) {
	t.Helper()
	location = os.Getenv(databaseVariable)
	if location == "" {
		t.Skip("not run: the tests of PostgreSQL need the address of a database in " + databaseVariable)
	}
	if _, err := Migrate(location, Options{}); err != nil {
		t.Fatal(err)
	}
	var random [8]byte
	rand.Read(random[:])
	return location, t.Name() + hex.EncodeToString(random[:])
}

// eachStore runs a test on both stores. again opens the same record once more, as another
// machine does.
func eachStore(t *testing.T, test func(t *testing.T, r *Record, again func() *Record)) {
	t.Run("file", func(t *testing.T) {
		path := filepath.Join(t.TempDir(), "record.db")
		test(t, mustOpen(t, path), func() *Record { return mustOpen(t, path) })
	})
	t.Run("database", func(t *testing.T) {
		location, book := bookOf(t)
		machines := 0
		open := func() *Record {
			machines++
			r, err := Open(location, Options{Book: book, Host: fmt.Sprint("machine ", machines)})
			if err != nil {
				t.Fatal(err)
			}
			t.Cleanup(func() { r.Close() })
			return r
		}
		test(t, open(), open)
	})
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// Whatever is kept comes back as it was, text that is no text included.
func TestStoreKeepsEntriesAsTheyCame(t *testing.T) {
	eachStore(t, func(t *testing.T, r *Record, again func() *Record) {
		var want []Entry
		for _, text := range []string{"T1 cos α", "", "\x00zero", "no text \xff\xfe", encodedMark + "x", "'; DROP TABLE entry; --", "$1 ? {=}", strings.Repeat("α", MaxText/2)} {
			want = append(want, mustAppend(t, r, Entry{Student: "ada", Kind: Answer, Problem: "p", Hash: "h", Copy: 2,
				Givens: "m=2", Stage: "solve", Item: "T1", Text: text, Ref: "ref", Detail: text}))
		}
		if diff := cmp.Diff(want, collect(t, again().Entries(Filter{}))); diff != "" {
			t.Errorf("read back (-want +got):\n%s", diff)
		}
		for i, e := range want {
			if e.Number != int64(i+1) || e.Record != r.ID() || !isID(e.ID) || e.Time.IsZero() {
				t.Errorf("entry %d is signed %d %s %s %v", i, e.Number, e.Record, e.ID, e.Time)
			}
		}
		_, err := r.Append(Entry{Text: strings.Repeat("x", MaxText+1)})
		mustBe(t, err, ErrTooLong)
	})
}

func TestStoreFindsEntries(t *testing.T) {
	eachStore(t, func(t *testing.T, r *Record, again func() *Record) {
		for i := range 3 * pageRows {
			e := Entry{Student: []string{"ada", "ben", "Ada"}[i%3], Kind: []string{Answer, Hint}[i%2], Problem: []string{"p", "q", "r", "s"}[i%4], Text: fmt.Sprint(i)}
			if i < 40 {
				mustAppend(t, r, e)
				continue
			}
			if i == 40 {
				break
			}
		}
		all := collect(t, r.Entries(Filter{}))
		for _, f := range []Filter{{}, {Student: "ada"}, {Student: "Ada"}, {Problem: "q"}, {Kinds: []string{Hint}}, {Student: "ben", Kinds: []string{Hint, Answer}, Problem: "r"}, {Student: "nobody"}} {
			want := slices.DeleteFunc(slices.Clone(all), func(e Entry) bool {
				return f.Student != "" && e.Student != f.Student || f.Problem != "" && e.Problem != f.Problem || f.Kinds != nil && !slices.Contains(f.Kinds, e.Kind)
			})
			if got := collect(t, r.Entries(f)); !slices.Equal(got, want) {
				t.Errorf("%v: %d entries, want %d", f, len(got), len(want))
			}
		}
		one := all[7]
		if got, err := r.Entry(one.ID, one.Student); err != nil || got != one {
			t.Errorf("Entry: %v, %v", got, err)
		}
		_, err := r.Entry(one.ID, "somebody else")
		mustBe(t, err, ErrUnknown)
		if found, err := r.Find(one.ID[:9]); err != nil || len(found) != 1 || found[0] != one {
			t.Errorf("Find: %v, %v", found, err)
		}
		if found, err := r.Find(""); err != nil || len(found) != 2 {
			t.Errorf("Find nothing: %v, %v", found, err)
		}
		counts, err := again().Counts()
		if want := map[string]int{"ada": 14, "ben": 13, "Ada": 13}; err != nil || !cmp.Equal(counts, want) {
			t.Errorf("Counts: %v, %v", counts, err)
		}
	})
}

// A thousand small records come together in any order and any number of times.
func TestStoreMerges(t *testing.T) {
	eachStore(t, func(t *testing.T, r *Record, _ func() *Record) {
		var all []Entry
		for i := range 1000 {
			other := hex.EncodeToString([]byte(fmt.Sprintf("record %09d", i)))
			for j := range 3 {
				all = append(all, Entry{ID: hex.EncodeToString([]byte(fmt.Sprintf("entry %06d %03d", i, j))), Record: other, Number: int64(j + 1),
					Student: fmt.Sprint("s", i%30), Kind: Answer, Text: fmt.Sprint(i, "/", j)})
				all[len(all)-1].Time = toMillisecond(all[len(all)-1].Time)
			}
		}
		for round, want := range []int{len(all), 0} {
			sum, err := r.merge(seqOf(all), 700, false)
			if err != nil || sum.Added != want || sum.Known != len(all)-want || len(sum.Conflicts)+len(sum.Refused) != 0 {
				t.Fatalf("round %d: %d added, %d known, %v", round, sum.Added, sum.Known, err)
			}
			slices.Reverse(all)
		}
		other, renamed, bad := all[0], all[1], all[2]
		other.Text, renamed.Student, bad.ID = "something else", "mallory", "short"
		sum, err := r.Merge(seqOf([]Entry{other, renamed, renamed, bad}))
		if err != nil || sum.Added != 1 || sum.Known != 1 || len(sum.Conflicts) != 1 || sum.Conflicts[0].Here != all[0] || len(sum.Refused) != 1 {
			t.Errorf("%+v, %v", sum, err)
		}
		if got := collect(t, r.Entries(Filter{})); len(got) != len(all)+1 {
			t.Errorf("%d entries", len(got))
		}
		if e := mustAppend(t, r, Entry{}); e.Number != 1 {
			t.Errorf("the record's own first number is %d", e.Number)
		}
	})
}

// An id under two names is found in the record where that is so, and in no other.
func TestStoreFindsSharedEntries(t *testing.T) {
	eachStore(t, func(t *testing.T, r *Record, _ func() *Record) {
		one := Entry{ID: strings.Repeat("a1", 16), Record: strings.Repeat("b2", 16), Number: 1, Student: "ada", Kind: Answer}
		renamed, other := one, one
		renamed.Student, other.ID, other.Number = "ben", strings.Repeat("c3", 16), 2
		_, err := r.Merge(seqOf([]Entry{one, renamed, other}))
		must(t, err)
		if r.isDatabase() {
			location, book := bookOf(t)
			next, err := Open(location, Options{Book: book})
			must(t, err)
			defer next.Close()
			_, err = next.Merge(seqOf([]Entry{renamed, other}))
			must(t, err)
			if shared, err := next.Shared(); err != nil || len(shared) != 0 {
				t.Errorf("another book shares %v, %v", shared, err)
			}
		}
		shared, err := r.Shared()
		if err != nil || len(shared) != 2 || shared[0].Student != "ada" || shared[1].Student != "ben" || shared[0].ID != shared[1].ID {
			t.Errorf("shared: %v, %v", shared, err)
		}
	})
}

func seqOf(entries []Entry) iter.Seq2[Entry, error] {
	return func(yield func(Entry, error) bool) {
		for _, e := range entries {
			if !yield(e, nil) {
				return
			}
		}
	}
}

func TestStoreRemembersTheRest(t *testing.T) {
	eachStore(t, func(t *testing.T, r *Record, again func() *Record) {
		must(t, r.AddStudent("b", "Ben"))
		must(t, r.AddStudent("a", "Ada"))
		must(t, r.AddStudent("b", "Benedict \x00"))
		must(t, r.SetLastStudent("a"))
		must(t, r.SetSetting("background", "light"))
		must(t, r.SetSetting("background", "dark"))
		must(t, r.SaveProblem("h2", "p", "text"))
		must(t, r.SaveProblem("h1", "p", "text \xff"))
		must(t, r.SaveProblem("h1", "q", "another"))
		must(t, r.SetCaches(map[string][]byte{"x": {1, 0, 2}, "y": nil}))
		must(t, r.SetCache("x", []byte{3}))

		r = again()
		students, err := r.Students()
		if want := []Student{{"b", "Benedict \x00"}, {"a", "Ada"}}; err != nil || !slices.Equal(students, want) {
			t.Errorf("students: %v, %v", students, err)
		}
		if last, err := r.LastStudent(); last != "a" || err != nil {
			t.Errorf("last student: %q, %v", last, err)
		}
		if s, err := r.Setting("background"); s != "dark" || err != nil {
			t.Errorf("setting: %q, %v", s, err)
		}
		if s, err := r.Setting("missing"); s != "" || err != nil {
			t.Errorf("no setting: %q, %v", s, err)
		}
		if p, err := r.Problem("h1"); err != nil || p != (Problem{"h1", "p", "text \xff"}) {
			t.Errorf("problem: %v, %v", p, err)
		}
		_, err = r.Problem("h3")
		mustBe(t, err, ErrUnknown)
		var hashes []string
		for p, err := range r.Problems() {
			must(t, err)
			hashes = append(hashes, p.Hash)
		}
		if !slices.Equal(hashes, []string{"h1", "h2"}) {
			t.Errorf("problems: %v", hashes)
		}
		if v, ok, err := r.Cache("x"); !ok || err != nil || string(v) != "\x03" {
			t.Errorf("cache: %v, %v, %v", v, ok, err)
		}
		if v, ok, err := r.Cache("y"); !ok || err != nil || len(v) != 0 {
			t.Errorf("empty cache: %v, %v, %v", v, ok, err)
		}
		must(t, r.ClearCache())
		if _, ok, err := r.Cache("x"); ok || err != nil {
			t.Errorf("after clearing: %v, %v", ok, err)
		}
	})
}

func TestStoreForgets(t *testing.T) {
	eachStore(t, func(t *testing.T, r *Record, again func() *Record) {
		for i := range 6 {
			mustAppend(t, r, Entry{Student: []string{"ada", "ben"}[i%2], Kind: Answer, Text: fmt.Sprint(i)})
		}
		must(t, r.AddStudent("ada", "Ada"))
		must(t, r.SetLastStudent("ada"))
		must(t, r.SaveDraft(Draft{Student: "ada", Text: "T1"}))
		n, err := r.Forget("ada")
		if err != nil || n != 3 {
			t.Fatalf("forgot %d, %v", n, err)
		}
		got := collect(t, again().Entries(Filter{}))
		if len(got) != 3 || got[0].Number != 2 || got[2].Number != 6 {
			t.Errorf("left: %v", got)
		}
		drafts, err := r.Drafts("ada")
		last, err2 := r.LastStudent()
		students, err3 := r.Students()
		if err := errors.Join(err, err2, err3); err != nil || drafts != nil || last != "" || students != nil {
			t.Errorf("left: %v, %q, %v, %v", drafts, last, students, err)
		}
		if e := mustAppend(t, r, Entry{}); e.Number != 7 {
			t.Errorf("the next number is %d", e.Number)
		}
	})
}

// What was forgotten does not come back with another record that holds it, unless it is
// recalled; the same entries under another name are another matter.
func TestStoreDoesNotBringBackWhatWasForgotten(t *testing.T) {
	eachStore(t, func(t *testing.T, r *Record, again func() *Record) {
		for i := range 4 {
			mustAppend(t, r, Entry{Student: []string{"ada", "ben"}[i%2], Kind: Answer, Text: fmt.Sprint(i)})
		}
		mustAppend(t, r, Entry{Student: "ada", Kind: Noted})
		all := collect(t, r.Entries(Filter{}))
		if n, err := r.Forget("ada"); n != 3 || err != nil {
			t.Fatalf("forgot %d, %v", n, err)
		}
		other := again()
		if sum, err := other.Merge(seqOf(all)); err != nil || sum.Added != 1 || sum.Known != 2 || sum.Forgotten != 2 {
			t.Errorf("%+v, %v", sum, err)
		}
		renamed := all[0]
		renamed.Student = "mallory"
		if sum, err := other.Merge(seqOf([]Entry{renamed})); err != nil || sum.Added != 1 {
			t.Errorf("under another name: %+v, %v", sum, err)
		}
		if sum, err := other.Recall(seqOf(all)); err != nil || sum.Added != 2 || sum.Forgotten != 0 {
			t.Errorf("recalled: %+v, %v", sum, err)
		}
		if sum, err := r.Merge(seqOf(all)); err != nil || sum.Known != len(all) {
			t.Errorf("after that: %+v, %v", sum, err)
		}
		for _, e := range collect(t, r.Entries(Filter{Student: "ada"})) {
			if !slices.Contains(all, e) {
				t.Errorf("came back as %v", e)
			}
		}
	})
}

// Everything from before a date goes, and students of whom nothing is left.
func TestStoreForgetsWhatIsOld(t *testing.T) {
	eachStore(t, func(t *testing.T, r *Record, again func() *Record) {
		day := func(n int) time.Time { return time.Date(2026, 3, n, 8, 0, 0, 0, time.UTC) }
		var old []Entry
		for n := range 6 {
			old = append(old, Entry{ID: fmt.Sprintf("%032x", n+1), Record: strings.Repeat("d4", 16), Number: int64(n + 1),
				Time: day(n + 1), Student: []string{"ada", "ben"}[n/3], Kind: Answer})
		}
		_, err := r.Merge(seqOf(old))
		must(t, err)
		for _, id := range []string{"ada", "ben", "cem"} {
			must(t, r.AddStudent(id, id))
		}
		must(t, r.SaveDraft(Draft{Student: "cem", Text: "T1"}))
		must(t, r.SetCache("k", []byte("v")))
		if n, err := r.CountBefore(day(5)); n != 4 || err != nil {
			t.Errorf("counted %d, %v", n, err)
		}
		if n, err := r.ForgetBefore(day(5)); n != 4 || err != nil {
			t.Fatalf("forgot %d, %v", n, err)
		}
		got := collect(t, again().Entries(Filter{}))
		if len(got) != 2 || got[0].Time != day(5) {
			t.Errorf("left: %v", got)
		}
		students, err := r.Students()
		_, cached, err2 := r.Cache("k")
		if errors.Join(err, err2) != nil || len(students) != 2 || students[0].ID != "ben" || cached {
			t.Errorf("left: %v, %v, %v", students, cached, errors.Join(err, err2))
		}
		if sum, err := r.Merge(seqOf(old)); err != nil || sum.Added != 0 || sum.Forgotten != 4 {
			t.Errorf("merged again: %+v, %v", sum, err)
		}
	})
}

func TestStoreKeepsDrafts(t *testing.T) {
	eachStore(t, func(t *testing.T, r *Record, again func() *Record) {
		d := Draft{Student: "ada", Problem: "p", Hash: "h", Givens: "g", Copy: 1, Stage: "components", Item: "T1x"}
		for _, text := range []string{"T", "T1", "T1 cos"} {
			d.Text = text
			must(t, r.SaveDraft(d))
		}
		drafts, err := again().Drafts("ada")
		if err != nil || len(drafts) != 1 || drafts[0].Text != "T1 cos" || drafts[0].Time.IsZero() {
			t.Fatalf("drafts: %v, %v", drafts, err)
		}
		e := Entry{Student: "ada", Problem: "p", Hash: "h", Givens: "g", Copy: 1, Kind: Hint}
		mustAppend(t, r, e)
		other := e
		other.Copy, other.Kind = 2, Answer
		mustAppend(t, r, other)
		if drafts, err := r.Drafts("ada"); err != nil || len(drafts) != 1 {
			t.Errorf("after a hint and another copy's answer: %v, %v", drafts, err)
		}
		e.Kind = Answer
		mustAppend(t, r, e)
		if drafts, err := r.Drafts("ada"); err != nil || drafts != nil {
			t.Errorf("after the answer: %v, %v", drafts, err)
		}
	})
}

// Whoever comes later takes the place over, and the earlier visit keeps nothing more.
func TestStoreLeases(t *testing.T) {
	eachStore(t, func(t *testing.T, r *Record, again func() *Record) {
		first, err := r.TakeLease("ada", "one")
		must(t, err)
		visit := r.Holding(first)
		if _, err := visit.Append(Entry{Student: "ada", Text: "first"}); err != nil {
			t.Fatal(err)
		}
		host := again()
		second, err := host.TakeLease("ada", "two")
		must(t, err)
		_, err = visit.Append(Entry{Student: "ada", Text: "late"})
		mustBe(t, err, ErrTaken)
		mustBe(t, visit.SaveDraft(Draft{Student: "ada", Text: "T1"}), ErrTaken)
		e, err := host.Holding(second).Append(Entry{Student: "ada", Text: "second"})
		must(t, err)
		if got := collect(t, r.Entries(Filter{})); len(got) != 2 || !slices.Contains(got, e) {
			t.Errorf("kept: %v", got)
		}
		must(t, r.EndLease(first)) // too late: it is not its own any more
		leases, err := r.Leases()
		if err != nil || len(leases) != 1 || leases["ada"] != second {
			t.Errorf("leases: %v, %v", leases, err)
		}
		must(t, host.EndLease(second))
		if leases, err := r.Leases(); err != nil || len(leases) != 0 {
			t.Errorf("leases: %v, %v", leases, err)
		}
		own := mustAppend(t, r, Entry{Text: "after"})
		if want := map[bool]int64{true: 2, false: 3}[r.isDatabase()]; own.Number != want {
			t.Errorf("a refused entry took a number: the next is %d, want %d", own.Number, want)
		}
	})
}

func TestStoreKeepsDoors(t *testing.T) {
	eachStore(t, func(t *testing.T, r *Record, again func() *Record) {
		if d, err := r.Door("ada"); err != nil || !cmp.Equal(d, Door{}) {
			t.Fatalf("before: %v, %v", d, err)
		}
		must(t, r.SetDoors(map[string]Door{"ada": {Hash: "a", Keys: []string{"k1", "k2"}}, "ben": {Hash: "b"}}))
		other := again()
		must(t, other.SetDoors(map[string]Door{"ada": {Hash: "new"}}))
		for _, r := range []*Record{r, other} {
			ada, err := r.Door("ada")
			ben, err2 := r.Door("ben")
			if errors.Join(err, err2) != nil || !cmp.Equal(ada, Door{Hash: "new"}) || !cmp.Equal(ben, Door{Hash: "b"}) {
				t.Errorf("ada %v, ben %v, %v", ada, ben, errors.Join(err, err2))
			}
		}
	})
}

// Many visits at several machines write at once: nothing lost, nothing twice, no gaps,
// and no student's time goes back.
func TestStoreUnderLoad(t *testing.T) {
	eachStore(t, func(t *testing.T, r *Record, again func() *Record) {
		const visits, each = 60, 20
		machines := []*Record{r, again()}
		var wait sync.WaitGroup
		told := make([][]string, visits)
		for i := range visits {
			wait.Go(func() {
				l, err := machines[i%2].TakeLease(fmt.Sprint("s", i), "host")
				if err != nil {
					t.Error(err)
					return
				}
				visit := machines[i%2].Holding(l).Within(context.Background)
				for j := range each {
					e, err := visit.Append(Entry{Student: l.Student, Kind: Answer, Text: fmt.Sprint(i, "/", j)})
					if err != nil {
						t.Error(err)
						return
					}
					told[i] = append(told[i], e.ID)
				}
			})
		}
		wait.Wait()
		entries := collect(t, r.Entries(Filter{}))
		if len(entries) != visits*each {
			t.Fatalf("%d entries, want %d", len(entries), visits*each)
		}
		mustHoldOnce(t, entries, slices.Concat(told...))
		last, latest := map[string]int64{}, map[string]int64{}
		for _, e := range entries {
			if e.Number != last[e.Record]+1 {
				t.Fatalf("number %d follows %d", e.Number, last[e.Record])
			}
			last[e.Record] = e.Number
			if ms := e.Time.UnixMilli(); ms < latest[e.Student] {
				t.Errorf("the time of %s goes back", e.Student)
			} else {
				latest[e.Student] = ms
			}
		}
	})
}

// Who deleted is written down, in the name of nobody who was deleted.
func TestStoreSaysWhoDeleted(t *testing.T) {
	eachStore(t, func(t *testing.T, r *Record, again func() *Record) {
		mustAppend(t, r, Entry{Student: "ada", Kind: Answer})
		n, err := r.Forget("ada")
		must(t, err)
		must(t, r.NoteDeleted("of one student", n))
		operator, err := r.Operator()
		must(t, err)
		if operator == "" {
			t.Error("nobody works with the record")
		}
		all := collect(t, again().Entries(Filter{}))
		if len(all) != 1 || all[0].Kind != Deleted || all[0].Student != "" || all[0].Detail != operator || all[0].Text != "1 entries of one student" {
			t.Errorf("after the deletion the record holds %+v", all)
		}
		counts, err := r.Counts()
		must(t, err)
		if len(counts) != 0 {
			t.Errorf("students have entries: %v", counts)
		}
	})
}
