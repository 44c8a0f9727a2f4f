package checker_test

import (
	"math"
	"slices"

	"example.org/standstill/checker"
	"example.org/standstill/checker/statics"
)

// mistake is a sum as a student gets it wrong, with the codes that an experienced
// instructor would give. about is the force concerned, if it is one.
type mistake struct {
	codes []checker.Code
	about string
	terms []term
}

func codes(c ...checker.Code) []checker.Code { return c }

// mistakes lists the single mistakes in a sum.
func (b *bench) mistakes(s sum) []mistake {
	var all []mistake
	for i := range s.terms {
		all = append(all, b.mistakesIn(s, i)...)
	}
	all = append(all, b.wholesale(s)...)
	all = append(all, b.strangers(s)...)
	return all
}

// with returns the terms with the i-th changed.
func (s sum) with(i int, change func(*term)) []term {
	terms := slices.Clone(s.terms)
	terms[i].letter = ""
	change(&terms[i])
	return terms
}

func (s sum) also(t term) []term { return append(slices.Clone(s.terms), t) }

// mistakesIn lists what can be wrong about one term.
func (b *bench) mistakesIn(s sum, i int) []mistake {
	t := s.terms[i]
	var all []mistake
	add := func(change func(*term), c ...checker.Code) {
		all = append(all, mistake{c, t.force.Name, s.with(i, change)})
	}
	add(func(t *term) { t.neg = !t.neg }, checker.Sign)
	add(func(t *term) { t.beside = append(t.beside, whole(2)) }, checker.WholeFactor, checker.ExtraForce)
	add(func(t *term) { t.below = append(t.below, whole(2)) }, checker.WholeFactor, checker.MissingForce)
	if len(s.terms) > 1 {
		left := slices.Delete(slices.Clone(s.terms), i, i+1)
		all = append(all, mistake{codes(checker.MissingForce), t.force.Name, left})
	}
	if t.fn != "" {
		all = append(all, b.mistakesOfFunction(s, i)...)
	}
	all = append(all, b.mistakesOfSize(s, i)...)
	return all
}

var cofunction = map[string]string{"sin": "cos", "cos": "sin", "tan": "tan"}

// mistakesOfFunction lists what can be wrong about a sine or cosine.
func (b *bench) mistakesOfFunction(s sum, i int) []mistake {
	t := s.terms[i]
	var all []mistake
	add := func(change func(*term), c ...checker.Code) {
		all = append(all, mistake{c, t.force.Name, s.with(i, change)})
	}
	add(func(t *term) { t.fn = cofunction[t.fn] }, checker.SineCosine)
	add(func(t *term) { t.fn = "tan" }, checker.Tangent)
	add(func(t *term) { t.fn = "" }, checker.NotResolved)
	add(func(t *term) { t.below, t.fn = append(t.below, apply(t.fn, t.angle)), "" }, checker.Inverted)
	for _, angle := range b.angles() {
		if !slices.Equal(angle.letters(), t.angle.letters()) {
			add(func(t *term) { t.angle = angle }, checker.OtherAngle)
		}
	}
	beside := t
	beside.fn, beside.letter = "", ""
	all = append(all, mistake{codes(checker.TwiceCounted, checker.ExtraForce), t.force.Name, s.also(beside)})
	return all
}

// angles lists every angle that the problem measures.
func (b *bench) angles() []*tree {
	var all []*tree
	seen := map[string]bool{}
	for _, s := range b.sums {
		for _, t := range s.terms {
			if t.angle != nil && !seen[t.angle.String()] {
				seen[t.angle.String()] = true
				all = append(all, t.angle)
			}
		}
	}
	return all
}

// mistakesOfSize lists what can be wrong about a force's size.
func (b *bench) mistakesOfSize(s sum, i int) []mistake {
	t := s.terms[i]
	var all []mistake
	add := func(size *tree, c ...checker.Code) {
		all = append(all, mistake{c, t.force.Name, s.with(i, func(t *term) { t.size = size })})
	}
	size := b.sizes[t.force.Name]
	if mass := withoutG(size); mass != nil && t.force.Kind == statics.Weight {
		add(mass, checker.MassForWeight)
		for _, other := range b.masses() {
			if !slices.Contains(size.letters(), other) {
				add(times(letter(other), letter("g")), checker.OtherBody)
			}
		}
	}
	body, _ := b.sys.Body(s.body)
	if weight := weightOf(body); weight != nil && size != nil && t.force.Kind == statics.Friction {
		for _, name := range size.letters() {
			if f, ok := body.Force(name); ok && f.Kind == statics.Normal {
				add(size.replace(name, letter(weight.Name)), checker.NormalEqualsWeight)
			}
		}
	}
	for _, f := range body.Forces {
		if f.Kind == statics.Tension && t.force.Kind == statics.Tension && f.Name != t.force.Name {
			add(letter(f.Name), checker.EqualTensions)
		}
	}
	return all
}

// withoutG returns m for m·g, nil for anything else.
func withoutG(size *tree) *tree {
	if size == nil || size.op != '*' {
		return nil
	}
	var rest []*tree
	for _, f := range size.args {
		if f.op != 'v' || f.name != "g" {
			rest = append(rest, f)
		}
	}
	if len(rest) == len(size.args) {
		return nil
	}
	return times(rest...)
}

// masses lists the letters that stand before g in a weight.
func (b *bench) masses() []string {
	var all []string
	for _, size := range b.sizes {
		if m := withoutG(size); m != nil && m.op == 'v' {
			all = append(all, m.name)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

func weightOf(body *statics.Body) *statics.Force {
	for i := range body.Forces {
		if body.Forces[i].Kind == statics.Weight {
			return &body.Forces[i]
		}
	}
	return nil
}

// wholesale lists mistakes made all through a sum.
func (b *bench) wholesale(s sum) []mistake {
	var all []mistake
	every := func(change func(*term), c ...checker.Code) {
		terms := slices.Clone(s.terms)
		changed := 0
		for i := range terms {
			if terms[i].fn != "" {
				changed++
				terms[i].letter = ""
				change(&terms[i])
			}
		}
		if changed > 1 {
			all = append(all, mistake{codes: c, terms: terms})
		}
	}
	every(func(t *term) { t.fn = cofunction[t.fn] }, checker.SineCosine, checker.WrongAxis)
	every(func(t *term) { t.fn = "" }, checker.NotResolved)
	every(func(t *term) { t.fn = "tan" }, checker.Tangent)
	if other := b.otherAxis(s); len(other.terms) > 0 {
		all = append(all, mistake{codes: codes(checker.WrongAxis), terms: other.terms})
	}
	return append(all, b.normalIsWeight(s)...)
}

func (b *bench) otherAxis(s sum) sum {
	for _, other := range b.sums {
		if other.body == s.body && other.axis != s.axis {
			return other
		}
	}
	return sum{}
}

// normalIsWeight sets N = w whatever else acts.
func (b *bench) normalIsWeight(s sum) []mistake {
	var normal *term
	for i := range s.terms {
		if s.terms[i].force.Kind == statics.Normal && s.terms[i].fn == "" && normal == nil {
			normal = &s.terms[i]
		}
	}
	body, _ := b.sys.Body(s.body)
	weight := weightOf(body)
	if normal == nil || weight == nil {
		return nil
	}
	t, ok := termOn(*weight, s.axis)
	if !ok || t.neg == normal.neg {
		return nil
	}
	t.fn = ""
	return []mistake{{codes: codes(checker.NormalEqualsWeight, checker.MissingForce, checker.NotResolved), terms: []term{*normal, t}}}
}

// strangers lists sums with a force that has no business there.
func (b *bench) strangers(s sum) []mistake {
	var all []mistake
	body, _ := b.sys.Body(s.body)
	for _, f := range body.Forces {
		if _, here := termOn(f, s.axis); here {
			continue
		}
		for _, neg := range []bool{false, true} {
			all = append(all, mistake{codes(checker.ExtraForce), f.Name, s.also(term{force: f, neg: neg, size: letter(f.Name)})})
		}
	}
	for _, other := range b.sys.Bodies {
		for _, f := range other.Forces {
			if _, here := body.Force(f.Name); !here {
				all = append(all, mistake{codes(checker.ExtraForce, checker.OtherBody), f.Name, s.also(term{force: f, neg: true, size: letter(f.Name)})})
			}
		}
	}
	return all
}

// alike reports whether two sums are zero at the same values, as far as the
// numbers of the problem show.
func (b *bench) alike(x, y []term, worlds []env) bool {
	ratio := 0.0
	for i, at := range worlds {
		p, q := total(x, at), total(y, at)
		if i == 0 {
			ratio = p / q
		}
		if math.IsNaN(ratio) || math.IsInf(ratio, 0) || math.Abs(p-ratio*q) > 2e-3*(math.Abs(p)+math.Abs(ratio*q)) {
			return false
		}
	}
	return true
}

func total(terms []term, at env) float64 {
	x := 0.0
	for _, t := range terms {
		x += t.signed().value(at)
	}
	return x
}

// share returns how far the terms are from zero, as a share of the largest.
func share(terms []term, at env) float64 {
	largest := 1e-12
	for _, t := range terms {
		largest = math.Max(largest, math.Abs(t.product().value(at)))
	}
	return math.Abs(total(terms, at)) / largest
}
