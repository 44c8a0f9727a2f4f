package checker

import (
	"maps"
	"math"
	"regexp"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// The worked solution, as a teacher writes it: the forces in words, the parts and
// the sums in letters, and the unknowns one after the other, each in letters,
// then with numbers, then with its value and unit.
//
// Every equation stands behind the last ": " of its line, several of them with
// "; " between, and is true at the solution.

// Step is one stage of the worked solution.
type Step struct {
	Stage Stage
	Title string
	Lines []string
}

// What is said between the equations.
const (
	sayForces    = "The forces"
	sayForcesOn  = "The forces on %s"
	sayParts     = "Their parts along the axes"
	saySum       = "The sum along %s"
	saySolve     = "The unknowns"
	sayAngle     = "The angle follows from the lengths"
	saySize      = "The size of the force"
	sayFrom      = "From the sum along "
	sayPut       = "Put into the sum along "
	sayFollows   = "It follows"
	sayThen      = "With that"
	sayDivide    = "One divided by the other"
	sayAngleOf   = "The angle"
	sayNumbers   = "With numbers, the sum along "
	sayNumerical = "Solved numerically"
	sayCheck     = "Put back into the sum along "
	sayAnswer    = "Answer"
	sayNothing   = "Nothing acts along %s."
)

// Worked returns the worked solution, stage by stage.
func (r *Reference) Worked() []Step {
	steps := []Step{}
	for i := range r.Bodies {
		s := r.setting(Diagram, r.Bodies[i].Name)
		step := Step{Stage: Diagram, Title: sayForces}
		if len(r.Bodies) > 1 {
			step.Title = strings.Replace(sayForcesOn, "%s", s.bodyName(), 1)
		}
		for k := range s.body.Forces {
			step.Lines = append(step.Lines, s.describe(&s.body.Forces[k]))
		}
		steps = append(steps, step)
	}
	steps = append(steps, Step{Components, sayParts, r.workedParts()})
	for _, axis := range []statics.Axis{statics.X, statics.Y} {
		stage := [...]Stage{XSum, YSum}[axis]
		title := strings.Replace(saySum, "%s", axis.String(), 1)
		steps = append(steps, Step{stage, title, r.workedSums(axis)})
	}
	return append(steps, Step{Solve, saySolve, r.workedUnknowns()})
}

func (r *Reference) workedParts() []string {
	var lines []string
	for _, tree := range r.lengthAngles() {
		lines = append(lines, sayAngle+": "+r.angleChain(tree))
	}
	for b := range r.Bodies {
		for i := range r.Bodies[b].Forces {
			f := &r.Bodies[b].Forces[i]
			parts := make([]string, 2)
			for _, axis := range []statics.Axis{statics.X, statics.Y} {
				parts[axis] = r.componentEquation(f, axis)
			}
			head := ""
			if len(r.Bodies) > 1 {
				head = r.Bodies[b].Name + ": "
			}
			lines = append(lines, head+strings.Join(parts, "; "))
		}
	}
	return lines
}

// componentEquation writes "T₁x = −T₁ cos α".
func (r *Reference) componentEquation(f *statics.Force, axis statics.Axis) string {
	return expr.Set(f.Name) + axis.String() + " = " + r.write(r.tidy(f.Component(axis)))
}

func (r *Reference) workedSums(axis statics.Axis) []string {
	var lines []string
	for b := range r.Bodies {
		head := ""
		if len(r.Bodies) > 1 {
			head = r.Bodies[b].Name + ": "
		}
		tree := r.Bodies[b].Sum(axis)
		if tree == nil {
			lines = append(lines, head+strings.Replace(sayNothing, "%s", axis.String(), 1))
			continue
		}
		lines = append(lines, head+r.write(r.tidy(tree))+" = 0")
	}
	return lines
}

// lengthAngles lists the angles that are given by lengths, asin(a/c), each once.
func (r *Reference) lengthAngles() []*expr.Node {
	var found []*expr.Node
	add := func(tree *expr.Node) {
		if tree == nil || !r.isLengthAngle(tree) {
			return
		}
		if !slices.ContainsFunc(found, func(n *expr.Node) bool { return expr.Equal(n, tree) }) {
			found = append(found, tree)
		}
	}
	for b := range r.Bodies {
		for i := range r.Bodies[b].Forces {
			add(r.Bodies[b].Forces[i].Angle)
			add(r.Bodies[b].Forces[i].Direction)
		}
	}
	return found
}

// isLengthAngle reports whether a tree is a fixed angle with a function in it.
func (r *Reference) isLengthAngle(tree *expr.Node) bool {
	call := false
	tree.Walk(func(n *expr.Node) { call = call || n.Op == expr.Call })
	return call && r.fixed(tree) && r.numbered(tree, nil)
}

// tidy writes the angles that are known from lengths as numbers.
func (r *Reference) tidy(n *expr.Node) *expr.Node {
	if n.Op == expr.Call && r.isLengthAngle(n.Args[0]) {
		return expr.Apply(n.Name, r.angleNumber(n.Args[0]))
	}
	c := *n
	c.Args = make([]*expr.Node, len(n.Args))
	for i, a := range n.Args {
		c.Args[i] = r.tidy(a)
	}
	return &c
}

func (r *Reference) angleNumber(tree *expr.Node) *expr.Node {
	degrees, _ := quantity.Find("deg")
	return number(r.program(tree).Run(r.solution), degrees, 3)
}

func (r *Reference) angleChain(tree *expr.Node) string {
	return r.write(tree) + " = " + r.write(r.insert(tree, nil, 3)) + " = " + r.write(r.angleNumber(tree))
}

// numbered reports whether every letter of a tree has a value: the givens with a
// number, what is computed from them, and the unknowns that are found.
func (r *Reference) numbered(tree *expr.Node, found map[string]bool) bool {
	for _, name := range tree.Names() {
		v, ok := r.Variable(name)
		switch {
		case !ok:
			return false
		case found[name]:
		case v.Role == statics.IsUnknown:
			return false
		case v.Role == statics.IsDerived && !r.numbered(v.Size, found):
			return false
		case v.Role == statics.IsGiven:
			if g, _ := r.Given(name); g.Any {
				return false
			}
		}
	}
	return true
}

// insert puts the numbers in the place of the letters that have one. Givens stand
// as they were given, everything else with so many figures.
func (r *Reference) insert(n *expr.Node, found map[string]bool, figures int) *expr.Node {
	if n.Op == expr.Name && r.numbered(n, found) {
		return r.numberOf(n.Name, figures)
	}
	c := *n
	if num, err := quantity.ParseNumber(n.Num.Text); err == nil && n.Unit != "" {
		c.Num = num // in SI, whatever units the reference computes in
	}
	c.Args = make([]*expr.Node, len(n.Args))
	for i, a := range n.Args {
		c.Args[i] = r.insert(a, found, figures)
	}
	return &c
}

func (r *Reference) numberOf(name string, figures int) *expr.Node {
	if v, _ := r.Variable(name); v.Role == statics.IsDerived && v.Size.Op == expr.Name {
		return r.numberOf(v.Size.Name, figures)
	}
	g, given := r.Given(name)
	if !given {
		value, _ := r.Value(name)
		return number(value, r.Unit(name), figures)
	}
	n := &expr.Node{Op: expr.Number, Num: g.Number, Unit: unitSymbol(g.Unit)}
	if g.Minus {
		return expr.Minus(n)
	}
	return n
}

func unitSymbol(u quantity.Unit) string {
	if u.Symbol == "none" {
		return ""
	}
	return u.Symbol
}

// number is a leaf for a value in SI, rounded, in the unit.
func number(value float64, unit quantity.Unit, figures int) *expr.Node {
	text := quantity.Format(math.Abs(value)/unit.Factor, figures)
	num, err := quantity.ParseNumber(text)
	if err != nil {
		num = quantity.Exact(math.Abs(value) / unit.Factor)
	}
	n := &expr.Node{Op: expr.Number, Num: num, Unit: unitSymbol(unit)}
	if value < 0 && num.Value != 0 {
		return expr.Minus(n)
	}
	return n
}

// write prints a tree as on paper: subscripts, and a raised dot beside a quantity
// instead of brackets round it.
func (r *Reference) write(n *expr.Node) string {
	text := r.letters("").PrintNode(n)
	names := n.Names()
	slices.SortFunc(names, func(a, b string) int { return len(b) - len(a) })
	var pairs []string
	for _, name := range names {
		pairs = append(pairs, expr.Glyph(name), expr.Set(name))
	}
	text = unbracket(strings.NewReplacer(pairs...).Replace(text))
	return strings.ReplaceAll(text, "m/s^2", "m/s²")
}

var bracketed = regexp.MustCompile(`\((\d[\d.×^e-]*) ([A-Za-z/^0-9]+)\)`)

// unbracket takes the brackets off a quantity that is a factor: "(31.4 N) cos 35°"
// becomes "31.4 N · cos 35°". Behind a slash or a function they stay, and under an
// exponent.
func unbracket(text string) string {
	done := ""
	for {
		at := bracketed.FindStringSubmatchIndex(text)
		if at == nil {
			return done + text
		}
		done += text[:at[0]]
		inner := text[at[2]:at[5]]
		_, isUnit := quantity.Find(text[at[4]:at[5]])
		text = text[at[1]:]
		if !isUnit || holdsBrackets.MatchString(done) || isPower.MatchString(text) {
			done += "(" + inner + ")"
			continue
		}
		switch head := strings.TrimRight(done, " ·"); {
		case head != done && head != "" && !endsInSign.MatchString(head):
			done = head + " · "
		}
		done += inner
		if rest := strings.TrimLeft(text, " ·"); rest != text && rest != "" && !startsWithSign.MatchString(rest) {
			text = " · " + rest
		}
	}
}

var (
	endsInSign     = regexp.MustCompile(`[+−=(]$`)
	startsWithSign = regexp.MustCompile(`^[+−=)]`)
	holdsBrackets  = regexp.MustCompile(`[/\p{L}]$`)
	isPower        = regexp.MustCompile(`^[²³^⁴-⁹⁻]`)
)

// describe says in words where a force comes from and where it points.
func (s *setting) describe(f *statics.Force) string {
	s.force = f
	where := strings.Join(slices.DeleteFunc([]string{s.points(), s.slant()}, func(w string) bool { return w == "" }), ", ")
	return s.nameOf(f) + ", " + kindNouns[f.Kind] + ", points " + where + "."
}

var kindNouns = map[statics.Kind]string{
	statics.Tension: "the pull of a string", statics.Weight: "the weight", statics.Normal: "the push of a surface",
	statics.Friction: "the friction", statics.Spring: "the force of a spring", statics.Push: "a push",
	statics.Pull: "a pull", statics.Strut: "the push of a strut",
}

// sizeNouns begin the line that says what the size of a force follows from.
var sizeNouns = map[statics.Kind]string{
	statics.Tension: "The pull of the string", statics.Weight: "The weight", statics.Friction: "The friction",
	statics.Spring: "The force of the spring",
}

// A sum is handled as a polynomial: products of letters and functions, each with
// a whole exponent, and a number in front.

type factor struct {
	node  *expr.Node
	key   string
	power int
}

type product struct {
	k       float64
	factors []factor
}

type polynomial []product

// one is a single factor with its exponent.
func one(n *expr.Node, power int) product { return product{1, []factor{{n, keyOf(n), power}}} }

func keyOf(n *expr.Node) string { return (&expr.Letters{}).PrintNode(n) }

func (p product) power(key string) int {
	for _, f := range p.factors {
		if f.key == key {
			return f.power
		}
	}
	return 0
}

func (p product) times(q product) product {
	out := product{k: p.k * q.k, factors: slices.Clone(p.factors)}
	for _, f := range q.factors {
		i := slices.IndexFunc(out.factors, func(g factor) bool { return g.key == f.key })
		if i < 0 {
			out.factors = append(out.factors, f)
			continue
		}
		out.factors[i].power += f.power
	}
	out.factors = slices.DeleteFunc(out.factors, func(f factor) bool { return f.power == 0 })
	return out
}

func (p product) inverse() product {
	out := product{k: 1 / p.k, factors: slices.Clone(p.factors)}
	for i := range out.factors {
		out.factors[i].power = -out.factors[i].power
	}
	return out
}

func (p product) like(q product) bool {
	return len(p.factors) == len(q.factors) && !slices.ContainsFunc(p.factors, func(f factor) bool { return q.power(f.key) != f.power })
}

func (p polynomial) plus(q polynomial) polynomial {
	out := slices.Clone(p)
	for _, t := range q {
		i := slices.IndexFunc(out, t.like)
		if i < 0 {
			out = append(out, t)
			continue
		}
		out[i].k += t.k
	}
	return slices.DeleteFunc(out, func(t product) bool { return math.Abs(t.k) < 1e-12 })
}

func (p polynomial) times(q polynomial) polynomial {
	var out polynomial
	for _, a := range p {
		for _, b := range q {
			out = out.plus(polynomial{a.times(b)})
		}
	}
	return out
}

func (p polynomial) negative() polynomial { return p.times(polynomial{{k: -1}}) }

// inverse turns a polynomial upside down. A sum becomes one factor to the power
// of −1, after what its terms have in common has been taken out.
func (p polynomial) inverse() polynomial {
	common, rest := p.common()
	if len(rest) == 1 {
		return polynomial{common.times(rest[0]).inverse()}
	}
	return polynomial{common.inverse().times(one(rest.node(), -1))}
}

// common takes out of a sum what all its terms share; the first term of what is
// left is positive.
func (p polynomial) common() (product, polynomial) {
	shared := product{k: 1}
	if len(p) == 0 {
		return shared, p
	}
	for _, f := range p[0].factors {
		least := f.power
		for _, t := range p[1:] {
			least = nearerZero(least, t.power(f.key))
		}
		if least != 0 {
			shared.factors = append(shared.factors, factor{f.node, f.key, least})
		}
	}
	if p.positiveFirst()[0].k < 0 {
		shared.k = -1
	}
	if size := math.Abs(p[0].k); !slices.ContainsFunc(p, func(t product) bool { return math.Abs(math.Abs(t.k)-size) > 1e-12 }) {
		shared.k *= size
	}
	return shared, p.times(polynomial{shared.inverse()})
}

func nearerZero(a, b int) int {
	switch {
	case a > 0 && b > 0:
		return min(a, b)
	case a < 0 && b < 0:
		return max(a, b)
	}
	return 0
}

// expand writes a tree as a polynomial. What is neither sum nor product stays
// together as one factor.
func expand(n *expr.Node) polynomial {
	switch n.Op {
	case expr.Number:
		if n.Unit == "" && n.Num.Text != "π" {
			return polynomial{{k: n.Num.Value}}
		}
	case expr.Neg:
		return expand(n.Args[0]).negative()
	case expr.Add:
		return expand(n.Args[0]).plus(expand(n.Args[1]))
	case expr.Sub:
		return expand(n.Args[0]).plus(expand(n.Args[1]).negative())
	case expr.Mul:
		return expand(n.Args[0]).times(expand(n.Args[1]))
	case expr.Div:
		if below := expand(n.Args[1]); len(below) > 0 {
			return expand(n.Args[0]).times(below.inverse())
		}
	}
	return polynomial{one(n, 1)}
}

// node turns a polynomial into a tree, a positive term first where there is one.
func (p polynomial) node() *expr.Node {
	if len(p) == 0 {
		return expr.Constant(0)
	}
	var sum *expr.Node
	for _, t := range p.positiveFirst() {
		tree := product{math.Abs(t.k), t.factors}.node()
		switch {
		case sum == nil && t.k < 0:
			sum = expr.Minus(tree)
		case sum == nil:
			sum = tree
		case t.k < 0:
			sum = expr.Join(expr.Sub, sum, tree)
		default:
			sum = expr.Join(expr.Add, sum, tree)
		}
	}
	return sum
}

func (p polynomial) positiveFirst() polynomial {
	i := slices.IndexFunc(p, func(t product) bool { return t.k > 0 })
	if i <= 0 {
		return p
	}
	out := polynomial{p[i]}
	return append(append(out, p[:i]...), p[i+1:]...)
}

// node turns a product into a tree with one fraction bar: letters in front of
// functions, a sine over its own cosine as a tangent.
func (p product) node() *expr.Node {
	var above, below *expr.Node
	num, den := ratio(math.Abs(p.k))
	if num != 1 {
		above = expr.Constant(num)
	}
	if den != 1 {
		below = expr.Constant(den)
	}
	factors := tangents(p.factors)
	slices.SortStableFunc(factors, func(a, b factor) int { return rankOfFactor(a.node) - rankOfFactor(b.node) })
	for _, f := range factors {
		if f.power > 0 {
			above = joined(above, raised(f.node, f.power))
		} else {
			below = joined(below, raised(f.node, -f.power))
		}
	}
	if above == nil {
		above = expr.Constant(1)
	}
	if below != nil {
		above = expr.Join(expr.Div, above, below)
	}
	if p.k < 0 {
		return expr.Minus(above)
	}
	return above
}

func joined(a, b *expr.Node) *expr.Node {
	if a == nil {
		return b
	}
	return expr.Join(expr.Mul, a, b)
}

func raised(n *expr.Node, power int) *expr.Node {
	if power == 1 {
		return n
	}
	return expr.Join(expr.Pow, n, expr.Constant(float64(power)))
}

// rankOfFactor puts numbers before letters, letters before brackets, and these
// before functions.
func rankOfFactor(n *expr.Node) int {
	switch n.Op {
	case expr.Number:
		return 0
	case expr.Name:
		return 1
	case expr.Call:
		return 3
	}
	return 2
}

// ratio writes a number as a fraction of small whole numbers where it is one.
func ratio(k float64) (num, den float64) {
	for den = 1; den <= 60; den++ {
		if num = k * den; math.Abs(num-math.Round(num)) < 1e-9 {
			return math.Round(num), den
		}
	}
	return k, 1
}

// tangents joins sin x and 1/cos x.
func tangents(factors []factor) []factor {
	out := slices.Clone(factors)
	for i, f := range out {
		if f.node.Op != expr.Call || f.node.Name != "sin" || f.power < 1 {
			continue
		}
		under := keyOf(expr.Apply("cos", f.node.Args[0]))
		for j := range out {
			if times := min(f.power, -out[j].power); out[j].key == under && times > 0 {
				tan := expr.Apply("tan", f.node.Args[0])
				out[i].power -= times
				out[j].power += times
				out = append(out, factor{tan, keyOf(tan), times})
				break
			}
		}
	}
	return slices.DeleteFunc(out, func(f factor) bool { return f.power == 0 })
}

// factored turns a polynomial into a tree with what its terms share in front of
// brackets.
func (p polynomial) factored() *expr.Node {
	common, rest := p.common()
	if len(p) < 2 || len(common.factors) == 0 {
		return p.node()
	}
	return common.times(one(rest.node(), 1)).node()
}

// over divides and writes the quotient with one fraction bar.
func (p polynomial) over(q polynomial) *expr.Node {
	if len(p) == 0 {
		return expr.Constant(0)
	}
	a, above := p.common()
	b, below := q.common()
	all := a.times(b.inverse())
	if len(above) == 1 {
		all = all.times(above[0])
	} else if all.k < 0 {
		all.k, above = -all.k, above.negative()
	}
	if len(below) == 1 {
		all = all.times(below[0].inverse())
	}
	for _, side := range []struct {
		polynomial
		power int
	}{{above, 1}, {below, -1}} {
		if len(side.polynomial) > 1 {
			all = all.times(one(side.node(), side.power))
		}
	}
	return all.node()
}

// has reports whether a letter stands anywhere in the polynomial.
func (p polynomial) has(name string) bool {
	return slices.ContainsFunc(p, func(t product) bool { return t.has(name) })
}

func (p product) has(name string) bool {
	return slices.ContainsFunc(p.factors, func(f factor) bool { return f.node.Has(name) })
}

// split takes the polynomial apart at a letter in which it is linear: p = by·name
// + rest.
func (p polynomial) split(name string) (by, rest polynomial, linear bool) {
	for _, t := range p {
		if !t.has(name) {
			rest = append(rest, t)
			continue
		}
		without := t.times(one(expr.Letter(name), -1))
		if t.power(keyOf(expr.Letter(name))) != 1 || without.has(name) {
			return nil, nil, false
		}
		by = append(by, without)
	}
	return by, rest, len(by) > 0
}

// put replaces a letter in which the polynomial is linear.
func (p polynomial) put(name string, value polynomial) (polynomial, bool) {
	if !p.has(name) {
		return p, true
	}
	by, rest, linear := p.split(name)
	if !linear {
		return nil, false
	}
	return by.times(value).plus(rest), true
}

// balance is one sum as a polynomial that is zero.
type balance struct {
	name string
	at   place
	polynomial
}

// teacher works a system out on paper, one group of unknowns after the other.
type teacher struct {
	*Reference
	found    map[string]bool       // unknowns that have a number by now
	formulas map[string]polynomial // unknowns that are found in letters alone, nil where no formula is known
	used     map[place]bool        // sums that something was solved from
	bent     map[place]bool        // of these, where more than substitution was needed
	lines    []string
}

func newTeacher(r *Reference) *teacher {
	return &teacher{Reference: r, found: map[string]bool{}, formulas: map[string]polynomial{}, used: map[place]bool{}, bent: map[place]bool{}}
}

func (r *Reference) workedUnknowns() []string {
	t := newTeacher(r)
	t.sizes()
	all := t.balances()
	left := t.unsettled(all)
	for len(left) > 0 {
		if !t.nextGroup(left) {
			t.numerically(left)
		}
		left = t.unsettled(left)
	}
	t.checks(all)
	t.answers()
	return t.lines
}

func (t *teacher) say(words string, equations ...string) {
	t.lines = append(t.lines, words+": "+strings.Join(equations, "; "))
}

// sizes writes out the forces whose sizes the problem gives.
func (t *teacher) sizes() {
	for _, v := range t.Variables {
		switch {
		case v.Role != statics.IsDerived:
		case t.fixed(v.Size):
			t.say(t.sizeWords(v.Name), t.chain(expr.Letter(v.Name), v.Size))
		default:
			t.say(t.sizeWords(v.Name), expr.Set(v.Name)+" = "+t.write(v.Size))
		}
	}
}

func (t *teacher) sizeWords(name string) string {
	if f, ok := t.Force(name); ok && sizeNouns[f.Kind] != "" {
		return sizeNouns[f.Kind]
	}
	return saySize
}

// balances lists the sums. A force whose size is known through an unknown is
// written with that unknown.
func (t *teacher) balances() []balance {
	var all []balance
	for _, at := range t.places() {
		tree := t.Bodies[at.body].Sum(at.axis)
		if tree == nil {
			continue
		}
		tree = t.throughUnknowns(t.tidy(tree))
		name := at.axis.String()
		if len(t.Bodies) > 1 {
			name += t.setting(XSum, t.Bodies[at.body].Name).forBody()
		}
		all = append(all, balance{name, at, expand(tree)})
	}
	return all
}

func (t *teacher) throughUnknowns(tree *expr.Node) *expr.Node {
	for _, name := range tree.Names() {
		if v, ok := t.Variable(name); ok && v.Role == statics.IsDerived && !t.fixed(v.Size) {
			return t.throughUnknowns(substitute(tree, name, v.Size))
		}
	}
	return tree
}

// wanted lists the unknowns of some sums that are not found yet.
func (t *teacher) wanted(group ...balance) []string {
	var names []string
	for _, name := range t.Unknowns() {
		_, inLetters := t.formulas[name]
		open := !t.found[name] && !inLetters
		if open && slices.ContainsFunc(group, func(b balance) bool { return b.has(name) }) {
			names = append(names, name)
		}
	}
	return names
}

func (t *teacher) unsettled(all []balance) []balance {
	var left []balance
	for _, b := range all {
		if len(t.wanted(b)) > 0 {
			left = append(left, b)
		}
	}
	return left
}

// mostTogether is how many sums are taken at once, and mostWays how many ways to
// begin are tried on them, so that a large system cannot hold the solution up.
const (
	mostTogether = 5
	mostWays     = 4
)

// nextGroup finds the fewest sums that hold just as many unknowns and that can be
// solved by hand, and solves them.
func (t *teacher) nextGroup(left []balance) bool {
	for size := 1; size <= min(len(left), mostTogether); size++ {
		for _, group := range choose(left, size) {
			if len(t.wanted(group...)) == size && t.solveGroup(group) {
				return true
			}
		}
	}
	return false
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
func (t *teacher) solveGroup(group []balance) bool {
	lines, found, formulas := len(t.lines), maps.Clone(t.found), maps.Clone(t.formulas)
	linear := !slices.ContainsFunc(t.wanted(group...), func(name string) bool { v, _ := t.Variable(name); return v.Angle })
	solved := len(group) == 2 && t.divide(group[0], group[1]) || t.substituteOne(group)
	if !solved {
		t.lines, t.found, t.formulas = t.lines[:lines], found, formulas
		return false
	}
	t.mark(group, !linear)
	return true
}

func (t *teacher) mark(group []balance, bent bool) {
	for _, b := range group {
		t.used[b.at], t.bent[b.at] = true, bent
	}
}

// from says where a line comes from: from a sum, or from the line just above it.
func (t *teacher) from(b balance) string {
	if n := len(t.lines); n > 0 && strings.HasPrefix(t.lines[n-1], sayPut+b.name+":") {
		return sayFollows
	}
	return sayFrom + b.name
}

// solveOne solves one sum for the only unknown that is left in it.
func (t *teacher) solveOne(b balance, name string) bool {
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
func (t *teacher) settle(words, name string, above, below polynomial) {
	formulas := []*expr.Node{above.over(below)}
	above, below = t.inLetters(above), t.inLetters(below)
	last := above.over(below)
	formulas = append(formulas, last)
	t.say(words, t.chain(expr.Letter(name), formulas...))
	if t.numbered(last, t.found) {
		t.found[name] = true
	} else {
		t.formulas[name] = above.times(below.inverse())
	}
}

// inLetters puts in what was found in letters alone.
func (t *teacher) inLetters(p polynomial) polynomial {
	for _, name := range t.Unknowns() {
		formula, found := t.formulas[name]
		if q, ok := p.put(name, formula); found && ok && len(formula) > 0 {
			p = q
		}
	}
	return p
}

// solveAngle solves a sum for an angle of which it holds only the sine, only the
// cosine, or both and nothing else.
func (t *teacher) solveAngle(words string, b balance, name string) bool {
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
func (t *teacher) sayAngle(words, function, name string, formula *expr.Node) bool {
	if !t.numbered(formula, t.found) {
		return false
	}
	want, is := t.solution[t.slots[name]], t.program(formula).Run(t.solution)
	back := "a" + function
	for figures := 3; figures < 7; figures++ {
		value := t.valueNode(nil, is, figures)
		angle := t.turned(expr.Apply(back, value), function, want)
		degrees, err := angle.Value(nil)
		if err != nil || math.Abs(degrees-want) > 0.004*want {
			continue
		}
		links := []string{t.write(expr.Apply(function, expr.Letter(name))), t.write(formula)}
		inserted := t.rounded(formula, is)
		for _, n := range []*expr.Node{inserted, value} {
			if text := t.write(n); text != links[len(links)-1] && (n == inserted || !isQuantity(inserted)) {
				links = append(links, text)
			}
		}
		t.say(words, strings.Join(links, " = "))
		t.found[name] = true
		t.say(sayAngleOf, expr.Set(name)+" = "+t.write(angle)+" = "+t.write(t.numberOf(name, 3)))
		return true
	}
	return false
}

// turned adds the half turn or full turn that an inverse function leaves out: the
// tangent does not tell which of two opposite directions is meant.
func (t *teacher) turned(angle *expr.Node, function string, want float64) *expr.Node {
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
func (t *teacher) divide(a, b balance) bool {
	names := t.wanted(a, b)
	angle := slices.IndexFunc(names, func(n string) bool { v, _ := t.Variable(n); return v.Angle })
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
	if math.Abs(math.Cos(t.solution[t.slots[name]])) < 0.3 {
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
func (t *teacher) substituteOne(group []balance) bool {
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
func (t *teacher) isolations(group []balance) []isolation {
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

func (t *teacher) follow(group []balance, way isolation) bool {
	formula := way.rest.negative().over(way.by)
	value := way.rest.negative().times(way.by.inverse())
	t.say(t.from(group[way.sum]), expr.Set(way.name)+" = "+t.write(formula))
	var others []balance
	for i, b := range group {
		if i == way.sum {
			continue
		}
		if b.has(way.name) {
			p, ok := b.put(way.name, value)
			if !ok || len(p) == 0 {
				return false
			}
			b.polynomial = p
			t.say(sayPut+b.name, t.write(p.node())+" = 0")
		}
		others = append(others, b)
	}
	if slices.ContainsFunc(others, func(b balance) bool { return b.has(way.name) }) || !t.substituteOne(others) {
		return false
	}
	t.settle(sayThen, way.name, way.rest.negative(), way.by)
	return true
}

// numerically says that sums are beyond solving by hand and gives what comes out.
func (t *teacher) numerically(group []balance) {
	for _, b := range group {
		tree := t.insert(t.tidy(t.Bodies[b.at.body].Sum(b.at.axis)), t.found, 3)
		t.say(sayNumbers+b.name, t.write(tree)+" = 0")
	}
	var values []string
	for _, name := range t.wanted(group...) {
		if t.isFormula(name) {
			t.formulas[name] = nil
			continue
		}
		t.found[name] = true
		values = append(values, expr.Set(name)+" = "+t.write(t.numberOf(name, 3)))
	}
	t.say(sayNumerical, values...)
	t.mark(group, true)
}

// checks puts the solution back into the sums that were not needed, and into those
// that were not solved by substitution alone.
func (t *teacher) checks(all []balance) {
	for _, b := range all {
		tree := t.tidy(t.Bodies[b.at.body].Sum(b.at.axis))
		if t.used[b.at] && !t.bent[b.at] || !t.numbered(tree, t.found) {
			continue
		}
		for figures := 3; ; figures++ {
			inserted := t.insert(tree, t.found, figures)
			if figures == 6 || nearlyZero(inserted) {
				t.say(sayCheck+b.name, t.write(inserted)+" ≈ 0")
				break
			}
		}
	}
}

// nearlyZero compares a sum of numbers with the largest of its terms.
func nearlyZero(sum *expr.Node) bool {
	largest := 0.0
	for _, term := range addends(sum, nil) {
		largest = math.Max(largest, math.Abs(constant(term)))
	}
	return math.Abs(constant(sum)) <= 0.006*largest
}

// answers gives what was asked for: a value, or a formula in the letters that have
// no number.
func (t *teacher) answers() {
	var all []string
	for _, name := range t.Find {
		letter := expr.Letter(name)
		v, _ := t.Variable(name)
		switch {
		case t.numbered(letter, t.found):
			if v.Role == statics.IsDerived && !t.fixed(v.Size) {
				t.say(sayThen, t.chain(letter, v.Size))
			}
			all = append(all, expr.Set(name)+" = "+t.write(t.numberOf(name, 3)))
		case len(t.formulas[name]) > 0:
			formula := t.formulas[name].factored()
			all = append(all, t.chain(letter, formula, expand(t.spelledOut(formula)).factored()))
		}
	}
	t.say(sayAnswer, all...)
}

// spelledOut writes m·g for w.
func (t *teacher) spelledOut(tree *expr.Node) *expr.Node {
	for _, name := range tree.Names() {
		if v, ok := t.Variable(name); ok && v.Role == statics.IsDerived {
			return t.spelledOut(substitute(tree, name, v.Size))
		}
	}
	return tree
}

// chain writes "name = formula = formula with numbers = value", the last two
// where every letter has a number, and every link once.
func (t *teacher) chain(left *expr.Node, formulas ...*expr.Node) string {
	links := []string{t.write(left)}
	add := func(n *expr.Node) {
		if text := t.write(n); text != links[len(links)-1] {
			links = append(links, text)
		}
	}
	for _, f := range formulas {
		add(f)
	}
	if last := formulas[len(formulas)-1]; t.numbered(last, t.found) {
		value := t.program(last).Run(t.solution) * t.own.scale(quantity.Force)
		if left.Op == expr.Name {
			value, _ = t.Value(left.Name)
		}
		inserted := t.rounded(last, value)
		if last.Op == expr.Name {
			inserted = t.numberOf(last.Name, 3)
		}
		add(inserted)
		if !isQuantity(inserted) {
			add(t.valueNode(left, value, 3))
		}
	}
	return strings.Join(links, " = ")
}

// valueNode is a rounded value in the unit of what it is the value of; nil has
// none.
func (t *teacher) valueNode(left *expr.Node, value float64, figures int) *expr.Node {
	unit, _ := quantity.Find("none")
	switch {
	case left == nil:
	case left.Op == expr.Name:
		unit = t.Unit(left.Name)
	default:
		unit = t.usualUnit(quantity.Force)
		for _, name := range left.Names() {
			if v, _ := t.Variable(name); v.Dim == quantity.Force {
				unit = t.Unit(name)
			}
		}
	}
	return number(value, unit, figures)
}

// rounded puts numbers into a formula, with as many figures as it takes for the
// result to come out right.
func (t *teacher) rounded(n *expr.Node, value float64) *expr.Node {
	for figures := 3; ; figures++ {
		inserted := t.insert(n, t.found, figures)
		v, err := inserted.Value(nil)
		if figures == 6 || err == nil && math.Abs(v-value) <= 0.004*math.Abs(value) {
			return inserted
		}
	}
}
