// Inside the package: it makes entries with ids and numbers of its own.

package record

import (
	"fmt"
	"iter"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// each gives the entries of a list as a record would.
func each(entries []Entry) iter.Seq2[Entry, error] {
	return func(yield func(Entry, error) bool) {
		for _, e := range entries {
			if !yield(e, nil) {
				return
			}
		}
	}
}

// anyEntry draws from few records, numbers and ids, so that entries meet, but
// gives each id one content alone.
func anyEntry() *rapid.Generator[Entry] {
	return rapid.Custom(func(t *rapid.T) Entry {
		n := rapid.IntRange(0, 60).Draw(t, "id")
		return Entry{
			ID: fmt.Sprintf("%032x", n), Record: fmt.Sprintf("%032x", n%3), Number: int64(1 + n%7),
			Time:    time.UnixMilli(int64(n) * 1e12).UTC(),
			Student: string(rune('a' + n%4)), Kind: Answer, Text: fmt.Sprint("T1 = ", n), Copy: n % 2,
		}
	})
}

func entriesOf(t *rapid.T, r *Record, f Filter) []Entry {
	var all []Entry
	for e, err := range r.Entries(f) {
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, e)
	}
	return all
}

func merged(t *rapid.T, lists ...[]Entry) *Record {
	r, err := OpenMemory(Options{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close() })
	for _, list := range lists {
		sum, err := r.Merge(each(list))
		if err != nil || sum.Added+sum.Known != len(list) {
			t.Fatalf("merged %d entries: %+v, %v", len(list), sum, err)
		}
	}
	return r
}

func TestMergeIsASet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lists := rapid.SliceOfN(rapid.SliceOf(anyEntry()), 0, 4).Draw(t, "lists")
		want := map[string]Entry{}
		for _, e := range slices.Concat(lists...) {
			want[e.ID] = e
		}
		once := entriesOf(t, merged(t, lists...), Filter{})
		if len(once) != len(want) {
			t.Fatalf("%d entries, want %d", len(once), len(want))
		}
		for _, e := range once {
			if e != want[e.ID] {
				t.Errorf("got %v, want %v", e, want[e.ID])
			}
		}
		again := slices.Concat(rapid.Permutation(lists).Draw(t, "order"), lists)
		if diff := cmp.Diff(once, entriesOf(t, merged(t, again...), Filter{})); diff != "" {
			t.Errorf("another order, and twice (-want +got):\n%s", diff)
		}
	})
}

// A record merged into another comes out of it as it went in.
func TestMergeKeepsEveryText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from, to := merged(t), merged(t)
		text := rapid.OneOf(rapid.String(), rapid.Map(rapid.SliceOf(rapid.Byte()), func(b []byte) string { return string(b) }))
		for range rapid.IntRange(1, 5).Draw(t, "entries") {
			e := Entry{Copy: rapid.IntRange(0, 9).Draw(t, "copy")}
			for _, field := range e.texts() {
				*field = text.Draw(t, "text")
			}
			if _, err := from.Append(e); err != nil {
				t.Fatal(err)
			}
		}
		if _, err := to.Append(Entry{Text: "own"}); err != nil {
			t.Fatal(err)
		}
		if _, err := to.Merge(from.Entries(Filter{})); err != nil {
			t.Fatal(err)
		}
		got := slices.DeleteFunc(entriesOf(t, to, Filter{}), func(e Entry) bool { return e.Record != from.ID() })
		if diff := cmp.Diff(entriesOf(t, from, Filter{}), got); diff != "" {
			t.Errorf("(-want +got):\n%s", diff)
		}
	})
}

func TestMergeReportsConflicts(t *testing.T) {
	r := mustMemory(t)
	first := mustAppend(t, r, Entry{Student: "k7", Text: "T1 = 25.8 N"})
	changes := map[string]func(*Entry){
		"text":   func(e *Entry) { e.Text = "T1 = 31.4 N" },
		"time":   func(e *Entry) { e.Time = e.Time.Add(time.Millisecond) },
		"number": func(e *Entry) { e.Number++ },
		"record": func(e *Entry) { e.Record = fmt.Sprintf("%032x", 1) },
		"copy":   func(e *Entry) { e.Copy = 3 },
		"ref":    func(e *Entry) { e.Ref = "x" },
	}
	for name, change := range changes {
		other := first
		change(&other)
		sum, err := r.Merge(each([]Entry{first, other}))
		want := Merged{Known: 1, Conflicts: []Conflict{{Here: first, There: other}}}
		if diff := cmp.Diff(want, sum); diff != "" || err != nil {
			t.Errorf("%s: %v (-want +got):\n%s", name, err, diff)
		}
	}
	if got := collect(t, r.Entries(Filter{})); len(got) != 1 || got[0] != first {
		t.Errorf("what was here was changed: %v", got)
	}
}

func TestMergeRefusesWhatNoRecordHolds(t *testing.T) {
	good := Entry{ID: fmt.Sprintf("%032x", 1), Record: fmt.Sprintf("%032x", 2), Number: 1}
	list := []Entry{good}
	for _, spoil := range []func(*Entry){
		func(e *Entry) { e.ID = "" },
		func(e *Entry) { e.ID = "../../" + e.ID[6:] },
		func(e *Entry) { e.ID = "ABCDEF" + e.ID[6:] },
		func(e *Entry) { e.Record += "00" },
		func(e *Entry) { e.Number = 0 },
		func(e *Entry) { e.Copy = -1 },
		func(e *Entry) { e.Detail = string(make([]byte, MaxText+1)) },
	} {
		bad := good
		spoil(&bad)
		list = append(list, bad)
	}
	r := mustMemory(t)
	sum, err := r.Merge(each(list))
	if err != nil || sum.Added != 1 || len(sum.Refused) != len(list)-1 {
		t.Errorf("merged %d, refused %d, %v", sum.Added, len(sum.Refused), err)
	}
	for _, refused := range sum.Refused {
		if Sentence(refused.Why) == "" {
			t.Errorf("no sentence for %v", refused.Why)
		}
	}
}

// A record that was copied goes on in two places: numbers are given twice, and
// nothing is lost.
func TestMergeOfACopiedRecord(t *testing.T) {
	content := smallRecord(t, 3)
	school, home := mustOpen(t, putFile(t, content)), mustOpen(t, putFile(t, content))
	mustAppend(t, school, Entry{Text: "at school"})
	mustAppend(t, home, Entry{Text: "at home"})
	sum, err := school.Merge(home.Entries(Filter{}))
	if err != nil || sum.Added != 1 || sum.Known != 3 {
		t.Errorf("merged %+v, %v", sum, err)
	}
	var numbers []int64
	for _, e := range collect(t, school.Entries(Filter{})) {
		numbers = append(numbers, e.Number)
	}
	if !slices.Equal(numbers, []int64{1, 2, 3, 4, 4}) {
		t.Errorf("numbers are %v", numbers)
	}
}

// An error on the way keeps what was merged, says so, and can be tried again.
func TestMergeGoesOnAfterAnError(t *testing.T) {
	from, to := mustMemory(t), mustMemory(t)
	for range 10 {
		mustAppend(t, from, Entry{})
	}
	torn := func(yield func(Entry, error) bool) {
		n := 0
		for e, err := range from.Entries(Filter{}) {
			if n++; n == 6 {
				yield(Entry{}, ErrDisk)
				return
			}
			if !yield(e, err) {
				return
			}
		}
	}
	if sum, err := to.Merge(torn); err != ErrDisk || sum.Added != len(collect(t, to.Entries(Filter{}))) {
		t.Errorf("merged %+v, %v", sum, err)
	}
	if _, err := to.Merge(from.Entries(Filter{})); err != nil {
		t.Error(err)
	}
	if got := len(collect(t, to.Entries(Filter{}))); got != 10 {
		t.Errorf("%d entries, want 10", got)
	}
}

func TestMergeOfManyBatches(t *testing.T) {
	r := mustMemory(t)
	const n = 127
	for _, want := range []Merged{{Added: n}, {Known: n}} {
		sum, err := r.merge(made(n, 9), 10, false)
		if diff := cmp.Diff(want, sum); diff != "" || err != nil {
			t.Errorf("%v (-want +got):\n%s", err, diff)
		}
	}
}

// made gives entries as a class would have written them, in few records and
// for many students, without a record.
func made(entries, students int) iter.Seq2[Entry, error] {
	return func(yield func(Entry, error) bool) {
		random := rand.NewChaCha8([32]byte{1})
		for i := range entries {
			id, _ := randomID(random)
			e := Entry{
				ID: id, Record: fmt.Sprintf("%032x", 1+i%30), Number: int64(1 + i/30),
				Time:    time.UnixMilli(1_900_000_000_000 + int64(i)*1000).UTC(),
				Student: fmt.Sprint("s", i%students), Kind: Answer, Problem: fmt.Sprint("problem-", i%60),
				Hash: "4f1c2b9a0d3e", Givens: "m = 3.2 kg; α = 35°; β = 50°", Stage: "components", Item: "T1x",
				Text: "T1x = T1 cos 35°",
			}
			if !yield(e, nil) {
				return
			}
		}
	}
}
