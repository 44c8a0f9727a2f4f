package bench

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/tutor/picture"

	"example.org/standstill/tutor/bench/measure"
)

// plotted is how many points a curve has, over how wide a range of degrees on both
// sides of what was measured.
const (
	curvePoints  = 81
	widerDegrees = 15
)

// Plot shows how what is predicted follows one input, with a point and its bars
// (expanded uncertainties) for every reading of the runs. The curve is that of the
// last run. by is the input's letter or an expression in the letters of inputs, "" for the
// letter that differs between the runs, or else the first angle. why is a sentence where there is nothing to plot; the notes
// say which points need not lie on the curve.
func Plot(computed []Computed, by string) (scene picture.Scene, notes []string, why string) {
	if len(computed) == 0 {
		return scene, nil, saidNothingToPlot
	}
	last := computed[len(computed)-1]
	letter, x, why := plotAxis(computed, by)
	if why != "" {
		return scene, nil, why
	}
	p := &picture.Plot{X: picture.Scale{Name: x.Name, Unit: shown(x.Unit)}, Marked: len(last.Compared) == 0, At: x.program.Run(last.solved) / x.Unit.Factor}
	low, high := plotRange(computed, letter)
	colours := picture.Colours(last.form.ref)
	for j := range last.Predicted {
		out := &last.Predicted[j]
		// One axis has one unit: directions are not drawn beside forces.
		if p.Y.Name != "" && out.Unit != last.Predicted[0].Unit {
			continue
		}
		p.Y = picture.Scale{Name: "T", Unit: shown(out.Unit)}
		if out.Unit.Dim != quantity.Force {
			p.Y.Name = out.Name
		}
		p.Curves = append(p.Curves, picture.Curve{Name: expr.Set(out.Letter), Colour: colours[out.Letter], Points: last.curve(letter, x, j, low, high)})
		for _, t := range computed {
			p.Measured = append(p.Measured, t.points(x, out, colours[out.Letter])...)
		}
	}
	scene = picture.Scene{Title: fmt.Sprintf("%s: predicted curve and measured points", last.form.problem.Title), Plot: p}
	return scene, offCurve(computed, letter), ""
}

// at is the value of an input's letter, own masses included.
func (r *Result) at(letter string) float64 {
	slot, _ := r.form.model.Slot(letter)
	return r.solved[slot]
}

// uOf is the standard uncertainty of an input's letter.
func (r *Result) uOf(letter string) float64 {
	sum := 0.0
	for _, in := range r.Inputs {
		if in.Letter == letter {
			sum += in.U * in.U
		}
	}
	return math.Sqrt(sum)
}

// differs reports whether an input is not the same in all runs, to within dust.
func differs(computed []Computed, letter string) bool {
	first := computed[0].at(letter)
	// 34.5° typed and 34.5° as a mean of readings may differ in the last bits.
	return slices.ContainsFunc(computed, func(t Computed) bool { return math.Abs(t.at(letter)-first) > 1e-9*math.Abs(first) })
}

// plotAxis finds the axis to plot against, and the input that is moved along it: of an
// expression that of its letters which tells most.
func plotAxis(computed []Computed, by string) (letter string, x Axis, why string) {
	f := computed[0].form
	var inputs []string
	for _, in := range computed[0].Inputs {
		if in.Kind == Measure {
			inputs = append(inputs, in.Letter)
		}
	}
	if by != "" {
		if x, why = f.Axis(by); why != "" {
			return "", x, why
		}
		for _, name := range x.tree.Names() {
			// The curve is computed by moving an input; a prediction cannot be moved.
			if !slices.Contains(inputs, name) {
				return "", x, f.saidOtherKind(Measure, name)
			}
		}
		inputs = x.tree.Names()
	}
	if letter = telling(computed, inputs); letter == "" {
		return "", x, saidNothingToPlot
	}
	if by == "" {
		x, why = f.Axis(letter)
	}
	return letter, x, why
}

// telling is the input whose change tells most, "" for none: one that differs between the
// runs, an angle rather than something else.
func telling(computed []Computed, inputs []string) string {
	f := computed[0].form
	isAngle := func(name string) bool { return f.want(name).Dim == quantity.Angle }
	// What an experimenter would put along the axis, the likeliest first: an angle that he changed.
	for _, fits := range []func(string) bool{
		func(name string) bool { return isAngle(name) && differs(computed, name) },
		func(name string) bool { return differs(computed, name) },
		isAngle,
		func(string) bool { return true },
	} {
		if i := slices.IndexFunc(inputs, fits); i >= 0 {
			return inputs[i]
		}
	}
	return ""
}

// plotRange is how far a plot goes, in SI: somewhat beyond what was measured.
func plotRange(computed []Computed, letter string) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, t := range computed {
		low, high = min(low, t.at(letter)), max(high, t.at(letter))
	}
	f := computed[0].form
	switch wide := widerDegrees * quantity.Degree; {
	// At 0° and at 90° a string's pull may be infinite, which would flatten the rest.
	case f.isSide(letter):
		return max(low-wide, min(low, 2*quantity.Degree)), min(high+wide, max(high, 88*quantity.Degree))
	case f.want(letter).Dim == quantity.Angle:
		return low - wide, high + wide
	}
	return low - math.Abs(low)/2, high + math.Abs(high)/2
}

// curve follows a prediction while one input moves, in the units that are shown, from
// the measured place outwards. Where the sums have no physical solution it has a gap.
func (r *Result) curve(letter string, axis Axis, output int, low, high float64) []picture.Point {
	points := make([]picture.Point, curvePoints)
	from := 0
	for i := range points {
		points[i].X = low + (high-low)*float64(i)/(curvePoints-1)
		if points[i].X <= r.at(letter) {
			// From the run's own place outwards, where the solution is known.
			from = i
		}
	}
	slot, _ := r.form.model.Slot(letter)
	out, _ := r.form.model.Slot(r.Predicted[output].Letter)
	follow := func(s *sums, i int) {
		s.env[slot] = points[i].X
		points[i].Y = math.NaN()
		points[i].X = axis.program.Run(s.env)
		if s.solve() {
			// The next point starts from this one, so that the curve stays with one of several solutions.
			copy(s.start, s.u)
			// NaN breaks the curve where a string would have to push.
			if r.form.model.Unphysical(s.env) == "" {
				points[i].Y = s.env[out]
			}
		}
	}
	up, down := newSums(r.form.model, r.solved), newSums(r.form.model, r.solved)
	for i := from; i < curvePoints; i++ {
		follow(up, i)
	}
	for i := from - 1; i >= 0; i-- {
		follow(down, i)
	}
	// An expression such as 1/(2 sin θ) runs backwards.
	slices.SortFunc(points, func(a, b picture.Point) int { return cmp.Compare(a.X, b.X) })
	x, y := axis.Unit.Factor, r.Predicted[output].Unit.Factor
	for i := range points {
		points[i].X, points[i].Y = points[i].X/x, points[i].Y/y
	}
	return points
}

// points are the readings of one run for a prediction, with bars as long as the expanded
// uncertainties.
func (t Computed) points(x Axis, out *Prediction, colour int) []picture.Measured {
	var points []picture.Measured
	at, u := t.along(x)
	for _, c := range t.Compared {
		if c.Letter == out.Letter {
			points = append(points, picture.Measured{
				Name: fmt.Sprintf("%s of run %d", expr.Set(c.Letter), t.Number), Colour: colour,
				At: picture.Point{X: at / x.Unit.Factor, Y: c.Read / out.Unit.Factor},
				// Both bars are of about 95 %; along the axis without Student's t.
				U: picture.Point{X: 2 * u / x.Unit.Factor, Y: c.Expanded / out.Unit.Factor},
			})
		}
	}
	return points
}

// along is the value of an axis in a run, and its standard uncertainty.
func (r *Result) along(x Axis) (value, u float64) {
	sums := newSums(r.form.model, r.solved)
	solved := sums.function(r.slots(), nil)
	l, _ := measure.Linearise(func(in, out []float64) bool {
		ok := solved(in, nil)
		out[0] = x.program.Run(sums.env)
		return ok
	}, r.law.In, 1)
	return l.Y[0], l.U(0)
}

// offCurve says which runs had other values in inputs that are not on the x scale.
func offCurve(computed []Computed, letter string) []string {
	last := computed[len(computed)-1]
	var notes []string
	for _, t := range computed[:len(computed)-1] {
		var other []string
		for _, in := range t.Inputs {
			// A point is off the curve if anything but the letter along the axis is different.
			pair := []Computed{t, last}
			if in.Letter != letter && in.Kind == Measure && differs(pair, in.Letter) {
				x, _ := measure.Quote(t.at(in.Letter)/in.Unit.Factor, t.uOf(in.Letter)/in.Unit.Factor)
				other = append(other, in.Name()+" = "+measure.WithUnit(x, in.Unit))
			}
		}
		if other != nil {
			notes = append(notes, saidOffCurve(t.Number, strings.Join(other, ", "), last.Number))
		}
	}
	return notes
}
