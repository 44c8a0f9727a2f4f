package picture

import (
	"cmp"
	"math"
	"slices"
)

// PolygonOf makes the polygon of the forces on a body, ordered by direction so
// that it is convex. Forces without a size are left out.
func PolygonOf(s Scene, body int) *Polygon {
	p := &Polygon{}
	if known(body, len(s.Bodies)) {
		p.Body = s.Bodies[body].Name
	}
	for _, f := range s.Forces {
		if f.On == body && size(f.Size) > 0 && isNumber(f.Direction) {
			p.Sides = append(p.Sides, Side{f.Name, f.Colour, f.Direction, f.Size, f.InHand})
		}
	}
	slices.SortStableFunc(p.Sides, func(a, b Side) int {
		return cmp.Compare(fullTurn(0, a.Direction), fullTurn(0, b.Direction))
	})
	return p
}

// corners lays the sides head to tail, in their own unit, y downwards.
func (p *Polygon) corners() []vec {
	at := vec{}
	corners := []vec{at}
	for _, s := range p.Sides {
		at = at.along(heading(s.Direction), s.Size)
		corners = append(corners, at)
	}
	return corners
}

// closed tells whether the last side ends where the first begins, within what
// rounding of sizes can leave open.
func (p *Polygon) closed() bool {
	corners := p.corners()
	return corners[len(corners)-1].len() < 0.005*p.around()
}

// flat tells whether all sides lie along one line, and along which.
func (p *Polygon) flat() (direction float64, yes bool) {
	way := heading(p.Sides[0].Direction)
	for _, s := range p.Sides {
		if math.Abs(heading(s.Direction).dot(way.left())) > 0.02 {
			return 0, false
		}
	}
	return p.Sides[0].Direction, true
}

// asChain gives a flat polygon as legs along its line, where its sides would
// cover each other.
func (p *Polygon) asChain(direction float64) *Chain {
	c := &Chain{Tilt: direction, Body: p.Body}
	for _, s := range p.Sides {
		c.Legs = append(c.Legs, Leg{Label: s.Label, Colour: s.Colour, Size: s.Size, InHand: s.InHand,
			Negative: math.Abs(turn(direction, s.Direction)) > 90})
	}
	return c
}

// polygon draws the forces head to tail, to scale.
func (d *drawing) polygon(s *Scene, area box) {
	p := s.Polygon
	if direction, yes := p.flat(); yes {
		d.legs(p.asChain(direction), area, "")
		return
	}
	corners := d.polygonPlace(p.corners(), area)
	low, high := bounds(corners)
	middle := low.plus(high).times(0.5)
	for _, hand := range []bool{false, true} {
		for i, side := range p.Sides {
			if side.InHand != hand {
				continue
			}
			l := look{tag: ForceTag(side.Colour), strong: hand}
			from, to := corners[i], corners[i+1]
			d.arrow(shaft{look: l}, from, to)
			at := from.plus(to).times(0.5)
			out := to.minus(from).unit().left()
			if out.dot(at.minus(middle)) < 0 {
				out = out.times(-1)
			}
			d.note(label{at: at.along(out, 1.5), dir: out, look: l, area: area}, side.Label, "")
		}
	}
	d.disc(look{tag: TagBody}, corners[0], 1.3)
}

// polygonPlace moves and scales corners into an area, with room for labels.
func (d *drawing) polygonPlace(corners []vec, area box) []vec {
	low, high := bounds(corners)
	room := area.size().minus(vec{18, 10})
	scale := bounded(math.Inf(1), room.x, high.x-low.x)
	scale = bounded(scale, room.y, high.y-low.y)
	shift := area.middle().minus(low.plus(high).times(scale / 2))
	for i, c := range corners {
		corners[i] = c.times(scale).plus(shift)
	}
	return corners
}
