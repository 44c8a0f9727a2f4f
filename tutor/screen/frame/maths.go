package frame

import (
	"strings"

	"example.org/standstill/checker/expr"
)

// Block is a piece of a formula: lines of one width, of which one is the base line
// along which pieces are joined.
type Block struct {
	lines []string
	base  int
}

func (b Block) width() int { return TextWidth(b.lines[0]) }

// typesetter lays formulas out. With stacked, a quotient is a fraction of three
// lines wherever neither of its halves holds another.
type typesetter struct {
	look    *Look
	stacked bool
}

// Formulas lays out a read-back with stacked fractions: one block for each formula in it,
// nil where it cannot be read again.
func (l *Look) Formulas(letters *expr.Letters, echo string) []Block {
	return layOut(letters, echo, typesetter{l, true})
}

// Flat sets a read-back in one line; "" where it cannot be read again.
func (l *Look) Flat(letters *expr.Letters, echo string) string {
	var parts []string
	for _, b := range layOut(letters, echo, typesetter{l, false}) {
		parts = append(parts, b.lines[0])
	}
	return strings.Join(parts, "; ")
}

// SideBySide is the lines of formulas beside one another, and how wide they are; none
// without a formula.
func (l *Look) SideBySide(formulas []Block) (lines []string, width int) {
	if len(formulas) == 0 {
		return nil, 0
	}
	t := typesetter{l, true}
	var b Block
	for i, f := range formulas {
		if i > 0 {
			b = t.join(b, t.word(";   "))
		}
		b = t.join(b, f)
	}
	return b.lines, b.width()
}

func layOut(letters *expr.Letters, echo string, t typesetter) []Block {
	var blocks []Block
	for _, part := range strings.Split(echo, "; ") {
		reading, err := letters.Read(part)
		if err != nil {
			return nil
		}
		blocks = append(blocks, t.line(reading.Lines[0]))
	}
	return blocks
}

// line lays out an equation, a chain or an expression.
func (t typesetter) line(line expr.Line) Block {
	var b Block
	for i, side := range line.Sides {
		if i > 0 {
			b = t.join(b, t.word(" = "))
		}
		b = t.join(b, t.node(side))
	}
	if line.Axis != "" {
		b = t.join(t.word("ΣF"+line.Axis+": "), b)
	}
	return b
}

func (t typesetter) word(text string) Block { return Block{lines: []string{t.look.Letters(text)}} }

// join sets two blocks side by side on their base lines.
func (t typesetter) join(a, b Block) Block {
	if a.lines == nil { // nothing was set yet
		return b
	}
	above := max(a.base, b.base)
	below := max(len(a.lines)-a.base, len(b.lines)-b.base)
	out := Block{lines: make([]string, above+below), base: above}
	for i := range out.lines {
		out.lines[i] = lineOf(a, i-above+a.base) + lineOf(b, i-above+b.base)
	}
	return out
}

func lineOf(b Block, i int) string {
	if i >= 0 && i < len(b.lines) {
		return b.lines[i]
	}
	return strings.Repeat(" ", b.width())
}

// inside lays out a node, in brackets where it binds less than its place asks.
func (t typesetter) inside(n *expr.Node, place expr.Binding) Block {
	b := t.node(n)
	if n.Op == expr.Div && len(b.lines) > 1 && place <= expr.BindsProduct {
		return b // the bar holds it together
	}
	if n.NeedsBrackets(place) {
		return t.bracketed(b)
	}
	return b
}

func (t typesetter) node(n *expr.Node) Block {
	switch n.Op {
	case expr.Number:
		return t.word(n.Num.Text + unitText(n.Unit))
	case expr.Name:
		return t.word(OnPaper(n.Name))
	case expr.Neg:
		return t.join(t.word("−"), t.inside(n.Args[0], expr.BindsProduct))
	case expr.Add:
		return t.between(n, " + ", expr.BindsSum, expr.BindsProduct)
	case expr.Sub:
		return t.between(n, " − ", expr.BindsSum, expr.BindsProduct)
	case expr.Mul:
		return t.between(n, factorSign(n), expr.BindsProduct, expr.BindsPower)
	case expr.Div:
		return t.quotient(n)
	case expr.Pow:
		return t.power(n)
	case expr.Call:
		return t.call(n)
	case expr.Size:
		return t.join(t.join(t.word("|"), t.node(n.Args[0])), t.word("|"))
	}
	// Brackets with a unit behind them, as in (12 + 3) N.
	return t.join(t.bracketed(t.node(n.Args[0])), t.word(unitText(n.Unit)))
}

func (t typesetter) between(n *expr.Node, sign string, left, right expr.Binding) Block {
	return t.join(t.join(t.inside(n.Args[0], left), t.word(sign)), t.inside(n.Args[1], right))
}

// factorSign is what stands between two factors: a raised dot in front of a
// number, where a space could be misread.
func factorSign(n *expr.Node) string {
	right := n.Args[1]
	for right.Op == expr.Pow || right.Op == expr.Mul || right.Op == expr.Div {
		right = right.Args[0]
	}
	if right.Op == expr.Number {
		return "·"
	}
	return " "
}

// quotient is a stacked fraction where that takes three lines, else a slash.
func (t typesetter) quotient(n *expr.Node) Block {
	over, under := t.node(n.Args[0]), t.node(n.Args[1])
	if !t.stacked || len(over.lines) > 1 || len(under.lines) > 1 {
		flat := typesetter{t.look, false}
		return flat.between(n, "/", expr.BindsProduct, expr.BindsPower)
	}
	// A cell on each side: without it, the bars of two fractions side by side would be one line.
	width := max(over.width(), under.width()) + 2
	bar := strings.Repeat(t.look.Signs.bar, width)
	return Block{lines: []string{centred(over.lines[0], width), bar, centred(under.lines[0], width)}, base: 1}
}

func centred(text string, width int) string {
	free := width - TextWidth(text)
	return strings.Repeat(" ", free/2) + text + strings.Repeat(" ", free-free/2)
}

func (t typesetter) power(n *expr.Node) Block {
	base := t.inside(n.Args[0], expr.BindsAtom)
	if n.Args[1].Op == expr.Number && n.Args[1].Unit == "" && len(base.lines) == 1 {
		if raised := raisedDigits(n.Args[1].Num.Text); raised != "" {
			return t.join(base, t.word(raised))
		}
	}
	// A stacked fraction in an exponent would need rows above the base line that no other piece has.
	flat := typesetter{t.look, false}
	return t.join(t.join(base, t.word("^")), flat.inside(n.Args[1], expr.BindsAtom))
}

func raisedDigits(digits string) string {
	var b strings.Builder
	raised := []rune("⁰¹²³⁴⁵⁶⁷⁸⁹")
	for _, d := range digits {
		if d < '0' || d > '9' {
			return ""
		}
		b.WriteRune(raised[d-'0'])
	}
	return b.String()
}

func (t typesetter) call(n *expr.Node) Block {
	arg := n.Args[0]
	if n.Name == "sqrt" {
		return t.join(t.word("√"), t.bracketed(t.node(arg)))
	}
	if arg.Op == expr.Name || arg.Op == expr.Number && arg.Unit == "deg" {
		return t.join(t.word(n.Name+" "), t.node(arg))
	}
	return t.join(t.word(n.Name), t.bracketed(t.node(arg)))
}

// bracketed puts brackets as high as the block around it.
func (t typesetter) bracketed(b Block) Block {
	if len(b.lines) == 1 {
		return t.join(t.join(t.word("("), b), t.word(")"))
	}
	left, right := [3]string{"⎛", "⎜", "⎝"}, [3]string{"⎞", "⎟", "⎠"}
	if t.look.Ascii {
		left, right = [3]string{"/", "|", `\`}, [3]string{`\`, "|", "/"}
	}
	return t.join(t.join(tall(left, b), b), tall(right, b))
}

func tall(ends [3]string, b Block) Block {
	out := Block{base: b.base}
	for i := range b.lines {
		switch i {
		case 0:
			out.lines = append(out.lines, ends[0])
		case len(b.lines) - 1:
			out.lines = append(out.lines, ends[2])
		default:
			out.lines = append(out.lines, ends[1])
		}
	}
	return out
}

func unitText(symbol string) string {
	switch symbol {
	case "", "none":
		return ""
	case "deg":
		return "°"
	case "m/s^2":
		return " m/s²"
	}
	return " " + symbol
}
