// Inside the package: its published data are read by outside_test.go.

package measure

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// plain makes points without uncertainties.
func plain(x, y []float64) []Point {
	points := make([]Point, len(x))
	for i := range x {
		points[i] = Point{X: x[i], Y: y[i]}
	}
	return points
}

// certified wants so many significant digits of a figure as they were certified.
func (f *figuresOf) certified(what string, got float64, want float64, digits int) {
	f.Helper()
	off := math.Abs(got-want) / math.Abs(want) * math.Pow(10, float64(digits))
	if off > f.largest {
		f.largest, f.where = off, what
	}
	if !(off <= 1) {
		f.Errorf("%s = %.16g, certified %.16g", what, got, want)
	}
}

// exactly fits in fractions of whole numbers, from the normal equations: independent of
// Fit in method and in arithmetic.
func exactly(points []Point, origin bool) (slope, intercept, uSlope, uIntercept, spread float64) {
	rat := func(x float64) *big.Rat { r, _ := new(big.Rat).SetString(numeral15(x)); return r }
	n, sx, sy, sxx, sxy := new(big.Rat), new(big.Rat), new(big.Rat), new(big.Rat), new(big.Rat)
	mul := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
	sub := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Sub(a, b) }
	for _, p := range points {
		x, y := rat(p.X), rat(p.Y)
		n.Add(n, big.NewRat(1, 1))
		sx.Add(sx, x)
		sy.Add(sy, y)
		sxx.Add(sxx, mul(x, x))
		sxy.Add(sxy, mul(x, y))
	}
	b, a := new(big.Rat).Quo(sxy, sxx), new(big.Rat)
	d := sub(mul(n, sxx), mul(sx, sx))
	if !origin {
		b.Quo(sub(mul(n, sxy), mul(sx, sy)), d)
		a.Quo(sub(sy, mul(b, sx)), n)
	}
	left := new(big.Rat)
	for _, p := range points {
		off := sub(sub(rat(p.Y), a), mul(b, rat(p.X)))
		left.Add(left, mul(off, off))
	}
	f := func(r *big.Rat) float64 { x, _ := r.Float64(); return x }
	nu := f(n) - 2
	if origin {
		nu = f(n) - 1
	}
	spread = math.Sqrt(f(left) / nu)
	if origin {
		return f(b), 0, spread / math.Sqrt(f(sxx)), 0, spread
	}
	return f(b), f(a), spread * math.Sqrt(f(n)/f(d)), spread * math.Sqrt(f(sxx)/f(d)), spread
}

// numeral15 is the shortest numeral of a float.
func numeral15(x float64) string { return new(big.Float).SetFloat64(x).Text('g', 15) }

// NIST StRD, linear regression. Norris: certified values read in a test of a public
// library, but for the residual standard deviation, which is from memory. NoInt1: read
// there too. NoInt2: from memory. All were fitted again in fractions.
func TestLinesOfNIST(t *testing.T) {
	f := against(t)
	var x, y []float64
	for _, row := range rowsOf(t, "testdata/norris.csv") {
		x, y = append(x, row[0]), append(y, row[1])
	}
	norris := plain(x, y)
	noInt1 := plain([]float64{60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70}, []float64{130, 131, 132, 133, 134, 135, 136, 137, 138, 139, 140})
	noInt2 := plain([]float64{4, 5, 6}, []float64{3, 4, 4})
	for _, c := range []struct {
		name                                           string
		points                                         []Point
		origin                                         bool
		slope, intercept, uSlope, uIntercept, residual float64
	}{
		{"Norris", norris, false, 1.00211681802045, -0.262323073774029, 0.429796848199937e-03, 0.232818234301152, 0.884796396144373},
		{"NoInt1", noInt1, true, 2.07438016528926, 0, 0.165289256198347e-01, 0, 3.56753034006338},
		{"NoInt2", noInt2, true, 0.727272727272727, 0, 0.420827318078432e-01, 0, 0.369274472937998},
	} {
		l, ok := Fit(c.points, c.origin)
		if !ok || l.Weighted {
			t.Fatalf("%s: no line", c.name)
		}
		slope, intercept, uSlope, uIntercept, spread := exactly(c.points, c.origin)
		for what, three := range map[string][3]float64{
			" slope": {l.Slope, c.slope, slope}, " intercept": {l.Intercept, c.intercept, intercept},
			" u(slope)": {l.USlope, c.uSlope, uSlope}, " u(intercept)": {l.UIntercept, c.uIntercept, uIntercept}, " s": {l.Spread, c.residual, spread},
		} {
			if three[1] == 0 {
				continue
			}
			f.certified(c.name+what, three[0], three[1], 12)
			f.certified(c.name+what+" in fractions", three[2], three[1], 13)
		}
	}
}

// GUM H.3, a thermometer's correction against its reading less 20 °C; read in the tests
// of a public uncertainty package.
func TestThermometerOfGUMH3(t *testing.T) {
	f := against(t)
	x := []float64{21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511}
	y := []float64{-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160}
	for i := range x {
		x[i] -= 20
	}
	l, _ := Fit(plain(x, y), false)
	f.near("intercept", l.Intercept, "-0.1712", 0.5)
	f.near("u(intercept)", l.UIntercept, "0.0029", 0.5)
	f.near("slope", l.Slope, "0.00218", 0.5)
	f.near("u(slope)", l.USlope, "0.00067", 0.5)
	f.near("correlation", l.Correlation, "-0.930", 0.5)
	f.near("s", l.Spread, "0.0035", 0.5)
	at30, u := l.At(10)
	f.near("b(30 °C)", at30, "-0.1494", 0.5)
	f.near("u(b(30 °C))", u, "0.0041", 0.5)
}

// York's line: Pearson's data with York's weights (York, Can. J. Phys. 44, 1079, 1966),
// and the line of York et al., Am. J. Phys. 72, 367 (2004), Table II: all from memory.
// The slope is found again as the least of S(b), by trisection in numbers of 200 bits.
func TestYorksData(t *testing.T) {
	f := against(t)
	x := []float64{0.0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4}
	y := []float64{5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5}
	wx := []float64{1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1.0}
	wy := []float64{1.0, 1.8, 4.0, 8.0, 20, 20, 70, 70, 100, 500}
	points := plain(x, y)
	for i := range points {
		points[i].Ux, points[i].Uy = 1/math.Sqrt(wx[i]), 1/math.Sqrt(wy[i])
	}
	l, ok := Fit(points, false)
	if !ok || !l.Weighted {
		t.Fatal("no line")
	}
	f.near("slope", l.Slope, "-0.480533407", 1)
	f.near("intercept", l.Intercept, "5.47991022", 1)
	f.near("u(slope)", l.USlope, "0.0579850", 1)
	f.near("u(intercept)", l.UIntercept, "0.294971", 1)
	f.near("χ²", l.ChiSquare, "11.8663532", 1)
	b, a := leastSquare(x, y, wx, wy)
	f.near("slope, by trisection", b, "-0.480533407", 1)
	f.near("intercept, by trisection", a, "5.47991022", 1)
	if math.Abs(l.Slope-b) > 1e-10 {
		t.Errorf("slope %v, by trisection %v", l.Slope, b)
	}
}

// leastSquare finds the slope with the least S(b) = Σ W (V − b U)², W = 1/(1/ω_y + b²/ω_x).
func leastSquare(x, y, wx, wy []float64) (slope, intercept float64) {
	num := func(v float64) *big.Float { return new(big.Float).SetPrec(200).SetFloat64(v) }
	at := func(b *big.Float) (s, a *big.Float) {
		op := func() *big.Float { return new(big.Float).SetPrec(200) }
		weights := make([]*big.Float, len(x))
		sum, mx, my := op(), op(), op()
		for i := range x {
			v := op().Quo(op().Mul(b, b), num(wx[i]))
			v.Add(v, op().Quo(num(1), num(wy[i])))
			weights[i] = op().Quo(num(1), v)
			sum.Add(sum, weights[i])
			mx.Add(mx, op().Mul(weights[i], num(x[i])))
			my.Add(my, op().Mul(weights[i], num(y[i])))
		}
		mx.Quo(mx, sum)
		my.Quo(my, sum)
		s = op()
		for i := range x {
			off := op().Sub(op().Sub(num(y[i]), my), op().Mul(b, op().Sub(num(x[i]), mx)))
			s.Add(s, op().Mul(weights[i], op().Mul(off, off)))
		}
		return s, op().Sub(my, op().Mul(b, mx))
	}
	low, high := num(-1), num(0)
	for range 160 {
		third := new(big.Float).SetPrec(200).Quo(new(big.Float).SetPrec(200).Sub(high, low), num(3))
		left, right := new(big.Float).SetPrec(200).Add(low, third), new(big.Float).SetPrec(200).Sub(high, third)
		a, _ := at(left)
		b, _ := at(right)
		if a.Cmp(b) < 0 {
			high = right
		} else {
			low = left
		}
	}
	slope, _ = low.Float64()
	_, a := at(low)
	intercept, _ = a.Float64()
	return slope, intercept
}

// GUM F.1.2.3: a current V/R and a temperature t = α₀β²R² − t₀ share the standard R, so
// that u(I, t) = −2 I (t + t₀) (u(R)/R)²; GUM 5.2.2: ten resistors calibrated with one
// standard add up to u = 10·100 mΩ, not √10·100 mΩ. Both from memory.
func TestSharedInputsOfGUMF12(t *testing.T) {
	f := against(t)
	const volt, r, u, alpha, t0 = 10.0, 100.0, 0.03, 0.035, 15.0
	l, _ := Linearise(func(x, y []float64) bool {
		y[0], y[1] = volt/x[0], alpha*x[0]*x[0]-t0
		return true
	}, []Input{sure(r, part(u, 0))}, 2)
	want := -2 * (volt / r) * (alpha * r * r) * (u / r) * (u / r)
	if off := math.Abs(l.Covariance(0, 1)/want - 1); off > 1e-8 {
		t.Errorf("u(I, t) = %v, by hand %v", l.Covariance(0, 1), want)
	}
	ten := make([]Input, 11)
	for i := range ten {
		ten[i] = sure(0)
	}
	ten[10] = sure(1000, part(0.1, 0))
	l, _ = Linearise(func(x, y []float64) bool {
		y[0] = 0
		for _, off := range x[:10] {
			y[0] += off + x[10]
		}
		return true
	}, ten, 1)
	f.near("u(R)", l.U(0), "1.0", 0.5)
}

// A weighted line with errors in y alone is the least squares of the closed form, the
// same points in another order or unit have the same line, and points on a line have
// that line whatever their uncertainties are.
func TestLinesInOtherWriting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 8).Draw(t, "n")
		a, b := rapid.Float64Range(-5, 5).Draw(t, "a"), rapid.Float64Range(0.1, 5).Draw(t, "b")
		points := make([]Point, n)
		for i := range points {
			x := float64(i) + rapid.Float64Range(0, 0.5).Draw(t, "x")
			points[i] = Point{X: x, Y: a + b*x, Ux: rapid.Float64Range(0, 0.3).Draw(t, "ux"), Uy: rapid.Float64Range(0.01, 0.3).Draw(t, "uy")}
		}
		l, ok := Fit(points, false)
		if !ok || math.Abs(l.Slope-b) > 1e-9 || math.Abs(l.Intercept-a) > 1e-8 {
			t.Fatalf("%v + %v x, of a line %v + %v x", l.Intercept, l.Slope, a, b)
		}
		scaled := make([]Point, n)
		for i, p := range points {
			p.Y += rapid.Float64Range(-0.1, 0.1).Draw(t, "off")
			points[i] = p
			scaled[n-1-i] = Point{X: 1000 * p.X, Y: p.Y / 1000, Ux: 1000 * p.Ux, Uy: p.Uy / 1000}
		}
		l, _ = Fit(points, false)
		m, _ := Fit(scaled, false)
		if math.Abs(m.Slope*1e6/l.Slope-1) > 1e-7 || math.Abs(m.USlope*1e6/l.USlope-1) > 1e-7 || math.Abs(m.UIntercept*1e3/l.UIntercept-1) > 1e-7 {
			t.Fatalf("%+v, in other units %+v", l, m)
		}
	})
}
