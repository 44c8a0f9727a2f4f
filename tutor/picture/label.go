package picture

import (
	"math"
	"slices"
)

// label is a text that wants to stand near a place. Places are searched after
// all lines are drawn, the most important label first.
type label struct {
	rank  rank
	text  []rune
	short []rune // stands instead where the text finds no room; may be empty
	at    vec    // what it belongs to
	dir   vec    // the side of it where the label is expected
	look  look
	area  box
	exact vec // where its middle stands on paper; none where zero
	// what the search found
	col, row int
	shown    bool
	fixed    bool  // its place is given
	thing    int   // what it belongs to, in a setup
	kin      []int // things that belong to that, too
}

// rank says who chooses first: names of forces, because a force without its
// name means nothing, the letters of axes last.
type rank int

const (
	rankForce rank = iota
	rankAngle
	rankLeg
	rankBody
	rankAxis
)

// note asks for a label.
func (d *drawing) note(l label, text, short string) {
	l.text, l.short = d.cells(text), d.cells(short)
	if len(l.text) > 0 && l.area.cols() > 0 && l.area.rows() > 0 {
		d.labels = append(d.labels, l)
	}
}

// cells spells a text as the medium can show it, one rune for each cell.
func (d *drawing) cells(text string) []rune {
	if d.ascii {
		text = transliterated(text)
	}
	return widened(text)
}

// reach is how far from its place a label is looked for, in cells beyond its
// own width and in rows.
type reach struct{ cols, rows int }

// place finds room for all labels that have none yet: near, then near in the
// short form, then far away. A label that finds none is left out, which happens
// only on canvases of a few cells.
func (d *drawing) place() {
	near, far := reach{4, 3}, reach{16, 8}
	// Stable, so that of two of one rank the one drawn first chooses first, always.
	slices.SortStableFunc(d.labels[d.placed:], func(a, b label) int { return int(a.rank - b.rank) })
	for ; d.placed < len(d.labels); d.placed++ {
		l := &d.labels[d.placed]
		last := l.short
		if len(last) == 0 {
			last = l.text
		}
		if d.settle(l, l.text, near) || d.settle(l, l.short, near) || d.settle(l, last, far) {
			d.grid.write(l.col, l.row, l.text, l.look)
		}
	}
}

// settle takes the best free place within reach, if there is one.
func (d *drawing) settle(l *label, text []rune, r reach) bool {
	if len(text) == 0 || len(text) > l.area.cols() {
		return false
	}
	col, row := nearest(l.at.x)/2, nearest(l.at.y)/4
	best := math.Inf(1)
	for y := max(row-r.rows, l.area.top); y <= min(row+r.rows, l.area.bottom-1); y++ {
		for x := max(col-r.cols-len(text), l.area.left); x <= min(col+r.cols, l.area.right-len(text)); x++ {
			// The cheap cost first: most places are out before the cells under them are looked at.
			c := l.cost(x, y, len(text))
			if c >= best {
				continue
			}
			if c += d.cover(x, y, len(text)); c >= best {
				continue
			}
			if c += d.doubt(l, x, y, len(text)); c < best {
				best, l.col, l.row = c, x, y
			}
		}
	}
	if math.IsInf(best, 1) {
		return false
	}
	l.text, l.shown = text, true
	return true
}

// cost grows with the way from the label's place, and on its wrong sides.
func (l *label) cost(col, row, width int) float64 {
	off := vec{float64(2*col+width) - 0.5, float64(4*row) + 1.5}.minus(l.at)
	way := off.len()
	far := gap(l.at, col, row, width)
	return far + max(1.2-far, 0) + 0.15*way + 3*(1-off.dot(l.dir)/max(way, 1))
}

// gap is the distance from a place to the cells of a label.
func gap(at vec, col, row, width int) float64 {
	return beyond(at, col, row, width).len()
}

// beyond is how far a place lies outside the cells of a label, across and along.
func beyond(at vec, col, row, width int) vec {
	x, y := float64(2*col)-0.5, float64(4*row)-0.5
	return vec{max(x-at.x, at.x-x-float64(2*width), 0), max(y-at.y, at.y-y-4, 0)}
}

// cover is what it costs to stand in these cells: without end on a line, on
// another label or right beside one, little on a guide line.
func (d *drawing) cover(col, row, width int) float64 {
	if d.texted(col-1, row) || d.texted(col+width, row) {
		return math.Inf(1)
	}
	cost := 0.0
	for _, x := range [2]int{col - 1, col + width} {
		if m := d.grid.at(x, row); m != nil && m.hard {
			cost += 0.8
		}
	}
	for i := range width {
		switch m := &d.grid.marks[row*d.grid.cols+col+i]; {
		case m.hard || m.text:
			return math.Inf(1)
		case m.tag != TagNone:
			cost += 2.5
		}
	}
	return cost
}

func (d *drawing) texted(col, row int) bool {
	m := d.grid.at(col, row)
	return m != nil && m.text
}

// doubt is added where a label stands nearer to what another one belongs to.
func (d *drawing) doubt(l *label, col, row, width int) float64 {
	own, cost := gap(l.at, col, row, width), 0.0
	for i := range d.labels {
		other := &d.labels[i]
		off := beyond(other.at, col, row, width)
		// A square root less for all that are far away, which are nearly all.
		if off.x >= own+3 || off.y >= own+3 || other == l || other.area != l.area {
			continue
		}
		if far := off.len(); far < own+3 {
			cost += 2 + max(own-far, 0)
		}
	}
	if l.thing > 0 {
		if d.onStroke(col, row, width) {
			return math.Inf(1)
		}
		mine, other := d.nearestThings(l, col, row, width)
		cost += 8 * max(mine-other+1, 0)
	}
	return cost
}

// onStroke tells whether a line passes the cells of a label, a gap in it included.
func (d *drawing) onStroke(col, row, width int) bool {
	low, high := cell(col, row).minus(vec{0.4, 1.4}), cell(col+width-1, row).plus(vec{0.4, 1.4})
	for i := range d.strokes {
		points := outline(&d.strokes[i])
		for k := 1; k < len(points); k++ {
			if _, _, seen := clip(points[k-1], points[k], low, high); seen {
				return true
			}
		}
	}
	return false
}

// nearestThings is how far a label's cells are from the nearest stroke of its own
// thing, and from the nearest of any other.
func (d *drawing) nearestThings(l *label, col, row, width int) (mine, other float64) {
	mine, other = math.Inf(1), math.Inf(1)
	a, b := cell(col, row), cell(col+width-1, row)
	for i := range d.strokes {
		s := &d.strokes[i]
		if s.thing == 0 {
			continue
		}
		points := outline(s)
		for k := 1; k < len(points); k++ {
			far := between(a, b, points[k-1], points[k])
			if s.thing == l.thing || s.thing == l.thing+thingRef || slices.Contains(l.kin, s.thing) {
				mine = min(mine, far)
			} else {
				other = min(other, far)
			}
		}
	}
	return mine, other
}

// put writes a text into given cells.
func (d *drawing) put(text string, col, row int, l look) {
	n := label{rank: rankLeg, text: d.cells(text), at: cell(col, row), look: l, fixed: true, shown: true, col: col, row: row}
	if len(n.text) == 0 {
		return
	}
	d.grid.write(col, row, n.text, l)
	d.labels = append(d.labels, n)
	last := len(d.labels) - 1
	// Among those that have their place: place only looks for one for the labels behind.
	d.labels[last], d.labels[d.placed] = d.labels[d.placed], d.labels[last]
	d.placed++
}
