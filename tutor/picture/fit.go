package picture

import "math"

// extent is a place that must fit into the figure's area, in arrow lengths
// with y downwards, and the dots around it that its label needs.
type extent struct {
	at                    vec
	left, right, up, down float64
}

// fit finds the largest scale at which everything fits, and the middle.
func (f *figure) fit() {
	es := f.extents()
	room := f.area.size()
	f.scale = math.Inf(1)
	for i := range es {
		for j := range es {
			a, b := &es[i], &es[j]
			f.scale = bounded(f.scale, room.x-2-a.left-b.right, b.at.x-a.at.x)
			f.scale = bounded(f.scale, room.y-2-a.up-b.down, b.at.y-a.at.y)
		}
	}
	if math.IsInf(f.scale, 1) {
		f.scale = min(room.x, room.y) / 3 / f.longest
	}
	low, high := vec{math.Inf(1), math.Inf(1)}, vec{math.Inf(-1), math.Inf(-1)}
	for _, e := range es {
		at := e.at.times(f.scale)
		low = vec{min(low.x, at.x-e.left), min(low.y, at.y-e.up)}
		high = vec{max(high.x, at.x+e.right), max(high.y, at.y+e.down)}
	}
	f.origin = f.area.middle().minus(low.plus(high).times(0.5))
}

// extents lists what must fit.
func (f *figure) extents() []extent {
	es := make([]extent, 0, 32)
	for i := range f.scene.Bodies {
		b := &f.scene.Bodies[i]
		half, at := vec{f.depth(b, vec{1, 0}), f.depth(b, vec{0, 1})}, vec{b.At.X, -b.At.Y}
		es = append(es, extent{at.minus(half), 0, 0, 0, 0}, extent{at.plus(half), 0, 0, 0, 0})
		es = f.axisExtents(es, i)
		es = f.surfaceExtents(es, i)
	}
	for i := range f.arms {
		if f.drawable(i) {
			es = append(es, f.armExtent(i))
		}
	}
	return es
}

// armExtent leaves room for the name at an arrow's far end: beside it where the
// area is wide, else above or below.
func (f *figure) armExtent(i int) extent {
	arm, force := &f.arms[i], &f.scene.Forces[i]
	b := &f.scene.Bodies[force.On]
	e := extent{at: vec{b.At.X, -b.At.Y}.along(arm.out, f.edge(b, arm.out)+arm.share*f.longest)}
	width := float64(len(f.cells(force.Name)))
	side, end := 2*width+2, 1.0
	if room := f.area.size(); room.x < 1.3*room.y {
		side, end = width, 5
	}
	if arm.out.y < -0.25 {
		e.up = end
	} else if arm.out.y > 0.25 {
		e.down = end
	}
	if arm.out.x < -0.1 {
		e.left = side
	} else if arm.out.x > 0.1 {
		e.right = side
	}
	if b.Shape != Pulley { // a lane to the side, and what rounding to a dot takes
		aside := arm.out.left().times(arm.shift * laneDots)
		e.left, e.right = max(e.left, 0.5-aside.x), max(e.right, 0.5+aside.x)
		e.up, e.down = max(e.up, 0.5-aside.y), max(e.down, 0.5+aside.y)
	}
	return e
}

// usual is half the width of a shape in arrow lengths, where none is given.
var usual = [...]float64{Knot: 0, Ring: 0.16, Block: 0.36, Pulley: 0.26, Anchor: 0.2}

// largest is the most dots for half its width, so that on a large canvas the
// forces grow and the bodies do not.
var largest = [...]float64{Knot: 0, Ring: 5, Block: 13, Pulley: 12, Anchor: 8}

// flatness is how high a block is for its width.
const flatness = 0.78

// half is half the width and height of a body's outline, in arrow lengths.
func (f *figure) half(b *Body) vec {
	w := b.Size
	if w == 0 && int(b.Shape) < len(usual) && b.Shape >= 0 {
		if w = usual[b.Shape] * f.longest; f.scale > 0 {
			w = min(w, largest[b.Shape]/f.scale)
		}
		if f.ascii && b.Shape == Ring {
			w = min(w, 2.2/max(f.scale, 2.2/w)) // one letter stands for it
		}
	}
	if b.Shape == Block {
		return vec{w, w * flatness}
	}
	return vec{w, w}
}

// stance is how far a body is turned: it lies flat on its first surface.
func stance(b *Body) float64 {
	if len(b.Surfaces) > 0 {
		return b.Surfaces[0].Normal - 90
	}
	return b.Tilt
}

// edge is the way from a body's middle to its outline in a direction, in arrow lengths.
func (f *figure) edge(b *Body, out vec) float64 {
	half := f.half(b)
	if b.Shape != Block {
		return half.x
	}
	u := heading(stance(b))
	x, y := math.Abs(out.dot(u)), math.Abs(out.dot(u.left()))
	return min(half.x/max(x, 1e-9), half.y/max(y, 1e-9))
}

// depth is the way from a body's middle to a plane that it touches.
func (f *figure) depth(b *Body, normal vec) float64 {
	half := f.half(b)
	switch b.Shape {
	case Block:
		u := heading(stance(b))
		return half.x*math.Abs(normal.dot(u)) + half.y*math.Abs(normal.dot(u.left()))
	case Knot:
		return 0.06 * f.longest
	}
	return half.x
}

// dots is a length in the drawing.
func (f *figure) dots(length float64) float64 { return length * f.scale }

// middle is where a body stands, on a dot.
func (f *figure) middle(i int) vec {
	at := f.scene.Bodies[i].At
	return f.origin.plus(vec{at.X, -at.Y}.times(f.scale)).snap()
}

// headroom is the way that the head of an inward arrow keeps from a body, in
// dots: a knot is so small that heads would cover it and each other.
func headroom(b *Body) float64 {
	if b.Shape == Knot {
		return 3
	}
	return 1.5
}

// onDot moves the tail of an arrow to a dot. A nearly level line of twenty dots
// shows its slope by the place of one step; that place is only true if the line
// starts in the middle of a dot.
func (f *figure) onDot(p vec) vec {
	if f.fine {
		return p
	}
	return p.snap()
}

// laneWidth is the way between arrows that would be one line, in dots.
func (f *figure) laneWidth(b *Body) float64 {
	if b.Shape == Pulley {
		return f.dots(2 * f.half(b).x)
	}
	return laneDots
}

// laneDots is the way between arrows that would be one line, in dots.
const laneDots = 4.0

// stand puts the arms in their places. An arrow shorter than its head could not
// be seen; this is the one case in which lengths to scale do not tell the truth.
func (f *figure) stand() {
	const least = headLength + 1.5
	for i := range f.arms {
		if !f.drawable(i) {
			continue
		}
		arm, force := &f.arms[i], &f.scene.Forces[i]
		b := &f.scene.Bodies[force.On]
		arm.centre = f.middle(force.On)
		edge, shift := f.dots(f.edge(b, arm.out)), arm.shift*f.laneWidth(b)
		if b.Shape != Block {
			edge = math.Sqrt(max(edge*edge-shift*shift, 0))
		}
		arm.root = arm.centre.along(arm.out, edge).along(arm.out.left(), shift)
		long := max(f.dots(arm.share*f.longest), least)
		if force.Inward {
			arm.far = f.onDot(arm.root.along(arm.out, long))
			arm.root = arm.far.along(arm.out, headroom(b)-long)
			arm.tail, arm.tip = arm.far, arm.root
		} else {
			arm.root = f.onDot(arm.root)
			arm.far = arm.root.along(arm.out, long)
			arm.tail, arm.tip = arm.root, arm.far
		}
	}
}
