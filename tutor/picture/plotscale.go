package picture

import (
	"math"
	"strconv"
)

// scales draws the axes of a plot with their numbers and headings (quantity
// over unit, as tables and graphs are headed), and fixes where the plot lies.
func (c *chart) scales() {
	ySteps := ticks(c.low.Y, c.high.Y, max(c.area.rows()/3, 2), c.plot.Y.Unit)
	wide := 1
	for _, y := range ySteps {
		wide = max(wide, len(tickText(y, ySteps)))
	}
	// rings of the marker reach two dots around the plot; the numbers keep clear
	c.from = vec{float64(2*(c.area.left+wide)) + 2, float64(4*(c.area.bottom-1)) - 3}
	c.to = vec{float64(2*c.area.right) - 3, float64(4*(c.area.top+1)) + 2}
	c.line(look{tag: TagAxis}, solid, vec{c.from.x, c.to.y}, c.from, vec{c.to.x, c.from.y})
	c.put(c.area.left+wide-1, c.area.top, headed(c.plot.Y), vec{})
	x := headed(c.plot.X)
	c.put(c.area.right-len(c.cells(x)), c.area.bottom-1, x, vec{})
	for _, y := range ySteps {
		c.yTick(y, tickText(y, ySteps), wide)
	}
	if c.broken {
		at := vec{c.from.x, c.from.y - 3}
		c.add(stroke{look: look{tag: TagAxis}, form: glyph, rune: '∼', points: c.store([]vec{at})})
	}
	xSteps := ticks(c.low.X, c.high.X, max(c.area.cols()/8, 2), c.plot.X.Unit)
	for _, x := range xSteps {
		c.xTick(x, tickText(x, xSteps))
	}
}

func (c *chart) yTick(y float64, text string, wide int) {
	at := c.dot(Point{c.low.X, y})
	c.line(look{tag: TagAxis}, solid, at.plus(vec{-1, 0}), at)
	col := c.area.left + wide - len(text)
	c.put(col, nearest(at.y)/4, text, vec{float64(2*col+len(text)) - 0.5, at.y})
}

func (c *chart) xTick(x float64, text string) {
	at := c.dot(Point{x, c.low.Y})
	c.line(look{tag: TagAxis}, solid, at, at.plus(vec{0, 1}))
	row := c.area.bottom - 1
	c.put(nearest(at.x)/2-(len(text)-1)/2, row, text, vec{at.x, float64(4*row) + 1.5})
}

// put writes a text at a fixed place, unless that is taken or outside. On paper
// its middle stands at an exact place, if one is given.
func (c *chart) put(col, row int, words string, exact vec) {
	text := c.cells(words)
	if len(text) == 0 || col < c.area.left || col+len(text) > c.area.right || row < c.area.top || row >= c.area.bottom {
		return
	}
	for i := -1; i <= len(text); i++ {
		if m := c.grid.at(col+i, row); m != nil && (m.text || m.hard && i >= 0 && i < len(text)) {
			return
		}
	}
	l := label{rank: rankAxis, text: text, exact: exact, look: look{tag: TagAxis}, area: c.area, col: col, row: row, shown: true}
	l.at = vec{float64(2 * col), float64(4*row + 1)}
	c.labels, c.placed = append(c.labels, l), c.placed+1
	c.grid.write(col, row, text, l.look)
}

// ticks are round values between two, at most n or so; on a scale of degrees
// also by thirds of a right angle.
func ticks(low, high float64, n int, unit string) []float64 {
	step := tickStep((high-low)/float64(n), unit)
	var list []float64
	for k := math.Ceil(low/step - 1e-9); k*step <= high+1e-9*step && len(list) < 50; k++ {
		list = append(list, k*step+0)
	}
	return list
}

// tickStep is the least round step that is not below another.
func tickStep(least float64, unit string) float64 {
	if unit == "°" {
		for _, step := range []float64{1, 2, 5, 10, 15, 30, 45, 90} {
			if step >= least*0.9 {
				return step
			}
		}
	}
	ten := math.Pow(10, math.Floor(math.Log10(least)))
	for _, k := range []float64{1, 2, 5} {
		if k*ten >= least {
			return k * ten
		}
	}
	return 10 * ten
}

// tickText writes a tick with as many decimals as its scale needs.
func tickText(x float64, all []float64) string {
	decimals := 0
	if len(all) > 1 {
		decimals = max(0, -int(math.Floor(math.Log10(all[1]-all[0])+1e-9)))
	}
	if math.Abs(x) >= 1e7 || decimals > 6 {
		return strconv.FormatFloat(x, 'g', 4, 64)
	}
	return strconv.FormatFloat(x, 'f', decimals, 64)
}
