// Inside the package: it measures a layout before it is drawn.

package picture

import (
	"fmt"
	"math"
	"os"
	"slices"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/checker/statics"
	"example.org/standstill/problems"
)

// copies gives a problem with the numbers of its file, with each varied given at both
// ends of its range, and with all of them there.
func copies(t *testing.T, p *problems.Problem) map[string]*checker.Reference {
	t.Helper()
	texts := map[string]map[string]string{"as in the file": nil, "all low": {}, "all high": {}}
	for _, v := range p.Vary {
		low, high := v.Text(0), v.Text(v.Count()-1)
		texts[v.Name+" low"], texts[v.Name+" high"] = map[string]string{v.Name: low}, map[string]string{v.Name: high}
		texts["all low"][v.Name], texts["all high"][v.Name] = low, high
	}
	made := map[string]*checker.Reference{}
	for what, values := range texts {
		own, err := p.WithValues(values)
		if err != nil {
			t.Fatal(err)
		}
		if ref, err := own.Reference(); err == nil { // some ends cannot be at rest
			made[what] = ref
		}
	}
	return made
}

// TestSetupsOfTheBank holds every picture of the bank to the rules of a good one, at the
// smallest size in use and at a large one.
func TestSetupsOfTheBank(t *testing.T) {
	list := problems.Embedded().List()
	if len(list) < 60 {
		t.Fatalf("only %d problems", len(list))
	}
	drawn, wrong := 0, map[string]int{}
	for _, h := range list {
		p, err := problems.Embedded().Get(h.ID)
		if err != nil {
			t.Fatal(err)
		}
		for what, ref := range copies(t, p) {
			s := NewSetup(ref, p.Figure)
			if s == nil || len(s.Objects) == 0 {
				continue // the file wants no picture
			}
			for _, fault := range untold(ref, s) {
				t.Errorf("%s, %s: %s", h.ID, what, fault)
			}
			for _, size := range sizesOf(what) {
				drawn++
				for _, fault := range badly(s, size[0], size[1]) {
					wrong[fault.kind]++
					t.Errorf("%s, %s, %d × %d: %s", h.ID, what, size[0], size[1], fault)
				}
			}
		}
	}
	t.Logf("%d pictures of %d problems; %v", drawn, len(list), wrong)
}

// sizesOf are the canvases on which a copy is tried: all of them in a large run, else
// the smallest for the ends of the ranges.
func sizesOf(what string) [][2]int {
	if os.Getenv("STANDSTILL_HEAVY") != "" || what == "as in the file" {
		return [][2]int{{36, 12}, {60, 18}}
	}
	if what == "all low" || what == "all high" {
		return [][2]int{{36, 12}}
	}
	return nil
}

// untold lists the forces that have no thing in a setup.
func untold(ref *checker.Reference, s *Setup) []string {
	var missing []string
	for i, b := range ref.Bodies {
		for _, f := range b.Forces {
			there := false
			switch f.Kind {
			case statics.Weight:
				there = len(s.Objects[i].Letters) > 0
			case statics.Normal, statics.Friction:
				there = len(s.Objects[i].Faces) > 0
			default:
				for _, h := range s.Holds {
					there = there || slices.Contains(h.Forces, f.Name) && (h.On == i || h.To == i)
				}
			}
			if !there {
				missing = append(missing, fmt.Sprintf("%s on %q has no thing", f.Name, b.Name))
			}
		}
	}
	return missing
}

type badness struct{ kind, text string }

func (b badness) String() string { return b.kind + ": " + b.text }

// badly lists what is wrong with a setup as it is laid out.
func badly(s *Setup, cols, rows int) []badness {
	var found []badness
	say := func(kind, format string, parts ...any) {
		found = append(found, badness{kind, fmt.Sprintf(format, parts...)})
	}
	l := s.lay(cols, rows)
	for _, pair := range l.faults() {
		say("crossing", "things %d and %d", pair[0], pair[1])
	}
	for i := range l.strokes {
		low, high := edges(&l.strokes[i])
		if low.x < -0.6 || low.y < -0.6 || high.x > l.width()-0.4 || high.y > l.height()-0.4 {
			say("edge", "a stroke of thing %d from %v to %v", l.strokes[i].thing, low, high)
		}
	}
	for k := range l.Holds {
		h := &l.Holds[k]
		if h.Asked && !near(math.Mod(math.Abs(turn(l.Objects[h.On].Tilt, h.Direction)), 90), 45) {
			say("not to scale", "%v is asked for and drawn at %v", h.Forces, h.Direction)
		}
	}
	d := compose(Scene{Setup: s}, medium{cols: cols, rows: rows, pen: (*grid).dot})
	for i := range d.labels {
		n := &d.labels[i]
		if !n.shown {
			say("label", "%q has no place", string(n.text))
			continue
		}
		for j := range d.labels[:i] {
			o := &d.labels[j]
			if o.shown && n.row == o.row && n.col < o.col+len(o.text) && o.col < n.col+len(n.text) {
				say("label", "%q is on %q", string(n.text), string(o.text))
			}
		}
		if n.row < 0 || n.row >= rows || n.col < 0 || n.col+len(n.text) > cols {
			say("label", "%q is off the canvas", string(n.text))
		}
		low, high := cell(n.col, n.row).minus(vec{0.4, 1.4}), cell(n.col+len(n.text)-1, n.row).plus(vec{0.4, 1.4})
		for k := range d.strokes {
			if st := &d.strokes[k]; crosses(st, low, high) {
				say("label", "%q is on a stroke of thing %d", string(n.text), st.thing)
				break
			}
		}
		if n.thing == thingRemark || n.fixed {
			continue
		}
		if mine, other := d.nearestThings(n, n.col, n.row, len(n.text)); mine > other+0.6 {
			say("label", "%q of thing %d is %.1f from its own and %.1f from another", string(n.text), n.thing, mine, other)
		}
	}
	return found
}

func edges(s *stroke) (low, high vec) {
	if s.form == round {
		r := vec{s.radius, s.radius}
		return s.centre.minus(r), s.centre.plus(r)
	}
	return bounds(s.points)
}

// crosses tells whether a stroke has a place in a box.
func crosses(s *stroke, low, high vec) bool {
	points := outline(s)
	for i := 1; i < len(points); i++ {
		if _, _, seen := clip(points[i-1], points[i], low, high); seen {
			return true
		}
	}
	return false
}
