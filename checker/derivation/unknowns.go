package derivation

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
)

// balance is one sum as a polynomial that is zero.
type balance struct {
	name string
	at   solved.Place
	polynomial
}

// working works a system out on paper, one group of unknowns after the other.
type working struct {
	page      Page
	solved    *solved.System
	isFormula func(name string) bool
	found     map[string]bool       // unknowns that have a number by now
	formulas  map[string]polynomial // unknowns that are found in letters alone, nil where no formula is known
	used      map[solved.Place]bool // sums that something was solved from
	bent      map[solved.Place]bool // of these, where more than substitution was needed
	lines     []string
	figures   int  // of every value but the answers
	tooFew    bool // whether a line came out wrong with so few
}

func newWorking(s *solved.System, isFormula func(string) bool) *working {
	return &working{page: On(s), solved: s, isFormula: isFormula, found: map[string]bool{}, formulas: map[string]polynomial{}, used: map[solved.Place]bool{}, bent: map[solved.Place]bool{}, figures: 3}
}

func workedUnknowns(s *solved.System, isFormula func(string) bool) []string {
	for figures := leastFigures; ; figures++ {
		// All lines are written anew: the figures also stand
		// in the lines above the one that needs more of them.
		t := newWorking(s, isFormula)
		t.figures = figures
		t.work()
		if !t.tooFew || figures == mostFigures {
			return t.lines
		}
	}
}

// Every value is written with the same number of figures from the first line to the last, as
// many as it takes for every line to come out right; answers have the fewest.
const (
	leastFigures = 3
	mostFigures  = 6
)

func (t *working) work() {
	t.sizes()
	all := t.balances()
	left := t.unsettled(all)
	for first := true; len(left) > 0; first = false {
		at := len(t.lines)
		group := t.nextGroup(left)
		if group == nil {
			// This settles all that is left, so the loop ends.
			t.numerically(left)
		} else if first {
			// Only solving shows which sums a student can begin with, but the reason stands above them.
			t.lines = slices.Insert(t.lines, at, t.reason(group))
		}
		left = t.unsettled(left)
	}
	t.checks(all)
	t.answers(all)
}

// reason says why to begin with these sums.
func (t *working) reason(group []balance) string {
	names := t.unknownsOf(group)
	if len(group) == 1 {
		return fmt.Sprintf(sayBeginOne, group[0].name, listed(names))
	}
	return fmt.Sprintf(sayBeginTogether, listed(names))
}

// unknownsOf lists the unknowns of some sums, found or not.
func (t *working) unknownsOf(group []balance) (names []string) {
	for _, name := range t.solved.Model.Unknowns() {
		if slices.ContainsFunc(group, func(b balance) bool { return b.has(name) }) {
			names = append(names, expr.Set(name))
		}
	}
	return names
}

func (t *working) say(words string, equations ...string) {
	t.lines = append(t.lines, words+": "+strings.Join(equations, "; "))
}

// sizes writes out the forces whose sizes the problem gives.
func (t *working) sizes() {
	for _, v := range t.solved.Model.Variables {
		switch {
		case v.Role != statics.IsDerived:
		case t.solved.Fixed(v.Size):
			t.say(t.sizeWords(v), t.chain(expr.Letter(v.Name), v.Size))
		default:
			t.say(t.sizeWords(v), expr.Set(v.Name)+" = "+t.page.Write(v.Size))
		}
	}
}

func (t *working) sizeWords(v statics.Variable) string {
	f, isForce := t.solved.Force(v.Name)
	switch {
	case isForce && sizeNouns[f.Kind] != "":
		return sizeNouns[f.Kind]
	case v.Angle:
		return sayAngleGiven
	// A length that follows from other lengths, for one.
	case v.Dim != quantity.Force:
		return sayFollows
	}
	return saySize
}

// balances lists the sums. A force whose size is known through an unknown is
// written with that unknown.
func (t *working) balances() []balance {
	var all []balance
	for _, at := range t.solved.Places() {
		tree := t.solved.Bodies[at.Body].Sum(at.Axis)
		if tree == nil {
			continue
		}
		tree = t.throughUnknowns(t.page.Tidy(tree))
		all = append(all, balance{fmt.Sprintf(sayEquation, at.Axis) + t.forBody(at.Body), at, expand(tree)})
	}
	return all
}

// forBody names the body that a sum is of, where there are several.
func (t *working) forBody(b int) string {
	if len(t.solved.Bodies) == 1 {
		return ""
	}
	return " for " + statics.Called(t.solved.Bodies[b].Name)
}

func (t *working) throughUnknowns(tree *expr.Node) *expr.Node {
	for _, name := range tree.Names() {
		if v, ok := t.solved.Model.Variable(name); ok && v.Role == statics.IsDerived && !t.solved.Fixed(v.Size) {
			return t.throughUnknowns(expr.Substitute(tree, name, v.Size))
		}
	}
	return tree
}

// wanted lists the unknowns of some sums that are not found yet.
func (t *working) wanted(group ...balance) []string {
	var names []string
	for _, name := range t.solved.Model.Unknowns() {
		_, inLetters := t.formulas[name]
		open := !t.found[name] && !inLetters
		if open && slices.ContainsFunc(group, func(b balance) bool { return b.has(name) }) {
			names = append(names, name)
		}
	}
	return names
}

func (t *working) unsettled(all []balance) []balance {
	var left []balance
	for _, b := range all {
		if len(t.wanted(b)) > 0 {
			left = append(left, b)
		}
	}
	return left
}

// listed joins words with commas and an "and" before the last.
func listed(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// mostTogether is how many sums are taken at once, and mostWays how many ways to
// begin are tried on them, so that a large system cannot hold the solution up.
const (
	mostTogether = 5
	mostWays     = 4
)

// nextGroup finds the fewest sums that hold just as many unknowns and that can be
// solved by hand, and solves them; nil where there are none.
func (t *working) nextGroup(left []balance) []balance {
	for size := 1; size <= min(len(left), mostTogether); size++ {
		for _, group := range choose(left, size) {
			// Smaller groups come first, because a student looks for an equation with one unknown.
			if len(t.wanted(group...)) == size && t.solveGroup(group) {
				return group
			}
		}
	}
	return nil
}

// choose lists the ways to take so many of the sums, in order.
func choose(all []balance, size int) [][]balance {
	if size == 0 {
		return [][]balance{nil}
	}
	var ways [][]balance
	for i := 0; i+size <= len(all); i++ {
		for _, rest := range choose(all[i+1:], size-1) {
			ways = append(ways, append([]balance{all[i]}, rest...))
		}
	}
	return ways
}

// solveGroup solves sums with as many unknowns. Where that fails nothing is said.
func (t *working) solveGroup(group []balance) bool {
	lines, found, formulas := len(t.lines), maps.Clone(t.found), maps.Clone(t.formulas)
	// Asked before solving, because afterwards no unknown of the group is wanted.
	linear := !slices.ContainsFunc(t.wanted(group...), func(name string) bool { v, _ := t.solved.Model.Variable(name); return v.Angle })
	// Dividing comes first: after a substitution one term has both the sine
	// and the cosine of the angle, and solveAngle cannot take it apart.
	solved := len(group) == 2 && t.divide(group[0], group[1]) || t.substituteOne(group)
	if !solved {
		// An attempt that fails half-way has already written lines.
		t.lines, t.found, t.formulas = t.lines[:lines], found, formulas
		return false
	}
	t.mark(group, !linear)
	return true
}

func (t *working) mark(group []balance, bent bool) {
	for _, b := range group {
		t.used[b.at], t.bent[b.at] = true, bent
	}
}

// from says where a line comes from: from a sum, or from the line just above it.
func (t *working) from(b balance) string {
	if n := len(t.lines); n > 0 && strings.HasPrefix(t.lines[n-1], sayPut+b.name+":") {
		return sayFollows
	}
	return sayFrom + b.name
}

// solveOne solves one sum for the only unknown that is left in it.
func (t *working) solveOne(b balance, name string) bool {
	words := t.from(b)
	by, rest, linear := b.split(name)
	if !linear {
		return t.solveAngle(words, b, name)
	}
	t.settle(words, name, rest.negative(), by)
	return true
}

// settle writes down an unknown as a quotient of what is known, and notes that it
// is found.
func (t *working) settle(words, name string, above, below polynomial) {
	// The formula comes twice: with the unknowns found so far as letters, then with the
	// formulas of those that have no number. If both are the same, chain writes one.
	formulas := []*expr.Node{above.over(below)}
	above, below = t.inLetters(above), t.inLetters(below)
	last := above.over(below)
	formulas = append(formulas, last)
	t.say(words, t.chain(expr.Letter(name), formulas...))
	if t.page.numbered(last, t.found) {
		t.found[name] = true
	} else {
		t.formulas[name] = above.times(below.inverse())
	}
}

// inLetters puts in what was found in letters alone.
func (t *working) inLetters(p polynomial) polynomial {
	for _, name := range t.solved.Model.Unknowns() {
		formula, found := t.formulas[name]
		if q, ok := p.put(name, formula); found && ok && len(formula) > 0 {
			p = q
		}
	}
	return p
}

// solveAngle solves a sum for an angle of which it holds only the sine, only the
// cosine, or both and nothing else.
func (t *working) solveAngle(words string, b balance, name string) bool {
	sine, cosine, rest, ok := b.aroundAngle(name)
	sine, cosine, rest = t.inLetters(sine), t.inLetters(cosine), t.inLetters(rest)
	var function string
	var formula *expr.Node
	switch {
	case !ok:
		return false
	case len(sine) > 0 && len(cosine) == 0:
		function, formula = "sin", rest.negative().over(sine)
	case len(cosine) > 0 && len(sine) == 0:
		function, formula = "cos", rest.negative().over(cosine)
	case len(sine) > 0 && len(rest) == 0:
		function, formula = "tan", cosine.negative().over(sine)
	// a sin θ + b cos θ = c needs an auxiliary angle, which
	// is not taught here; such sums are solved numerically.
	default:
		return false
	}
	return t.sayAngle(words, function, name, formula)
}

// aroundAngle takes a sum apart: sine·sin name + cosine·cos name + rest.
func (p polynomial) aroundAngle(name string) (sine, cosine, rest polynomial, ok bool) {
	for _, t := range p {
		i := slices.IndexFunc(t.factors, func(f factor) bool { return f.node.Has(name) })
		if i < 0 {
			rest = append(rest, t)
			continue
		}
		f := t.factors[i]
		without := product{t.k, slices.Delete(slices.Clone(t.factors), i, i+1)}
		plain := f.node.Op == expr.Call && f.node.Args[0].Op == expr.Name && f.power == 1
		switch {
		case !plain || without.has(name):
			return nil, nil, nil, false
		case f.node.Name == "sin":
			sine = append(sine, without)
		case f.node.Name == "cos":
			cosine = append(cosine, without)
		default:
			return nil, nil, nil, false
		}
	}
	return sine, cosine, rest, true
}

// sayAngle writes "sin β = …" and then the angle, if that is the angle in
// question.
func (t *working) sayAngle(words, function, name string, formula *expr.Node) bool {
	if !t.page.numbered(formula, t.found) {
		return false
	}
	want, is := t.solved.Values[t.solved.Slots[name]], t.solved.ProgramOf(formula).Run(t.solved.Values)
	back := "a" + function
	// Near 90° three figures of a sine are too few: for 88° the arcsine of 0.999 is 87.4°.
	for figures := t.figures; figures <= mostFigures; figures++ {
		value := t.valueNode(nil, is, figures)
		angle := t.turned(expr.Apply(back, value), function, want)
		degrees, err := angle.Value(nil)
		if err != nil || math.Abs(degrees-want) > shown*want {
			continue
		}
		links := []string{t.page.Write(expr.Apply(function, expr.Letter(name))), t.page.Write(formula)}
		inserted := t.rounded(formula, is)
		for _, n := range []*expr.Node{inserted, value} {
			if text := t.page.Write(n); text != links[len(links)-1] && (n == inserted || !expr.IsQuantity(inserted)) {
				links = append(links, text)
			}
		}
		t.say(words, strings.Join(links, " = "))
		t.found[name] = true
		t.say(sayAngleOf, expr.Set(name)+" = "+t.page.Write(angle)+" = "+t.page.Write(t.page.numberOf(name, t.figures)))
		t.secondAngle(function, name, want)
		return true
	}
	return false
}

// turned adds the half turn or full turn that an inverse function leaves out: the
// tangent does not tell which of two opposite directions is meant.
func (t *working) turned(angle *expr.Node, function string, want float64) *expr.Node {
	degrees, _ := quantity.Find("deg")
	switch {
	case function == "tan" && math.Cos(want) < 0:
		return expr.Join(expr.Add, number(math.Pi, degrees, 3), angle)
	case function == "tan" && want > math.Pi:
		return expr.Join(expr.Add, number(2*math.Pi, degrees, 3), angle)
	}
	return angle
}

// divide solves two sums for the size and the angle of one force that is alone
// unknown in them: size·cos angle and size·sin angle are known, and so is their
// quotient.
func (t *working) divide(a, b balance) bool {
	names := t.wanted(a, b)
	angle := slices.IndexFunc(names, func(n string) bool { v, _ := t.solved.Model.Variable(n); return v.Angle })
	if angle < 0 || len(names) != 2 {
		return false
	}
	size, name := names[1-angle], names[angle]
	sides := map[string]polynomial{}
	sums := map[string]balance{}
	shared := map[string]product{}
	for _, sum := range []balance{a, b} {
		function, common, rest, ok := sum.alone(size, name)
		if !ok {
			return false
		}
		sides[function], sums[function], shared[function] = rest, sum, common
	}
	// The size cancels in the quotient only if the same factor stands in front of sine and cosine.
	if len(sides) != 2 || !shared["sin"].like(shared["cos"]) || shared["sin"].k != shared["cos"].k {
		return false
	}
	for _, function := range []string{"cos", "sin"} {
		left := shared[function].times(one(expr.Apply(function, expr.Letter(name)), 1)).node()
		t.say(sayFrom+sums[function].name, t.chain(left, sides[function].node()))
	}
	if !t.sayAngle(sayDivide, "tan", name, sides["sin"].over(sides["cos"])) {
		return false
	}
	function := "cos"
	if math.Abs(math.Cos(t.solved.Values[t.solved.Slots[name]])) < mostlySideways {
		function = "sin"
	}
	by, _, _ := polynomial{shared[function].times(one(expr.Apply(function, expr.Letter(name)), 1))}.split(size)
	t.settle(sayThen, size, sides[function], by)
	return true
}

// alone takes a sum apart as common·f(angle) = rest, where only the left side
// holds the size and the angle; common is positive.
func (b balance) alone(size, angle string) (function string, common product, rest polynomial, ok bool) {
	for _, t := range b.polynomial {
		switch {
		case !t.has(size) && !t.has(angle):
			rest = append(rest, t)
			continue
		case function != "" || t.power(keyOf(expr.Letter(size))) != 1:
			return "", common, nil, false
		}
		i := slices.IndexFunc(t.factors, func(f factor) bool { return f.node.Has(angle) })
		if i < 0 || t.factors[i].node.Op != expr.Call || t.factors[i].power != 1 || t.factors[i].node.Args[0].Op != expr.Name {
			return "", common, nil, false
		}
		function = t.factors[i].node.Name
		common = product{t.k, slices.Delete(slices.Clone(t.factors), i, i+1)}
	}
	if function == "" || len(rest) == 0 || common.has(angle) {
		return "", common, nil, false
	}
	if common.k > 0 {
		return function, common, rest.negative(), true
	}
	common.k = -common.k
	return function, common, rest, true
}

// isolation is one unknown of one sum, to be written with the help of the others.
type isolation struct {
	sum       int
	name      string
	by, rest  polynomial
	intricacy int
}

// substituteOne writes one unknown with the help of the others, puts it into the
// other sums, solves these, and comes back to it.
func (t *working) substituteOne(group []balance) bool {
	if len(group) == 1 {
		names := t.wanted(group...)
		return len(names) == 1 && t.solveOne(group[0], names[0])
	}
	ways := t.isolations(group)
	for _, way := range ways[:min(len(ways), mostWays)] {
		lines, found, formulas := len(t.lines), maps.Clone(t.found), maps.Clone(t.formulas)
		if t.follow(group, way) {
			return true
		}
		t.lines, t.found, t.formulas = t.lines[:lines], found, formulas
	}
	return false
}

// isolations lists the ways to begin, the simplest first.
func (t *working) isolations(group []balance) []isolation {
	names := t.wanted(group...)
	var ways []isolation
	for i, b := range group {
		for _, name := range names {
			by, rest, linear := b.split(name)
			if !linear || slices.ContainsFunc(names, by.has) {
				continue
			}
			way := isolation{i, name, by, rest, 4*len(rest) + 8*(len(by)-1)}
			// To divide by a sine is common, to divide by μ is not.
			for _, f := range by[0].factors {
				way.intricacy += 6
				if f.node.Op == expr.Call {
					way.intricacy -= 4
				}
			}
			ways = append(ways, way)
		}
	}
	slices.SortStableFunc(ways, func(a, b isolation) int { return a.intricacy - b.intricacy })
	return ways
}

func (t *working) follow(group []balance, way isolation) bool {
	formula := way.rest.negative().over(way.by)
	value := way.rest.negative().times(way.by.inverse())
	t.say(t.from(group[way.sum]), expr.Set(way.name)+" = "+t.page.Write(formula))
	var others []balance
	for i, b := range group {
		if i == way.sum {
			continue
		}
		if b.has(way.name) {
			p, ok := b.put(way.name, value)
			// 0 = 0: this equation says the same as the one that was put into it.
			if !ok || len(p) == 0 {
				return false
			}
			b.polynomial = p
			t.say(sayPut+b.name, t.page.Write(p.node())+" = 0")
		}
		others = append(others, b)
	}
	if slices.ContainsFunc(others, func(b balance) bool { return b.has(way.name) }) || !t.substituteOne(others) {
		return false
	}
	t.settle(sayThen, way.name, way.rest.negative(), way.by)
	return true
}

// Beginning is a way to begin with the unknowns.
type Beginning uint8

// The ways to begin: with a sum of one unknown; with the quotient of two sums; with one sum put
// into the other; with values that are tried.
const (
	OneUnknown Beginning = iota
	Quotient
	Substitution
	Trying
)

// Begin says how to begin, and for OneUnknown with which equation.
func Begin(s *solved.System) (how Beginning, equation string) {
	t := newWorking(s, nil)
	left := t.unsettled(t.balances())
	for _, b := range left {
		if len(t.wanted(b)) == 1 && t.says(b) {
			return OneUnknown, b.name
		}
	}
	for _, two := range choose(left, 2) {
		// The lines that divide writes are thrown away with t; only whether it succeeds is needed.
		if t.divide(two[0], two[1]) {
			return Quotient, ""
		}
	}
	if !s.Model.Linear() {
		return Trying, ""
	}
	return Substitution, ""
}

// says reports whether a sum says anything of the one unknown that it has: −T cos θ + T cos θ is zero
// for any θ.
func (t *working) says(b balance) bool {
	env := slices.Clone(t.solved.Values)
	// Any other value would do: a sum that depends on its unknown is no longer zero there.
	env[t.solved.Slots[t.wanted(b)[0]]] *= 1.1
	t.solved.Fill(env, nil)
	return math.Abs(t.solved.ProgramOf(b.node()).Run(env)) > 1e-9*t.solved.Bulk
}
