// Inside the package: it looks at the dots and signs of a drawing before they become text.

package picture

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// onBraille lays a scene out as Braille does.
func onBraille(s Scene, cols, rows int) *drawing {
	return compose(s, medium{cols: cols, rows: rows, pen: (*grid).dot})
}

func onASCII(s Scene, cols, rows int) *drawing {
	return compose(s, medium{cols: cols, rows: rows, pen: (*grid).typed, ascii: true})
}

// everywhere runs a check on every scene at every size.
func everywhere(t *testing.T, check func(t *testing.T, s Scene, d *drawing)) {
	for _, e := range examples() {
		for _, size := range sizes {
			t.Run(fmt.Sprintf("%s/%d", e.name, size[0]), func(t *testing.T) {
				check(t, e.scene, onBraille(e.scene, size[0], size[1]))
			})
			t.Run(fmt.Sprintf("%s/%d/ascii", e.name, size[0]), func(t *testing.T) {
				check(t, e.scene, onASCII(e.scene, size[0], size[1]))
			})
		}
	}
}

// crossed names the labels that share a cell with another or with a line.
func crossed(d *drawing) (faults []string) {
	owner := map[[2]int]string{}
	for i := range d.labels {
		l := &d.labels[i]
		if !l.shown {
			continue
		}
		text := string(l.text)
		for k := range l.text {
			cell := [2]int{l.col + k, l.row}
			if other, taken := owner[cell]; taken {
				faults = append(faults, fmt.Sprintf("%q and %q share the cell %v", other, text, cell))
			}
			owner[cell] = text
			m := d.grid.at(cell[0], cell[1])
			if m == nil {
				faults = append(faults, fmt.Sprintf("%q leaves the canvas at %v", text, cell))
			} else if m.hard {
				faults = append(faults, fmt.Sprintf("%q covers a line at %v", text, cell))
			}
		}
	}
	return faults
}

func TestLabelsCoverNothing(t *testing.T) {
	everywhere(t, func(t *testing.T, _ Scene, d *drawing) {
		for _, fault := range crossed(d) {
			t.Error(fault)
		}
	})
}

// TestEveryLabelIsShown holds that at the sizes in use nothing is left out but
// what a shorter text stands for.
func TestEveryLabelIsShown(t *testing.T) {
	everywhere(t, func(t *testing.T, _ Scene, d *drawing) {
		for i := range d.labels {
			if !d.labels[i].shown {
				t.Errorf("%q finds no room", string(d.labels[i].text))
			}
		}
	})
}

// TestLabelsStandNearTheirForces measures from each arrow's far end to its name.
func TestLabelsStandNearTheirForces(t *testing.T) {
	everywhere(t, func(t *testing.T, _ Scene, d *drawing) {
		for i := range d.labels {
			l := &d.labels[i]
			if away := gap(l.at, l.col, l.row, len(l.text)); l.rank == rankForce && away > 8 {
				t.Errorf("%q stands %.0f dots from its force", string(l.text), away)
			}
		}
	})
}

// dotsOf inks some strokes alone and lists the dots that are set.
func dotsOf(strokes []stroke, cols, rows int) (dots []vec) {
	g := newGrid(cols, rows)
	for _, s := range strokes {
		s.square, s.head = false, false // as dots, to be measured
		g.dot(&s)
	}
	for y := range 4 * rows {
		for x := range 2 * cols {
			if g.at(x/2, y/4).dots&brailleBit[y%4][x%2] != 0 {
				dots = append(dots, vec{float64(x), float64(y)})
			}
		}
	}
	return dots
}

// axisOf is the direction along which dots are spread most, in degrees; which
// of the two ways is open.
func axisOf(dots []vec) float64 {
	mean := vec{}
	for _, p := range dots {
		mean = mean.along(p, 1/float64(len(dots)))
	}
	var xx, yy, xy float64
	for _, p := range dots {
		o := p.minus(mean)
		xx, yy, xy = xx+o.x*o.x, yy+o.y*o.y, xy+o.x*o.y
	}
	return -math.Atan2(2*xy, xx-yy) / 2 * 180 / math.Pi
}

// arrowsOf finds the arrows of a colour: the strokes of each, the head last.
func arrowsOf(d *drawing, colour int) (arrows [][]stroke) {
	for i := range d.strokes {
		if s := &d.strokes[i]; s.head && s.tag == ForceTag(colour) {
			arrows = append(arrows, d.strokes[i-1:i+1])
		}
	}
	return arrows
}

// TestArrowsPointTrue measures the direction of every arrow on its dots.
func TestArrowsPointTrue(t *testing.T) {
	everyArrow := 0
	for _, e := range examples() {
		s := e.scene
		s.Chain, s.Polygon = nil, nil
		s.Forces = append([]Force(nil), s.Forces...)
		for i := range s.Forces {
			s.Forces[i].Colour = i
		}
		for _, size := range sizes {
			d := onBraille(s, size[0], size[1])
			for i, f := range s.Forces {
				for _, arrow := range arrowsOf(d, i) {
					everyArrow++
					checkArrow(t, fmt.Sprintf("%s at %d × %d: %s", e.name, size[0], size[1], f.Name), arrow, f.Direction, size)
				}
			}
		}
	}
	if everyArrow < 150 {
		t.Errorf("only %d arrows were measured", everyArrow)
	}
}

func checkArrow(t fataler, name string, arrow []stroke, direction float64, size [2]int) {
	shaft, head := arrow[0], arrow[1]
	tail, tip := shaft.points[0], head.points[0]
	if off, sure := misdirection(arrow, direction, size); sure && off > 3 {
		t.Fatalf("%s points %.1f° off", name, off)
	}
	if tip.minus(tail).dot(heading(direction)) <= 0 {
		t.Fatalf("%s points backwards", name)
	}
	width, height := float64(2*size[0]), float64(4*size[1])
	for _, p := range []vec{tail, tip} {
		if p.x < -0.5 || p.y < -0.5 || p.x > width-0.5 || p.y > height-0.5 {
			t.Fatalf("%s leaves the canvas at %v", name, p)
		}
	}
}

// misdirection is how far off an arrow points, measured on the dots of its
// shaft, or with its head where the shaft is short; of a spring, from end to end.
// An arrow of a dozen dots cannot show three degrees.
func misdirection(arrow []stroke, direction float64, size [2]int) (off float64, sure bool) {
	tail, tip := arrow[0].points[0], arrow[1].points[0]
	if arrow[0].form == coil {
		return math.Abs(turn(direction, tip.snap().minus(tail.snap()).degrees())), true
	}
	dots := dotsOf(arrow[:1], size[0], size[1])
	if len(dots) < 12 {
		dots = dotsOf(arrow, size[0], size[1])
	}
	off = math.Abs(turn(direction, axisOf(dots)))
	return min(off, 180-off), tip.minus(tail).len() > 14
}

// TestArrowsToScale compares the lengths of arrows with the sizes they show.
func TestArrowsToScale(t *testing.T) {
	s := solved()
	d := onBraille(s, 76, 20)
	var scale float64
	for i, f := range s.Forces {
		arrow := arrowsOf(d, i)[0]
		long := arrow[1].points[0].minus(arrow[0].points[0]).len() / f.Size
		if scale == 0 {
			scale = long
		}
		if math.Abs(long/scale-1) > 0.02 {
			t.Errorf("%s is drawn with %.3f dots for a newton, T₁ with %.3f", f.Name, long, scale)
		}
	}
}

// TestUnknownLengthsAreEqual: lengths tell nothing before they are solved, even
// if some sizes are known.
func TestUnknownLengthsAreEqual(t *testing.T) {
	s := solved()
	s.Forces[0].Size = 0
	d := onBraille(s, 48, 16)
	var first float64
	for i := range s.Forces {
		arrow := arrowsOf(d, i)[0]
		long := arrow[1].points[0].minus(arrow[0].points[0]).len()
		if first == 0 {
			first = long
		}
		if math.Abs(long-first) > 0.5 {
			t.Errorf("%s is %.1f dots long, T₁ %.1f", s.Forces[i].Name, long, first)
		}
	}
}

// TestPolygonCloses on the dots: the last tip lies on the first tail, and the
// sides have the scale of their sizes.
func TestPolygonCloses(t *testing.T) {
	s := solved()
	p := PolygonOf(s, 0)
	d := onBraille(Scene{Polygon: p}, 48, 16)
	var heads []stroke
	var tails []vec
	for i := range d.strokes {
		if d.strokes[i].head {
			heads, tails = append(heads, d.strokes[i]), append(tails, d.strokes[i-1].points[0])
		}
	}
	if len(heads) != 3 {
		t.Fatalf("%d sides are drawn", len(heads))
	}
	for i := range heads {
		if away := heads[i].points[0].minus(tails[(i+1)%3]).len(); away > 0.5 {
			t.Errorf("side %d ends %.1f dots from where the next begins", i, away)
		}
	}
}

// TestChainsCloseBeforeTheyAreSolved: legs of unknown size are drawn so that
// they end where they start; known ones are drawn as they are.
func TestChainsClose(t *testing.T) {
	open := &Chain{Legs: []Leg{{Size: 3}, {Size: 2, Negative: true}}}
	for _, c := range []struct {
		chain *Chain
		want  bool
	}{{xSum().Chain, true}, {ySum().Chain, true}, {slopeSum().Chain, true}, {open, false}, {&Chain{Legs: []Leg{{}}}, false}} {
		if got := c.chain.closed(); got != c.want {
			t.Errorf("closed is %v, want %v: %+v", got, c.want, c.chain.Legs)
		}
	}
}

func TestCollinearForcesMakeLanes(t *testing.T) {
	s := Scene{Polygon: &Polygon{Sides: []Side{{Label: "T", Direction: 90, Size: 3}, {Label: "w", Direction: -90, Size: 3}}}}
	text := Braille(s, 30, 12).String()
	if !strings.Contains(text, "T") || !strings.Contains(text, "w") {
		t.Errorf("a label is missing:\n%s", text)
	}
}

// TestNearArrowsKeepApart: two arrows of the same direction are two lines.
func TestNearArrowsKeepApart(t *testing.T) {
	for _, between := range []float64{0, 1, 3} {
		s := nearTogether()
		s.Forces = append([]Force(nil), s.Forces...)
		s.Forces[1].Direction = s.Forces[0].Direction + between
		d := onBraille(s, 38, 12)
		one, two := arrowsOf(d, 0)[0], arrowsOf(d, 1)[0]
		if away := one[0].points[0].minus(two[0].points[0]).len(); away < 3 {
			t.Errorf("%.0f° apart: the roots are %.1f dots apart", between, away)
		}
		if away := one[1].points[0].minus(two[1].points[0]).len(); away < 4 {
			t.Errorf("%.0f° apart: the tips are %.1f dots apart", between, away)
		}
	}
}
