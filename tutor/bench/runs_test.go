// Inside the package: it looks at the problem that a form was made of.

package bench

import (
	"strings"
	"testing"
	"time"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// What stands in a form comes back as typed, for every problem, bad texts too.
func TestARunComesBackAsTyped(t *testing.T) {
	for _, h := range problems.Embedded().List() {
		f := bankForm(t, h.ID)
		measureAll(t, f)
		for i := range f.Fields {
			if k := f.Fields[i].Kind; k == Hanger || k == Ring {
				f.Type(i, "12 kilogrammes, or so = ?")
			}
		}
		again := bankForm(t, h.ID)
		if strange := again.Load(f.Text()); strange != nil || again.Text() != f.Text() {
			t.Errorf("%s: %q\n%s\n%s", h.ID, strange, f.Text(), again.Text())
		}
	}
}

// A run that several share is one run, however often it is kept, and stays for the
// others when one of them is forgotten.
func TestARunIsShared(t *testing.T) {
	r := memory(t)
	students := []record.Student{{ID: "ana", Name: "Ana"}, {ID: "ben", Name: "Ben"}}
	for _, s := range students {
		if err := r.AddStudent(s.ID, s.Name); err != nil {
			t.Fatal(err)
		}
	}
	f := twoStrings(t, "30", "45")
	id, err := SaveRun(r, f, students, "")
	if err != nil {
		t.Fatal(err)
	}
	fill(t, f, []string{"m = 0.6 kg ± 1 %"}, nil)
	if again, err := SaveRun(r, f, students[1:], id); err != nil || again != id {
		t.Fatalf("%s, %v", again, err)
	}
	want := func(who ...string) Run {
		t.Helper()
		runs, err := Runs(r, "")
		if err != nil || len(runs) != 1 || strings.Join(runs[0].Students, " ") != strings.Join(who, " ") || !strings.Contains(runs[0].Text, "0.6 kg") {
			t.Fatalf("%+v, %v", runs, err)
		}
		return runs[0]
	}
	want("ana", "ben")
	if _, err := r.Forget("ana"); err != nil {
		t.Fatal(err)
	}
	run := want("ben")
	if opened, err := run.Open(r, problems.Embedded()); err != nil || opened.Text() != f.Text() {
		t.Errorf("%v", err)
	}
	// The problem's own file has gone: the record has its text.
	if opened, err := run.Open(r, &problems.Bank{}); err != nil || opened.problem.ID != "canal-lantern" {
		t.Errorf("%v", err)
	}
}

// A record from elsewhere can hold anything; nothing of it acts on a terminal.
func TestARunFromElsewhereIsSaidPlainly(t *testing.T) {
	run := Run{Number: 1, Problem: "canal-\x1b[31mlantern", Text: "set m = \x1b]0;x\x07 3 kg\nsing = \r\n", Students: []string{"a\x1b[2Jb"}}
	if said := run.Said(nil, time.UTC); strings.ContainsAny(said, "\x1b\x07\r\n") {
		t.Errorf("%q", said)
	}
	f := bankForm(t, "canal-lantern")
	if strange := f.Load(run.Text); len(strange) != 1 {
		t.Errorf("%q", strange)
	}
}
