package picture

import "math"

// hold draws a rope, spring, strut or pole with what it ends at.
func (l *layout) hold(k int) {
	h, thing := &l.Holds[k], l.holdThing(k)
	l.join(thing, l.objectThing(h.On))
	for j := range l.Holds {
		if l.Holds[j].On == h.On || l.Holds[j].To == h.On || h.To >= 0 && (l.Holds[j].On == h.To || l.Holds[j].To == h.To) {
			l.join(thing, l.holdThing(j))
		}
	}
	if h.To >= 0 {
		l.join(thing, l.objectThing(h.To))
	}
	for i := range l.Objects[h.On].Faces {
		if h.inward() || h.End == OnSlope || h.End == Wall {
			l.join(thing, l.faceThing(h.On, i))
		}
	}
	switch h.End {
	case OverWheel:
		l.overPulley(k)
	case Joined:
		l.between(k)
	case Hanger:
		l.hanger(k)
	case Wind:
		l.wind(k)
	case Water:
		l.water(k)
	default:
		l.outward(k)
	}
}

// start is where a hold leaves its object.
func (l *layout) start(k int) vec {
	h := &l.Holds[k]
	out := h.out()
	at := l.at[h.On]
	if l.Objects[h.On].Form == Eye && h.inward() && near(h.Direction, 90) { // from below: at the load
		return at.plus(vec{0, float64(4*(l.drop+1)) + 8*float64(len(l.Objects[h.On].Letters))})
	}
	// A rope is tied to the axle of a drum.
	if l.Objects[h.On].Form == Drum && !h.inward() {
		return at
	}
	// A rope over a wheel leaves from the side of its rim, any other from the edge of its body.
	return at.plus(l.sideOf(k, h.On)).along(out, l.reach(h.On, out)*b2f(l.sideOf(k, h.On) == vec{}))
}

// gap is how far a slanted line begins from an eye, which is one character.
func (l *layout) fromEye(k int, at, out vec) vec {
	if l.Objects[l.Holds[k].On].Form == Eye && math.Abs(out.x) > 1e-6 && math.Abs(out.y) > 1e-6 {
		return at.along(out, 2.2)
	}
	return at
}

// outward draws a hold that ends at something fixed, or in a hand.
func (l *layout) outward(k int) {
	h := &l.Holds[k]
	out, from := h.out(), l.start(k)
	var to vec
	switch h.End {
	case Wall:
		to = l.toWall(k, from, out)
	case Ground:
		to = l.toGround(k, from, out)
	case Post:
		to = l.toPost(k, from, out)
	case OnSlope:
		to = l.toSlopePost(k, from, out)
	case Knob:
		to = l.toKnob(k, from, out)
	default:
		if l.yoked(h.On) && near(out.degrees(), 90) {
			from = l.yoke(k)
		}
		to = l.toBeam(k, from, out)
	}
	l.strandsOf(k, l.fromEye(k, from, out), to)
	// Dots; an angle needs room for its letter.
	least := 13.0
	switch {
	case math.Abs(out.x) < 1e-6:
		least = 6
	case h.Angle != "":
		least = 20
	}
	l.cost += 5 * max(least-to.minus(from).len(), 0)
	// A longer rope is easier to see, but past 40 dots it only takes room.
	l.cost -= min(to.minus(from).len(), 40) * 0.15
	l.holdAngle(k, from, to, out)
	l.holdLengths(k, from, to)
	l.holdLetter(k, from, to)
}

// strandsOf draws the line of a hold, several side by side if it stands for several.
func (l *layout) strandsOf(k int, a, b vec) {
	h := &l.Holds[k]
	side := b.minus(a).unit().left()
	for n := range h.Count {
		// On both sides of the middle, so that the pull of all lies where the body is.
		off := side.times(8 * (float64(n) - float64(h.Count-1)/2))
		l.strand(k, a.plus(off), b.plus(off))
	}
}

func (l *layout) strand(k int, a, b vec) {
	h, thing := &l.Holds[k], l.holdThing(k)
	switch {
	case h.Kind == Spring:
		l.coil(thing, a, b)
	case h.Kind == Strut, h.Kind == Push:
		l.bar(thing, a, b)
	case h.Scale:
		l.scaleIn(k, a, b)
	default:
		l.rope(thing, TagLink, a, b)
	}
}

// coil draws a spring; a level one with whole characters.
func (l *layout) coil(thing int, a, b vec) {
	// Only a level spring can be drawn with characters of its own.
	if math.Abs(a.y-b.y) > 1 {
		l.add(thing, stroke{look: look{tag: TagLink}, form: coil, points: []vec{a, b}})
		return
	}
	if a.x > b.x {
		a, b = b, a
	}
	const straight = 5
	l.rule(thing, TagLink, a, vec{a.x + straight, a.y})
	l.rule(thing, TagLink, vec{b.x - straight, b.y}, b)
	for n, x := 0, a.x+straight+1; x < b.x-straight; n, x = n+1, x+2 {
		l.glyph(thing, TagLink, []rune("╱╲")[n&1], vec{x, a.y})
	}
}

// bar draws something stiff: two lines side by side.
func (l *layout) bar(thing int, a, b vec) {
	if math.Abs(a.y-b.y) < 1 {
		if a.x > b.x {
			a, b = b, a
		}
		for x := a.x + 2; x <= b.x-1.5; x += 2 {
			l.glyph(thing, TagLink, '═', vec{x, a.y})
		}
		return
	}
	side := b.minus(a).unit().left().times(1.5)
	l.line(thing, look{tag: TagLink}, a.plus(side), b.plus(side))
	l.line(thing, look{tag: TagLink}, a.minus(side), b.minus(side))
}

// scaleIn draws a rope with a spring scale in it.
func (l *layout) scaleIn(k int, a, b vec) {
	thing, u := l.holdThing(k), b.minus(a).unit()
	mid, half := a.along(u, 0.58*b.minus(a).len()), 5.0
	p, q := mid.along(u, -half), mid.along(u, half)
	if math.Abs(u.y) < 1e-6 {
		l.levelScale(thing, a, mid, b)
		return
	}
	l.rope(thing, TagLink, a, p)
	l.rope(thing, TagLink, q, b)
	side := u.left().times(2)
	l.line(thing, look{tag: TagBody}, p.plus(side), q.plus(side), q.minus(side), p.minus(side), p.plus(side))
}

// levelScale is a spring scale in a level rope, in whole characters.
func (l *layout) levelScale(thing int, a, mid, b vec) {
	if a.x > b.x {
		a, b = b, a
	}
	// On a cell, or the brackets would fall beside the middle.
	mid = cell(cellOf(mid))
	l.rule(thing, TagLink, a, vec{mid.x - 6, a.y})
	l.rule(thing, TagLink, vec{mid.x + 6, a.y}, b)
	for n, r := range []rune("[═══]") {
		l.glyph(thing, TagBody, r, mid.plus(vec{float64(2*n) - 4, 0}))
	}
}

// yoke draws the two legs of a rope that holds an object at its ends, and gives the
// place above what it carries where they meet.
func (l *layout) yoke(k int) vec {
	i, thing := l.Holds[k].On, l.holdThing(k)
	c := l.carried(i)
	top := l.at[i].plus(vec{0, -l.half(i).y})
	// Over everything that stands on the body: the yoke lifts the whole pile.
	for ; c >= 0; c = l.carried(c) {
		top.y = l.at[c].y - l.half(c).y
		l.join(thing, l.objectThing(c))
	}
	eye := cell(cellOf(vec{top.x, top.y - 9}))
	for _, side := range []float64{-1, 1} {
		l.line(thing, look{tag: TagLink}, vec{l.at[i].x + side*(l.half(i).x-1), l.at[i].y - l.half(i).y - 1}, eye)
	}
	return eye
}

// until is how far a ray gets before it leaves a frame, at least one step.
func until(from, way, low, high vec) float64 { return max(leaves(from, way, low, high), 1) }

// leaves is how far a ray gets before it leaves a frame; infinite for a ray without a way.
func leaves(from, way, low, high vec) float64 {
	t := math.Inf(1)
	if way.x > 1e-9 {
		t = min(t, (high.x-from.x)/way.x)
	} else if way.x < -1e-9 {
		t = min(t, (low.x-from.x)/way.x)
	}
	if way.y > 1e-9 {
		t = min(t, (high.y-from.y)/way.y)
	} else if way.y < -1e-9 {
		t = min(t, (low.y-from.y)/way.y)
	}
	return t
}

// frame is where ropes end at the latest.
func (l *layout) frame() (low, high vec) { return vec{4, 4}, vec{l.width() - 5, l.groundY()} }

// toBeam ends below hatching.
func (l *layout) toBeam(k int, from, out vec) vec {
	low, high := l.frame()
	low.y += 4 * float64(l.above())
	if math.Abs(out.x) < 1e-6 {
		low.y += 1.5
	}
	to := from.along(out, until(from, out, low, high))
	wide := 2.0 + 4*float64(l.Holds[k].Count-1)
	l.hatchRow(l.holdThing(k), to.x-wide, to.x+wide, to.y-4)
	return to
}

// above is how many rows are needed above the beam, for lengths along it.
func (l *layout) above() int {
	for k := range l.Holds {
		if l.Holds[k].End == Beam && l.Holds[k].Level != "" {
			return 1
		}
	}
	return 0
}

// toWall ends at a wall: at one that an object touches, at one that a strut stands on,
// or at a piece of its own.
func (l *layout) toWall(k int, from, out vec) vec {
	thing := l.holdThing(k)
	left, right := l.wallXs()
	x := right
	if out.x < 0 {
		x = left
	}
	// A wall that a body leans against is there already.
	if x > 0 {
		return from.along(out, (x-from.x)/nonZero(out.x))
	}
	side := sgn(out.x)
	low, high := l.frame()
	x = cell(cellOf(vec{low.x + 1 + 7*b2f(l.hasHeight(l.Holds[k].On)), 0})).x
	if side > 0 {
		x = cell(cellOf(vec{high.x, 0})).x
	}
	if h := &l.Holds[k]; l.sharesWall(k) {
		w := thingLeftWall
		if side > 0 {
			w = thingRightWall
		}
		l.join(thing, w)
		to := from.along(out, (x-from.x)/nonZero(out.x))
		// Not refused: another place of the bodies may cost less, and one of them must be taken.
		if to.y < 1 || to.y > l.groundY() {
			l.cost += 30 + 3*(max(1-to.y, 0)+max(to.y-l.groundY(), 0))
		}
		if h.Kind == Strut {
			l.wall(w, x, cell(0, 0).y, l.groundY(), side < 0)
		}
		return to
	}
	if far := 44 * l.unit; math.Abs(x-from.x) > far {
		x = cell(cellOf(vec{from.x + side*far, 0})).x
	}
	to := from.along(out, (x-from.x)/nonZero(out.x))
	y := cell(cellOf(to)).y
	l.cost += max(5.5-y, 0) + max(y+4-l.groundY(), 0)
	l.wall(thing, x, max(y-8, cell(0, 0).y), min(y+8, l.groundY()), side < 0)
	return to
}

// hasHeight tells whether a height has to be marked beside the wall of an object's holds.
func (l *layout) hasHeight(object int) bool {
	for k := range l.Holds {
		if h := &l.Holds[k]; h.On == object && h.Upright != "" && l.hasLevelBar(object) {
			return true
		}
	}
	return false
}

// sharesWall tells whether a strut stands on the wall of a hold.
func (l *layout) sharesWall(k int) bool {
	h := &l.Holds[k]
	for j := range l.Holds {
		s := &l.Holds[j]
		if s.Kind == Strut && s.End == Wall && s.On == h.On && s.out().x*h.out().x > 0 {
			return true
		}
	}
	return false
}

func (l *layout) toGround(k int, from, out vec) vec {
	low, high := l.frame()
	to := from.along(out, until(from, out, low, high))
	if to.y < high.y-1 {
		l.cost += 30 + 3*(high.y-to.y)
	}
	wide := 9 + 4*float64(l.Holds[k].Count-1)
	l.reachGround(l.holdThing(k), to.x-wide, to.x+wide)
	if math.Abs(out.x) < 1e-6 && l.Holds[k].Kind == Spring {
		to.y -= 2
	}
	return to
}

// toPost ends at the top of a post.
func (l *layout) toPost(k int, from, out vec) vec {
	low, high := l.frame()
	high.y -= 9
	to := from.along(out, until(from, out, low, high))
	for y := cell(cellOf(to)).y; y < l.groundY()-1; y += 4 {
		l.glyph(l.holdThing(k), TagSurface, '║', vec{to.x + 2*sgn(out.x), y})
	}
	l.reachGround(l.holdThing(k), to.x-7, to.x+7)
	return to
}

// toSlopePost ends at a post on the slope that the object lies on.
func (l *layout) toSlopePost(k int, from, out vec) vec {
	h, thing := &l.Holds[k], l.holdThing(k)
	for i := range l.Objects[h.On].Faces {
		f := &l.Objects[h.On].Faces[i]
		if f.On >= 0 || !f.isSlope() {
			continue
		}
		s := l.facePlace(h.On, i)
		way := s.ends[1]
		if s.along.dot(out) < 0 {
			way = -s.ends[0]
		}
		room := way - l.half(h.On).x - 5
		long := min(room, 26*l.unit)
		if room < 13 {
			l.cost += 6 * (13 - room)
		}
		to := from.along(out, max(long, 4))
		n := heading(f.Normal)
		depth := l.depth(h.On, n)
		l.line(thing, look{tag: TagSurface}, to.along(n, -depth), to.along(n, 2.5))
		return to
	}
	return from.along(out, 20)
}

// toKnob ends in a hand.
func (l *layout) toKnob(k int, from, out vec) vec {
	h, thing := &l.Holds[k], l.holdThing(k)
	low, high := vec{7, 5.5}, vec{l.width() - 8, l.height() - 6}
	long := min(until(from, out, low, high), 27*l.unit)
	if l.Objects[h.On].Form == Box && h.Kind == Push {
		long = min(long, 22*l.unit)
	}
	// The letters of both stand at their hands, one behind the other.
	for j := range l.Holds { // two that pull the same way do it along one rope
		o := &l.Holds[j]
		if j > k && o.On == h.On && o.End == Knob && math.Abs(turn(o.Direction, h.Direction)) < 1 && o.Kind == h.Kind {
			long *= 0.55
		}
	}
	to := from.along(out, long)
	if math.Abs(out.y) < 1e-6 || math.Abs(out.x) < 1e-6 {
		to = cell(cellOf(to))
	}
	if h.Kind != Push {
		l.glyph(thing, TagBody, '●', to)
	}
	return to
}

// holdLetter marks a known force at the end where it is applied, and a spring at its
// middle.
func (l *layout) holdLetter(k int, a, b vec) {
	h := &l.Holds[k]
	if h.Letter == "" {
		return
	}
	u := b.minus(a).unit()
	at, dir := b.along(u, 2), u
	switch {
	case h.Kind == Spring && h.Count > 1:
		at, dir = a.plus(b).times(0.5).plus(vec{-8 * float64(h.Count-1) / 2, 0}), vec{-1, 0}
	case h.Kind == Spring, h.End == Joined:
		at = a.plus(b).times(0.5)
		dir = upSide(u)
	case h.Scale:
		at = a.along(u, 0.58*b.minus(a).len())
		dir = upSide(u)
	case h.End != Knob:
		at = a.plus(b).times(0.5)
		dir = upSide(u)
	}
	l.note(l.holdThing(k), h.Letter, at, dir, TagBody)
}

// upSide is the side of a line that looks up, or right of a vertical one.
func upSide(u vec) vec {
	n := u.left()
	if n.y > 1e-6 || math.Abs(n.y) <= 1e-6 && n.x < 0 {
		n = n.times(-1)
	}
	return n
}

// holdAngle marks a hold's angle with the line from which it is measured: at the
// object, or at the far end of what comes from behind.
func (l *layout) holdAngle(k int, from, to, out vec) {
	h, thing := &l.Holds[k], l.holdThing(k)
	if h.Angle == "" {
		return
	}
	apex, deg, ref := from, out.degrees(), h.From
	if h.inward() {
		apex, deg = to, h.Direction
	}
	if h.Full {
		l.angleNear(thing, h.Angle, apex, deg)
	} else {
		l.angleIn(thing, h.Angle, apex, ref, turn(ref, deg), 0.72*to.minus(from).len())
	}
	if !l.taken(k, ref) {
		l.reference(k, apex, heading(ref))
	}
}

// reference draws the line from which a hold's angle is measured.
func (l *layout) reference(k int, apex, way vec) {
	h, thing := &l.Holds[k], thingRef+l.holdThing(k)
	l.join(thing, l.objectThing(h.On))
	for j := range l.Holds {
		if l.Holds[j].On == h.On || l.Holds[j].To == h.On {
			l.join(thing, l.holdThing(j))
			l.join(thing, thingRef+l.holdThing(j))
		}
	}
	if h.inward() {
		l.join(thing, thingGround)
	}
	const gap, long = 3.0, 15.0
	l.rule2(thing, apex.along(way, gap), apex.along(way, long))
}

// angleNear puts a letter beside a line, on the side from which its angle is counted.
func (l *layout) angleNear(thing int, letter string, apex vec, deg float64) {
	way := heading(deg)
	right := way.left().times(-1)
	l.note(thing, letter, apex.along(way, 12).along(right, 4), right, TagAngle)
}

// angleAt puts a letter into the opening of an angle.
func (l *layout) angleAt(thing int, letter string, apex vec, ref, sweep float64) {
	l.angleIn(thing, letter, apex, ref, sweep, 24)
}

// angleIn does so within some way of the corner.
func (l *layout) angleIn(thing int, letter string, apex vec, ref, sweep, most float64) {
	mid := heading(ref + sweep/2)
	r := min(clamp(8/max(math.Abs(sweep)*math.Pi/180, 0.1), 9, 24), most)
	l.note(thing, letter, apex.along(mid, r), mid, TagAngle)
}

// taken tells whether another hold or a surface lies where a broken line would.
func (l *layout) taken(k int, ref float64) bool {
	h := &l.Holds[k]
	if h.inward() {
		return h.End == Ground && near(math.Mod(ref+360, 180), 0) || h.End == Wall && near(math.Mod(ref+360, 180), 90)
	}
	for j := range l.Holds {
		o := &l.Holds[j]
		if j == k {
			continue
		}
		if o.On == h.On && math.Abs(turn(o.out().degrees(), ref)) < 3 || o.To == h.On && math.Abs(turn(o.Back, ref)) < 3 {
			return true
		}
		if j < k && o.On == h.On && o.Angle != "" && !o.inward() && math.Abs(turn(o.From, ref)) < 3 {
			return true
		}
	}
	return near(ref, -90) && l.Objects[h.On].Form == Eye && len(l.Objects[h.On].Letters) > 0
}

// between draws what joins two objects.
func (l *layout) between(k int) {
	h := &l.Holds[k]
	out := h.out()
	a := l.at[h.On].plus(l.sideOf(k, h.On))
	b := l.at[h.To].plus(l.sideOf(k, h.To))
	if (l.sideOf(k, h.On) == vec{}) {
		a = a.along(out, l.reach(h.On, out))
	}
	back := heading(h.Back)
	if (l.sideOf(k, h.To) == vec{}) {
		b = b.along(back, l.reach(h.To, back))
	}
	if math.Abs(out.x) < 1e-6 {
		a.x = cell(cellOf(a)).x
		// A rope that leans by one dot would be no longer plumb.
		b.x = a.x
	}
	true_ := math.Abs(turn(b.minus(a).degrees(), out.degrees()))
	// A rope is drawn from body to body, and each degree beside its true direction makes the drawing untrue.
	l.cost += 2 * true_
	from, to := l.fromEye(k, a, out), b
	if l.Objects[h.To].Form == Eye {
		to = l.fromEye(k, b, b.minus(a).unit().times(-1))
		if l.Objects[h.On].Form != Eye && math.Abs(out.x*out.y) > 1e-9 {
			to = b.along(out, -2.2)
		}
	}
	l.strand(k, from, to)
	l.holdAngle(k, a, b, out)
	l.holdLetter(k, a, b)
}

// overPulley draws a rope over a fixed pulley to another object.
func (l *layout) overPulley(k int) {
	h, thing := &l.Holds[k], l.holdThing(k)
	w := l.wheelOf(k)
	d, back := heading(h.Direction), heading(h.Back)
	start := l.leaves(k)
	l.rope(thing, TagLink, l.fromEye(k, start, d), w.a)
	end := l.at[h.To].along(back, l.reach(h.To, back))
	l.rope(thing, TagLink, w.b, end)
	hung := len(l.Objects[h.On].fixed())+len(l.Objects[h.To].fixed()) == 0
	l.fixedWheel(thing, w, hung)
	l.holdAngle(k, start, w.a, d)
	if h.Count > 1 {
		l.again(k, start, end, *w)
	}
}

// again draws the other one of two ropes over pulleys, on the left, with what hangs on
// it.
func (l *layout) again(k int, start, end vec, w wheelAt) {
	h, thing := &l.Holds[k], thingHanger+k
	middle := l.at[h.On].x
	mirrored := func(p vec) vec { return vec{2*middle - p.x, p.y} }
	l.join(thing, l.objectThing(h.On))
	l.rope(thing, TagLink, mirrored(start), mirrored(w.a))
	l.rope(thing, TagLink, mirrored(w.b), mirrored(end))
	w.centre = mirrored(w.centre)
	l.fixedWheel(thing, &w, true)
	l.box(thing, mirrored(l.at[h.To]), l.half(h.To), l.inside(h.To))
}

// fixedWheel draws a pulley, held from above unless a surface holds it.
func (l *layout) fixedWheel(thing int, w *wheelAt, hung bool) {
	l.add(thing, stroke{look: look{tag: TagBody}, form: round, centre: w.centre, radius: wheelRadius, sweep: 360})
	l.boxes = append(l.boxes, solidBox{thing, w.centre.minus(vec{3, 3}), w.centre.plus(vec{3, 3})})
	if hung {
		c := cell(cellOf(w.centre))
		l.rule(thing, TagLink, vec{c.x, cell(0, 1).y}, vec{c.x, c.y})
		l.hatchRow(thing, c.x-2, c.x+2, cell(0, 0).y)
	}
}

// hanger leads a rope over a fixed pulley to a mass of its own.
func (l *layout) hanger(k int) {
	h, thing := &l.Holds[k], l.holdThing(k)
	if l.Above {
		l.toRim(k)
		return
	}
	out, from := h.out(), l.start(k)
	down := vec{0, -1}
	half := vec{max(4, float64(len([]rune(h.Letter)))+3), 4}
	low := vec{half.x + 3 + wheelRadius, 4 + 2*wheelRadius}
	high := vec{l.width() - low.x, l.height() - 26}
	w := l.wheel(k, from.along(out, until(from, out, low, high)), out, down)
	l.rope(thing, TagLink, l.fromEye(k, from, out), w.a)
	top := vec{w.b.x, cell(cellOf(w.centre)).y + 4 + 4*math.Round(2*(l.unit-0.8))}
	hung := thingHanger + k
	l.join(thing, hung)
	l.rule(hung, TagLink, vec{w.b.x, cell(cellOf(w.centre)).y}, top)
	l.box(hung, top.plus(vec{0, half.y}), half, h.Letter)
	l.fixedWheel(thing, &w, true)
	// The angle and the letter stand along this part.
	if long := w.a.minus(from).len(); long < 16 {
		l.cost += 6 * (16 - long)
	}
	l.holdAngle(k, from, w.a, out)
}

// rim is the radius of a force table.
func (l *layout) rim() float64 { return min(l.width(), l.height()-7)/2 - 2 }

// toRim ends a cord at the rim of a force table, where its mass hangs.
func (l *layout) toRim(k int) {
	h, thing := &l.Holds[k], l.holdThing(k)
	out, from := h.out(), l.start(k)
	r := l.rim()
	to := from.along(out, r)
	first := true
	for j := range l.Holds[:k] {
		first = first && l.Holds[j].End != Hanger
	}
	if first {
		l.add(thingRim, stroke{look: look{tag: TagSurface}, form: round, centre: from, radius: r, sweep: 360})
	}
	l.join(thing, thingRim)
	l.rope(thing, TagLink, l.fromEye(k, from, out), to)
	l.glyph(thing, TagBody, '▪', to.along(out, 1.5))
	l.note(thing, h.Letter, to.along(out, 4), out, TagBody)
	l.holdAngle(k, from, to, out)
}

// wind draws waves that push from behind.
func (l *layout) wind(k int) {
	h, thing := &l.Holds[k], l.holdThing(k)
	out := h.out()
	at := l.at[h.On].along(out, l.reach(h.On, out)+7)
	for row := -1; row <= 1; row++ {
		for col := -2; col <= 1; col++ {
			l.glyph(thing, TagLink, '∼', at.plus(vec{float64(2*col) + b2f(row == 0)*2*sgn(out.x), float64(4 * row)}))
		}
	}
	l.note(thing, h.Letter, at.along(out, 7), out, TagBody)
}

// water draws a water line above the body.
func (l *layout) water(k int) {
	h, thing := &l.Holds[k], l.holdThing(k)
	at := l.at[h.On]
	y := cell(cellOf(at.plus(vec{0, -l.half(h.On).y - 8}))).y
	for j := range l.Holds {
		l.join(thing, l.holdThing(j))
	}
	reach := 26 * l.unit
	for x := max(at.x-reach, 4); x <= min(at.x+reach, l.width()-5); x += 2 {
		l.glyph(thing, TagLink, '∼', vec{x, y})
	}
	half := l.half(h.On)
	l.cost += 3 * max(at.y+half.y+7-l.height(), 0)
	l.note(thing, h.Letter, vec{at.x + half.x + 3, y}, vec{0, 1}, TagBody)
}
