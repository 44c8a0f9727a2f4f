package bench

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker/quantity"

	"example.org/standstill/tutor/bench/measure"
)

// CautionBlock holds the cautions.
func CautionBlock() Block { return Block{Title: titleCaution, Lines: Cautions()} }

func (r *Result) saidAssumed(in *Input) string {
	source := r.form.origin(in.Field)
	if in.Good() {
		source += "; " + in.Taken
	}
	return fmt.Sprintf("%s = %s, exact, %s", in.Name(), r.form.File(in.Field), source)
}

// Titles of blocks.
const (
	titleCaution = "Caution"
	titleWarning = "Warning"
	titleLookAt  = "Possible causes" // of a difference
	titleLeft    = "Sums of the measured forces"
	titleLabBook = "For the lab book"
	titleMeaning = "What this means"
)

func (r *Result) predicted() Block {
	b := Block{Title: "Predicted"}
	for i := range r.Predicted {
		b.Lines = append(b.Lines, r.Predicted[i].said())
	}
	b.Lines = append(b.Lines, r.explained()...)
	return b
}

func (r *Result) compared() Block {
	b := Block{Title: "Compared"}
	for _, c := range r.Compared {
		b.Lines = append(b.Lines, c.said(), c.verdictSaid())
		if c.Pooled {
			b.Lines = append(b.Lines, saidPooled(c.Name()))
		}
	}
	if b.Lines != nil {
		b.Lines = slices.Concat(r.assumedFirst(), b.Lines, r.advice(), []string{saidEnMeans})
	}
	return b
}

func (r *Result) causes() Block { return Block{Title: titleLookAt, Lines: r.lookAt()} }

func (r *Result) better() Block {
	b := Block{Title: "How to measure better"}
	for i := range r.Predicted {
		p := &r.Predicted[i]
		if most, then, ok := p.Better(); ok {
			b.Lines = append(b.Lines, saidBetter(p, most, then))
		}
	}
	return b
}

// labBook is the line for the lab book: of what was read, or where nothing was, of what is
// predicted.
func (r *Result) labBook() Block {
	b := Block{Title: titleLabBook}
	for _, c := range r.Compared {
		b.Lines = append(b.Lines, c.Name()+" = "+c.labBook())
	}
	// Before anything is read there is still something to write down.
	if b.Lines == nil {
		for i := range r.Predicted {
			if line := r.Predicted[i].labBook(); line != "" {
				b.Lines = append(b.Lines, r.Predicted[i].Name+" = "+line+" (predicted)")
			}
		}
	}
	return b
}

// short is a prediction with its expanded uncertainty: "(3.591 ± 0.063) N".
func (p *Prediction) short() string {
	if p.FromTrials {
		// An interval of 95 % is about four standard uncertainties wide.
		wide := (p.High - p.Low) / 4
		return p.at(p.Low, wide) + " to " + p.at(p.High, wide)
	}
	return p.spread(p.Value, p.Expanded)
}

// explained says in one sentence each what the letters of the predictions mean.
func (r *Result) explained() []string {
	unsure, few := false, false
	for i := range r.Predicted {
		unsure = unsure || r.Predicted[i].U > 0
		few = few || r.Predicted[i].Nu > 0
	}
	for _, c := range r.Compared {
		unsure, few = unsure || c.U > 0, few || c.Nu > 0 || c.CombinedNu > 0
	}
	switch {
	case !unsure:
		return nil
	case few:
		return []string{saidUMeans, saidNuMeans}
	}
	return []string{saidUMeans}
}

// assumedFirst names what a comparison takes for granted.
func (r *Result) assumedFirst() []string {
	var assumed []string
	for i := range r.Inputs {
		if in := &r.Inputs[i]; in.Assumed {
			assumed = append(assumed, in.Name()+" = "+r.form.File(in.Field))
		}
	}
	if assumed == nil {
		return nil
	}
	return []string{saidAssumedFirst(assumed)}
}

// advice asks for repeated readings where single ones differ.
func (r *Result) advice() []string {
	var single []string
	for _, c := range r.Compared {
		// A single reading may be a slip, and only repeating it shows that.
		if c.Verdict == Differ && len(c.Field.Value.Readings) == 1 {
			single = append(single, c.Name())
		}
	}
	if single == nil {
		return nil
	}
	return []string{saidRepeat(single)}
}

func (p *Prediction) in(x float64) string {
	return measure.WithUnit(measure.QuoteU(x/p.Unit.Factor), p.Unit)
}

// at writes a value in SI with the figures that an uncertainty lets stand, a direction
// within the circle.
func (p *Prediction) at(x, u float64) string {
	x, u = x/p.Unit.Factor, u/p.Unit.Factor
	if p.Direction {
		// A reader expects 0.0°, not 360.0° or −0.1°.
		return measure.WithUnit(measure.QuoteTurning(x, u, 2*math.Pi/p.Unit.Factor), p.Unit)
	}
	value, _ := measure.Quote(x, u)
	return measure.WithUnit(value, p.Unit)
}

func (p *Prediction) said() string {
	switch {
	case p.FromTrials:
		// The spread of a long tail says little about where most trials are.
		wide := (p.High - p.Low) / 4
		return fmt.Sprintf("%s = %s; 95 %% of the random trials give a value between %s and %s (u = %s). %s",
			p.Name, p.at(p.Value, wide), p.at(p.Low, wide), p.at(p.High, wide), p.in(p.Spread), p.Why)
	case !(p.U > 0):
		return fmt.Sprintf("%[1]s = %[2]s, exact, because %[1]s depends only on exact values", p.Name, p.at(p.Value, 0))
	}
	return fmt.Sprintf("%s = %s, u = %s, U = %s (%s)", p.Name, p.at(p.Value, p.U), p.in(p.U), p.in(p.Expanded), measure.SaidCoverage(p.K, p.Nu))
}

// labBook is a prediction as a lab book has it, "" where it is exact or not the same to
// both sides.
func (p *Prediction) labBook() string {
	// An interval of the trials may lie to one side of the value, so no ± is true of it.
	if p.FromTrials || !(p.U > 0) {
		return ""
	}
	return p.spread(p.Value, p.Expanded) + ", " + measure.SaidCoverage(p.K, p.Nu)
}

// labBook is a reading as a lab book has it.
func (c *Comparison) labBook() string {
	said := c.Predicted.spread(c.Read, c.Expanded)
	if c.U > 0 {
		said += ", " + measure.SaidCoverage(c.K, c.Nu)
	}
	return said
}

// spread is "(9.80 ± 0.12) N", "9.80 N" where it is exact.
func (p *Prediction) spread(x, expanded float64) string {
	if !(expanded > 0) {
		return p.at(x, 0)
	}
	// The unit stands once, behind the brackets.
	value := strings.TrimSuffix(p.at(x, expanded), measure.WithUnit("", p.Unit))
	return measure.WithUnit("("+value+" ± "+measure.QuoteU(expanded/p.Unit.Factor)+")", p.Unit)
}

func (c *Comparison) said() string {
	p := c.Predicted
	read := fmt.Sprintf("%s: read %s", c.Name(), p.at(c.Read, c.Expanded))
	if !(c.U > 0) {
		read += ", " + measure.SaidExact
	} else {
		read += fmt.Sprintf(", U = %s (%s)", p.in(c.Expanded), measure.SaidCoverage(c.K, c.Nu))
	}
	return fmt.Sprintf("%s; predicted %s; Eₙ = %s", read, p.at(p.Value, p.reported()), saidEn(c.En))
}

func saidEn(x float64) string {
	if math.IsInf(x, 0) {
		// Eₙ divides by the combined uncertainty.
		return "infinite, because both values are taken as exact"
	}
	return measure.Round(x, -2)
}

// verdictSaid is the verdict with its numbers.
func (c *Comparison) verdictSaid() string {
	combined := fmt.Sprintf("their combined expanded uncertainty of %s (%s)", c.Predicted.in(c.Combined), c.factor())
	limit := percent(tooUnsure) + " of the value"
	if c.Predicted.Direction {
		// A share of an angle would say nothing: where 0° lies is a convention.
		limit = fmt.Sprintf("%.0f°", tooUnsureAngle/quantity.Degree)
	}
	return c.say(c.Name(), combined, ", which is more than "+combined, combined+" is over "+limit)
}

// shortSaid is the verdict beside the numbers of a table.
func (c *Comparison) shortSaid() string {
	const both = "their combined uncertainty"
	combined := c.Predicted.in(c.Combined)
	return c.say(verdictSigns[c.Verdict]+" "+c.Name(), both, "; "+both+" is only "+combined, both+" of "+combined+" is too large")
}

// say is the verdict in words, never "right" or "wrong": within what the two agree, what
// follows their difference, or why nobody can tell.
func (c *Comparison) say(what, within, differing, why string) string {
	switch c.Verdict {
	case Agree:
		return fmt.Sprintf("%s: reading and prediction agree within %s.", what, within)
	case Differ:
		return fmt.Sprintf("%s: reading and prediction differ by %s%s.", what, c.Predicted.in(math.Abs(c.Read-c.Predicted.Value)), differing)
	}
	return fmt.Sprintf("%s: you cannot tell whether reading and prediction agree, because %s.", what, why)
}

// factor words the coverage of the difference.
func (c *Comparison) factor() string {
	if c.Predicted.FromTrials {
		return "95 %"
	}
	return measure.SaidCoverage(c.CombinedK, c.CombinedNu)
}

func (l Leftover) said() string {
	x, u := measure.Quote(l.Value/l.Unit.Factor, l.Expanded/l.Unit.Factor)
	if u == "" {
		return fmt.Sprintf("%s = %s", l.Name(), measure.WithUnit(measure.Figured(l.Value/l.Unit.Factor, 2), l.Unit))
	}
	said := fmt.Sprintf("%s = %s, U = %s (%s)", l.Name(), measure.WithUnit(x, l.Unit), measure.WithUnit(measure.QuoteU(l.Expanded/l.Unit.Factor), l.Unit), measure.SaidCoverage(l.K, l.Nu))
	if l.Within() {
		return said + ", so zero is within the uncertainty."
	}
	return said + ", so zero is not within the uncertainty."
}

func saidBetter(p *Prediction, most Row, then float64) string {
	return fmt.Sprintf("%[1]s: %[2]s contributes most (%[3]s of the variance). If you halved the uncertainty of %[2]s, u would fall to %[4]s.",
		p.Name, most.Input.Name(), percent(most.Share), p.in(then))
}

func percent(share float64) string {
	switch {
	case share == 0:
		return "0 %"
	case share < 0.01:
		// Rounded, it would be 0 %, as if the input were exact.
		return "< 1 %"
	}
	return fmt.Sprintf("%.0f %%", 100*share)
}

// budget is the table of one prediction.
func (p *Prediction) budget() Block {
	b := Block{Title: "Uncertainty budget of " + p.Name, Head: []string{"input", "estimate", "u", "sensitivity", "share"}}
	for _, row := range p.Budget {
		in := row.Input
		x, u := measure.Quote(in.Estimate/in.Unit.Factor, in.U/in.Unit.Factor)
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
	o, i := shown(out), shown(in)
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
		// Each pair once: the coefficient is the same both ways round.
		for k := range j {
			if r.Predicted[j].U > 0 && r.Predicted[k].U > 0 {
				b.Lines = append(b.Lines, fmt.Sprintf("r(%s, %s) = %s", r.Predicted[k].Name, r.Predicted[j].Name, signed(r.law.Correlation(k, j))))
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

// checked tells what the random trials say of the law of propagation.
func (r *Result) checked() Block {
	b := Block{Title: "Check by random trials"}
	for i := range r.Predicted {
		p := &r.Predicted[i]
		// Equal trials confirm nothing.
		if p.Spread == 0 {
			continue
		}
		u := p.Spread
		said := "this confirms the law of propagation"
		if p.FromTrials {
			said = "the program uses the result of the trials"
			// As for the prediction: the interval tells where the trials are, however long their tails.
			u = (p.TrialsHigh - p.TrialsLow) / 4
		}
		b.Lines = append(b.Lines, fmt.Sprintf("%s: %s random trials (always the same ones) give %s, u = %s, with 95 %% of the values between %s and %s; %s.", p.Name, thousands(r.Draws),
			p.at(p.Mean, u), p.in(p.Spread), p.at(p.TrialsLow, u), p.at(p.TrialsHigh, u), said))
	}
	return b
}

// lookAt lists systematic errors, where something does not fit.
func (r *Result) lookAt() []string {
	odd := slices.ContainsFunc(r.Compared, func(c Comparison) bool { return c.Verdict == Differ }) ||
		slices.ContainsFunc(r.Left, func(l Leftover) bool { return l.U > 0 && !l.Within() })
	if !odd {
		return nil
	}
	return Systematic()
}

// shown is a unit by itself, as over a column.
func shown(u quantity.Unit) string {
	if u.Symbol == "deg" {
		return "°"
	}
	return measure.Symbol(u)
}
