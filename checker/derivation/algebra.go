package derivation

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
)

// A sum is handled as a polynomial: products of letters and functions, each with
// a whole exponent, and a number in front.

// A coefficient below vanishing is what rounding left of nothing; one within whole of a whole
// number is that number.
const (
	vanishing = 1e-12
	whole     = 1e-9
)

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
	// A factor that cancels has to go: like counts the factors, and T·w/T would otherwise be no term like w.
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
	// What cancels is dropped, so that a sum that says only 0 = 0 is an empty polynomial.
	return slices.DeleteFunc(out, func(t product) bool { return math.Abs(t.k) < vanishing })
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
	// The first is negative only if all are, and −(a + b) is easier to read than (−a − b).
	if p.positiveFirst()[0].k < 0 {
		shared.k = -1
	}
	// A number comes out only if every term has the same one: 2 a − 4 b stays as it is.
	if size := math.Abs(p[0].k); !slices.ContainsFunc(p, func(t product) bool { return math.Abs(math.Abs(t.k)-size) > vanishing }) {
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
		// π and a number with its unit are printed as they were
		// typed, so they cannot become part of a coefficient.
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
		// A denominator that cancels to nothing cannot be inverted; such a quotient stays one factor.
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
	// The bound keeps decimals that were typed: 0.347 is easier to read than 347/1000.
	for den = 1; den <= 60; den++ {
		if num = k * den; math.Abs(num-math.Round(num)) < whole {
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
			// Only as many as both have: sin² x/cos x is sin x tan x.
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
		// A minus in front of a fraction goes into the bracket: (b − a)/c, not −(a − b)/c.
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
		// Not linear: T², or an angle that is inside a sine or cosine.
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
