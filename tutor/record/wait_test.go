// Inside the package: it holds the turn to write, to see who waits.

package record

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"sync"
	"testing"
)

// Whoever waits for another program can leave; what waited is not kept then.
func TestWaitingCanBeLeft(t *testing.T) {
	for _, how := range []string{"IMMEDIATE", "EXCLUSIVE"} {
		path := filepath.Join(t.TempDir(), "record.db")
		r := mustOpen(t, path)
		mustAppend(t, r, Entry{Text: "first"})
		release := hold(t, path, how)

		ctx, leave := context.WithCancel(context.Background())
		visit := r.Within(func() context.Context { return ctx })
		left := make(chan error)
		go func() {
			_, err := visit.Append(Entry{Text: "left"})
			left <- err
		}()
		kept := make(chan error)
		go func() {
			_, err := r.Append(Entry{Text: "waited"})
			kept <- err
		}()
		leave()
		mustBe(t, <-left, ErrStopped)
		mustBe(t, visit.SaveDraft(Draft{Text: "T1 ="}), ErrStopped)
		select {
		case err := <-kept:
			t.Fatalf("%s: an entry is said to be kept while the record is locked: %v", how, err)
		default:
		}
		release()
		if err := <-kept; err != nil {
			t.Fatal(err)
		}
		got := collect(t, r.Entries(Filter{}))
		if len(got) != 2 || got[0].Text != "first" || got[1].Text != "waited" || got[1].Number != 2 {
			t.Errorf("%s: kept: %v", how, got)
		}
	}
}

// While one waits to write, others read.
func TestReadingWhileAnotherWaits(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.db")
	r := mustOpen(t, path)
	mustAppend(t, r, Entry{Text: "first"})
	release := hold(t, path, "IMMEDIATE")
	kept := make(chan error)
	go func() {
		_, err := r.Append(Entry{Text: "second"})
		kept <- err
	}()
	for range 20 {
		if got := collect(t, r.Entries(Filter{})); len(got) != 1 {
			t.Fatalf("read: %v", got)
		}
	}
	release()
	if err := <-kept; err != nil {
		t.Fatal(err)
	}
}

// What shares a commit is done in its order, and what goes wrong in one part leaves
// nothing and does not touch the others.
func TestOneCommitForAllThatWaits(t *testing.T) {
	r := mustOpen(t, filepath.Join(t.TempDir(), "record.db"))
	failed := errors.New("failed")
	steps := []struct {
		name string
		do   func() error
		want error
	}{
		{"draft", func() error { return r.SaveDraft(Draft{Student: "Ana", Problem: "p", Text: "T1 ="}) }, nil},
		{"failing", func() error {
			return r.write(func(t *tx) error {
				return cmp.Or(execute(t, "INSERT INTO setting (key, value) VALUES ('half', 'done')"), failed)
			})
		}, failed},
		{"answer", func() error {
			_, err := r.Append(Entry{Student: "Ana", Problem: "p", Kind: Answer, Text: "T1 = 2"})
			return err
		}, nil},
		{"next draft", func() error { return r.SaveDraft(Draft{Student: "Ana", Problem: "p", Item: "next", Text: "T2"}) }, nil},
		{"setting", func() error { return r.SetSetting("k", "v") }, nil},
	}
	r.turn <- struct{}{} // nobody writes until all of them wait
	said := make([]chan error, len(steps))
	for i, s := range steps {
		said[i] = make(chan error, 1)
		go func() { said[i] <- s.do() }()
		for waiting := 0; waiting <= i; runtime.Gosched() {
			r.queue.mu.Lock()
			waiting = len(r.queue.all)
			r.queue.mu.Unlock()
		}
	}
	r.give()
	for i, s := range steps {
		if err := <-said[i]; !errors.Is(err, s.want) {
			t.Errorf("%s: %v, want %v", s.name, err, s.want)
		}
	}
	drafts, err := r.Drafts("Ana")
	if err != nil || len(drafts) != 1 || drafts[0].Text != "T2" {
		t.Errorf("half typed: %v, %v", drafts, err)
	}
	half, err1 := r.Setting("half")
	whole, err2 := r.Setting("k")
	if err1 != nil || err2 != nil || half != "" || whole != "v" {
		t.Errorf("settings: %q, %v; %q, %v", half, err1, whole, err2)
	}
	if got := collect(t, r.Entries(Filter{})); len(got) != 1 || got[0].Number != 1 {
		t.Errorf("kept: %v", got)
	}
}

// Entries that are appended at once share commits and lose nothing.
func TestManyAppendAtOnce(t *testing.T) {
	const many = 300
	r := mustOpen(t, filepath.Join(t.TempDir(), "record.db"))
	var wait sync.WaitGroup
	told := make([]string, many)
	for i := range many {
		wait.Go(func() {
			e, err := r.Append(Entry{Student: fmt.Sprint("s", i%30), Kind: Answer, Text: fmt.Sprint(i)})
			if err != nil {
				t.Error(err)
			}
			told[i] = e.ID
		})
	}
	wait.Wait()
	entries := collect(t, r.Entries(Filter{}))
	if len(entries) != many {
		t.Fatalf("%d entries, want %d", len(entries), many)
	}
	mustHoldOnce(t, entries, told)
	for i, e := range entries {
		if e.Number != int64(i+1) {
			t.Fatalf("entry %d has number %d", i+1, e.Number)
		}
	}
}

// A half-typed line is one row for a student and an item, and an answer takes its place.
func TestDraftIsOverwritten(t *testing.T) {
	r := mustMemory(t)
	d := Draft{Student: "ada", Problem: "p", Stage: "components", Item: "T1x"}
	for _, text := range []string{"T", "T1", "T1 cos α"} {
		d.Text = text
		if err := r.SaveDraft(d); err != nil {
			t.Fatal(err)
		}
	}
	other := d
	other.Item, other.Text = "T1y", "T1 sin"
	if err := r.SaveDraft(other); err != nil {
		t.Fatal(err)
	}
	texts := func(student string) (all []string) {
		drafts, err := r.Drafts(student)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range drafts {
			all = append(all, d.Item+" "+d.Text)
		}
		return all
	}
	if got := fmt.Sprint(texts("ada")); got != "[T1x T1 cos α T1y T1 sin]" {
		t.Errorf("drafts: %s", got)
	}
	other.Text = ""
	if err := r.SaveDraft(other); err != nil || len(texts("ada")) != 1 {
		t.Errorf("drafts after an empty one: %v, %v", texts("ada"), err)
	}
	mustAppend(t, r, Entry{Student: "ada", Problem: "q", Kind: Answer, Stage: "components", Item: "T1x"})
	mustAppend(t, r, Entry{Student: "ada", Problem: "p", Kind: Hint, Stage: "components", Item: "T1x"})
	if len(texts("ada")) != 1 {
		t.Errorf("drafts after an answer to another problem, and a hint: %v", texts("ada"))
	}
	mustAppend(t, r, Entry{Student: "ada", Problem: "p", Kind: Answer, Stage: "components", Item: "T1x", Text: "T1 cos α"})
	if texts("ada") != nil {
		t.Errorf("drafts after the answer: %v", texts("ada"))
	}
	d.Text = "T1"
	if err := r.SaveDraft(d); err != nil {
		t.Fatal(err)
	}
	if _, err := r.Forget("ada"); err != nil || texts("ada") != nil {
		t.Errorf("drafts after forgetting: %v, %v", texts("ada"), err)
	}
}

// What is said to be kept must still be there: a file that was moved, deleted or
// written over while it was in use is told apart.
func TestRecordThatIsGoneIsTold(t *testing.T) {
	other := smallRecord(t, 3)
	for name, harm := range map[string]func(path string) error{
		"moved":        func(path string) error { return os.Rename(path, path+".moved") },
		"deleted":      os.Remove,
		"written over": func(path string) error { return os.WriteFile(path, other, 0o600) },
		"replaced": func(path string) error {
			if err := os.Remove(path); err != nil {
				return err
			}
			return os.WriteFile(path, other, 0o600)
		},
		"emptied": func(path string) error { return os.Truncate(path, 0) },
		"another file written over": func(path string) error {
			return os.WriteFile(path, []byte("Dear diary, today the crane stood still.\n"), 0o600)
		},
	} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "record.db")
			r := mustOpen(t, path)
			mustAppend(t, r, Entry{Text: "first"})
			if err := r.Holds(); err != nil {
				t.Fatalf("before: %v", err)
			}
			if err := harm(path); err != nil {
				t.Fatal(err)
			}
			mustBe(t, r.Holds(), ErrMoved)
			if e, err := r.Append(Entry{Text: "second"}); err == nil {
				t.Errorf("said to be kept: %v", e)
			}
		})
	}
}
