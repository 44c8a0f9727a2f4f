package tutor

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
)

func wantNext(t *testing.T, d *Desk, id, why string) Advice {
	t.Helper()
	a, ok := d.Next()
	if !ok || id != "" && a.ID != id || !strings.Contains(a.Why, why) {
		t.Fatalf("next is %s (%s); want %s (… %s …)", a.ID, a.Why, id, why)
	}
	return a
}

func TestNextLeadsUpALevelAfterTwoWithoutHelp(t *testing.T) {
	d := seat(t, "")
	first := wantNext(t, d, "", "easiest place to begin")
	if first.Level != 1 || first.Topic != problems.Topics()[0].ID {
		t.Fatalf("the first problem is %+v", first.Heading)
	}
	work(t, open(t, d, first.ID))
	second := wantNext(t, d, "", "next new one")
	if second.Level != 1 || second.Topic != first.Topic {
		t.Fatalf("the second problem is %+v", second.Heading)
	}
	work(t, open(t, d, second.ID))
	if third := wantNext(t, d, "", "a level harder"); third.Level != 2 || third.Topic != first.Topic {
		t.Fatalf("the third problem is %+v", third.Heading)
	}
}

func TestNextGoesOnToTheNextTopic(t *testing.T) {
	d := seat(t, "")
	topic := problems.Topics()[0].ID
	for range 20 {
		a, _ := d.Next()
		if a.Topic != topic {
			if a.Topic != problems.Topics()[1].ID || a.Level != 1 {
				t.Fatalf("after %s comes %+v", topic, a.Heading)
			}
			return
		}
		work(t, open(t, d, a.ID))
	}
	t.Fatalf("%s has no end", topic)
}

func TestNextBringsBackWhatWentWrongAfterAWhile(t *testing.T) {
	d := seat(t, "")
	l := open(t, d, "canal-lantern")
	if _, err := l.Hint(); err != nil {
		t.Fatal(err)
	}
	work(t, l)
	for range aWhile {
		a, _ := d.Next()
		if a.ID == "canal-lantern" {
			t.Fatal("it comes back at once")
		}
		work(t, open(t, d, a.ID))
	}
	a := wantNext(t, d, "canal-lantern", "you needed hints")
	if !a.Again {
		t.Fatal("it would come back with the same numbers")
	}
	again, err := d.Again(a.ID)
	if err != nil {
		t.Fatal(err)
	}
	work(t, again)
	if a, _ := d.Next(); a.ID == "canal-lantern" {
		t.Fatal("it comes back though it was done unaided")
	}
}

func TestNextOfASmallBank(t *testing.T) {
	folder := t.TempDir()
	lantern, err := problems.Embedded().Get("canal-lantern")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(folder, "lantern.yaml"), lantern.Raw, 0o600); err != nil {
		t.Fatal(err)
	}
	d := seat(t, "")
	d.tutor.Bank, _ = problems.OpenFolder(folder)
	l := open(t, d, wantNext(t, d, "canal-lantern", "easiest").ID)
	handIn(t, l, "T1 up left; T2 up right; w down")
	if a := wantNext(t, d, "canal-lantern", "left it at the stage “Components”"); a.Again {
		t.Fatal("what was left behind would be begun anew")
	}
	work(t, l)
	if a := wantNext(t, d, "canal-lantern", "every problem"); !a.Again {
		t.Fatal("the same numbers would come again")
	}
	d.tutor.Bank, _ = problems.OpenFolder(t.TempDir())
	if _, ok := d.Next(); ok {
		t.Fatal("something comes next out of nothing")
	}
}

func TestStandingsInWords(t *testing.T) {
	for p, want := range map[Progress]string{
		{}:                                      "not begun",
		{Standing: Begun, Stage: checker.XSum}:  "begun, at sum along x",
		{Standing: Unaided}:                     "done unaided",
		{Standing: Shown, Stage: checker.Solve}: "shown; again begun, at solve",
		{Standing: Contested}:                   "done, one line kept",
		{Standing: WithHints}:                   "done with hints",
	} {
		if p.String() != want {
			t.Errorf("%+v is %q, want %q", p, p, want)
		}
	}
}
