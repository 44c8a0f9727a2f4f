// Inside the package: it draws one view of the state.

package screen

import (
	"strings"
	"testing"

	"github.com/muesli/termenv"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/screen/frame"
)

// TestTypingTakesThePlaceOfARefusedLine: the text stays, marked, until something is typed.
func TestTypingTakesThePlaceOfARefusedLine(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.hand(lantern[0], "T1x = T1 sin alpha")
	d.sees("✗ you T1x = T1 sin alpha", "✗ wrong")
	d.write("T")
	if got := d.line.Text(); got != "T" {
		t.Errorf("typing makes %q", got)
	}
	d.sees("✗ wrong") // until the next line is checked
	d.hand("T1x = -T1 cos alpha")
	if strings.Contains(d.view, "✗ you") {
		t.Errorf("a right line is marked as refused:\n%s", d.view)
	}
	d.hand("T1y = T1 cos alpha")
	d.press("left", "backspace")
	if got := d.line.Text(); got == "" || got == "T1y = T1 cos alpha" {
		t.Errorf("an arrow key does not go into the line: %q", got)
	}
}

// TestArrowsAndTypingMeet: what is typed after the arrow keys is a force of its own.
func TestArrowsAndTypingMeet(t *testing.T) {
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.press("down")
	d.write("T1 up left")
	if got := d.line.Text(); got != "w down; T1 up left" {
		t.Errorf("the line is %q", got)
	}
}

// TestForcesGivesNothingAway: as long as the forces are chosen, no force is painted, and
// every offer looks alike.
func TestForcesGivesNothingAway(t *testing.T) {
	painted := sitAt(t, newTutor(t), Options{}, termenv.TrueColor, 110, 32)
	painted.hand("Nele")
	for _, h := range problems.Embedded().List() {
		painted.open(h.ID, false)
		for _, typed := range []string{"", "w down"} {
			painted.line.Set(typed)
			painted.textChanged()
			rows, _ := painted.screen().Draw()
			for _, r := range rows {
				for _, s := range r {
					if s.Shade >= frame.FirstForce {
						t.Fatalf("%s: %q is painted as a force", h.ID, s.Text)
					}
				}
			}
		}
	}
}

// TestGivensAreAlwaysInSight looks for each given at every stage of a problem.
func TestGivensAreAlwaysInSight(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	for _, size := range [][2]int{{60, 18}, {80, 24}, {110, 32}} {
		d := sit(t, size[0], size[1])
		d.enrol("Nele", "canal-lantern")
		for _, line := range append([]string{""}, lantern[:7]...) {
			if line != "" {
				d.hand(line)
			}
			for _, g := range []string{"m = 3.2 kg", "α = 35°", "β = 50°", "g = 9.8 m/s²"} {
				d.sees(g)
			}
		}
	}
}
