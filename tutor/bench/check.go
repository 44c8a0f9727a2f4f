package bench

import (
	"cmp"
	"math"
	"slices"
)

// Where the draws and the law of propagation differ by more than this share of the
// standard uncertainty, in the value or in the uncertainty, the draws count.
const agreement = 0.05

// mostFailed is the share of draws without a solution above which the law of
// propagation is not trusted either.
const mostFailed = 0.001

// check draws lots and compares. Where a prediction that hangs on few readings has to
// be taken from draws, they are drawn again with the long tails of Student's t.
func (r *Result) check(f function, in []uncertain) {
	if !slices.ContainsFunc(r.Inputs, func(i Input) bool { return i.U > 0 }) {
		return
	}
	s := simulate(f, in, len(r.Predicted), r.Draws, normal)
	r.Failed = s.failed
	var tailed *sample
	for j := range r.Predicted {
		p := &r.Predicted[j]
		p.Mean, p.Spread, p.DrawnLow, p.DrawnHigh = s.mean[j], s.u[j], s.low[j], s.high[j]
		if isDust(p.Spread, p.Value) {
			p.Mean, p.Spread, p.DrawnLow, p.DrawnHigh = p.Value, 0, p.Value, p.Value
		}
		if p.Why = r.disagree(p); p.Why == "" || s.count < 2 {
			continue
		}
		if p.Nu > 0 {
			if tailed == nil {
				again := simulate(f, in, len(r.Predicted), r.Draws, studentT)
				tailed = &again
			}
			p.DrawnLow, p.DrawnHigh = tailed.low[j], tailed.high[j]
		}
		p.Drawn, p.Low, p.High = true, p.DrawnLow, p.DrawnHigh
	}
}

// disagree says why the draws count, "" where they agree with the law.
func (r *Result) disagree(p *Prediction) string {
	off := max(math.Abs(p.Spread-p.U), math.Abs(p.Mean-p.Value))
	switch {
	case float64(r.Failed) > mostFailed*float64(r.Draws):
		return r.saidFailed(p)
	case off > agreement*p.U && p.U > 0, p.U == 0 && p.Spread > 0:
		return r.saidBends(p)
	}
	return ""
}

func sortBudget(rows []Row) {
	slices.SortStableFunc(rows, func(a, b Row) int { return cmp.Compare(b.Share, a.Share) })
}

// correlated is the correlation coefficient of two outputs, 0 where one of them is
// exact.
func (l law) correlated(j, k int) float64 {
	u := l.u(j) * l.u(k)
	switch {
	case u == 0:
		return 0
	case j == k:
		return 1
	}
	return max(-1, min(1, l.covariance(j, k)/u))
}

// Better is what would make a prediction surer: the input with the largest share, and
// the standard uncertainty once that input's is halved.
type Better struct {
	Input *Input
	Share float64
	Then  float64
}

// Better says what to measure better; false where everything is exact.
func (p *Prediction) Better() (Better, bool) {
	if len(p.Budget) == 0 || p.Budget[0].Share == 0 {
		return Better{}, false
	}
	most := p.Budget[0]
	return Better{most.Input, most.Share, p.U * math.Sqrt(1-0.75*most.Share)}, true
}
