package picture

import "math"

// A body's axes have four halves, at 90° to each other: +x, +y, -x, -y.
const halves = 4

// Lengths of the halves in lengths of the longest arrow.
const (
	axisLong  = 0.95 // the positive ones, which carry the letters
	axisSmall = 0.6  // the positive ones, where several bodies share the room
	axisShort = 0.3  // the negative ones
	axisUsed  = 0.75 // a negative one that an arc or a triangle leans on
)

// stub is how many dots an axis goes on beyond an arrow that covers it.
func (f *figure) stub() float64 {
	if f.area.rows() < 14 {
		return 3.5
	}
	return 7
}

// axisRoom is the dots around an axis end for its letter.
const axisRoom = 5.0

// axes draws the axes of a body, behind everything.
func (f *figure) axes(i int) {
	b := &f.scene.Bodies[i]
	if !f.hasAxes(i) {
		return
	}
	for half := range halves {
		out := f.axisOut(i, half)
		from, to := f.middle(i).along(out, f.dots(f.edge(b, out))), f.axisEnd(i, half)
		if to.minus(from).dot(out) > 0 {
			f.line(look{tag: TagAxis, soft: true}, dotted, from, to)
		}
	}
}

// axisOut is the direction of a half.
func (f *figure) axisOut(i, half int) vec {
	return heading(f.scene.Bodies[i].Tilt + 90*float64(half))
}

// hasAxes tells whether a body shows axes: it is not bare, and forces act on it
// or are still to be found.
func (f *figure) hasAxes(i int) bool {
	b := &f.scene.Bodies[i]
	// A wheel or a wall is not what the equations are written for.
	if b.Bare || b.Shape == Anchor {
		return false
	}
	if len(f.scene.Forces) == 0 {
		return true
	}
	for k := range f.scene.Forces {
		if f.scene.Forces[k].On == i {
			return true
		}
	}
	return false
}

// coverOf is the arrow that lies on a half of an axis, or nil.
func (f *figure) coverOf(i, half int) *arm {
	deg := f.scene.Bodies[i].Tilt + 90*float64(half)
	var long *arm
	for k := range f.arms {
		// Within 8° the axis and the arrow run through the same cells.
		if f.scene.Forces[k].On == i && math.Abs(turn(deg, f.arms[k].deg)) < 8 &&
			(long == nil || f.arms[k].share > long.share) {
			long = &f.arms[k]
		}
	}
	return long
}

// axisLength is how long a half is drawn, in arrow lengths from the middle.
func (f *figure) axisLength(i, half int) float64 {
	long := axisLong
	if len(f.scene.Bodies) > 1 {
		long = axisSmall
	}
	if half >= 2 {
		long = axisShort
		if f.leanedOn(i, half) {
			long = axisUsed
		}
	}
	out := f.axisOut(i, half)
	return max(long*f.longest, f.edge(&f.scene.Bodies[i], out)+0.25*f.longest)
}

// axisEnd is the dot at which a half ends: beyond the arrow that covers it.
func (f *figure) axisEnd(i, half int) vec {
	out := f.axisOut(i, half)
	end := f.middle(i).along(out, f.dots(f.axisLength(i, half)))
	if arm := f.coverOf(i, half); arm != nil {
		// A negative half says nothing that the arrow over it does not.
		if half >= 2 && !f.leanedOn(i, half) {
			return f.middle(i)
		}
		if beyond := arm.far.minus(end).dot(out) + f.stub(); beyond > 0 && half < 2 {
			end = end.along(out, beyond)
		}
	}
	return end
}

// leanedOn tells whether an arc or a triangle needs a negative half.
func (f *figure) leanedOn(i, half int) bool {
	for _, a := range f.scene.Angles {
		if f.scene.Forces[a.Force].On == i && math.Abs(turn(f.reference(a), f.scene.Bodies[i].Tilt+90*float64(half))) < 1 {
			return true
		}
	}
	if t := f.scene.Triangle; t != nil && f.scene.Forces[t.Force].On == i {
		// The leg along x lies on this half of the x axis; that along y is drawn beside.
		return half%2 == 0 && f.arms[t.Force].out.dot(f.axisOut(i, half)) > 0
	}
	return false
}

// axisExtents makes room for the axes of a body.
func (f *figure) axisExtents(es []extent, i int) []extent {
	if !f.hasAxes(i) {
		return es
	}
	b := &f.scene.Bodies[i]
	for half := range halves {
		out := f.axisOut(i, half)
		long, beyond := f.axisLength(i, half), 0.0
		if arm := f.coverOf(i, half); arm != nil {
			long, beyond = max(long, f.edge(b, out)+arm.share*f.longest), f.stub()
		}
		e := extent{at: vec{b.At.X, -b.At.Y}.along(out, long)}
		// Only the positive halves carry letters that need room.
		if half < 2 {
			way := out.times(beyond)
			e.left, e.right = max(-way.x, 0)+axisRoom/2, max(way.x, 0)+axisRoom/2
			e.up, e.down = max(-way.y, 0)+axisRoom/2, max(way.y, 0)+axisRoom/2
		}
		es = append(es, e)
	}
	return es
}

// axisLetters names the positive halves. Bodies with the same axes share the
// letters: where no arrow lies over that half, and furthest out.
func (f *figure) axisLetters() {
	for half, letter := range []string{"x", "y"} {
		for i := range f.scene.Bodies {
			if f.hasAxes(i) && f.lettered(i, half) {
				f.note(label{rank: rankAxis, at: f.axisEnd(i, half), dir: f.axisOut(i, half),
					look: look{tag: TagAxis}, area: f.area}, letter, "")
			}
		}
	}
}

// lettered tells whether a body is the one to carry the letter of a half.
func (f *figure) lettered(i, half int) bool {
	free := f.coverOf(i, half) == nil
	for k := range f.scene.Bodies {
		if k == i || !f.hasAxes(k) || f.scene.Bodies[k].Tilt != f.scene.Bodies[i].Tilt {
			continue
		}
		further := f.between(i, k).dot(f.axisOut(i, half))
		if further > 1e-6 || further > -1e-6 && k < i {
			// Bodies side by side are equally far out; then the first one has the letter.
			further = 1
		}
		if other := f.coverOf(k, half) == nil; other && !free || other == free && further > 0 {
			return false
		}
	}
	return true
}
