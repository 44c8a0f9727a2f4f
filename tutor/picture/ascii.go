package picture

import "math"

// typed is the pen of seven bits: one sign for each cell that a stroke passes,
// chosen by the stroke's slope and by its height in the cell.
func (g *grid) typed(s *stroke) {
	switch s.form {
	case path:
		g.typePath(s, s.points)
	case round:
		g.typeRound(s)
	case wedge:
		g.typeWedge(s)
	case coil:
		g.typeLine(s, s.points[0], s.points[1])
	case rule:
		g.rule(s)
	case glyph:
		g.glyph(s)
	}
}

// sign puts a character into a cell, unless something higher has it. 0 leaves
// a gap in a line, which still belongs to the line.
func (g *grid) sign(col, row int, r byte, l look) {
	m := g.at(col, row)
	if m == nil {
		return
	}
	// All forces are of one rank, whatever their number: the first drawn stays.
	mine, its := min(l.tag, tagForce), min(m.tag, tagForce)
	if r != 0 && (m.rune == 0 || !m.kept && (mine > its || mine == its && !l.soft)) {
		m.rune = rune(r)
	}
	m.ink(l)
}

// stamp puts a character over everything.
func (g *grid) stamp(at vec, r byte, l look) {
	if m := g.at(nearest(at.x)>>1, nearest(at.y)>>2); m != nil {
		m.ink(l)
		m.rune, m.kept = rune(r), true
	}
}

func (g *grid) typePath(s *stroke, points []vec) {
	for i := 1; i < len(points); i++ {
		g.typeLine(s, points[i-1], points[i])
	}
	// A plus at the corners of a surface would read as a joint.
	if s.typed != 0 || s.tag == TagSurface {
		return
	}
	for i := 1; i < len(points)-1; i++ {
		g.sign(nearest(points[i].x)>>1, nearest(points[i].y)>>2, '+', s.look)
	}
	// A closed outline has its first corner at both ends, which the loop leaves out.
	if n := len(points) - 1; n > 1 && points[0] == points[n] {
		g.sign(nearest(points[0].x)>>1, nearest(points[0].y)>>2, '+', s.look)
	}
}

// typeLine takes one cell of each row where the line is steep, else one of each
// column.
func (g *grid) typeLine(s *stroke, a, b vec) {
	a, b, seen := clip(a, b, vec{-1, -1}, vec{float64(2 * g.cols), float64(4 * g.rows)})
	if !seen {
		return
	}
	if way := b.minus(a); math.Abs(way.y) > 1.2*math.Abs(way.x) {
		g.typeSteep(s, a, b)
	} else {
		g.typeFlat(s, a, b)
	}
}

func (g *grid) typeSteep(s *stroke, a, b vec) {
	// Drawn downwards always, so that a line looks the same from either end.
	if a.y > b.y {
		a, b = b, a
	}
	lean := (b.x - a.x) / (b.y - a.y) // dots to the right for each dot down
	for row := nearest(a.y) >> 2; row <= nearest(b.y)>>2; row++ {
		// The middle of the cell, but not beyond the ends of the line.
		y := clamp(float64(4*row)+1.5, a.y, b.y)
		g.sign(nearest(a.x+lean*(y-a.y))>>1, row, steepSign(s, lean, row), s.look)
	}
}

func steepSign(s *stroke, lean float64, row int) byte {
	switch {
	case s.typed != 0:
		return s.typed
	case s.form == coil:
		return "<>"[row&1]
	case s.dash == dotted:
		return '.'
	case s.dash == dashed && row%3 == 2:
		return 0
	case s.strong:
		return '#'
	case lean < -0.22:
		return '/'
	case lean > 0.22:
		return '\\'
	}
	return '|'
}

func (g *grid) typeFlat(s *stroke, a, b vec) {
	if a.x > b.x {
		a, b = b, a
	}
	climb := 0.0
	if b.x > a.x {
		climb = (b.y - a.y) / (b.x - a.x)
	}
	for col := nearest(a.x) >> 1; col <= nearest(b.x)>>1; col++ {
		y := nearest(4*(a.y+climb*(clamp(float64(2*col)+0.5, a.x, b.x)-a.x))) + 2 // in quarters of a dot
		g.sign(col, y>>4, flatSign(s, climb, col, y&15), s.look)
	}
}

// flatSign chooses by how deep in its cell, in sixteenths, the line passes.
func flatSign(s *stroke, climb float64, col, depth int) byte {
	switch {
	case s.typed != 0:
		return s.typed
	case s.form == coil:
		return "/\\"[col&1]
	case s.dash == dotted && col&1 == 0, s.dash == dashed && col%3 == 2:
		return 0
	case s.dash == dotted:
		return '.'
	case s.strong:
		return '#'
	case s.tag == TagSurface && math.Abs(climb) < 0.12:
		return '='
	case math.Abs(climb) < 0.04:
		return '-'
	case depth < 5:
		return '\''
	case depth > 11:
		return '.'
	}
	return '-'
}

// typeRound draws a circle as a letter where it is that small.
func (g *grid) typeRound(s *stroke) {
	if math.Abs(s.sweep) >= 360 && s.radius < 3.5 {
		g.stamp(s.centre, "oO"[min(int(s.radius/1.5), 1)], s.look)
		return
	}
	// About one chord for every two or three cells of the arc; more would only repeat signs.
	n := min(max(int(math.Abs(s.sweep)*s.radius/160), 2), 90)
	if s.typed == 0 && s.tag == TagAngle {
		// A copy: the stroke itself belongs to the drawing.
		t := *s
		t.typed = ':'
		s = &t
	}
	last := s.centre.along(heading(s.from), s.radius)
	for i := 1; i <= n; i++ {
		next := s.centre.along(heading(s.from+s.sweep*float64(i)/float64(n)), s.radius)
		g.typeLine(s, last, next)
		last = next
	}
}

// typeWedge draws the head of an arrow as the nearest of four signs.
func (g *grid) typeWedge(s *stroke) {
	tip := s.points[0]
	if !s.head {
		low, high := bounds(s.points)
		at := low.plus(high).times(0.5)
		g.sign(nearest(at.x)>>1, nearest(at.y)>>2, '#', s.look)
		return
	}
	ahead := tip.minus(s.points[1].plus(s.points[2]).times(0.5))
	r := byte('>')
	switch flat := math.Abs(ahead.x) >= math.Abs(ahead.y); {
	case flat && ahead.x < 0:
		r = '<'
	case !flat && ahead.y < 0:
		r = '^'
	case !flat:
		r = 'v'
	}
	g.stamp(tip, r, s.look)
}
