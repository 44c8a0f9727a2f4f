package picture

import (
	"fmt"
	"math"
	"strings"

	"example.org/standstill/checker/statics"
)

// chain tells the terms of a sum in the order in which they are drawn.
func (t *teller) chain(c *Chain) {
	var steps []string
	for _, back := range []bool{false, true} {
		for _, l := range c.Legs {
			if l.Negative == back {
				way := c.direction()
				if back {
					way += 180
				}
				steps = append(steps, fmt.Sprintf(saysStep, either(l.Label, wordPart), t.sides(way)))
			}
		}
	}
	subject := saysParts
	if c.Body != "" {
		subject = fmt.Sprintf(saysPartsOn, statics.Called(c.Body))
	}
	t.say(saysChain, subject, string("xy"[c.Axis&1]), strings.Join(steps, wordThen))
	if c.closed() {
		t.say(saysChainCloses)
	} else {
		t.say(saysChainOpen)
	}
}

// closed tells whether the legs end where they start, within what rounding of
// sizes can leave open.
func (c *Chain) closed() bool {
	ends := c.links()
	reached, back := 0.0, 0.0
	for i, l := range c.Legs {
		if l.Negative {
			back += ends[i][0] - ends[i][1]
		} else {
			reached += ends[i][1] - ends[i][0]
		}
	}
	return math.Abs(reached-back) < 0.01
}

// polygon tells the sides in order.
func (t *teller) polygon() {
	p := t.scene.Polygon
	if p == nil {
		return
	}
	var steps []string
	for _, s := range p.Sides {
		steps = append(steps, fmt.Sprintf(saysStep, either(s.Label, wordForce), t.sides(s.Direction)))
	}
	subject := saysForces
	if p.Body != "" {
		subject = fmt.Sprintf(saysForcesOn, statics.Called(p.Body))
	}
	t.say(saysPolygon, subject, strings.Join(steps, wordThen))
	if p.closed() {
		t.say(saysCloses)
	} else {
		t.say(saysOpen)
	}
}

// plot tells what a reader would see in the curves.
func (t *teller) plot() {
	p := t.scene.Plot
	if p == nil {
		return
	}
	var now []string
	for i := range p.Curves {
		c := &p.Curves[i]
		c.Name = either(c.Name, p.Y.Name)
		t.curve(p, c)
		if y, ok := c.at(p.At); ok && p.Marked {
			now = append(now, fmt.Sprintf(saysIs, c.Name, measure(y, p.Y.Unit)))
		}
	}
	if len(now) > 0 {
		t.say(saysPresent, equals(p.X, p.At), listed(now))
	}
	for _, m := range p.Measured {
		value, doubt := measure(m.At.Y, p.Y.Unit), ""
		if m.U.Y > 0 {
			places := figuresOf(m.U.Y)
			value = withUnit(fixed(m.At.Y, places), p.Y.Unit)
			doubt = saysGiveOrTake + withUnit(fixed(m.U.Y, places), p.Y.Unit)
		}
		t.say(saysMeasured, either(m.Name, p.Y.Name), equals(p.X, m.At.X), value, doubt)
	}
}

// either is a name, or what stands for one that is missing.
func either(name, fallback string) string {
	if name == "" {
		return fallback
	}
	return name
}

// listed joins facts as in "a, b and c".
func listed(facts []string) string {
	if len(facts) < 2 {
		return strings.Join(facts, "")
	}
	return strings.Join(facts[:len(facts)-1], ", ") + wordAnd + facts[len(facts)-1]
}

// curve tells the course of one curve and where it leaves all bounds.
func (t *teller) curve(p *Plot, c *Curve) {
	points := only(c.Points, plotted)
	if len(points) == 0 {
		return
	}
	x := func(q Point) string { return measure(q.X, p.X.Unit) }
	y := func(q Point) string { return measure(q.Y, p.Y.Unit) }
	first, last := points[0], points[len(points)-1]
	t.say(saysPlot, c.Name, p.X.Name, x(first), x(last))
	switch low, high := lowest(points, 1), lowest(points, -1); {
	case high.Y-low.Y <= 1e-3*math.Abs(high.Y):
		t.say(saysConstant, c.Name, y(first))
	case monotone(points, 1):
		t.say(saysOneWay, c.Name, wordRises, y(first), y(last))
	case monotone(points, -1):
		t.say(saysOneWay, c.Name, wordFalls, y(first), y(last))
	case oneTurn(points, low, -1):
		t.say(saysTurns, c.Name, wordFalls, y(first), y(low), x(low), wordRises, y(last))
	case oneTurn(points, high, 1):
		t.say(saysTurns, c.Name, wordRises, y(first), y(high), x(high), wordFalls, y(last))
	default:
		t.say(saysVaries, c.Name, y(low), y(high))
	}
	for _, e := range c.unbounded() {
		if near0 := math.Abs(e.x) < 0.02*math.Abs(last.X-first.X); near0 {
			t.say(saysVanishing, p.X.Name, c.Name)
		} else {
			t.say(saysNearing, p.X.Name, measure(math.Round(e.x), p.X.Unit), c.Name)
		}
	}
}

// lowest is the point with the least y, or the greatest for a sign of -1.
func lowest(points []Point, sign float64) Point {
	best := points[0]
	for _, p := range points {
		if sign*p.Y < sign*best.Y {
			best = p
		}
	}
	return best
}

// monotone tells whether y never moves against a sign.
func monotone(points []Point, sign float64) bool {
	for i := 1; i < len(points); i++ {
		if sign*(points[i].Y-points[i-1].Y) < 0 {
			return false
		}
	}
	return true
}

// oneTurn tells whether y goes one way up to a point and the other way after it.
func oneTurn(points []Point, at Point, sign float64) bool {
	for i := range points {
		if points[i] == at {
			return monotone(points[:i+1], sign) && monotone(points[i:], -sign)
		}
	}
	return false
}
