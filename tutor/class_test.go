// Inside the package: it asks for the hint that shows the step by the constant of the package.

package tutor

import (
	"strings"
	"testing"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// classroom makes a class of two with two problems, and a tutor for it.
func classroom(t *testing.T) *Tutor {
	t.Helper()
	r, err := record.OpenMemory(record.Options{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close() })
	return New(Options{Bank: problems.Embedded(), Record: r, Class: Class{
		Code:     "harbour-2",
		Students: []record.Student{{ID: "s01", Name: "Ada Berg"}, {ID: "s02", Name: "Ben Roos"}},
		Work: []Set{{Heading: problems.Heading{ID: "lab-ring"}}, {Heading: problems.Heading{ID: "canal-lantern"}, Due: time.Date(2026, 3, 9, 23, 0, 0, 0, time.Local)},
			{Heading: problems.Heading{ID: "not-in-the-bank"}}},
		Settings: Settings{Gravity: "9.81 m/s^2", Tolerance: 0.03, NoHints: true, NoSolution: true},
	}})
}

func TestClassGivesPlacesToItsListOnly(t *testing.T) {
	tutor := classroom(t)
	for who, id := range map[string]string{"ben roos": "s02", "S01": "s01", "2": "s02", "Cem": "", "3": "", "0": ""} {
		s, ok, err := tutor.Enrol(who)
		if err != nil || ok != (id != "") || s.ID != id {
			t.Errorf("%q is %v, %v, %v; want %q", who, s, ok, err, id)
		}
	}
	if all, err := tutor.Students(); err != nil || len(all) != 2 {
		t.Fatal(all, err)
	}
}

func TestClassSetsWorkAndNumbers(t *testing.T) {
	tutor := classroom(t)
	d, err := tutor.Seat(tutor.Class.Students[0])
	if err != nil {
		t.Fatal(err)
	}
	a, ok := d.Next()
	if !ok || a.ID != "canal-lantern" || !strings.Contains(a.Why, "due on 9 Mar 2026") {
		t.Fatalf("next is %v", a)
	}
	if first := d.Sections()[0]; first.Title != "Set work" || len(first.Problems) != 2 || first.Problems[0].ID != "lab-ring" {
		t.Fatalf("the first section is %v", first)
	}
	l := open(t, d, a.ID)
	p := problemOf(t, a.ID)
	own, err := tutor.Class.Copy(p, "s01", 0)
	if err != nil || l.Problem.Copy != own.Copy || !strings.Contains(own.Copy, "g=9.81") {
		t.Fatalf("the copy is %q, want %q, %v", l.Problem.Copy, own.Copy, err)
	}
	if l.Refused(AskHint) == "" || l.Refused(AskSolution) == "" || l.Refused(DisputeLine) != "" {
		t.Error("hints and solution are not refused")
	}
}

func problemOf(t *testing.T, id string) *problems.Problem {
	t.Helper()
	p, err := problems.Embedded().Get(id)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// A class that asks for signs takes no component as a size: neither the line, nor what a
// hint shows.
func TestAClassMayAskForSigns(t *testing.T) {
	g, err := (&Class{Settings: Settings{SignsRequired: true}}).NewPage(problemOf(t, "canal-lantern"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		item, text string
		want       checker.Verdict
	}{
		{"T1x", "T1 cos α", checker.Wrong}, {"T1x", "-T1 cos α", checker.Right},
		{"T2x", "T2 cos β", checker.Right}, {"wy", "wy = w", checker.Wrong}, {"wy", "wy = -mg", checker.Right},
	} {
		line := g.Add(answered(checker.Components, c.item, c.text))
		if line.Verdict != c.want || c.want == checker.Wrong && line.Code != checker.Sign || len(line.Notes) > 1 {
			t.Errorf("%s: %s %s %q %q, want %s", c.text, line.Verdict, line.Code, line.Message, line.Notes, c.want)
		}
	}
	if step := g.Ref.Hint(checker.Answer{Stage: checker.Components, Item: "T1x"}, checker.Report{}, lastLevel); strings.Contains(step, "size") || !strings.Contains(step, "−") {
		t.Errorf("the last hint is %q", step)
	}
}
