package bench

import (
	"math"
	"slices"

	"example.org/standstill/tutor/bench/measure"
)

// mostFailed is the share of trials without a solution above which the law of
// propagation is not trusted either.
const mostFailed = 0.001

// check compares the law with random trials. Where a prediction that depends on few readings
// has to be taken from trials, these are made again with the long tails of Student's t.
func (r *Result) check(f measure.Function, in []measure.Input) {
	// Where every value is exact, all trials are the same.
	if !slices.ContainsFunc(r.Inputs, func(i Input) bool { return i.U > 0 }) {
		return
	}
	s := measure.Simulate(f, in, len(r.Predicted), r.Draws, measure.Normal)
	r.Failed = s.Failed
	// The count of the first trials is kept: the second ones, with their long tails, would add to it.
	defer func(pushed int) { r.Pushed = pushed }(r.Pushed)
	var tailed *measure.Trials
	for j := range r.Predicted {
		p := &r.Predicted[j]
		p.Mean, p.Spread, p.TrialsLow, p.TrialsHigh = s.Mean[j], s.U[j], s.Low[j], s.High[j]
		// What is left of equal trials is the rounding of the machine.
		if measure.IsDust(p.Spread, p.Value) {
			p.Mean, p.Spread, p.TrialsLow, p.TrialsHigh = p.Value, 0, p.Value, p.Value
		}
		if p.Why = r.disagree(p); p.Why == "" || s.Count < 2 {
			continue
		}
		// Few readings: with a normal distribution the trials would stay too close to the estimate.
		if p.Nu > 0 {
			if tailed == nil {
				again := measure.Simulate(f, in, len(r.Predicted), r.Draws, measure.StudentT)
				tailed = &again
			}
			p.TrialsLow, p.TrialsHigh = tailed.Low[j], tailed.High[j]
		}
		p.FromTrials, p.Low, p.High = true, p.TrialsLow, p.TrialsHigh
	}
}

// disagree says why the trials count, "" where they agree with the law.
func (r *Result) disagree(p *Prediction) string {
	off := max(math.Abs(p.Spread-p.U), math.Abs(p.Mean-p.Value))
	switch {
	case float64(r.Failed) > mostFailed*float64(r.Draws):
		return r.saidFailed(p)
	case off > measure.Agreement*p.U && p.U > 0, p.U == 0 && p.Spread > 0:
		return r.saidBends(p)
	}
	return ""
}
