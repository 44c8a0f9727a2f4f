package picture

import "math"

// facePlace is a surface in its place.
type facePlace struct {
	touch, along, out vec
	ends              [2]float64 // from touch, along
}

func (s facePlace) at(way float64) vec { return s.touch.along(s.along, way) }

// faces draws what an object lies on.
func (l *layout) faces(i int) {
	for k := range l.Objects[i].Faces {
		f := &l.Objects[i].Faces[k]
		thing := l.faceThing(i, k)
		if f.On >= 0 {
			l.join(l.objectThing(i), l.objectThing(f.On))
			l.contact(i, f)
			continue
		}
		l.join(thing, l.objectThing(i))
		for j := range l.Objects[i].Faces {
			l.join(thing, l.faceThing(i, j))
		}
		for j := range l.Objects { // a wall beside one body stands on the floor under another
			for m := range l.Objects[j].Faces {
				if j != i && l.Objects[j].Faces[m].On < 0 {
					l.join(thing, l.faceThing(j, m))
				}
			}
		}
		s := l.facePlace(i, k)
		switch {
		case f.isFloor():
			l.floor(i, thing, s, f)
		case f.isCeiling():
			l.ceiling(thing, s, f)
		case f.isWall():
			l.wallFace(thing, s, f)
		default:
			l.slope(i, thing, s, f)
		}
	}
}

// contact marks the surface between two objects.
func (l *layout) contact(i int, f *Face) {
	// The other body has this face too, and one contact is drawn once.
	if f.On < i {
		return
	}
	n := heading(f.Normal)
	touch := l.at[i].along(n, -l.depth(i, n))
	l.note(l.objectThing(i), f.Rough, touch.plus(vec{l.half(i).x + 2, 0}), vec{1, 0}, TagAngle)
	if f.Along != "" {
		l.lineOfCentres(i, f)
	}
}

// facePlace lays a surface under its object and cuts it off where others of the object
// or a pulley are.
func (l *layout) facePlace(i, k int) facePlace {
	o := &l.Objects[i]
	n := heading(o.Faces[k].Normal)
	s := facePlace{touch: l.at[i].along(n, -l.depth(i, n)), along: n.left().times(-1), out: n}
	// Always to the right, and a wall upwards, so that ends[0] is the left or lower end.
	if s.along.x < -1e-6 || math.Abs(s.along.x) < 1e-6 && s.along.y > 0 {
		s.along = s.along.times(-1)
	}
	s.ends = [2]float64{-l.toEdge(s.touch, s.along.times(-1)), l.toEdge(s.touch, s.along)}
	for j := range o.Faces {
		m := heading(o.Faces[j].Normal)
		speed := s.along.dot(m)
		if j == k || o.Faces[j].On >= 0 || math.Abs(speed) < 0.05 {
			continue
		}
		meet := l.at[i].along(m, -l.depth(i, m)).minus(s.touch).dot(m) / speed
		if speed > 0 {
			s.ends[0] = max(s.ends[0], meet)
		} else {
			s.ends[1] = min(s.ends[1], meet)
		}
	}
	for _, w := range l.wheels {
		if l.Holds[w.hold].On == i || l.Holds[w.hold].To == i {
			l.cutAtWheel(&s, w)
		}
	}
	return s
}

// cutAtWheel ends a surface just before a pulley.
func (l *layout) cutAtWheel(s *facePlace, w wheelAt) {
	if o := &l.Objects[l.Holds[w.hold].To]; len(o.fixed()) > 0 { // a ridge: both sides meet under the wheel
		foot := w.centre.plus(vec{0, wheelRadius + 3})
		if way := foot.minus(s.touch).x / nonZero(s.along.x); way > 0 {
			s.ends[1] = min(s.ends[1], way)
		} else {
			s.ends[0] = max(s.ends[0], way)
		}
		return
	}
	way := w.centre.minus(s.touch).dot(s.along)
	room := (wheelRadius + 3) / max(math.Abs(s.along.x), 0.5)
	if way > 0 {
		s.ends[1] = min(s.ends[1], way-room)
	} else {
		s.ends[0] = max(s.ends[0], way+room)
	}
}

func nonZero(x float64) float64 {
	if math.Abs(x) < 1e-6 {
		return math.Copysign(1e-6, x)
	}
	return x
}

// toEdge is the way from a place to the edge of the canvas; surfaces end at the ground
// line.
func (l *layout) toEdge(from, way vec) float64 {
	return max(leaves(from, way, vec{4.5, 2}, vec{l.width() - 5.5, l.groundY()}), 0)
}

// floor is a level surface; where a pulley is fixed to its edge it is a table.
func (l *layout) floor(i, thing int, s facePlace, f *Face) {
	reach := max(34*l.unit, l.half(i).x+14)
	wallLeft, wallRight := l.wallXs()
	from, to := max(s.ends[0], -reach), min(s.ends[1], reach)
	if wallLeft > 0 {
		// The floor goes as far as the wall, whichever body touches that.
		from = wallLeft - s.touch.x
	}
	if wallRight > 0 {
		to = wallRight - s.touch.x
	}
	a, b := s.at(from), s.at(to)
	l.rule(thing, TagSurface, a, b)
	for _, w := range l.wheels {
		if l.Holds[w.hold].On == i || l.Holds[w.hold].To == i {
			edge, side := b, 1.0
			if w.centre.x < s.touch.x {
				edge, side = a, -1
			}
			// The edge of a table is drawn with characters, which stand on cells.
			corner := cell(cellOf(edge))
			l.rule(thing, TagSurface, edge, corner)
			edge = corner
			l.rule(thing, TagSurface, edge, vec{edge.x, l.groundY()})
			l.line(l.holdThing(w.hold), look{tag: TagSurface}, edge.plus(vec{side, -1}), w.centre)
			l.join(thing, l.holdThing(w.hold))
		}
	}
	room := l.half(i).x + 5
	l.note(thing, f.Rough, vec{s.touch.x - room, s.touch.y + 4}, vec{0, 1}, TagAngle)
}

// wallXs is where the walls that objects touch are, 0 for none.
func (l *layout) wallXs() (left, right float64) {
	for i := range l.Objects {
		for _, f := range l.Objects[i].Faces {
			if f.On >= 0 || !f.isWall() {
				continue
			}
			n := heading(f.Normal)
			x := l.at[i].along(n, -l.depth(i, n)).x
			if n.x > 0 {
				left = x
			} else {
				right = x
			}
		}
	}
	return left, right
}

func (l *layout) ceiling(thing int, s facePlace, f *Face) {
	reach := 26 * l.unit
	a, b := s.at(max(s.ends[0], -reach)), s.at(min(s.ends[1], reach))
	l.rule(thing, TagSurface, a, b)
	l.hatchRow(thing, a.x, b.x, a.y-4)
	l.note(thing, f.Rough, vec{s.touch.x + l.reach(0, vec{1, 0}) + 5, s.touch.y + 4}, vec{1, 1}, TagAngle)
}

func (l *layout) hatchRow(thing int, from, to, y float64) {
	for x := from; x <= to+0.1; x += 2 {
		l.glyph(thing, TagSurface, '╱', vec{x, y})
	}
}

// wallFace is a vertical surface: from the top down to the floor.
func (l *layout) wallFace(thing int, s facePlace, f *Face) {
	bottom := l.groundY()
	for i := range l.Objects {
		for _, g := range l.Objects[i].Faces {
			if g.On < 0 && g.isFloor() {
				n := heading(g.Normal)
				bottom = l.at[i].along(n, -l.depth(i, n)).y
			}
		}
	}
	if low := s.at(s.ends[0]).y; low > s.touch.y {
		bottom = min(bottom, low)
	}
	l.wall(thing, s.touch.x, cell(0, 0).y, bottom, s.out.x > 0)
	side := sgn(s.out.x)
	l.note(thing, f.Rough, vec{s.touch.x - 7*side, s.touch.y}, vec{-side, 0}, TagAngle)
}

// wall draws a vertical line with hatching on its solid side.
func (l *layout) wall(thing int, x, from, to float64, solidLeft bool) {
	l.rule(thing, TagSurface, vec{x, from}, vec{x, to})
	side := 2.0
	if solidLeft {
		side = -2
	}
	for y := from; y <= to+0.1; y += 4 {
		l.glyph(thing, TagSurface, '╱', vec{x + side, y})
	}
}

// slope draws an inclined surface with its angle at the foot.
func (l *layout) slope(i, thing int, s facePlace, f *Face) {
	low, high := s.at(s.ends[0]), s.at(s.ends[1])
	if low.y < high.y {
		low, high = high, low
	}
	low = l.onGround(low, high)
	l.line(thing, look{tag: TagSurface}, low, high)
	short := low.minus(s.touch).len() - l.half(i).x
	l.cost += 4*max(12-short, 0) + 2*max(l.half(i).x+4-high.minus(s.touch).len(), 0)
	way := vec{sgn(high.x - low.x), 0}
	rise := math.Abs(f.rise())
	if low.y > l.groundY()-1.5 {
		l.reachGround(thing, min(low.x, low.x+30*way.x), max(low.x, max(low.x+30*way.x, high.x*b2f(way.x > 0))))
		if way.x < 0 {
			l.grounds[0] = min(l.grounds[0], high.x)
		}
	} else if len(l.Objects[i].fixed()) == 1 {
		l.cost += 40 // a slope ends on the ground
	}
	l.slopeAngle(thing, f, low, way, rise)
	l.slopeLengths(thing, f, low, high)
	l.roughness(i, thing, s, f)
	l.slopeEnd(i, thing, low, high)
}

// onGround leads a slope that ends just above the ground down to it, if there is room.
func (l *layout) onGround(low, high vec) vec {
	gap, way := l.groundY()-low.y, low.minus(high)
	if gap <= 0 || gap >= 1.5 || way.y <= 0 {
		return low
	}
	foot := low.plus(way.times(gap / way.y))
	if foot.x < 2.5 || foot.x > l.width()-3.5 {
		return low
	}
	return foot
}

func b2f(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// slopeAngle marks the angle between a slope and the horizontal at its foot.
func (l *layout) slopeAngle(thing int, f *Face, foot, way vec, rise float64) {
	if f.Angle == "" {
		return
	}
	l.angleAt(thing, f.Angle, foot, way.degrees(), rise*sgn(way.x))
	if foot.y < l.groundY()-1.5 || len(l.groove(thing)) > 1 {
		l.rule2(thing, foot, foot.along(way, 13))
	}
}

// groove lists the slopes of the object that a face belongs to.
func (l *layout) groove(thing int) []Face {
	var slopes []Face
	if i := (thing - thingFace) / 16; thing >= thingFace && i < len(l.Objects) {
		for _, f := range l.Objects[i].fixed() {
			if f.isSlope() {
				slopes = append(slopes, f)
			}
		}
	}
	return slopes
}

// rule2 is a broken line from which an angle is measured.
func (l *layout) rule2(thing int, a, b vec) {
	s := stroke{look: look{tag: TagAngle}, form: rule, dash: dotted, points: []vec{a, b}}
	if math.Abs(a.x-b.x) > 0.75 && math.Abs(a.y-b.y) > 1 {
		s.form = path
	}
	l.add(thing, s)
}

// roughness marks the coefficient at a slope, below the body.
func (l *layout) roughness(i, thing int, s facePlace, f *Face) {
	l.note(thing, f.Rough, s.touch.along(s.out, -4), s.out.times(-1), TagAngle)
}

// slopeEnd closes a slope under a pulley: down to the ground.
func (l *layout) slopeEnd(i, thing int, low, high vec) {
	for _, w := range l.wheels {
		h := &l.Holds[w.hold]
		if h.On != i && h.To != i {
			continue
		}
		l.join(thing, l.holdThing(w.hold))
		if len(l.Objects[h.To].fixed()) > 0 && len(l.Objects[h.On].fixed()) > 0 {
			if h.On == i {
				l.line(l.holdThing(w.hold), look{tag: TagSurface}, high, w.centre)
			}
			continue
		}
		top := cell(cellOf(high))
		l.line(thing, look{tag: TagSurface}, high, vec{top.x, top.y + 4})
		l.add(thing, stroke{look: look{tag: TagSurface}, form: rule, points: []vec{{top.x, top.y + 4}, {top.x, l.groundY()}}})
		l.line(l.holdThing(w.hold), look{tag: TagSurface}, high, w.centre)
	}
}
