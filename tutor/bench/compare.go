package bench

import (
	"math"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/tutor/bench/measure"
)

// Verdict is what a comparison comes to. There is no right and wrong about a
// measurement.
type Verdict string

// The verdicts.
const (
	Agree      Verdict = "agree"
	Differ     Verdict = "differ"
	CannotTell Verdict = "cannot tell"
)

// A combined expanded uncertainty tells nothing above this share of the value, or, of
// a direction, which has no size, above this angle.
const (
	tooUnsure      = 0.20
	tooUnsureAngle = 5 * quantity.Degree
)

// Comparison is a reading x beside the prediction X, by the normalised error
//
//	E_n = (x − X) / U(x − X)
//
// (ISO/IEC Guide 43-1, as quoted in a paper of Accred. Qual. Assur. 2005 that was
// read). U(x − X) follows from the law of propagation over everything that x and X hang
// on, what both hang on counted once; where they share nothing and k is 2, it is
// √(U_x² + U_X²). Values are in SI. Nu is the degrees of freedom of K, 0 for K = 2;
// CombinedK and CombinedNu are those of the difference, and Combined is U(x − X).
type Comparison struct {
	*Field
	Predicted          *Prediction
	Value, U, K        float64
	Nu                 int
	Expanded, Combined float64
	CombinedK          float64
	CombinedNu         int
	En                 float64
	Verdict            Verdict
}

// reading is a scale's or protractor's reading as a function of all inputs: the
// readings stand behind the givens in joint.
type reading struct {
	*Field
	prediction int
}

// readings are the good ones, in the order of the form.
func (r *Result) readings() []reading {
	var all []reading
	for i := range r.form.Fields {
		e := &r.form.Fields[i]
		if e.Kind != Reading || !e.Good() || !e.Value.Measured {
			continue
		}
		for j := range r.Predicted {
			if r.Predicted[j].Letter == e.Letter {
				all = append(all, reading{e, j})
			}
		}
	}
	return all
}

// joint is the law of predictions and readings together: outputs are first the
// predictions, then the readings.
func (r *Result) joint(readings []reading) measure.Law {
	l := measure.Law{In: append([]measure.Input(nil), r.law.In...), Y: append([]float64(nil), r.law.Y...)}
	for _, q := range readings {
		l.In = append(l.In, measure.Input{X: q.Value.Estimate, Parts: q.Value.Parts})
		l.Y = append(l.Y, q.Value.Estimate)
	}
	l.C = make([][]float64, len(l.Y))
	for j := range l.C {
		l.C[j] = make([]float64, len(l.In))
		if j < len(r.law.C) {
			copy(l.C[j], r.law.C[j])
		} else {
			l.C[j][len(r.law.In)+j-len(r.law.C)] = 1
		}
	}
	return l
}

// compare puts every reading beside its prediction.
func (r *Result) compare() {
	readings := r.readings()
	l := r.joint(readings)
	for i, q := range readings {
		r.Compared = append(r.Compared, r.comparison(l, q, len(r.Predicted)+i))
	}
}

// comparison is of the reading that is output k of the law.
func (r *Result) comparison(l measure.Law, q reading, k int) Comparison {
	p := &r.Predicted[q.prediction]
	c := Comparison{Field: q.Field, Predicted: p, Value: l.Y[k], U: l.U(k)}
	c.K, c.Nu = measure.Coverage(l.Nu(k))
	c.Expanded = c.K * c.U
	by := c.Value - p.Value
	if p.Direction {
		by = measure.Turn(by)
		c.Value = p.Value + by
	}
	difference := l.Difference(k, q.prediction)
	c.CombinedK, c.CombinedNu = measure.Coverage(difference.Nu(0))
	c.Combined = c.CombinedK * difference.U(0)
	if p.Drawn {
		c.Combined = math.Hypot(c.Expanded, p.towards(c.Value))
	}
	c.En = by / c.Combined
	switch {
	case c.Combined == 0 && by == 0:
		c.En, c.Verdict = 0, Agree
	case math.Abs(c.En) > 1:
		c.Verdict = Differ
	case c.Combined > p.most():
		c.Verdict = CannotTell
	default:
		c.Verdict = Agree
	}
	return c
}

// most is the largest combined expanded uncertainty that still tells something.
func (p *Prediction) most() float64 {
	if p.Direction {
		return tooUnsureAngle
	}
	return tooUnsure * math.Abs(p.Value)
}

// towards is how far the interval of a prediction reaches to the side of a value: an
// interval from trials need not be as wide on both.
func (p *Prediction) towards(x float64) float64 {
	if x < p.Value {
		return p.Value - p.Low
	}
	return p.High - p.Value
}
