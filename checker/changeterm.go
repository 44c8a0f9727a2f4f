package checker

import (
	"math"
	"strconv"

	"example.org/standstill/checker/trial"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// The mistakes that befall one term of a sum.

func changeSign(_ *Reference, _ trial.Place, t trial.Term) []trial.Term {
	if t.Scale == 0 {
		return nil
	}
	t.Scale = -t.Scale
	return []trial.Term{t}
}

func changeFunction(table map[trial.Function]trial.Function) func(*Reference, trial.Place, trial.Term) []trial.Term {
	return func(_ *Reference, _ trial.Place, t trial.Term) []trial.Term {
		f, ok := table[t.Function]
		if !ok || t.Scale == 0 {
			return nil
		}
		t.Function = f
		return []trial.Term{t}
	}
}

func changeWhole(_ *Reference, _ trial.Place, t trial.Term) []trial.Term {
	if t.Function == trial.Whole || t.Scale == 0 {
		return nil
	}
	t.Function = trial.Whole
	return []trial.Term{t}
}

func changeTangent(_ *Reference, _ trial.Place, t trial.Term) []trial.Term {
	if t.Function != trial.Sine && t.Function != trial.Cosine {
		return nil
	}
	t.Function = trial.TangentOf
	return []trial.Term{t}
}

// changeMass writes the mass where the weight belongs: m·g without g.
func changeMass(r *Reference, _ trial.Place, t trial.Term) []trial.Term {
	size := r.sizeTree(t)
	if size == nil || !size.Has("g") || t.Scale == 0 {
		return nil
	}
	return []trial.Term{r.withSize(t, "mass", func() *expr.Node { return trial.Substitute(size, "g", expr.Constant(1)) })}
}

// changePrefix puts a given into a size as its number is written, whatever its unit:
// the 850 of 850 g, the 12 of 12 cm.
func changePrefix(r *Reference, _ trial.Place, t trial.Term) []trial.Term {
	size := r.sizeTree(t)
	if size == nil || t.Scale == 0 {
		return nil
	}
	var all []trial.Term
	for _, g := range r.Givens {
		if g.Unit.Factor == 1 || !isPowerOfTen(g.Unit.Factor, trial.Hair) || !size.Has(g.Name) {
			continue
		}
		all = append(all, r.withSize(t, g.Name+" as written", func() *expr.Node {
			return trial.Substitute(size, g.Name, expr.Join(expr.Div, expr.Letter(g.Name), expr.Constant(g.Unit.Factor)))
		}))
	}
	return all
}

// changeMassAsWritten writes 850, for 850 g, where the weight belongs.
func changeMassAsWritten(r *Reference, _ trial.Place, t trial.Term) []trial.Term {
	size := r.sizeTree(t)
	if size == nil || !size.Has("g") || t.Scale == 0 {
		return nil
	}
	for _, g := range r.Givens {
		if g.Unit.Dim == quantity.Mass && g.Unit.Factor != 1 && size.Has(g.Name) {
			return []trial.Term{r.withSize(t, "mass as written", func() *expr.Node {
				written := expr.Join(expr.Div, expr.Letter(g.Name), expr.Constant(g.Unit.Factor))
				return trial.Substitute(trial.Substitute(size, "g", expr.Constant(1)), g.Name, written)
			})}
		}
	}
	return nil
}

// changeNormal puts the whole weight in the place of the normal force, by itself
// or inside the friction.
func changeNormal(r *Reference, at trial.Place, t trial.Term) []trial.Term {
	body := &r.Bodies[at.Body]
	weight := trial.OnlyOf(body, statics.Weight)
	if weight == nil || t.Scale == 0 {
		return nil
	}
	if t.Force.Kind == statics.Normal {
		return []trial.Term{r.withSize(t, "weight", func() *expr.Node { return expr.Letter(weight.Name) })}
	}
	size := r.sizeTree(t)
	for i := range body.Forces {
		if f := &body.Forces[i]; f.Kind == statics.Normal && size != nil && size.Has(f.Name) {
			return []trial.Term{r.withSize(t, "weight for "+f.Name, func() *expr.Node { return trial.Substitute(size, f.Name, expr.Letter(weight.Name)) })}
		}
	}
	return nil
}

func changeMissing(_ *Reference, _ trial.Place, t trial.Term) []trial.Term {
	if t.Scale == 0 {
		return nil
	}
	t.Scale = 0
	return []trial.Term{t}
}

// changeExtra puts a force that lies across the axis into the sum.
func changeExtra(_ *Reference, _ trial.Place, t trial.Term) []trial.Term {
	if t.Scale != 0 {
		return nil
	}
	up, down := t, t
	up.Scale, down.Scale = 1, -1
	return []trial.Term{up, down}
}

func changeAngle(r *Reference, _ trial.Place, t trial.Term) []trial.Term {
	if t.Function == trial.Whole || t.Scale == 0 {
		return nil
	}
	var all []trial.Term
	for _, v := range r.Variables {
		if v.Angle && v.Name != t.Letter {
			other := t
			other.Angle = r.Ready("angle "+v.Name, func() *expr.Node { return expr.Letter(v.Name) })
			other.Letter = v.Name
			all = append(all, other)
		}
	}
	return all
}

// changeTension writes another string's tension.
func changeTension(r *Reference, at trial.Place, t trial.Term) []trial.Term {
	if t.Force.Kind != statics.Tension || t.Scale == 0 {
		return nil
	}
	var all []trial.Term
	for i := range r.Bodies[at.Body].Forces {
		f := &r.Bodies[at.Body].Forces[i]
		if f.Kind == statics.Tension && f.Name != t.Force.Name {
			other := t
			other.Slot, other.Size = r.Slots[f.Name], nil
			all = append(all, other)
		}
	}
	return all
}

// changeBody takes a force of the same kind from another body, or a mass that
// belongs to another force. Strings belong to both bodies that they join.
func changeBody(r *Reference, at trial.Place, t trial.Term) []trial.Term {
	if t.Scale == 0 {
		return nil
	}
	all := r.otherMasses(t)
	for b := range r.Bodies {
		for i := range r.Bodies[b].Forces {
			f := &r.Bodies[b].Forces[i]
			within := t.Force.Size != nil && t.Force.Size.Has(f.Name) || f.Size != nil && f.Size.Has(t.Force.Name)
			if b != at.Body && f.Kind == t.Force.Kind && f.Kind != statics.Tension && f.Name != t.Force.Name && !within {
				other := t
				other.Slot, other.Size = r.Slots[f.Name], nil
				all = append(all, other)
			}
		}
	}
	return all
}

func (r *Reference) otherMasses(t trial.Term) []trial.Term {
	size := r.sizeTree(t)
	if size == nil {
		return nil
	}
	var all []trial.Term
	for _, name := range size.Names() {
		if v, ok := r.Variable(name); !ok || v.Dim != quantity.Mass {
			continue
		}
		for _, other := range r.Variables {
			if other.Dim == quantity.Mass && !size.Has(other.Name) {
				all = append(all, r.withSize(t, other.Name+" for "+name, func() *expr.Node { return trial.Substitute(size, name, expr.Letter(other.Name)) }))
			}
		}
	}
	return all
}

func changeFactor(_ *Reference, _ trial.Place, t trial.Term) []trial.Term {
	if t.Scale == 0 {
		return nil
	}
	double, half := t, t
	double.Scale, half.Scale = 2*t.Scale, t.Scale/2
	return []trial.Term{double, half}
}

// changeG works a weight out with 10 for g, where the problem says otherwise.
func changeG(r *Reference, _ trial.Place, t trial.Term) []trial.Term {
	size := r.sizeTree(t)
	slot, ok := r.Slots["g"]
	if !ok || size == nil || !size.Has("g") || t.Scale == 0 {
		return nil
	}
	var all []trial.Term
	for _, g := range trial.UsualG {
		if math.Abs(g-r.Solution[slot]) > trial.RoundedShare*g {
			all = append(all, r.withSize(t, "g "+strconv.FormatFloat(g, 'g', -1, 64), func() *expr.Node { return trial.Substitute(size, "g", expr.Constant(g)) }))
		}
	}
	return all
}

// changeRadians takes an angle's degrees for radians.
func changeRadians(_ *Reference, _ trial.Place, t trial.Term) []trial.Term {
	if t.Function == trial.Whole || t.Scale == 0 {
		return nil
	}
	t.Radians = true
	return []trial.Term{t}
}
