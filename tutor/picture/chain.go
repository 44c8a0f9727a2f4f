package picture

import (
	"math"
)

// direction is where the chain's axis points, in degrees.
func (c *Chain) direction() float64 {
	if c.Axis == AxisY {
		return c.Tilt + 90
	}
	return c.Tilt
}

// upright tells whether the chain is rather high than wide.
func (c *Chain) upright() bool {
	way := heading(c.direction())
	return math.Abs(way.y) > math.Abs(way.x)
}

// lengths gives each leg's length, so that the longer lane is 1.
func (c *Chain) lengths() []float64 {
	true_, lanes := true, [2]float64{}
	for _, l := range c.Legs {
		true_ = true_ && l.Size > 0
		lanes[lane(l)]++
	}
	long := make([]float64, len(c.Legs))
	if true_ {
		lanes = [2]float64{}
		for _, l := range c.Legs {
			lanes[lane(l)] += l.Size
		}
	}
	for i, l := range c.Legs {
		if long[i] = 1 / lanes[lane(l)]; true_ {
			long[i] = l.Size / max(lanes[0], lanes[1])
		}
	}
	return long
}

func lane(l Leg) int {
	if l.Negative {
		return 1
	}
	return 0
}

// links lays the legs out in units of the longer lane: where each begins and
// ends along the axis. The negative ones go back from where the positive ones end.
func (c *Chain) links() [][2]float64 {
	at, long := [2]float64{}, c.lengths()
	ends := make([][2]float64, len(c.Legs))
	for i, l := range c.Legs {
		if !l.Negative {
			ends[i] = [2]float64{at[0], at[0] + long[i]}
			at[0] = ends[i][1]
		}
	}
	for i, l := range c.Legs {
		if l.Negative {
			ends[i] = [2]float64{at[0] - at[1], at[0] - at[1] - long[i]}
			at[1] += long[i]
		}
	}
	return ends
}

// laneGap is the way from the axis to either lane, in dots: a little over one
// cell between the lanes.
const laneGap = 3.5

// lanes is a chain in its place.
type lanes struct {
	along, side vec // the axis, and the side of the positive legs
	start       vec
	unit        float64 // dots of the longer lane
}

// chain draws the parts of a sum.
func (d *drawing) chain(s *Scene, area box) {
	d.legs(s.Chain, area, [...]string{AxisX: "x", AxisY: "y"}[s.Chain.Axis&1])
}

// legs draws a chain head to tail: the positive legs on one side of the axis,
// the negative ones back on the other. Thin lines across show where the sum
// starts and how far each leg gets.
func (d *drawing) legs(c *Chain, area box, letter string) {
	ends := c.links()
	k := d.lanes(c, ends, area)
	d.chainAxis(c, k, ends)
	for i, l := range c.Legs {
		off := k.side
		if l.Negative {
			off = off.times(-1)
		}
		from, to := k.at(ends[i][0]).along(off, laneGap), k.at(ends[i][1]).along(off, laneGap)
		s := shaft{look: look{tag: ForceTag(l.Colour), strong: l.InHand}}
		if l.Dashed {
			s.dash = dashed
		}
		d.arrow(s, from, to)
		d.note(label{rank: rankLeg, at: from.plus(to).times(0.5).along(off, 2), dir: off, look: s.look, area: area}, l.Label, "")
	}
	d.note(label{rank: rankAxis, at: k.at(1).along(k.along, 4), dir: k.along, look: look{tag: TagAxis}, area: area}, letter, "")
}

// at is a place on the axis.
func (k lanes) at(way float64) vec { return k.start.along(k.along, way*k.unit) }

// lanes puts a chain into its area, with room for labels beside the lanes.
func (d *drawing) lanes(c *Chain, ends [][2]float64, area box) lanes {
	k := lanes{along: heading(c.direction())}
	k.side = k.along.left()
	if k.side.y > 0.01 || math.Abs(k.side.y) <= 0.01 && k.side.x > 0 {
		k.side = k.side.times(-1)
	}
	low, high := 0.0, 0.0
	for _, e := range ends {
		low, high = min(low, e[0], e[1]), max(high, e[0], e[1])
	}
	room, beside := area.size(), [2]float64{8, 8}
	if c.upright() {
		long := d.laneLabels(c)
		beside = [2]float64{float64(2*long[0] + 3), float64(2*long[1] + 3)}
	}
	across := beside[0] + beside[1] + 2*laneGap
	x, y := math.Abs(k.along.x), math.Abs(k.along.y)
	k.unit = bounded(math.Inf(1), room.x-across*y-10*x, (high-low)*x)
	k.unit = bounded(k.unit, room.y-across*x-10*y, (high-low)*y)
	k.start = area.middle().along(k.along, -(low+high)/2*k.unit-2).along(k.side, (beside[1]-beside[0])/2).snap()
	return k
}

// laneLabels is the longest label of each lane, in cells.
func (d *drawing) laneLabels(c *Chain) (long [2]int) {
	for _, l := range c.Legs {
		long[lane(l)] = max(long[lane(l)], len(d.cells(l.Label)))
	}
	return long
}

// chainAxis draws the axis and thin lines across it: over both lanes where the
// sum starts and where it turns back, over one where a leg ends.
func (d *drawing) chainAxis(c *Chain, k lanes, ends [][2]float64) {
	d.line(look{tag: TagAxis, soft: true}, dotted, k.start, k.at(1).along(k.along, 4))
	d.crossing(k, 0, -1, 1)
	far := 0.0
	for _, e := range ends {
		far = max(far, e[1])
	}
	d.crossing(k, far, -1, 1)
	for i, e := range ends {
		if c.Legs[i].Negative {
			d.crossing(k, e[1], -1, 0)
		} else {
			d.crossing(k, e[1], 0, 1)
		}
	}
}

// crossing is a thin line from one lane (-1) or the axis (0) to another.
func (d *drawing) crossing(k lanes, way, from, to float64) {
	at := k.at(way)
	d.line(look{tag: TagAxis}, solid, at.along(k.side, from*(laneGap+1)), at.along(k.side, to*(laneGap+1)))
}
