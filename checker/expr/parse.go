package expr

// The grammar. Juxtaposition is a product; a slash takes one factor, or on paper
// everything that touches it.
//
//	line     = side { "=" side }
//	side     = sum { ":" sum } [ unit ]
//	sum      = [ sign ] product { sign product }
//	product  = factor { ( "·" | "/" | nothing ) factor }
//	factor   = sign factor | power
//	power    = primary [ "^" [ sign ] power ]
//	primary  = number [ unit ] | letter | "(" sum ")" | "|" sum "|"
//	         | function [ "^" exponent ] argument
//	argument = "(" sum ")" | number [ degree | angle ] | letter | function …
type parser struct {
	letters *Letters
	tokens  []token
	take    choice
	met     choice // the choices that the grammar left open, and those before it

	next  int
	depth int
	bars  int
	slash bool
	past  bool // a function was taken to act on more than the brackets behind it
}

func (p *parser) peekToken() token { return p.tokens[p.next] }

func (p *parser) accept(kind tokenKind) (token, bool) {
	t := p.tokens[p.next]
	if t.kind != kind {
		return t, false
	}
	p.next++
	return t, true
}

func (p *parser) line() (Line, *ReadError) {
	var line Line
	for {
		side, err := p.side()
		if err != nil {
			return line, err
		}
		line.Sides = append(line.Sides, side)
		sign, more := p.accept(tokEquals)
		if !more {
			break
		}
		line.Signs = append(line.Signs, sign.text)
		line.Unequal = line.Unequal || sign.text != "="
	}
	if t := p.peekToken(); t.kind != tokEnd {
		if t.kind == tokNumber && p.next > 0 && p.tokens[p.next-1].kind == tokNumber {
			// Between two numbers a sign was forgotten, as a rule, and this sentence says so.
			return line, unreadable(t.pos, t.end, saidTwoNums)
		}
		return line, unreadable(t.pos, t.end, saidUnexpected(t))
	}
	return line, nil
}

func (p *parser) side() (*Node, *ReadError) {
	n, err := p.sum()
	for err == nil && p.takes(tokRatio) {
		var below *Node
		if below, err = p.sum(); err == nil {
			n = &Node{Op: Div, Args: []*Node{n, below}, Pos: n.Pos, End: below.End}
		}
	}
	if err != nil {
		return nil, err
	}
	// A unit that follows no number of its own belongs to the whole side: 2 sin 30° N.
	if t, ok := p.accept(tokUnit); ok {
		return &Node{Op: Measured, Args: []*Node{n}, Unit: t.text, Pos: n.Pos, End: t.end}, nil
	}
	return n, nil
}

func (p *parser) enter() *ReadError {
	p.depth++
	// Every level takes stack, here and in the evaluation, and a pasted text could end the process.
	if p.depth > maxDepth {
		t := p.peekToken()
		return unreadable(t.pos, t.end, saidDeep)
	}
	return nil
}

func (p *parser) sum() (*Node, *ReadError) {
	if err := p.enter(); err != nil {
		return nil, err
	}
	defer func() { p.depth-- }()
	left, err := p.signed(p.product)
	if err != nil {
		return nil, err
	}
	for {
		op := Add
		if _, ok := p.accept(tokMinus); ok {
			op = Sub
		} else if _, ok := p.accept(tokPlus); !ok {
			return left, nil
		}
		right, err := p.signed(p.product)
		if err != nil {
			return nil, err
		}
		left = &Node{Op: op, Args: []*Node{left, right}, Pos: left.Pos, End: right.End}
	}
}

// signed reads what may have signs in front of it. Two minus signs are none.
func (p *parser) signed(operand func() (*Node, *ReadError)) (*Node, *ReadError) {
	if err := p.enter(); err != nil {
		return nil, err
	}
	defer func() { p.depth-- }()
	if _, ok := p.accept(tokPlus); ok {
		return p.signed(operand)
	}
	if t, ok := p.accept(tokMinus); ok {
		n, err := p.signed(operand)
		if err != nil {
			return nil, err
		}
		// So that −(−w) prints and reads as w, and no tree has two signs in a row.
		if n.Op == Neg {
			return n.Args[0], nil
		}
		return &Node{Op: Neg, Args: []*Node{n}, Pos: t.pos, End: n.End}, nil
	}
	return operand()
}

func (p *parser) product() (*Node, *ReadError) {
	left, err := p.power()
	for err == nil {
		var right *Node
		op := Mul
		switch {
		case p.takes(tokTimes):
			right, err = p.signed(p.power)
		case p.takes(tokSlash):
			op = Div
			right, err = p.denominator(left)
		case p.touches():
			right, err = p.power()
		default:
			return left, nil
		}
		if err == nil {
			left = &Node{Op: op, Args: []*Node{left, right}, Pos: left.Pos, End: right.End}
		}
	}
	return nil, err
}

func (p *parser) takes(kind tokenKind) bool { _, ok := p.accept(kind); return ok }

// touches reports whether a factor follows with no sign between. Two numbers
// side by side are no product.
func (p *parser) touches() bool {
	switch p.peekToken().kind {
	case tokName, tokFunction, tokOpen:
		return true
	case tokBar:
		return p.bars == 0
	case tokNumber:
		before := p.tokens[p.next-1].kind
		return before != tokNumber && before != tokUnit
	}
	return false
}

// denominator reads what a slash divides by. On paper everything that touches
// goes below the line; that reading is the likelier one but behind a bracket
// ("w/(2 sin θ) cos φ") or between two numbers ("1/2 w").
func (p *parser) denominator(above *Node) (*Node, *ReadError) {
	bracket := p.peekToken().kind == tokOpen
	below, err := p.signed(p.power)
	if err != nil || !p.touches() {
		return below, err
	}
	// Only met where something touches: w/2 alone has one reading.
	p.met |= choosePaper
	p.slash = p.slash || !bracket && !(isNumber(above) && isNumber(below))
	for p.take&choosePaper != 0 && (p.touches() || p.takes(tokTimes)) {
		factor, err := p.signed(p.power)
		if err != nil {
			return nil, err
		}
		below = &Node{Op: Mul, Args: []*Node{below, factor}, Pos: below.Pos, End: factor.End}
	}
	return below, nil
}

func isNumber(n *Node) bool { return n.Op == Number && n.Unit == "" }

func (p *parser) power() (*Node, *ReadError) {
	base, err := p.primary()
	if err != nil {
		return nil, err
	}
	if !p.takes(tokPower) {
		return base, nil
	}
	exponent, err := p.signed(p.raised)
	if err != nil {
		return nil, err
	}
	return &Node{Op: Pow, Args: []*Node{base, exponent}, Pos: base.Pos, End: exponent.End}, nil
}

// raised reads an exponent. A unit behind it belongs to the whole ("10^3 N").
func (p *parser) raised() (*Node, *ReadError) {
	if p.peekToken().kind == tokOpen {
		return p.raisedBracket()
	}
	t, ok := p.accept(tokNumber)
	if !ok {
		return p.power()
	}
	n := plainNumber(t)
	if !p.takes(tokPower) {
		return n, nil
	}
	if err := p.enter(); err != nil {
		return nil, err
	}
	defer func() { p.depth-- }()
	exponent, err := p.signed(p.raised)
	if err != nil {
		return nil, err
	}
	return &Node{Op: Pow, Args: []*Node{n, exponent}, Pos: n.Pos, End: exponent.End}, nil
}

// raisedBracket reads an exponent in brackets and leaves a unit behind it alone.
func (p *parser) raisedBracket() (*Node, *ReadError) {
	n, err := p.brackets()
	if err != nil || !p.takes(tokPower) {
		return n, err
	}
	exponent, err := p.signed(p.raised)
	if err != nil {
		return nil, err
	}
	return &Node{Op: Pow, Args: []*Node{n, exponent}, Pos: n.Pos, End: exponent.End}, nil
}

func (p *parser) primary() (*Node, *ReadError) {
	t := p.peekToken()
	switch t.kind {
	case tokNumber:
		return p.quantity(), nil
	case tokName:
		p.next++
		return &Node{Op: Name, Name: t.text, Unknown: t.unknown, Pos: t.pos, End: t.end}, nil
	case tokOpen:
		return p.bracket()
	case tokBar:
		return p.size()
	case tokFunction:
		return p.call()
	}
	return nil, unreadable(t.pos, t.end, saidUnexpected(t))
}

// quantity reads a number and the unit directly behind it.
func (p *parser) quantity() *Node {
	t, _ := p.accept(tokNumber)
	n := plainNumber(t)
	if n.Unit != "" {
		return n
	}
	if u, ok := p.accept(tokUnit); ok {
		n.Unit, n.End = u.text, u.end
	}
	return n
}

// plainNumber is a number without a unit of its own; π is an angle.
func plainNumber(t token) *Node {
	n := &Node{Op: Number, Num: t.num, Pos: t.pos, End: t.end}
	if t.num.Text == "π" {
		n.Unit = "rad"
	}
	return n
}

// bracket reads a bracket and the unit directly behind it.
func (p *parser) bracket() (*Node, *ReadError) {
	inner, err := p.brackets()
	if err != nil {
		return nil, err
	}
	u, ok := p.accept(tokUnit)
	switch {
	case !ok:
		return inner, nil
	case inner.Op == Number && inner.Unit == "":
		inner.Unit, inner.End = u.text, u.end // (31.8) N
		return inner, nil
	}
	return &Node{Op: Measured, Args: []*Node{inner}, Unit: u.text, Pos: inner.Pos, End: u.end}, nil
}

// brackets reads what stands in brackets.
func (p *parser) brackets() (*Node, *ReadError) {
	open, _ := p.accept(tokOpen)
	// Inside brackets a bar opens a size again, whatever is open outside.
	bars := p.bars
	p.bars = 0
	inner, err := p.side()
	p.bars = bars
	if err != nil {
		return nil, err
	}
	closing, ok := p.accept(tokClose)
	if !ok {
		return nil, p.unclosed(open, saidOpen)
	}
	// A letter or number keeps its own place, so that a mark under it does not cover brackets.
	if inner.Op != Name && inner.Op != Number {
		inner.Pos, inner.End = open.pos, closing.end
	}
	return inner, nil
}

func (p *parser) unclosed(open token, message string) *ReadError {
	if t := p.peekToken(); t.kind != tokEnd && t.kind != tokEquals {
		return unreadable(t.pos, t.end, saidUnexpected(t))
	}
	return unreadable(open.pos, open.end, message)
}

func (p *parser) size() (*Node, *ReadError) {
	open, _ := p.accept(tokBar)
	p.bars++
	inner, err := p.sum()
	p.bars--
	if err != nil {
		return nil, err
	}
	closing, ok := p.accept(tokBar)
	if !ok {
		return nil, p.unclosed(open, saidBar)
	}
	return &Node{Op: Size, Args: []*Node{inner}, Pos: open.pos, End: closing.end}, nil
}

// call reads a function with its power ("sin² θ", "sin^-1 0.5") and argument.
func (p *parser) call() (*Node, *ReadError) {
	if err := p.enter(); err != nil {
		return nil, err
	}
	defer func() { p.depth-- }()
	f, _ := p.accept(tokFunction)
	name := f.text
	var exponent *Node
	if p.minusOne() {
		name = inverses[name]
	} else if p.takes(tokPower) {
		var err *ReadError
		if exponent, err = p.exponent(); err != nil {
			return nil, err
		}
		if inverse, ok := inverses[name]; ok && isMinusOne(exponent) {
			name, exponent = inverse, nil
		}
	}
	arg, err := p.argumentOf(name)
	if err != nil {
		return nil, err
	}
	if name == "radians" || name == "degrees" {
		return turned(name, arg, f.pos), nil
	}
	call := &Node{Op: Call, Name: name, Args: []*Node{arg}, Pos: f.pos, End: arg.End}
	if name == "abs" {
		call.Op, call.Name = Size, ""
	}
	if exponent != nil {
		return &Node{Op: Pow, Args: []*Node{call, exponent}, Pos: f.pos, End: arg.End}, nil
	}
	return call, nil
}

// minusOne takes the −1 of "tan-1(0.76)", which makes an inverse of the function. A tangent
// of −1 with something to act on behind it has no meaning.
func (p *parser) minusOne() bool {
	f, sign, one := p.tokens[p.next-1], p.peekToken(), p.tokens[min(p.next+1, len(p.tokens)-1)]
	if inverses[f.text] == "" || sign.kind != tokMinus || one.kind != tokNumber || one.num.Text != "1" || one.pos > sign.end {
		return false
	}
	switch p.tokens[p.next+2].kind {
	case tokOpen, tokName, tokNumber, tokFunction:
		p.next += 2
		return true
	}
	return false
}

// argumentOf reads what a function acts on. An inverse function without brackets acts on the
// whole product or quotient that follows, or on its first factor.
func (p *parser) argumentOf(function string) (*Node, *ReadError) {
	start, bracket := p.next, p.peekToken().kind == tokOpen
	arg, err := p.argument(function)
	if err != nil || isTrig(function) || function == "sqrt" || function == "abs" {
		return arg, err
	}
	slash := p.peekToken().kind == tokSlash
	if !slash && (bracket || !p.touches() && p.peekToken().kind != tokTimes) {
		return arg, nil
	}
	p.met |= chooseArgument
	if bracket == (p.take&chooseArgument == 0) {
		return arg, nil
	}
	p.past = p.past || bracket
	p.next = start
	return p.product()
}

// turned is the angle of a number of degrees or radians, radians(40) and degrees(0.7).
func turned(function string, arg *Node, pos int) *Node {
	unit := map[string]string{"radians": "deg", "degrees": "rad"}[function]
	if arg.Op == Number && arg.Unit == "" {
		arg.Unit, arg.Pos = unit, pos
		return arg
	}
	return &Node{Op: Measured, Args: []*Node{arg}, Unit: unit, Pos: pos, End: arg.End}
}

func isMinusOne(n *Node) bool {
	return n.Op == Neg && n.Args[0].Op == Number && n.Args[0].Num.Value == 1
}

func (p *parser) exponent() (*Node, *ReadError) {
	return p.signed(func() (*Node, *ReadError) {
		t := p.peekToken()
		switch t.kind {
		case tokNumber:
			p.next++
			return plainNumber(t), nil
		case tokOpen:
			return p.bracket()
		}
		return nil, unreadable(t.pos, t.end, saidUnexpected(t))
	})
}

// argument reads what a function without brackets acts on: one factor. A unit
// that is no angle's belongs to the whole product ("14 sin 30 N").
func (p *parser) argument(function string) (*Node, *ReadError) {
	t := p.peekToken()
	switch t.kind {
	case tokOpen:
		return p.bracket()
	case tokName:
		return p.primary()
	case tokFunction:
		return p.call()
	case tokBar:
		if p.bars == 0 {
			return p.size()
		}
	case tokMinus:
		return p.signed(func() (*Node, *ReadError) { return p.argument(function) })
	case tokNumber:
		return p.numberArgument(function), nil
	}
	if t.kind == tokEnd {
		return nil, unreadable(t.pos, t.end, saidArgument)
	}
	return nil, unreadable(t.pos, t.end, saidUnexpected(t))
}

func (p *parser) numberArgument(function string) *Node {
	t, _ := p.accept(tokNumber)
	n := &Node{Op: Number, Num: t.num, Pos: t.pos, End: t.end}
	if t.num.Text == "π" {
		n.Unit = "rad"
	}
	if u := p.peekToken(); u.kind == tokUnit && (u.text == "deg" || u.text == "rad") {
		p.next++
		n.Unit, n.End = u.text, u.end
		return n
	}
	// "sin 2θ" is the sine of twice the angle, "sin 35 T1" is no such thing.
	name := p.peekToken()
	if name.kind == tokName && p.letters.Kind(name.text) == Angle && isTrig(function) {
		p.next++
		angle := &Node{Op: Name, Name: name.text, Pos: name.pos, End: name.end}
		return &Node{Op: Mul, Args: []*Node{n, angle}, Pos: n.Pos, End: angle.End}
	}
	return n
}
