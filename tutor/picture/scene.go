package picture

// Scene is everything that one drawing shows. The zero value draws nothing.
// Angles are degrees, anticlockwise from the room's horizontal, unless
// said otherwise. Where several of figure (Bodies with Forces), Chain, Polygon
// and Plot are filled, they share the room, and where that is too small the last
// of them in this order has it.
//
// A scene is never modified. What cannot be drawn (a direction that is no
// number, a force on a body that does not exist) is left out.
type Scene struct {
	Title    string // one line, for the reader of an SVG
	Bodies   []Body
	Links    []Link
	Forces   []Force
	Angles   []Angle
	Triangle *Triangle
	Chain    *Chain
	Polygon  *Polygon
	Plot     *Plot
	Setup    *Setup // what the problem is about, before its forces
	Above    bool   // seen from above: there is no up and down
}

// Point is a place; what its unit is stands with the field.
type Point struct{ X, Y float64 }

// Shape is how a body looks.
type Shape int

const (
	Knot   Shape = iota // a dot, its forces meet in it
	Ring                // a small open circle
	Block               // a rectangle, turned with the surface it lies on
	Pulley              // a wheel with its axle
	Anchor              // a fixed support, hatched on the side away from its ropes
)

// Body is what forces act on, or what ropes are tied to.
type Body struct {
	Name  string // shown beside it; may be empty
	Shape Shape
	// At is where it stands, Y upwards, in lengths of the longest arrow. Only
	// the distances between bodies count. If all bodies of a scene stand at the
	// same place, they are set apart as their common forces suggest.
	At Point
	// Size is half its width in lengths of the longest arrow; 0 is the usual one.
	Size float64
	// Tilt turns its axes.
	Tilt float64
	// Bare leaves the axes out.
	Bare     bool
	Surfaces []Surface
}

// Surface is a plane that a body touches.
type Surface struct {
	Normal float64 // the direction out of the surface, towards the body
	Angle  string  // a letter for the angle between the surface and the horizontal
}

// LinkKind is what holds two bodies together.
type LinkKind int

const (
	Rope LinkKind = iota
	Coil          // a spring
	Rod           // a strut
)

// Link is a rope, a spring or a strut between two bodies. A rope that ends at
// a pulley touches its rim on the upper side.
type Link struct {
	From, To int // indices of Scene.Bodies
	Kind     LinkKind
}

// Kind is what makes a force.
type Kind int

const (
	Tension Kind = iota
	Weight
	Normal
	Friction
	Spring
	Push
	Pull
	Strut
)

// KindOf finds the kind with this name ("tension", "normal", …).
func KindOf(name string) (Kind, bool) {
	for i, k := range kinds() {
		if k.name == name {
			return Kind(i), true
		}
	}
	return 0, false
}

// Force is one arrow.
type Force struct {
	On     int    // index of Scene.Bodies
	Name   string // as shown, "T₁"
	Note   string // shown after the name where there is room, "= 20.2 N"
	Kind   Kind
	Colour int // handed through as ForceTag(Colour)
	// Direction is where the force points, whichever side its arrow lies on.
	Direction float64
	// Sketch says that the direction is only roughly known: it is drawn, but
	// no number is told.
	Sketch bool
	// Inward draws the arrow outside the body with its head at the body.
	Inward bool
	Dashed bool
	// Size is the true size in any unit. Arrows are drawn to scale where every
	// force has one; 0 is unknown, and then all arrows are equally long, but for
	// neighbours that would cover each other.
	Size float64
	// InHand marks the force that the student is working on.
	InHand bool
}

// Axis is one of the two axes of a body.
type Axis int

const (
	AxisX Axis = iota
	AxisY
)

// Angle is an arc with its letter between an axis and a force.
type Angle struct {
	Force  int  // index of Scene.Forces
	From   Axis // measured from the half of this axis that is nearer to the arrow
	Full   bool // measured anticlockwise from +x, all the way
	Name   string
	InHand bool
}

// Triangle shows one force with its two legs along the axes of its body.
type Triangle struct {
	Force int // index of Scene.Forces
	X, Y  string
}

// Chain shows the parts of a sum, laid head to tail along an axis: those along
// the axis on one lane, those against it on another.
type Chain struct {
	Axis Axis
	Tilt float64 // of the axes
	Body string  // whose sum it is, for the sentence; may be empty
	// Positive says which way the axis points, where its direction does not.
	Positive string
	Legs     []Leg
}

// Leg is one term of a sum.
type Leg struct {
	Label    string
	Colour   int
	Negative bool // it points against the axis
	Dashed   bool // a part of a force, not a whole one
	// Size is the true size. Where one leg has none, those of each direction
	// are drawn equally long, so that the chain closes.
	Size   float64
	InHand bool
}

// Polygon shows forces head to tail, to scale, in the order given.
type Polygon struct {
	Body  string // whose forces they are, for the sentence; may be empty
	Sides []Side
}

// Side is one force of a polygon.
type Side struct {
	Label     string
	Colour    int
	Direction float64
	Size      float64
	InHand    bool
}

// Plot shows how sizes of forces depend on an angle or a mass.
type Plot struct {
	X, Y     Scale
	Curves   []Curve
	Marked   bool    // whether At is shown
	At       float64 // the present value on the x scale
	Measured []Measured
}

// Scale is what is measured along one side of a plot.
type Scale struct{ Name, Unit string }

// Curve is one line of a plot. Points stand in the order of X; a point that is
// no number makes a gap.
type Curve struct {
	Name   string
	Colour int
	Points []Point
	InHand bool
}

// Measured is a point with the half-widths of its uncertainty bars.
type Measured struct {
	Name   string // what was measured, for the sentence
	Colour int
	At, U  Point
}

// at gives the value of a curve, straight between its points.
func (c *Curve) at(x float64) (float64, bool) {
	for i := 1; i < len(c.Points); i++ {
		a, b := c.Points[i-1], c.Points[i]
		if plotted(a) && plotted(b) && a.X <= x && x <= b.X {
			if b.X == a.X {
				return a.Y, true
			}
			return a.Y + (b.Y-a.Y)*(x-a.X)/(b.X-a.X), true
		}
	}
	return 0, false
}

// around is the sum of all sides.
func (p *Polygon) around() float64 {
	sum := 0.0
	for _, s := range p.Sides {
		sum += s.Size
	}
	return sum
}
