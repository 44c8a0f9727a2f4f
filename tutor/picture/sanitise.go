package picture

import (
	"math"
	"strings"
	"unicode"
)

// Limits that keep any scene drawable in bounded time. They are far above what
// a student could tell apart.
const (
	maxBodies   = 16
	maxForces   = 48
	maxSurfaces = 4
	maxLegs     = 24
	maxCurves   = 8
	maxPoints   = 1000
	maxText     = 32
	maxSpread   = 20   // arrow lengths between bodies
	maxMeasure  = 1e12 // of sizes, whatever the unit
)

// sanitise gives a copy that everything below can trust: numbers are finite,
// indices exist, texts are short and printable. Forces keep their places,
// because angles refer to them; a force that cannot be drawn is put on no body.
func sanitise(s Scene) Scene {
	s.Title = trim(s.Title, 200)
	s.Bodies = each(s.Bodies, maxBodies, sanitiseBody)
	s.Forces = each(s.Forces, maxForces, func(f *Force) { sanitiseForce(f, len(s.Bodies)) })
	s.Links = s.Links[:min(len(s.Links), maxForces)]
	s.Angles = each(s.Angles, maxForces, func(a *Angle) { a.Name = trim(a.Name, maxText) })
	s.Angles = only(s.Angles, func(a Angle) bool { return drawable(s.Forces, a.Force) })
	s.Links = only(s.Links, func(l Link) bool {
		return l.From != l.To && known(l.From, len(s.Bodies)) && known(l.To, len(s.Bodies))
	})
	if t := s.Triangle; t != nil {
		s.Triangle = nil
		if drawable(s.Forces, t.Force) {
			s.Triangle = &Triangle{t.Force, trim(t.X, maxText), trim(t.Y, maxText)}
		}
	}
	s.Chain, s.Polygon, s.Plot = sanitiseChain(s.Chain), sanitisePolygon(s.Polygon), sanitisePlot(s.Plot)
	return arranged(s)
}

// each copies at most limit items and changes the copies.
func each[T any](items []T, limit int, change func(*T)) []T {
	items = append([]T(nil), items[:min(len(items), limit)]...)
	for i := range items {
		change(&items[i])
	}
	return items
}

func only[T any](items []T, good func(T) bool) []T {
	var kept []T
	for _, item := range items {
		if good(item) {
			kept = append(kept, item)
		}
	}
	return kept[:min(len(kept), maxPoints)]
}

func known(i, n int) bool { return i >= 0 && i < n }

func drawable(forces []Force, i int) bool { return known(i, len(forces)) && forces[i].On >= 0 }

func sanitiseBody(b *Body) {
	b.Name = trim(b.Name, maxText)
	b.At = Point{finite(b.At.X, maxSpread), finite(b.At.Y, maxSpread)}
	b.Size = clamp(finite(b.Size, maxSpread), 0, 2)
	b.Tilt = angle(b.Tilt)
	b.Surfaces = only(b.Surfaces[:min(len(b.Surfaces), maxSurfaces)], func(s Surface) bool { return isNumber(s.Normal) })
	for i := range b.Surfaces {
		b.Surfaces[i].Normal = angle(b.Surfaces[i].Normal)
		b.Surfaces[i].Angle = trim(b.Surfaces[i].Angle, maxText)
	}
}

func sanitiseForce(f *Force, bodies int) {
	f.Name, f.Note = trim(f.Name, maxText), trim(f.Note, maxText)
	if !known(f.On, bodies) || !isNumber(f.Direction) {
		f.On = -1
	}
	f.Direction = angle(f.Direction)
	f.Size = size(f.Size)
}

func sanitiseChain(c *Chain) *Chain {
	if c == nil || len(c.Legs) == 0 {
		return nil
	}
	t := *c
	t.Tilt, t.Body = angle(t.Tilt), trim(t.Body, maxText)
	t.Legs = each(t.Legs, maxLegs, func(l *Leg) { l.Label, l.Size = trim(l.Label, maxText), size(l.Size) })
	return &t
}

func sanitisePolygon(p *Polygon) *Polygon {
	if p == nil {
		return nil
	}
	t := Polygon{Body: trim(p.Body, maxText)}
	for _, s := range p.Sides[:min(len(p.Sides), maxLegs)] {
		if isNumber(s.Direction) && size(s.Size) > 0 {
			s.Label, s.Size, s.Direction = trim(s.Label, maxText), size(s.Size), angle(s.Direction)
			t.Sides = append(t.Sides, s)
		}
	}
	if len(t.Sides) == 0 {
		return nil
	}
	for i, around := 0, t.around(); i < len(t.Sides); i++ {
		t.Sides[i].Size /= around // only the proportions are drawn
	}
	return &t
}

func sanitisePlot(p *Plot) *Plot {
	if p == nil {
		return nil
	}
	t := *p
	for _, s := range []*Scale{&t.X, &t.Y} {
		s.Name, s.Unit = trim(s.Name, maxText), trim(s.Unit, maxText)
	}
	t.Curves = each(p.Curves, maxCurves, func(c *Curve) {
		c.Name = trim(c.Name, maxText)
		c.Points = c.Points[:min(len(c.Points), maxPoints)]
	})
	t.Measured = each(p.Measured, maxPoints, func(m *Measured) {
		m.Name, m.U = trim(m.Name, maxText), Point{size(m.U.X), size(m.U.Y)}
	})
	t.Measured = only(t.Measured, func(m Measured) bool { return plotted(m.At) })
	t.Marked = t.Marked && isNumber(t.At) && math.Abs(t.At) <= maxMeasure
	return &t
}

// plotted tells whether a point can stand in a plot.
func plotted(p Point) bool {
	return math.Abs(p.X) <= maxMeasure && math.Abs(p.Y) <= maxMeasure // false for NaN
}

func isNumber(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// finite is x, or 0 where it is no number, cut to ±limit.
func finite(x, limit float64) float64 {
	if math.IsNaN(x) {
		return 0
	}
	return clamp(x, -limit, limit)
}

// angle is x within a turn, or 0 where it is no number.
func angle(x float64) float64 {
	if !isNumber(x) {
		return 0
	}
	return math.Mod(x, 360)
}

// size is a true size, or 0 where it is not known.
func size(x float64) float64 {
	if x >= 1/maxMeasure && x <= maxMeasure {
		return x
	}
	return 0 // also for what is no number
}

// trim takes out what has no place in a cell: control characters and marks
// that combine with a letter. It cuts to a number of runes.
func trim(text string, limit int) string {
	if len(text) <= limit && isPlain(text) {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		switch {
		case unicode.IsSpace(r):
			r = ' '
		case !unicode.IsPrint(r) || unicode.Is(unicode.Mn, r) || unicode.Is(unicode.Me, r):
			continue
		}
		if limit--; limit < 0 {
			break
		}
		b.WriteRune(r)
	}
	return strings.TrimSpace(b.String())
}

func isPlain(text string) bool {
	for i := range len(text) {
		if text[i] < ' ' || text[i] > '~' {
			return false
		}
	}
	return true
}
