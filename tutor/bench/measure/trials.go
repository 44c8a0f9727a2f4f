package measure

import (
	"math"
	"math/rand/v2"
	"slices"
)

// How the random trials are made: as many as Supplement 1 (JCGM 101:2008) calls for to
// give 95 % intervals to one or two figures, from a generator that always starts in
// the same place, so that a run opened again says the same.
const (
	TrialCount = 100_000
	TrialSeed  = 1901
)

// Agreement: where the trials and the law of propagation differ by more than this
// share of the standard uncertainty, in the value or in the uncertainty, the trials
// count.
const Agreement = 0.05

// Trials is what came of random values for the inputs, again and again: for each
// output its mean, its standard deviation, and the interval between whose ends
// 95 % of the trials lie, as many below as above. Failed counts trials for which
// the function had no value; they are left out.
type Trials struct {
	Mean, U   []float64
	Low, High []float64
	Count     int
	Failed    int
	values    [][]float64 // each output's values in order of size
}

// Tails says how a part that comes from repeated readings is drawn.
type Tails bool

// A normal part has the standard uncertainty of the law of propagation, so that
// the two differ only where the function bends; with the long Tails of Student's t
// (JCGM 101, 6.4.9) an interval allows for few readings.
const (
	Normal   Tails = false
	StudentT Tails = true
)

// Simulate tries random values of the inputs so many times (JCGM 101, clause 7).
func Simulate(f Function, in []Input, outputs, count int, t Tails) Trials {
	lots := rand.New(rand.NewPCG(TrialSeed, TrialCount))
	s := Trials{values: make([][]float64, outputs)}
	for j := range s.values {
		s.values[j] = make([]float64, 0, count)
	}
	x, y := make([]float64, len(in)), make([]float64, outputs)
	for range count {
		for i := range in {
			// The order of the inputs fixes the numbers that each gets: a run opened again must say the same.
			x[i] = in[i].X + in[i].draw(lots, t)
		}
		if !f(x, y) {
			s.Failed++
			continue
		}
		for j, v := range y {
			s.values[j] = append(s.values[j], v)
		}
	}
	s.summarise()
	return s
}

// draw is one error of the input: the sum of one for each of its parts.
func (q *Input) draw(lots *rand.Rand, t Tails) float64 {
	sum := 0.0
	for k := range q.Parts {
		p := &q.Parts[k]
		switch {
		// A rectangular part is drawn as such: its tails are shorter than a normal one's.
		case p.Half > 0:
			sum += p.Half * (2*lots.Float64() - 1)
		case p.U == 0:
		case p.Nu > 0 && t == StudentT:
			sum += p.U * lots.NormFloat64() / math.Sqrt(chiSquare(lots, p.Nu)/float64(p.Nu))
		default:
			sum += p.U * lots.NormFloat64()
		}
	}
	return sum
}

func chiSquare(lots *rand.Rand, nu int) float64 {
	sum := 0.0
	for range nu {
		z := lots.NormFloat64()
		sum += z * z
	}
	return sum
}

func (s *Trials) summarise() {
	outputs := len(s.values)
	s.Mean, s.U = make([]float64, outputs), make([]float64, outputs)
	s.Low, s.High = make([]float64, outputs), make([]float64, outputs)
	for j, values := range s.values {
		// The same for all outputs: a trial fails for all of them or for none.
		s.Count = len(values)
		s.Mean[j], s.U[j] = meanAndDeviation(values)
		slices.Sort(values)
		s.Low[j], s.High[j] = share(values, 0.025), share(values, 0.975)
	}
}

// share is the value below which that share of them lies; no number where there are none.
func share(ordered []float64, p float64) float64 {
	if len(ordered) == 0 {
		return math.NaN()
	}
	return ordered[int(p*float64(len(ordered)))]
}

// meanAndDeviation counts from the first value, and takes two passes, so that large
// values with small differences keep their figures, and equal ones do not differ.
func meanAndDeviation(values []float64) (mean, deviation float64) {
	if len(values) == 0 {
		return math.NaN(), math.NaN()
	}
	for _, v := range values {
		mean += v - values[0]
	}
	mean = values[0] + mean/float64(len(values))
	for _, v := range values {
		deviation += (v - mean) * (v - mean)
	}
	return mean, math.Sqrt(deviation / float64(len(values)-1))
}
