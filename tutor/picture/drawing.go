package picture

// medium is what a drawing is made for.
type medium struct {
	cols, rows int
	pen        pen
	ascii      bool
	fine       bool // lines are drawn as exact as they are kept
}

// pen puts one stroke into the cells of a grid.
type pen func(*grid, *stroke)

// form is the geometry of a stroke.
type form int

const (
	path  form = iota // straight from point to point
	round             // a part of a circle
	wedge             // a filled convex outline
	coil              // a spring between its two points
	rule              // level or vertical, in whole characters
	glyph             // one character
)

// dash is how a stroke is broken.
type dash int

const (
	solid  dash = iota
	dashed      // parts of forces
	dotted      // axes, ropes: what only guides the eye
)

// stroke is one line of the drawing, in dots. It keeps its exact geometry, so
// that paper gets it finer than a terminal.
type stroke struct {
	look
	form   form
	dash   dash
	points []vec
	// of round: degrees, anticlockwise
	centre              vec
	radius, from, sweep float64
	typed               byte // what stands for a path in seven bits; 0 for the usual signs
	full                bool // a disc
	rune                rune // of glyph
	thing               int  // what it belongs to, in a setup
	square              bool // with whole characters where it is level or vertical
	// of wedge: whether it is an arrow's head (the tip comes first)
	head bool
}

// drawing is a scene while it is laid out.
type drawing struct {
	grid    *grid
	pen     pen
	ascii   bool
	fine    bool
	strokes []stroke
	points  []vec // room for the points of all strokes
	labels  []label
	placed  int // labels before this one have their place
}

func (d *drawing) add(s stroke) {
	d.strokes = append(d.strokes, s)
	d.pen(d.grid, &d.strokes[len(d.strokes)-1])
}

// store copies points into the common room.
func (d *drawing) store(points []vec) []vec {
	from := len(d.points)
	d.points = append(d.points, points...)
	// With no capacity to spare: whoever appends to it gets a copy, and not the points of the next stroke.
	return d.points[from:len(d.points):len(d.points)]
}

func (d *drawing) line(l look, k dash, points ...vec) {
	// A right angle and a marker are smaller than the characters of a frame.
	square := l.tag != TagAngle && l.tag != TagMarker
	d.add(stroke{look: l, form: path, dash: k, points: d.store(points), square: square})
}

func (d *drawing) spring(l look, from, to vec) {
	d.add(stroke{look: l, form: coil, points: d.store([]vec{from, to})})
}

func (d *drawing) fill(l look, points ...vec) {
	d.add(stroke{look: l, form: wedge, points: d.store(points)})
}

func (d *drawing) arc(l look, centre vec, radius, from, sweep float64) {
	d.add(stroke{look: l, form: round, centre: centre, radius: radius, from: from, sweep: sweep})
}

// disc is a filled circle.
func (d *drawing) disc(l look, centre vec, radius float64) {
	d.add(stroke{look: l, form: round, centre: centre, radius: radius, sweep: 360, full: true})
}

func (d *drawing) circle(l look, centre vec, radius float64) { d.arc(l, centre, radius, 0, 360) }

// The head of an arrow, in dots: long enough to be told from the shaft at a
// glance, short enough for an arrow of seven dots.
const (
	headLength = 5.5
	headWidth  = 2.6
	// On paper lines are fine, and a smaller head is told from the shaft.
	fineHead = 0.62
)

// shaft is how an arrow's line is drawn.
type shaft struct {
	look
	dash dash
	coil bool
}

// inHead is how far a line runs into its head: under the wings where there are
// dots; up to the tip where the head is one sign.
func (d *drawing) inHead(long float64) float64 {
	switch {
	case d.fine:
		return min(2, long)
	case d.ascii:
		return long
	}
	return max(long-shortOfTip, 0)
}

// shortOfTip is how far before the tip of an arrow its line ends where the head is one
// character, so that no dot is seen beyond it.
const shortOfTip = 1.2

// arrow draws from tail to tip. The line ends inside the head, so that the tip
// stays sharp.
func (d *drawing) arrow(s shaft, tail, tip vec) {
	way := tip.minus(tail)
	length, ahead := way.len(), way.unit()
	// An arrow shorter than its head is a small head.
	long := min(headLength, length)
	if d.fine {
		long = min(fineHead*headLength, length)
	}
	wide := headWidth * long / headLength
	if s.strong {
		wide += 0.6
	}
	neck := tip.along(ahead, -long)
	// A shorter spring has no room for turns.
	if s.coil && length > 3*headLength {
		d.spring(s.look, tail, neck)
	} else {
		d.line(s.look, s.dash, tail, neck.along(ahead, d.inHead(long)))
	}
	side := ahead.left().times(wide)
	d.add(stroke{look: s.look, form: wedge, head: true, points: d.store([]vec{tip, neck.plus(side), neck.minus(side)})})
}
