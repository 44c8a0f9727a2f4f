package checker_test

import (
	"math"
	"slices"

	"example.org/standstill/checker"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// wrongNumber is what an unknown comes out as after a mistake.
type wrongNumber struct {
	name  string
	value float64
	codes []checker.Code
}

// wrongNumbers works every mistake through to the end.
func (b *bench) wrongNumbers() []wrongNumber {
	var all []wrongNumber
	try := func(sums []sum, givens env, c ...checker.Code) {
		at, ok := b.restOf(sums, givens)
		if !ok {
			return
		}
		for _, name := range b.sys.Find {
			all = append(all, wrongNumber{name, at[name], c})
		}
	}
	for i, s := range b.sums {
		for _, m := range b.mistakes(s) {
			changed := slices.Clone(b.sums)
			changed[i].terms = m.terms
			try(changed, b.givens(), m.codes...)
		}
	}
	for _, m := range b.throughout() {
		try(m.sums, b.givens(), m.codes...)
	}
	for _, g := range []float64{10, 9.81, 9.8} {
		givens := b.givens()
		if _, has := givens["g"]; has {
			givens["g"] = g
			try(b.sums, givens, checker.OtherG)
		}
	}
	try(b.sums, b.inRadians(), checker.Radians)
	return append(all, b.byFeel()...)
}

// inRadians takes every number of degrees for a number of radians.
func (b *bench) inRadians() env {
	givens := b.givens()
	for _, g := range b.sys.Givens {
		if g.Unit.Dim == quantity.Angle {
			givens[g.Name] = g.Number.Value
		}
	}
	return givens
}

// throughout is a mistake made in every sum.
type throughout struct {
	sums  []sum
	codes []checker.Code
}

// throughout lists the mistakes made with one force, or with every force, in
// every sum.
func (b *bench) throughout() []throughout {
	var all []throughout
	every := func(change func(*term), c ...checker.Code) {
		names := []string{""}
		for name := range b.forces {
			names = append(names, name)
		}
		slices.Sort(names)
		for _, name := range names {
			var sums []sum
			for _, s := range b.sums {
				s.terms = slices.Clone(s.terms)
				for i := range s.terms {
					if name == "" || s.terms[i].force.Name == name {
						change(&s.terms[i])
					}
				}
				sums = append(sums, s)
			}
			all = append(all, throughout{sums, c})
		}
	}
	every(func(t *term) { t.fn = cofunction[t.fn] }, checker.SineCosine)
	every(func(t *term) { t.fn = "" }, checker.NotResolved)
	every(func(t *term) {
		if mass := withoutG(b.sizes[t.force.Name]); mass != nil && t.force.Kind == statics.Weight {
			t.size = mass
		}
	}, checker.MassForWeight)
	for _, angle := range b.angles() {
		every(func(t *term) {
			if t.fn != "" {
				t.angle = angle
			}
		}, checker.OtherAngle)
	}
	return all
}

// byFeel lists the numbers that students reach without a sum.
func (b *bench) byFeel() []wrongNumber {
	var all []wrongNumber
	for _, name := range b.sys.Find {
		x := b.at[name]
		add := func(value float64, c ...checker.Code) { all = append(all, wrongNumber{name, value, c}) }
		for _, other := range b.sys.Find {
			if other != name && b.ref.Unit(other).Dim == b.ref.Unit(name).Dim {
				add(b.at[other], checker.OtherUnknown)
			}
		}
		for _, ten := range []float64{0.001, 0.01, 0.1, 10, 100, 1000} {
			add(x*ten, checker.PowerOfTen)
		}
		add(2*x, checker.WholeFactor, checker.MissingForce)
		add(x/2, checker.WholeFactor, checker.SharedWeight)
		for _, body := range b.sys.Bodies {
			if f, ok := body.Force(name); ok && f.Kind == statics.Tension {
				b.shares(&body, add)
			}
		}
	}
	return all
}

// shares deals the one weight of a body out to its strings. One string alone shares
// with nobody: there it is half of the weight, or all of it unresolved.
func (b *bench) shares(body *statics.Body, add func(float64, ...checker.Code)) {
	count := map[statics.Kind]int{}
	weight := 0.0
	for _, f := range body.Forces {
		count[f.Kind]++
		if f.Kind == statics.Weight {
			weight = b.at[f.Name]
		}
	}
	switch {
	case count[statics.Weight] != 1:
	case count[statics.Tension] > 1:
		add(weight, checker.SharedWeight, checker.NotResolved)
		add(weight/2, checker.SharedWeight, checker.NotResolved)
	default:
		add(weight, checker.NotResolved)
		add(weight/2, checker.WholeFactor)
	}
}

// explain returns the codes of every mistake that comes out as the typed number.
func explain(all []wrongNumber, name string, value, half float64) []checker.Code {
	var c []checker.Code
	for _, n := range all {
		if n.name == name && math.Abs(n.value-value) <= half {
			c = append(c, n.codes...)
		}
	}
	return c
}

// wrongAnswer writes an unknown with a number that is wrong, with the codes that
// explain it.
func (w *writer) wrongAnswer(all []wrongNumber) (text string, m mistake, ok bool) {
	n := all[w.IntN(len(all))]
	if chance(w.Rand, 0.1) {
		n.value *= 0.3 + 2*w.Float64()
		n.codes = nil
	}
	unit := w.ref.Unit(n.name)
	right := w.at[n.name]
	number := rounded(math.Abs(n.value)/unit.Factor, 3)
	value := number.num * unit.Factor
	last := number.text[len(number.text)-1]
	far := math.Abs(value-right) > 0.03*math.Abs(right)
	if !far || last == '0' || !(value > 1e-6) || n.value < 0 || w.turned(n.name, value) {
		return "", m, false
	}
	// "P = 0.362 N" can be read as 0.362 times the normal force, and be true so.
	if normal, has := w.at["N"]; has && unit.Symbol == "N" && math.Abs(number.num*normal-right) < 0.03*math.Abs(right) {
		return "", m, false
	}
	text = w.style.letter(n.name) + w.style.equals + w.style.number(number)
	if unit.Symbol != "none" {
		text += " " + unit.Symbol
	}
	half := math.Abs(value) * 0.5 * math.Pow(10, -float64(len(digitsOf(number.text))-1))
	c := explain(all, n.name, value, half*1.2)
	if math.Abs(value-right) < 0.05*math.Abs(right) {
		c = append(c, checker.Slip)
	}
	return text, mistake{codes: append(c, n.codes...), about: n.name}, true
}

// turned reports whether an angle says the same direction otherwise.
func (b *bench) turned(name string, value float64) bool {
	if b.ref.Unit(name).Dim != quantity.Angle {
		return false
	}
	for _, s := range []float64{1, -1} {
		for k := range 5 {
			same := float64(k)*math.Pi/2 + s*b.at[name]
			if k != 1 && math.Abs(value-same) < 0.03*math.Abs(value) || k == 1 && s > 0 && math.Abs(value-same) < 0.03*value {
				return true
			}
		}
	}
	return false
}

func digitsOf(text string) string {
	var d []byte
	for i := range text {
		if text[i] >= '0' && text[i] <= '9' && (len(d) > 0 || text[i] != '0') {
			d = append(d, text[i])
		}
	}
	return string(d)
}

// falseFact writes a line of working with one number off.
func (w *writer) falseFact() (line, bool) {
	a, b := w.unknownForce(), w.unknownForce()
	if a == "" || a == b {
		return line{}, false
	}
	x := w.at[a] / w.at[b] * pick(w.Rand, 0.6, 0.8, 1.25, 1.7)
	l := line{sides: []*tree{letter(a), times(rounded(x, 3), letter(b))}}
	return l, l.miss(w.at) > 0.1
}

func (w *writer) unknownForce() string {
	var names []string
	for _, name := range w.unknowns {
		if w.forces[name] && w.at[name] > 0 {
			names = append(names, name)
		}
	}
	if len(names) == 0 {
		return ""
	}
	return names[w.IntN(len(names))]
}
