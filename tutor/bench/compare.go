package bench

import (
	"math"

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

// tooUnsure is the share of the value above which a combined expanded uncertainty
// tells nothing.
const tooUnsure = 0.20

// Comparison is a reading x beside the prediction X, by the normalised error
//
//	E_n = (x − X) / √(U_x² + U_X²)
//
// with expanded uncertainties (ISO/IEC Guide 43-1, as quoted in a paper of Accred.
// Qual. Assur. 2005 that was read). Values are in SI. Nu is the degrees of freedom of
// K, 0 for K = 2. Combined is the root.
type Comparison struct {
	*Field
	Predicted          *Prediction
	Value, U, K        float64
	Nu                 int
	Expanded, Combined float64
	En                 float64
	Verdict            Verdict
}

// compare lays every reading beside its prediction.
func (r *Result) compare() {
	for i := range r.form.Fields {
		e := &r.form.Fields[i]
		if e.Kind != Reading || !e.Good() || !e.Value.Measured {
			continue
		}
		for j := range r.Predicted {
			if r.Predicted[j].Letter == e.Letter {
				r.Compared = append(r.Compared, compare(e, &r.Predicted[j]))
			}
		}
	}
}

func compare(e *Field, p *Prediction) Comparison {
	c := Comparison{Field: e, Predicted: p, Value: e.Value.Estimate, U: e.Value.U()}
	alone := measure.Law{In: []measure.Input{{X: c.Value, Parts: e.Value.Parts}}, C: [][]float64{{1}}}
	c.K, c.Nu = measure.Coverage(alone.Nu(0))
	c.Expanded = c.K * c.U
	c.Combined = math.Hypot(c.Expanded, p.towards(c.Value))
	c.En = (c.Value - p.Value) / c.Combined
	switch {
	case c.Combined > tooUnsure*math.Abs(p.Value):
		c.Verdict = CannotTell
	case math.Abs(c.En) <= 1:
		c.Verdict = Agree
	default:
		c.Verdict = Differ
	}
	if c.Combined == 0 {
		c.En = 0
		if c.Value != p.Value {
			c.En, c.Verdict = math.Inf(1), Differ
		}
	}
	return c
}

// towards is how far the interval of a prediction reaches to the side of a value: an
// interval from draws need not be as wide on both.
func (p *Prediction) towards(x float64) float64 {
	if x < p.Value {
		return p.Value - p.Low
	}
	return p.High - p.Value
}
