package bench

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker/quantity"

	"example.org/standstill/tutor/bench/measure"
)

// Blocks is everything that a run comes to, in the order in which it is told:
// warnings first, cautions last.
func (r *Result) Blocks() []Block {
	blocks := []Block{{Title: "Warning", Lines: r.Warnings}}
	blocks = append(blocks, r.MeasuredBlocks()...)
	blocks = append(blocks, r.Main()...)
	blocks = append(blocks, r.Details()...)
	return append(blocks, Block{Title: "Caution", Lines: Cautions()})
}

// MeasuredBlocks tells what was put into the sums.
func (r *Result) MeasuredBlocks() []Block {
	measured, assumed := Block{Title: "Measured"}, Block{Title: "Assumed"}
	for i := range r.Inputs {
		in := &r.Inputs[i]
		if in.Assumed {
			assumed.Lines = append(assumed.Lines, r.saidAssumed(in))
			continue
		}
		measured.Lines = append(measured.Lines, in.Name()+" = "+in.Taken)
	}
	for i := range r.form.Fields {
		if e := &r.form.Fields[i]; e.Kind == Reading && e.Good() {
			measured.Lines = append(measured.Lines, e.Name()+", read: "+e.Taken)
		}
	}
	return []Block{measured, assumed}
}

func (r *Result) saidAssumed(in *Input) string {
	source := r.form.origin(in.Field)
	if in.Good() {
		source += "; " + in.Taken
	}
	return fmt.Sprintf("%s = %s, exact, %s", in.Name(), r.form.File(in.Field), source)
}

// Titles that are asked for elsewhere.
const (
	titleLookAt = "Look at" // what may be off by the same amount every time
	titleLeft   = "Left over of the measured pulls"
)

// Main is the short of it: predictions, comparisons, what is left over, what to
// measure better.
func (r *Result) Main() []Block {
	predicted, better, compared, left := Block{Title: "Predicted"}, Block{Title: "Measure better"}, Block{Title: "Compared"}, Block{Title: titleLeft}
	for i := range r.Predicted {
		p := &r.Predicted[i]
		predicted.Lines = append(predicted.Lines, p.said())
		if b, ok := p.Better(); ok {
			better.Lines = append(better.Lines, saidBetter(p, b))
		}
	}
	for _, c := range r.Compared {
		compared.Lines = append(compared.Lines, c.said(), c.verdictSaid())
	}
	for _, l := range r.Left {
		left.Lines = append(left.Lines, l.said())
	}
	left.Lines = append(left.Lines, r.NoSum...)
	return []Block{predicted, compared, left, {Title: titleLookAt, Lines: r.lookAt()}, better}
}

// Details are the budgets, the correlations and the check by draws.
func (r *Result) Details() []Block {
	var blocks []Block
	for i := range r.Predicted {
		blocks = append(blocks, r.Predicted[i].budget())
	}
	return append(blocks, r.correlations(), r.checked())
}

func (p *Prediction) in(x float64) string {
	return measure.WithUnit(measure.QuoteU(x/p.Unit.Factor), p.Unit)
}

func (p *Prediction) said() string {
	x, u := measure.Quote(p.Value/p.Unit.Factor, p.U/p.Unit.Factor)
	if p.Drawn {
		x, u = measure.Quote(p.Value/p.Unit.Factor, p.Spread/p.Unit.Factor)
		place := measure.TwoFigures(p.Spread / p.Unit.Factor)
		low, high := measure.Round(p.Low/p.Unit.Factor, place), measure.Round(p.High/p.Unit.Factor, place)
		return fmt.Sprintf("%s = %s; 95 %% of the draws lie between %s and %s (u = %s). %s",
			p.Name, measure.WithUnit(x, p.Unit), measure.WithUnit(low, p.Unit), measure.WithUnit(high, p.Unit), measure.WithUnit(u, p.Unit), p.Why)
	}
	if u == "" {
		return fmt.Sprintf("%s = %s, exact, since everything that it follows from is taken as exact", p.Name, measure.WithUnit(x, p.Unit))
	}
	return fmt.Sprintf("%s = %s, u = %s, U = %s (%s)", p.Name, measure.WithUnit(x, p.Unit), measure.WithUnit(u, p.Unit), p.in(p.Expanded), measure.SaidCoverage(p.K, p.Nu))
}

func (c *Comparison) said() string {
	unit := c.Predicted.Unit
	x, u := measure.Quote(c.Value/unit.Factor, c.U/unit.Factor)
	read := fmt.Sprintf("%s: read %s", c.Name(), measure.WithUnit(x, unit))
	if u == "" {
		read += ", " + measure.SaidExact
	} else {
		read += fmt.Sprintf(", U = %s (%s)", c.Predicted.in(c.Expanded), measure.SaidCoverage(c.K, c.Nu))
	}
	predicted, _ := measure.Quote(c.Predicted.Value/unit.Factor, c.Predicted.U/unit.Factor)
	return fmt.Sprintf("%s; predicted %s; E_n = %s", read, measure.WithUnit(predicted, unit), saidEn(c.En))
}

func saidEn(x float64) string {
	if math.IsInf(x, 0) {
		return "beyond measure, since nothing is said to be unsure"
	}
	return measure.Round(x, -2)
}

// verdictSaid is the verdict in words, never "right" or "wrong".
func (c *Comparison) verdictSaid() string {
	combined := fmt.Sprintf("their combined expanded uncertainty (%s), %s", c.factor(), c.Predicted.in(c.Combined))
	switch c.Verdict {
	case Agree:
		return fmt.Sprintf("%s: they agree within %s.", c.Name(), combined)
	case Differ:
		return fmt.Sprintf("%s: they differ by more than %s: by %s.", c.Name(), combined, c.Predicted.in(math.Abs(c.Value-c.Predicted.Value)))
	}
	return fmt.Sprintf("%s: cannot tell; %s, is over 20 %% of the value.", c.Name(), combined)
}

// factor words the coverage of both sides.
func (c *Comparison) factor() string {
	if c.Nu == 0 && c.Predicted.Nu == 0 && !c.Predicted.Drawn {
		return "k = 2"
	}
	return "95 %"
}

func (l Leftover) said() string {
	x, u := measure.Quote(l.Value/l.Unit.Factor, l.U/l.Unit.Factor)
	if u == "" {
		return fmt.Sprintf("%s = %s", l.Name(), measure.WithUnit(measure.Figured(l.Value/l.Unit.Factor, 2), l.Unit))
	}
	said := fmt.Sprintf("%s = %s, U = %s (%s)", l.Name(), measure.WithUnit(x, l.Unit), measure.WithUnit(measure.QuoteU(l.Expanded/l.Unit.Factor), l.Unit), measure.SaidCoverage(l.K, l.Nu))
	if l.Within() {
		return said + ": zero lies within it."
	}
	return said + ": more than the uncertainties explain."
}

func saidBetter(p *Prediction, b Better) string {
	return fmt.Sprintf("%s: %s has the largest share, %s; half its uncertainty brings u to %s.",
		p.Name, b.Input.Name(), percent(b.Share), p.in(b.Then))
}

func percent(share float64) string {
	switch {
	case share == 0:
		return "0 %"
	case share < 0.01:
		return "< 1 %"
	}
	return fmt.Sprintf("%.0f %%", 100*share)
}

// budget is the table of one prediction.
func (p *Prediction) budget() Block {
	b := Block{Title: "Budget of " + p.Name, Head: []string{"input", "estimate", "u", "sensitivity", "share"}}
	for _, row := range p.Budget {
		in := row.Input
		x, u := measure.Quote(in.Value/in.Unit.Factor, in.U/in.Unit.Factor)
		if u == "" {
			u = "exact"
		} else {
			u = measure.WithUnit(u, in.Unit)
		}
		c := measure.Figured(row.Sensitivity*in.Unit.Factor/p.Unit.Factor, 3)
		b.Rows = append(b.Rows, []string{in.Name(), measure.WithUnit(x, in.Unit), u, strings.TrimSpace(c + " " + per(p.Unit, in.Unit)), percent(row.Share)})
	}
	return b
}

// per is the unit of a sensitivity.
func per(out, in quantity.Unit) string {
	bare := func(u quantity.Unit) string {
		if u.Symbol == "deg" {
			return "°"
		}
		return measure.Symbol(u)
	}
	o, i := bare(out), bare(in)
	switch {
	case i == "":
		return o
	case o == "":
		return "1/" + bracketed(i)
	}
	return o + "/" + bracketed(i)
}

func bracketed(unit string) string {
	if strings.Contains(unit, "/") {
		return "(" + unit + ")"
	}
	return unit
}

// correlations tells how far the predictions move together.
func (r *Result) correlations() Block {
	b := Block{Title: "Correlation"}
	for j := range r.Predicted {
		for k := range j {
			if r.Predicted[j].U > 0 && r.Predicted[k].U > 0 {
				b.Lines = append(b.Lines, fmt.Sprintf("r(%s, %s) = %s", r.Predicted[k].Name, r.Predicted[j].Name, signed(r.Correlation[k][j])))
			}
		}
	}
	return b
}

// signed writes a correlation coefficient with three decimals and its sign.
func signed(x float64) string {
	s := measure.Round(x, -3)
	if x > 0 {
		return "+" + s
	}
	return s
}

// checked tells what the draws say of the law of propagation.
func (r *Result) checked() Block {
	b := Block{Title: "Check by draws"}
	for i := range r.Predicted {
		p := &r.Predicted[i]
		if p.Spread == 0 {
			continue
		}
		mean, u := measure.Quote(p.Mean/p.Unit.Factor, p.Spread/p.Unit.Factor)
		low, _ := measure.Quote(p.DrawnLow/p.Unit.Factor, p.Spread/p.Unit.Factor)
		high, _ := measure.Quote(p.DrawnHigh/p.Unit.Factor, p.Spread/p.Unit.Factor)
		said := "the law of propagation stands"
		if p.Drawn {
			said = "the draws count"
		}
		b.Lines = append(b.Lines, fmt.Sprintf("%s: %s draws with a fixed seed give %s, u = %s, 95 %% between %s and %s; %s.", p.Name, thousands(r.Draws),
			measure.WithUnit(mean, p.Unit), measure.WithUnit(u, p.Unit), measure.WithUnit(low, p.Unit), measure.WithUnit(high, p.Unit), said))
	}
	return b
}

// lookAt lists what can be off by the same amount every time, where something does
// not fit.
func (r *Result) lookAt() []string {
	odd := slices.ContainsFunc(r.Compared, func(c Comparison) bool { return c.Verdict == Differ }) ||
		slices.ContainsFunc(r.Left, func(l Leftover) bool { return l.U > 0 && !l.Within() })
	if !odd {
		return nil
	}
	return []string{saidSystematic}
}
