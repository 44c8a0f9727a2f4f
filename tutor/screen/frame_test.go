// Inside the package: it draws the state itself, without a terminal.

package screen

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"example.org/standstill/checker"
	"example.org/standstill/checker/statics"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

const noColour = termenv.Ascii

// fitsIn wants the screen to be exactly as high as the window and no wider.
func fitsIn(t testing.TB, d *desk) {
	t.Helper()
	lines := strings.Split(d.view, "\n")
	if len(lines) != d.rows {
		t.Fatalf("%d lines on a screen of %d:\n%s", len(lines), d.rows, d.view)
	}
	for _, line := range lines {
		if w := lipgloss.Width(line); w > d.cols {
			t.Fatalf("a line of %d cells on a screen of %d:\n%s", w, d.cols, line)
		}
	}
}

// answers solves any problem as its file has it, for a walk through all stages.
func answers(d *desk, stage checker.Stage, item string) string {
	ref := d.lesson.Ref
	switch stage {
	case checker.Diagram:
		var parts []string
		body, _ := ref.Body(item)
		for i := range body.Forces {
			x, y := ref.Room(body, &body.Forces[i])
			parts = append(parts, body.Forces[i].Name+" "+saidSides(sideOf(x), sideOf(y)))
		}
		return strings.Join(parts, "; ")
	case checker.Components:
		for _, b := range ref.Bodies {
			for i := range b.Forces {
				for axis := range 2 {
					f := &b.Forces[i]
					if name := f.Name + "xy"[axis:axis+1]; item == name || item == b.Name+"."+name {
						return name + " = " + ref.Print(f.Component(axisOf(axis)))
					}
				}
			}
		}
	case checker.XSum, checker.YSum:
		body, _ := ref.Body(item)
		return ref.Print(body.Sum(axisOf(int(stage[0]-'x')))) + " = 0"
	}
	value, _ := ref.Value(item)
	return item + " = " + ref.Unit(item).In(value, 4)
}

func axisOf(i int) statics.Axis { return statics.Axis(i) }

func sideOf(x float64) int {
	switch {
	case x > 1e-6:
		return 1
	case x < -1e-6:
		return -1
	}
	return 0
}

// TestEveryProblemFitsEverySize walks through every problem of the bank, and
// looks at the screen at each stage and size.
func TestEveryProblemFitsEverySize(t *testing.T) {
	bank := problems.Embedded().List()
	if len(bank) == 0 {
		t.Fatal("the bank is empty")
	}
	d := sit(t, 80, 24)
	d.hand("Nele")
	for i, h := range bank {
		if testing.Short() && i%8 != 0 {
			continue
		}
		d.open(h.ID, false)
		if d.lesson.Problem.ID != h.ID {
			t.Fatalf("%s does not open: %s", h.ID, d.said)
		}
		seen := checker.Stage("")
		for steps := 0; d.now.Open; steps++ {
			for _, size := range [][2]int{{60, 16}, {80, 24}, {110, 32}, {200, 60}} {
				if d.now.Ask.Stage != seen {
					d.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
					fitsIn(t, d)
				}
			}
			before := d.now.Ask
			seen = before.Stage
			d.line.Set(answers(d, before.Stage, before.Item))
			d.press("enter")
			if d.now.Open && d.now.Ask.Stage == before.Stage && d.now.Ask.Item == before.Item || steps > 80 {
				t.Fatalf("%s does not go on from %s %s:\n%s", h.ID, before.Stage, before.Item, d.view)
			}
		}
		for _, keys := range [][]string{{"enter"}, {"tab", "right"}, {"esc", "ctrl+o"}, {"esc"}} {
			d.press(keys...)
			fitsIn(t, d)
		}
	}
}

func TestAnySizeIsFilled(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.hand(lantern[:2]...)
	d.write("T2 cos")
	for _, cols := range []int{-1, 0, 1, 3, 59, 60, 61, 79, 80, 109, 110, 131, 400, 100000} {
		for _, rows := range []int{-1, 0, 1, 2, 15, 16, 19, 20, 24, 60, 200, 100000} {
			d.send(tea.WindowSizeMsg{Width: cols, Height: rows})
			if d.cols > 0 && d.rows > 0 {
				fitsIn(t, d)
			} else if d.view != "" {
				t.Fatalf("%d × %d shows %q", cols, rows, d.view)
			}
		}
	}
	d.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	d.sees("T2 cos", "T₁ sin α")
}

func TestDrawingStandsBesideThePageFrom110Columns(t *testing.T) {
	for _, c := range []struct {
		cols   int
		beside bool
	}{{109, false}, {110, true}} {
		d := sit(t, c.cols, 32)
		d.enrol("Nele", "canal-lantern")
		rule := ""
		for _, line := range strings.Split(d.view, "\n") {
			if strings.Contains(line, "Which forces act?") {
				rule = line
			}
		}
		if beside := !strings.HasPrefix(strings.TrimSpace(rule), "┄┄") || strings.HasPrefix(rule, "  "); beside != c.beside {
			t.Errorf("at %d columns: %s", c.cols, fmt.Sprint(d.view))
		}
	}
}

func TestGoodbyeFitsTheWindow(t *testing.T) {
	r, err := record.Open(filepath.Join(t.TempDir(), "record.db"), record.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	for _, cols := range []int{50, 60, 80, 110} {
		d := sitAt(t, tutor.New(tutor.Options{Bank: problems.Embedded(), Record: r}), Options{}, termenv.Ascii, cols, 24)
		said := d.goodbye().Said
		if got := strings.Join(strings.Fields(said), " "); got != saidGoodbye {
			t.Errorf("leaving says %q", got)
		}
		for _, line := range strings.Split(said, "\n") {
			if frame.TextWidth(line) > cols {
				t.Errorf("%q is wider than %d", line, cols)
			}
		}
	}
}

// TestHintStaysInTheKeyRow: however narrow the window, the row names hint, menu and the way
// out, and the problem's text where that is not in sight.
func TestHintStaysInTheKeyRow(t *testing.T) {
	for cols := views.LeastCols; cols <= views.WideCols; cols += 5 {
		d := sitAt(t, newTutor(t), Options{}, termenv.Ascii, cols, 24)
		d.enrol("Nele", "canal-lantern")
		d.sees("ctrl+g hint", "esc menu", "ctrl+c quit")
		d.hand(lantern[0])
		d.sees("ctrl+g hint", "ctrl+r problem", "esc menu", "ctrl+c quit")
	}
}

// TestWhatIsAskedAndSaidIsShownToItsEnd looks for whole questions and messages, on the least
// screen, too.
func TestWhatIsAskedAndSaidIsShownToItsEnd(t *testing.T) {
	said := 0
	for _, size := range [][2]int{{80, 24}, {60, 16}} {
		for _, s := range scenes() {
			d := sit(t, size[0], size[1])
			s.lead(d)
			d.sees(d.screen().Question)
			if d.told.Text != "" && d.isAtHome() {
				d.sees(d.told.Text)
				said++
			}
			if d.said != "" {
				d.sees(d.said)
				said++
			}
		}
	}
	if said < 10 {
		t.Errorf("only %d messages were looked at", said)
	}
}

// TestTheExampleIsSeenWhenAStageBegins looks for what can be typed beside the note that the
// stage has changed.
func TestTheExampleIsSeenWhenAStageBegins(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.hand(lantern[0])
	d.sees("The next stage is", d.now.Ask.Sample)
}
