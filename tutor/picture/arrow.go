package picture

// arrows draws all forces, what is in hand last and so on top.
func (f *figure) arrows() {
	// What is in hand comes last, and so lies over the rest.
	for _, hand := range []bool{false, true} {
		for i := range f.arms {
			force := &f.scene.Forces[i]
			if f.drawable(i) && force.InHand == hand {
				s := shaft{look: look{tag: ForceTag(force.Colour), strong: hand}, coil: force.Kind == Spring && !f.onCoil(i)}
				if force.Dashed {
					s.dash = dashed
				}
				f.arrow(s, f.arms[i].tail, f.arms[i].tip)
			}
		}
	}
}

// onCoil tells whether the spring itself is drawn where a force lies; the arrow
// on it is then a plain one.
func (f *figure) onCoil(i int) bool {
	on := f.scene.Forces[i].On
	for _, l := range f.scene.Links {
		if l.Kind != Coil || l.From != on && l.To != on {
			continue
		}
		other := l.From + l.To - on
		// The coil between the two bodies is already the spring that
		// pulls; a second one along the arrow would be another spring.
		if f.between(on, other).unit().dot(f.arms[i].out) > 0.95 {
			return true
		}
	}
	return false
}

// names asks for the letters of the figure.
func (f *figure) names() {
	for i := range f.arms {
		if force := &f.scene.Forces[i]; f.drawable(i) {
			l := label{rank: rankForce, at: f.arms[i].far, dir: f.arms[i].out, area: f.area,
				look: look{tag: ForceTag(force.Colour), strong: force.InHand}}
			f.note(l, joined(force.Name, force.Note), force.Name)
		}
	}
	f.legNames()
	f.bodyNames()
	f.axisLetters()
}

func joined(name, note string) string {
	if note == "" {
		return name
	}
	return name + " " + note
}

// bodyNames puts each name where no arrow leaves the body.
func (f *figure) bodyNames() {
	for i := range f.scene.Bodies {
		b := &f.scene.Bodies[i]
		// Not zero, because balanced arrows add up to nothing and the name still needs a side.
		away := vec{0.01, 0.01}
		for k := range f.arms {
			if f.scene.Forces[k].On == i {
				away = away.minus(f.arms[k].out)
			}
		}
		f.note(label{rank: rankBody, at: f.middle(i), dir: away.unit(), look: look{tag: TagBody}, area: f.area}, b.Name, "")
	}
}

// legs is the triangle of a force: its corner lies where the leg along x ends.
func (f *figure) legs() (from, corner, to vec) {
	t := f.scene.Triangle
	arm, force := &f.arms[t.Force], &f.scene.Forces[t.Force]
	x := heading(f.scene.Bodies[force.On].Tilt)
	from, to = arm.centre, arm.tip
	if force.Inward {
		// An arrow drawn towards its body ends there, and its triangle lies outside with it.
		from, to = arm.tail, arm.centre
	}
	return from, from.along(x, to.minus(from).dot(x)), to
}

// triangle draws the legs of the force in question, broken, because they are
// parts of it and no further forces.
func (f *figure) triangle() {
	t := f.scene.Triangle
	if t == nil {
		return
	}
	from, corner, to := f.legs()
	l := look{tag: ForceTag(f.scene.Forces[t.Force].Colour)}
	f.line(l, dashed, corner, f.outside(t.Force, from, corner))
	f.line(l, dashed, corner, to)
	back, up := from.minus(corner), to.minus(corner)
	const square = 3.0
	// In a narrow triangle the sign of the right angle would fill it.
	if back.len() > 3*square && up.len() > 3*square {
		a, b := back.unit().times(square), up.unit().times(square)
		f.line(look{tag: TagAngle}, solid, corner.plus(a), corner.plus(a).plus(b), corner.plus(b))
	}
}

// outside is where a leg that starts in the middle of a body comes out of it.
func (f *figure) outside(force int, from, corner vec) vec {
	way := corner.minus(from)
	if from != f.arms[force].centre {
		return from
	}
	edge := f.dots(f.edge(&f.scene.Bodies[f.scene.Forces[force].On], way.unit()))
	return from.along(way.unit(), min(edge, way.len()))
}

// legNames asks for the letters of the legs, outside the triangle.
func (f *figure) legNames() {
	t := f.scene.Triangle
	if t == nil {
		return
	}
	from, corner, to := f.legs()
	l := label{rank: rankLeg, look: look{tag: ForceTag(f.scene.Forces[t.Force].Colour)}, area: f.area}
	inside := from.plus(to).times(0.5)
	for _, leg := range []struct {
		end  vec
		text string
	}{{from, t.X}, {to, t.Y}} {
		// A force along an axis has a component of nothing.
		if leg.end.minus(corner).len() < 1 {
			continue
		}
		l.at = leg.end.plus(corner).times(0.5)
		l.dir = l.at.minus(inside).unit()
		f.note(l, leg.text, "")
	}
}

// The head of an arrow, in dots: long enough to be told from the shaft at a
// glance, short enough for an arrow of seven dots.
const (
	headLength = 5.5
	headWidth  = 2.6
	// On paper lines are fine, and a smaller head is told from the shaft.
	fineHead = 0.62
)

// shaft is how an arrow's line is drawn.
type shaft struct {
	look
	dash dash
	coil bool
}

// inHead is how far a line runs into its head: under the wings where there are
// dots; up to the tip where the head is one sign.
func (d *drawing) inHead(long float64) float64 {
	switch {
	case d.fine:
		return min(2, long)
	case d.ascii:
		return long
	}
	return max(long-shortOfTip, 0)
}

// shortOfTip is how far before the tip of an arrow its line ends where the head is one
// character, so that no dot is seen beyond it.
const shortOfTip = 1.2

// arrow draws from tail to tip. The line ends inside the head, so that the tip
// stays sharp.
func (d *drawing) arrow(s shaft, tail, tip vec) {
	way := tip.minus(tail)
	length, ahead := way.len(), way.unit()
	// An arrow shorter than its head is a small head.
	long := min(headLength, length)
	if d.fine {
		long = min(fineHead*headLength, length)
	}
	wide := headWidth * long / headLength
	if s.strong {
		wide += 0.6
	}
	neck := tip.along(ahead, -long)
	// A shorter spring has no room for turns.
	if s.coil && length > 3*headLength {
		d.spring(s.look, tail, neck)
	} else {
		d.line(s.look, s.dash, tail, neck.along(ahead, d.inHead(long)))
	}
	side := ahead.left().times(wide)
	d.add(stroke{look: s.look, form: wedge, head: true, points: d.store([]vec{tip, neck.plus(side), neck.minus(side)})})
}
