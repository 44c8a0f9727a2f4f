package derivation

import (
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// How far off what is written with rounded numbers may be: a result, as a share of it; and a sum
// that should be zero, as a share of its largest term. Three figures are half a hundredth.
const (
	shown    = 0.004
	leftOver = 0.006
)

// mostlySideways is the cosine below which the size is found with the sine: a quotient of two
// small numbers shows their rounding.
const mostlySideways = 0.3

// numerically says that sums are beyond solving by hand and gives what comes out.
func (t *working) numerically(group []balance) {
	for _, b := range group {
		tree := t.page.Insert(t.page.Tidy(t.solved.Bodies[b.at.Body].Sum(b.at.Axis)), t.found, t.figures)
		t.say(b.name+sayNumbers, t.page.Write(tree)+" = 0")
	}
	var values []string
	names := t.wanted(group...)
	for _, name := range names {
		if t.isFormula(name) {
			// A letter without a number cannot come out of numbers; the entry marks it as dealt with.
			t.formulas[name] = nil
			continue
		}
		t.found[name] = true
		values = append(values, expr.Set(name)+" = "+t.page.Write(t.page.numberOf(name, t.figures)))
	}
	t.say(sayNumerical, values...)
	t.secondRoot(group, names)
	t.mark(group, true)
}

// checks puts the solution back into the sums that were not needed, and into those
// that were not solved by substitution alone.
func (t *working) checks(all []balance) {
	for _, b := range all {
		if !t.used[b.at] || t.bent[b.at] {
			t.check(b)
		}
	}
}

// checkOne puts the solution back into the last sum whose letters all have a number.
func (t *working) checkOne(all []balance) {
	for _, b := range slices.Backward(all) {
		if t.check(b) {
			return
		}
	}
}

func (t *working) check(b balance) bool {
	tree := t.page.Tidy(t.solved.Bodies[b.at.Body].Sum(b.at.Axis))
	if !t.page.numbered(tree, t.found) {
		return false
	}
	inserted := t.page.Insert(tree, t.found, t.figures)
	// A check that visibly misses zero looks like a mistake,
	// so the solution is written again with more figures.
	t.tooFew = t.tooFew || !nearlyZero(inserted)
	t.say(sayCheck+b.name, t.page.Write(inserted)+" ≈ 0")
	return true
}

// nearlyZero compares a sum of numbers with the largest of its terms.
func nearlyZero(sum *expr.Node) bool {
	largest := 0.0
	for _, term := range expr.Addends(sum, 1, nil) {
		largest = math.Max(largest, math.Abs(expr.ValueOf(term.Node)))
	}
	return math.Abs(expr.ValueOf(sum)) <= leftOver*largest
}

// checkSize says why the answer can be true, or where nothing is said of that, puts it into a sum.
func (t *working) checkSize(sums []balance) {
	if text := sensible(t); text != "" {
		t.lines = append(t.lines, text)
	} else if !slices.ContainsFunc(t.lines, func(line string) bool { return strings.HasPrefix(line, sayCheck) }) {
		t.checkOne(sums)
	}
}

// answers gives what was asked for: a value, or a formula in the letters that have
// no number.
func (t *working) answers(sums []balance) {
	var all []string
	for _, name := range t.solved.Find {
		letter := expr.Letter(name)
		v, _ := t.solved.Model.Variable(name)
		switch {
		case t.page.numbered(letter, t.found):
			if v.Role == statics.IsDerived && !t.solved.Fixed(v.Size) {
				t.say(sayThen, t.chain(letter, v.Size))
			}
			all = append(all, expr.Set(name)+" = "+t.page.Write(t.page.numberOf(name, leastFigures)))
		case len(t.formulas[name]) > 0:
			formula := t.formulas[name].factored()
			all = append(all, t.chain(letter, formula, expand(t.spelledOut(formula)).factored()))
		}
	}
	t.checkSize(sums)
	t.say(sayAnswer, all...)
}

// spelledOut writes m·g for w.
func (t *working) spelledOut(tree *expr.Node) *expr.Node {
	for _, name := range tree.Names() {
		if v, ok := t.solved.Model.Variable(name); ok && v.Role == statics.IsDerived {
			return t.spelledOut(expr.Substitute(tree, name, v.Size))
		}
	}
	return tree
}

// chain writes "name = formula = formula with numbers = value", the last two
// where every letter has a number, and every link once.
func (t *working) chain(left *expr.Node, formulas ...*expr.Node) string {
	links := []string{t.page.Write(left)}
	add := func(n *expr.Node) {
		if text := t.page.Write(n); text != links[len(links)-1] {
			links = append(links, text)
		}
	}
	for _, f := range formulas {
		add(f)
	}
	if last := formulas[len(formulas)-1]; t.page.numbered(last, t.found) {
		// If the left side is no single letter, it is a force times a function, as in T cos θ.
		value := t.solved.ProgramOf(last).Run(t.solved.Values) * t.solved.Own.Scale(quantity.Force)
		if left.Op == expr.Name {
			value, _ = t.solved.InSI(left.Name)
		}
		inserted := t.rounded(last, value)
		if last.Op == expr.Name {
			inserted = t.page.numberOf(last.Name, t.figures)
		}
		add(inserted)
		if !expr.IsQuantity(inserted) {
			add(t.valueNode(left, value, t.figures))
		}
	}
	return strings.Join(links, " = ")
}

// valueNode is a rounded value in the unit of what it is the value of; nil has
// none.
func (t *working) valueNode(left *expr.Node, value float64, figures int) *expr.Node {
	unit, _ := quantity.Find("none")
	switch {
	case left == nil:
	case left.Op == expr.Name:
		unit = t.solved.Unit(left.Name)
	default:
		unit = t.solved.UsualUnit(quantity.Force)
		for _, name := range left.Names() {
			if v, _ := t.solved.Model.Variable(name); v.Dim == quantity.Force {
				unit = t.solved.Unit(name)
			}
		}
	}
	return number(value, unit, figures)
}

// rounded puts numbers into a formula, and notes where they have too few figures for the
// result to come out right.
func (t *working) rounded(n *expr.Node, value float64) *expr.Node {
	inserted := t.page.Insert(n, t.found, t.figures)
	v, err := inserted.Value(nil)
	if err != nil || math.Abs(v-value) > shown*math.Abs(value) {
		t.tooFew = true
	}
	return inserted
}
