package bench

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/tutor/bench/measure"
	"example.org/standstill/tutor/picture"
)

// Blocks is what is the same in all runs, and the series in tables, one for each letter
// that was read.
func (s *Series) Blocks() []Block {
	same, varied := s.same()
	var blocks []Block
	for _, letter := range s.letters() {
		blocks = append(blocks, s.table(letter, varied))
	}
	common := Block{Title: "In all runs"}
	if len(same) > 0 {
		var names []string
		for _, in := range same {
			names = append(names, in.Name()+" = "+in.cell())
		}
		common.Lines = append(common.Lines, saidSame(names))
	}
	biases := s.Biases()
	for i := range biases {
		common.Lines = append(common.Lines, biases[i].said()...)
	}
	// With fewer runs nothing could have been found, so nothing is said.
	if biases == nil && len(s.Computed) >= leastBias && len(s.letters()) > 0 {
		common.Lines = append(common.Lines, saidNoBias)
	}
	return append([]Block{common}, blocks...)
}

// cell is an input's value as it is shown in a table.
func (in *Input) cell() string {
	x, _ := measure.Quote(in.Estimate/in.Unit.Factor, in.U/in.Unit.Factor)
	return measure.WithUnit(x, in.Unit)
}

func (s *Series) table(letter string, varied []*Input) Block {
	residuals := s.Residuals(letter)
	b := Block{Title: expr.Set(letter) + " in all runs", Head: []string{"run"}}
	groups := s.severalGroups()
	if groups {
		b.Head = append(b.Head, "group")
	}
	for _, in := range varied {
		b.Head = append(b.Head, in.Name())
	}
	// The last column holds the verdict, which needs no head.
	b.Head = append(b.Head, "read", "predicted", "difference", "U", "")
	for _, r := range residuals {
		row := []string{fmt.Sprint(r.Number)}
		if groups {
			row = append(row, r.About.group())
		}
		for _, in := range varied {
			row = append(row, r.cellOf(in.Name()))
		}
		p := r.Predicted
		by, _ := measure.Quote(r.By/p.Unit.Factor, r.Combined/p.Unit.Factor)
		if r.By > 0 {
			by = "+" + by
		}
		b.Rows = append(b.Rows, append(row, p.at(r.Read, r.Expanded), p.at(p.Value, p.reported()),
			measure.WithUnit(by, p.Unit), p.in(r.Combined), verdictSigns[r.Verdict]+" "+string(r.Verdict)))
	}
	return b
}

func (r *Result) cellOf(name string) string {
	for i := range r.Inputs {
		if in := &r.Inputs[i]; in.Name() == name {
			return in.cell()
		}
	}
	return "–"
}

// severalGroups reports whether the runs are of more than one group.
func (s *Series) severalGroups() bool {
	first := s.Computed[0].About.group()
	return slices.ContainsFunc(s.Computed, func(t Computed) bool { return t.About.group() != first })
}

// said says a bias: how large, and where to look for its cause.
func (b *Bias) said() []string {
	p := b.Residuals[0].Predicted
	direction := "high"
	if b.Mean < 0 {
		direction = "low"
	}
	mean, _ := measure.Quote(math.Abs(b.Mean)/p.Unit.Factor, 2*b.Own/p.Unit.Factor)
	// Where all is exact there is no place to round to.
	if b.Own == 0 {
		mean = measure.Figured(math.Abs(b.Mean)/p.Unit.Factor, 2)
	}
	lines := []string{saidBias(b.Name, measure.WithUnit(mean, p.Unit), direction, len(b.Residuals))}
	switch {
	// A direction is read from a protractor, which cannot be out by a factor.
	case p.Unit.Dim != quantity.Force:
		lines = append(lines, saidLookAtZeroLine)
	case b.Line == nil:
		lines = append(lines, saidLookAtScale)
	case b.Zero && !b.Scale:
		lines = append(lines, saidLookAtZero(b.Name))
	case b.Scale && !b.Zero:
		lines = append(lines, saidLookAtCalibration(b.Name))
	default:
		lines = append(lines, saidLookAtBoth)
	}
	// With what all runs share counted too, the bias is no longer larger than its uncertainty.
	if math.Abs(b.Mean) <= standsOut*b.U {
		lines = append(lines, saidSharedExplains)
	}
	return lines
}

// Blocks tells a line: its table, its coefficients, and what the equations say of them.
func (l *StraightLine) Blocks() []Block {
	table := Block{Title: l.Title(), Head: []string{"run", l.X.Name, "u", l.Y.Name, "u", "above the line"}}
	for _, p := range l.Points {
		x, ux := measure.Quote(p.Read.X/l.X.Unit.Factor, p.Read.Ux/l.X.Unit.Factor)
		y, uy := measure.Quote(p.Read.Y/l.Y.Unit.Factor, p.Read.Uy/l.Y.Unit.Factor)
		off := (p.Read.Y - l.Read.Intercept - l.Read.Slope*p.Read.X) / l.Y.Unit.Factor
		// Without uncertainties of its own a point is rounded by the scatter about the line.
		over, _ := measure.Quote(off, max(p.Read.Uy/l.Y.Unit.Factor, l.Read.Spread/l.Y.Unit.Factor))
		table.Rows = append(table.Rows, []string{fmt.Sprint(p.Number), measure.WithUnit(x, l.X.Unit), ux, measure.WithUnit(y, l.Y.Unit), uy, measure.WithUnit(over, l.Y.Unit)})
	}
	line := Block{Title: "Straight line", Lines: []string{l.coefficient("slope", func(c Coefficients) float64 { return c.Slope })}}
	if !l.Read.Origin {
		line.Lines = append(line.Lines, l.coefficient("intercept", func(c Coefficients) float64 { return c.Intercept }))
	} else {
		line.Lines = append(line.Lines, "The line goes through the origin.")
	}
	line.Lines = append(line.Lines, l.quality(), saidUMeans)
	if l.Unread > 0 {
		line.Lines = append(line.Lines, saidUnreadRuns(l.Unread))
	}
	return []Block{table, line}
}

// Title names a line by its axes.
func (l *StraightLine) Title() string { return l.Y.Name + " against " + l.X.Name }

// coefficient says slope or intercept, and what the equations say it should be.
func (l *StraightLine) coefficient(name string, of func(Coefficients) float64) string {
	unit, factor := shown(l.Y.Unit), l.Y.Unit.Factor
	read := Coefficients{l.Read.Slope, l.Read.Intercept}
	predicted := Coefficients{l.Predicted.Slope, l.Predicted.Intercept}
	if name == "slope" {
		unit, factor = per(l.Y.Unit, l.X.Unit), l.Y.Unit.Factor/l.X.Unit.Factor
	}
	k, nu := l.Read.Coverage()
	show := func(x, u float64) string {
		value, unsure := measure.Quote(x/factor, k*u/factor)
		if unsure == "" {
			return strings.TrimSpace(value + " " + unit)
		}
		return strings.TrimSpace("(" + value + " ± " + unsure + ") " + unit)
	}
	said := fmt.Sprintf("%s = %s, u = %s, %s", name, show(of(read), of(l.URead)), strings.TrimSpace(measure.QuoteU(of(l.URead)/factor)+" "+unit), measure.SaidCoverage(k, nu))
	if !l.IsStraight {
		return said + ". According to the equations, these points are not on a straight line. The best line through the predicted points has the " + name + " " + show(of(predicted), of(l.UPredicted)) + "."
	}
	expected := show(of(predicted), of(l.UPredicted))
	// The predicted points lie on a line through zero but for the solver's last digits.
	if math.Abs(of(predicted)) <= 1e-6*l.height() && name == "intercept" {
		expected = "zero"
	}
	if name == "slope" && l.Letter != "" {
		expected = l.Letter + " = " + expected
	}
	said += "; the equations predict " + expected
	// The difference has its own uncertainty: what both lines share, such as the mass, cancels in part.
	difference, limit := math.Abs(of(read)-of(predicted)), k*of(l.UDifference)
	if difference <= limit {
		return said + ": the two values agree."
	}
	return said + fmt.Sprintf(": the two values differ by %s, which is more than the uncertainty of the difference (%s).", strings.TrimSpace(measure.QuoteU(difference/factor)+" "+unit), strings.TrimSpace(measure.QuoteU(limit/factor)+" "+unit))
}

// height is the largest predicted value.
func (l *StraightLine) height() float64 {
	height := 0.0
	for _, p := range l.Points {
		height = max(height, math.Abs(p.Predicted.Y))
	}
	return height
}

// quality says how well the points fit the line.
func (l *StraightLine) quality() string {
	if !l.Read.Weighted {
		return saidScatter(measure.WithUnit(measure.QuoteU(l.Read.Spread/l.Y.Unit.Factor), l.Y.Unit), l.Read.Nu)
	}
	// χ²/ν would be 0/0.
	if l.Read.Nu == 0 {
		return saidNothingLeft
	}
	return saidChiSquare(measure.Figured(l.Read.ChiSquare/float64(l.Read.Nu), 2), l.Read.Nu)
}

// Scene is the plot of a line: the points as read with bars of their expanded
// uncertainties, the line through them, and what the equations say.
func (l *StraightLine) Scene() picture.Scene {
	p := &picture.Plot{X: picture.Scale{Name: l.X.Name, Unit: shown(l.X.Unit)}, Y: picture.Scale{Name: l.Y.Name, Unit: shown(l.Y.Unit)}}
	low, high := math.Inf(1), math.Inf(-1)
	point := func(x, y float64) picture.Point { return picture.Point{X: x / l.X.Unit.Factor, Y: y / l.Y.Unit.Factor} }
	for _, q := range l.Points {
		low, high = min(low, q.Read.X), max(high, q.Read.X)
		// Bars of 2u hold about 95 %, as those of the result do.
		p.Measured = append(p.Measured, picture.Measured{Name: fmt.Sprintf("%s of run %d", l.Y.Name, q.Number), At: point(q.Read.X, q.Read.Y), U: point(2*q.Read.Ux, 2*q.Read.Uy)})
	}
	// The line goes on beyond the outermost points, so that their bars can be judged against it.
	wide := (high - low) / 10
	low, high = low-wide, high+wide
	draw := func(name string, line measure.Line) {
		at := func(x float64) picture.Point { return point(x, line.Intercept+line.Slope*x) }
		p.Curves = append(p.Curves, picture.Curve{Name: name, Points: []picture.Point{at(low), at((low + high) / 2), at(high)}})
	}
	draw("fit", l.Read)
	// A curve that bends has no slope to compare with.
	if l.IsStraight {
		draw("predicted", l.Predicted)
	}
	return picture.Scene{Title: l.Title(), Plot: p}
}

// Scene is the plot of a letter's residuals, run by run, with bars of the expanded
// uncertainty of the difference, about zero.
func (s *Series) Scene(letter string) picture.Scene {
	residuals := s.Residuals(letter)
	p := &picture.Plot{X: picture.Scale{Name: "run"}}
	for _, r := range residuals {
		unit := r.Predicted.Unit
		p.Y = picture.Scale{Name: r.Predicted.Name + " read − predicted", Unit: shown(unit)}
		p.Measured = append(p.Measured, picture.Measured{Name: fmt.Sprintf("difference of run %d", r.Number),
			At: picture.Point{X: float64(r.Number), Y: r.By / unit.Factor}, U: picture.Point{Y: r.Combined / unit.Factor}})
	}
	if n := len(residuals); n > 0 {
		// Half a run on either side gives a single residual some width.
		first, last := float64(residuals[0].Number)-0.5, float64(residuals[n-1].Number)+0.5
		p.Curves = []picture.Curve{{Name: "0", Points: []picture.Point{{X: first}, {X: (first + last) / 2}, {X: last}}}}
	}
	return picture.Scene{Title: "Residuals of " + expr.Set(letter), Plot: p}
}
