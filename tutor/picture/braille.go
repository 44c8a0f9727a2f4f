package picture

import "math"

const brailleBase = '\u2800'

// brailleBit is the bit of a dot in its cell, by row and column; the lowest
// row was added to the code last.
var brailleBit = [4][2]uint8{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}

// dashes says which of the dots along a line are set: the first on of every on+off.
var dashes = [...]struct{ on, off int }{solid: {1, 0}, dashed: {3, 2}, dotted: {1, 2}}

// set inks one dot.
func (g *grid) set(x, y int, l look) {
	if m := g.at(x>>1, y>>2); m != nil {
		if m.arms != 0 && min(l.tag, tagForce) > min(m.tag, tagForce) {
			m.arms = 0 // what is behind gives way
		}
		m.dots |= brailleBit[y&3][x&1]
		m.ink(l)
	}
}

// dot is the pen of braille.
func (g *grid) dot(s *stroke) {
	switch s.form {
	case path:
		g.dotPath(s, s.points)
	case round:
		g.dotRound(s)
	case wedge:
		if s.head {
			g.head(s)
			return
		}
		g.dotWedge(s)
	case coil:
		g.dotPath(s, zigzag(s.points[0], s.points[1]))
	case rule:
		g.rule(s)
	case glyph:
		g.glyph(s)
	}
}

func (g *grid) dotPath(s *stroke, points []vec) {
	step := 0
	for i := 1; i < len(points); i++ {
		if s.square && g.dotRule(s, points[i-1], points[i]) {
			continue
		}
		step = g.dotLine(s, points[i-1], points[i], step)
	}
}

// dotRule draws a level or vertical line with whole characters; it reports whether the line
// is one.
func (g *grid) dotRule(s *stroke, a, b vec) bool {
	if math.Abs(a.x-b.x) > 0.6 && math.Abs(a.y-b.y) > 0.6 {
		return false
	}
	// Clipped before the cells are counted: an arrow may be far longer than the page.
	a, b, seen := clip(a, b, vec{0, 0}, vec{float64(2*g.cols - 1), float64(4*g.rows - 1)})
	if seen {
		t := *s
		t.points = []vec{a, b}
		g.rule(&t)
	}
	return true
}

// dotLine sets the dots nearest to the line, one for each step along its
// longer side, and returns the number of steps so far.
func (g *grid) dotLine(s *stroke, a, b vec, step int) int {
	a, b, seen := clip(a, b, vec{-4, -4}, vec{float64(2*g.cols + 4), float64(4*g.rows + 4)})
	if !seen {
		return step
	}
	way := b.minus(a)
	flat := math.Abs(way.x) >= math.Abs(way.y)
	// A length that is whole but for its last bit must not get one step more.
	n := int(math.Ceil(math.Max(math.Abs(way.x), math.Abs(way.y)) - 1e-9))
	each := way.times(1 / float64(max(n, 1)))
	d := dashes[s.dash]
	for i := 0; i <= n; i++ {
		if (step+i)%(d.on+d.off) >= d.on {
			continue
		}
		// From the beginning each time: a sum of steps would drift.
		x, y := nearest(a.x+each.x*float64(i)), nearest(a.y+each.y*float64(i))
		g.set(x, y, s.look)
		// A thick dotted line would close its gaps.
		if s.strong && s.dash != dotted {
			g.beside(x, y, flat, s.look)
		}
	}
	return step + n
}

// beside doubles a dot: what is in hand is drawn twice as thick.
func (g *grid) beside(x, y int, flat bool, l look) {
	if flat {
		g.set(x, y+1, l)
	} else {
		g.set(x+1, y, l)
	}
}

func (g *grid) dotRound(s *stroke) {
	sweep := s.sweep * math.Pi / 180
	n := min(max(int(math.Abs(sweep)*s.radius*1.2), 4), 4000)
	sin, cos := math.Sincos(sweep / float64(n))
	arm := heading(s.from).times(s.radius)
	for i := 0; i <= n; i++ {
		if s.dash != dotted || i%3 == 0 {
			g.set(nearest(s.centre.x+arm.x), nearest(s.centre.y+arm.y), s.look)
		}
		// Turned on step by step, because a sine for every dot would take most of the time of a drawing.
		arm = vec{arm.x*cos + arm.y*sin, arm.y*cos - arm.x*sin}
	}
	if s.full {
		g.set(nearest(s.centre.x), nearest(s.centre.y), s.look)
	}
}

// dotWedge sets every dot whose middle lies in the outline, and the tip.
func (g *grid) dotWedge(s *stroke) {
	low, high := bounds(s.points)
	for y := nearest(low.y); y <= nearest(high.y); y++ {
		for x := nearest(low.x); x <= nearest(high.x); x++ {
			if within(s.points, vec{float64(x), float64(y)}) {
				g.set(x, y, s.look)
			}
		}
	}
	g.set(nearest(s.points[0].x), nearest(s.points[0].y), s.look)
}

// bounds is the box around points.
func bounds(points []vec) (low, high vec) {
	low, high = points[0], points[0]
	for _, p := range points[1:] {
		low = vec{min(low.x, p.x), min(low.y, p.y)}
		high = vec{max(high.x, p.x), max(high.y, p.y)}
	}
	return low, high
}

// within tells whether a place is in a convex outline, a little grace included,
// because the thin tip of a head lies between dots.
func within(outline []vec, p vec) bool {
	const grace = 0.18
	side := 0.0
	for i, a := range outline {
		edge := outline[(i+1)%len(outline)].minus(a)
		d := edge.unit().left().dot(p.minus(a))
		// On an edge a place belongs to either side of it.
		if math.Abs(d) <= grace {
			continue
		}
		if side*d < 0 {
			return false
		}
		side = d
	}
	return true
}

// zigzag is the line of a spring: straight at both ends, so that it is seen
// what it pulls on.
func zigzag(a, b vec) []vec {
	const turn, amplitude, straight = 2.2, 2.5, 2.0
	way := b.minus(a)
	ahead, side := way.unit(), way.unit().left().times(amplitude)
	n := min(max(int((way.len()-2*straight)/turn), 2), 200)
	// An even number of turns ends on the line.
	n -= n % 2
	each := (way.len() - 2*straight) / float64(n)
	points := make([]vec, 0, n+4)
	points = append(points, a, a.along(ahead, straight))
	for i := range n {
		p := a.along(ahead, straight+each*(float64(i)+0.5))
		points = append(points, p.along(side, float64(1-2*(i%2))))
	}
	return append(points, b.along(ahead, -straight), b)
}

// clip cuts a line to what lies between two corners (Liang and Barsky).
func clip(a, b, low, high vec) (vec, vec, bool) {
	way := b.minus(a)
	from, to := 0.0, 1.0
	for _, side := range [4][2]float64{
		{-way.x, a.x - low.x}, {way.x, high.x - a.x}, {-way.y, a.y - low.y}, {way.y, high.y - a.y},
	} {
		speed, room := side[0], side[1]
		switch {
		case speed == 0 && room < 0:
			return a, b, false
		case speed < 0:
			from = max(from, room/speed)
		case speed > 0:
			to = min(to, room/speed)
		}
	}
	if from > to {
		return a, b, false
	}
	return a.along(way, from), a.along(way, to), true
}
