package bench

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/tutor/bench/measure"
)

// Series is runs of one apparatus, one below the other. What was typed the same for a
// given in several runs was measured once, and is shared: its error is the same in all
// of them.
type Series struct {
	Computed []Computed
	model    *Form
	all      []measure.Input // every input once
	places   [][]int         // run by run, where its inputs are in all
	shared   []bool          // of these, which are in several runs
}

// leastSeries is how few runs make a series.
const leastSeries = 2

// NewSeries puts runs together. why is a sentence where they are too few or not of one
// apparatus.
func NewSeries(computed []Computed) (s *Series, why string) {
	if len(computed) < leastSeries {
		return nil, saidShortSeries
	}
	if why := oneApparatus(computed); why != "" {
		return nil, why
	}
	s = &Series{Computed: computed, model: computed[0].form}
	at := map[string]int{}
	for _, t := range computed {
		var places []int
		for i, key := range t.keys {
			place, known := at[key]
			// An empty key is that of a reading, which is made anew in each run.
			if known && key != "" {
				s.shared[place] = true
			} else {
				place = len(s.all)
				at[key] = place
				s.all, s.shared = append(s.all, t.both.In[i]), append(s.shared, false)
			}
			places = append(places, place)
		}
		s.places = append(s.places, places)
	}
	return s, ""
}

// Residual is a reading less its prediction in one run, in SI. Own is its standard
// uncertainty without what it shares with other runs.
type Residual struct {
	Computed
	*Comparison
	By, Own float64
	row     []float64 // its sensitivities to all inputs of the series
}

// Residuals are those of one letter, run by run; runs in which it was not read are left
// out.
func (s *Series) Residuals(letter string) []Residual {
	var all []Residual
	for i, t := range s.Computed {
		for k := range t.Compared {
			if t.Compared[k].Letter == letter {
				all = append(all, s.residual(i, k))
			}
		}
	}
	return all
}

func (s *Series) residual(run, k int) Residual {
	t := s.Computed[run]
	c := &t.Compared[k]
	r := Residual{Computed: t, Comparison: c, By: c.Read - c.Predicted.Value}
	difference := t.both.Difference(len(t.Predicted)+k, t.read[k].prediction)
	r.row = s.spread(run, difference.C[0])
	r.Own = s.deviation(r.row, false)
	return r
}

// spread puts the sensitivities of a run's inputs to their places in the series.
func (s *Series) spread(run int, c []float64) []float64 {
	row := make([]float64, len(s.all))
	for i, place := range s.places[run] {
		// Added, because one run may use an input twice, as a scale for two readings.
		row[place] += c[i]
	}
	return row
}

// deviation is the standard uncertainty that a row of sensitivities gives: from all
// inputs, or from those alone that one run has for itself.
func (s *Series) deviation(row []float64, all bool) float64 {
	square := 0.0
	for i, c := range row {
		if u := s.all[i].U(); u > 0 && (all || !s.shared[i]) {
			square += c * c * u * u
		}
	}
	return math.Sqrt(square)
}

// Bias is what is the same in all residuals of a letter.
type Bias struct {
	Letter, Name string
	Residuals    []Residual
	Mean         float64
	Own, U       float64 // standard uncertainties of the mean, without and with what is shared
	Line         *measure.Line
	Zero, Scale  bool // which of its coefficients stands out
}

// What makes a bias: so many runs, a mean so many times its uncertainty; a line through
// the residuals takes one run more.
const (
	leastBias  = 3
	standsOut  = 2
	leastTrend = 4
)

// Biases finds the letters that are read too high or too low throughout.
func (s *Series) Biases() []Bias {
	var found []Bias
	for _, letter := range s.letters() {
		if b, ok := s.bias(letter); ok {
			found = append(found, b)
		}
	}
	return found
}

// letters are those that were read in any run.
func (s *Series) letters() []string {
	var letters []string
	for _, t := range s.Computed {
		for _, c := range t.Compared {
			if !slices.Contains(letters, c.Letter) {
				letters = append(letters, c.Letter)
			}
		}
	}
	return letters
}

func (s *Series) bias(letter string) (Bias, bool) {
	b := Bias{Letter: letter, Name: expr.Set(letter), Residuals: s.Residuals(letter)}
	n := float64(len(b.Residuals))
	row := make([]float64, len(s.all))
	above, below := false, false
	for _, r := range b.Residuals {
		// A mean may stand out because of one bad run; a bias has one sign in all of them.
		above, below = above || r.By > 0, below || r.By <= 0
		b.Mean += r.By / n
		for i := range row {
			row[i] += r.row[i] / n
		}
	}
	b.Own, b.U = s.deviation(row, false), s.deviation(row, true)
	if n < leastBias || above == below || math.Abs(b.Mean) <= standsOut*b.Own {
		return b, false
	}
	// A direction has no zero, so there is nothing that an error could be proportional to.
	if n >= leastTrend && !b.Residuals[0].Predicted.Direction {
		b.trend()
	}
	return b, true
}

// trend lays a line through the residuals against the predicted value: an intercept that
// stands out alone is a zero, a slope alone a calibration.
func (b *Bias) trend() {
	var points []measure.Point
	for _, r := range b.Residuals {
		points = append(points, measure.Point{X: r.Predicted.Value, Y: r.By, Uy: r.Own})
	}
	line, ok := measure.Fit(points, false)
	// A line through as few points as it has coefficients always fits.
	if !ok || line.Nu < 1 {
		return
	}
	k, _ := line.Coverage()
	b.Line = &line
	b.Zero = math.Abs(line.Intercept) > k*line.UIntercept
	b.Scale = math.Abs(line.Slope) > k*line.USlope
}

// same are the inputs that are the same in all runs, and varied those that are not.
func (s *Series) same() (same, varied []*Input) {
	for i := range s.Computed[0].Inputs {
		in := &s.Computed[0].Inputs[i]
		if slices.ContainsFunc(s.Computed, func(t Computed) bool { return !t.has(in) }) {
			varied = append(varied, in)
		} else {
			same = append(same, in)
		}
	}
	return same, varied
}

// has reports whether a run has an input with that value and uncertainty.
func (r *Result) has(in *Input) bool {
	return slices.ContainsFunc(r.Inputs, func(own Input) bool {
		return own.Name() == in.Name() && math.Abs(own.Estimate-in.Estimate) <= 1e-9*math.Abs(in.Estimate) && math.Abs(own.U-in.U) <= 1e-9*in.U
	})
}
