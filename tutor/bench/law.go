package bench

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// function gives the outputs y for the inputs x; false where there are none. It
// keeps neither slice.
type function func(x, y []float64) bool

// uncertain is one input: its estimate and the independent parts of its
// uncertainty.
type uncertain struct {
	x     float64
	parts []Part
}

func (q uncertain) u() float64 { return Value{Parts: q.parts}.U() }

// law is the law of propagation of uncertainty at one place (GUM 5.1.2), for inputs
// that are independent of one another:
//
//	u(y, z) = Σ c_i d_i u_i²,   c_i = ∂y/∂x_i, d_i = ∂z/∂x_i
//
// Outputs that share inputs are not independent. Inputs that move together are taken
// as following causes that do not (GUM F.1.2). y holds the outputs, c[j][i] how
// output j follows input i.
type law struct {
	in []uncertain
	y  []float64
	c  [][]float64
}

// Steps of the central differences, as a share of the input and of its
// uncertainty: wide enough for the solver's last digits, narrow enough for a
// string at 1° to be straight over it.
const (
	shareOfInput       = 1e-5
	shareOfUncertainty = 1e-3
)

// linearise takes the derivatives of f by central differences about the
// estimates. Where f has no value on one side of an input, that derivative is no
// number; false where f has no value at the estimates.
func linearise(f function, in []uncertain, outputs int) (law, bool) {
	l := law{in: in, y: make([]float64, outputs), c: make([][]float64, outputs)}
	x := make([]float64, len(in))
	for i, q := range in {
		x[i] = q.x
	}
	for j := range l.c {
		l.c[j] = make([]float64, len(in))
	}
	if !f(x, l.y) {
		return l, false
	}
	up, down := make([]float64, outputs), make([]float64, outputs)
	for i, q := range in {
		h := step(q)
		x[i] = q.x + h
		ok := f(x, up)
		x[i] = q.x - h
		ok = f(x, down) && ok
		x[i] = q.x
		for j := range l.c {
			switch l.c[j][i] = (up[j] - down[j]) / (2 * h); {
			case !ok:
				l.c[j][i] = math.NaN()
			case isDust(up[j]-down[j], l.y[j]):
				l.c[j][i] = 0
			}
		}
	}
	return l, true
}

// isDust reports whether a change of x is what binary arithmetic leaves of none.
func isDust(change, x float64) bool { return math.Abs(change) < 1e-12*math.Abs(x) }

func step(q uncertain) float64 {
	if h := max(shareOfInput*math.Abs(q.x), shareOfUncertainty*q.u()); h > 0 {
		return h
	}
	return shareOfInput
}

// contribution is how much input i alone makes output j unsure, with its sign.
// An input without uncertainty adds nothing, whatever follows it.
func (l law) contribution(j, i int) float64 {
	u := l.in[i].u()
	if u == 0 {
		return 0
	}
	return l.c[j][i] * u
}

// covariance is that of two outputs; their variance where they are one.
func (l law) covariance(j, k int) float64 {
	sum := 0.0
	for i := range l.in {
		sum += l.contribution(j, i) * l.contribution(k, i)
	}
	return sum
}

// u is the standard uncertainty of output j.
func (l law) u(j int) float64 { return math.Sqrt(l.covariance(j, j)) }

// share is the part of the variance of output j that input i brings. All shares make
// one.
func (l law) share(j, i int) float64 {
	all := l.covariance(j, j)
	if all == 0 {
		return 0
	}
	return l.contribution(j, i) * l.contribution(j, i) / all
}

// nu is the effective degrees of freedom of output j (Welch and Satterthwaite,
// GUM G.2b), not yet truncated, +Inf where no part is short of readings.
func (l law) nu(j int) float64 {
	sum := 0.0
	for i, q := range l.in {
		for _, p := range q.parts {
			if p.Nu > 0 {
				sum += math.Pow(l.c[j][i]*p.U, 4) / float64(p.Nu)
			}
		}
	}
	if sum == 0 {
		return math.Inf(1)
	}
	return l.covariance(j, j) * l.covariance(j, j) / sum
}

// fewDegrees is below how many effective degrees of freedom Student's t takes the
// place of k = 2.
const fewDegrees = 10

// coverage is the factor of an expanded uncertainty and the degrees of freedom,
// truncated (GUM G.4.1), that it stands for; 0 for k = 2, which is about 95 % for
// what is nearly normal.
func coverage(nu float64) (k float64, truncated int) {
	if nu >= fewDegrees || math.IsNaN(nu) {
		return 2, 0
	}
	truncated = max(int(nu), 1)
	return distuv.StudentsT{Sigma: 1, Nu: float64(truncated)}.Quantile(0.975), truncated
}
