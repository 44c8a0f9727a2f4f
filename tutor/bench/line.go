package bench

import (
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
	"example.org/standstill/tutor/bench/measure"
)

// Axis is an expression in the letters of an apparatus, as 1/(2 sin θ), and the unit in
// which its values are shown.
type Axis struct {
	Name    string
	Unit    quantity.Unit
	tree    *expr.Node
	program expr.Program
}

// Axis reads an expression. why is a sentence where it is none, or where its letters do
// not fit together.
func (f *Form) Axis(text string) (a Axis, why string) {
	// A letter alone has the unit in which the problem asks for it.
	if letter, ok := f.letter(text); ok {
		w := f.want(letter)
		tree := &expr.Node{Op: expr.Name, Name: letter}
		return Axis{Name: expr.Set(letter), Unit: w.Unit, tree: tree, program: f.model.Program(tree)}, ""
	}
	reading, err := f.letters.Read(text)
	if err != nil || len(reading.Lines) != 1 || len(reading.Lines[0].Sides) != 1 {
		return a, saidNoAxis(text, f)
	}
	tree := reading.Lines[0].Sides[0]
	for _, name := range tree.Names() {
		if !f.model.Has(name) {
			return a, f.saidNoLetter(name)
		}
	}
	dim, err := f.model.Dimension(tree)
	if err != nil {
		return a, saidNoAxis(text, f)
	}
	return Axis{Name: f.letters.PrintNode(tree), Unit: unitOf(dim), tree: tree, program: f.model.Program(tree)}, ""
}

// unitOf is the unit in which values of a dimension are shown, that of the SI where it
// has no unit of its own.
func unitOf(d quantity.Dimension) quantity.Unit {
	symbol := "SI units"
	if d == quantity.None {
		symbol = "none"
	}
	if units := measure.UnitsOf(d); len(units) > 0 {
		symbol = units[0]
	}
	// Slopes are quotients of such values, so all are in SI; only angles are shown in degrees.
	if u, ok := quantity.Find(symbol); ok && (d == quantity.Angle || u.Factor == 1) {
		return u
	}
	return quantity.Unit{Symbol: "SI units", Dim: d, Factor: 1}
}

// StraightLine is a line through a series: Read is that of the readings, Predicted of
// what the equations say for the same runs, both with the weights of the readings. Their
// uncertainties are the points' own and what the runs share. Values are in SI.
type StraightLine struct {
	X, Y            Axis
	Read, Predicted measure.Line
	URead           Coefficients // standard uncertainties, with what is shared
	UPredicted      Coefficients
	UDifference     Coefficients // of read less predicted
	Points          []LinePoint
	Letter          string // what the predicted slope is, "" if it is no letter
	IsStraight      bool   // the predicted points are on a line
	Unread          int    // runs that lack a reading
}

// Coefficients are slope and intercept, or their uncertainties.
type Coefficients struct{ Slope, Intercept float64 }

// LinePoint is one run of a line.
type LinePoint struct {
	Computed
	Read, Predicted measure.Point
	readX, readY    []float64 // sensitivities to all inputs of the series
	predX, predY    []float64
}

// leastLine is how few points make a line worth drawing.
const leastLine = 3

// Line lays a straight line through y against x, through the origin where that is
// asked for. why is a sentence where that cannot be.
func (s *Series) Line(x, y string, origin bool) (l StraightLine, why string) {
	if l.X, why = s.model.Axis(x); why != "" {
		return l, why
	}
	if l.Y, why = s.model.Axis(y); why != "" {
		return l, why
	}
	var read, predicted []measure.Point
	for i := range s.Computed {
		if p, ok := s.point(i, l.X, l.Y); ok {
			l.Points, read, predicted = append(l.Points, p), append(read, p.Read), append(predicted, p.Predicted)
		} else {
			l.Unread++
		}
	}
	if len(l.Points) < leastLine {
		return l, saidFewPoints(len(l.Points), leastLine)
	}
	var ok bool
	if l.Read, ok = measure.Fit(read, origin); !ok {
		return l, saidNoLine(l.X.Name)
	}
	l.Predicted = l.Read
	l.IsStraight = l.predict(predicted, origin)
	s.propagate(&l, read, predicted)
	l.Letter = s.constant(l.Predicted.Slope)
	return l, ""
}

// predict fills in the line of the predicted points, which weigh what those read do, and
// reports whether they are on it.
func (l *StraightLine) predict(points []measure.Point, origin bool) bool {
	l.Predicted.Refit(points)
	low, high, off := math.Inf(1), math.Inf(-1), 0.0
	for _, p := range points {
		low, high = min(low, p.Y), max(high, p.Y)
		off = max(off, math.Abs(p.Y-l.Predicted.Intercept-l.Predicted.Slope*p.X))
	}
	// Predicted values have no scatter, so what is off a line by more is bent.
	return off <= 1e-6*max(high-low, math.Abs(high))
}

// point is a run as a point of the line; false where a letter of it was not read.
func (s *Series) point(run int, x, y Axis) (p LinePoint, ok bool) {
	t := s.Computed[run]
	read, ok := t.letters(x, y)
	if !ok {
		return p, false
	}
	at := make([]float64, len(t.both.In))
	for i, in := range t.both.In {
		at[i] = in.X
	}
	l, ok := measure.Linearise(t.evaluate(read, x, y), t.both.In, 4)
	if !ok {
		return p, false
	}
	p.Computed = t
	p.readX, p.readY, p.predX, p.predY = s.spread(run, l.C[0]), s.spread(run, l.C[1]), s.spread(run, l.C[2]), s.spread(run, l.C[3])
	p.Predicted = measure.Point{X: l.Y[2], Y: l.Y[3]}
	p.Read = measure.Point{X: l.Y[0], Y: l.Y[1], Ux: s.deviation(p.readX, false), Uy: s.deviation(p.readY, false)}
	if both := p.Read.Ux * p.Read.Uy; both > 0 {
		for i := range s.all {
			// What is shared moves all points together and does not count as a point's own.
			if u := s.all[i].U(); u > 0 && !s.shared[i] {
				p.Read.R += p.readX[i] * p.readY[i] * u * u / both
			}
		}
	}
	return p, true
}

// letters are the readings, as outputs of the law of both, that stand in two axes; false
// where an unknown letter of them was not read.
func (r *Result) letters(axes ...Axis) (read map[string]int, ok bool) {
	read = map[string]int{}
	for _, a := range axes {
		for _, name := range r.form.needs(a.tree) {
			i := slices.IndexFunc(r.read, func(q reading) bool { return q.Letter == name })
			if i < 0 {
				return nil, false
			}
			read[name] = len(r.Predicted) + i
		}
	}
	return read, true
}

// evaluate gives x and y as read and as predicted for other inputs.
func (r *Result) evaluate(read map[string]int, x, y Axis) measure.Function {
	sums := newSums(r.form.model, r.solved)
	solved := sums.function(r.slots(), nil)
	env := make([]float64, len(r.solved))
	return func(in, out []float64) bool {
		if !solved(in[:len(r.Inputs)], nil) {
			return false
		}
		out[2], out[3] = x.program.Run(sums.env), y.program.Run(sums.env)
		copy(env, sums.env)
		for name, output := range read {
			slot, _ := r.form.model.Slot(name)
			env[slot] = r.corrected(output, in)
		}
		r.form.model.Derive(env)
		out[0], out[1] = x.program.Run(env), y.program.Run(env)
		return !math.IsNaN(out[0] + out[1] + out[2] + out[3])
	}
}

// propagate fills in the uncertainties of both lines. Each input of the series moves all
// points that hang on it at once; what the points have for themselves is in the line's
// own uncertainties already, where it is weighted by them.
func (s *Series) propagate(l *StraightLine, read, predicted []measure.Point) {
	own := func(u float64) float64 { return u * u }
	readOut, predOut, between := Coefficients{own(l.Read.USlope), own(l.Read.UIntercept)}, Coefficients{}, Coefficients{}
	if !l.Read.Weighted {
		between = readOut // from the scatter: nothing else is known
	}
	for i := range s.all {
		u := s.all[i].U()
		if u == 0 {
			continue
		}
		move := func(points []measure.Point, line measure.Line, x, y func(LinePoint) []float64) Coefficients {
			dx, dy := make([]float64, len(points)), make([]float64, len(points))
			for k, p := range l.Points {
				dx[k], dy[k] = x(p)[i]*u, y(p)[i]*u
			}
			slope, intercept := line.Moved(points, dx, dy)
			return Coefficients{slope, intercept}
		}
		a := move(read, l.Read, func(p LinePoint) []float64 { return p.readX }, func(p LinePoint) []float64 { return p.readY })
		b := move(predicted, l.Predicted, func(p LinePoint) []float64 { return p.predX }, func(p LinePoint) []float64 { return p.predY })
		if s.shared[i] {
			readOut.add(a)
		}
		predOut.add(b)
		between.add(Coefficients{a.Slope - b.Slope, a.Intercept - b.Intercept})
	}
	l.URead, l.UPredicted, l.UDifference = readOut.root(), predOut.root(), between.root()
}

func (c *Coefficients) add(d Coefficients) {
	c.Slope += d.Slope * d.Slope
	c.Intercept += d.Intercept * d.Intercept
}

func (c Coefficients) root() Coefficients {
	return Coefficients{math.Sqrt(c.Slope), math.Sqrt(c.Intercept)}
}

// constant is a letter that has the same value in all runs, and this one; "" for none.
func (s *Series) constant(value float64) string {
	for _, v := range s.model.model.Variables {
		slot, _ := s.model.model.Slot(v.Name)
		same := v.Role != statics.IsUnknown
		for _, t := range s.Computed {
			same = same && math.Abs(t.solved[slot]-value) <= 1e-6*math.Abs(value)
		}
		if same {
			return expr.Set(v.Name)
		}
	}
	return ""
}

// splitAxes takes "T against 1/(2 sin θ)" apart; with "through 0" or "through the
// origin" behind it, the line has no intercept.
func splitAxes(text string) (x, y string, origin bool) {
	text = strings.NewReplacer("“", "", "”", "", `"`, "").Replace(text)
	for _, mark := range []string{"through the origin", "through origin", "through 0"} {
		if head, found := strings.CutSuffix(strings.TrimSpace(text), mark); found {
			text, origin = head, true
		}
	}
	y, x, _ = strings.Cut(text, " against ")
	return strings.TrimSpace(x), strings.TrimSpace(y), origin
}
