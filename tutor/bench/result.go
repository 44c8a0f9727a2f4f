package bench

import (
	"cmp"
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"

	"example.org/standstill/tutor/bench/measure"
)

// Input is one value that was put into the sums. Estimate and U are in SI. Assumed says
// that nothing was measured, and the problem file's value counts as exact.
type Input struct {
	*Field
	Estimate, U float64
	Assumed     bool
	Unit        quantity.Unit
	parts       []measure.Part
}

// Row is one line of a budget: how far one input makes a prediction unsure.
// Sensitivity is in SI, Share of the variance.
type Row struct {
	Input       *Input
	Sensitivity float64
	Share       float64
}

// Prediction is what the sums say of one quantity, in SI. U is the standard
// uncertainty, Expanded is K·U; Nu is the degrees of freedom of K, 0 for K = 2. Low
// and High bound the interval that is reported, about 95 %.
//
// Mean, Spread, TrialsLow and TrialsHigh are what the random trials gave. Where FromTrials
// is set the two ways differ, for the reason Why, and the interval is that of the trials.
type Prediction struct {
	Letter, Name          string
	Unit                  quantity.Unit
	Value, U, K, Expanded float64
	Nu                    int
	Low, High             float64
	Budget                []Row
	Mean, Spread          float64
	TrialsLow, TrialsHigh float64
	FromTrials            bool
	Why                   string
	Direction             bool // counted round the full circle
}

// Result is what comes of a run.
type Result struct {
	Inputs    []Input
	Predicted []Prediction
	Compared  []Comparison
	Left      []Leftover
	NoSum     []string // why a sum of the measured pulls is not there
	Warnings  []string
	Draws     int
	Failed    int // trials that were thrown out: the sums had no solution, or
	Pushed    int // as many of them a solution in which a string pushes

	early  bool // sizes of what is predicted are not to be said yet
	form   *Form
	law    measure.Law // of the predictions
	both   measure.Law // of predictions and readings, over all inputs
	keys   []string    // which of these inputs are the same in other runs
	read   []reading
	solved []float64
}

// Form is the form that was put into the sums.
func (r *Result) Form() *Form { return r.form }

// Result puts the form into the sums. Without a result, the sentences say what has
// to be mended.
func (f *Form) Result() (*Result, []string) {
	if bad := f.Bad(); bad != nil {
		return nil, bad
	}
	r := &Result{form: f, Inputs: f.inputs(), Draws: f.draws}
	if why := r.solve(); why != "" {
		return nil, []string{why}
	}
	if why := r.predict(); why != "" {
		return nil, []string{why}
	}
	r.compare()
	r.leftOver()
	r.warn()
	return r, nil
}

// inputs gathers what is put into the sums: every given with a number, and the own
// masses that were typed.
func (f *Form) inputs() []Input {
	var inputs []Input
	for i := range f.Fields {
		e := &f.Fields[i]
		given, _ := f.problem.System.Given(e.Letter)
		switch {
		// Neither goes into the equations: they are what the prediction is compared with.
		case e.Kind == Reading || e.Kind == Scale:
		case e.Good() && e.Value.Measured:
			inputs = append(inputs, Input{Field: e, Estimate: e.Value.Estimate, U: e.Value.U(), Unit: e.Value.Unit, parts: e.Value.Parts})
		// “any” in a file is a letter without a number, which must be measured.
		case e.Kind == Measure && !given.Any:
			inputs = append(inputs, Input{Field: e, Estimate: given.Value(), Unit: given.Unit, Assumed: true})
		}
	}
	return inputs
}

// solve finds the position of rest for the estimates.
func (r *Result) solve() string {
	f := r.form
	env := f.model.Environment()
	for _, slot := range r.slots() {
		// A hanger and its rings add up to one mass.
		env[slot] = 0
	}
	for i, slot := range r.slots() {
		env[slot] += r.Inputs[i].Estimate
	}
	solved, err := f.model.Solve(env)
	if err != nil {
		return saidUnsolved(err)
	}
	if why := f.model.Unphysical(solved); why != "" {
		return saidUnphysical(why)
	}
	r.solved = solved
	return ""
}

// slots are the places of the inputs' letters.
func (r *Result) slots() []int {
	slots := make([]int, len(r.Inputs))
	for i, in := range r.Inputs {
		slots[i], _ = r.form.model.Slot(in.Letter)
	}
	return slots
}

// outputs are the letters that are predicted: what the problem asks for, and what was
// read besides.
func (r *Result) outputs() []string {
	var names []string
	asked := len(r.form.problem.System.Find)
	for i := range r.form.Fields {
		e := &r.form.Fields[i]
		if e.Kind != Reading {
			continue
		}
		// The readings stand in the order of the problem, what it asks first.
		if asked--; asked >= 0 || e.Good() && e.Value.Measured {
			names = append(names, e.Letter)
		}
	}
	return names
}

func (r *Result) predict() string {
	names := r.outputs()
	outputs := make([]int, len(names))
	for j, name := range names {
		outputs[j], _ = r.form.model.Slot(name)
	}
	sums := newSums(r.form.model, r.solved)
	f := sums.function(r.slots(), outputs)
	in := r.uncertain()
	var ok bool
	if r.law, ok = measure.Linearise(f, in, len(names)); !ok {
		return saidUnsolved(statics.ErrIllPosed)
	}
	// Before anything is predicted: solve takes 1 for a letter without a number.
	if why := r.unmeasured(names); why != "" {
		return why
	}
	for j, name := range names {
		r.Predicted = append(r.Predicted, r.prediction(j, name))
		// The sums have a solution for these values, but not for any beside them.
		if math.IsNaN(r.Predicted[j].U) {
			return saidUpset(r.Predicted[j].Name)
		}
	}
	r.check(sums.physical(f, &r.Pushed), in)
	return ""
}

func (r *Result) uncertain() []measure.Input {
	in := make([]measure.Input, len(r.Inputs))
	for i, input := range r.Inputs {
		in[i] = measure.Input{X: input.Estimate, Parts: input.parts}
	}
	return in
}

// unmeasured says which letter has no number although a prediction hangs on it.
func (r *Result) unmeasured(names []string) string {
	f := r.form
	for _, g := range f.problem.System.Givens {
		slot, _ := f.model.Slot(g.Name)
		if !g.Any || r.isInput(g.Name) {
			continue
		}
		other := newSums(f.model, r.solved)
		// Any other number than the 1 that was solved with.
		other.env[slot] = 2.6
		if !other.solve() {
			return saidNumberNeeded(g.Name, names[0])
		}
		for j, name := range names {
			at, _ := f.model.Slot(name)
			if math.Abs(other.env[at]-r.law.Y[j]) > 1e-6*math.Abs(r.law.Y[j]) {
				return saidNumberNeeded(g.Name, name)
			}
		}
	}
	return ""
}

func (r *Result) isInput(letter string) bool {
	return slices.ContainsFunc(r.Inputs, func(in Input) bool { return in.Letter == letter })
}

func (r *Result) prediction(j int, name string) Prediction {
	p := Prediction{Letter: name, Name: expr.Set(name), Unit: r.form.want(name).Unit, Value: r.law.Y[j], U: r.law.U(j), Direction: r.form.model.TurnsFully(name)}
	p.K, p.Nu = measure.Coverage(r.law.Nu(j))
	p.Expanded = p.K * p.U
	// check may replace these by what the trials say.
	p.Low, p.High = p.Value-p.Expanded, p.Value+p.Expanded
	for i := range r.Inputs {
		p.Budget = append(p.Budget, Row{&r.Inputs[i], r.law.C[j][i], r.law.Share(j, i)})
	}
	slices.SortStableFunc(p.Budget, func(a, b Row) int { return cmp.Compare(b.Share, a.Share) })
	return p
}

// reported is the standard uncertainty that counts.
func (p *Prediction) reported() float64 {
	if p.FromTrials {
		return p.Spread
	}
	return p.U
}

// Better is what would make a prediction surer: the input with the largest share, and
// the standard uncertainty once that input's is halved; false where everything is exact.
func (p *Prediction) Better() (most Row, then float64, ok bool) {
	if len(p.Budget) == 0 || p.Budget[0].Share == 0 {
		return Row{}, 0, false
	}
	most = p.Budget[0]
	// Half of an uncertainty is a quarter of its variance, so three quarters of its share go.
	return most, p.U * math.Sqrt(1-0.75*most.Share), true
}
