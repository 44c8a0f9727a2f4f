package picture

import (
	"math"
	"slices"
)

// median is the middle of some values; it may reorder them.
func median(xs []float64) float64 {
	slices.Sort(xs)
	return xs[len(xs)/2]
}

// asymptote is an end of a curve at which its values leave all bounds.
type asymptote struct {
	side int     // -1 at the lower end of x, +1 at the upper
	x    float64 // the value of x that is never reached
}

// unbounded finds the ends at which a curve shows growth without bound. The
// data must show it themselves: towards the end the values rise to several times
// the middle one, and their reciprocals, which run straight near an asymptote, meet
// zero just beyond the last point.
func (c *Curve) unbounded() []asymptote {
	var points []Point
	var ys []float64
	for _, p := range c.Points {
		if plotted(p) {
			points, ys = append(points, p), append(ys, math.Abs(p.Y))
		}
	}
	// Too few points to tell growth without bound from a steep end.
	if len(points) < 6 {
		return nil
	}
	var poles []asymptote
	middle := median(ys)
	// The second round sees the points in reverse, so the lower end is an end like the upper.
	for _, side := range []int{1, -1} {
		if last := points[len(points)-1]; last.Y > 4*middle {
			if x, ok := asymptoteBeyond(points); ok {
				poles = append(poles, asymptote{side, x})
			}
		}
		slices.Reverse(points)
	}
	return poles
}

// asymptoteBeyond finds the asymptote that a curve runs to at its end. The reciprocals
// must point to the same place from the end and from as far before it again;
// those of a steep but bounded curve do not.
func asymptoteBeyond(points []Point) (x float64, ok bool) {
	n := len(points)
	last, width := points[n-1], math.Abs(points[n-1].X-points[0].X)
	x, ok = meetsZero(last, points[n-2])
	ahead := math.Abs(x - last.X)
	// An asymptote far outside the plot would widen it by a stretch without points.
	if !ok || ahead > 0.12*width {
		return 0, false
	}
	k := n - 1
	// As far before the end as the asymptote lies behind it.
	for k > 1 && math.Abs(points[k].X-last.X) < ahead {
		k--
	}
	again, ok := meetsZero(points[k], points[k-1])
	return x, ok && math.Abs(again-x) < 0.3*max(ahead, 1e-9*width)
}

// meetsZero continues 1/y through two points of growing y until it is zero.
func meetsZero(last, before Point) (x float64, ok bool) {
	if last.Y <= before.Y || before.Y <= 0 {
		return 0, false
	}
	a, b := 1/last.Y, 1/before.Y
	return last.X + (before.X-last.X)*a/(a-b), true
}
