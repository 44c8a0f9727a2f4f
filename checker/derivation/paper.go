package derivation

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
)

// Page is the paper on which trees of a system are written, with numbers where they are wanted.
type Page struct{ solved *solved.System }

// On returns a page for the system.
func On(s *solved.System) Page { return Page{s} }

// lengthAngles lists the angles that are given by lengths, asin(a/c), each once.
func (p Page) lengthAngles() []*expr.Node {
	var found []*expr.Node
	add := func(tree *expr.Node) {
		if tree == nil || !p.IsLengthAngle(tree) {
			return
		}
		if !slices.ContainsFunc(found, func(n *expr.Node) bool { return expr.Equal(n, tree) }) {
			found = append(found, tree)
		}
	}
	for b := range p.solved.Bodies {
		for i := range p.solved.Bodies[b].Forces {
			add(p.solved.Bodies[b].Forces[i].Angle)
			add(p.solved.Bodies[b].Forces[i].Direction)
		}
	}
	return found
}

// IsLengthAngle reports whether a tree is a fixed angle with a function in it.
func (p Page) IsLengthAngle(tree *expr.Node) bool {
	call := false
	tree.Walk(func(n *expr.Node) { call = call || n.Op == expr.Call })
	return call && p.solved.Fixed(tree) && p.numbered(tree, nil)
}

// Tidy writes the angles that are known from lengths as numbers.
func (p Page) Tidy(n *expr.Node) *expr.Node {
	if n.Op == expr.Call && p.IsLengthAngle(n.Args[0]) {
		return expr.Apply(n.Name, p.AngleNumber(n.Args[0]))
	}
	// The tree is shared with all who use the reference, so only a copy may be changed.
	c := *n
	c.Args = make([]*expr.Node, len(n.Args))
	for i, a := range n.Args {
		c.Args[i] = p.Tidy(a)
	}
	return &c
}

func (p Page) AngleNumber(tree *expr.Node) *expr.Node {
	degrees, _ := quantity.Find("deg")
	return number(p.solved.ProgramOf(tree).Run(p.solved.Values), degrees, 3)
}

func (p Page) angleChain(tree *expr.Node) string {
	return p.Write(tree) + " = " + p.Write(p.Insert(tree, nil, 3)) + " = " + p.Write(p.AngleNumber(tree))
}

// numbered reports whether every letter of a tree has a value: the givens with a
// number, what is computed from them, and the unknowns that are found.
func (p Page) numbered(tree *expr.Node, found map[string]bool) bool {
	for _, name := range tree.Names() {
		v, ok := p.solved.Model.Variable(name)
		switch {
		case !ok:
			return false
		case found[name]:
		case v.Role == statics.IsUnknown:
			return false
		case v.Role == statics.IsDerived && !p.numbered(v.Size, found):
			return false
		case v.Role == statics.IsGiven:
			if g, _ := p.solved.Given(name); g.Any {
				return false
			}
		}
	}
	return true
}

// Insert puts the numbers in the place of the letters that have one. Givens stand
// as they were given, but masses in kilograms; everything else with so many figures.
func (p Page) Insert(n *expr.Node, found map[string]bool, figures int) *expr.Node {
	if n.Op == expr.Name && p.numbered(n, found) {
		return inKilograms(p.numberOf(n.Name, figures))
	}
	c := *n
	if num, err := quantity.ParseNumber(n.Num.Text); err == nil && n.Unit != "" {
		c.Num = num // in SI, whatever units the reference computes in
	}
	c.Args = make([]*expr.Node, len(n.Args))
	for i, a := range n.Args {
		c.Args[i] = p.Insert(a, found, figures)
	}
	return &c
}

func (p Page) numberOf(name string, figures int) *expr.Node {
	// A force whose size is a given letter has the given's own number, with the figures that were typed.
	if v, _ := p.solved.Model.Variable(name); v.Role == statics.IsDerived && v.Size.Op == expr.Name {
		return p.numberOf(v.Size.Name, figures)
	}
	g, given := p.solved.Given(name)
	if !given {
		value, _ := p.solved.InSI(name)
		return number(value, p.solved.Unit(name), figures)
	}
	n := &expr.Node{Op: expr.Number, Num: g.Number, Unit: unitSymbol(g.Unit)}
	if g.Minus {
		return expr.Minus(n)
	}
	return n
}

// inKilograms writes grams as kilograms, with the same figures: beside m/s² a mass has to be
// in kilograms, and 200 g · g would have two meanings of g.
func inKilograms(n *expr.Node) *expr.Node {
	if n.Op != expr.Number || n.Unit != "g" {
		return n
	}
	_, decimals, _ := strings.Cut(n.Num.Text, ".")
	num, err := quantity.ParseNumber(strconv.FormatFloat(n.Num.Value/1000, 'f', len(decimals)+3, 64))
	if err != nil {
		return n
	}
	return &expr.Node{Op: expr.Number, Num: num, Unit: "kg"}
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

// Write prints a tree as on paper: subscripts, and a raised dot beside a quantity
// instead of brackets round it.
func (p Page) Write(n *expr.Node) string {
	text := p.solved.LettersFor("").PrintNode(n)
	names := n.Names()
	// The replacer takes the first name that fits, so T1 must come before T.
	slices.SortFunc(names, func(a, b string) int { return len(b) - len(a) })
	var pairs []string
	for _, name := range names {
		pairs = append(pairs, expr.Glyph(name), expr.Set(name))
	}
	text = unbracket(strings.NewReplacer(pairs...).Replace(text))
	text = spelledLength().ReplaceAllString(text, "$1 m")
	return strings.ReplaceAll(text, "m/s^2", "m/s²")
}

// spelledLength is a length whose unit was spelled out, because m is a letter of the problem; a
// number with a space before the m is read as a length on paper.
var spelledLength = pattern.Of(`(\d) metre\b`)

var bracketed = pattern.Of(`\((\d[\d.×^e-]*) ([A-Za-z/^0-9]+)\)`)

// unbracket takes the brackets off a quantity that is a factor: "(31.4 N) cos 35°"
// becomes "31.4 N · cos 35°". Behind a slash or a function they stay, and under an
// exponent.
func unbracket(text string) string {
	done := ""
	for {
		at := bracketed().FindStringSubmatchIndex(text)
		if at == nil {
			return done + text
		}
		done += text[:at[0]]
		inner := text[at[2]:at[5]]
		_, isUnit := quantity.Find(text[at[4]:at[5]])
		text = text[at[1]:]
		if !isUnit || holdsBrackets().MatchString(done) || isPower().MatchString(text) {
			done += "(" + inner + ")"
			continue
		}
		// Behind “=” or “+” the quantity multiplies nothing, so there is no dot.
		if head := strings.TrimRight(done, " ·"); head != done && head != "" && !endsInSign().MatchString(head) {
			done = head + " · "
		}
		done += inner
		if rest := strings.TrimLeft(text, " ·"); rest != text && rest != "" && !startsWithSign().MatchString(rest) {
			text = " · " + rest
		}
	}
}

var (
	endsInSign     = pattern.Of(`[+−=(]$`)
	startsWithSign = pattern.Of(`^[+−=)]`)
	holdsBrackets  = pattern.Of(`[/\p{L}]$`)
	isPower        = pattern.Of(`^[²³^⁴-⁹⁻]`)
)
