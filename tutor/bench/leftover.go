package bench

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"

	"example.org/standstill/tutor/bench/measure"
)

// Leftover is what one sum of the measured pulls leaves: zero but for what was
// measured inexactly. Its uncertainty comes from the measured givens and the readings
// themselves: the predictions share the givens and are not independent.
type Leftover struct {
	Body        string
	Axis        statics.Axis
	Unit        quantity.Unit
	Value, U, K float64
	Nu          int
	Expanded    float64
}

// Within reports whether zero lies within the expanded uncertainty.
func (l Leftover) Within() bool { return math.Abs(l.Value) <= l.Expanded }

// Name is the sum's sign, "ΣFx", with the body where there are several.
func (l Leftover) Name() string {
	if l.Body == "" {
		return "ΣF" + l.Axis.String()
	}
	return "ΣF" + l.Axis.String() + " on " + l.Body
}

// leftOver adds up every sum for whose unknowns there are readings: its uncertainty goes
// through the readings as corrected, by the law of these.
func (r *Result) leftOver() {
	if len(r.Compared) == 0 {
		return
	}
	slots := r.slots()
	var outputs []int
	for i, q := range r.read {
		v, _ := r.form.model.Variable(q.Letter)
		if slot, _ := r.form.model.Slot(q.Letter); v.Role == statics.IsUnknown {
			slots, outputs = append(slots, slot), append(outputs, len(r.Predicted)+i)
		}
	}
	sums := 2 * len(r.form.problem.System.Bodies)
	l, _ := measure.Linearise(r.measured(slots, outputs), r.both.In, sums)
	for j := range sums {
		r.addLeftover(l, j)
	}
}

// measured evaluates every sum with the readings in the place of the unknowns; outputs
// are these readings in the law of both.
func (r *Result) measured(slots, outputs []int) measure.Function {
	m := r.form.model
	env := append([]float64(nil), r.solved...)
	room := make([]float64, 0, 2*len(m.Bodies))
	return func(x, y []float64) bool {
		for _, slot := range slots {
			// A hanger or ring has the slot of the mass that it is added to, so the values of one slot add up.
			env[slot] = 0
		}
		for i, slot := range slots[:len(r.Inputs)] {
			env[slot] += x[i]
		}
		for i, slot := range slots[len(r.Inputs):] {
			env[slot] = r.corrected(outputs[i], x)
		}
		m.Derive(env)
		copy(y, m.Residuals(env, room))
		return true
	}
}

// corrected is a reading for other inputs, straight over their uncertainties.
func (r *Result) corrected(output int, x []float64) float64 {
	value := r.both.Y[output]
	for i, c := range r.both.C[output] {
		value += c * (x[i] - r.both.In[i].X)
	}
	return value
}

func (r *Result) addLeftover(l measure.Law, j int) {
	body, axis := &r.form.problem.System.Bodies[j/2], statics.Axis(j%2)
	sum := body.Sum(axis)
	if sum == nil {
		return
	}
	needed := r.form.needs(sum)
	left := Leftover{Body: body.Name, Axis: axis, Unit: r.forceUnit(body), Value: l.Y[j], U: l.U(j)}
	if missing := r.unread(needed); len(missing) > 0 {
		// Where nothing was read, nobody expects this sum.
		if len(missing) < len(needed) {
			r.NoSum = append(r.NoSum, saidNoSum(left.Name(), missing))
		}
		return
	}
	// A sum of givens alone says nothing about the readings.
	if len(needed) == 0 {
		return
	}
	left.K, left.Nu = measure.Coverage(l.Nu(j))
	left.Expanded = left.K * left.U
	r.Left = append(r.Left, left)
}

// unread lists the letters for which nothing was read.
func (r *Result) unread(names []string) []string {
	var missing []string
	for _, name := range names {
		if !slices.ContainsFunc(r.Compared, func(c Comparison) bool { return c.Letter == name }) {
			missing = append(missing, expr.Set(name))
		}
	}
	return missing
}

func (r *Result) forceUnit(body *statics.Body) quantity.Unit {
	for _, f := range body.Forces {
		if u := r.form.want(f.Name).Unit; u.Dim == quantity.Force {
			return u
		}
	}
	newton, _ := quantity.Find("N")
	return newton
}
