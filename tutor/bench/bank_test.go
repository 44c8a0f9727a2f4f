// Inside the package: it compares a form with the solver and the trials behind it.

package bench

import (
	"math"
	"strings"
	"testing"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/problems"

	"example.org/standstill/tutor/bench/measure"
)

// measureAll types every given of the file back in with a half-width of 1 %, angles
// with half a degree, and reads every prediction with a division of 5 %.
func measureAll(t testing.TB, f *Form) {
	t.Helper()
	r := &Result{form: f}
	for i, e := range f.Fields {
		if e.Kind == Reading && r.solved == nil {
			if r.Inputs = f.inputs(); r.solve() != "" {
				t.Fatalf("%s has no solution", f.problem.ID)
			}
		}
		given, _ := f.problem.System.Given(e.Letter)
		text := ""
		switch {
		case e.Kind == Measure && given.Any:
			text = "2.5 " + given.Unit.Symbol + " ± 1 %"
		case e.Kind == Measure && e.Want.Dim == quantity.Angle:
			text = f.File(&e) + " ± 0.5°"
		case e.Kind == Measure:
			text = strings.Replace(f.File(&e), "²", "^2", 1) + " ± 1 %"
		case e.Kind == Reading:
			slot, _ := f.model.Slot(e.Letter)
			text = measure.Figured(math.Abs(r.solved[slot])/e.Want.Unit.Factor, 6) + " " + e.Want.Unit.Symbol + " ± 5 %"
		}
		if e.Want.Unit.Symbol == "none" {
			text = strings.Replace(text, " none", "", 1)
		}
		if !f.Type(i, text) {
			t.Errorf("%s, %s: %q: %s", f.problem.ID, e.Name(), text, f.Fields[i].Why)
		}
	}
}

// Every problem of the bank is an apparatus: with every value measured there is a
// prediction for all that is asked, with an uncertainty, and the sums of what was
// read leave nothing over that the uncertainties do not explain.
func TestEveryProblemOfTheBankIsAnApparatus(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	runs, upset, drawn := 0, []string{}, []string{}
	for _, h := range problems.Embedded().List() {
		f := bankForm(t, h.ID)
		f.draws = 2000
		measureAll(t, f)
		r, why := f.Result()
		if why != nil {
			if !strings.Contains(why[0], "fit one another exactly") {
				t.Errorf("%s: %s", h.ID, why)
			}
			upset = append(upset, h.ID)
			continue
		}
		runs++
		if len(r.Predicted) < len(f.problem.System.Find) {
			t.Errorf("%s: %d predictions", h.ID, len(r.Predicted))
		}
		for _, p := range r.Predicted {
			if p.FromTrials {
				drawn = append(drawn, h.ID+" "+p.Name)
			}
			if !(p.U >= 0) || math.IsInf(p.U, 0) || !(p.Low <= p.High) {
				t.Errorf("%s: %s has u = %v, between %v and %v", h.ID, p.Name, p.U, p.Low, p.High)
			}
		}
		for _, l := range r.Left {
			if !l.Within() {
				t.Errorf("%s: %s", h.ID, l.said())
			}
		}
		if _, err := r.JSON(); err != nil {
			t.Errorf("%s: %v", h.ID, err)
		}
	}
	if runs < 60 {
		t.Errorf("only %d problems gave a run", runs)
	}
	t.Logf("%d runs; values must fit exactly in %v; draws count for %v", runs, upset, drawn)
}

// BenchmarkSlowestApparatus is a run of the problem with the most unknowns, whose sums
// bend.
func BenchmarkSlowestApparatus(b *testing.B) {
	f := bankForm(b, "two-lanterns")
	f.draws = measure.TrialCount
	measureAll(b, f)
	for b.Loop() {
		result(b, f)
	}
}
