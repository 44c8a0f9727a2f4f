// Inside the package: it tests the law of propagation on functions of its own.

package bench

import (
	"math"
	"testing"

	"example.org/standstill/problems"

	"example.org/standstill/tutor/bench/measure"
)

// bankForm is an empty form of a problem of the bank.
func bankForm(t testing.TB, id string) *Form {
	t.Helper()
	p, err := problems.Embedded().Get(id)
	if err != nil {
		t.Fatal(err)
	}
	f, err := NewForm(p)
	if err != nil {
		t.Fatal(err)
	}
	f.draws = measure.TrialCount / 5 // enough to see a difference of 5 %
	return f
}

func fill(t testing.TB, f *Form, measured, read []string) {
	t.Helper()
	for kind, lines := range map[Kind][]string{Measure: measured, Reading: read} {
		for _, line := range lines {
			if why := f.Assign(kind, line); why != "" {
				t.Fatalf("%s: %s", line, why)
			}
		}
	}
}

func result(t testing.TB, f *Form) *Result {
	t.Helper()
	r, why := f.Result()
	if why != nil {
		t.Fatal(why)
	}
	return r
}

// twoStrings is the apparatus of the check values: 0.500 kg ± 1 % on two strings.
func twoStrings(t testing.TB, alpha, beta string) *Form {
	f := bankForm(t, "canal-lantern")
	fill(t, f, []string{"m = 0.500 kg ± 1 %", "alpha = " + alpha + " ± 0.5 deg", "beta=" + beta + " deg ± 0.5 deg", "g = 9.81 m/s^2"}, nil)
	return f
}

// Own check values of the design (first order, computed and confirmed by
// simulation there).
func TestDesignCheckValues(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	off := 0.0
	near := func(what string, got, want, tolerance float64) {
		t.Helper()
		off = max(off, math.Abs(got-want)/(2*tolerance))
		if math.Abs(got-want) > tolerance {
			t.Errorf("%s = %.7f, want %.7f", what, got, want)
		}
	}
	for _, c := range []struct {
		alpha, beta    string
		t1, u1, t2, u2 float64
		r              float64
	}{
		{"30", "45", 3.590709, 0.031296, 4.397703, 0.032104, 0.7498},
		{"60", "60", 2.831903, 0.024630, 2.831903, 0.024630, -0.0068},
		{"10", "10", 14.123385, 0.296913, 14.123385, 0.296913, 0.9982},
		{"5", "5", 28.139282, 1.157357, 28.139282, 1.157357, 0.9999},
	} {
		f := twoStrings(t, c.alpha, c.beta)
		f.draws = measure.TrialCount
		r := result(t, f)
		a, b := r.Predicted[0], r.Predicted[1]
		near(c.alpha+" T1", a.Value, c.t1, 5e-7)
		near(c.alpha+" u(T1)", a.U, c.u1, 5e-7)
		near(c.alpha+" T2", b.Value, c.t2, 5e-7)
		near(c.alpha+" u(T2)", b.U, c.u2, 5e-7)
		near(c.alpha+" r", r.law.Correlation(0, 1), c.r, 5e-5)
		t.Logf("%s/%s: draws u = %.6f %.6f; mean %.5f; drawn %v %s", c.alpha, c.beta, a.Spread, b.Spread, a.Mean, a.FromTrials, a.Why)
	}
	t.Logf("largest difference: %.2f of the last printed place", off)
}

// E_n of the design for T1 (prediction 3.590709 N, u 0.031296 N).
func TestDesignComparisons(t *testing.T) {
	for _, c := range []struct {
		read    string
		en      float64
		verdict Verdict
	}{
		{"3.6 N ± 0.05 N", 0.109, Agree},
		{"3.7 N ± 0.05 N", 1.283, Differ},
		{"3.7 N ± 0.10 N", 0.832, Agree},
		{"3.8 N ± 0.10 N", 1.593, Differ},
		{"3.8 N ± 1.0 N", 0.181, CannotTell},
	} {
		f := twoStrings(t, "30", "45")
		fill(t, f, nil, []string{"T1 = " + c.read})
		got := result(t, f).Compared[0]
		if math.Abs(got.En-c.en) > 5e-4 || got.Verdict != c.verdict {
			t.Errorf("%s: E_n = %.4f %s, want %.3f %s", c.read, got.En, got.Verdict, c.en, c.verdict)
		}
	}
}

// BenchmarkRun is one whole run of two strings with as many draws as in use.
func BenchmarkRun(b *testing.B) {
	f := twoStrings(b, "30", "45")
	f.draws = measure.TrialCount
	fill(b, f, nil, []string{"T1 = 3.6 N ± 0.05 N", "T2 = 4.4 N ± 0.05 N"})
	for b.Loop() {
		result(b, f)
	}
}
