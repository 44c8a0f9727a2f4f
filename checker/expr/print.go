package expr

import (
	"slices"
	"strings"
)

// Print writes the line as one line of mathematics that reads in again as the
// same tree: real minus signs, degree marks, no sign between factors that cannot
// be mistaken.
func (l *Letters) Print(line Line) string {
	text := l.print(line, false)
	if !l.hasDoubtful(line) {
		return text
	}
	// A symbol that is a letter as well stays where it is read as the unit again.
	if again, err := l.Read(text); err == nil && EqualLines(again.Lines[0], line) {
		return text
	}
	return l.print(line, true)
}

func (l *Letters) print(line Line, words bool) string {
	sides := make([]string, len(line.Sides))
	for i, s := range line.Sides {
		sides[i] = l.printSide(s, words)
	}
	if !line.Unequal || len(line.Signs) != len(sides)-1 {
		return strings.Join(sides, " = ")
	}
	text := sides[0]
	for i, sign := range line.Signs {
		text += " " + sign + " " + sides[i+1]
	}
	return text
}

// hasDoubtful reports whether a unit of the line is one of the problem's letters, too.
func (l *Letters) hasDoubtful(line Line) bool {
	return slices.ContainsFunc(line.Sides, func(side *Node) bool {
		found := false
		side.Walk(func(n *Node) {
			_, isLetter := l.typed[n.Unit]
			found = found || n.Unit != "" && isLetter
		})
		return found
	})
}

// PrintNode writes one side.
func (l *Letters) PrintNode(n *Node) string { return l.printSide(n, false) }

func (l *Letters) printSide(n *Node, words bool) string {
	p := printer{letters: l, name: Glyph}
	p.words = words || len(n.Names()) > 0
	return p.print(n, BindsSum)
}

// Binding is how strongly an expression holds together, and what a place in another
// one asks of what stands there without brackets.
type Binding uint8

// From the weakest to the strongest.
const (
	BindsSum Binding = iota
	BindsProduct
	BindsPower
	BindsAtom
)

// printer holds how letters are written, whether a unit must be written as a word
// because its symbol would read as a letter on this side, and whether bars are open.
type printer struct {
	letters *Letters
	name    func(string) string
	words   bool
	barred  bool
}

func bindingOf(n *Node) Binding {
	switch n.Op {
	case Add, Sub, Neg:
		return BindsSum
	case Mul, Div:
		return BindsProduct
	case Pow, Call:
		return BindsPower
	}
	return BindsAtom
}

// NeedsBrackets reports whether the node may stand at such a place in brackets only:
// it binds less, or a unit behind it would seem to belong to the whole.
func (n *Node) NeedsBrackets(place Binding) bool {
	measured := n.Op == Number && n.Unit != "" && n.Unit != "deg" && place > BindsSum
	return bindingOf(n) < place || measured
}

// print writes the node, in brackets if it binds less than the place asks for.
func (p printer) print(n *Node, place Binding) string {
	text := p.bare(n)
	if n.NeedsBrackets(place) {
		return "(" + text + ")"
	}
	return text
}

func (p printer) bare(n *Node) string {
	switch n.Op {
	case Number:
		if n.Num.Text == "π" {
			return n.Num.Text
		}
		return n.Num.Text + p.unit(n.Unit)
	case Name:
		return p.name(n.Name)
	case Neg:
		return "−" + p.print(n.Args[0], BindsProduct)
	case Add:
		return p.leftOf(n) + " + " + p.print(n.Args[1], BindsProduct)
	case Sub:
		return p.leftOf(n) + " − " + p.print(n.Args[1], BindsProduct)
	case Mul:
		return p.product(n)
	case Div:
		return p.leftFactor(n.Args[0]) + "/" + p.print(n.Args[1], BindsPower)
	case Pow:
		return p.power(n)
	case Call:
		return p.call(n.Name, "", n.Args[0])
	case Size:
		return p.size(n.Args[0])
	}
	return "(" + p.print(n.Args[0], BindsSum) + ")" + p.unit(n.Unit)
}

// size writes bars, and abs( ) where bars inside bars could not be told apart.
func (p printer) size(n *Node) string {
	if p.barred {
		return "abs(" + p.bare(n) + ")"
	}
	p.barred = true
	return "|" + p.bare(n) + "|"
}

func (p printer) leftOf(n *Node) string { return p.print(n.Args[0], BindsSum) }

// leftFactor writes the first factor of a product or quotient.
func (p printer) leftFactor(n *Node) string {
	return p.print(n, BindsProduct)
}

// product writes two factors side by side where that cannot be misread, with a
// raised dot where it could: between numbers, in front of a number, in front of
// a letter that is a unit's symbol as well.
func (p printer) product(n *Node) string {
	a, b := n.Args[0], n.Args[1]
	left := p.leftFactor(a)
	if endsInQuotient(a) {
		left = "(" + left + ")"
	}
	right := p.print(b, BindsPower)
	if last(a).Op == Number && b.Op == Pow && b.Args[0].Op == Number {
		right = "(" + right + ")" // 3·(10²) is no 3×10^2
	}
	if needsDot(a, b, right) || strings.HasSuffix(left, ")") && leftmost(b).Op == Name && mayBeUnit(leftmost(b).Name) {
		return left + "·" + right
	}
	return left + " " + right
}

func endsInQuotient(n *Node) bool { return n.Op == Div }

func needsDot(a, b *Node, right string) bool {
	if strings.HasPrefix(right, "(") || strings.HasPrefix(right, "|") {
		return last(a).Op == Call || last(a).Op == Number && b.Op == Measured // 1·(m) gram, not 1 (metre)
	}
	if b.Op == Number || b.Op == Measured || b.Op == Pow && leftmost(b).Op == Number {
		return true
	}
	if last(a).Op != Number {
		return false
	}
	first := leftmost(b)
	return first.Op == Name && mayBeUnit(first.Name) || len(last(a).Unit) > 0 && last(a).Unit != "deg"
}

// last is the node that is printed last, the one that a following factor touches.
func last(n *Node) *Node {
	for n.Op == Mul || n.Op == Div || n.Op == Pow || n.Op == Neg {
		n = n.Args[len(n.Args)-1]
	}
	return n
}

func leftmost(n *Node) *Node {
	for n.Op == Pow || n.Op == Mul || n.Op == Div {
		n = n.Args[0]
	}
	return n
}

func mayBeUnit(name string) bool {
	lower := strings.ToLower(name)
	for _, s := range unitSpellings {
		if strings.ToLower(string(s)) == lower {
			return true
		}
	}
	return lower == "e" || lower == "x"
}

func (p printer) power(n *Node) string {
	base, exponent := n.Args[0], n.Args[1]
	raised := raise(exponent)
	if base.Op == Call && base.Name != "sqrt" && raised != "" && raised != "⁻¹" {
		return p.call(base.Name, raised, base.Args[0])
	}
	text := p.print(base, BindsAtom)
	if base.Op == Number && base.Unit != "" {
		text = "(" + p.bare(base) + ")"
	}
	if raised != "" {
		return text + raised
	}
	return text + "^" + p.exponent(exponent)
}

func (p printer) exponent(n *Node) string {
	if n.Op == Name || n.Op == Number && n.Unit == "" && !strings.Contains(n.Num.Text, "×") {
		return p.bare(n)
	}
	return "(" + p.bare(n) + ")"
}

// raise writes a small whole exponent as raised digits, "" if it is none.
func raise(n *Node) string {
	sign := ""
	if n.Op == Neg {
		sign, n = "⁻", n.Args[0]
	}
	if n.Op != Number || n.Unit != "" || len(n.Num.Text) > 2 || strings.Trim(n.Num.Text, "0123456789") != "" {
		return ""
	}
	raised := []rune(superscripts)
	if n.Num.Text == "0" {
		return "" // a raised nought behind a number would be a degree sign
	}
	var b strings.Builder
	b.WriteString(sign)
	for _, d := range n.Num.Text {
		b.WriteRune(raised[d-'0'])
	}
	return b.String()
}

func (p printer) call(name, raised string, arg *Node) string {
	if name == "sqrt" {
		return "√(" + p.bare(arg) + ")"
	}
	simple := arg.Op == Name || arg.Op == Number && arg.Unit == "deg"
	if simple && isTrig(name) {
		return name + raised + " " + p.bare(arg)
	}
	return name + raised + "(" + p.bare(arg) + ")"
}

// unit writes a unit behind a number. Where the symbol is one of the problem's
// letters and other letters stand on the same side, the word is written.
func (p printer) unit(symbol string) string {
	switch symbol {
	case "":
		return ""
	case "deg":
		return "°"
	}
	if _, exact, ok := p.letters.resolve(symbol); ok && exact && (p.words || symbol != "N") {
		if word, found := unitWords[symbol]; found {
			return " " + word
		}
	}
	return " " + symbol
}

var unitWords = map[string]string{"N": "newtons", "m": "metre", "g": "grams", "s": "seconds"}
