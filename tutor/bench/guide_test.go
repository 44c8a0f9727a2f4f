// Inside the package: it reads notes of a run that only the screens show.

package bench

import (
	"cmp"
	"errors"
	"math"
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
		Table: Table{Tutor: tutor.New(tutor.Options{Bank: problems.Embedded(), Record: r}), Zone: time.UTC, Save: func(name, usual string, content []byte) (string, error) {
			name = cmp.Or(name, usual)
			table.saved[name] = string(content)
			return name, nil
		}},
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
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
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
		if !strings.Contains(table.saved[name], "Masses can fall") {
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
	again.wants("Open: this is run 1", "Accepted: m = 0.4000 kg", "Accepted: α = 33.00°", "Predicted T₁ =")
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
	table.wants("Press Enter to keep 0.400 kg ± 1 %.", "Accepted: m = 0.4000 kg", "Accepted: α = 33.00°")
	if runs, err := Runs(table.guide.Tutor.Record, ""); err != nil || len(runs) != 1 || !strings.HasPrefix(runs[0].Text, "set m = 0.400 kg ± 1 %\nset alpha = 33 deg div 1 deg") {
		t.Errorf("%+v, %v", runs, err)
	}
}

// What is bad stays to be mended, and what was good before it stays too.
func TestBadInputLosesNothing(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	table := newTable(t, memory(t), "", "",
		"0.4", "0.4 N", "0.4 kg ± -1 %", "0.4 kg ± 1 %", "95 deg", "35 deg", "0.5 N", "± 0.5", "50 deg", "", "", "", "", "", "",
		"q = 3", "alpha = 35", "T3 = 4 N", "m = 0.5 kg", "", "T1 = 3 N div 0.1 N", "T1 = 3 kg", "T1 =", "result", "leave")
	table.run("canal-lantern")
	table.wants("m needs a unit", "N is the unit of a force", "cannot be negative", "must be between 0° and 90°",
		"no letter “q”", "α needs a unit", "no letter “T3”", "Predicted T₁ = 3.",
		"but N is the unit of a force", "Accepted: α = 35.00°, u = 0.29°", "Accepted: T₁ = 3.000 N", "Empty: T₁.")
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

// A run belongs to those who made it: others open it, and what they change is a run of
// their own. Lists and plots are of one group unless all are asked for, and name it.
func TestARunBelongsToItsGroup(t *testing.T) {
	r := memory(t)
	newTable(t, r, "", "Ida, Jon", "0.400 kg ± 1 %", "33 deg ± 0.5 deg", "50 deg ± 0.5 deg", "", "", "2.5 N div 0.1 N", "3.3 N div 0.1 N", "leave").run("canal-lantern")
	others := newTable(t, r, "", "Mia, Tom", "1", "", "", "", "", "", "", "", "", "T2 = 2.9 N div 0.1 N", "runs", "", "“runs all”", "", "compare 1 2", "plot all", "report", "frobnicate", "leave")
	others.run("canal-lantern")
	others.wants("The program does not know “frobnicate”. Type “help” for a list of commands.", "this is run 1, which Ida and Jon made. If you change anything, your version is saved as a new run", "Type “runs all” to list the runs of other groups, too.",
		", Mia and Tom: m = 0.400 kg ± 1 %", ", Ida and Jon: m = 0.400 kg ± 1 %")
	runs, err := Runs(r, "")
	if err != nil || len(runs) != 2 || !strings.Contains(runs[0].Text, "T2 = 3.3 N") || len(runs[0].Students) != 2 || !strings.Contains(runs[1].Text, "T2 = 2.9 N") {
		t.Errorf("%+v, %v", runs, err)
	}
	if report := others.saved["canal-lantern-report.html"]; strings.Contains(report, "Ida") || !strings.Contains(report, "Mia") {
		t.Error("the report of one group names another, or not its own")
	}
	newTable(t, r, "", "Jon", "1", "", "", "", "", "", "", "", "", "T2 = 3.4 N div 0.1 N", "leave").run("canal-lantern")
	if runs, _ := Runs(r, ""); len(runs) != 2 || !strings.Contains(runs[0].Text, "T2 = 3.4 N") {
		t.Errorf("one who made a run goes on with it: %+v", runs)
	}
}

// A value that is changed once there are readings is another setting, which keeps the
// old run as it was, or a correction.
func TestAChangedValueIsASettingOrACorrection(t *testing.T) {
	r := memory(t)
	table := newTable(t, r, "", "Ida", "0.400 kg ± 1 %", "30 deg ± 0.5 deg", "50 deg ± 0.5 deg", "", "", "2.5 N div 0.1 N", "",
		"alpha = 45 deg ± 0.5 deg", "", "T1 = 2.6 N div 0.1 N", "m = 0.41 kg ± 1 %", "correction", "leave")
	table.run("canal-lantern")
	table.wants("You took the readings with a different value of α.", "This is a new run with the same values, but without readings.", "Accepted: m = 0.4100 kg")
	runs, err := Runs(r, "")
	if err != nil || len(runs) != 2 || !strings.Contains(runs[0].Text, "alpha = 30 deg ± 0.5 deg\nset beta = 50 deg ± 0.5 deg\nread T1 = 2.5 N") ||
		!strings.Contains(runs[1].Text, "m = 0.41 kg ± 1 %\nset alpha = 45 deg ± 0.5 deg") || !strings.Contains(runs[1].Text, "read T1 = 2.6 N") {
		t.Errorf("%+v, %v", runs, err)
	}
}

// What is unlikely is asked about once: a mass far from the problem's, a reading far from
// the prediction, an uncertainty that is more likely a slip.
func TestUnlikelyValuesAreAskedAbout(t *testing.T) {
	table := newTable(t, memory(t), "", "Ida", "1000 kg ± 1 %", "2.60 kg ± 1 %", "28 deg ± 0.5 deg", "", "", "142 N div 1 N", "", "27.5 N div 0.5 N", "result", "leave")
	table.run("banner-ring")
	table.wants("Is m = 1000.0 kg, u = 5.8 kg right? The problem gives 2.6 kg. If the value is right, press Enter. If not, type the value again.", "Accepted: m = 2.600 kg",
		"Is T₁ = 142.00 N, u = 0.29 N right? This reading is far from the prediction.", "Accepted: T₁ = 142.00 N", "Accepted: T₂ = 27.50 N")
	if strings.Count(table.all(), "Is T₁") != 1 {
		t.Error("asked again")
	}
	slip := newTable(t, memory(t), "", "", "1.00 kg ± 0.5 kg", "1.00 kg ± 0.5 %", "leave")
	slip.run("banner-ring")
	slip.wants("The uncertainty of m is 29 % of its value. Did you mean a percentage or another unit?", "Accepted: m = 1.0000 kg")
	one := newTable(t, memory(t), "", "", "1.00 kg", "leave")
	one.run("banner-ring")
	one.wants("What is the smallest division of the scale? Press Enter if it is 0.01 kg.")
}

// Notes and the conclusion are in the run and its report; the table of a group's runs
// reads in again as the same runs.
func TestNotesConclusionAndATableOfRuns(t *testing.T) {
	r := memory(t)
	table := newTable(t, r, "", "Ida", "0.400 kg ± 1 %", "30; 31; 32 deg div 1 deg", "50 deg ± 0.5 deg", "9.81 m/s^2", "hanger m = 50 g div 1 g", "scale zero = 0.1 N div 0.1 N", "",
		"2.5 N div 0.1 N", "", "note the ring = stuck once", "conclusion ＝T1 grows <with> α", "report", "again", "alpha = 40 deg ± 0.5 deg", "T1 = 2.9 N div 0.1 N", "T2 = 3.1 N div 0.1 N", "export", "series", "leave")
	table.run("canal-lantern")
	if report := table.saved["canal-lantern-report.html"]; !strings.Contains(report, "the ring = stuck once") || !strings.Contains(report, "T1 grows &lt;with&gt; α") {
		t.Error("the report lacks the note or the conclusion")
	}
	exported := table.saved["canal-lantern-runs.csv"]
	if !strings.Contains(exported, ",'＝T1 grows") {
		t.Errorf("a spreadsheet works out the conclusion in\n%s", exported)
	}
	p, err := problems.Embedded().Get("canal-lantern")
	if err != nil {
		t.Fatal(err)
	}
	forms, why, err := Import(p, strings.NewReader(exported))
	if err != nil || why != nil || len(forms) != 2 {
		t.Fatalf("%d forms, %q, %v of\n%s", len(forms), why, err, exported)
	}
	runs, _ := Runs(r, "")
	for i, f := range forms {
		original, err := runs[i].Open(r, problems.Embedded())
		if err != nil {
			t.Fatal(err)
		}
		want, got := result(t, original), result(t, f)
		for j := range want.Compared {
			a, b := want.Compared[j], got.Compared[j]
			if math.Abs(a.Read-b.Read) > 1e-9 || math.Abs(a.U-b.U) > 1e-9 || math.Abs(a.Predicted.Value-b.Predicted.Value) > 1e-9 || math.Abs(a.Predicted.U-b.Predicted.U) > 1e-8 {
				t.Errorf("run %d: %s comes back as %v ± %v against %v ± %v", i+1, a.said(), b.Read, b.U, b.Predicted.Value, b.Predicted.U)
			}
		}
	}
	if forms[0].Conclusion != "＝T1 grows <with> α" {
		t.Errorf("conclusion %q", forms[0].Conclusion)
	}
	for text, want := range map[string]string{
		"":                                     "The first row of the table must contain",
		"m / kg\n":                             "The first row of the table must contain",
		"q / kg\n1":                            "no letter “q”",
		"m / kg,alpha / deg\n0.4,30\nheavy,95": "Row 3: m: “heavy” is not a unit",
		"m / N\n0.4":                           "N is the unit of a force",
		"m / kg\n\"0.4":                        "The program cannot read the table",
	} {
		if _, why, err := Import(p, strings.NewReader(text)); err != nil || !strings.Contains(strings.Join(why, " "), want) {
			t.Errorf("%q: %q, %v", text, why, err)
		}
	}
	if forms, why, _ := Import(p, strings.NewReader("m [kg],alpha / deg,T1 / N,u(T1) / N\n\"0,4 ± 1 %\",30; 31 deg,2.5,0.1\n")); why != nil || forms[0].Text() != "set m = 0,4 kg ± 1 %\nset alpha = 30; 31 deg\nread T1 = 2.5 N u 0.1 N" {
		t.Errorf("%q, %v", why, forms)
	}
}

// A step is added in one place: a row of the script is asked in lines like all others.
func TestAStepIsARowOfTheScript(t *testing.T) {
	table := newTable(t, memory(t), "", "", "21", "leave")
	steps := Script()
	asked := false
	weather := Step{Name: "Room", Title: "The room", Ask: func(t *Table) (*Question, bool) {
		return &Question{Text: "How warm is the room?", Sample: "20", Take: func(line string) Answer {
			asked = true
			return t.note("room " + line)
		}}, !asked
	}}
	table.guide.Steps = append(append(steps[:2:2], weather), steps[2:]...)
	table.run("canal-lantern")
	table.wants("How warm is the room? Example: 20")
	if got := table.guide.Form.Notes; len(got) != 1 || got[0] != "room 21" {
		t.Errorf("%q", got)
	}
}
