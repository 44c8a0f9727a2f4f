package draw

import (
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
)

// The mistakes in an equation, each a change of it. Order counts: it is part of the
// names of the paths.

// place is the body and the axis of an equation.
type place struct {
	body int
	axis statics.Axis
}

// change is one kind of mistake. each gives the ways in which it changes one term;
// all the ways in which it changes the whole equation.
type change struct {
	code Code
	each func(p *problem, at place, t term) []term
	all  func(p *problem, at place, w row) []variant
	// everywhere marks a change that is tried in every equation at once, too.
	everywhere bool
}

// variant is an equation after one change; about names the forces that were changed.
type variant struct {
	code  Code
	about []string
	row   row
}

var changes = []change{
	{code: Sign, each: changeSign},
	{code: SineCosine, each: changeFunction, all: everyTerm(SineCosine, changeFunction), everywhere: true},
	{code: NotResolved, each: changeWhole, all: everyTerm(NotResolved, changeWhole), everywhere: true},
	{code: MassForWeight, each: changeMass, everywhere: true},
	{code: NormalEqualsWeight, each: changeNormal, all: changeNormalAlone, everywhere: true},
	{code: MissingForce, each: changeMissing},
	{code: OtherAngle, each: changeAngle, everywhere: true},
	{code: Tangent, each: changeTangent, all: everyTerm(Tangent, changeTangent), everywhere: true},
	{code: EqualTensions, each: changeTension},
	{code: Factor, each: changeFactor},
}

func changeSign(_ *problem, _ place, t term) []term {
	if t.scale == 0 {
		return nil
	}
	t.scale = -t.scale
	return []term{t}
}

func changeFunction(_ *problem, _ place, t term) []term {
	other := map[function]function{sine: cosine, cosine: sine}[t.function]
	if other == whole || t.scale == 0 {
		return nil
	}
	t.function = other
	return []term{t}
}

func changeWhole(_ *problem, _ place, t term) []term {
	if t.function == whole || t.scale == 0 {
		return nil
	}
	t.function = whole
	return []term{t}
}

func changeTangent(_ *problem, _ place, t term) []term {
	if t.function != sine && t.function != cosine {
		return nil
	}
	t.function = tangent
	return []term{t}
}

// changeMass puts the mass in place of the weight: m·g without g.
func changeMass(p *problem, _ place, t term) []term {
	size := p.sizeTree(t)
	if size == nil || !size.Has("g") || t.scale == 0 {
		return nil
	}
	t.size = p.program(t.force.Name+": mass", substitute(size, "g", expr.Constant(1)))
	return []term{t}
}

// changeNormal puts the whole weight in place of the normal force, by itself or
// inside the friction.
func changeNormal(p *problem, at place, t term) []term {
	body := &p.Bodies[at.body]
	weight := onlyOf(body, statics.Weight)
	if weight == nil || t.scale == 0 {
		return nil
	}
	if t.force.Kind == statics.Normal {
		t.size = p.program(t.force.Name+": weight", expr.Letter(weight.Name))
		return []term{t}
	}
	size := p.sizeTree(t)
	for i := range body.Forces {
		if f := &body.Forces[i]; f.Kind == statics.Normal && size != nil && size.Has(f.Name) {
			t.size = p.program(t.force.Name+": weight for "+f.Name, substitute(size, f.Name, expr.Letter(weight.Name)))
			return []term{t}
		}
	}
	return nil
}

// changeNormalAlone sets the normal force equal to the weight, whatever else acts.
func changeNormalAlone(p *problem, at place, _ row) []variant {
	body := &p.Bodies[at.body]
	normal, weight := onlyOf(body, statics.Normal), onlyOf(body, statics.Weight)
	if normal == nil || weight == nil {
		return nil
	}
	up, _ := p.Slot(normal.Name)
	down, _ := p.Slot(weight.Name)
	alone := row{{force: normal, scale: 1, slot: up}, {force: weight, scale: -1, slot: down}}
	return []variant{{code: NormalEqualsWeight, about: []string{normal.Name}, row: alone}}
}

func changeMissing(_ *problem, _ place, t term) []term {
	if t.scale == 0 {
		return nil
	}
	// Kept in its place, so that every row has one term for each force.
	t.scale = 0
	return []term{t}
}

func changeAngle(p *problem, _ place, t term) []term {
	if t.function == whole || t.scale == 0 {
		return nil
	}
	var all []term
	for _, v := range p.Variables {
		if v.Angle && v.Name != t.letter {
			other := t
			other.angle = p.program("angle "+v.Name, expr.Letter(v.Name))
			other.letter = v.Name
			all = append(all, other)
		}
	}
	return all
}

// changeTension puts another string's tension in place of this one's.
func changeTension(p *problem, at place, t term) []term {
	if t.force.Kind != statics.Tension || t.scale == 0 {
		return nil
	}
	var all []term
	for i := range p.Bodies[at.body].Forces {
		f := &p.Bodies[at.body].Forces[i]
		if f.Kind == statics.Tension && f.Name != t.force.Name {
			other := t
			other.slot, _ = p.Slot(f.Name)
			other.size = nil
			all = append(all, other)
		}
	}
	return all
}

func changeFactor(_ *problem, _ place, t term) []term {
	if t.scale == 0 {
		return nil
	}
	double, half := t, t
	double.scale, half.scale = 2*t.scale, t.scale/2
	return []term{double, half}
}

// everyTerm makes one mistake in all terms in which it can be made, where there are
// several.
func everyTerm(code Code, each func(*problem, place, term) []term) func(*problem, place, row) []variant {
	return func(p *problem, at place, w row) []variant {
		v := variant{code: code, row: append(row(nil), w...)}
		for i := range w {
			if ways := each(p, at, w[i]); len(ways) > 0 {
				v.row[i] = ways[0]
				v.about = append(v.about, w[i].force.Name)
			}
		}
		if len(v.about) < 2 {
			return nil
		}
		return []variant{v}
	}
}

// changed applies every change of the table to one equation.
func (p *problem) changed(at place, w row) []variant {
	var all []variant
	for _, c := range changes {
		for i := range w {
			for _, t := range c.each(p, at, w[i]) {
				v := variant{code: c.code, about: []string{t.force.Name}, row: append(row(nil), w...)}
				v.row[i] = t
				all = append(all, v)
			}
		}
		if c.all != nil {
			all = append(all, c.all(p, at, w)...)
		}
	}
	return all
}
