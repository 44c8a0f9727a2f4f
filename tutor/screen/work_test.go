// Inside the package: it presses keys on the state itself, without a terminal.

package screen

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
	"example.org/standstill/tutor/screen/views"
)

func TestLettersThatSpellAKeyAreLetters(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	for _, word := range []string{"right", "left", "up", "down", "home", "end", "tab", "enter", "esc", "backspace", "ctrl+c"} {
		d.press("ctrl+u")
		d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(word)})
		if d.line.Text() != word {
			t.Errorf("%q came out as %q", word, d.line.Text())
		}
	}
}

// TestTypingAlwaysTypes types a letter over every sheet: it stands in the line.
func TestTypingAlwaysTypes(t *testing.T) {
	for _, s := range scenes() {
		d := sit(t, 80, 24)
		s.lead(d)
		if d.line.IsRefused() {
			d.press("left") // into the line; else what is typed takes its place
		}
		before := d.line.Text()
		if d.work != nil && d.work.chooser.active && before != "" {
			before += "; "
		}
		d.write("q")
		if !strings.Contains(d.line.Text(), "q") || len(d.line.Text()) != len(before)+1 {
			t.Errorf("%s: %q became %q", s.name, before, d.line.Text())
		}
	}
}

func TestChoosingAndTypingADiagramSayTheSame(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.press("down", "tab", "tab", "tab", "up", "left", "tab", "right", "up")
	if got := d.line.Text(); got != "w down; T1 up left; T2 up right" {
		t.Fatalf("the line is %q", got)
	}
	d.press("down", "left") // T2 is taken back
	if got := d.line.Text(); got != "w down; T1 up left" {
		t.Fatalf("the line is %q", got)
	}
	d.write("; T2 up right")
	d.sees("T₂ tension ↗")
	d.press("enter")
	if d.now.Ask.Stage != checker.Components {
		t.Fatal("the diagram was refused")
	}
}

func TestForcesThatDoNotActAreOfferedToo(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.sees("N normal", "f friction")
	d.hand("T1 up left; T2 up right; w down; f left")
	d.sees("✗ wrong", "f")
	if d.now.Ask.Stage != checker.Diagram {
		t.Fatal("friction on a hanging ring was let through")
	}
}

func TestRefusedLineStaysWithTheCursorAtTheFault(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.hand(lantern[:4]...)
	for _, c := range []struct{ line, shown string }{
		{"T1 cos 35 - T2 sin 50 = 0", "T1 cos 35 - T2 sin 50▏ = 0"},
		{"T1 cos (35 = T2 cos 50", "▏(35"},
		{"T1 sin 35 = T2 cos 50", "T1 sin 35▏ = T2 cos 50"},
	} {
		d.hand(c.line)
		d.press("left")
		d.sees(c.shown)
		if d.line.Text() != c.line {
			t.Fatalf("%q became %q", c.line, d.line.Text())
		}
	}
}

func TestWordTypedIntoARefusedLineIsObeyed(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.hand(lantern[0], "T1 sin alpha")
	d.write("hint")
	d.press("enter")
	d.sees("→ hint 1")
	if d.line.Text() != "T1 sin alpha" {
		t.Fatalf("the line is %q", d.line.Text())
	}
}

// TestEachWrongLineOfATextHasItsMessage hands in two wrong lines at once: what is wrong with
// the first is under the line, with the second on the page.
func TestEachWrongLineOfATextHasItsMessage(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.hand(lantern[0], "T1x = T1 sin alpha; T2y = T2 cos beta; wy = 0")
	statements := d.lesson.Lines()[len(d.lesson.Lines())-1].Statements()
	if len(statements) != 3 {
		t.Fatalf("%d lines were read, want 3", len(statements))
	}
	for i, one := range statements {
		if one.Verdict != checker.Wrong || one.Message == "" {
			t.Fatalf("line %d is %s: %q", i, one.Verdict, one.Message)
		}
	}
	d.sees(statements[0].Message)
	d.press("pgup", "pgup", "pgup")
	d.sees(statements[1].Message)
	if strings.Count(d.view, statements[0].Message[:20]) > 1 {
		t.Errorf("the first message is on the screen twice:\n%s", d.view)
	}
	d.press("pgdn", "pgdn", "pgdn")
	d.sees(statements[2].Message)
}

// TestTheTableHasTheSignOfASize writes the weight without its sign: the table is what the
// sums are written from.
func TestTheTableHasTheSignOfASize(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.hand(lantern[:3]...)
	for _, c := range []struct{ line, shown string }{
		{"wx = 0, wy = w", "w 0 −w"},
		{"wy = -w", "w 0 −w"},
		{"T1x = T1 cos alpha", "T₁ −T₁ cos α T₁ sin α"},
		{"T1x = -T1 cos alpha", "T₁ −T₁ cos α T₁ sin α"},
	} {
		d.hand(c.line)
		d.sees(c.shown)
	}
}

func TestEarlierLinesComeBack(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.hand(lantern[0], "T1x = T1 cos alpha")
	d.write("half")
	d.press("up")
	if d.line.Text() != "T1x = T1 cos alpha" {
		t.Fatalf("the line is %q", d.line.Text())
	}
	d.press("up", "up", "up")
	if d.line.Text() != lantern[0] {
		t.Fatalf("the first line is %q", d.line.Text())
	}
	d.press("down", "down", "down")
	if d.line.Text() != "half" {
		t.Fatalf("what was half typed is %q", d.line.Text())
	}
}

func TestTabTakesUpThePartsInTurn(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.hand(lantern[0])
	for _, item := range []string{"T1x", "T1y", "T2x", "T2y", "wx", "wy", "T1x"} {
		if d.now.Ask.Item != item {
			t.Fatalf("%s is in hand, not %s", d.now.Ask.Item, item)
		}
		d.press("tab")
	}
	d.press("shift+tab", "shift+tab")
	if d.now.Ask.Item != "wy" {
		t.Fatalf("%s is in hand", d.now.Ask.Item)
	}
	d.hand("T2x")
	if d.now.Ask.Item != "T2x" || !d.line.IsEmpty() {
		t.Fatal("a part typed by its name alone was not taken up")
	}
	d.sees("The question is now about this component. Type an expression for it.")
}

func TestBodyTypedAloneIsTakenUp(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "two-knots")
	d.hand("B")
	d.sees("Which forces act on B", "The question is now about B.")
}

func TestHintsRunOut(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.press("ctrl+g", "ctrl+g", "ctrl+g")
	d.sees("→ hint 3")
	if d.said != "" {
		t.Fatalf("the third hint comes with %q", d.said)
	}
	d.press("ctrl+g")
	d.sees("There are no more hints for this")
	d.hand("hint")
	d.sees("There are no more hints for this")
}

func TestLeavingLosesNothing(t *testing.T) {
	tu := newTutor(t)
	d := sitAt(t, tu, Options{}, termenv.Ascii, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.hand(lantern[:2]...)
	d.write("T2 cos be")
	d.press("ctrl+c")
	if !d.quitting {
		t.Fatal("Ctrl-C does not leave")
	}
	d.saveDraft()
	again := sitAt(t, tu, Options{}, termenv.Ascii, 80, 24)
	again.sees("You are continuing from where you stopped last time", "T2 cos be▏", "T₁ cos α")
}

// TestARefusedLineGivesWayTomorrow: a line that was refused and stands in the box at the next start
// goes when the next one is typed.
func TestARefusedLineGivesWayTomorrow(t *testing.T) {
	tu := newTutor(t)
	d := sitAt(t, tu, Options{}, termenv.Ascii, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.hand("T1 down")
	d.saveDraft()
	again := sitAt(t, tu, Options{}, termenv.Ascii, 80, 24)
	again.sees("If you are not Nele, type “student”", "you T1 down▏")
	again.write("T1 up left")
	again.sees("you T1 up left▏")
}

// TestACommandIsNoName: whoever asks for help instead of a name is still asked for the name.
func TestACommandIsNoName(t *testing.T) {
	d := sit(t, 80, 24)
	for _, typed := range []string{"?", "help", "words", "next"} {
		d.hand(typed)
		d.sees("Who is practising?", "This is a command.")
	}
	d.press("f1")
	d.sees("Who is practising?", "This is a command.")
	d.hand("Nele")
	d.sees("All problems")
}

// TestGoingOnInTheMiddle says that the lines of the problem that is left are saved.
func TestGoingOnInTheMiddle(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.hand(lantern[0], "next")
	d.sees("Your lines for “A lantern over the canal” are saved.")
	d.hand("next")
	if strings.Contains(d.said, "are saved") {
		t.Error("an empty page has nothing to save")
	}
}

func TestWhatIsHalfTypedOutlivesAnotherProblem(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.write("T1 up le")
	d.press("ctrl+l")
	d.write("shop")
	d.press("enter")
	d.press("ctrl+l")
	d.write("canal")
	d.press("enter")
	d.sees("you T1 up le▏")
}

func TestKeepingALineGoesOn(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.hand(lantern[:4]...)
	d.hand("T1 sin 35 = T2 sin 50")
	d.press("ctrl+y")
	d.sees("! disputed", "✓ Components", "! Sum along x", "Sum along y ◂")
	d.hand("keep")
	d.sees("there is nothing to dispute")
}

func TestSolutionIsAskedForTwice(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.hand("solution")
	if d.lesson.Revealed() {
		t.Fatal("one word was enough")
	}
	d.press("esc")
	d.hand("solution")
	d.press("enter")
	d.sees("Worked solution", "Solution shown.")
	if !d.lesson.Revealed() {
		t.Fatal("the solution was not kept as shown")
	}
}

func TestTurningAnAngleMovesTheNumbers(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "banner-ring")
	d.press("ctrl+u")
	for d.now.Open {
		d.line.Set(answers(d, d.now.Ask.Stage, d.now.Ask.Item))
		d.press("enter")
	}
	d.press("tab")
	d.sees("▸ θ = 28°")
	before := d.view
	d.press("pgdn", "pgdn", "left", "left", "left")
	d.sees("▸ θ = 5°")
	if d.view == before {
		t.Fatal("nothing follows")
	}
	d.press("pgup", "pgup")
	d.sees("note As θ gets close to")
	if kept := len(d.lesson.Lines()); kept == 0 || !d.lesson.Solved() {
		t.Fatal("turning changed the lesson")
	}
}

// TestTurningFarGoesToTheEnd wants a step past an end to stop at it, and one from there
// to say so.
func TestTurningFarGoesToTheEnd(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "stage-block")
	d.hand("solution")
	d.press("enter", "tab")
	d.sees("▸ φ = 30°")
	d.press("pgdn", "pgdn", "pgdn")
	d.sees("▸ φ = 1°")
	if d.said != "" {
		t.Fatalf("%q is said though the angle was turned", d.said)
	}
	d.press("pgdn")
	d.sees("▸ φ = 1°", "You can give φ any value from 1° to 89°.")
	d.press("down")
	d.sees("▸ μ = 0.45")
	d.press("pgdn")
	d.sees("▸ μ = 0.05")
	d.press("pgup", "pgup", "pgup", "pgup")
	d.sees("▸ μ = 1.8")
}

func TestClassListIsTheOnlyOne(t *testing.T) {
	tu := newTutor(t)
	tu.Class = tutor.Class{Students: []record.Student{{ID: "s1", Name: "Edda"}, {ID: "s2", Name: "Ove"}},
		Work: []tutor.Set{{Heading: problems.Heading{ID: "canal-lantern"}}}}
	d := sitAt(t, tu, Options{}, termenv.Ascii, 80, 24)
	d.sees("Edda", "Ove", "Who is practising now?")
	d.hand("Mallory")
	d.sees("not on your class list")
	d.press("ctrl+u", "down", "enter")
	d.sees("Set work", "▸ easy A lantern over the canal")
}

func TestFaultEndsInOrder(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.sheet = &reader{make: func(*model) views.Content { panic("no screen can be made of this") }}
	_, cmd := guarded{d.model}.Update(tea.KeyMsg{Type: tea.KeyDown})
	if d.fault == nil || cmd == nil || !strings.HasPrefix(d.fault.Error(), "internal error: ") {
		t.Fatalf("the fault is %v", d.fault)
	}
}

// TestKeysAreThoseThatTerminalsLeaveAlone holds every key that a student is told
// of against those that are taken elsewhere or mean another key.
func TestKeysAreThoseThatTerminalsLeaveAlone(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	for _, s := range scenes() {
		d := sit(t, 200, 60)
		s.lead(d)
		d.keysAreFree(s.name)
	}
	for _, s := range benchScenes() {
		d := stand(t, newTutor(t), s.problem, 200, 60)
		s.lead(d)
		d.keysAreFree("the bench at " + s.name)
	}
}

// keysAreFree wants no key to be named that is taken elsewhere.
func (d *desk) keysAreFree(scene string) {
	taken := "ctrl+s ctrl+q ctrl+z ctrl+h ctrl+m ctrl+i ctrl+j ctrl+a ctrl+b ctrl+w ctrl+t ctrl+n f1 f10 f11"
	for _, b := range d.screen().Keys {
		for _, k := range b.Keys() {
			if strings.Contains(taken+" ", k+" ") && strings.HasPrefix(k, "ctrl") {
				d.t.Errorf("%s asks for %s", scene, k)
			}
		}
	}
}

// TestNewAnswerTypedIntoARefusedLineStandsAlone is what students do: they type the
// next answer without emptying the line.
func TestNewAnswerTypedIntoARefusedLineStandsAlone(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.hand("T1 up left; w down")
	d.write("T1 up left; T2 up right; w down")
	d.press("enter")
	if d.now.Ask.Stage != checker.Components {
		t.Fatalf("the diagram was not taken:\n%s", d.view)
	}
	d.hand("T1 sin alpha")
	d.write("T1 cos alpha")
	d.press("enter")
	if d.now.Ask.Item != "T1y" || !d.line.IsEmpty() {
		t.Fatalf("the component was not taken:\n%s", d.view)
	}
	d.hand(lantern[1:4]...)
	d.hand("T1 sin 35 = T2 cos 50")
	d.write("T1 cos 35 = T2 sin 50")
	d.press("enter")
	if d.line.Text() != "T1 cos 35 = T2 sin 50" {
		t.Fatalf("the line is %q", d.line.Text())
	}
	d.hand("T1 cos 35 = T2 cos 50")
	d.hand(lantern[5], "T1 = 20.2")
	d.write(" N")
	d.press("enter")
	d.sees("✓ right T₁ = 20.2 N")
}
