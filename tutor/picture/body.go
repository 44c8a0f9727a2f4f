package picture

import "math"

// body draws the outline of a body.
func (f *figure) body(i int) {
	b := &f.scene.Bodies[i]
	at, half := f.middle(i), f.half(b).times(f.scale)
	l := look{tag: TagBody}
	switch b.Shape {
	case Ring:
		f.circle(l, at, max(half.x, 2.6))
	case Block:
		f.block(l, at, half, heading(stance(b)))
	case Pulley:
		f.circle(l, at, max(half.x, 2.6))
		f.disc(l, at, 0.7)
		f.reserve(at, half.x)
	case Anchor:
		f.anchor(i, at, half.x)
	default:
		f.disc(l, at, 1.3)
	}
}

// reserve keeps labels out of a round body.
func (f *figure) reserve(at vec, radius float64) {
	low, high := at.minus(vec{radius, radius}), at.plus(vec{radius, radius})
	for row := nearest(low.y) >> 2; row <= nearest(high.y)>>2; row++ {
		for col := nearest(low.x) >> 1; col <= nearest(high.x)>>1; col++ {
			middle := vec{float64(2*col) + 0.5, float64(4*row) + 1.5}
			if m := f.grid.at(col, row); m != nil && middle.minus(at).len() < radius {
				m.hard = true
			}
		}
	}
}

func (f *figure) block(l look, at, half, u vec) {
	x, y := u.times(half.x), u.left().times(half.y)
	f.line(l, solid, at.plus(x).plus(y), at.plus(x).minus(y), at.minus(x).minus(y), at.minus(x).plus(y), at.plus(x).plus(y))
}

// anchor draws a short wall across the way to what is tied to it.
func (f *figure) anchor(i int, at vec, half float64) {
	along := f.pullOn(i).left()
	// A wall of fewer dots would read as part of the string.
	half = max(half, 3)
	f.line(look{tag: TagSurface}, solid, at.along(along, -half), at.along(along, half))
	f.ticks(at, along, f.pullOn(i).times(-1), [2]float64{-half, half})
}

// pullOn is the direction from an anchor to what is linked to it, turned to the
// nearest of the room's four directions: walls are upright, ceilings level.
func (f *figure) pullOn(i int) vec {
	sum := vec{}
	for _, l := range f.scene.Links {
		if l.From == i {
			sum = sum.plus(f.between(i, l.To))
		} else if l.To == i {
			sum = sum.plus(f.between(i, l.From))
		}
	}
	// At 45° a ceiling is likelier than a wall.
	if math.Abs(sum.x) > 1.5*math.Abs(sum.y) {
		return vec{math.Copysign(1, sum.x), 0}
	}
	return vec{0, math.Copysign(1, sum.y)}
}

// span is a surface as it is drawn.
type span struct {
	touch, along, out vec
	ends              [2]float64 // dots from touch
}

// surfaceHalf is how far a surface reaches to both sides, in lengths of the
// longest arrow: less where other bodies are near.
func (f *figure) surfaceHalf() float64 {
	if len(f.scene.Bodies) > 1 {
		return 0.85
	}
	return 1.1
}

// span lays out surface k of a body. Where two surfaces meet, each ends there.
func (f *figure) span(i, k int) span {
	b := &f.scene.Bodies[i]
	out := heading(b.Surfaces[k].Normal)
	s := span{touch: f.middle(i).along(out, -f.dots(f.depth(b, out))), along: out.left().times(-1), out: out}
	reach := f.dots(f.surfaceHalf() * f.longest)
	s.ends = [2]float64{-reach, reach}
	for other := range b.Surfaces {
		n := heading(b.Surfaces[other].Normal)
		speed := s.along.dot(n)
		// Parallel surfaces never meet.
		if other == k || math.Abs(speed) < 0.05 {
			continue
		}
		touch := f.middle(i).along(n, -f.dots(f.depth(b, n)))
		meet := touch.minus(s.touch).dot(n) / speed
		if speed > 0 {
			s.ends[0] = max(s.ends[0], meet)
		} else {
			s.ends[1] = min(s.ends[1], meet)
		}
	}
	return s
}

func (s span) at(way float64) vec { return s.touch.along(s.along, way) }

// foot is the lower end of a surface and the level way from it into the solid,
// along which its angle is measured.
func (s span) foot() (foot, level vec) {
	foot, other := s.at(s.ends[0]), s.at(s.ends[1])
	// In dots y points downwards, so the larger one is lower.
	if other.y > foot.y {
		foot, other = other, foot
	}
	return foot, vec{math.Copysign(1, other.x-foot.x), 0}
}

// surfaces draws the planes that a body touches.
func (f *figure) surfaces(i int) {
	for k, surface := range f.scene.Bodies[i].Surfaces {
		s := f.span(i, k)
		l := look{tag: TagSurface}
		f.line(l, solid, s.at(s.ends[0]), s.at(s.ends[1]))
		if surface.Angle == "" {
			continue
		}
		foot, level := s.foot()
		long := s.ends[1] - s.ends[0]
		f.line(look{tag: TagSurface, soft: true}, dotted, foot, foot.along(level, 0.55*long))
		// Along the surface in the sense in which it leads away from the foot.
		slope := turn(level.degrees(), s.along.times(math.Copysign(1, s.along.dot(level))).degrees())
		radius := arcRadius(0.45*long, slope)
		f.arcOf(arcNote{name: surface.Angle, centre: foot, radius: radius, from: level.degrees(), sweep: slope})
	}
}

// surfaceExtents makes room for the surfaces of a body.
func (f *figure) surfaceExtents(es []extent, i int) []extent {
	b := &f.scene.Bodies[i]
	for k := range b.Surfaces {
		out := heading(b.Surfaces[k].Normal)
		touch := vec{b.At.X, -b.At.Y}.along(out, -f.depth(b, out))
		for _, way := range []float64{-f.surfaceHalf(), f.surfaceHalf()} {
			es = append(es, extent{touch.along(out.left(), way*f.longest), 2, 2, 1, 3})
		}
	}
	return es
}

// hatch marks the solid side of a body's surfaces, drawn last because it gives
// way to everything else.
func (f *figure) hatch(i int) {
	for k := range f.scene.Bodies[i].Surfaces {
		s := f.span(i, k)
		f.ticks(s.touch, s.along, s.out.times(-1), s.ends)
	}
}

// ticks draws short strokes from a line into the solid.
func (f *figure) ticks(at, along, into vec, ends [2]float64) {
	const each, long = 5.0, 3.2
	if f.ascii && math.Abs(along.x*along.y) > 0.2 {
		return // slashes beside a slope would read as further slopes
	}
	for way := ends[0] + 2; way < ends[1]; way += each {
		from := at.along(along, way).along(into, 1)
		to := from.along(into.along(along, -1).unit(), long)
		// Here and not by the rank of the stroke: half a tick would look like a mark of its own.
		if f.busy(from) || f.busy(to) {
			continue
		}
		if f.ascii {
			from = to
		}
		f.add(stroke{look: look{tag: TagSurface, soft: true}, points: f.store([]vec{from, to}), typed: '/'})
	}
}

// busy tells whether something more telling than a surface passes a cell.
func (f *figure) busy(at vec) bool {
	m := f.grid.at(nearest(at.x)>>1, nearest(at.y)>>2)
	return m != nil && m.tag > TagSurface
}
