package checker_test

import (
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker/statics"
)

// line is an equation on paper, or a chain of them.
type line struct {
	sides []*tree
	label string
}

// arrange makes an equation of terms whose sum is zero.
func (w *writer) arrange(terms []term) line {
	if w.nothing(terms) {
		w.numbers, w.decimals, w.parts = 0, 0, ""
	}
	var pieces []piece
	for _, t := range terms {
		pieces = append(pieces, w.write(t))
	}
	w.Shuffle(len(pieces), func(i, j int) { pieces[i], pieces[j] = pieces[j], pieces[i] })
	if w.cancels(terms) || w.nothing(terms) {
		return w.split(pieces)
	}
	switch w.IntN(10) {
	case 0:
		if factor := w.factor(pieces); !turnsAll(terms, factor) {
			return w.split(w.scaled(pieces, factor))
		}
	case 1, 2:
		if l, ok := w.isolated(pieces); ok {
			return l
		}
	case 3:
		if l, ok := w.ratio(pieces); ok {
			return l
		}
	case 4:
		if l, ok := w.factored(pieces); ok {
			return l
		}
	}
	return w.split(pieces)
}

// cancels reports whether the letter of equal sizes makes the terms cancel.
func (w *writer) cancels(terms []term) bool {
	return w.equal && len(terms) == 2 && terms[0].size.op == 'v' && terms[1].size.op == 'v' &&
		w.equalLetter(terms[0].size.name) != "" && w.equalLetter(terms[0].size.name) == w.equalLetter(terms[1].size.name)
}

// nothing reports whether the terms cancel whatever the unknowns are, because
// the forces have the same size.
func (w *writer) nothing(terms []term) bool {
	for range 3 {
		if share(terms, w.open()) > 1e-9 {
			return false
		}
	}
	return true
}

// split puts some terms on each side.
func (w *writer) split(pieces []piece) line {
	var left, right []*tree
	var l line
	every := chance(w.Rand, 0.35)
	for _, p := range pieces {
		if every || chance(w.Rand, 0.5) {
			left = append(left, p.tree())
		} else {
			p.neg = !p.neg
			right = append(right, p.tree())
		}
	}
	l.sides = []*tree{plus(left...), plus(right...)}
	if w.swapSigns(left, right) {
		l.sides = []*tree{plus(flip(left)...), plus(flip(right)...)}
	}
	if every && chance(w.Rand, 0.3) {
		l.label = pick(w.Rand, "ΣF%s = ", "sum F%s = ", "sumF%s = ", "Fnet,%s = ", "F%s: ", "ΣF%s = ")
	}
	if chance(w.Rand, 0.2) && l.label == "" {
		slices.Reverse(l.sides)
	}
	return l
}

// swapSigns reports whether most terms carry a minus, so that a student changes
// every sign.
func (w *writer) swapSigns(left, right []*tree) bool {
	minus := 0
	for _, t := range slices.Concat(left, right) {
		if t.op == '-' {
			minus++
		}
	}
	return 2*minus > len(left)+len(right) && chance(w.Rand, 0.9)
}

func flip(sum []*tree) []*tree {
	var flipped []*tree
	for _, t := range sum {
		flipped = append(flipped, negative(t))
	}
	return flipped
}

// turnsAll reports whether all terms have the same function of the same angle, and the factor
// may make another one of it. T1 sin θ = T2 sin θ divided by cos θ is what a student writes who
// takes the tangent for the sine in both terms: it holds, and yet it counts as wrong.
func turnsAll(terms []term, factor *tree) bool {
	shared := terms[0]
	for _, t := range terms {
		if t.fn == "" || t.fn != shared.fn || t.angle.String() != shared.angle.String() {
			return false
		}
	}
	return factor.hasFunction() && factor.String() != apply(shared.fn, shared.angle).String()
}

// scaled multiplies or divides every term by a factor that is not zero.
func (w *writer) scaled(pieces []piece, factor *tree) []piece {
	var top, under []*tree
	// A sum multiplied by an unknown would hold where that is zero, too.
	divide := chance(w.Rand, 0.6) || w.depends(factor)
	if divide {
		under = []*tree{factor}
	} else {
		top = []*tree{factor}
	}
	var all []piece
	for _, p := range pieces {
		if i := slices.IndexFunc(p.top, factor.same); divide && i >= 0 {
			p.top = slices.Delete(slices.Clone(p.top), i, i+1)
			all = append(all, p)
			continue
		}
		all = append(all, p.times(top, under))
	}
	return all
}

// depends reports whether a tree depends on an unknown.
func (w *writer) depends(t *tree) bool {
	return slices.ContainsFunc(t.letters(), func(name string) bool {
		size := w.sizes[name]
		return slices.Contains(w.unknowns, name) || size != nil && w.depends(size) || w.equalsUnknown(name)
	})
}

func (w *writer) equalsUnknown(name string) bool {
	return slices.ContainsFunc(w.sys.Equal, func(e statics.Equal) bool {
		return e.Letter == name && w.depends(letter(e.Names[0]))
	})
}

func (w *writer) factor(pieces []piece) *tree {
	if p := pieces[w.IntN(len(pieces))]; chance(w.Rand, 0.6) && len(p.top) > 0 {
		if f := p.top[w.IntN(len(p.top))]; f.op != 'n' && math.Abs(math.Log(math.Abs(f.value(w.at)))) < 20 {
			return f
		}
	}
	return pick(w.Rand, whole(2), whole(3), whole(4), typed("0.5", 0.5))
}

// isolated solves for a factor that stands in one term only.
func (w *writer) isolated(pieces []piece) (line, bool) {
	i := w.IntN(len(pieces))
	p := pieces[i]
	if len(p.top) == 0 || len(pieces) < 2 {
		return line{}, false
	}
	k := w.IntN(len(p.top))
	x := p.top[k]
	if x.op != 'v' || w.isKnown(x) && chance(w.Rand, 0.8) || x.means != nil {
		return line{}, false
	}
	rest := slices.Delete(slices.Clone(p.top), k, k+1)
	if math.Abs(times(rest...).value(w.at)) < 1e-9 {
		return line{}, false
	}
	var sum []*tree
	for j, q := range pieces {
		if j == i {
			continue
		}
		if slices.Contains(q.unsigned().letters(), x.name) {
			return line{}, false
		}
		q.neg = q.neg == p.neg
		if len(pieces) == 2 {
			return line{sides: []*tree{x, q.times(p.under, rest).tree()}}, true
		}
		sum = append(sum, q.times(p.under, nil).tree())
	}
	return line{sides: []*tree{x, quotient(plus(sum...), rest)}}, true
}

func quotient(a *tree, below []*tree) *tree {
	if len(below) == 0 {
		return a
	}
	return over(a, times(below...))
}

// ratio writes two terms as a proportion.
func (w *writer) ratio(pieces []piece) (line, bool) {
	if len(pieces) != 2 || pieces[0].neg == pieces[1].neg || len(pieces[0].top) < 2 && len(pieces[1].top) < 2 {
		return line{}, false
	}
	a, b := pieces[0], pieces[1]
	if len(a.top) == 0 || len(b.top) == 0 || len(a.under)+len(b.under) > 0 {
		return line{}, false
	}
	left := over(a.top[0], b.top[0])
	return line{sides: []*tree{left, over(times(b.top[1:]...), times(a.top[1:]...))}}, true
}

// factored takes a factor that several terms share before a bracket.
func (w *writer) factored(pieces []piece) (line, bool) {
	for _, f := range pieces[0].top {
		var in, out []*tree
		for _, p := range pieces {
			if i := slices.IndexFunc(p.top, f.same); i >= 0 && f.op == 'v' {
				p.top = slices.Delete(slices.Clone(p.top), i, i+1)
				in = append(in, p.tree())
			} else {
				p.neg = !p.neg
				out = append(out, p.tree())
			}
		}
		if len(in) > 1 {
			return line{sides: []*tree{times(f, plus(in...)), plus(out...)}}, true
		}
	}
	return line{}, false
}

// text prints the line.
func (w *writer) text(l line, axis string) string {
	return strings.Replace(l.label, "%s", axis, 1) + w.style.line(l.sides)
}

// miss returns how far the sides are from equal, as a share of the largest term.
func (l line) miss(at env) float64 {
	worst := 0.0
	for i := 1; i < len(l.sides); i++ {
		a, b := l.sides[i-1].value(at), l.sides[i].value(at)
		largest := 1e-12
		for _, side := range l.sides[i-1 : i+1] {
			for _, t := range addends(side) {
				largest = math.Max(largest, math.Abs(t.value(at)))
			}
		}
		if m := math.Abs(a-b) / largest; !(m <= worst) {
			worst = m
		}
	}
	return worst
}

// addends multiplies a side out and returns its terms, without signs.
func addends(t *tree) []*tree {
	var all []*tree
	switch t.op {
	case '+':
		for _, a := range t.args {
			all = append(all, addends(a)...)
		}
	case '-':
		return addends(t.args[0])
	case '/':
		for _, a := range addends(t.args[0]) {
			all = append(all, over(a, t.args[1]))
		}
	case '*':
		all = []*tree{whole(1)}
		for _, factor := range t.args {
			var longer []*tree
			for _, a := range all {
				for _, b := range addends(factor) {
					longer = append(longer, times(a, b))
				}
			}
			all = longer
		}
	default:
		all = []*tree{t}
	}
	return all
}
