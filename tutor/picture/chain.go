package picture

import "math"

// direction is where the chain's axis points, in degrees.
func (c *Chain) direction() float64 {
	if c.Axis == AxisY {
		return c.Tilt + 90
	}
	return c.Tilt
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
		// Without sizes both lanes are equally long: a sum of zero is what is drawn.
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
			// The negative ones go back from where the positive ones ended; at the start again means balance.
			ends[i] = [2]float64{at[0] - at[1], at[0] - at[1] - long[i]}
			at[1] += long[i]
		}
	}
	return ends
}

// positive says which way the axis of a sum points.
func (c *Chain) positive() string {
	switch {
	case c.Positive != "":
		return c.Positive
	case c.Axis == AxisX && level(c.Tilt):
		return "right"
	case level(c.Tilt):
		return "up"
	case c.Axis == AxisX && heading(c.Tilt).y < 0:
		return "up the slope"
	case c.Axis == AxisX:
		return "down the slope"
	}
	return "away from the slope"
}

// toScale tells whether the lengths of the legs are true.
func (c *Chain) toScale() bool {
	for _, l := range c.Legs {
		if l.Size <= 0 {
			return false
		}
	}
	return true
}

// chain draws the parts of a sum.
func (d *drawing) chain(s *Scene, area box) {
	d.legs(s.Chain, area, [...]string{AxisX: "x", AxisY: "y"}[s.Chain.Axis&1])
}

// lanes is a chain in its place: a row for each leg, its label at the left.
type lanes struct {
	area       box
	from, cols int // where the arrows are
	low, unit  float64
	row, step  int
}

// at is the column of a place along the axis.
func (k lanes) at(way float64) int { return k.from + nearest((way-k.low)*k.unit) }

// lanes divides an area: what the letter says on top, the legs, what they come to below.
func (d *drawing) lanes(c *Chain, ends [][2]float64, area box) lanes {
	k := lanes{area: area, from: area.left + 1, step: 2}
	wide := 0
	for _, l := range c.Legs {
		wide = max(wide, len(d.cells(l.Label)))
	}
	// In a narrow area the arrows need the columns, and the names stand above them.
	if wide+10 <= area.cols() {
		k.from += wide + 2
	}
	k.cols = max(area.right-2-k.from, 1)
	high := 0.0
	for _, e := range ends {
		k.low, high = min(k.low, e[0], e[1]), max(high, e[0], e[1])
	}
	// All legs may be empty.
	k.unit = float64(k.cols) / max(high-k.low, 1e-9)
	top, foot := 2, 2
	if spare := area.rows() - len(c.Legs) - top - foot; spare < 0 {
		top, foot = 0, 0
	}
	if top+foot+2*len(c.Legs)-1 > area.rows() {
		k.step = 1
	}
	k.row = area.top + top + max((area.rows()-top-foot-k.step*len(c.Legs))/2, 0)
	return k
}

// legs draws a chain head to tail, level whatever the tilt is: the arrows along the axis
// to the right, those against it back again, each in a row of its own.
func (d *drawing) legs(c *Chain, area box, letter string) {
	ends := c.links()
	k := d.lanes(c, ends, area)
	if letter != "" && k.row >= area.top+2 {
		d.axisHead(c, k, letter)
	}
	row := k.row
	// In the order in which links laid them end to end.
	for _, back := range []bool{false, true} {
		for i, l := range c.Legs {
			if l.Negative != back {
				continue
			}
			if row < area.bottom {
				d.leg(k, l, ends[i], row)
			}
			row += k.step
		}
	}
	row += 1 - k.step
	if c.closed() && letter != "" {
		row = d.remark(k, saysBackAtStart+letter+" = 0", k.at(0), row)
	}
	if !c.toScale() && row < area.bottom-1 {
		d.remark(k, wordsNotTrue, area.left+1, area.bottom-1)
	}
}

// axisHead says which way the axis points.
func (d *drawing) axisHead(c *Chain, k lanes, letter string) {
	text := "positive " + letter + ": " + c.positive()
	width := len(d.cells(text))
	if width+2 > k.area.cols() {
		return
	}
	d.put(text, k.area.left+1, k.area.top, look{tag: TagAxis})
	from, to := k.area.left+width+2, min(k.area.left+width+9, k.area.right-2)
	if to-from >= 3 {
		d.arrow(shaft{look: look{tag: TagAxis}}, cell(from, k.area.top), cell(to, k.area.top).plus(vec{0.5, 0}))
	}
}

// leg draws one arrow with a stroke across its tail, and its label.
func (d *drawing) leg(k lanes, l Leg, ends [2]float64, row int) {
	s := shaft{look: look{tag: ForceTag(l.Colour), strong: l.InHand}}
	from, to := cell(k.at(ends[0]), row), cell(k.at(ends[1]), row)
	if l.Negative {
		from, to = from.plus(vec{0.5, 0}), to.minus(vec{0.5, 0})
	} else {
		from, to = from.minus(vec{0.5, 0}), to.plus(vec{0.5, 0})
	}
	d.arrow(s, from, to)
	tail := '├'
	if l.Negative {
		tail = '┤'
	}
	// A shorter arrow is all head.
	if math.Abs(from.x-to.x) > 3 {
		d.add(stroke{look: s.look, form: glyph, rune: tail, points: d.store([]vec{from})})
	}
	if k.from > k.area.left+1 {
		d.put(l.Label, k.area.left+1, row, s.look)
	} else {
		d.note(label{rank: rankLeg, at: from.plus(to).times(0.5), dir: vec{0, -1}, look: s.look, area: k.area}, l.Label, "")
	}
}

// remark writes a line from a column on, or as far to the right as it fits, and gives the
// next row.
func (d *drawing) remark(k lanes, text string, col, row int) int {
	width := len(d.cells(text))
	if row >= k.area.bottom || width > k.area.cols() {
		return row
	}
	d.put(text, min(col, k.area.right-width), row, look{tag: TagAxis})
	return row + 1
}
