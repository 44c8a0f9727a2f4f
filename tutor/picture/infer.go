package picture

import (
	"math"
	"slices"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// onlyBody is the key in a figure of the one body without a name.
const onlyBody = "body"

// What is asked for is drawn at these angles, whatever the solution is.
const (
	askedRope   = 45.0
	askedSlope  = 30.0
	levelEnough = 12.0 // what leaves within this of the horizontal ends at a wall
)

// NewSetup works out what a problem is about from its forces and from the figure of its
// file, which maps a body, a force ("T1", "pulley.TR") or "view" to a word. It is nil
// where the file wants no picture.
func NewSetup(ref *checker.Reference, figure map[string]string) *Setup {
	if figure["view"] == "none" {
		return nil
	}
	in := &inferring{ref: ref, figure: figure}
	in.setup.Above = ref.System.Words.Above
	for i := range ref.Bodies {
		in.object(&ref.Bodies[i])
	}
	for i := range ref.Bodies {
		in.faces(i)
	}
	for i := range ref.Bodies {
		in.holds(i)
	}
	for i := range ref.Bodies {
		in.form(i)
	}
	// Last: where a rope goes depends on the form and the faces of its body.
	in.ends()
	return &in.setup
}

// inferring is a setup while it is worked out.
type inferring struct {
	ref    *checker.Reference
	figure map[string]string
	setup  Setup
	used   map[*statics.Force]bool // told as the other end of a hold
}

func (in *inferring) body(i int) *statics.Body { return &in.ref.Bodies[i] }

// word is what the file says for the picture about a force.
func (in *inferring) word(b *statics.Body, f *statics.Force) string {
	if w := in.figure[b.Name+"."+f.Name]; w != "" {
		return w
	}
	return in.figure[f.Name]
}

func (in *inferring) object(b *statics.Body) {
	o := Object{Name: b.Name, Tilt: in.tilt(b), Noun: in.ref.Words.Body}
	key := b.Name
	if key == "" {
		key = onlyBody
	}
	switch in.figure[key] {
	case "round":
		o.Form = Drum
	case "pulley":
		o.Form = Wheel
	}
	for i := range b.Forces {
		if f := &b.Forces[i]; f.Kind == statics.Weight {
			o.Letters = append(o.Letters, in.weighed(f)...)
		}
	}
	in.setup.Objects = append(in.setup.Objects, o)
}

// weighed lists the letters of a weight: its masses, or the weight's own letter; one
// empty letter where it is a number.
func (in *inferring) weighed(f *statics.Force) []string {
	letters := in.letters(f.SizeNode(), quantity.Mass)
	if len(letters) == 0 {
		letters = in.letters(f.SizeNode(), quantity.Force)
	}
	if len(letters) == 0 {
		letters = []string{""}
	}
	return letters
}

// tilt is how a body's axes are drawn.
func (in *inferring) tilt(b *statics.Body) float64 {
	tilt := in.ref.Tilt(b) / quantity.Degree
	if in.unknown(b.Tilt) {
		in.setup.NotTrue = true
		// The true tilt would give the answer away.
		return math.Copysign(askedSlope, tilt)
	}
	return tilt
}

// unknown tells whether an expression holds a letter that has to be found.
func (in *inferring) unknown(n *expr.Node) bool {
	if n == nil {
		return false
	}
	for _, name := range n.Names() {
		if v, ok := in.ref.Variable(name); ok && v.Role == statics.IsUnknown {
			return true
		}
	}
	return false
}

// letters lists the letters of an expression that measure one of some dimensions.
func (in *inferring) letters(n *expr.Node, dims ...quantity.Dimension) []string {
	var found []string
	for _, name := range n.Names() {
		if v, ok := in.ref.Variable(name); ok && slices.Contains(dims, v.Dim) && v.Role != statics.IsDerived {
			found = append(found, expr.Set(name))
		}
	}
	return found
}

// direction is where a force is drawn, and whether that is not its true direction.
func (in *inferring) direction(i int, f *statics.Force) (deg float64, asked bool) {
	b := in.body(i)
	x, y := in.ref.Room(b, f)
	own := math.Atan2(y, x)/quantity.Degree - in.ref.Tilt(b)/quantity.Degree
	if in.unknown(f.Angle) || in.unknown(f.Direction) {
		// Within its own quarter, so that the sketch leans to the true side and no further.
		in.setup.NotTrue = true
		return in.setup.Objects[i].Tilt + askedRope + 90*math.Floor(own/90), true
	}
	return in.setup.Objects[i].Tilt + own, false
}

// faces finds what a body touches.
func (in *inferring) faces(i int) {
	b, o := in.body(i), &in.setup.Objects[i]
	for k := range b.Forces {
		f := &b.Forces[k]
		if f.Kind != statics.Normal {
			continue
		}
		deg, asked := in.direction(i, f)
		face := Face{Normal: deg, On: in.partner(i, f), Asked: asked || in.unknown(b.Tilt), Rough: in.rough(b, f.Name)}
		switch slope := b.Tilt; {
		case face.On >= 0 && f.Slanted() && f.Angle != nil: // the line of centres
			_, face.Measure = in.angle(f.Angle, f.From)
		// A normal along the axes of a tilted body stands on a slope of that tilt.
		case slope != nil && !f.Slanted():
			face.Angle, face.Measure = in.angle(slope, statics.X)
		case f.Slanted() && f.Angle != nil:
			face.Angle, face.Measure = in.angle(f.Angle, f.From.Other())
		}
		o.Faces = append(o.Faces, face)
	}
}

// partner is the other body that a normal force acts on, or -1.
func (in *inferring) partner(i int, f *statics.Force) int {
	for k := range in.ref.Bodies {
		if k == i {
			continue
		}
		if g, ok := in.body(k).Force(f.Name); ok && g.Kind == statics.Normal {
			return k
		}
	}
	return -1
}

// rough is the letter of the coefficient of friction at a surface.
func (in *inferring) rough(b *statics.Body, normal string) string {
	for i := range b.Forces {
		f := &b.Forces[i]
		if f.Kind != statics.Friction || f.Size == nil || !slices.Contains(f.Size.Names(), normal) {
			continue
		}
		for _, name := range f.Size.Names() {
			if v, ok := in.ref.Variable(name); ok && v.Dim == quantity.None && v.Role != statics.IsDerived {
				return expr.Set(name)
			}
		}
	}
	return ""
}

// angle is how an angle from an axis is marked: by its letter, or by the lengths
// that it comes from.
func (in *inferring) angle(n *expr.Node, from statics.Axis) (string, Measure) {
	// The minus only says to which side.
	for n.Op == expr.Neg {
		n = n.Args[0]
	}
	if n.Op != expr.Call {
		if isWorkedOut(n) {
			return "", Measure{}
		}
		return in.ref.Print(n), Measure{}
	}
	ratio := n.Args[0]
	if ratio.Op != expr.Div || ratio.Args[0].Op != expr.Name || ratio.Args[1].Op != expr.Name {
		return "", Measure{}
	}
	over, under := expr.Set(ratio.Args[0].Name), expr.Set(ratio.Args[1].Name)
	var m Measure
	put := func(beside bool, letter string) { // beside the axis, or across it
		if beside == (from == statics.X) {
			m.Level = letter
		} else {
			m.Upright = letter
		}
	}
	switch n.Name {
	case "asin":
		put(false, over)
		m.Along = under
	case "acos":
		put(true, over)
		m.Along = under
	case "atan":
		put(false, over)
		put(true, under)
	}
	return "", m
}

// holds finds the ropes, springs, struts and poles at a body.
func (in *inferring) holds(i int) {
	if in.used == nil {
		in.used = map[*statics.Force]bool{}
	}
	b := in.body(i)
	for k := range b.Forces {
		f := &b.Forces[k]
		kind, _ := KindOf(string(f.Kind))
		switch f.Kind {
		case statics.Weight, statics.Normal, statics.Friction:
			continue
		}
		if in.used[f] {
			continue
		}
		h := Hold{Kind: kind, Forces: []string{f.Name}, By: in.ref.Words.ByOn(b.Name, f.Name), On: i, To: -1, Count: in.count(f)}
		h.Direction, h.Asked = in.direction(i, f)
		in.mark(i, f, &h)
		in.join(i, f, &h)
		if f.Kind == statics.Pull && in.setup.Objects[i].into(heading(h.Direction)) {
			h.Kind = Push // a rope would lead into the surface: a pole from behind does the same
		}
		in.spoken(b, f, &h)
		in.setup.Holds = append(in.setup.Holds, h)
	}
}

// mark notes the letter of a hold's angle and where that is measured from.
func (in *inferring) mark(i int, f *statics.Force, h *Hold) {
	tilt := in.setup.Objects[i].Tilt
	switch {
	case f.Direction != nil:
		h.Angle, h.From, h.Full = in.ref.Print(f.Direction), tilt, true
	case f.Slanted() && f.Angle != nil:
		h.Angle, h.Measure = in.angle(f.Angle, f.From)
		h.From = tilt
		if f.From == statics.Y {
			h.From += 90
		}
		if math.Abs(turn(h.From, h.Direction)) > 90 {
			h.From += 180
		}
	}
}

// count is how many ropes or springs a force stands for: "2*T", "4*k*s".
func (in *inferring) count(f *statics.Force) int {
	n := 1
	if f.Size == nil || f.Kind == statics.Weight {
		return n
	}
	f.Size.Walk(func(m *expr.Node) {
		// “2 T” is two ropes of one pull; 0.5 T or 40 T are none.
		if m.Op == expr.Number && m.Unit == "" && m.Num.Value == math.Trunc(m.Num.Value) && m.Num.Value > 1 && m.Num.Value <= 6 {
			n = int(m.Num.Value)
		}
	})
	return n
}

// pullOf is the letter that two ends of one rope share.
func pullOf(f *statics.Force) string {
	if f.Size == nil {
		return f.Name
	}
	names := f.Size.Names()
	if len(names) == 1 {
		return names[0]
	}
	return f.Name
}

// join finds the other end of a rope, spring or strut on another body: opposite on
// one line if there is one, else over a fixed pulley.
func (in *inferring) join(i int, f *statics.Force, h *Hold) {
	if f.Kind != statics.Tension && f.Kind != statics.Spring && f.Kind != statics.Strut {
		return
	}
	var over func()
	// Bodies before this one have taken their ropes.
	for k := i + 1; k < len(in.ref.Bodies); k++ {
		for j := range in.body(k).Forces {
			g := &in.body(k).Forces[j]
			if g.Kind != f.Kind || in.used[g] || g.Name != f.Name && pullOf(g) != pullOf(f) {
				continue
			}
			if in.word(in.body(k), g) == "free" || in.word(in.body(i), f) == "free" {
				continue
			}
			back, _ := in.direction(k, g)
			take := func(end End) {
				in.used[g] = true
				h.To, h.Back, h.End = k, back, end
				h.Forces = append(h.Forces, g.Name)
			}
			// One straight rope, its ends opposite; otherwise it
			// must bend over a wheel, if no other end fits better.
			if math.Abs(turn(h.Direction+180, back)) < 1 {
				take(Joined)
				return
			}
			if over == nil && f.Kind == statics.Tension {
				over = func() { take(OverWheel) }
			}
		}
	}
	if over != nil {
		over()
	}
}

// spoken notes the letters at a hold and what the file says of it.
func (in *inferring) spoken(b *statics.Body, f *statics.Force, h *Hold) {
	word := in.word(b, f)
	h.Squeezed = word == "squeezed"
	h.Scale = word == "scale"
	known := ""
	if f.Size != nil {
		if letters := in.letters(f.Size, quantity.Force); f.Size.Op == expr.Name && len(letters) == 1 && !in.unknown(f.Size) {
			known = letters[0]
		}
	}
	switch f.Kind {
	case statics.Spring:
		if f.Size != nil {
			h.Letter = first(in.letters(f.Size, quantity.Stiffness))
		}
	default:
		h.Letter = known
	}
	if h.To >= 0 {
		return
	}
	mass := ""
	if f.Kind == statics.Tension && f.Size != nil && f.Size.Op == expr.Mul {
		mass = first(in.letters(f.Size, quantity.Mass))
	}
	switch {
	case word == "free":
		h.End = Knob
	case word == "post":
		h.End = Post
	case word == "hook":
		h.End = Beam
	case word == "wind":
		h.End = Wind
	case word == "water":
		h.End = Water
	case word == "ground":
		h.End = Ground
	case mass != "":
		h.End, h.Letter = Hanger, mass
	case f.Kind == statics.Pull, f.Kind == statics.Push, known != "" && !h.Scale && f.Kind == statics.Tension, in.setup.Above:
		h.End = Knob
	default:
		h.End = unsettled
	}
}

// unsettled is the end of a hold that depends on the others.
const unsettled End = -1

func first(list []string) string {
	if len(list) == 0 {
		return ""
	}
	return list[0]
}

// form settles what a body looks like.
func (in *inferring) form(i int) {
	o := &in.setup.Objects[i]
	if o.Form != Eye {
		return
	}
	if len(o.Faces) > 0 {
		o.Form = Box
		return
	}
	box, slanted := len(o.Letters) > 0, false
	for k := range in.setup.Holds {
		h := &in.setup.Holds[k]
		way := 0.0
		switch i {
		case h.On:
			way = h.out().degrees()
		case h.To:
			way = h.Back
		default:
			continue
		}
		// What pulls straight down holds up nothing, so the load
		// is a body and not something that hangs from a ring.
		if near(way, -90) && h.Kind != Push || h.Kind == Push && !near(h.Direction, 90) || h.End == Wind || h.End == Water {
			slanted = false
			if box {
				o.Form = Box
			}
			return
		}
		slanted = slanted || !near(way, 90, -90)
	}
	if box && !slanted {
		o.Form = Box
	}
}

// ends settles where each hold ends that ends at nothing told so far.
func (in *inferring) ends() {
	for k := range in.setup.Holds {
		// Struts first: the wall of a strut is also where the rope above it goes.
		if h := &in.setup.Holds[k]; h.Kind == Strut && h.End == unsettled && in.tied(h) {
			in.wallFor(h)
		}
	}
	for k := range in.setup.Holds {
		h := &in.setup.Holds[k]
		if h.End != unsettled {
			continue
		}
		o := &in.setup.Objects[h.On]
		out := h.out()
		rise := math.Asin(clamp(-out.y, -1, 1)) * 180 / math.Pi
		switch {
		case o.alongSlope(out.degrees()):
			h.End = OnSlope
			h.Angle = ""
		case o.toWall(out):
			h.End = Wall
		case h.Kind == Strut && rise < 0:
			h.End = Ground
		case math.Abs(rise) <= levelEnough:
			h.End = Wall
		case rise > 0:
			h.End = Beam
		default:
			h.End = Ground
		}
	}
}

// into tells whether a direction leads into what an object lies on.
func (o *Object) into(out vec) bool {
	for _, f := range o.fixed() {
		if out.dot(heading(f.Normal)) < -0.05 {
			return true
		}
	}
	return false
}

// toWall tells whether a direction leads to a wall that an object touches.
func (o *Object) toWall(out vec) bool {
	for _, f := range o.Faces {
		if f.On < 0 && f.isWall() && out.dot(heading(f.Normal)) < -0.15 {
			return true
		}
	}
	return false
}

// tied tells whether a tie goes level or up to the side from which a strut comes:
// then the strut stands on that wall, too.
func (in *inferring) tied(strut *Hold) bool {
	side := strut.out()
	for k := range in.setup.Holds {
		h := &in.setup.Holds[k]
		if h != strut && h.On == strut.On && h.Kind != Strut && h.To < 0 && h.out().x*side.x > 1e-6 && h.out().y < 0.1 {
			return h.End == unsettled || h.End == Wall || h.End == Beam
		}
	}
	return false
}

// wallFor lets a strut and the ties to its side end at one wall.
func (in *inferring) wallFor(strut *Hold) {
	strut.End = Wall
	for k := range in.setup.Holds {
		h := &in.setup.Holds[k]
		if h.On == strut.On && h.End == unsettled && h.out().x*strut.out().x > 1e-6 {
			h.End = Wall
		}
	}
}
