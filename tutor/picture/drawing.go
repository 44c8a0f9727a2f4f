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
