package picture

import "math"

// chart is a plot while it is laid out.
type chart struct {
	*drawing
	plot      *Plot
	area      box
	low, high Point // the values at the ends of the scales
	from, to  vec   // the lower left and upper right dot
	broken    bool  // the scale of y does not begin at zero
}

// plot draws curves over their scales.
func (d *drawing) plot(s *Scene, area box) {
	c := &chart{drawing: d, plot: s.Plot, area: area}
	if !c.ranges() || area.cols() < 12 || area.rows() < 4 {
		return
	}
	c.scales()
	for i := range c.plot.Curves {
		// Curves that coincide would hide one another; their names stand together at one.
		if c.twin(i) == i {
			c.curve(i)
		}
	}
	c.marker()
	for _, m := range c.plot.Measured {
		c.measured(m)
	}
	c.curveNames()
}

// ranges finds what the scales have to show, or that there is nothing to show.
func (c *chart) ranges() bool {
	var ys []float64
	c.low, c.high = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	see := func(p Point) {
		c.low.X, c.high.X = min(c.low.X, p.X), max(c.high.X, p.X)
		c.low.Y, c.high.Y = min(c.low.Y, p.Y), max(c.high.Y, p.Y)
	}
	for _, curve := range c.plot.Curves {
		for _, p := range curve.Points {
			if plotted(p) {
				see(p)
				ys = append(ys, p.Y)
			}
		}
	}
	if len(ys) > 0 {
		c.cut(ys)
	}
	for _, m := range c.plot.Measured {
		see(Point{m.At.X - m.U.X, m.At.Y - m.U.Y})
		see(Point{m.At.X + m.U.X, m.At.Y + m.U.Y})
	}
	c.ground()
	return c.widen()
}

// ground has the scale begin at zero, unless that would hide what is to be seen: curves
// far above it would be flat, and the bars of an uncertainty too small. Where the scale
// is cut its axis is broken.
func (c *chart) ground() {
	span := c.high.Y - c.low.Y
	far := 3.0
	if len(c.plot.Measured) > 0 {
		far = 0.4
	}
	// From zero the points would all lie in a narrow strip.
	if span > 1e-3*c.high.Y && c.low.Y > far*span {
		c.low.Y -= 0.1 * span
		c.broken = true
		return
	}
	c.low.Y, c.high.Y = min(c.low.Y, 0), max(c.high.Y, 0)
}

// cut lowers the top of the scale where a curve grows without bound, so that
// the rest of it keeps its shape: to four times the middle value, or what shows
// the present value well.
func (c *chart) cut(ys []float64) {
	top := 4 * median(ys)
	for i := range c.plot.Curves {
		if y, ok := c.plot.Curves[i].at(c.plot.At); ok && c.plot.Marked {
			top = max(top, 1.4*y)
		}
	}
	if top > 0 {
		c.high.Y = min(c.high.Y, top)
	}
}

// widen makes room around a scale that would have no length.
func (c *chart) widen() bool {
	if c.low.X > c.high.X {
		return false
	}
	if c.high.X-c.low.X < 1e-9*max(math.Abs(c.high.X), 1) {
		c.low.X, c.high.X = c.low.X-1-math.Abs(c.low.X)*0.1, c.high.X+1+math.Abs(c.high.X)*0.1
	}
	if c.high.Y-c.low.Y < 1e-9*max(math.Abs(c.high.Y), 1) {
		c.high.Y = c.low.Y + 1
	}
	return true
}

// dot is where a point lies; it may be outside.
func (c *chart) dot(p Point) vec {
	return vec{
		c.from.x + (p.X-c.low.X)/(c.high.X-c.low.X)*(c.to.x-c.from.x),
		c.from.y - (p.Y-c.low.Y)/(c.high.Y-c.low.Y)*(c.from.y-c.to.y),
	}
}

// strokes of curves in turn, and the signs that stand for them in seven bits
var (
	curveDash = [...]dash{solid, dashed, dotted}
	curveSign = [...]byte{'*', '+', 'x', 'o'}
)

// curve draws the parts of a curve that lie within the scales.
func (c *chart) curve(i int) {
	curve := &c.plot.Curves[i]
	var run []vec
	flush := func() {
		if len(run) > 1 {
			c.add(stroke{look: look{tag: ForceTag(curve.Colour), strong: curve.InHand}, dash: curveDash[i%len(curveDash)],
				typed: curveSign[i%len(curveSign)], points: c.store(run)})
		}
		run = run[:0]
	}
	low, high := vec{c.from.x, c.to.y}, vec{c.to.x, c.from.y}
	for k := 1; k < len(curve.Points); k++ {
		if !plotted(curve.Points[k-1]) || !plotted(curve.Points[k]) {
			flush()
			continue
		}
		a, b, seen := clip(c.dot(curve.Points[k-1]), c.dot(curve.Points[k]), low, high)
		if !seen || len(run) > 0 && run[len(run)-1] != a {
			flush()
		}
		if seen && len(run) == 0 {
			run = append(run, a)
		}
		if seen {
			run = append(run, b)
		}
	}
	flush()
}

// marker shows the present value: a broken line and a ring on every curve.
func (c *chart) marker() {
	if !c.plot.Marked || c.plot.At < c.low.X || c.plot.At > c.high.X {
		return
	}
	l := look{tag: TagMarker}
	foot := c.dot(Point{c.plot.At, c.low.Y})
	c.line(look{tag: TagMarker, soft: true}, dotted, foot, vec{foot.x, c.to.y})
	for i := range c.plot.Curves {
		y, ok := c.plot.Curves[i].at(c.plot.At)
		if at := c.dot(Point{c.plot.At, y}); ok && at.y >= c.to.y {
			c.circle(look{tag: TagMarker, strong: true}, at, 2)
		}
	}
	c.note(label{rank: rankForce, at: vec{foot.x, c.to.y + 1}, dir: vec{1, 0}, look: l, area: c.area},
		equals(c.plot.X, c.plot.At), "")
}

// measured draws a point with its bars.
func (c *chart) measured(m Measured) {
	l := look{tag: ForceTag(m.Colour)}
	at := c.dot(m.At)
	for _, bar := range [2][3]vec{
		{c.dot(Point{m.At.X, m.At.Y - m.U.Y}), c.dot(Point{m.At.X, m.At.Y + m.U.Y}), {1, 0}},
		{c.dot(Point{m.At.X - m.U.X, m.At.Y}), c.dot(Point{m.At.X + m.U.X, m.At.Y}), {0, 1}},
	} {
		from, to, cap := bar[0], bar[1], bar[2]
		if to.minus(from).len() < 1 {
			continue
		}
		c.line(l, solid, from, to)
		if to.minus(from).len() < 5 {
			continue
		}
		c.line(l, solid, from.minus(cap), from.plus(cap))
		c.line(l, solid, to.minus(cap), to.plus(cap))
	}
	c.fill(l, at.plus(vec{0, -1.3}), at.plus(vec{1.3, 0}), at.plus(vec{0, 1.3}), at.plus(vec{-1.3, 0}))
}

// curveNames puts each name where its curve is furthest from the others, and
// says where a curve leaves all bounds.
func (c *chart) curveNames() {
	for i := range c.plot.Curves {
		if c.twin(i) != i {
			continue
		}
		curve := &c.plot.Curves[i]
		l := label{look: look{tag: ForceTag(curve.Colour), strong: curve.InHand}, dir: vec{0.3, -1}, area: c.area}
		if at, ok := c.freest(i); ok {
			l.at = at
			c.note(l, c.names(i), curve.Name)
		}
		for _, e := range curve.unbounded() {
			at, ok := c.leaves(curve, e)
			if !ok {
				continue
			}
			l.at, l.dir, l.rank = at, vec{-float64(e.side), 0.2}, rankAngle
			c.note(l, joined(curve.Name, "→ ∞"), "∞")
		}
	}
}

// twin is the first curve that runs where this one does, itself if there is none before:
// a mix of two colours with two names beside it would be read as one curve more.
func (c *chart) twin(i int) int {
	for k := range i {
		if c.together(k, i) {
			return k
		}
	}
	return i
}

// together tells whether two curves run within half a dot of each other.
func (c *chart) together(i, k int) bool {
	a, b := &c.plot.Curves[i], &c.plot.Curves[k]
	if len(a.Points) == 0 || len(a.Points) != len(b.Points) {
		return false
	}
	for at := range a.Points {
		p, q := a.Points[at], b.Points[at]
		if plotted(p) != plotted(q) || plotted(p) && c.dot(p).minus(c.dot(q)).len() > 0.5 {
			return false
		}
	}
	return true
}

// names is the name of a curve with those of its twins: "T₁ = T₂".
func (c *chart) names(i int) string {
	name := c.plot.Curves[i].Name
	for k := i + 1; k < len(c.plot.Curves); k++ {
		if c.twin(k) == i {
			name += " = " + c.plot.Curves[k].Name
		}
	}
	return name
}

// leaves finds the dot at which a curve with an unbounded end crosses the top.
func (c *chart) leaves(curve *Curve, e asymptote) (vec, bool) {
	at, ok := vec{}, false
	for _, p := range curve.Points {
		if plotted(p) && p.Y <= c.high.Y && (!ok || e.side < 0) {
			if at, ok = c.dot(p), true; e.side < 0 {
				return at, true
			}
		}
	}
	return at, ok
}

// freest is the dot of a curve, among some, with most room around it.
func (c *chart) freest(i int) (best vec, found bool) {
	const tries = 12
	room := -1.0
	for k := tries; k > 0; k-- {
		x := c.low.X + (c.high.X-c.low.X)*(float64(k)-0.4)/tries
		y, ok := c.plot.Curves[i].at(x)
		if !ok || y > c.high.Y || y < c.low.Y {
			continue
		}
		if r := c.roomAt(i, x, y); r > room+1 {
			best, room, found = c.dot(Point{x, y}), r, true
		}
	}
	return best, found
}

// roomAt is how far the other curves are from a point of curve i, in dots up
// to what a label needs.
func (c *chart) roomAt(i int, x, y float64) float64 {
	room := 10.0
	at := c.dot(Point{x, y})
	for k := range c.plot.Curves {
		if other, ok := c.plot.Curves[k].at(x); ok && c.twin(k) != i {
			room = min(room, math.Abs(c.dot(Point{x, other}).y-at.y))
		}
	}
	return min(room, at.y-c.to.y)
}
