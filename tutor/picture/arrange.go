package picture

import "math"

// arranged sets bodies apart that were given no places, so that what they hold
// in common is seen: a string between two bodies lies along its pull, a string
// that pulls two bodies in different directions runs over a pulley, and bodies
// with nothing in common stand side by side.
func arranged(s Scene) Scene {
	// Places that a scene gives are left alone.
	if len(s.Bodies) < 2 || !together(s.Bodies) {
		return s
	}
	a := arranger{scene: s, placed: make([]bool, len(s.Bodies))}
	// The first body stays at the origin, and the others are placed from it.
	a.placed[0] = true
	// Each round places at most one body, and the rounds go by
	// the order of the forces, so the drawing is always the same.
	for range s.Bodies {
		a.follow()
	}
	for i := range a.placed {
		if !a.placed[i] {
			a.beside(i)
		}
	}
	return a.scene
}

// together tells whether all bodies stand at one place.
func together(bodies []Body) bool {
	for _, b := range bodies {
		if b.At != bodies[0].At {
			return false
		}
	}
	return true
}

// Distances in arrow lengths: between bodies that are tied, up to a pulley, and
// between bodies that have nothing to do with each other.
const (
	tied     = 2.6
	toPulley = 1.4
	strange  = 2.4
	wheel    = 0.5 // the radius of a pulley
)

type arranger struct {
	scene  Scene
	placed []bool
}

// follow places one body that shares a force with a placed one, if there is any.
func (a *arranger) follow() {
	for i := range a.scene.Forces {
		for j := range a.scene.Forces {
			if a.shared(i, j) {
				a.tie(i, j)
				return
			}
		}
	}
}

// shared tells whether two forces are the ends of one string (or spring, or
// strut) from a placed body to one that is not.
func (a *arranger) shared(i, j int) bool {
	f, g := &a.scene.Forces[i], &a.scene.Forces[j]
	if f.On < 0 || g.On < 0 || !a.placed[f.On] || a.placed[g.On] {
		return false
	}
	return f.Name == g.Name && f.Kind == g.Kind && (f.Kind == Tension || f.Kind == Spring || f.Kind == Strut)
}

// tie places the body of force j by what it shares with the body of force i.
func (a *arranger) tie(i, j int) {
	f, g := &a.scene.Forces[i], &a.scene.Forces[j]
	from, to := a.scene.Bodies[f.On].At, &a.scene.Bodies[g.On]
	a.placed[g.On] = true
	deg := f.Direction
	if f.Inward {
		// The arrow points at the body, so the string lies on its other side.
		deg += 180
	}
	// The ends of one straight string pull in opposite directions; the rest is a rounded angle in a file.
	opposite := math.Abs(turn(f.Direction+180, g.Direction)) < 20
	if opposite || f.Kind != Tension {
		to.At = moved(from, deg, tied)
		a.scene.Links = append(a.scene.Links, Link{f.On, g.On, map[Kind]LinkKind{Spring: Coil, Strut: Rod}[f.Kind]})
		return
	}
	a.overPulley(f, g)
}

// overPulley hangs a pulley where the string leaves the first body and lets it
// run down to the second on the far side.
func (a *arranger) overPulley(f, g *Force) {
	side := -90.0 // the wheel lies clockwise of a string that goes up to the right
	// The string must go on outwards over the wheel and not back across the first body.
	if heading(f.Direction).x < -1e-6 {
		side = 90
	}
	rim := moved(a.scene.Bodies[f.On].At, f.Direction, toPulley)
	centre := moved(rim, f.Direction+side, wheel)
	far := moved(centre, g.Direction+side, wheel)
	a.scene.Bodies[g.On].At = moved(far, g.Direction+180, toPulley)
	a.scene.Bodies = append(a.scene.Bodies, Body{Shape: Pulley, At: centre, Size: wheel, Bare: true})
	// The wheel is a body too, and both slices share their indices.
	a.placed = append(a.placed, true)
	n := len(a.scene.Bodies) - 1
	a.scene.Links = append(a.scene.Links, Link{f.On, n, Rope}, Link{g.On, n, Rope})
}

// moved is the place some way off in a direction.
func moved(p Point, deg, way float64) Point {
	d := heading(deg)
	// A scene has y upwards, a drawing downwards.
	return Point{p.X + d.x*way, p.Y - d.y*way}
}

// beside places a body to the right of all others.
func (a *arranger) beside(i int) {
	right := a.scene.Bodies[0].At
	for k, placed := range a.placed {
		if placed && a.scene.Bodies[k].At.X > right.X {
			right.X = a.scene.Bodies[k].At.X
		}
	}
	a.scene.Bodies[i].At = Point{right.X + strange, right.Y}
	a.placed[i] = true
}
