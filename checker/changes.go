package checker

import (
	"slices"

	"example.org/standstill/checker/expr"
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
