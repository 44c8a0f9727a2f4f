package picture

import "math"

// Setup is the thing that a problem is about before any force is drawn: bodies,
// what holds them, what they lie on. It has letters and no numbers, and nothing
// that would tell which forces act. Directions are degrees, anticlockwise
// from the room's horizontal.
//
// setup.go and infer.go know what is there, setuplayout.go where it goes on a canvas
// (holds.go for ropes and poles, faces.go for what bodies lie on), search.go which
// of many places is best, describe.go how it is said.
type Setup struct {
	Above bool // seen from above: there is no up and down
	// NotTrue says that an angle that is asked for is drawn at another size.
	NotTrue bool
	Objects []Object
	Holds   []Hold
}

// Form is what an object of a setup looks like.
type Form int

const (
	Eye   Form = iota // where ropes meet; its loads hang below
	Box               // a block or a load
	Drum              // a circle that touches its surfaces
	Wheel             // a pulley that is a body of its own
)

// Object is a body of the problem.
type Object struct {
	Name    string // as in the file; "" for the only one
	Noun    string // what it is, "lantern"; may be empty
	Form    Form
	Letters []string // of its masses or weights; in the box, else in the loads below
	Tilt    float64  // of the box
	Faces   []Face
}

// Face is a surface that an object touches.
type Face struct {
	Normal float64 // from the surface to the object
	On     int     // the object that has the surface; -1 for what is fixed
	Angle  string  // the letter of its slope
	Rough  string  // the letter of its coefficient of friction
	Asked  bool    // its slope is not drawn true
	Measure
}

// Measure is the lengths that give a direction, by their letters.
type Measure struct{ Level, Upright, Along string }

// End is what a hold ends at.
type End int

const (
	Beam      End = iota // hatching above
	Wall                 // hatching at the side
	Ground               // the ground
	Post                 // a post
	Knob                 // somebody or something pulls here
	OnSlope              // a post on the slope that the object lies on
	Hanger               // over a fixed pulley to a mass of its own
	OverWheel            // over a fixed pulley to another object
	Joined               // another object
	Wind                 // waves that push from behind
	Water                // a water line above the body
)

// Hold is a rope, spring, strut or pole at an object.
type Hold struct {
	Kind   Kind
	Forces []string // the forces that it exerts, as the file names them
	By     string   // what the file calls it; may be empty
	On, To int      // objects; To is -1 where it ends at none
	// Direction is that of its force on On, Back that on To.
	Direction, Back float64
	End             End
	Count           int    // how many side by side; at least 1
	Letter          string // of a spring's stiffness, of a known force, of a hanger's mass
	Angle           string // the letter of its angle, marked at On
	From            float64
	Full, Asked     bool // counted anticlockwise from From; not drawn true
	Squeezed, Scale bool // of a spring; a spring scale in a rope
	Measure
}

// inward tells whether a hold comes from behind: its line runs against its force.
func (h *Hold) inward() bool { return h.Kind == Push || h.Kind == Strut || h.Squeezed }

// out is the direction in which a hold leaves its object.
func (h *Hold) out() vec {
	if h.inward() {
		return heading(h.Direction + 180)
	}
	return heading(h.Direction)
}

// fixed lists the faces of an object that belong to no other object.
func (o *Object) fixed() []Face {
	var faces []Face
	for _, f := range o.Faces {
		if f.On < 0 {
			faces = append(faces, f)
		}
	}
	return faces
}

// rise is how far a surface rises to the right, in degrees within ±90; 90 for a
// wall on either side, 180 for a ceiling.
func (f *Face) rise() float64 { return turn(90, f.Normal) }

func (f *Face) isFloor() bool   { return near(f.rise(), 0) }
func (f *Face) isCeiling() bool { return near(f.Normal, -90) }
func (f *Face) isWall() bool    { return near(f.Normal, 0, 180) }
func (f *Face) isSlope() bool   { return !f.isFloor() && !f.isCeiling() && !f.isWall() }

// alongSlope tells whether a direction lies along a slope that an object lies on.
func (o *Object) alongSlope(deg float64) bool {
	for _, f := range o.Faces {
		if f.isSlope() && near(math.Mod(deg-f.rise()+720, 180), 0, 180) {
			return true
		}
	}
	return false
}
