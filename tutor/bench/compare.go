package bench

import (
	"math"
	"slices"

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
	Read, U, K         float64
	Nu                 int
	Expanded, Combined float64
	CombinedK          float64
	CombinedNu         int
	En                 float64
	Verdict            Verdict
	Pooled             bool // with the scatter of all repeated readings of its kind
}

// reading is what a scale or protractor showed, and which prediction it is of. Parts are
// those of its value, with the scatter that counts; pooled says that it is that of all.
type reading struct {
	*Field
	prediction int
	parts      []measure.Part
	pooled     bool
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
				all = append(all, reading{Field: e, prediction: j, parts: e.Value.Parts})
			}
		}
	}
	// Only with all readings there: the scatter is that of all of a kind.
	pool(all)
	return all
}

// pool puts the pooled scatter (GUM 4.2.4) of all repeated readings of a kind in the place
// of one that is less by chance: two readings often lie closer together than the scale is
// sure, and Welch and Satterthwaite then take the little that they scatter for certain.
func pool(all []reading) {
	for i := range all {
		q := &all[i]
		k := slices.IndexFunc(q.parts, isRepeats)
		if k < 0 {
			continue
		}
		squares, nu := 0.0, 0
		for _, other := range all {
			if k := slices.IndexFunc(other.Value.Parts, isRepeats); k >= 0 && other.Want.Dim == q.Want.Dim {
				p := other.Value.Parts[k]
				squares += float64(p.Nu) * float64(p.Nu+1) * p.U * p.U // Σ (x − mean)²
				nu += p.Nu
			}
		}
		// Never less than its own scatter: pooling must not make a reading surer than it looks.
		own := &q.parts[k]
		if u := math.Sqrt(squares / float64(nu) / float64(own.Nu+1)); u > own.U && nu > own.Nu {
			q.pooled, q.parts = true, slices.Clone(q.parts)
			q.parts[k].U, q.parts[k].Nu = u, nu
		}
	}
}

func isRepeats(p measure.Part) bool { return p.Cause == measure.Repeats }

// join makes the law of predictions and readings together. Its inputs are those of the
// predictions, then what the scale shares, then the readings as shown; its outputs are
// the predictions, then the readings e, corrected by the shared zero Z and calibration K:
//
//	x = (e − Z)·K,   ∂x/∂e = K,   ∂x/∂Z = −K,   ∂x/∂K = e − Z
//
// A reading with a zero of its own has that and not the shared one.
func (r *Result) join() {
	r.read = r.readings()
	l := measure.Law{In: slices.Clone(r.law.In), Y: slices.Clone(r.law.Y)}
	for _, in := range r.Inputs {
		r.keys = append(r.keys, in.Name()+" = "+in.Typed)
	}
	z, k := r.shared(&l, scaleZero, 0), r.shared(&l, scaleCalibration, 1)
	first := len(l.In)
	for _, q := range r.read {
		l.In = append(l.In, measure.Input{X: q.Value.Estimate, Parts: q.parts})
		// No key: a reading is its own, and is shared with no other run.
		r.keys = append(r.keys, "")
		x := q.Value.Estimate
		if q.Want.Dim == quantity.Force {
			x = (x - q.zeroOf(z.x)) * k.x
		}
		l.Y = append(l.Y, x)
	}
	l.C = make([][]float64, len(l.Y))
	for j := range l.C {
		row := make([]float64, len(l.In))
		l.C[j] = row
		if j < len(r.law.C) {
			copy(row, r.law.C[j])
			continue
		}
		i := j - len(r.law.C)
		q := r.read[i]
		row[first+i] = 1
		if q.Want.Dim == quantity.Force {
			row[first+i] = k.x
			// ∂x/∂Z, which is nothing for a reading with a zero of its own.
			z.put(row, -k.x*q.zeroOf(1))
			k.put(row, q.Value.Estimate-q.zeroOf(z.x))
		}
	}
	r.both = l
}

// zeroOf is the shared zero, 0 for a reading with one of its own.
func (q reading) zeroOf(shared float64) float64 {
	if q.Value.Zeroed {
		return 0
	}
	return shared
}

// ofScale is a value that readings share, and its place among the inputs, −1 where
// nothing was typed for it.
type ofScale struct {
	x  float64
	at int
}

func (s ofScale) put(row []float64, c float64) {
	if s.at >= 0 {
		row[s.at] = c
	}
}

// shared adds what readings share to the inputs of a law.
func (r *Result) shared(l *measure.Law, letter string, usual float64) ofScale {
	for i := range r.form.Fields {
		if e := &r.form.Fields[i]; e.Kind == Scale && e.Letter == letter && e.Good() {
			l.In = append(l.In, measure.Input{X: e.Value.Estimate, Parts: e.Value.Parts})
			r.keys = append(r.keys, e.Name()+" = "+e.Typed)
			return ofScale{e.Value.Estimate, len(l.In) - 1}
		}
	}
	return ofScale{usual, -1}
}

// compare puts every reading beside its prediction.
func (r *Result) compare() {
	r.join()
	for i, q := range r.read {
		r.Compared = append(r.Compared, r.comparison(r.both, q, len(r.Predicted)+i))
	}
}

// comparison is of the reading that is output k of the law.
func (r *Result) comparison(l measure.Law, q reading, k int) Comparison {
	p := &r.Predicted[q.prediction]
	c := Comparison{Field: q.Field, Predicted: p, Read: l.Y[k], U: l.U(k), Pooled: q.pooled}
	c.K, c.Nu = measure.Coverage(l.Nu(k))
	c.Expanded = c.K * c.U
	by := c.Read - p.Value
	if p.Direction {
		// 359° and 1° are two degrees apart.
		by = measure.Turn(by)
		c.Read = p.Value + by
	}
	difference := l.Difference(k, q.prediction)
	c.CombinedK, c.CombinedNu = measure.Coverage(difference.Nu(0))
	c.Combined = c.CombinedK * difference.U(0)
	if p.FromTrials {
		// From trials there is no covariance, so the two count as independent.
		c.Combined = math.Hypot(c.Expanded, p.towards(c.Read))
	}
	c.En = by / c.Combined
	switch {
	// Two exact values that are the same; the quotient would be no number.
	case c.Combined == 0 && by == 0:
		c.En, c.Verdict = 0, Agree
	// Before the question whether it tells anything: a gross difference counts however unsure both are.
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
