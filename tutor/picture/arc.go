package picture

import "math"

// reference is the direction of the half axis that an angle is measured from.
func (f *figure) reference(a Angle) float64 {
	tilt := f.scene.Bodies[f.scene.Forces[a.Force].On].Tilt
	if a.Full {
		return tilt
	}
	if a.From == AxisY {
		tilt += 90
	}
	if math.Abs(turn(tilt, f.arms[a.Force].deg)) > 90 {
		// The angle is below 90°, so it is measured from the nearer end of the axis.
		tilt += 180
	}
	return tilt
}

// sweep is the signed angle from there to the arrow.
func (f *figure) sweep(a Angle) float64 {
	if a.Full {
		return fullTurn(f.reference(a), f.scene.Forces[a.Force].Direction)
	}
	return turn(f.reference(a), f.arms[a.Force].deg)
}

// arcRadius is where an arc is drawn, given how far its sides reach: further
// out the narrower the angle, so that the letter fits and the arc is seen.
func arcRadius(side, sweep float64) float64 {
	return side * clamp(0.36+5.5/max(math.Abs(sweep), 1), 0.4, 0.74)
}

// arcs draws the angles of all forces. Arcs over the same part of a turn lie
// on different radii.
func (f *figure) arcs() {
	for i, a := range f.scene.Angles {
		arm := &f.arms[a.Force]
		from, sweep := f.reference(a), f.sweep(a)
		// An arc about a short arrow would lie beyond its head; about a long one it grows no further.
		reach := arm.far.minus(arm.centre).len()
		radius := arcRadius(min(reach, f.dots(f.longest)*1.1), sweep)
		b := &f.scene.Bodies[f.scene.Forces[a.Force].On]
		// Outside the body, whose outline would hide it.
		radius = max(radius, f.dots(f.edge(b, arm.out))+3) + 4*float64(f.inside(i))
		if f.scene.Forces[a.Force].Inward {
			radius = 0.7 * reach // clear of the head
		}
		radius = min(radius, 0.85*reach)
		f.arcOf(arcNote{name: a.Name, centre: arm.centre, radius: radius, from: from, sweep: sweep, strong: a.InHand})
	}
}

// inside counts the wider arcs over the same part of a turn, which are drawn
// further in: so each letter can stand outside its own arc and under no other.
func (f *figure) inside(i int) int {
	n, a := 0, f.scene.Angles[i]
	mid, half := f.reference(a)+f.sweep(a)/2, math.Abs(f.sweep(a))/2
	for k, b := range f.scene.Angles {
		same := f.scene.Forces[a.Force].On == f.scene.Forces[b.Force].On
		other := math.Abs(f.sweep(b)) / 2
		wider := other > half || other == half && k < i
		// One degree of overlap is let pass: two angles that share a side touch there.
		if same && wider && math.Abs(turn(mid, f.reference(b)+f.sweep(b)/2)) < half+other-1 {
			n++
		}
	}
	return n
}

// letterAt is where along an arc its letter stands: in the middle, but past it
// on a wide one, where the middle says little about what it ends at.
func letterAt(sweep float64) float64 {
	if math.Abs(sweep) > 100 {
		return 0.7
	}
	return 0.5
}

// narrow is the length of an arc, in degrees times dots, up to which its letter
// has no room between the sides and stands on the far side of the axis instead.
const narrow = 330

// leastArcRows is the height below which angles have their letters alone: an arc of a few
// dots would read as a part of an arrow.
const leastArcRows = 14

// arcNote is an arc with its letter.
type arcNote struct {
	name                string
	centre              vec
	radius, from, sweep float64
	strong              bool
}

func (f *figure) arcOf(a arcNote) {
	l := look{tag: TagAngle, strong: a.strong}
	if f.fine || f.area.rows() >= leastArcRows {
		f.arc(l, a.centre, a.radius, a.from, a.sweep)
	}
	// The letter stands on the bisector, where a textbook has it.
	way := heading(a.from + a.sweep*letterAt(a.sweep))
	at, dir := a.centre.along(way, a.radius+1.5), way
	if math.Abs(a.sweep)*a.radius < narrow {
		way = heading(a.from)
		// The letter goes to the side of the axis that the arrow is not on.
		aside := way.left().times(-math.Copysign(1, a.sweep))
		at, dir = a.centre.along(way, a.radius).plus(aside), way.times(0.3).plus(aside).unit()
	}
	f.note(label{rank: rankAngle, at: at, dir: dir, look: l, area: f.area}, a.name, "")
}
