// Inside the package: it draws the state itself, without a terminal.

package screen

import (
	"fmt"
	"testing"
)

// sizes of the golden screens: the usual one, one where the drawing stands beside
// the page, and the least.
func sizes() [][2]int { return [][2]int{{80, 24}, {110, 32}, {60, 16}} }

// scenes are the screens that are kept as files, with what leads to them.
func scenes() []struct {
	name string
	lead func(d *desk)
} {
	type scene = struct {
		name string
		lead func(d *desk)
	}
	at := func(problem string, lines ...string) func(*desk) {
		return func(d *desk) {
			d.enrol("Nele", problem)
			d.hand(lines...)
		}
	}
	then := func(first func(*desk), more ...func(*desk)) func(*desk) {
		return func(d *desk) {
			first(d)
			for _, f := range more {
				f(d)
			}
		}
	}
	keys := func(names ...string) func(*desk) { return func(d *desk) { d.press(names...) } }
	typed := func(text string) func(*desk) { return func(d *desk) { d.write(text) } }
	solved := at("canal-lantern", lantern...)
	return []scene{
		{"welcome", func(*desk) {}},
		{"list", func(d *desk) { d.hand("Nele") }},
		{"list-found", func(d *desk) { d.hand("Nele"); d.write("springs") }},
		{"forces", at("canal-lantern")},
		{"forces-chosen", then(at("canal-lantern"), keys("down", "tab", "tab", "tab", "up", "left"))},
		{"forces-wrong", at("canal-lantern", "T1 up left; T2 up right; N up; w down")},
		{"forces-slope", then(at("crate-ramp"), typed("N away from the slope; T up the slope"))},
		{"components", at("canal-lantern", lantern[0])},
		{"components-wrong", at("canal-lantern", lantern[0], "T1x = T1 sin alpha")},
		{"components-unread", at("canal-lantern", lantern[0], "T1x = T1 cos (alpha")},
		{"components-bodies", at("two-knots", "T1 up left; T2 right; w1 down", "T2 left; T3 up right; w2 down", "T1 cos alpha")},
		{"x-sum", at("canal-lantern", lantern[:4]...)},
		{"y-sum-hint", then(at("canal-lantern", lantern[:5]...), typed("T1 sin alpha = w"), keys("enter", "ctrl+g"))},
		{"solve-fraction", then(at("canal-lantern", lantern[:6]...), typed("T1 = w/(sin alpha + cos alpha tan beta)"))},
		{"done", solved},
		{"solution", then(solved, keys("enter"))},
		{"angles", then(solved, keys("tab", "pgdn"))},
		{"reveal", then(at("canal-lantern"), typed("solution"), keys("enter"))},
		{"page", then(at("canal-lantern", lantern[0], "T1 sin alpha"), keys("ctrl+o"))},
		{"text", then(at("canal-lantern", lantern[0]), keys("ctrl+r"))},
		{"past", then(at("canal-lantern", lantern[:5]...), typed("back"), keys("enter", "left"))},
		{"menu", then(at("canal-lantern", lantern[0]), keys("esc", "down"))},
		{"help", then(at("canal-lantern"), typed("help"), keys("enter"))},
		{"drawing", then(at("canal-lantern", lantern[0]), typed("drawing"), keys("enter"))},
		{"students", then(at("canal-lantern"), typed("student"), keys("enter"))},
	}
}

func TestScreensAreAsTheyWere(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	for _, size := range sizes() {
		for _, s := range scenes() {
			t.Run(fmt.Sprintf("%s-%dx%d", s.name, size[0], size[1]), func(t *testing.T) {
				d := sit(t, size[0], size[1])
				s.lead(d)
				fitsIn(t, d)
				d.golden(fmt.Sprintf("%s-%dx%d", s.name, size[0], size[1]))
			})
		}
	}
}

func TestSevenBits(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	for _, s := range scenes() {
		d := sitAt(t, newTutor(t), Options{ASCII: true}, noColour, 80, 24)
		s.lead(d)
		fitsIn(t, d)
		for _, r := range d.view {
			if r > '~' {
				t.Fatalf("%s shows %q:\n%s", s.name, r, d.view)
			}
		}
		if s.name == "components-wrong" || s.name == "angles" {
			d.golden(s.name + "-ascii-80x24")
		}
	}
}

func TestTooSmallAWindowSaysSo(t *testing.T) {
	d := sit(t, 59, 15)
	d.golden("small-59x15")
	d.write("T1")
	d.press("enter")
	if !d.quitting || !d.bye.Plain {
		t.Fatal("the plain form was asked for and is not what follows")
	}
}
