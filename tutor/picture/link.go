package picture

import "math"

// link draws what holds two bodies together, thinner than any force.
func (f *figure) link(l Link) {
	from, to := f.tie(l.From, l.To, l.Kind), f.tie(l.To, l.From, l.Kind)
	thin := look{tag: TagLink}
	switch l.Kind {
	case Coil:
		f.spring(thin, from, to)
	case Rod:
		side := to.minus(from).unit().left().times(1.2)
		f.line(thin, solid, from.plus(side), to.plus(side))
		f.line(thin, solid, from.minus(side), to.minus(side))
	default:
		f.line(thin, dotted, from, to)
	}
}

// tie is the place at which a link from body i to body j leaves body i.
func (f *figure) tie(i, j int, kind LinkKind) vec {
	b := &f.scene.Bodies[i]
	at := f.middle(i)
	way := f.middle(j).minus(at)
	if b.Shape == Pulley && kind == Rope {
		return f.rim(i, j)
	}
	if f.scene.Bodies[j].Shape == Pulley && kind == Rope {
		way = f.rim(j, i).minus(at)
	}
	edge := f.dots(f.edge(b, way.unit()))
	if b.Shape == Anchor {
		edge = 0
	}
	return at.along(way.unit(), min(edge, way.len()))
}

// rim is where a rope from body j meets the wheel i: the upper of the two
// places at which a line from j touches it.
func (f *figure) rim(i, j int) vec {
	at, from := f.middle(i), f.middle(j)
	radius := max(f.dots(f.half(&f.scene.Bodies[i]).x), 2)
	way := from.minus(at)
	if way.len() <= radius+0.5 {
		return at
	}
	a := math.Acos(radius/way.len()) * 180 / math.Pi
	one := at.along(heading(way.degrees()+a), radius)
	two := at.along(heading(way.degrees()-a), radius)
	// A rope lies on top of a wheel; beside it, where both are equally high, the nearer side.
	if one.y < two.y-0.01 || one.y < two.y+0.01 && math.Abs(one.x-from.x) < math.Abs(two.x-from.x) {
		return one
	}
	return two
}
