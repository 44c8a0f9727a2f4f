package measure

import "math"

// Point is one point of a series: its standard uncertainties and the correlation
// coefficient of their errors.
type Point struct {
	X, Y   float64
	Ux, Uy float64
	R      float64
}

// Line is a straight line y = Intercept + Slope·x through points. Where every point has
// an uncertainty the line is weighted: the uncertainties are those that follow from the
// points' own, ChiSquare is the sum of the weighted squares that are left, and nothing
// is scaled by it. Without, all points weigh the same, and the uncertainties come from
// how the points scatter: Spread is their standard deviation about the line. Nu is the
// degrees of freedom, 0 where a line goes through as few points as it has coefficients.
type Line struct {
	Slope, Intercept float64
	USlope           float64
	UIntercept       float64
	Correlation      float64 // of slope and intercept
	Origin           bool    // the line was made to go through the origin
	Weighted         bool
	ChiSquare        float64
	Spread           float64
	Nu               int

	weights []float64
}

// Coverage is the factor of the expanded uncertainties: 2, or for a line whose
// uncertainties come from the scatter of few points Student's t.
func (l Line) Coverage() (k float64, nu int) {
	if l.Weighted {
		return 2, 0
	}
	return Coverage(float64(l.Nu))
}

// At is the line's value at x and its standard uncertainty.
func (l Line) At(x float64) (y, u float64) {
	square := l.UIntercept*l.UIntercept + x*x*l.USlope*l.USlope + 2*x*l.Correlation*l.UIntercept*l.USlope
	return l.Intercept + l.Slope*x, math.Sqrt(max(square, 0))
}

// Fit lays the best line through points, through the origin where that is asked for;
// false where there are too few, or they have one x.
func Fit(points []Point, origin bool) (Line, bool) {
	coefficients := 2
	if origin {
		coefficients = 1
	}
	l := Line{Origin: origin, Weighted: true, Nu: len(points) - coefficients}
	for _, p := range points {
		// A single exact point would have an infinite weight and pull the line through itself.
		l.Weighted = l.Weighted && p.Ux*p.Ux+p.Uy*p.Uy > 0
	}
	if l.Nu < 0 || len(points) == 0 {
		return l, false
	}
	l.weights = make([]float64, len(points))
	for i := range l.weights {
		l.weights[i] = 1
	}
	// York's steps need a slope to start from, and that of equal weights is near enough.
	start := l.through(points)
	if l.Weighted {
		start = l.york(points)
	}
	l.scatter(points)
	return l, start && !math.IsNaN(l.Slope) && !math.IsInf(l.Slope, 0)
}

// centre is the weighted mean of the points, the origin for a line through it.
func (l *Line) centre(points []Point) (x, y, weight float64) {
	for i, p := range points {
		x += l.weights[i] * p.X
		y += l.weights[i] * p.Y
		weight += l.weights[i]
	}
	if l.Origin {
		return 0, 0, weight
	}
	return x / weight, y / weight, weight
}

// through is the line of least squares in y with the weights at hand.
func (l *Line) through(points []Point) bool {
	x, y, weight := l.centre(points)
	xx, xy := 0.0, 0.0
	for i, p := range points {
		xx += l.weights[i] * (p.X - x) * (p.X - x)
		xy += l.weights[i] * (p.X - x) * (p.Y - y)
	}
	l.Slope = xy / xx
	l.Intercept = y - l.Slope*x
	l.coefficients(x, xx, weight)
	return xx > 0
}

// coefficients fills in the uncertainties from the weights.
func (l *Line) coefficients(x, xx, weight float64) {
	l.USlope = 1 / math.Sqrt(xx)
	if l.Origin {
		l.UIntercept, l.Correlation = 0, 0
		return
	}
	l.UIntercept = math.Sqrt(1/weight + x*x/xx)
	// The line turns about the centre: steeper means lower at zero, if the points lie to the right.
	l.Correlation = -x * l.USlope / l.UIntercept
}

// The steps of york end where the slope moves no more.
const (
	mostSteps = 500
	settled   = 1e-15
)

// york is the line of least squares with errors in both coordinates, by the unified
// equations of York, Evensen, López Martínez and De Basabe Delgado, Am. J. Phys. 72,
// 367 (2004), from memory:
//
//	W_i = 1 / (u_y² + b² u_x² − 2 b r u_x u_y)
//	β_i = W_i [U_i u_y² + b V_i u_x² − (b U_i + V_i) r u_x u_y],  U_i = X_i − X̄, V_i = Y_i − Ȳ
//	b = Σ W_i β_i V_i / Σ W_i β_i U_i
func (l *Line) york(points []Point) bool {
	beta := make([]float64, len(points))
	for range mostSteps {
		b := l.Slope
		for i, p := range points {
			l.weights[i] = 1 / (p.Uy*p.Uy + b*b*p.Ux*p.Ux - 2*b*p.R*p.Ux*p.Uy)
		}
		x, y, _ := l.centre(points)
		up, down := 0.0, 0.0
		for i, p := range points {
			u, v := p.X-x, p.Y-y
			beta[i] = l.weights[i] * (u*p.Uy*p.Uy + b*v*p.Ux*p.Ux - (b*u+v)*p.R*p.Ux*p.Uy)
			up += l.weights[i] * beta[i] * v
			down += l.weights[i] * beta[i] * u
		}
		l.Slope = up / down
		l.Intercept = y - l.Slope*x
		// Written so that NaN ends it too.
		if !(math.Abs(l.Slope-b) > settled*math.Abs(b)) {
			break
		}
	}
	x, _, weight := l.centre(points)
	mean := 0.0
	for i := range points {
		// The uncertainties are taken at the adjusted points, on the line, and not at those measured.
		mean += l.weights[i] * (x + beta[i])
	}
	if mean /= weight; l.Origin {
		mean = 0
	}
	square := 0.0
	for i := range points {
		square += l.weights[i] * (x + beta[i] - mean) * (x + beta[i] - mean)
	}
	l.coefficients(mean, square, weight)
	return square > 0
}

// scatter fills in what is left over of the points.
func (l *Line) scatter(points []Point) {
	for i, p := range points {
		off := p.Y - l.Intercept - l.Slope*p.X
		l.ChiSquare += l.weights[i] * off * off
	}
	if l.Weighted {
		return
	}
	l.Spread = math.Sqrt(l.ChiSquare / float64(l.Nu))
	// With weights of 1 the sum has the unit of y², so it says nothing about how well the line fits.
	l.ChiSquare = 0
	l.USlope *= l.Spread
	l.UIntercept *= l.Spread
}

// Refit moves the line to other points, with its weights and its uncertainties kept.
func (l *Line) Refit(points []Point) {
	moved := *l
	moved.through(points)
	l.Slope, l.Intercept = moved.Slope, moved.Intercept
}

// Moved is by how much slope and intercept change when every point moves by a little,
// with the weights of the line kept.
func (l Line) Moved(points []Point, dx, dy []float64) (slope, intercept float64) {
	moved := make([]Point, len(points))
	for i, p := range points {
		moved[i] = Point{X: p.X + dx[i], Y: p.Y + dy[i]}
	}
	there, here := l, l
	there.Refit(moved)
	// The line may come from York's steps, which least squares with
	// the same weights miss by a little; the same miss is in both.
	here.Refit(points)
	return there.Slope - here.Slope, there.Intercept - here.Intercept
}
