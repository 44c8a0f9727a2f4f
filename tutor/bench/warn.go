package bench

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
	"example.org/standstill/tutor/bench/measure"
)

// When a predicted pull calls for a warning: as a multiple of the load, unless it is
// small, and by itself where nobody said what the string is rated for; in newtons.
const (
	manyLoads   = 5
	smallPull   = 10
	unratedPull = 50
)

// warn says which pulls and ratings are dangerous in this run.
func (r *Result) warn() {
	var many, unrated []string
	load := r.load()
	for _, f := range r.strings() {
		slot, _ := r.form.model.Slot(f.Name)
		name, size := expr.Set(f.Name), math.Abs(r.solved[slot])
		unit := r.form.want(f.Name).Unit
		shown := measure.WithUnit(measure.Figured(size/unit.Factor, 3), unit)
		// A warning must come before the string is loaded, but not give the prediction away.
		if !r.early {
			name += " (" + shown + ")"
		}
		// A flat string pulls with many times its load; of a paper clip that is still harmless.
		if load > 0 && size > manyLoads*load && size > smallPull {
			many = append(many, name)
		}
		if size > unratedPull && !r.rating(f.Name) {
			unrated = append(unrated, name)
		}
	}
	if many != nil {
		r.Warnings = append(r.Warnings, saidManyLoads(many))
	}
	if unrated != nil {
		r.Warnings = append(r.Warnings, saidUnrated(unrated))
	}
	for i := range r.form.Fields {
		if e := &r.form.Fields[i]; e.Good() && e.Value.Rated {
			r.rated(e)
		}
	}
}

// strings are the forces that may snap or slip, one for each letter.
func (r *Result) strings() []*statics.Force {
	var all []*statics.Force
	seen := map[string]bool{}
	for i := range r.form.problem.System.Bodies {
		body := &r.form.problem.System.Bodies[i]
		for k := range body.Forces {
			f := &body.Forces[k]
			// A string over a pulley pulls on two bodies under one letter.
			if (f.Kind == statics.Tension || f.Kind == statics.Spring) && !seen[f.Name] {
				seen[f.Name] = true
				all = append(all, f)
			}
		}
	}
	return all
}

// load is the largest weight, or where nothing hangs the largest pull that is given.
func (r *Result) load() float64 {
	load, given := 0.0, 0.0
	for _, b := range r.form.problem.System.Bodies {
		for _, f := range b.Forces {
			slot, _ := r.form.model.Slot(f.Name)
			switch size := math.Abs(r.solved[slot]); {
			case f.Kind == statics.Weight:
				load = max(load, size)
			// A size that needs no letter is a number in the file.
			case f.Size != nil && len(r.form.needs(f.Size)) == 0:
				given = max(given, size)
			}
		}
	}
	if load == 0 {
		return given
	}
	return load
}

func (r *Result) rating(letter string) bool {
	return slices.ContainsFunc(r.form.Fields, func(e Field) bool { return e.Letter == letter && e.Good() && e.Value.Rated })
}

// rated warns where a rating that was given is exceeded, by what is predicted or by
// what is measured.
func (r *Result) rated(e *Field) {
	said := func(what string, x float64) {
		u := e.Value.Unit
		r.Warnings = append(r.Warnings, saidExceeds(e.Name(), what, measure.WithUnit(measure.Figured(x/u.Factor, 3), u), measure.WithUnit(measure.Plain(e.Value.Rating/u.Factor), u)))
	}
	if e.Value.Measured && e.Value.Estimate > e.Value.Rating {
		said("was measured to be", e.Value.Estimate)
	}
	if e.Kind != Measure && e.Kind != Reading {
		return
	}
	slot, _ := r.form.model.Slot(e.Letter)
	x, high := math.Abs(r.solved[slot]), 0.0
	for _, p := range r.Predicted {
		if p.Letter == e.Letter {
			// Of a force that may point either way the larger size can be at the lower end.
			high = max(math.Abs(p.Low), math.Abs(p.High))
		}
	}
	switch {
	case x > e.Value.Rating && e.Kind == Reading && r.early:
		r.Warnings = append(r.Warnings, saidExceedsEarly(e.Name(), measure.WithUnit(measure.Plain(e.Value.Rating/e.Value.Unit.Factor), e.Value.Unit)))
	case x > e.Value.Rating && e.Kind == Reading:
		said("is predicted to be", x)
	case x > e.Value.Rating && !(e.Value.Measured && e.Value.Estimate > e.Value.Rating):
		said("is assumed to be", x)
	case high > e.Value.Rating:
		said("may reach", high)
	}
}
