package picture

import (
	"math"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// View says what a drawing of a problem shows.
type View struct {
	Stage checker.Stage
	Item  string // the component, body or unknown in hand; may be empty
	Body  string // one body alone; "" for all of them
	// Solved draws the closed polygon of the body's forces, to scale.
	Solved bool
	// Listed are the forces of a diagram that is being made. They stand in the
	// place of the problem's own at the stage diagram.
	Listed []Listed
}

// Listed is a force as a student lists it, whether it acts or not. Direction is
// in degrees, anticlockwise from the room's horizontal.
type Listed struct {
	Name      string
	Kind      statics.Kind
	Direction float64
	InHand    bool
}

// OfProblem makes the scene of a solved problem. Colours are the places of the
// forces' names in the order of the file, so that a force has one colour
// everywhere. Until the problem is solved, a force whose angle has to be found is
// sketched in the middle of its side, so that nothing can be measured off.
func OfProblem(ref *checker.Reference, v View) Scene {
	d := &drawer{ref: ref, view: v, colours: Colours(ref)}
	d.scene.Above = ref.System.Words.Above
	for i := range ref.Bodies {
		if b := &ref.Bodies[i]; v.Body == "" || b.Name == v.Body {
			d.body(b)
		}
	}
	switch {
	case v.Solved:
		d.scene.Polygon = PolygonOf(d.scene, 0)
	case v.Stage == checker.Components:
		d.triangle()
	case v.Stage == checker.XSum:
		d.chain(statics.X)
	case v.Stage == checker.YSum:
		d.chain(statics.Y)
	}
	return d.scene
}

// Colours gives each force's name its colour: its place among the names.
func Colours(ref *checker.Reference) map[string]int {
	colours := map[string]int{}
	for _, b := range ref.Bodies {
		for _, f := range b.Forces {
			if _, known := colours[f.Name]; !known {
				colours[f.Name] = len(colours)
			}
		}
	}
	return colours
}

// drawer holds the scene while it grows. forces keeps which force of the system
// each arrow is.
type drawer struct {
	ref     *checker.Reference
	view    View
	colours map[string]int
	scene   Scene
	bodies  []*statics.Body
	forces  []*statics.Force
}

func (d *drawer) body(b *statics.Body) {
	tilt := d.ref.Tilt(b) / quantity.Degree
	at := len(d.scene.Bodies)
	drawn := Body{Name: b.Name, Shape: shapeOf(b), Tilt: tilt}
	for i := range b.Forces {
		f := &b.Forces[i]
		arrow := d.arrow(b, f)
		arrow.On = at
		if f.Kind == statics.Normal {
			drawn.Surfaces = append(drawn.Surfaces, Surface{Normal: arrow.Direction, Angle: letterOf(b.Tilt)})
			arrow.Inward = math.Sin(arrow.Direction*quantity.Degree) < -0.5
		}
		if d.listing() {
			continue
		}
		d.arc(f, len(d.scene.Forces), axisAngle(tilt, Axis(f.From), arrow.Direction))
		d.scene.Forces = append(d.scene.Forces, arrow)
		d.forces = append(d.forces, f)
	}
	if d.listing() {
		d.listed(at)
	}
	d.scene.Bodies = append(d.scene.Bodies, drawn)
	d.bodies = append(d.bodies, b)
}

// listing reports whether the student still has to say which forces act.
func (d *drawer) listing() bool { return d.view.Stage == checker.Diagram && !d.view.Solved }

// listed draws the forces that the student has named so far.
func (d *drawer) listed(on int) {
	colour := len(d.colours)
	for _, l := range d.view.Listed {
		kind, _ := KindOf(string(l.Kind))
		arrow := Force{
			On: on, Name: expr.Set(l.Name), Kind: kind, Direction: l.Direction,
			Sketch: true, Inward: l.Kind == statics.Push, InHand: l.InHand,
		}
		known := false
		if arrow.Colour, known = d.colours[l.Name]; !known {
			arrow.Colour = colour
			colour++
		}
		d.scene.Forces = append(d.scene.Forces, arrow)
	}
}

func letterOf(n *expr.Node) string {
	if n == nil || n.Op != expr.Name {
		return ""
	}
	return expr.Glyph(n.Name)
}

// shapeOf guesses what a body looks like from the forces on it: what touches a
// surface is a block, what only ropes hold is a ring.
func shapeOf(b *statics.Body) Shape {
	weight := false
	for _, f := range b.Forces {
		switch f.Kind {
		case statics.Normal, statics.Friction:
			return Block
		case statics.Weight:
			weight = true
		}
	}
	if weight && len(b.Forces) == 2 {
		return Block
	}
	return Ring
}

func (d *drawer) arrow(b *statics.Body, f *statics.Force) Force {
	x, y := d.ref.Room(b, f)
	kind, _ := KindOf(string(f.Kind))
	a := Force{
		Name: expr.Set(f.Name), Kind: kind, Colour: d.colours[f.Name],
		Direction: math.Atan2(y, x) / quantity.Degree,
		Inward:    f.Kind == statics.Push,
		InHand:    d.inHand(b, f),
	}
	if !d.view.Solved && d.angleOpen(f) {
		a.Sketch = true
		a.Direction = middle(x, y, d.ref.Tilt(b))
	}
	if d.view.Solved {
		a.Size, _ = d.ref.Value(f.Name)
	}
	return a
}

// middle is the direction half-way between the axes of a body, turned by tilt,
// on the side to which (x, y) points, so that the drawing does not give away an angle
// that is asked for; along an axis it is that axis. Degrees.
func middle(x, y, tilt float64) float64 {
	eighth := math.Pi / 4
	own := math.Atan2(y, x) - tilt
	quarter := math.Floor(own / (2 * eighth))
	if along := math.Round(own / (2 * eighth)); math.Abs(own-along*2*eighth) < 1e-6 {
		return (along*2*eighth + tilt) / quantity.Degree
	}
	return ((2*quarter+1)*eighth + tilt) / quantity.Degree
}

// angleOpen reports whether a force's angle has to be found.
func (d *drawer) angleOpen(f *statics.Force) bool {
	for _, n := range []*expr.Node{f.Angle, f.Direction} {
		if n == nil {
			continue
		}
		for _, name := range n.Names() {
			if v, ok := d.ref.Variable(name); ok && v.Role == statics.IsUnknown {
				return true
			}
		}
	}
	return false
}

func (d *drawer) inHand(b *statics.Body, f *statics.Force) bool {
	if d.view.Stage != checker.Components {
		return false
	}
	for _, axis := range []string{"x", "y"} {
		if d.view.Item == f.Name+axis || d.view.Item == b.Name+"."+f.Name+axis {
			return true
		}
	}
	return false
}

// arc adds the angle of a force, which is of a size in degrees.
func (d *drawer) arc(f *statics.Force, at int, size float64) {
	switch {
	case f.Direction != nil && f.Direction.Op == expr.Name:
		d.scene.Angles = append(d.scene.Angles, Angle{Force: at, Full: true, Name: expr.Glyph(f.Direction.Name)})
	case f.Angle != nil && f.Slanted():
		d.scene.Angles = append(d.scene.Angles, Angle{Force: at, From: Axis(f.From), Name: d.angleName(f, size)})
	}
}

// angleName labels an angle by its letter or number. One that is worked out from
// lengths has neither until it has been found: nothing at first, then its size.
func (d *drawer) angleName(f *statics.Force, size float64) string {
	switch {
	case !isWorkedOut(f.Angle):
		return d.ref.Print(f.Angle)
	case !d.view.Solved:
		return ""
	}
	return degreesText(size) + "°"
}

// isWorkedOut reports whether an angle comes from lengths by a function: it has no
// letter, and the function would give the way to it away.
func isWorkedOut(angle *expr.Node) bool {
	found := false
	angle.Walk(func(n *expr.Node) { found = found || n.Op == expr.Call })
	return found
}

// triangle shows the force in hand with its two legs.
func (d *drawer) triangle() {
	for i, f := range d.forces {
		if d.scene.Forces[i].InHand && f.Slanted() {
			name := expr.Set(f.Name)
			d.scene.Triangle = &Triangle{Force: i, X: name + "x", Y: name + "y"}
		}
	}
}

// chain lays the parts of one body's sum head to tail.
func (d *drawer) chain(axis statics.Axis) {
	for i, b := range d.bodies {
		if d.view.Item != "" && b.Name != d.view.Item && len(d.bodies) > 1 {
			continue
		}
		c := &Chain{Axis: Axis(axis), Tilt: d.scene.Bodies[i].Tilt, Body: b.Name}
		if b.XLeft && axis == statics.X {
			c.Positive = "left"
		}
		for j := range b.Forces {
			f := &b.Forces[j]
			factor := f.Factor(axis)
			if factor.Sign == 0 {
				continue
			}
			leg := Leg{Label: expr.Set(f.Name), Colour: d.colours[f.Name], Negative: factor.Sign < 0}
			if factor.Function != "" {
				leg.Label += axis.String()
				leg.Dashed = true
				leg.Negative = d.ref.Negative(f, axis)
			}
			c.Legs = append(c.Legs, leg)
		}
		d.scene.Chain = c
		return
	}
}
