package checker

import (
	"math"
	"strconv"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// The mistakes that befall one term of a sum.

func changeSign(_ *Reference, _ place, t term) []term {
	if t.scale == 0 {
		return nil
	}
	t.scale = -t.scale
	return []term{t}
}

func changeFunction(table map[function]function) func(*Reference, place, term) []term {
	return func(_ *Reference, _ place, t term) []term {
		f, ok := table[t.function]
		if !ok || t.scale == 0 {
			return nil
		}
		t.function = f
		return []term{t}
	}
}

func changeWhole(_ *Reference, _ place, t term) []term {
	if t.function == whole || t.scale == 0 {
		return nil
	}
	t.function = whole
	return []term{t}
}

func changeTangent(_ *Reference, _ place, t term) []term {
	if t.function != sine && t.function != cosine {
		return nil
	}
	t.function = tangent
	return []term{t}
}

// changeMass writes the mass where the weight belongs: m·g without g.
func changeMass(r *Reference, _ place, t term) []term {
	size := r.sizeTree(t)
	if size == nil || !size.Has("g") || t.scale == 0 {
		return nil
	}
	return []term{r.withSize(t, "mass", func() *expr.Node { return substitute(size, "g", expr.Constant(1)) })}
}

// changePrefix puts a given into a size as its number is written, whatever its unit:
// the 850 of 850 g, the 12 of 12 cm.
func changePrefix(r *Reference, _ place, t term) []term {
	size := r.sizeTree(t)
	if size == nil || t.scale == 0 {
		return nil
	}
	var all []term
	for _, g := range r.Givens {
		if g.Unit.Factor == 1 || !isPowerOfTen(g.Unit.Factor, hair) || !size.Has(g.Name) {
			continue
		}
		all = append(all, r.withSize(t, g.Name+" as written", func() *expr.Node {
			return substitute(size, g.Name, expr.Join(expr.Div, expr.Letter(g.Name), expr.Constant(g.Unit.Factor)))
		}))
	}
	return all
}

// changeMassAsWritten writes 850, for 850 g, where the weight belongs.
func changeMassAsWritten(r *Reference, _ place, t term) []term {
	size := r.sizeTree(t)
	if size == nil || !size.Has("g") || t.scale == 0 {
		return nil
	}
	for _, g := range r.Givens {
		if g.Unit.Dim == quantity.Mass && g.Unit.Factor != 1 && size.Has(g.Name) {
			return []term{r.withSize(t, "mass as written", func() *expr.Node {
				written := expr.Join(expr.Div, expr.Letter(g.Name), expr.Constant(g.Unit.Factor))
				return substitute(substitute(size, "g", expr.Constant(1)), g.Name, written)
			})}
		}
	}
	return nil
}

// changeNormal puts the whole weight in the place of the normal force, by itself
// or inside the friction.
func changeNormal(r *Reference, at place, t term) []term {
	body := &r.Bodies[at.body]
	weight := onlyOf(body, statics.Weight)
	if weight == nil || t.scale == 0 {
		return nil
	}
	if t.force.Kind == statics.Normal {
		return []term{r.withSize(t, "weight", func() *expr.Node { return expr.Letter(weight.Name) })}
	}
	size := r.sizeTree(t)
	for i := range body.Forces {
		if f := &body.Forces[i]; f.Kind == statics.Normal && size != nil && size.Has(f.Name) {
			return []term{r.withSize(t, "weight for "+f.Name, func() *expr.Node { return substitute(size, f.Name, expr.Letter(weight.Name)) })}
		}
	}
	return nil
}

func changeMissing(_ *Reference, _ place, t term) []term {
	if t.scale == 0 {
		return nil
	}
	t.scale = 0
	return []term{t}
}

// changeExtra puts a force that lies across the axis into the sum.
func changeExtra(_ *Reference, _ place, t term) []term {
	if t.scale != 0 {
		return nil
	}
	up, down := t, t
	up.scale, down.scale = 1, -1
	return []term{up, down}
}

func changeAngle(r *Reference, _ place, t term) []term {
	if t.function == whole || t.scale == 0 {
		return nil
	}
	var all []term
	for _, v := range r.Variables {
		if v.Angle && v.Name != t.letter {
			other := t
			other.angle = r.ready("angle "+v.Name, func() *expr.Node { return expr.Letter(v.Name) })
			other.letter = v.Name
			all = append(all, other)
		}
	}
	return all
}

// changeTension writes another string's tension.
func changeTension(r *Reference, at place, t term) []term {
	if t.force.Kind != statics.Tension || t.scale == 0 {
		return nil
	}
	var all []term
	for i := range r.Bodies[at.body].Forces {
		f := &r.Bodies[at.body].Forces[i]
		if f.Kind == statics.Tension && f.Name != t.force.Name {
			other := t
			other.slot, other.size = r.slots[f.Name], nil
			all = append(all, other)
		}
	}
	return all
}

// changeBody takes a force of the same kind from another body, or a mass that
// belongs to another force. Strings belong to both bodies that they join.
func changeBody(r *Reference, at place, t term) []term {
	if t.scale == 0 {
		return nil
	}
	all := r.otherMasses(t)
	for b := range r.Bodies {
		for i := range r.Bodies[b].Forces {
			f := &r.Bodies[b].Forces[i]
			within := t.force.Size != nil && t.force.Size.Has(f.Name) || f.Size != nil && f.Size.Has(t.force.Name)
			if b != at.body && f.Kind == t.force.Kind && f.Kind != statics.Tension && f.Name != t.force.Name && !within {
				other := t
				other.slot, other.size = r.slots[f.Name], nil
				all = append(all, other)
			}
		}
	}
	return all
}

func (r *Reference) otherMasses(t term) []term {
	size := r.sizeTree(t)
	if size == nil {
		return nil
	}
	var all []term
	for _, name := range size.Names() {
		if v, ok := r.Variable(name); !ok || v.Dim != quantity.Mass {
			continue
		}
		for _, other := range r.Variables {
			if other.Dim == quantity.Mass && !size.Has(other.Name) {
				all = append(all, r.withSize(t, other.Name+" for "+name, func() *expr.Node { return substitute(size, name, expr.Letter(other.Name)) }))
			}
		}
	}
	return all
}

func changeFactor(_ *Reference, _ place, t term) []term {
	if t.scale == 0 {
		return nil
	}
	double, half := t, t
	double.scale, half.scale = 2*t.scale, t.scale/2
	return []term{double, half}
}

// changeG works a weight out with 10 for g, where the problem says otherwise.
func changeG(r *Reference, _ place, t term) []term {
	size := r.sizeTree(t)
	slot, ok := r.slots["g"]
	if !ok || size == nil || !size.Has("g") || t.scale == 0 {
		return nil
	}
	var all []term
	for _, g := range usualG {
		if math.Abs(g-r.solution[slot]) > roundedShare*g {
			all = append(all, r.withSize(t, "g "+strconv.FormatFloat(g, 'g', -1, 64), func() *expr.Node { return substitute(size, "g", expr.Constant(g)) }))
		}
	}
	return all
}

// usualG are the values of g that are in use, in m/s² (common practice; 9.80665
// is the standard value of the 3rd CGPM, 1901).
var usualG = []float64{9.8, 9.81, 10, 9.80665, 9.82}

// changeRadians takes an angle's degrees for radians.
func changeRadians(_ *Reference, _ place, t term) []term {
	if t.function == whole || t.scale == 0 {
		return nil
	}
	t.radians = true
	return []term{t}
}
