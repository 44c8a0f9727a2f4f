package measure

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Function gives the outputs y for the inputs x; false where there are none. It
// keeps neither slice.
type Function func(x, y []float64) bool

// Input is one input: its estimate and the independent parts of its
// uncertainty.
type Input struct {
	X     float64
	Parts []Part
}

// U is the standard uncertainty.
func (q Input) U() float64 { return Value{Parts: q.Parts}.U() }

// Law is the law of propagation of uncertainty at one place (GUM 5.1.2), for inputs
// that are independent of one another:
//
//	u(y, z) = Σ c_i d_i u_i²,   c_i = ∂y/∂x_i, d_i = ∂z/∂x_i
//
// Outputs that share inputs are not independent. Inputs that move together are taken
// as following causes that do not (GUM F.1.2). Y holds the outputs, C[j][i] how
// output j follows input i.
type Law struct {
	In []Input
	Y  []float64
	C  [][]float64
}

// Steps of the central differences, as a share of the input and of its
// uncertainty: wide enough for the solver's last digits, narrow enough for a
// string at 1° to be straight over it.
const (
	shareOfInput       = 1e-5
	shareOfUncertainty = 1e-3
)

// Linearise takes the derivatives of f by central differences about the
// estimates. Where f has no value on one side of an input, that derivative is no
// number; false where f has no value at the estimates.
func Linearise(f Function, in []Input, outputs int) (Law, bool) {
	l := Law{In: in, Y: make([]float64, outputs), C: make([][]float64, outputs)}
	x := make([]float64, len(in))
	for i, q := range in {
		x[i] = q.X
	}
	for j := range l.C {
		l.C[j] = make([]float64, len(in))
	}
	if !f(x, l.Y) {
		return l, false
	}
	up, down := make([]float64, outputs), make([]float64, outputs)
	for i, q := range in {
		h := step(q)
		x[i] = q.X + h
		ok := f(x, up)
		// Central differences: what bends cancels, and only the third order is left.
		x[i] = q.X - h
		ok = f(x, down) && ok
		x[i] = q.X
		for j := range l.C {
			switch l.C[j][i] = (up[j] - down[j]) / (2 * h); {
			// On the edge of what has a solution there is no derivative, and one from the other side alone would pass for one.
			case !ok:
				l.C[j][i] = math.NaN()
			// The solver's last digits would become a sensitivity, with a row in the budget.
			case IsDust(up[j]-down[j], l.Y[j]):
				l.C[j][i] = 0
			}
		}
	}
	return l, true
}

// IsDust reports whether a change of x is what binary arithmetic leaves of none.
func IsDust(change, x float64) bool { return math.Abs(change) < 1e-12*math.Abs(x) }

func step(q Input) float64 {
	if h := max(shareOfInput*math.Abs(q.X), shareOfUncertainty*q.U()); h > 0 {
		return h
	}
	return shareOfInput
}

// contribution is how much input i alone makes output j unsure, with its sign.
// An input without uncertainty adds nothing, whatever follows it.
func (l Law) contribution(j, i int) float64 {
	u := l.In[i].U()
	// The derivative may be NaN, and NaN times zero is NaN.
	if u == 0 {
		return 0
	}
	return l.C[j][i] * u
}

// Covariance is that of two outputs; their variance where they are one.
func (l Law) Covariance(j, k int) float64 {
	sum := 0.0
	for i := range l.In {
		sum += l.contribution(j, i) * l.contribution(k, i)
	}
	return sum
}

// U is the standard uncertainty of output j.
func (l Law) U(j int) float64 { return math.Sqrt(l.Covariance(j, j)) }

// Share is the part of the variance of output j that input i brings. All shares make
// one.
func (l Law) Share(j, i int) float64 {
	all := l.Covariance(j, j)
	if all == 0 {
		return 0
	}
	return l.contribution(j, i) * l.contribution(j, i) / all
}

// Nu is the effective degrees of freedom of output j (Welch and Satterthwaite,
// GUM G.2b), not yet truncated, +Inf where no part is short of readings.
func (l Law) Nu(j int) float64 {
	sum := 0.0
	for i, q := range l.In {
		for _, p := range q.Parts {
			if p.Nu > 0 {
				sum += math.Pow(l.C[j][i]*p.U, 4) / float64(p.Nu)
			}
		}
	}
	if sum == 0 {
		return math.Inf(1)
	}
	return l.Covariance(j, j) * l.Covariance(j, j) / sum
}

// Coverage is the factor of an expanded uncertainty of about 95 %: Student's t for the
// effective degrees of freedom, truncated (GUM G.4.1), and never less than 2. nu is 0
// where the factor is 2, as it is from 61 degrees on.
func Coverage(nu float64) (k float64, truncated int) {
	if math.IsInf(nu, 1) || math.IsNaN(nu) {
		return 2, 0
	}
	// Truncated and not rounded: with fewer degrees of freedom the factor errs to the wide side.
	truncated = max(int(nu), 1)
	k = distuv.StudentsT{Sigma: 1, Nu: float64(truncated)}.Quantile(0.975)
	if k <= 2 {
		return 2, 0
	}
	return k, truncated
}

// Correlation is the correlation coefficient of two outputs, 0 where one of them is
// exact.
func (l Law) Correlation(j, k int) float64 {
	u := l.U(j) * l.U(k)
	switch {
	case u == 0:
		return 0
	case j == k:
		return 1
	}
	// Rounding alone may go past 1 where two outputs follow one input.
	return max(-1, min(1, l.Covariance(j, k)/u))
}

// Difference is the law of one output: output j less output k.
func (l Law) Difference(j, k int) Law {
	d := Law{In: l.In, Y: []float64{l.Y[j] - l.Y[k]}, C: [][]float64{make([]float64, len(l.In))}}
	for i := range l.In {
		d.C[0][i] = l.C[j][i] - l.C[k][i]
	}
	return d
}
