package picture

import (
	"math"
)

// layout is a setup while it is laid out on a canvas, in dots. Everything drawn
// belongs to a thing: an object, a hold, a surface. Two things may touch only where
// they are joined.
type layout struct {
	*Setup
	cols, rows int
	unit       float64 // 1 on the smallest canvas in use, more on larger ones
	long       float64 // between joined objects
	drop       int     // rows of rope between an eye and its load
	at         []vec
	placed     []bool
	wheels     []wheelAt
	plan
}

// plan is what was laid out.
type plan struct {
	strokes []stroke
	labels  []label
	joined  map[[2]int]bool
	boxes   []solidBox
	cost    float64
	ground  bool
	grounds [2]float64 // how far the ground line reaches
}

// solidBox is a part of the canvas that belongs to a thing.
type solidBox struct {
	thing     int
	low, high vec
}

// wheelAt is a fixed pulley: where it is, and where its rope leaves it.
type wheelAt struct {
	hold         int
	centre, a, b vec
}

// Things that are neither object nor hold.
const (
	thingGround = 900 + iota
	thingLeftWall
	thingRightWall
	thingRemark
	thingRim
	thingLoad   = 1000
	thingHanger = 1100 // what hangs behind a fixed pulley
	thingFace   = 1200 // and on, sixteen for each object
	thingRef    = 2000 // the line from which a hold\'s angle is measured, on top of the hold
)

func (l *layout) objectThing(i int) int  { return 1 + i }
func (l *layout) holdThing(k int) int    { return 1 + len(l.Objects) + k }
func (l *layout) faceThing(i, k int) int { return thingFace + 16*i + k }

func (l *layout) join(a, b int) {
	l.joined[[2]int{min(a, b), max(a, b)}] = true
}

// width and height are of the canvas, in dots.
func (l *layout) width() float64  { return float64(2 * l.cols) }
func (l *layout) height() float64 { return float64(4 * l.rows) }

// groundRow is the row of the ground line.
func (l *layout) groundY() float64 { return cell(0, l.rows-1).y }

// Half the sizes of objects, in dots.
const (
	drumRadius  = 9.5
	wheelRadius = 4.0
)

// half is half the width and height of an object.
func (l *layout) half(i int) vec {
	o := &l.Objects[i]
	switch {
	case o.Form == Drum:
		return vec{drumRadius * l.unit, drumRadius * l.unit}
	case o.Form == Wheel:
		return vec{wheelRadius, wheelRadius}
	case o.Form == Eye:
		return vec{}
	case !l.flat(i):
		return vec{9, 6}.times(l.unit)
	}
	half := vec{6, 4}
	if l.slim(i) {
		half.x = 4
	}
	if len(o.Faces) > 0 {
		half.x = 8
	}
	half.x = max(half.x, l.strands(i), float64(len([]rune(l.inside(i))))+3)
	if c := l.carried(i); c >= 0 && l.yoked(i) {
		half.x = max(half.x, l.half(c).x+10) // the legs of the yoke pass the corners
	}
	if len(l.Objects) == 1 && len(o.Faces) > 0 && l.unit > 1.3 {
		half = vec{half.x + 4, 8}
	}
	return half
}

// slim tells whether an object has to be narrow, because a rope passes beside it: one of
// two on ropes over pulleys, or below a wheel.
func (l *layout) slim(i int) bool {
	for k := range l.Holds {
		h := &l.Holds[k]
		if h.To == i && h.End == OverWheel {
			return true
		}
		if h.End == Joined && (h.On == i && l.Objects[h.To].Form == Wheel || h.To == i && l.Objects[h.On].Form == Wheel) {
			return true
		}
	}
	return false
}

// carried is the object that is on another one, or -1.
func (l *layout) carried(i int) int {
	for k := range l.Objects {
		for _, f := range l.Objects[k].Faces {
			if f.On == i && f.isFloor() {
				return k
			}
		}
	}
	return -1
}

// yoked tells whether an object that carries another hangs on a rope straight up: two
// legs then lead round what it carries.
func (l *layout) yoked(i int) bool {
	for k := range l.Holds {
		if h := &l.Holds[k]; h.On == i && h.End == Beam && near(h.out().degrees(), 90) {
			return l.carried(i) >= 0
		}
	}
	return false
}

// strands is half the width that the ropes or springs at an object need.
func (l *layout) strands(i int) float64 {
	wide := 0.0
	for k := range l.Holds {
		if h := &l.Holds[k]; h.On == i && h.Count > 1 {
			wide = max(wide, float64(4*h.Count)+2)
		}
	}
	return wide
}

// inside is the text in a box.
func (l *layout) inside(i int) string {
	text := ""
	for k, letter := range l.Objects[i].Letters {
		if k > 0 && letter != "" {
			text += " + "
		}
		text += letter
	}
	return text
}

// flat tells whether an object is drawn with whole characters.
func (l *layout) flat(i int) bool {
	o := &l.Objects[i]
	return o.Form == Box && near(l.stance(i), 0, 90, -90, 180)
}

// stance is how far a box is turned: it lies on its first surface that is no wall.
func (l *layout) stance(i int) float64 {
	for _, f := range l.Objects[i].Faces {
		if f.isSlope() {
			return f.rise()
		}
	}
	return 0
}

// reach is the way from the middle of an object to its outline.
func (l *layout) reach(i int, out vec) float64 {
	half := l.half(i)
	switch l.Objects[i].Form {
	case Eye:
		return 0
	case Box:
		u := heading(l.stance(i))
		return min(half.x/max(math.Abs(out.dot(u)), 1e-9), half.y/max(math.Abs(out.dot(u.left())), 1e-9))
	}
	return half.x
}

// depth is the way from the middle of an object to a plane that it touches.
func (l *layout) depth(i int, normal vec) float64 {
	half := l.half(i)
	switch l.Objects[i].Form {
	case Eye:
		return 2
	case Box:
		u := heading(l.stance(i))
		return half.x*math.Abs(normal.dot(u)) + half.y*math.Abs(normal.dot(u.left()))
	}
	return half.x
}

// toCell moves a place to the middle of its cell and makes the move a cost.
func (l *layout) toCell(p vec) vec {
	q := cell(cellOf(p))
	l.cost += 0.5 * q.minus(p).len()
	return q
}

// place sets all objects, the first at a given place, the others as what joins them
// says.
func (l *layout) place(origin vec) {
	l.at[0], l.placed[0] = origin, true
	for range l.Objects {
		for i := range l.Objects {
			if l.placed[i] {
				l.touching(i)
				l.tied(i)
			}
		}
	}
	for i := range l.Objects {
		if !l.placed[i] {
			l.set(i, vec{l.rightmost() + 34*l.unit, origin.y})
		}
	}
}

func (l *layout) rightmost() float64 {
	x := 0.0
	for i := range l.at {
		if l.placed[i] {
			x = max(x, l.at[i].x)
		}
	}
	return x
}

func (l *layout) set(i int, p vec) {
	if o := &l.Objects[i]; o.Form == Eye || o.Form == Wheel || l.flat(i) {
		p = l.toCell(p)
	}
	l.at[i], l.placed[i] = p, true
}

// touching places what touches an object.
func (l *layout) touching(i int) {
	for k := range l.Objects {
		for _, f := range l.Objects[k].Faces {
			a, b, n := k, f.On, heading(f.Normal)
			if b < 0 || a != i && b != i || l.placed[a] && l.placed[b] {
				continue
			}
			if a != i {
				a, b, n = b, a, n.times(-1)
			}
			l.set(b, l.at[a].along(n, -l.depth(a, n)-l.depth(b, n)))
		}
	}
}

// tied places what an object is tied to.
func (l *layout) tied(i int) {
	for k := range l.Holds {
		h := &l.Holds[k]
		if h.To < 0 || h.On != i && h.To != i || l.placed[h.On] && l.placed[h.To] {
			continue
		}
		switch {
		case h.End == OverWheel && h.On == i:
			l.overWheel(k)
		case h.End == Joined:
			from, to, d := h.On, h.To, heading(h.Direction)
			if h.inward() {
				d = d.times(-1)
			}
			if from != i {
				from, to, d = to, from, d.times(-1)
			}
			way := l.reach(from, d) + l.ropeLength(d, h.Kind) + l.reach(to, d)
			off := l.sideOf(k, from).minus(l.sideOf(k, to))
			l.set(to, l.at[from].plus(off).along(d, way))
		}
	}
}

// ropeLength is how long a rope between two objects is; a hanging one is short.
func (l *layout) ropeLength(d vec, kind Kind) float64 {
	switch {
	case math.Abs(d.x) < 1e-6 && kind == Spring:
		return max(0.55*l.long, 12)
	case math.Abs(d.x) < 1e-6:
		return max(0.4*l.long, 6)
	}
	return l.long
}

// sideOf is where a rope leaves an object, from its middle: a wheel lets its ropes go
// at its rim, on both sides.
func (l *layout) sideOf(k, object int) vec {
	if object < 0 || l.Objects[object].Form != Wheel || l.Holds[k].Kind != Tension {
		return vec{}
	}
	mine := l.away(k, object)
	for j := range l.Holds {
		h := &l.Holds[j]
		if j == k || h.Kind != Tension || h.On != object && h.To != object {
			continue
		}
		other := l.away(j, object)
		if mine.dot(other) < -0.3 || l.axial(j, object) || l.axial(k, object) {
			continue // it holds the axle
		}
		return rimSide(mine, other, k < j).times(wheelRadius)
	}
	return vec{}
}

// axial tells whether a rope is tied to the axle of a wheel and does not run over it:
// it is the only one of its size.
func (l *layout) axial(k, object int) bool {
	mine := l.away(k, object)
	for j := range l.Holds {
		h := &l.Holds[j]
		if j != k && h.Kind == Tension && (h.On == object || h.To == object) && l.away(j, object).dot(mine) > 0.3 {
			return false
		}
	}
	return true
}

// away is the direction in which a hold leaves one of its objects.
func (l *layout) away(k, object int) vec {
	h := &l.Holds[k]
	if h.On == object {
		return h.out()
	}
	return heading(h.Back)
}

// rimSide is the side of a wheel at which a rope leaves, given where another part of
// it goes: away from that one. Parallel ropes leave left and right.
func rimSide(mine, other vec, first bool) vec {
	side := mine.left()
	if math.Abs(side.dot(other)) < 0.05 {
		if (side.x > 0) == first {
			side = side.times(-1)
		}
		return side
	}
	if side.dot(other) > 0 {
		side = side.times(-1)
	}
	return side
}

// overWheel hangs the far end of a rope behind a fixed pulley.
func (l *layout) overWheel(k int) {
	h := &l.Holds[k]
	d, back := heading(h.Direction), heading(h.Back)
	w := l.wheel(k, l.leaves(k).along(d, 0.8*l.long), d, back)
	hang := 0.6 * l.long
	if math.Abs(back.x) > 0.1 {
		hang = 0.8 * l.long
	}
	to := w.b.along(back, -max(hang, 5)-l.reach(h.To, back))
	if l.flat(h.To) {
		to.x = w.b.x
	}
	l.at[h.To], l.placed[h.To] = to, true
	if l.flat(h.To) { // the rope hangs straight: the box moves along it alone
		q := cell(cellOf(to))
		l.at[h.To] = vec{q.x, q.y}
	}
}

// leaves is where a rope over a pulley leaves its object; the right one of two that run
// straight up.
func (l *layout) leaves(k int) vec {
	h := &l.Holds[k]
	d := heading(h.Direction)
	from := l.at[h.On].along(d, l.reach(h.On, d))
	if h.Count > 1 && near(h.Direction, 90) {
		from.x += l.half(h.On).x
	}
	return from
}

// wheel puts a fixed pulley where a rope in direction d arrives at a place and goes on
// against the direction back.
func (l *layout) wheel(k int, arrives vec, d, back vec) wheelAt {
	here, there := d.times(-1), back.times(-1)
	a := rimSide(here, there, true)
	b := rimSide(there, here, false)
	w := wheelAt{hold: k, a: arrives}
	w.centre = arrives.along(a, -wheelRadius)
	w.b = w.centre.along(b, wheelRadius)
	if math.Abs(back.x) < 1e-6 { // the far part is drawn with whole characters
		move := cell(cellOf(w.b)).x - w.b.x
		w.centre.x, w.b.x = w.centre.x+move, w.b.x+move
		w.a = w.a.along(d, move/max(math.Abs(d.x), 0.3)*sgn(d.x))
		w.centre = w.a.along(a, -wheelRadius)
		w.b = vec{cell(cellOf(w.b)).x, w.centre.y}
	}
	l.wheels = append(l.wheels, w)
	return w
}

func sgn(x float64) float64 { return math.Copysign(1, x) }

func (l *layout) wheelOf(k int) *wheelAt {
	for i := range l.wheels {
		if l.wheels[i].hold == k {
			return &l.wheels[i]
		}
	}
	return nil
}

// draw lays everything out; objects have their places.
func (l *layout) draw() {
	for i := range l.Objects {
		l.faces(i)
	}
	for k := range l.Holds {
		l.hold(k)
	}
	for i := range l.Objects {
		l.object(i)
	}
	l.groundLine()
}

// add notes a stroke of a thing.
func (l *layout) add(thing int, s stroke) {
	s.thing = thing
	l.strokes = append(l.strokes, s)
}

func (l *layout) line(thing int, look look, points ...vec) {
	l.add(thing, stroke{look: look, form: path, points: points})
}

// rope draws from place to place, with whole characters where that is level or
// vertical.
func (l *layout) rope(thing int, tag Tag, a, b vec) {
	s := stroke{look: look{tag: tag}, form: path, points: []vec{a, b}}
	ac, ar := cellOf(a)
	bc, br := cellOf(b)
	if math.Abs(a.x-b.x) < 0.75 && ac == bc || math.Abs(a.y-b.y) < 1 && ar == br {
		s.form = rule
	}
	l.add(thing, s)
}

func (l *layout) rule(thing int, tag Tag, a, b vec) {
	l.add(thing, stroke{look: look{tag: tag}, form: rule, points: []vec{a, b}})
}

func (l *layout) glyph(thing int, tag Tag, r rune, at vec) {
	l.add(thing, stroke{look: look{tag: tag}, form: glyph, rune: r, points: []vec{cell(cellOf(at))}})
}

func (l *layout) note(thing int, text string, at, dir vec, tag Tag) {
	if text != "" {
		l.labels = append(l.labels, label{rank: rankAngle, text: []rune(text), at: at, dir: dir, look: look{tag: tag}, thing: thing})
	}
}

// box draws a box of whole characters with a text in it.
func (l *layout) box(thing int, middle, half vec, text string) {
	a, b := middle.minus(half), middle.plus(half)
	l.rule(thing, TagBody, a, vec{b.x, a.y})
	l.rule(thing, TagBody, vec{a.x, b.y}, b)
	l.rule(thing, TagBody, a, vec{a.x, b.y})
	l.rule(thing, TagBody, vec{b.x, a.y}, b)
	l.boxes = append(l.boxes, solidBox{thing, a, b})
	l.inBox(thing, middle, text)
}

// inBox writes a text around a place.
func (l *layout) inBox(thing int, middle vec, text string) {
	if text == "" {
		return
	}
	runes := []rune(text)
	col, row := cellOf(middle)
	l.labels = append(l.labels, label{text: runes, at: middle, look: look{tag: TagBody}, thing: thing,
		fixed: true, col: col - (len(runes)-1)/2, row: row})
}

// object draws a body with its loads.
func (l *layout) object(i int) {
	o, thing, at := &l.Objects[i], l.objectThing(i), l.at[i]
	half := l.half(i)
	switch o.Form {
	case Eye:
		l.glyph(thing, TagBody, 'o', at)
		if len(o.Letters) > 0 {
			l.loads(i, at, l.drop, o.Letters)
		}
	case Wheel:
		l.add(thing, stroke{look: look{tag: TagBody}, form: round, centre: at, radius: half.x, sweep: 360})
		l.glyph(thing, TagBody, '∙', at)
		l.boxes = append(l.boxes, solidBox{thing, at.minus(half), at.plus(half)})
		l.wheelLetters(i)
	case Drum:
		l.add(thing, stroke{look: look{tag: TagBody}, form: round, centre: at, radius: half.x, sweep: 360})
		l.boxes = append(l.boxes, solidBox{thing, at.minus(half.times(0.7)), at.plus(half.times(0.7))})
		l.inBox(thing, at.plus(vec{l.asideOfLine(i), 4 * b2f(o.Name != "" || l.held(i))}), l.inside(i))
	default:
		l.boxBody(i)
	}
	l.name(i)
}

// held tells whether a rope or pole is at an object.
func (l *layout) held(i int) bool {
	for k := range l.Holds {
		if l.Holds[k].On == i || l.Holds[k].To == i {
			return true
		}
	}
	return false
}

// asideOfLine is how far the texts in a round body keep from the line to another one
// that it touches.
func (l *layout) asideOfLine(i int) float64 {
	for k := range l.Objects {
		for _, f := range l.Objects[k].Faces {
			if f.Along != "" && (k == i && f.On >= 0 || f.On == i) {
				other := k + f.On - i
				if l.at[i].x > l.at[other].x {
					return 3
				}
				return -5
			}
		}
	}
	return 0
}

func (l *layout) boxBody(i int) {
	o, thing, at, half := &l.Objects[i], l.objectThing(i), l.at[i], l.half(i)
	if l.flat(i) {
		hung := len(o.Faces) == 0 && len(o.Letters) > 1
		if hung {
			l.box(thing, at, half, o.Letters[0])
			l.loads(i, at.plus(vec{0, half.y}), 1, o.Letters[1:])
			return
		}
		l.box(thing, at, half, l.inside(i))
		return
	}
	u := heading(l.stance(i))
	x, y := u.times(half.x), u.left().times(half.y)
	l.line(thing, look{tag: TagBody}, at.plus(x).plus(y), at.plus(x).minus(y), at.minus(x).minus(y), at.minus(x).plus(y), at.plus(x).plus(y))
	l.boxes = append(l.boxes, solidBox{thing, at.minus(vec{3, 3}), at.plus(vec{3, 3})})
	l.inBox(thing, at, l.inside(i))
}

// loads hangs boxes below a place, one below the other.
func (l *layout) loads(i int, from vec, drop int, letters []string) {
	thing := thingLoad + i
	l.join(thing, l.objectThing(i))
	for k := range l.Holds { // a push from below ends at the load
		if h := &l.Holds[k]; h.On == i && h.inward() && near(h.Direction, 90) {
			l.join(thing, l.holdThing(k))
		}
	}
	if l.drop < 0 && l.Objects[i].Form == Eye { // no room for a box
		at := from.plus(vec{0, float64(4 - 4*l.drop)})
		l.rule(l.objectThing(i), TagLink, from, at.minus(vec{0, 4}))
		l.cost += 8
		wide := float64(len([]rune(letters[0]))) + 1
		l.glyph(thing, TagBody, '[', at.plus(vec{-2, 0}))
		l.glyph(thing, TagBody, ']', at.plus(vec{wide, 0}))
		l.inBox(thing, at, letters[0])
		return
	}
	for _, letter := range letters {
		half := vec{l.loadHalf(letter), 4}
		top := from.plus(vec{0, float64(4 * (drop + 1))})
		if drop > 0 {
			l.rule(l.objectThing(i), TagLink, from, top)
		}
		l.box(thing, top.plus(vec{0, half.y}), half, letter)
		from, drop = top.plus(vec{0, 2 * half.y}), max(drop, 1)
	}
}

func (l *layout) loadHalf(letter string) float64 {
	half := 4.0
	switch {
	case l.drop >= 6:
		half = 2
		return max(half, float64(len([]rune(letter)))+1)
	case len(l.Objects) == 1 && l.drop == 1 && !l.braced():
		half = 6
	}
	return max(half, float64(len([]rune(letter)))+3)
}

// braced tells whether there are struts: loads are then narrow.
func (l *layout) braced() bool {
	for k := range l.Holds {
		if l.Holds[k].Kind == Strut {
			return true
		}
	}
	return false
}

// wheelLetters puts the masses of a body that is a pulley: the load below it, its own
// beside it.
func (l *layout) wheelLetters(i int) {
	letters := l.Objects[i].Letters
	if len(letters) == 0 {
		return
	}
	at, thing := l.at[i], l.objectThing(i)
	if len(letters) > 1 {
		l.loads(i, at.plus(vec{0, wheelRadius}), 1, letters[:1])
	}
	l.note(thing, letters[len(letters)-1], at.plus(vec{wheelRadius, 0}), vec{1, 0}, TagBody)
}

// name puts a body's name beside it.
func (l *layout) name(i int) {
	o := &l.Objects[i]
	if o.Name == "" || o.Form == Wheel && len([]rune(o.Name)) > 3 {
		return
	}
	at, half := l.at[i], l.half(i)
	dir, thing := vec{l.outerSide(i), 0}, l.objectThing(i)
	var kin []int
	switch {
	case o.Form == Eye && len(o.Letters) > 0:
		half, thing = vec{l.loadHalf(o.Letters[0]), 0}, thingLoad+i
		at = at.plus(vec{0, float64(4*l.drop + 8)})
	case o.Form == Eye:
		dir = vec{0.7, 0.7}
		for k := range l.Holds { // an eye is no more than where its ropes meet
			if l.Holds[k].On == i || l.Holds[k].To == i {
				kin = append(kin, l.holdThing(k))
			}
		}
	case o.Form == Drum:
		l.inBox(l.objectThing(i), at.plus(vec{l.asideOfLine(i), 0}), o.Name)
		return
	case !l.flat(i):
		dir = heading(l.stance(i)).left()
	}
	edge := at.plus(vec{dir.x * (half.x + 2), dir.y * (half.y + 3)})
	l.labels = append(l.labels, label{rank: rankBody, text: []rune(o.Name), at: edge, dir: dir, look: look{tag: TagBody}, thing: thing, kin: kin})
}

// outerSide is the side of an object that looks away from the others: right for one alone.
func (l *layout) outerSide(i int) float64 {
	for k := range l.at {
		if k != i && l.at[k].x > l.at[i].x+2 && math.Abs(l.at[k].y-l.at[i].y) < 24 {
			return -1
		}
	}
	return 1
}

// groundLine draws the ground if something reaches it.
func (l *layout) groundLine() {
	if !l.ground {
		return
	}
	from, to := max(l.grounds[0], 2.5), min(l.grounds[1], l.width()-2.5)
	l.rule(thingGround, TagSurface, vec{from, l.groundY()}, vec{to, l.groundY()})
}

// reachGround notes that something reaches the ground at a place.
func (l *layout) reachGround(thing int, from, to float64) {
	if !l.ground {
		l.grounds = [2]float64{from, to}
	}
	l.ground = true
	l.grounds = [2]float64{min(l.grounds[0], from), max(l.grounds[1], to)}
	l.join(thing, thingGround)
}
