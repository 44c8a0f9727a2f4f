package picture

// figure is the bodies with their forces while they are laid out.
type figure struct {
	*drawing
	scene   *Scene
	area    box
	longest float64 // the longest arrow, in the unit of Body.At
	scale   float64 // dots for that unit
	scaled  bool    // arrow lengths tell the sizes
	origin  vec
	arms    []arm // one for each force
}

// arm is where a force's arrow lies.
type arm struct {
	deg       float64 // where its far end lies, seen from the body
	out       vec     // the same as a direction
	share     float64 // of the longest arrow
	shift     float64 // sideways, in lanes, to keep it apart from a neighbour
	root, far vec     // its ends, at the body and away from it
	tail, tip vec     // the same ends, in the sense of the force
	centre    vec     // of the body
}

// figure draws the bodies with all that is on them, from the back to the front.
func (d *drawing) figure(s *Scene, area box) {
	f := &figure{drawing: d, scene: s, area: area, arms: make([]arm, len(s.Forces))}
	f.stretch()
	f.separate()
	f.fit()
	f.stand()
	for i := range s.Bodies {
		f.axes(i)
		f.surfaces(i)
	}
	for _, l := range s.Links {
		f.link(l)
	}
	for i := range s.Bodies {
		f.body(i)
	}
	f.arcs()
	f.triangle()
	f.arrows()
	for i := range s.Bodies {
		f.hatch(i)
	}
	f.names()
}

func (f *figure) drawable(i int) bool { return f.scene.Forces[i].On >= 0 }

// stretch gives every arm its direction and its length. Lengths tell the truth
// or nothing: as long as one size is unknown, all are equal.
func (f *figure) stretch() {
	largest, all := 0.0, true
	for i := range f.scene.Forces {
		if f.drawable(i) {
			size := f.scene.Forces[i].Size
			largest, all = max(largest, size), all && size > 0
		}
	}
	f.scaled = all
	for i := range f.scene.Forces {
		force := &f.scene.Forces[i]
		f.arms[i].deg, f.arms[i].share = force.Direction, 1
		if force.Inward {
			f.arms[i].deg += 180
		}
		f.arms[i].out = heading(f.arms[i].deg)
		if all {
			f.arms[i].share = force.Size / largest
		}
	}
	f.longest = f.room()
}

// room is the longest arrow that keeps clear of the other bodies.
func (f *figure) room() float64 {
	f.longest = 1
	long := 1.0
	for i := range f.scene.Forces {
		if !f.drawable(i) {
			continue
		}
		from := f.scene.Forces[i].On
		for to := range f.scene.Bodies {
			way := f.between(from, to)
			if away := way.len(); away > 1e-6 && way.dot(f.arms[i].out) > 0.9*away {
				long = min(long, f.upTo(i, to, away))
			}
		}
	}
	return max(long, 0.05)
}

// upTo is the length at which the arrow of a force takes its part of the way to
// another body: not quite half where an arrow may come from there.
func (f *figure) upTo(i, to int, away float64) float64 {
	from := f.scene.Forces[i].On
	part := 0.7
	if f.scene.Bodies[to].Shape == Pulley {
		part = 0.75
	}
	for k := range f.scene.Forces {
		if f.scene.Forces[k].On == to && f.between(to, from).dot(f.arms[k].out) > 0.9*away {
			part = 0.45
		}
	}
	b := &f.scene.Bodies[from]
	edge := f.edge(b, f.arms[i].out)
	if b.Size == 0 { // then the body grows with the arrow
		return part * away / (1 + edge)
	}
	return max(part*away-edge, 0.1*away)
}

// between is the way from one body to another, y downwards, in arrow lengths.
func (f *figure) between(from, to int) vec {
	a, b := f.scene.Bodies[from].At, f.scene.Bodies[to].At
	return vec{b.X - a.X, a.Y - b.Y}
}
