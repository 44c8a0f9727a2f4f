// Inside the package: it looks into results, lab book and trials, for which a form has one door.

package bench

import (
	"math"
	"strings"
	"testing"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/problems"
)

// A prediction that the measured value does not move is exact, in every problem of the
// bank, and no trial makes it anything else.
func TestWhatNothingMovesIsExact(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	exact := 0
	for _, h := range problems.Embedded().List() {
		form := bankForm(t, h.ID)
		for i := range form.Fields {
			if form.Fields[i].Kind != Measure || form.File(&form.Fields[i]) == "" {
				continue
			}
			f := bankForm(t, h.ID)
			f.draws = 2000
			if !f.Type(i, f.File(&f.Fields[i])+" ± 1 %") {
				continue
			}
			r, why := f.Result()
			if why != nil {
				continue
			}
			for j := range r.Predicted {
				p := &r.Predicted[j]
				if p.U > 0 || p.Spread > 1e-6*math.Abs(p.Value) {
					continue
				}
				exact++
				if p.FromTrials || !strings.Contains(p.said(), "exact, because") {
					t.Errorf("%s, %s measured: %s", h.ID, f.Fields[i].Letter, p.said())
				}
			}
		}
	}
	if exact < 50 {
		t.Fatalf("only %d exact predictions", exact)
	}
	t.Logf("%d exact predictions", exact)
}

// However unsure the two are, a gross difference is one.
func TestAGrossDifferenceIsTold(t *testing.T) {
	f := twoStrings(t, "30", "45")
	fill(t, f, nil, []string{"T1 = 36 N ± 1.4 N"})
	if c := result(t, f).Compared[0]; c.Verdict != Differ {
		t.Errorf("predicted 3.59 N, read 36 N, U %v: %s", c.Combined, c.Verdict)
	}
}

// U is an expanded uncertainty: a result typed in again is no surer than it was.
func TestAResultTypedInAgain(t *testing.T) {
	f := twoStrings(t, "30", "45")
	fill(t, f, nil, []string{"T1 = 9.80 N div 0.2 N"})
	c := result(t, f).Compared[0]
	for _, text := range []string{"9.80 N, U = 0.12 N", c.labBook()} {
		text = strings.ReplaceAll(text, "U = ", "U ")
		again := twoStrings(t, "30", "45")
		fill(t, again, nil, []string{"T1 = " + text})
		if got := result(t, again).Compared[0]; math.Abs(got.Expanded-c.Expanded) > 0.006 || math.Abs(got.Read-c.Read) > 1e-9 {
			t.Errorf("%q comes back as %v ± %v, was ± %v", text, got.Read, got.Expanded, c.Expanded)
		}
	}
	if got := c.labBook(); got != "(9.80 ± 0.12) N, k = 2" {
		t.Errorf("lab book: %s", got)
	}
	if got := c.said(); !strings.Contains(got, "read 9.80 N, U = 0.12 N") {
		t.Errorf("%s", got)
	}
}

// Trials in which a string would have to push are thrown out, and no figure is a row of
// zeros.
func TestTrialsThatPushAreThrownOut(t *testing.T) {
	f := bankForm(t, "banner-ring")
	fill(t, f, []string{"theta = 3 deg ± 4 deg"}, []string{"T1 = 3 N div 0.1 N"})
	r := result(t, f)
	if r.Pushed == 0 || r.Pushed > r.Failed || r.Failed > r.Draws/2 {
		t.Errorf("%d of %d trials pushed, %d failed", r.Pushed, r.Draws, r.Failed)
	}
	for i := range r.Predicted {
		if p := &r.Predicted[i]; p.Low < 0 || !strings.Contains(p.said(), "a string would have to push") {
			t.Errorf("%s", p.said())
		}
	}
	for _, line := range (Style{}).Set(r.Blocks()) {
		for _, word := range strings.Fields(strings.ReplaceAll(line, thousands(r.Draws), "")) {
			if len(word) > 1 && strings.Trim(word, "0") == "" {
				t.Errorf("a number of zeros: %s", line)
			}
		}
	}
}

// Directions go round the circle: they are averaged, predicted and compared so.
func TestDirectionsGoRoundTheCircle(t *testing.T) {
	f := bankForm(t, "three-tugs")
	for _, readings := range []string{"359; 1; 0 deg div 1 deg", "0; 359; 1 deg div 1 deg", "1; 0; 359 deg div 1 deg"} {
		i, _ := f.Find(Reading, "delta")
		f.Type(i, readings)
		if x := f.Fields[i].Value.Estimate / quantity.Degree; math.Abs(x) > 1e-9 {
			t.Errorf("the mean of %s is %v°", readings, x)
		}
	}
	for _, c := range []struct {
		beta, read, want string
		verdict          Verdict
	}{
		{"150", "0.3 deg ± 1 deg", "predicted 0.00", Agree},
		{"149.8", "0.3 deg ± 1 deg", "predicted 359.", Agree},
		{"150.2", "359.8 deg ± 1 deg", "predicted 0.", Agree},
		{"149.8", "3 deg ± 1 deg", "predicted 359.", Differ},
		{"150", "2 deg ± 9 deg", "predicted 0.", CannotTell},
	} {
		f := bankForm(t, "three-tugs")
		fill(t, f, []string{"P = 5 kN exact", "Q = 10 kN exact", "beta = " + c.beta + " deg ± 0.1 deg"}, []string{"delta = " + c.read})
		r := result(t, f)
		got := r.Compared[0]
		if got.Verdict != c.verdict || !strings.Contains(got.said(), c.want) || math.Abs(got.En) > 3 {
			t.Errorf("β = %s, δ read %s: %s %s", c.beta, c.read, got.said(), got.Verdict)
		}
		if p := got.Predicted; p.FromTrials {
			t.Errorf("β = %s: %s", c.beta, p.said())
		}
	}
}

// What a comparison takes for granted is said before the comparison.
func TestAComparisonNamesFirstWhatWasNotMeasured(t *testing.T) {
	f := bankForm(t, "canal-lantern")
	fill(t, f, []string{"m = 0.5 kg ± 1 %"}, []string{"T1 = 3.6 N div 0.1 N"})
	compared := result(t, f).Main()[2]
	if !strings.HasPrefix(compared.Lines[0], "You did not measure these values, so the program uses the exact values from the problem: α = 35°, β = 50° and g = 9.8 m/s²") {
		t.Errorf("%q", compared.Lines)
	}
}

// Two readings that lie close together by chance take the scatter of all that were
// repeated: s² = (s₁² + s₂²)/2 with two degrees of freedom; the wider ones keep their own.
func TestScatterIsPooledWhereItIsLessByChance(t *testing.T) {
	f := twoStrings(t, "30", "45")
	fill(t, f, nil, []string{"T1 = 3.60; 3.61 N div 0.001 N", "T2 = 4.30; 4.46 N div 0.001 N"})
	r := result(t, f)
	// s₁ = 0.01/√2 N, s₂ = 0.16/√2 N, each mean of two
	near := math.Sqrt((0.01*0.01+0.16*0.16)/8 + 0.0005*0.0005/3)
	far := math.Sqrt(0.16*0.16/4 + 0.0005*0.0005/3)
	for i, want := range []struct {
		u      float64
		nu     int
		pooled bool
	}{{near, 2, true}, {far, 1, false}} {
		if c := r.Compared[i]; math.Abs(c.U-want.u) > 1e-6 || c.Nu != want.nu || c.Pooled != want.pooled {
			t.Errorf("%s: u = %v, ν = %d, pooled %v, want %v", c.Letter, c.U, c.Nu, c.Pooled, want)
		}
	}
	if said := strings.Join(Style{Plain: true}.Set(r.Main()), "\n"); strings.Count(said, "the program used the scatter of all readings") != 1 {
		t.Errorf("%s", said)
	}
}
