package checker

import (
	"math"
	"slices"
	"strconv"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// A mistake is a change of the reference: what a student does to a right sum to
// get the wrong one. The table is in the order in which codes are preferred
// where two changes explain a line equally well.
//
// To add a mistake, add a row here and its sentences in words.go and hints.go.

// change is one kind of mistake. each gives the ways in which it can befall the
// i-th term of a row; all the ways in which it can befall the row at once.
type change struct {
	code Code
	each func(r *Reference, at place, t term) []term
	all  func(r *Reference, at place, w row) []variant
	// apart marks a change that is tried on a sum by itself only, not in numbers and
	// not with another one.
	apart bool
}

// place is one sum: a body and an axis.
type place struct {
	body int
	axis statics.Axis
}

// variant is a row after one or two changes. about names the forces that were
// changed.
type variant struct {
	code  Code
	rank  int
	about []string
	row   row
	apart bool
}

var changes = []change{
	{code: Sign, each: changeSign},
	{code: SineCosine, each: changeFunction(swapped), all: everyTerm(SineCosine, changeFunction(swapped))},
	{code: NotResolved, each: changeWhole, all: everyTerm(NotResolved, changeWhole)},
	{code: MassForWeight, each: changeMass},
	{code: NormalEqualsWeight, each: changeNormal, all: changeNormalAlone},
	{code: MissingForce, each: changeMissing},
	{code: ExtraForce, each: changeExtra},
	{code: WrongAxis, all: changeAxis},
	{code: OtherAngle, each: changeAngle},
	{code: Tangent, each: changeTangent, all: everyTerm(Tangent, changeTangent)},
	{code: Inverted, each: changeFunction(upturned), all: everyTerm(Inverted, changeFunction(upturned))},
	{code: EqualTensions, each: changeTension},
	{code: SharedWeight, all: changeShare},
	{code: OtherBody, each: changeBody},
	{code: TwiceCounted, all: changeTwice},
	{code: WholeFactor, each: changeFactor},
	{code: OtherG, each: changeG},
	{code: Radians, each: changeRadians, all: everyTerm(Radians, changeRadians)},
	{code: OtherBody, all: changeForeign, apart: true},
	{code: ExtraForce, all: changeBothParts, apart: true},
	{code: PowerOfTen, each: changePrefix, apart: true},
	{code: MassForWeight, each: changeMassAsWritten, apart: true},
}

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

// changeNormalAlone sets the normal force equal to the weight, whatever else there is.
func changeNormalAlone(r *Reference, at place, _ row) []variant {
	body := &r.Bodies[at.body]
	normal, weight := onlyOf(body, statics.Normal), onlyOf(body, statics.Weight)
	if normal == nil || weight == nil {
		return nil
	}
	alone := row{{force: normal, scale: 1, slot: r.slots[normal.Name]}, {force: weight, scale: -1, slot: r.slots[weight.Name]}}
	return []variant{{code: NormalEqualsWeight, about: []string{normal.Name}, row: alone}}
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

// changeBothParts puts both parts of a force into one sum.
func changeBothParts(_ *Reference, _ place, w row) []variant {
	var all []variant
	for _, t := range w {
		other, slanted := swapped[t.function]
		if !slanted {
			continue
		}
		for _, sign := range bothSigns {
			part := t
			part.function, part.scale = other, sign
			all = append(all, variant{code: ExtraForce, about: []string{t.force.Name}, row: append(slices.Clone(w), part)})
		}
	}
	return all
}

// everyTerm makes one mistake with all terms that it can befall, where there are
// several.
func everyTerm(code Code, each func(*Reference, place, term) []term) func(*Reference, place, row) []variant {
	return func(r *Reference, at place, w row) []variant {
		v := variant{code: code, row: append(row(nil), w...)}
		for i := range w {
			if ways := each(r, at, w[i]); len(ways) > 0 {
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

// changeAxis writes the sum along the other axis.
func changeAxis(r *Reference, at place, w row) []variant {
	return []variant{{code: WrongAxis, row: r.row(at.body, at.axis.Other())}}
}

// changeShare lets one string carry half the weight, or all of it.
func changeShare(r *Reference, at place, w row) []variant {
	if onlyOf(&r.Bodies[at.body], statics.Tension) != nil {
		return nil // one string shares with nobody
	}
	var all []variant
	for i := range w {
		for j := range w {
			if w[i].force.Kind != statics.Tension || w[j].force.Kind != statics.Weight || w[i].scale == 0 || w[j].scale == 0 {
				continue
			}
			half, straight := w[j], w[i]
			half.scale /= 2
			straight.function = whole
			for _, shared := range []row{{w[i], half}, {straight, half}, {straight, w[j]}} {
				all = append(all, variant{code: SharedWeight, about: []string{w[i].force.Name}, row: shared})
			}
		}
	}
	return all
}

// changeTwice puts a force beside its own component.
func changeTwice(_ *Reference, _ place, w row) []variant {
	var all []variant
	for i := range w {
		if w[i].function == whole || w[i].scale == 0 {
			continue
		}
		for _, sign := range bothSigns {
			again := w[i]
			again.function = whole
			again.scale *= sign
			all = append(all, variant{code: TwiceCounted, about: []string{w[i].force.Name}, row: append(append(row(nil), w...), again)})
		}
	}
	return all
}

// changeForeign puts a force into the sum that acts on another body only.
func changeForeign(r *Reference, at place, w row) []variant {
	var all []variant
	seen := map[string]bool{}
	for i := range w {
		seen[w[i].force.Name] = true
	}
	for b := range r.Bodies {
		for i := range r.Bodies[b].Forces {
			f := &r.Bodies[b].Forces[i]
			if seen[f.Name] {
				continue
			}
			seen[f.Name] = true
			for _, sign := range bothSigns {
				extra := term{force: f, scale: sign, slot: r.slots[f.Name]}
				all = append(all, variant{code: OtherBody, about: []string{f.Name}, row: append(append(row(nil), w...), extra)})
			}
		}
	}
	return all
}

// sizeTree returns the tree of a term's size, nil for an unknown size.
func (r *Reference) sizeTree(t term) *expr.Node {
	if v, ok := r.Variable(t.force.Name); ok && v.Role == statics.IsDerived && t.size == nil {
		return v.Size
	}
	return nil
}

// withSize gives a term another size. What names the change of this force's size.
func (r *Reference) withSize(t term, what string, tree func() *expr.Node) term {
	t.size = r.ready(t.force.Name+": "+what, tree)
	return t
}

// ready compiles a tree once and keeps the program under its key.
func (r *Reference) ready(key string, tree func() *expr.Node) *expr.Program {
	if p, ok := r.programs.Load(key); ok {
		return p.(*expr.Program)
	}
	p := r.Program(tree())
	kept, _ := r.programs.LoadOrStore(key, &p)
	return kept.(*expr.Program)
}

// substitute returns the tree with a letter replaced.
func substitute(n *expr.Node, name string, by *expr.Node) *expr.Node {
	return replaced(n, func(n *expr.Node) bool { return n.Op == expr.Name && n.Name == name }, by)
}

// replaced returns the tree with by in the place of every node that is meant.
func replaced(n *expr.Node, meant func(*expr.Node) bool, by *expr.Node) *expr.Node {
	if meant(n) {
		return by
	}
	if len(n.Args) == 0 {
		return n
	}
	c := *n
	c.Args = make([]*expr.Node, len(n.Args))
	for i, a := range n.Args {
		c.Args[i] = replaced(a, meant, by)
	}
	return &c
}

// singles returns every row that one change of the sum gives, in the table's
// order. They are made when first asked for.
func (r *Reference) singles(at place) []variant {
	key := 2*at.body + int(at.axis)
	r.mu.Lock()
	defer r.mu.Unlock()
	if made, ok := r.terms[key]; ok {
		return made
	}
	all := r.changed(at, r.row(at.body, at.axis), len(changes), true)
	r.terms[key] = all
	return all
}

// changed applies the first n changes of the table to a row.
func (r *Reference) changed(at place, w row, n int, wholeRow bool) []variant {
	var all []variant
	scratch := slices.Clone(w)
	for rank, c := range changes[:n] {
		r.eachTerm(at, w, scratch, rank, func(v variant) {
			v.row = slices.Clone(v.row)
			all = append(all, v)
		})
		if c.all != nil && wholeRow {
			for _, v := range c.all(r, at, w) {
				v.rank, v.apart = rank, c.apart
				all = append(all, v)
			}
		}
	}
	return all
}

// eachTerm calls f with every way in which one change of the table can befall one
// term. The row that f gets is scratch, a copy of w, each time; who keeps it copies
// it.
func (r *Reference) eachTerm(at place, w, scratch row, rank int, f func(variant)) {
	c := changes[rank]
	if c.each == nil {
		return
	}
	for i := range w {
		for _, t := range c.each(r, at, w[i]) {
			scratch[i] = t
			f(variant{code: c.code, rank: rank, about: []string{t.force.Name}, row: scratch, apart: c.apart})
		}
		scratch[i] = w[i]
	}
}
