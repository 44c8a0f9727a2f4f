// Inside the package: it compares the law with the solver, input by input.

package bench

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/diff/fd"
	"pgregory.net/rapid"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/problems"

	"example.org/standstill/tutor/bench/measure"
)

// T1 = W cos β / sin(α + β) and its derivatives, the sine rule in the triangle of
// forces; u(T1) follows by hand.
func TestTwoStringsFollowTheClosedForm(t *testing.T) {
	worst := 0.0
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(3, 80).Draw(t, "α")
		b := rapid.Float64Range(3, 80).Draw(t, "β")
		m := rapid.Float64Range(0.05, 5).Draw(t, "m")
		p := closedForm(m, a*quantity.Degree, b*quantity.Degree)
		sure := func(x float64, p ...measure.Part) measure.Input { return measure.Input{X: x, Parts: p} }
		half := rectangle(0.5 * quantity.Degree)
		in := []measure.Input{sure(m, rectangle(0.01*m)), sure(a*quantity.Degree, half), sure(b*quantity.Degree, half), sure(9.81)}
		f := lantern(t)
		l, ok := measure.Linearise(f, in, 1)
		if !ok {
			t.Fatal("no value")
		}
		for i, want := range p {
			got := append([]float64{l.Y[0]}, l.C[0]...)[i]
			off := math.Abs(got-want) / max(math.Abs(want), 0.01*math.Abs(p[0]))
			worst = max(worst, off)
			if off > 1e-7 {
				t.Fatalf("%d: %v, by hand %v", i, got, want)
			}
		}
	})
	t.Logf("largest relative difference: %.1e", worst)
}

func rectangle(half float64) measure.Part { return measure.Rectangular(measure.HalfWidth, half) }

// closedForm is T1 and its derivatives by m, α, β, g.
func closedForm(m, a, b float64) []float64 {
	const g = 9.81
	w := m * g
	t1 := w * math.Cos(b) / math.Sin(a+b)
	return []float64{t1, t1 / m, -t1 / math.Tan(a+b), -w * math.Cos(a) / math.Pow(math.Sin(a+b), 2), t1 / g}
}

// lantern gives T1 of two strings for m, α, β, g.
func lantern(t interface{ Fatal(...any) }) measure.Function {
	p, err := problems.Embedded().Get("canal-lantern")
	if err != nil {
		t.Fatal(err)
	}
	f, err := NewForm(p)
	if err != nil {
		t.Fatal(err)
	}
	solved, err := f.model.Solve(f.model.Environment())
	if err != nil {
		t.Fatal(err)
	}
	slots := make([]int, 0, 4)
	for _, name := range []string{"m", "alpha", "beta", "g"} {
		slot, _ := f.model.Slot(name)
		slots = append(slots, slot)
	}
	out, _ := f.model.Slot("T1")
	return newSums(f.model, solved).function(slots, []int{out})
}

// Every problem of the bank as an apparatus: the sums solved by elimination against
// those solved by package statics (gonum) for changed givens, and the sensitivities
// against gonum's finite differences over that solver.
func TestSensitivitiesOfTheBankAgreeWithFiniteDifferences(t *testing.T) {
	bank := problems.Embedded()
	checked, worst, where := 0, 0.0, ""
	for _, h := range bank.List() {
		f := bankForm(t, h.ID)
		r := &Result{form: f, Inputs: f.inputs()}
		if why := r.solve(); why != "" {
			t.Errorf("%s: %s", h.ID, why)
			continue
		}
		names := f.problem.System.Find
		outputs := make([]int, len(names))
		for j, name := range names {
			outputs[j], _ = f.model.Slot(name)
		}
		l, ok := measure.Linearise(newSums(f.model, r.solved).function(r.slots(), outputs), r.uncertain(), len(names))
		if !ok {
			t.Errorf("%s: no value", h.ID)
			continue
		}
		for i := range r.Inputs {
			for j := range names {
				want := fd.Derivative(func(x float64) float64 { return r.resolved(i, x, outputs[j]) }, r.Inputs[i].Estimate,
					&fd.Settings{Formula: fd.Central, Step: 1e-5 * max(math.Abs(r.Inputs[i].Estimate), 1e-3)})
				if math.IsNaN(want) && math.IsNaN(l.C[j][i]) {
					continue // a sum that is 0 = 0 only for the numbers of the file
				}
				scale := max(math.Abs(want), 1e-3*math.Abs(l.Y[j]/r.Inputs[i].Estimate))
				if off := math.Abs(l.C[j][i]-want) / scale; !(off <= 1e-5) {
					t.Errorf("%s: ∂%s/∂%s = %v, finite differences %v", h.ID, names[j], r.Inputs[i].Name(), l.C[j][i], want)
				} else if off > worst {
					worst, where = off, h.ID
				}
				checked++
			}
		}
	}
	if checked < 300 {
		t.Errorf("only %d sensitivities were checked", checked)
	}
	t.Logf("%d sensitivities, largest relative difference %.1e (%s)", checked, worst, where)
}

// resolved is an output with input i at x, by the solver of package statics.
func (r *Result) resolved(i int, x float64, output int) float64 {
	m := r.form.model
	env := append([]float64(nil), r.solved...)
	slot := r.slots()[i]
	env[slot] += x - r.Inputs[i].Estimate
	var start []float64
	for _, name := range m.Unknowns() {
		at, _ := m.Slot(name)
		start = append(start, r.solved[at])
	}
	solve := m.Solve
	if !m.Linear() {
		solve = func(env []float64) ([]float64, error) { return m.SolveNear(env, start) }
	}
	out, err := solve(env)
	if err != nil {
		return math.NaN()
	}
	return out[output]
}

// Shares of the variance make one, twice the half-widths are twice the uncertainty,
// and what is exact changes nothing.
func TestBudgetAddsUp(t *testing.T) {
	for _, alpha := range []string{"20", "30", "62"} {
		f := twoStrings(t, alpha, "45")
		r := result(t, f)
		for _, p := range r.Predicted {
			total := 0.0
			for i, row := range p.Budget {
				total += row.Share
				if i > 0 && row.Share > p.Budget[i-1].Share {
					t.Errorf("%s: the budget is not sorted", p.Name)
				}
			}
			if math.Abs(total-1) > 1e-9 {
				t.Errorf("%s: shares make %v", p.Name, total)
			}
		}
		wide := bankForm(t, "canal-lantern")
		fill(t, wide, []string{"m = 0.500 kg ± 2 %", "alpha = " + alpha + " ± 1 deg", "beta=45 deg ± 1 deg", "g = 9.81 m/s^2"}, nil)
		twice := result(t, wide).Predicted[0].U / r.Predicted[0].U
		if math.Abs(twice-2) > 1e-3 {
			t.Errorf("twice the half-widths give %v times the uncertainty", twice)
		}
	}
}

// Halving the largest input by typing half of it does what was promised.
func TestMeasuringBetterDoesWhatItSays(t *testing.T) {
	f := twoStrings(t, "30", "45")
	p := result(t, f).Predicted[0]
	most, then, ok := p.Better()
	if !ok || most.Input.Letter != "beta" {
		t.Fatalf("%+v", most)
	}
	fill(t, f, []string{"beta = 45 deg ± 0.25 deg"}, nil)
	if got := result(t, f).Predicted[0].U; math.Abs(got-then) > 1e-9 {
		t.Errorf("u = %v, promised %v", got, then)
	}
}
