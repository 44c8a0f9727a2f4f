package bench

import (
	"math"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"

	"example.org/standstill/tutor/bench/measure"
)

// nearlyLevel is below how many degrees from level a string counts as nearly level.
const nearlyLevel = 10

// onTable is the topic of problems that are drawn as a plan: their strings all lie
// level, and none of them carries a weight by its slant.
const onTable = "force-table"

// warn says what about this run calls for care.
func (r *Result) warn() {
	f := r.form
	warned := map[string]bool{}
	for i := range f.problem.System.Bodies {
		body := &f.problem.System.Bodies[i]
		for k := range body.Forces {
			force := &body.Forces[k]
			if why := r.saidLevel(body, force); why != "" && !warned[force.Name] {
				warned[force.Name] = true
				r.Warnings = append(r.Warnings, why)
			}
		}
	}
	for i := range f.Fields {
		if e := &f.Fields[i]; e.Good() && e.Value.Rated {
			r.rated(e)
		}
	}
}

// saidLevel warns of a string that is nearly level. One that the problem lays along
// the level, to pull sideways, is not meant to carry anything.
func (r *Result) saidLevel(body *statics.Body, force *statics.Force) string {
	f := r.form
	if force.Kind != statics.Tension || f.problem.Topic == onTable || !force.Slanted() {
		return ""
	}
	degrees := f.elevation(body, force, r.solved) / quantity.Degree
	if degrees >= nearlyLevel {
		return ""
	}
	if r.early {
		return saidNearlyLevel(expr.Glyph(force.Name), degrees, "")
	}
	slot, _ := f.model.Slot(force.Name)
	return saidNearlyLevel(expr.Glyph(force.Name), degrees, measure.WithUnit(measure.Figured(r.solved[slot]/f.want(force.Name).Unit.Factor, 3), f.want(force.Name).Unit))
}

// rated warns where a rating that was given is exceeded, by what the sums predict or
// by what is measured.
func (r *Result) rated(e *Field) {
	said := func(what string, x float64) {
		u := e.Value.Unit
		r.Warnings = append(r.Warnings, saidExceeds(e.Name(), what, measure.WithUnit(measure.Figured(x/u.Factor, 3), u), measure.WithUnit(measure.Plain(e.Value.Rating/u.Factor), u)))
	}
	if e.Value.Measured && e.Value.Estimate > e.Value.Rating {
		said("was measured as", e.Value.Estimate)
	}
	if e.Kind != Measure && e.Kind != Reading {
		return
	}
	slot, _ := r.form.model.Slot(e.Letter)
	x, high := math.Abs(r.solved[slot]), 0.0
	for _, p := range r.Predicted {
		if p.Letter == e.Letter {
			high = max(math.Abs(p.Low), math.Abs(p.High))
		}
	}
	switch {
	case x > e.Value.Rating && e.Kind == Reading && r.early:
		r.Warnings = append(r.Warnings, saidExceedsEarly(e.Name(), measure.WithUnit(measure.Plain(e.Value.Rating/e.Value.Unit.Factor), e.Value.Unit)))
	case x > e.Value.Rating && e.Kind == Reading:
		said("is predicted as", x)
	case x > e.Value.Rating && !(e.Value.Measured && e.Value.Estimate > e.Value.Rating):
		said("counts as", x)
	case high > e.Value.Rating:
		said("may reach", high)
	}
}
