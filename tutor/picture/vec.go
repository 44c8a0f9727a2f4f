package picture

import "math"

// vec is a place or a way in dots: a cell is two dots wide and four high, so
// that dots are square. y grows downwards.
type vec struct{ x, y float64 }

func (a vec) plus(b vec) vec             { return vec{a.x + b.x, a.y + b.y} }
func (a vec) minus(b vec) vec            { return vec{a.x - b.x, a.y - b.y} }
func (a vec) times(k float64) vec        { return vec{a.x * k, a.y * k} }
func (a vec) dot(b vec) float64          { return a.x*b.x + a.y*b.y }
func (a vec) len() float64               { return math.Sqrt(a.x*a.x + a.y*a.y) }
func (a vec) along(b vec, k float64) vec { return vec{a.x + b.x*k, a.y + b.y*k} }

// left turns by 90° anticlockwise as seen.
func (a vec) left() vec { return vec{a.y, -a.x} }

// unit is the direction of a, or straight right where it has none.
func (a vec) unit() vec {
	l := a.len()
	if l < 1e-9 {
		return vec{1, 0}
	}
	return a.times(1 / l)
}

// heading is the unit vector at an angle in degrees, anticlockwise from
// straight right.
func heading(deg float64) vec {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	return vec{cos, -sin}
}

// degrees is the inverse of heading.
func (a vec) degrees() float64 { return math.Atan2(-a.y, a.x) * 180 / math.Pi }

// turn is the signed angle from one direction to another, within ±180°.
func turn(from, to float64) float64 {
	d := math.Mod(to-from, 360)
	switch {
	case d > 180:
		d -= 360
	case d <= -180:
		d += 360
	}
	return d
}

// fullTurn is the anticlockwise angle from one direction to another, 0 to 360°.
func fullTurn(from, to float64) float64 {
	d := math.Mod(to-from, 360)
	if d < 0 {
		d += 360
	}
	return d
}

// box is a part of the drawing in cells; right and bottom are not in it.
type box struct{ left, top, right, bottom int }

func (b box) cols() int { return b.right - b.left }
func (b box) rows() int { return b.bottom - b.top }

// size is the width and height in dots.
func (b box) size() vec { return vec{float64(2 * b.cols()), float64(4 * b.rows())} }

// corner is the upper left dot.
func (b box) corner() vec { return vec{float64(2 * b.left), float64(4 * b.top)} }

func (b box) middle() vec { return b.corner().plus(b.size().times(0.5)) }

// snap moves to the nearest dot, so that what is level or upright stays one dot wide.
func (a vec) snap() vec { return vec{float64(nearest(a.x)), float64(nearest(a.y))} }

func clamp(x, low, high float64) float64 { return math.Min(math.Max(x, low), high) }

// nearest rounds without a call; all places here are above -1000. What lies
// half-way, as much does in a symmetric drawing, goes up whatever the last bit of
// a product was, so that every machine draws the same.
func nearest(x float64) int { return int(x+1000.5+1e-7) - 1000 }

// bounded keeps a scale small enough for two places this far apart; at the
// least one dot is left for them.
func bounded(scale, room, apart float64) float64 {
	if apart < 1e-6 {
		return scale
	}
	return min(scale, max(room, 1)/apart)
}

// near tells whether an angle is one of some, but for rounding.
func near(x float64, values ...float64) bool {
	for _, v := range values {
		if math.Abs(turn(x, v)) < 0.05 {
			return true
		}
	}
	return false
}
