package checker

import (
	"slices"

	"example.org/standstill/checker/trial"

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
	each func(r *Reference, at trial.Place, t trial.Term) []trial.Term
	all  func(r *Reference, at trial.Place, w trial.Sum) []variant
	// apart marks a change that is tried on a sum by itself only, not in numbers and
	// not with another one.
	apart bool
}

// variant is a row after one or two changes. about names the forces that were
// changed.
type variant struct {
	code  Code
	rank  int
	about []string
	row   trial.Sum
	apart bool
}

var changes = []change{
	{code: Sign, each: changeSign},
	{code: SineCosine, each: changeFunction(trial.Swapped), all: everyTerm(SineCosine, changeFunction(trial.Swapped))},
	{code: NotResolved, each: changeWhole, all: everyTerm(NotResolved, changeWhole)},
	{code: MassForWeight, each: changeMass},
	{code: NormalEqualsWeight, each: changeNormal, all: changeNormalAlone},
	{code: MissingForce, each: changeMissing},
	{code: ExtraForce, each: changeExtra},
	{code: WrongAxis, all: changeAxis},
	{code: OtherAngle, each: changeAngle},
	{code: Tangent, each: changeTangent, all: everyTerm(Tangent, changeTangent)},
	{code: Inverted, each: changeFunction(trial.Upturned), all: everyTerm(Inverted, changeFunction(trial.Upturned))},
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
func (r *Reference) sizeTree(t trial.Term) *expr.Node {
	if v, ok := r.Variable(t.Force.Name); ok && v.Role == statics.IsDerived && t.Size == nil {
		return v.Size
	}
	return nil
}

// withSize gives a term another size. What names the change of this force's size.
func (r *Reference) withSize(t trial.Term, what string, tree func() *expr.Node) trial.Term {
	t.Size = r.Ready(t.Force.Name+": "+what, tree)
	return t
}

// singles returns every row that one change of the sum gives, in the table's
// order. They are made when first asked for.
func (r *Reference) singles(at trial.Place) []variant {
	key := 2*at.Body + int(at.Axis)
	r.making.Lock()
	defer r.making.Unlock()
	if made, ok := r.terms[key]; ok {
		return made
	}
	all := r.changed(at, r.SumOf(at.Body, at.Axis), len(changes), true)
	r.terms[key] = all
	return all
}

// changed applies the first n changes of the table to a row.
func (r *Reference) changed(at trial.Place, w trial.Sum, n int, wholeRow bool) []variant {
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
func (r *Reference) eachTerm(at trial.Place, w, scratch trial.Sum, rank int, f func(variant)) {
	c := changes[rank]
	if c.each == nil {
		return
	}
	for i := range w {
		for _, t := range c.each(r, at, w[i]) {
			scratch[i] = t
			f(variant{code: c.code, rank: rank, about: []string{t.Force.Name}, row: scratch, apart: c.apart})
		}
		scratch[i] = w[i]
	}
}

// carries reports whether a line of this form can show such a mistake, made with
// that many forces, at all: where no angle stands, none was mistaken for another.
func carries(f trial.Form, code Code, forces int) bool {
	switch code {
	case OtherAngle, SineCosine, Tangent:
		return f.Functions || f.Decimals || f.Quotients
	case Inverted:
		// T2 = w cos φ is one division taken for a product; where two functions have
		// changed places, nothing was divided.
		return f.Quotients || f.Decimals && !f.Functions || (f.Functions || f.Decimals) && forces == 1
	case Radians, OtherG:
		return f.Decimals
	}
	return true
}
