package tutor

import (
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// Slider is a given that can be turned. All numbers are in Unit. Letter is as
// printed ("α").
type Slider struct {
	Name, Letter           string
	Unit                   quantity.Unit
	Value, Low, High, Step float64
}

// Readout is the value of an unknown as the givens are turned now, in Unit.
type Readout struct {
	Name, Letter string
	Unit         quantity.Unit
	Value        float64
}

// String prints the reading with three figures: "T1 = 20.2 N".
func (r Readout) String() string { return r.Letter + " = " + r.Unit.In(r.Value*r.Unit.Factor, 3) }

// Dot is one point of a curve.
type Dot struct{ X, Y float64 }

// Curve is how one unknown follows a slider. A point where there is no solution,
// or none that can be, has no number as its Y.
type Curve struct {
	Readout
	Dots []Dot
}

// Angles is a problem whose givens are turned to see what follows. It changes
// nothing about the lesson.
type Angles struct {
	page    *Page
	model   *statics.Model
	env     []float64 // solved
	sliders []Slider
}

// Angles returns the problem as it is, ready to be turned; nil where nothing can
// be turned.
func (g *Page) Angles() *Angles {
	model, err := statics.Compile(g.Problem.System)
	if err != nil {
		return nil
	}
	env, err := model.Solve(model.Environment())
	if err != nil {
		return nil
	}
	a := &Angles{page: g, model: model}
	a.env = env
	for _, given := range g.Problem.System.Givens {
		if slider, ok := g.slider(given); ok {
			a.sliders = append(a.sliders, slider)
		}
	}
	if a.sliders == nil {
		return nil
	}
	return a
}

// slider says how far a given can be turned. The strength of gravity and letters
// without a number stay.
func (g *Page) slider(given statics.Given) (Slider, bool) {
	k := Slider{Name: given.Name, Letter: expr.Glyph(given.Name), Unit: given.Unit, Value: given.Value() / given.Unit.Factor}
	switch {
	case given.Any || given.Unit.Dim == quantity.Acceleration || k.Value == 0:
		return k, false
	case given.Unit.Dim == quantity.Angle:
		degree := quantity.Degree / given.Unit.Factor
		// Not to 0° or 90°, where a component vanishes and the equations may have no solution.
		k.Low, k.High, k.Step = degree, 89*degree, degree
		if g.Problem.System.TurnsFully(given.Name) {
			k.Low, k.High = 0, 359*degree
		}
		return k, true
	}
	k.Step = step(math.Abs(k.Value))
	k.Low, k.High = k.Step, 4*math.Abs(k.Value)
	return k, k.Value > 0
}

// step is about a twentieth of a size, as a round number.
func step(size float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(size/20)))
	for _, n := range []float64{1, 2, 5} {
		// A little less, because a round number may come out slightly too small.
		if n*power >= size/20*0.999 {
			return n * power
		}
	}
	return 10 * power
}

// Sliders lists what can be turned.
func (a *Angles) Sliders() []Slider { return slices.Clone(a.sliders) }

// Slider finds a slider by its letter as typed, Greek letters by sign or name.
func (a *Angles) Slider(typed string) (int, bool) {
	for i, k := range a.sliders {
		if typed == k.Name || typed == k.Letter {
			return i, true
		}
	}
	for i, k := range a.sliders {
		if strings.EqualFold(typed, k.Name) {
			return i, true
		}
	}
	return 0, false
}

// Slide turns a slider by so many steps, at most to the end of its range. What cannot be
// (further, or where a string would have to push) is not done; the sentence says why,
// "" if it was done.
func (a *Angles) Slide(slider, steps int) string {
	if slider < 0 || slider >= len(a.sliders) {
		return saidNoSlider
	}
	k := a.sliders[slider]
	// A value off the grid of steps is brought back to it by the first turn.
	value := math.Round((k.Value+float64(steps)*k.Step)/k.Step) * k.Step
	switch {
	case value > k.High && k.Value < k.High*(1-1e-9):
		value = k.High
	case value < k.Low && k.Value > k.Low*(1+1e-9):
		value = k.Low
	}
	return a.Set(slider, value)
}

// Set turns a slider to a value, as Turn does by steps.
func (a *Angles) Set(slider int, value float64) string {
	if slider < 0 || slider >= len(a.sliders) {
		return saidNoSlider
	}
	k := &a.sliders[slider]
	// Written so that what is not a number is refused, too.
	if !(value >= k.Low*(1-1e-9) && value <= k.High*(1+1e-9)) {
		return saidEndOfSlider(*k)
	}
	env, why := a.at(*k, value, a.env)
	if why != "" {
		return why
	}
	a.env, k.Value = env, value
	return ""
}

// at solves with a slider at another value; near is a solution close by.
func (a *Angles) at(k Slider, value float64, near []float64) (env []float64, why string) {
	slot, _ := a.model.Slot(k.Name)
	env = slices.Clone(near)
	env[slot] = value * k.Unit.Factor
	var err error
	if a.model.Linear() {
		env, err = a.model.Solve(env)
	} else {
		// There may be several solutions, and the one close by continues what the student sees.
		env, err = a.model.SolveNear(env, a.unknowns(near))
	}
	if err != nil {
		return nil, saidNoRest
	}
	if said := a.model.Unphysical(env); said != "" {
		return nil, saidCannotBe
	}
	return env, ""
}

func (a *Angles) unknowns(env []float64) []float64 {
	var u []float64
	for _, name := range a.model.Unknowns() {
		slot, _ := a.model.Slot(name)
		u = append(u, env[slot])
	}
	return u
}

// Readings returns what is asked for, as the givens are turned now.
func (a *Angles) Readings() []Readout {
	var all []Readout
	for _, name := range a.page.Problem.System.Find {
		all = append(all, a.reading(name, a.env))
	}
	return all
}

func (a *Angles) reading(name string, env []float64) Readout {
	r := Readout{Name: name, Letter: expr.Glyph(name), Unit: a.page.Ref.Unit(name), Value: math.NaN()}
	if slot, ok := a.model.Slot(name); ok && env != nil {
		r.Value = env[slot] / r.Unit.Factor
	}
	return r
}

// Value returns a letter's value in SI as the givens are turned now.
func (a *Angles) Value(name string) (float64, bool) {
	slot, ok := a.model.Slot(name)
	if !ok {
		return 0, false
	}
	return a.env[slot], true
}

// Reference solves the problem as it is turned now, for a drawing of it. The
// error is the solver's.
func (a *Angles) Reference() (*checker.Reference, error) {
	system := *a.page.Problem.System
	system.Givens = slices.Clone(system.Givens)
	for i, g := range system.Givens {
		for _, k := range a.sliders {
			if k.Name == g.Name {
				system.Givens[i].Number = quantity.Exact(k.Value)
			}
		}
	}
	return checker.New(&system)
}

// dots is how many points a curve has.
const dots = 89

// Curves follows everything that is asked for while one slider goes from its low
// end to its high one and the others stay. Unknowns measured in different units
// come in one list.
func (a *Angles) Curves(slider int) []Curve {
	if slider < 0 || slider >= len(a.sliders) {
		return nil
	}
	k := a.sliders[slider]
	names := a.page.Problem.System.Find
	curves := make([]Curve, len(names))
	for j, name := range names {
		curves[j] = Curve{a.reading(name, a.env), make([]Dot, dots)}
	}
	here := min(max(int(math.Round((k.Value-k.Low)/(k.High-k.Low)*(dots-1))), 0), dots-1)
	// From the present value outwards, so that each solution starts near the last.
	a.sweep(k, curves, here, -1)
	a.sweep(k, curves, here, +1)
	return curves
}

func (a *Angles) sweep(k Slider, curves []Curve, from, way int) {
	near := a.env
	for i := from; i >= 0 && i < dots; i += way {
		x := k.Low + (k.High-k.Low)*float64(i)/(dots-1)
		env, _ := a.at(k, x, near)
		if env != nil {
			near = env
		}
		for j := range curves {
			curves[j].Dots[i] = Dot{x, a.reading(curves[j].Name, env).Value}
		}
	}
}

// steep is how many times its present value an unknown has to reach at an end of
// a curve for that end to be called steep.
const steep = 3

// Remark names the end of a slider at which an unknown grows without measure, as a
// string's tension does when it gets level; "" if there is none.
func (a *Angles) Remark(slider int, curves []Curve) string {
	// A force that grows in proportion to a mass has no steep end.
	if slider < 0 || slider >= len(a.sliders) || a.sliders[slider].Unit.Dim != quantity.Angle {
		return ""
	}
	for _, c := range curves {
		solved := slices.DeleteFunc(slices.Clone(c.Dots), func(d Dot) bool { return math.IsNaN(d.Y) })
		if len(solved) < 2 || c.Unit.Dim != quantity.Force {
			continue
		}
		for _, end := range []Dot{solved[0], solved[len(solved)-1]} {
			if end.Y > steep*c.Value && c.Value > 0 {
				return saidSteep(a.sliders[slider], c, end)
			}
		}
	}
	return ""
}
