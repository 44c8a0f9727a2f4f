// Inside the package: it presses keys on the state itself, without a terminal.

package screen

import (
	"cmp"
	"errors"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor/record"
)

// byHandLines solve the lantern with the numbers of lanternValues.
var byHandLines = []string{
	"T1 up left; T2 up right; w down",
	"T1 cos α; T1 sin α; T2 cos β; T2 sin β; wx = 0; wy = w",
	"T1 cos 30 = T2 cos 45",
	"T1 sin 30 + T2 sin 45 = 0.400 * 9.81",
	"T1 = 2.87 N; T2 = 3.52 N",
}

// drawingShare is how much of a narrow screen the apparatus takes, in hundredths.
const drawingShare = 28

// shows wants texts to be in the form beside the drawing, line breaks apart.
func (d *desk) shows(texts ...string) {
	d.t.Helper()
	whole := d.view
	defer func() { d.view = whole }()
	var right []string
	for _, line := range strings.Split(whole, "\n") {
		runes := []rune(line)
		right = append(right, string(runes[min(len(runes), d.cols*drawingShare/100+2):]))
	}
	d.view = strings.Join(right, "\n")
	d.sees(texts...)
}

// TestALabPeriodOnTheScreen plays a period by keys: a slip, a prediction by hand, a
// result, another angle, both runs side by side, paper, and leaving.
func TestALabPeriodOnTheScreen(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	d := stand(t, newTutor(t), "canal-lantern", 80, 24)
	saved := map[string]string{}
	d.bench.Table.Save = func(name, usual string, content []byte) (string, error) {
		name = cmp.Or(name, usual)
		if saved[name] != "" {
			return "", errors.New("there is a file of that name already")
		}
		saved[name] = string(content)
		return name, nil
	}
	d.sees("▸ Caution ◂", "Masses can fall", "Leave real structures to licensed")
	d.seated("Ana, Ben")
	d.sees("Bench – Ana, Ben", "▸ Values ◂", "Press Enter to use 3.2 kg from the problem.")

	d.write("0.350 N")
	d.sees("not yet m is measured in kg or g, but N is the unit of a force.")
	d.press("enter")
	d.shows("▸ m 0.350 N ? correct m is measured in kg or g, but N is the unit", "one value to correct")
	d.hand("0.350 kg", "± 1")
	d.sees("The uncertainty of m is 160 % of its value. Did you mean a percentage or another unit?")
	d.hand(lanternValues[0], "30; 29.5; 30.5 deg")
	d.sees("What is the smallest division of the scale?")
	d.hand("1")
	d.shows("30.00°, u = 0.41°", "▸ β")
	d.hand(lanternValues[2:]...)

	d.sees("▸ By hand ◂", "▸ Ana")
	d.press("enter")
	d.sees("It is Ana's turn to calculate the prediction by hand", "mass 0.400 kg", "▸ Forces ◂", "ctrl+l to the bench")
	d.hand(byHandLines...)
	d.sees("Solved. You got ")
	d.press("enter")
	d.sees("Worked solution", "enter to the bench")
	d.press("enter")
	d.sees("Ana, by hand: right first time", "▸ Ben")
	d.hand("ben")
	d.sees("It is Ben's turn to calculate the prediction by hand")
	d.hand("next")
	d.sees("You can do this at the bench")
	d.hand("bench")
	d.sees("▸ Go on")
	d.hand("ana")
	d.press("ctrl+l")
	d.sees("▸ Ben")
	d.press("down")
	d.press("up")
	d.press("down", "enter")
	d.sees("▸ Readings ◂", "What does the spring scale show for T₁?")
	if strings.Contains(d.view, "2.87") {
		t.Fatalf("the prediction is told before it is asked for:\n%s", d.view)
	}
	d.hand(lanternReadings...)
	d.sees("▸ Result ◂", "= T₁ (2.873 ± 0.048) N (2.900 ± 0.058) N +0.027 N 0.075 N 0.36", "= T₁: reading and prediction agree")

	d.hand("report", "report", "again")
	d.sees("a new run with the same values, but without readings.")
	d.write("alpha = 40 deg ± 0.5 deg")
	d.sees("read as α = 40.00°, u = 0.29°")
	d.press("enter")
	d.hand("T1 = 3.1 N div 0.1 N", "T2 = 3.4 N div 0.1 N", "result")
	d.predictedAlready()
	d.sees("reading and prediction differ by")
	d.press("tab", "tab")
	d.sees("α / °")
	d.press("down")
	d.sees("β / °")
	d.hand("plot T1")
	d.sees("note The equations predict T₁", "α / °")
	d.hand("predict Ben")
	d.sees("It is Ben's turn to calculate the prediction by hand")
	d.press("ctrl+l")
	d.sees("Your calculation still counts as practice.")
	d.press("esc")
	d.hand("compare 1 2")
	d.sees("Runs side by side", "run 1", "run 2", "T₁ Eₙ 0.36 4.42")
	d.press("esc")
	d.hand("students Cem", "sheet")
	d.sees("saved canal-lantern-sheet.html")
	if report := saved["canal-lantern-report.html"]; !strings.Contains(report, "Masses can fall") || !strings.Contains(report, "right first time") {
		t.Errorf("the report holds no caution or no credit: %q", report)
	}
	d.press("ctrl+c")
	d.close()
	if said := d.goodbye().Said; !d.quitting || !strings.HasPrefix(said, "Run 2 is saved") && !strings.Contains(said, "Nothing was saved") {
		t.Errorf("leaving says %q", said)
	}
	all := runsOf(t, d)
	if len(all) != 2 || len(all[0].Students) != 2 || len(all[1].Students) != 3 || !strings.Contains(all[1].Text, "read T2 = 3.4 N div 0.1 N") {
		t.Errorf("%+v", all)
	}
}

// TestLeavingTheBenchKeepsWhatWasTyped leaves in the middle of a value, and comes back.
func TestLeavingTheBenchKeepsWhatWasTyped(t *testing.T) {
	tu := newTutor(t)
	d := stand(t, tu, "canal-lantern", 80, 24)
	d.seated("Ana")
	d.hand("0.400 kg ± 1 %")
	d.write("33 de")
	d.press("ctrl+c")
	d.close()
	if all := runsOf(t, d); len(all) != 1 || all[0].Text != "set m = 0.400 kg ± 1 %\nset alpha = 33 de" {
		t.Fatalf("%+v", all)
	}
	d = stand(t, tu, "canal-lantern", 80, 24)
	d.seated("Ana, Ben")
	d.sees("There are saved runs for this apparatus", "▸ A new run", "1. canal-lantern")
	d.press("down", "enter")
	d.shows("0.4000 kg", "33 de", "? correct")
	d.sees("This is run 1 as you typed it")
	d.press("down")
	d.write("g")
	d.press("enter")
	d.hand("div 1 deg", "50 deg ± 0.5 deg", "result")
	d.predictedAlready()
	d.sees("T₁ (2.5", "T₂ (3.3")
	d.close()
	if all := runsOf(t, d); len(all) != 1 || !strings.Contains(all[0].Text, "set alpha = 33 deg div 1 deg\nset beta = 50 deg") || len(all[0].Students) != 2 {
		t.Fatalf("%+v", all)
	}
}

// TestLeavingKeepsAValueForAnotherField leaves with a line that names a letter.
func TestLeavingKeepsAValueForAnotherField(t *testing.T) {
	for line, want := range map[string]string{
		"beta = 5O deg":         "set beta = 5O deg",
		"beta = 50 deg":         "set beta = 50 deg",
		"T1 = 3.1 N div 0.1 N":  "read T1 = 3.1 N div 0.1 N",
		"m = 0.4 kgs; no sense": "set m = 0.4 kgs; no sense",
	} {
		d := stand(t, newTutor(t), "canal-lantern", 80, 24)
		d.seated("Ana")
		d.write(line)
		d.close()
		if all := runsOf(t, d); len(all) != 1 || all[0].Text != want {
			t.Errorf("%q leaves %+v", line, all)
		}
	}
}

// TestBadValueLosesNothing mends one field while the others stand, and brings back what
// was typed over.
func TestBadValueLosesNothing(t *testing.T) {
	d := stand(t, newTutor(t), "canal-lantern", 80, 24)
	d.seated("")
	d.hand("0.400 kg ± 1 %", "95 deg")
	d.shows("it must be between 0° and 90°", "one value to correct", "0.4000 kg")
	d.hand("result")
	d.shows("to correct", "▸ α 95 deg")
	d.press("up")
	d.hand("300 deg")
	d.shows("▸ m 300 deg ? correct", "2 values to correct")
	d.press("ctrl+y")
	if d.line.Text() != "0.400 kg ± 1 %" {
		t.Fatalf("the line is %q", d.line.Text())
	}
	d.press("enter")
	d.shows("0.4000 kg", "▸ α 95 deg")
	d.hand("q = 3 kg")
	d.sees("no letter “q”", "you q = 3 kg▏")
	d.hand("beta = 50 deg ± 0.5 deg")
	d.shows("β 50 deg ± 0.5 deg 50.00°", "▸ g")
	if d.bench.Table.Form.Fields[1].Typed != "95 deg" {
		t.Fatalf("%+v", d.bench.Table.Form.Fields[1])
	}
}

// toField goes to a field by its place in the form.
func (d *desk) toField(at int) {
	d.press("pgup", "pgup", "pgup")
	for range at {
		d.press("down")
	}
}

// TestTypedBehindAValue takes a word, a letter's value or a new value for what it is,
// though the line was not emptied first.
func TestTypedBehindAValue(t *testing.T) {
	d := stand(t, newTutor(t), "canal-lantern", 80, 24)
	d.seated("Ana")
	d.hand("0.400 kg ± 1 %")
	d.press("up")
	for _, c := range []struct{ typed, field, want string }{
		{"0.500 kg ± 1 %", "m", "0.500 kg ± 1 %"},
		{" div 1 g", "m", "0.500 kg ± 1 % div 1 g"},
		{"beta = 40 deg div 1 deg", "m", "0.500 kg ± 1 % div 1 g"},
		{"cautions", "m", "0.500 kg ± 1 % div 1 g"},
	} {
		d.toField(0)
		d.write(c.typed)
		d.press("enter")
		if got := d.bench.Table.Form.Fields[0].Typed; got != c.want {
			t.Errorf("%q makes %q", c.typed, got)
		}
	}
	d.sees("Masses can fall")
	d.press("esc")
	d.toField(1)
	d.write(" %")
	d.press("enter")
	d.write("30; 29.5; 30.5 deg")
	d.press("enter")
	d.sees("What is the smallest division of the scale?")
	d.hand("1", "q = 3 kg")
	d.sees("no letter “q”", "clear it with ctrl+u")
	d.press("down")
	d.write("gamma = 2")
	d.press("enter")
	d.sees("no letter “gamma”")
	d.write("m = 0.6 kg")
	d.sees("read as m = 0.600 kg")
	d.write(" div 1 g")
	d.press("enter")
	d.sees("0.60000 kg", "▸ α")
	d.hand("result")
	d.predictedAlready()
	d.hand("alpha = 95 deg")
	d.sees("between 0° and 90°")
	d.write("alpha = 35 deg div 1 deg")
	d.press("enter")
	d.sees("accepted α = 35.00°")
	if d.bench.Table.Form.Fields[2].Typed != "40 deg div 1 deg" {
		t.Errorf("%+v", d.bench.Table.Form.Fields[2])
	}
}

// TestWarningsComeWithTheValues warns as soon as a string is nearly level, and tells no
// size before the students had the offer to predict it.
func TestWarningsComeWithTheValues(t *testing.T) {
	d := stand(t, newTutor(t), "canal-lantern", 80, 24)
	d.seated("Ana")
	d.hand("1.2 kg div 1 g", "T1 = 5 N max", "alpha = 4 deg div 1 deg", "beta = 4 deg div 1 deg")
	d.shows("! careful T₁ and T₂ are predicted to be more than 5 times the load", "T₁ is predicted to be more than the rated load of 5 N.")
	if strings.Contains(d.view, "84.") {
		t.Errorf("the size is told:\n%s", d.view)
	}
	d.hand("result")
	d.sees("▸ By hand ◂", "! careful T₁ and T₂ are predicted")
	d.predictedAlready()
	d.sees("T₁ (", " N) and T₂ (", "more than 5 times the load")
}

// TestRunsAreMarkedAndCompared compares by keys, and opens by number.
func TestRunsAreMarkedAndCompared(t *testing.T) {
	d := stand(t, newTutor(t), "canal-lantern", 80, 24)
	d.ranWhole()
	d.hand("again", "alpha = 40 deg ± 0.5 deg", "T1 = 2.8 N div 0.1 N")
	d.press("ctrl+l", "tab", "enter")
	d.sees("to compare 2. canal-lantern", "To compare two runs, mark a second run")
	d.press("up", "tab")
	d.sees("enter compare")
	d.press("enter")
	d.sees("Runs side by side", "T₁ Eₙ")
	d.press("esc")
	d.hand("compare 1 2 1 2")
	d.sees("m run 1: 0.3500 kg, u 0.0020; run 2: 0.3500 kg, u 0.0020; run 1:")
	d.press("esc")
	d.hand("open 1")
	d.sees("This is run 1 as you typed it", "0.3500 kg")
	d.hand("open 9")
	d.sees("There is no run with this number")
}

// TestSmallWindowAtTheBench goes on in lines of text, with what was typed kept.
func TestSmallWindowAtTheBench(t *testing.T) {
	d := stand(t, newTutor(t), "canal-lantern", 80, 24)
	d.seated("Ana")
	d.write("0.4 kg")
	d.send(tea.WindowSizeMsg{Width: 50, Height: 10})
	d.sees("This window has 50 × 10 characters, but the")
	d.press("enter")
	d.close()
	if all := runsOf(t, d); !d.bye.Plain || d.bye.Form != nil || len(all) != 1 || all[0].Text != "set m = 0.4 kg" {
		t.Fatalf("%v %+v", d.bye, all)
	}
	d = stand(t, newTutor(t), "canal-lantern", 80, 24)
	d.seated("")
	d.write("0.4 kg")
	d.send(tea.WindowSizeMsg{Width: 50, Height: 10})
	d.press("enter")
	d.close()
	if d.bye.Form == nil || d.bye.Form.Text() != "set m = 0.4 kg" {
		t.Fatalf("%+v", d.bye)
	}
}

// TestBrokenRecordAtTheBench says what is the matter, and goes on.
func TestBrokenRecordAtTheBench(t *testing.T) {
	d := stand(t, newTutor(t), "canal-lantern", 80, 24)
	d.seated("Ana")
	d.hand("0.400 kg ± 1 %")
	d.tutor.Record.Close()
	d.hand("predict Ana")
	d.sees("note")
	if d.lesson != nil || d.bench.Table.Form.Fields[0].Typed != "0.400 kg ± 1 %" {
		t.Fatalf("%+v", d.bench.Table.Form.Fields[0])
	}
	var fault *record.Error
	if err := d.bench.Table.SaveRun(); !errors.As(err, &fault) {
		t.Fatalf("%v", err)
	}
}

// TestHostileRunNeverReachesTheTerminal opens a run from a record that somebody else has
// written.
func TestHostileRunNeverReachesTheTerminal(t *testing.T) {
	tu := newTutor(t)
	p, err := tu.Bank.Get("canal-lantern")
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(tu.Record.SaveProblem(p.Hash, p.ID, string(p.Raw)), tu.Record.AddStudent("eve", hostile)); err != nil {
		t.Fatal(err)
	}
	if _, err := tu.Record.Append(record.Entry{Kind: record.Bench, Student: "eve", Problem: p.ID, Hash: p.Hash, Text: "set m = 0.4 kg" + hostile}); err != nil {
		t.Fatal(err)
	}
	d := stand(t, tu, p.ID, 80, 24)
	d.seated("Ana, " + hostile)
	harmless(t, d)
	d.press("down", "enter")
	harmless(t, d)
	d.sees("0.4 kg")
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Paste: true, Runes: []rune(hostile)})
	d.press("enter")
	harmless(t, d)
	d.press("ctrl+l")
	harmless(t, d)
}

// TestNoticeAtTheBench has the students agree to keep nothing before anything else.
func TestNoticeAtTheBench(t *testing.T) {
	d := standAs(t, newTutor(t), "canal-lantern", Options{Notice: "The record cannot be opened."}, 80, 24)
	d.sees("The record cannot be opened.", "go on without saving")
	d.press("esc", "esc")
	d.write("help")
	d.press("ctrl+u", "enter")
	d.sees("▸ Caution ◂", "Masses can fall", "From now on, nothing is saved")
	d.seated("Ana")
	d.sees("The program cannot save anything here.")
}
