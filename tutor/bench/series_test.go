// Inside the package: it makes series of runs without a record.

package bench

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/standstill/checker/quantity"
)

// banners are runs of a banner in the middle of a rope at these angles in degrees; the
// reading is what the closed form w/(2 sin θ) gives, changed by off.
func banners(t testing.TB, angles []float64, quality string, off func(i int, tension float64) float64) []Computed {
	t.Helper()
	var computed []Computed
	for i, angle := range angles {
		f := bankForm(t, "banner-ring")
		tension := 2.6 * 9.81 / (2 * math.Sin(angle*quantity.Degree))
		fill(t, f, []string{"m = 2.60 kg ± 0.01 kg", "g = 9.81 m/s^2", fmt.Sprintf("theta = %v deg ± 0.25 deg", angle)},
			[]string{fmt.Sprintf("T = %.4f N %s", off(i, tension), quality)})
		computed = append(computed, Computed{Number: i + 1, Result: result(t, f)})
	}
	return computed
}

func fiveAngles() []float64 { return []float64{20, 28, 36, 48, 60} }

func series(t testing.TB, computed []Computed) *Series {
	t.Helper()
	s, why := NewSeries(computed)
	if why != "" {
		t.Fatal(why)
	}
	return s
}

// A scale that reads 0.4 N high, or a tenth too much, is found out in five runs, and so
// is which of the two it is; a good scale is not blamed.
func TestAFaultOfTheScaleIsTold(t *testing.T) {
	for _, c := range []struct {
		name string
		off  func(int, float64) float64
		want []string
	}{
		{"zero", func(_ int, x float64) float64 { return x + 0.4 }, []string{"The readings of T₁ were too high in all five runs, by 0.40 N on average.", "Check the zero of the spring scale"}},
		{"calibration", func(_ int, x float64) float64 { return 1.03 * x }, []string{"high in all five runs", "Check the calibration of the spring scale"}},
		{"low", func(_ int, x float64) float64 { return x - 0.4 }, []string{"The readings of T₁ were too low in all five runs, by 0.40 N on average."}},
		{"good", func(i int, x float64) float64 { return x + 0.02*float64(i%2) - 0.01 }, []string{saidNoBias}},
	} {
		s := series(t, banners(t, fiveAngles(), "div 0.1 N", c.off))
		said := strings.Join(Style{Plain: true}.Set(s.Blocks()), "\n")
		for _, want := range c.want {
			if !strings.Contains(said, want) {
				t.Errorf("%s: never said: %s in\n%s", c.name, want, said)
			}
		}
	}
}

// T against 1/(2 sin θ) has the slope w and no intercept, and a closed form says how
// sure the slope is: for exact angles u(slope)² = 1/Σ(x/u)², and what the mass is unsure
// of moves the predicted slope alone.
func TestTheSlopeIsTheWeight(t *testing.T) {
	s := series(t, banners(t, fiveAngles(), "u 0.05 N", func(_ int, x float64) float64 { return x }))
	l, why := s.Line("1/(2 sin theta)", "T", true)
	if why != "" {
		t.Fatal(why)
	}
	w := 2.6 * 9.81
	if math.Abs(l.Read.Slope-w) > 1e-4*w || math.Abs(l.Predicted.Slope-w) > 1e-9*w || l.Letter != "w" || !l.IsStraight {
		t.Errorf("slope %v, predicted %v (%s, straight %v), w = %v", l.Read.Slope, l.Predicted.Slope, l.Letter, l.IsStraight, w)
	}
	if u := w * 0.01 / math.Sqrt(3) / 2.6; math.Abs(l.UPredicted.Slope-u) > 0.2*u {
		t.Errorf("u of the predicted slope %v, from the mass alone %v", l.UPredicted.Slope, u)
	}
	sum := 0.0
	for _, p := range l.Points {
		sum += p.Read.X * p.Read.X / (p.Read.Uy*p.Read.Uy + w*w*p.Read.Ux*p.Read.Ux)
	}
	if u := 1 / math.Sqrt(sum); math.Abs(l.Read.USlope-u) > 1e-3*u {
		t.Errorf("u of the slope %v, by the closed form %v", l.Read.USlope, u)
	}
	free, _ := s.Line("1/(2 sin θ)", "T", false)
	if math.Abs(free.Read.Intercept) > 1e-3 || math.Abs(free.Predicted.Intercept) > 1e-6 {
		t.Errorf("intercept %v, predicted %v", free.Read.Intercept, free.Predicted.Intercept)
	}
	said := strings.Join(Style{Plain: true}.Set(free.Blocks()), "\n")
	for _, want := range []string{"the equations predict w = (25.51 ± 0.11) N: the two values agree", "the equations predict zero: the two values agree", "χ²/ν ="} {
		if !strings.Contains(said, want) {
			t.Errorf("never said: %s in\n%s", want, said)
		}
	}
	bent, _ := s.Line("theta", "T", false)
	if said := strings.Join(Style{Plain: true}.Set(bent.Blocks()), "\n"); !strings.Contains(said, "not on a straight line") {
		t.Errorf("%s", said)
	}
	turned, why := s.Line("sin theta", "w/T", false)
	if why != "" || !turned.IsStraight || math.Abs(turned.Predicted.Slope-2) > 1e-9 {
		t.Errorf("w/T against sin θ: %s slope %v", why, turned.Predicted.Slope)
	}
	for text, want := range map[string]string{"T + theta": "is not an expression", "q": "no letter “q”", "m": "is the same in all runs"} {
		if _, why := s.Line(text, "T", false); !strings.Contains(why, want) {
			t.Errorf("%s: %q", text, why)
		}
	}
}

// A zero that all readings share is one error, not five: it moves the intercept as a
// whole, and the mean of the readings is no surer than it. A zero taken off moves the
// readings.
func TestASharedZeroIsSharedByAllRuns(t *testing.T) {
	computed := banners(t, fiveAngles(), "u 0.01 N", func(_ int, x float64) float64 { return x + 0.2 })
	for i := range computed {
		f := computed[i].form
		fill(t, f, []string{"theta = " + f.Fields[1].Typed}, nil)
		if why := f.Assign(Scale, "zero = 0.2 N u 0.05 N"); why != "" {
			t.Fatal(why)
		}
		computed[i].Result = result(t, f)
		c := computed[i].Compared[0]
		if off := c.Read - c.Predicted.Value; math.Abs(off) > 1e-3 || math.Abs(c.U-math.Hypot(0.01, 0.05)) > 1e-9 {
			t.Errorf("run %d is off by %v, u = %v", i+1, off, c.U)
		}
	}
	s := series(t, computed)
	l, why := s.Line("1/(2 sin theta)", "T", false)
	if why != "" || math.Abs(l.URead.Intercept-math.Hypot(l.Read.UIntercept, 0.05)) > 1e-4 {
		t.Errorf("%s u of the intercept %v, of the points alone %v", why, l.URead.Intercept, l.Read.UIntercept)
	}
	two := bankForm(t, "canal-lantern")
	fill(t, two, []string{"m = 0.5 kg exact"}, []string{"T1 = 3 N exact", "T2 = 4 N exact"})
	for _, line := range []string{"zero = 0 N u 0.1 N", "calibration = 1 u 0.02"} {
		if why := two.Assign(Scale, line); why != "" {
			t.Fatal(why)
		}
	}
	r := result(t, two)
	// By hand (GUM F.1.2): u(T1, T2) = u(Z)² + T1·T2·u(K)².
	if got, want := r.both.Covariance(2, 3), 0.01+3*4*0.0004; math.Abs(got-want) > 1e-12 {
		t.Errorf("covariance of the readings %v, by hand %v", got, want)
	}
	// Σx of the forces follows the shared zero through both pulls at once.
	a, b := 35*quantity.Degree, 50*quantity.Degree
	zero, calibration := math.Cos(a)-math.Cos(b), -3*math.Cos(a)+4*math.Cos(b)
	if got, want := r.Left[0].U, math.Hypot(0.1*zero, 0.02*calibration); math.Abs(got-want) > 1e-7 {
		t.Errorf("u(ΣFx) = %v, by hand %v", got, want)
	}
}

// laboratory is a lantern of half a kilogram at 30° and 45° with everything off by chance:
// angles and mass within their limits, readings by a normal scatter, two spring scales
// of which the second may read too much.
type laboratory struct {
	readings int
	scatter  float64 // standard deviation of a reading, in N
	division float64 // of the scales, in N
	fault    float64 // of the second scale, in N
	lots     *rand.Rand
}

// run is one run of it at these angles in degrees.
func (l laboratory) run(t testing.TB, f *Form, alpha, beta float64) *Result {
	within := func(half float64) float64 { return half * (2*l.lots.Float64() - 1) }
	forces := closedForm(0.5, alpha*quantity.Degree, beta*quantity.Degree)[0]
	other := closedForm(0.5, beta*quantity.Degree, alpha*quantity.Degree)[0]
	read := func(force float64) string {
		var typed []string
		force += within(l.division / 2)
		for range l.readings {
			typed = append(typed, fmt.Sprintf("%.4f", force+l.scatter*l.lots.NormFloat64()))
		}
		return fmt.Sprintf("%s N div %v N", strings.Join(typed, "; "), l.division)
	}
	fill(t, f, []string{fmt.Sprintf("m = %.6f kg ± 0.005 kg", 0.5+within(0.005)), "g = 9.81 m/s^2",
		fmt.Sprintf("alpha = %.5f deg ± 0.5 deg", alpha+within(0.5)), fmt.Sprintf("beta = %.5f deg ± 0.5 deg", beta+within(0.5))},
		[]string{"T1 = " + read(forces), "T2 = " + read(other+l.fault)})
	return result(t, f)
}

// How often correct laboratories are told that they differ, and how often a scale that
// reads 0.4 N too much is found out, in one run and in a series of five.
func TestHowOftenLaboratoriesDiffer(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	f := bankForm(t, "canal-lantern")
	f.draws = 1 // too few to stand against the law of propagation
	const labs = 1000
	for _, c := range []struct {
		readings          int
		scatter, division float64
		least, most       float64
		seen              int // of a hundred faults, at least
	}{
		{2, 0.04, 0.1, 0, 0.06, 90}, {3, 0.04, 0.1, 0.03, 0.06, 90}, {5, 0.04, 0.1, 0.03, 0.06, 90}, {10, 0.04, 0.1, 0.03, 0.06, 90},
		// Two readings that hardly a division makes unsure say little of their scatter: then
		// that of the other scale counts, and a fault of five scatters is not always seen.
		{2, 0.08, 0.001, 0, 0.06, 50}, {3, 0.08, 0.001, 0.03, 0.06, 90},
	} {
		lab := laboratory{readings: c.readings, scatter: c.scatter, division: c.division, lots: rand.New(rand.NewPCG(7, uint64(c.readings)))}
		differ, seen := 0, 0
		for range labs {
			for _, compared := range lab.run(t, f, 30, 45).Compared {
				if compared.Verdict == Differ {
					differ++
				}
			}
		}
		faulty := lab
		faulty.fault = 0.4
		for range labs / 5 {
			if faulty.run(t, f, 30, 45).Compared[1].Verdict == Differ {
				seen++
			}
		}
		rate := float64(differ) / (2 * labs)
		t.Logf("%d readings, scatter %v N: %.1f %% of correct comparisons differ; 0.4 N is seen in %.0f %% of single runs", c.readings, c.scatter, 100*rate, 500*float64(seen)/labs)
		if rate < c.least || rate > c.most {
			t.Errorf("%d readings: %.1f %% of correct comparisons differ", c.readings, 100*rate)
		}
		if seen < labs/5*c.seen/100 {
			t.Errorf("%d readings: 0.4 N is seen in %d of %d runs", c.readings, seen, labs/5)
		}
	}
}

// The same for a series: five angles, two readings each.
func TestHowOftenASeriesTellsAFault(t *testing.T) {
	const labs = 60
	for _, c := range []struct {
		fault       float64
		least, most float64
	}{{0, 0, 0.06}, {0.4, 0.9, 1}} {
		lab := laboratory{readings: 2, scatter: 0.04, division: 0.1, fault: c.fault, lots: rand.New(rand.NewPCG(11, 2))}
		told := 0
		for range labs {
			var computed []Computed
			for i, alpha := range []float64{25, 32, 40, 48, 55} {
				f := bankForm(t, "canal-lantern")
				f.draws = 1
				computed = append(computed, Computed{Number: i + 1, Result: lab.run(t, f, alpha, 45)})
			}
			for _, b := range series(t, computed).Biases() {
				if b.Letter == "T2" {
					told++
				}
			}
		}
		rate := float64(told) / labs
		t.Logf("fault %v N: told of T2 in %.0f %% of series of five", c.fault, 100*rate)
		if rate < c.least || rate > c.most {
			t.Errorf("fault %v N: told in %.0f %%", c.fault, 100*rate)
		}
	}
}

// TestAxesOfALine takes apart what is typed behind the word line, with and without the
// quotation marks in which a sentence prints the last two words.
func TestAxesOfALine(t *testing.T) {
	for typed, origin := range map[string]bool{
		"T against 1/(2 sin θ)":                      false,
		"T against 1/(2 sin θ) through 0":            true,
		"T against 1/(2 sin θ) “through 0”":          true,
		`T against 1/(2 sin θ) "through the origin"`: true,
	} {
		if x, y, got := splitAxes(typed); x != "1/(2 sin θ)" || y != "T" || got != origin {
			t.Errorf("%s: %q against %q, through the origin %v", typed, y, x, got)
		}
	}
}
