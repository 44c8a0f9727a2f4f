// Inside the package: it reaches the record behind a desk, to edit what a lesson relies on.

package tutor

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// seat opens the record at path ("" for one in memory) and seats a student.
func seat(t *testing.T, path string) *Desk { t.Helper(); return seatIn(t, path) }

func seatIn(t testing.TB, path string) *Desk {
	t.Helper()
	now := time.Date(2026, 3, 2, 10, 0, 0, 0, time.UTC)
	o := record.Options{Now: func() time.Time { now = now.Add(time.Second); return now }}
	r, err := record.OpenMemory(o)
	if path != "" {
		r, err = record.Open(path, o)
	}
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close() })
	tutor := New(Options{Bank: problems.Embedded(), Record: r})
	s, ok, err := tutor.Enrol("  Nele ")
	if err != nil || !ok {
		t.Fatal(ok, err)
	}
	d, err := tutor.Seat(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func open(t *testing.T, d *Desk, id string) *Lesson {
	t.Helper()
	l, err := d.Open(id)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// handIn hands in lines and wants each to be right.
func handIn(t *testing.T, l *Lesson, lines ...string) {
	t.Helper()
	for _, text := range lines {
		r, err := l.Check(text)
		if err != nil {
			t.Fatal(err)
		}
		if r.Line.Verdict != checker.Right {
			t.Fatalf("%q is %s %s: %s", text, r.Line.Verdict, r.Line.Code, r.Line.Message)
		}
	}
}

func wantInHand(t *testing.T, l *Lesson, stage checker.Stage, item string) {
	t.Helper()
	s, i, _ := l.InHand()
	if s != stage || i != item {
		t.Fatalf("in hand is %s %q; want %s %q", s, i, stage, item)
	}
}

var lantern = []string{
	"T1 up left; T2 up right; w down",
	"T1x = T1 cos α; T1y = T1 sin α",
	"T2 cos β; T2 sin β",
	"wx = 0, wy = w",
	"T1 cos 35 = T2 cos 50",
	"T1 sin 35 + T2 sin 50 = 3.2 * 9.8",
	"T1 = 20.2 N; T2 = 25.8 N",
}

func TestWholeProblemRightFirstTime(t *testing.T) {
	d := seat(t, "")
	l := open(t, d, "canal-lantern")
	wantInHand(t, l, checker.Diagram, "")
	handIn(t, l, lantern[0])
	wantInHand(t, l, checker.Components, "T1x")
	handIn(t, l, lantern[1])
	wantInHand(t, l, checker.Components, "T2x")
	handIn(t, l, lantern[2:4]...)
	wantInHand(t, l, checker.XSum, "")
	handIn(t, l, lantern[4:]...)
	if !l.Solved() || d.Progress("canal-lantern").Status != RightFirst {
		t.Fatalf("the status is %v", d.Progress("canal-lantern"))
	}
}

func TestComesBackToTheSamePlace(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.db")
	for i, text := range lantern {
		d := seat(t, path)
		l := open(t, d, "canal-lantern")
		if id, ok := d.Unfinished(); i > 0 && (!ok || id != "canal-lantern") {
			t.Fatalf("unfinished is %q, %v", id, ok)
		}
		if len(l.Lines()) != i {
			t.Fatalf("%d lines came back of %d", len(l.Lines()), i)
		}
		stage, item, _ := l.InHand()
		half := strings.TrimSpace(text[:len(text)/2])
		if err := l.SaveDraft(half); err != nil {
			t.Fatal(err)
		}
		again := open(t, seat(t, path), "canal-lantern")
		wantInHand(t, again, stage, item)
		if again.Draft() != half {
			t.Fatalf("the draft came back as %q", again.Draft())
		}
		handIn(t, again, text)
		if again.Draft() != "" {
			t.Fatal("the draft outlived the line")
		}
	}
	if p := seat(t, path).Progress("canal-lantern"); p.Status != RightFirst {
		t.Fatalf("the status is %v", p)
	}
}

func TestHintsGoUpAndTheThirdIsCounted(t *testing.T) {
	l := open(t, seat(t, ""), "canal-lantern")
	handIn(t, l, lantern[0])
	if _, err := l.Check("T1 sin α"); err != nil {
		t.Fatal(err)
	}
	for _, want := range []int{1, 2, 3, 3} {
		line, err := l.Hint()
		if err != nil || line.Level != want || line.Message == "" {
			t.Fatalf("hint %+v, %v; want level %d", line, err, want)
		}
	}
	if asked, shown := l.Hints(); asked != 3 || shown != 1 {
		t.Fatalf("%d hints, %d steps shown", asked, shown)
	}
	handIn(t, l, "T1x = T1 cos α")
	if line, err := l.Hint(); err != nil || line.Level != 1 {
		t.Fatalf("the hint for the next item is %+v, %v", line, err)
	}
}

// TestHintFollowsWhatWasTyped asks for hints after a line about another item than the one in hand.
func TestHintFollowsWhatWasTyped(t *testing.T) {
	l := open(t, seat(t, ""), "canal-lantern")
	handIn(t, l, lantern[0])
	for _, step := range []struct{ typed, chosen, about string }{
		{"T2y = T2 cos β", "", "T2y"},
		{"T2y = T2 tan β; T1x = T1 sin α", "", "T1x"},
		{"T2y = T2 cos β", "T1x", "T1x"},
		{"T2y = T2 sin β", "", "T1x"},
	} {
		if _, err := l.Check(step.typed); err != nil {
			t.Fatal(err)
		}
		if step.chosen != "" && !l.Choose(step.chosen) {
			t.Fatalf("%s cannot be chosen", step.chosen)
		}
		if line, err := l.Hint(); err != nil || line.Item != step.about {
			t.Errorf("after %q the hint is %+v, %v; want one about %s", step.typed, line, err, step.about)
		}
	}
}

func TestKeptLineGoesOnAndIsDisputedUntilAccepted(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.db")
	l := open(t, seat(t, path), "canal-lantern")
	handIn(t, l, lantern[:4]...)
	if r, err := l.Dispute(); err != nil || r.Line != nil {
		t.Fatalf("kept %+v, %v, with nothing refused", r.Line, err)
	}
	refused, err := l.Check("T1 sin α = T2 sin β")
	if err != nil || refused.Line.Verdict != checker.Wrong || !l.CanDispute() {
		t.Fatalf("%+v, %v", refused.Line, err)
	}
	r, err := l.Dispute()
	if err != nil || r.Line == nil || !r.Line.Disputed || !r.Moved {
		t.Fatalf("%+v, %v", r, err)
	}
	handIn(t, l, lantern[5:]...)
	if s := seat(t, path).Progress("canal-lantern").Status; s != Disputed {
		t.Fatalf("the status is %v", s)
	}
	accept := record.Entry{Kind: record.Accepted, Student: l.desk.Student.ID, Problem: l.Problem.ID,
		Hash: l.Problem.Hash, Ref: r.Line.ID}
	kept, err := l.desk.tutor.Record.Append(accept)
	if err != nil {
		t.Fatal(err)
	}
	if s := seat(t, path).Progress("canal-lantern").Status; s != RightFirst {
		t.Fatalf("accepted, the status is %v", s)
	}
	accept.Kind, accept.Ref = record.Withdrawn, kept.ID
	if _, err := l.desk.tutor.Record.Append(accept); err != nil {
		t.Fatal(err)
	}
	if s := seat(t, path).Progress("canal-lantern").Status; s != Disputed {
		t.Fatalf("with the acceptance taken back, the status is %v", s)
	}
}

func TestSolutionCountsAsShownAndAgainDrawsOtherNumbers(t *testing.T) {
	d := seat(t, "")
	l := open(t, d, "canal-lantern")
	if steps, err := l.Solution(); err != nil || len(steps) == 0 {
		t.Fatal(steps, err)
	}
	if s := d.Progress("canal-lantern").Status; s != Shown || !l.Over() {
		t.Fatalf("the status is %v", s)
	}
	again, err := d.Again("canal-lantern")
	if err != nil || again.Problem.Copy == "" || again.Over() {
		t.Fatalf("%q, %v", again.Problem.Copy, err)
	}
	if p := d.Progress("canal-lantern"); p.Status != Shown || p.Stage != checker.Diagram || p.Attempts != 2 {
		t.Fatalf("the progress is %+v", p)
	}
	if strings.Contains(again.Statement(), "{") || again.Statement() == l.Statement() {
		t.Fatalf("the second text is %s", again.Statement())
	}
}

func TestEditedFileChangesNothingAboutYesterday(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.db")
	l := open(t, seat(t, path), "canal-lantern")
	handIn(t, l, lantern...)
	folder := t.TempDir()
	edited := bytes.Replace(l.Problem.Raw, []byte("35 deg"), []byte("40 deg"), 1)
	if err := os.WriteFile(filepath.Join(folder, "lantern.yaml"), edited, 0o600); err != nil {
		t.Fatal(err)
	}
	bank, found := problems.OpenFolder(folder)
	if err := found.Err(); err != nil {
		t.Fatal(err)
	}
	d := seat(t, path)
	d.tutor.Bank = d.tutor.Bank.With(bank)
	if s := d.Progress("canal-lantern").Status; s != RightFirst {
		t.Fatalf("the status is %v", s)
	}
	again, err := d.Again("canal-lantern")
	if err != nil || again.Problem.Hash == l.Problem.Hash {
		t.Fatal("the new text was not taken", err)
	}
}

// A text that is kept under another file's hash is not what was worked on.
func TestKeptTextMustHaveItsHash(t *testing.T) {
	d := seat(t, "")
	p, err := d.tutor.Bank.Get("canal-lantern")
	if err != nil {
		t.Fatal(err)
	}
	edited := bytes.Replace(p.Raw, []byte("35 deg"), []byte("40 deg"), 1)
	if err := d.tutor.Record.SaveProblem("a hash of something else", p.ID, string(edited)); err != nil {
		t.Fatal(err)
	}
	if got, err := SavedProblem("a hash of something else", d.tutor.Record); err == nil {
		t.Errorf("a text with the hash %s was taken for another", got.Hash)
	}
}

func TestWhatHoldsNothingIsNotKept(t *testing.T) {
	l := open(t, seat(t, ""), "canal-lantern")
	for _, text := range []string{"", "   ", "\x1b[31m\x07", "\n\n"} {
		if r, err := l.Check(text); err != nil || r.Line != nil {
			t.Fatalf("%q: %+v, %v", text, r.Line, err)
		}
	}
	r, err := l.Check("T1 up \x1b[31mleft; T2 up right; w down\x00")
	if err != nil || r.Line.Verdict != checker.Right || strings.ContainsAny(r.Line.AsTyped, "\x1b\x00") {
		t.Fatalf("%+v, %v", r.Line, err)
	}
	if r, err = l.Check(strings.Repeat("((T1", 100000)); err != nil || r.Line.Verdict != checker.Unread {
		t.Fatalf("%v, %v", r.Line.Verdict, err)
	}
}
