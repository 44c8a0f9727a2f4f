package bench

import (
	"cmp"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// table is a bench whose lines are typed by a test.
type table struct {
	*testing.T
	guide *Guide
	typed []string
	said  []string
	saved map[string]string
}

func newTable(t *testing.T, r *record.Record, typed ...string) *table {
	table := &table{T: t, typed: typed, saved: map[string]string{}}
	table.guide = &Guide{
		Zone:  time.UTC,
		Tutor: tutor.New(tutor.Options{Bank: problems.Embedded(), Record: r}),
		Say: func(line string) {
			if strings.ContainsAny(line, "\n\r\x1b") {
				t.Errorf("a line holds control characters: %q", line)
			}
			table.said = append(table.said, line)
		},
		Ask: func() (string, error) {
			if len(table.typed) == 0 {
				return "", errors.New("end of input")
			}
			line := table.typed[0]
			table.typed = table.typed[1:]
			table.said = append(table.said, "> "+line)
			return line, nil
		},
		Save: func(name, usual string, content []byte) (string, error) {
			name = cmp.Or(name, usual)
			table.saved[name] = string(content)
			return name, nil
		},
	}
	return table
}

func memory(t *testing.T) *record.Record {
	now := time.Date(2026, 3, 9, 10, 12, 0, 0, time.UTC)
	r, err := record.OpenMemory(record.Options{Now: func() time.Time {
		now = now.Add(time.Minute)
		return now
	}})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close() })
	return r
}

func (t *table) run(id string) {
	t.Helper()
	p, err := t.guide.Tutor.Bank.Get(id)
	if err != nil {
		t.Fatal(err)
	}
	if err := t.guide.Run(p); err != nil && err.Error() != "end of input" {
		t.Fatal(err)
	}
}

func (t *table) all() string { return strings.Join(t.said, "\n") }

// wants fails where something was not said.
func (t *table) wants(parts ...string) {
	t.Helper()
	for _, p := range parts {
		if !strings.Contains(strings.Join(strings.Fields(t.all()), " "), p) {
			t.Errorf("never said: %s", p)
		}
	}
}

// A whole run from the cautions to the report, with a slip on the way. What was said is
// kept to be read.
func TestALabPeriod(t *testing.T) {
	r := memory(t)
	table := newTable(t, r,
		"", "Ana, Ben",
		"0.350 kg ± 1 %", "30; 29.5; 30.5 deg", "1", "45", "45 deg ± 0.5 deg", "9.81 m/s^2",
		"hanger m = 50 g div 1 g", "ring = 12 N", "",
		"2.9 N div 0.1 N", "3.6 N zero 0.1 N div 0.1 N",
		"budget", "again", "alpha = 40 deg ± 0.5 deg", "T1 = 3.1 N div 0.1 N", "T2 = 3.4 N div 0.1 N",
		"compare 1 2", "runs", "students Cem", "report", "sheet", "leave")
	table.run("canal-lantern")
	got := table.all() + "\n"
	golden := filepath.Join("testdata", "period.txt")
	if *update {
		if err := os.WriteFile(golden, []byte(got), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if strings.ReplaceAll(got, "\r", "") != string(want) {
		t.Errorf("what is said differs from %s; run with -update and read the difference", golden)
	}
	for _, line := range table.said {
		if utf8.RuneCountInString(line) > 80 {
			t.Errorf("wider than the terminal: %s", line)
		}
	}
	for _, name := range []string{"canal-lantern-report.html", "canal-lantern-sheet.html"} {
		if !strings.Contains(table.saved[name], "Masses fall") {
			t.Errorf("%s holds no caution", name)
		}
	}
	runs, err := Runs(r, "canal-lantern")
	if err != nil || len(runs) != 2 || len(runs[0].Students) != 2 || len(runs[1].Students) != 3 {
		t.Errorf("%+v, %v", runs, err)
	}
}

// Nothing that was typed is lost when the input ends, and the run comes back as typed.
func TestARunBrokenOffComesBack(t *testing.T) {
	r := memory(t)
	newTable(t, r, "", "Ana", "0.400 kg ± 1 %", "33 deg", "").run("canal-lantern")
	runs, err := Runs(r, "")
	if err != nil || len(runs) != 1 || runs[0].Text != "set m = 0.400 kg ± 1 %\nset alpha = 33 deg" {
		t.Fatalf("%+v, %v", runs, err)
	}
	again := newTable(t, r, "", "Ana", "1", "", "", "50 deg", "", "", "", "", "", "", "leave")
	again.run("canal-lantern")
	again.wants("Open: run 1", "Taken: m = 0.4000 kg", "Taken: α = 33.00°", "Predicted T₁ =")
	if runs, _ := Runs(r, ""); len(runs) != 1 || !strings.Contains(runs[0].Text, "set beta = 50 deg") {
		t.Errorf("%+v", runs)
	}
}

// What was measured before the lines began is there, and stays.
func TestARunBegunElsewhereGoesOn(t *testing.T) {
	table := newTable(t, memory(t), "", "Ana", "", "33 deg", "div 1 deg", "leave")
	table.guide.Begun = bankForm(t, "canal-lantern")
	table.guide.Begun.Type(0, "0.400 kg ± 1 %")
	table.run("canal-lantern")
	table.wants("Enter keeps 0.400 kg ± 1 %.", "Taken: m = 0.4000 kg", "Taken: α = 33.00°")
	if runs, err := Runs(table.guide.Tutor.Record, ""); err != nil || len(runs) != 1 || !strings.HasPrefix(runs[0].Text, "set m = 0.400 kg ± 1 %\nset alpha = 33 deg div 1 deg") {
		t.Errorf("%+v, %v", runs, err)
	}
}

// What is bad stays to be mended, and what was good before it stays too.
func TestBadInputLosesNothing(t *testing.T) {
	table := newTable(t, memory(t), "", "",
		"0.4", "0.4 N", "0.4 kg ± -1 %", "0.4 kg ± 1 %", "95 deg", "35 deg", "0.5 N", "± 0.5", "50 deg", "", "", "", "", "", "",
		"q = 3", "alpha = 35", "T3 = 4 N", "m = 0.5 kg", "T1 = 3 N div 0.1 N", "T1 = 3 kg", "T1 =", "result", "leave")
	table.run("canal-lantern")
	table.wants("m needs a unit", "N is the unit of a force", "cannot be negative", "must be between 0° and 90°",
		"no letter “q”", "α needs a unit", "no letter “T3”", "Predicted T₁ = 3.",
		"but N is the unit of a force", "Taken: α = 35.00°, u = 0.29°", "Taken: T₁ = 3.000 N", "Left: T₁ is empty")
}

func TestStringsThatCannotPush(t *testing.T) {
	f := bankForm(t, "guyed-lamp")
	t.Log(f.Statement())
	f = bankForm(t, "steep-tie")
	fill(t, f, []string{"alpha = 20 deg", "Q = 1 N"}, nil)
	if _, why := f.Result(); len(why) != 1 || !strings.HasSuffix(why[0], ".") {
		t.Errorf("%q", why)
	}
}
