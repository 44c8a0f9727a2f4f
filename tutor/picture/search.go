package picture

import "math"

// lay finds the place of everything on a canvas: it tries many places of the first
// object and lengths of rope, first far apart, then near the best of them, and keeps the
// one with the least that is wrong.
func (s *Setup) lay(cols, rows int) *layout {
	var best *layout
	try := func(drop int, long float64, col, row int) {
		if drop < -4 || col < 1 || col >= cols-1 || row < 0 || row >= rows {
			return
		}
		l := s.at(cols, rows, drop, long, cell(col, row))
		if best != nil && l.cost >= best.cost {
			return
		}
		l.cost += 30 * float64(len(l.faults()))
		if best == nil || l.cost < best.cost {
			best = l
		}
	}
	lengths := s.lengths(cols, rows)
	drops := s.drops(rows)
	for _, drop := range drops {
		for _, long := range lengths {
			for row := 0; row < rows; row += 1 + rows/16 {
				for col := 2; col < cols-1; col += 2 * min(len(lengths), 2) {
					try(drop, long, col, row)
				}
			}
		}
	}
	if best == nil {
		return nil
	}
	step := 0.0
	if len(lengths) > 1 {
		step = (lengths[1] - lengths[0]) / 3
	}
	for range 3 {
		col, row := cellOf(best.at[0])
		drop, long := best.drop, best.long
		for c := col - 3; c <= col+3; c++ {
			for r := row - 1; r <= row+1; r++ {
				try(drop, long, c, r)
				if len(drops) > 2 {
					try(drop-1, long, c, r)
					try(drop+1, long, c, r)
				}
				if step > 0 {
					try(drop, long-step, c, r)
					try(drop, long+step, c, r)
				}
			}
		}
	}
	return best
}

// at lays everything out from one place of the first object.
func (s *Setup) at(cols, rows, drop int, long float64, origin vec) *layout {
	n := len(s.Objects)
	l := &layout{Setup: s, cols: cols, rows: rows, unit: clamp(min(float64(cols)/36, float64(rows)/12), 0.8, 1.6), long: long, drop: drop,
		at: make([]vec, n), placed: make([]bool, n)}
	l.joined = map[[2]int]bool{}
	l.place(origin)
	l.draw()
	l.placeRemark()
	l.outside()
	l.centred()
	return l
}

// drops are the ropes to try between an eye and its load, in rows.
func (s *Setup) drops(rows int) []int {
	low := false
	for k := range s.Holds {
		h := &s.Holds[k]
		low = low || s.Objects[h.On].Form == Eye && h.out().y > 0.05 && len(s.Objects[h.On].Letters) > 0
	}
	switch {
	case low:
		return []int{-3, -2, -1, 0, 1, 2, 4, 6, max(7, rows/2)}
	case len(s.Objects) > 1:
		return []int{0, 1}
	}
	return []int{1}
}

// lengths are the lengths of rope between objects to try.
func (s *Setup) lengths(cols, rows int) []float64 {
	for k := range s.Holds {
		if s.Holds[k].To >= 0 {
			unit := clamp(min(float64(cols)/36, float64(rows)/12), 0.8, 1.6)
			var all []float64
			for long := 12.0; long <= 40; long += 5 {
				all = append(all, long*unit)
			}
			return all
		}
	}
	return []float64{24}
}

// outside makes everything beyond the edge a cost.
func (l *layout) outside() {
	low, high := vec{0, 0}, vec{l.width() - 1, l.height() - 1}
	beyond := func(p vec) {
		l.cost += 8 * (max(low.x-p.x, 0) + max(p.x-high.x, 0) + max(low.y-p.y, 0) + max(p.y-high.y, 0))
	}
	for i := range l.strokes {
		s := &l.strokes[i]
		if s.form == round {
			beyond(s.centre.minus(vec{s.radius, s.radius}))
			beyond(s.centre.plus(vec{s.radius, s.radius}))
			continue
		}
		for _, p := range s.points {
			beyond(p)
		}
	}
}

// centred makes it a cost to be far from the middle.
func (l *layout) centred() {
	low, high := vec{math.Inf(1), math.Inf(1)}, vec{math.Inf(-1), math.Inf(-1)}
	for i := range l.strokes {
		if s := &l.strokes[i]; s.form != round {
			for _, p := range s.points {
				low = vec{min(low.x, p.x), min(low.y, p.y)}
				high = vec{max(high.x, p.x), max(high.y, p.y)}
			}
		}
	}
	off := low.plus(high).times(0.5).minus(vec{l.width() / 2, l.height() / 2})
	l.cost += 0.12*math.Abs(off.x) + 0.08*math.Abs(off.y)
}

// faults lists pairs of things that meet and are not joined.
func (l *layout) faults() [][2]int {
	var found [][2]int
	seen := map[[2]int]bool{}
	for i := range l.strokes {
		for j := range l.strokes[:i] {
			a, b := &l.strokes[i], &l.strokes[j]
			pair := [2]int{min(a.thing, b.thing), max(a.thing, b.thing)}
			if a.thing == b.thing || l.joined[pair] || seen[pair] {
				continue
			}
			if meet(a, b) {
				seen[pair] = true
				found = append(found, pair)
			}
		}
		for _, box := range l.boxes {
			s := &l.strokes[i]
			pair := [2]int{min(s.thing, box.thing), max(s.thing, box.thing)}
			if s.thing == box.thing || seen[pair] || s.form == round && box.thing != thingRemark {
				continue
			}
			if l.joined[pair] && !l.through(s, box) || !l.joined[pair] && !enters(s, box) {
				continue
			}
			seen[pair] = true
			found = append(found, pair)
		}
	}
	return found
}

// through tells whether a stroke passes the middle of a box that it is joined to.
func (l *layout) through(s *stroke, b solidBox) bool {
	mid, in := b.low.plus(b.high).times(0.5), b.high.minus(b.low).times(0.25)
	drum := b.thing <= len(l.Objects) && l.Objects[b.thing-1].Form == Drum
	return enters(s, solidBox{b.thing, mid.minus(in), mid.plus(in)}) && s.tag != TagAngle && !drum
}

// enters tells whether a stroke has a place inside a box.
func enters(s *stroke, b solidBox) bool {
	if s.form == round {
		near := vec{clamp(s.centre.x, b.low.x, b.high.x), clamp(s.centre.y, b.low.y, b.high.y)}
		return near.minus(s.centre).len() < s.radius+1
	}
	if len(s.points) == 1 {
		p := s.points[0]
		return p.x > b.low.x-1 && p.x < b.high.x+1 && p.y > b.low.y-1 && p.y < b.high.y+1
	}
	for i := 1; i < len(s.points); i++ {
		if _, _, seen := clip(s.points[i-1], s.points[i], b.low, b.high); seen {
			return true
		}
	}
	return false
}

// tooNear is the way between two lines, in dots, at which they read as one.
const tooNear = 3.0

// meet tells whether two strokes cross or come too near.
func meet(a, b *stroke) bool {
	pa, pb := outline(a), outline(b)
	for i := 1; i < len(pa); i++ {
		for j := 1; j < len(pb); j++ {
			if apart(pa[i-1], pa[i], pb[j-1], pb[j]) < tooNear {
				return true
			}
		}
	}
	return false
}

// outline is a stroke as a line from point to point.
func outline(s *stroke) []vec {
	switch {
	case s.form == round:
		var points []vec
		for i := range 13 {
			points = append(points, s.centre.along(heading(float64(30*i)), s.radius))
		}
		return points
	case len(s.points) == 1:
		return []vec{s.points[0], s.points[0]}
	}
	return s.points
}

// apart is the least distance of two pieces of line.
func apart(a, b, c, d vec) float64 {
	if min(a.x, b.x)-max(c.x, d.x) > tooNear || min(c.x, d.x)-max(a.x, b.x) > tooNear ||
		min(a.y, b.y)-max(c.y, d.y) > tooNear || min(c.y, d.y)-max(a.y, b.y) > tooNear {
		return math.Inf(1)
	}
	if cross(a, b, c)*cross(a, b, d) < 0 && cross(c, d, a)*cross(c, d, b) < 0 {
		return 0
	}
	return between(a, b, c, d)
}

// between is the distance of two pieces of line that do not cross.
func between(a, b, c, d vec) float64 {
	return min(min(toLine(a, c, d), toLine(b, c, d)), min(toLine(c, a, b), toLine(d, a, b)))
}

func cross(a, b, p vec) float64 { return (b.x-a.x)*(p.y-a.y) - (b.y-a.y)*(p.x-a.x) }

// toLine is the distance of a place from a piece of line.
func toLine(p, a, b vec) float64 {
	way := b.minus(a)
	t := clamp(p.minus(a).dot(way)/max(way.dot(way), 1e-9), 0, 1)
	return p.minus(a.along(way, t)).len()
}

// The largest canvas that a setup fills; more would be air.
const (
	mostSetupCols = 64
	mostSetupRows = 22
)

// within is the middle of a box, no larger than some size.
func (b box) within(cols, rows int) box {
	if more := b.cols() - cols; more > 0 {
		b.left, b.right = b.left+more/2, b.left+more/2+cols
	}
	if more := b.rows() - rows; more > 0 {
		b.top, b.bottom = b.top+more/2, b.top+more/2+rows
	}
	return b
}

// setup draws a setup into its area.
func (d *drawing) setup(s *Scene, area box) {
	area = area.within(mostSetupCols, mostSetupRows)
	l := s.Setup.lay(area.cols(), area.rows())
	if l == nil {
		return
	}
	off := area.corner()
	for i := range l.strokes {
		st := l.strokes[i]
		points := make([]vec, len(st.points))
		for k := range st.points {
			points[k] = st.points[k].plus(off)
		}
		st.points, st.centre = points, st.centre.plus(off)
		d.add(st)
	}
	for i := range l.labels {
		n := l.labels[i]
		n.at, n.area = n.at.plus(off), area
		if n.fixed {
			d.put(string(n.text), n.col+area.left, n.row+area.top, n.look)
			d.labels[d.placed-1].thing = n.thing
			continue
		}
		n.text = d.cells(string(n.text))
		d.labels = append(d.labels, n)
	}
}

// placeRemark puts what the picture cannot show into a corner that is free.
func (l *layout) placeRemark() {
	text := l.remark()
	if text == "" {
		return
	}
	var at [2]int
	for n, corner := range [4][2]int{{0, l.rows - 1}, {0, 0}, {l.cols - len(text), l.rows - 1}, {l.cols - len(text), 0}} {
		if n == 0 || l.free(corner, len(text)) {
			at = corner
			if n == 0 && !l.free(corner, len(text)) {
				l.cost += 25
				continue
			}
			l.cost -= 25 * b2f(n > 0)
			break
		}
	}
	low := cell(at[0], at[1])
	l.boxes = append(l.boxes, solidBox{thingRemark, low.minus(vec{1, 2}), low.plus(vec{float64(2 * len(text)), 2})})
	l.labels = append(l.labels, label{text: []rune(text), look: look{tag: TagAxis}, thing: thingRemark, fixed: true, col: at[0], row: at[1]})
}

// free tells whether nothing is drawn in some cells of a row.
func (l *layout) free(corner [2]int, width int) bool {
	low := cell(corner[0], corner[1])
	b := solidBox{thingRemark, low.minus(vec{1, 2}), low.plus(vec{float64(2 * width), 2})}
	for i := range l.strokes {
		if enters(&l.strokes[i], b) {
			return false
		}
	}
	for i := range l.labels {
		if n := &l.labels[i]; n.fixed && n.row == corner[1] && n.col < corner[0]+width && corner[0] < n.col+len(n.text) {
			return false
		}
	}
	return true
}

// remark is what the picture cannot show.
func (s *Setup) remark() string {
	switch {
	case s.Above && s.NotTrue:
		return wordsAboveNotTrue
	case s.Above:
		return wordsAbove
	case s.NotTrue:
		return wordsNotTrue
	}
	return ""
}
