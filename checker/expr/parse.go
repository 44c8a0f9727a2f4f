package expr

import (
	"slices"
	"strings"
)

// The grammar. Juxtaposition is a product; a slash takes one factor, or on paper
// everything that touches it.
//
//	line     = side { "=" side }
//	side     = sum [ unit ]
//	sum      = [ sign ] product { sign product }
//	product  = factor { ( "·" | "/" | nothing ) factor }
//	factor   = sign factor | power
//	power    = primary [ "^" [ sign ] power ]
//	primary  = number [ unit ] | letter | "(" sum ")" | "|" sum "|"
//	         | function [ "^" exponent ] argument
//	argument = "(" sum ")" | number [ degree | angle ] | letter | function …
type parser struct {
	*scanner
	next  int
	depth int
	bars  int
	slash bool
}

// Read reads one line: an expression, an equation or a chain of equations. The
// error is a *ReadError. Unknown letters are no error here; their nodes say so.
func (l *Letters) Read(text string) (Reading, error) {
	clean := Clean(text)
	reading := Reading{Text: clean}
	runes := []rune(l.withoutInnerNames(clean))
	if len(runes) > maxLength {
		return reading, &ReadError{Text: string(runes[:maxLength]), Pos: maxLength, End: maxLength, Message: saidLong}
	}
	if strings.Trim(clean, " .") == "" {
		return reading, &ReadError{Text: clean, Message: saidEmpty}
	}
	first, met, err := l.readAs(runes, 0)
	if err == nil {
		reading.Lines = append(reading.Lines, first)
	}
	for take := choice(1); take <= allChoices; take++ {
		if take&^met != 0 {
			continue
		}
		if line, _, again := l.readAs(runes, take); again == nil && reading.isNew(line) {
			reading.add(line)
		}
	}
	if len(reading.Lines) == 0 {
		err.Text = clean
		return reading, err
	}
	return reading, nil
}

func (r *Reading) isNew(line Line) bool {
	for _, have := range r.Lines {
		if EqualLines(have, line) {
			return false
		}
	}
	return true
}

// add puts a reading in its place: on paper a slash between letters has all that
// touches it below the line, so that reading comes first.
func (r *Reading) add(line Line) {
	r.Lines = append(r.Lines, line)
	n := len(r.Lines)
	if line.Paper && line.Slash && n == 2 {
		r.Lines[0], r.Lines[1] = r.Lines[1], r.Lines[0]
	}
}

// readAs reads with the given choices taken and says which ones there were.
func (l *Letters) readAs(runes []rune, take choice) (Line, choice, *ReadError) {
	start := len([]rune(lead.FindString(string(runes))))
	s := &scanner{letters: l, runes: runes, take: take}
	skip, axis := s.sumLabel(string(runes[start:]))
	s.at = start + skip
	if err := s.scan(); err != nil {
		return Line{}, s.met, err.(*ReadError)
	}
	s.trim()
	s.settle()
	p := &parser{scanner: s}
	line, err := p.line()
	if err != nil {
		return Line{}, p.met, err
	}
	line.Axis = axis
	line.Paper = take&choosePaper != 0
	line.Named = axis != "" && take&chooseName != 0
	line.Slash = p.slash
	degrees(line.Sides, l)
	return line, p.met, nil
}

// trim drops an equals sign or arrow at the start of a line, which only joins it
// to the one above, and a degree sign behind an angle's letter, which says nothing;
// and it takes an x that is between no two factors for a letter.
func (s *scanner) trim() {
	for len(s.tokens) > 2 && s.tokens[0].kind == tokEquals {
		s.tokens = s.tokens[1:]
	}
	for i := len(s.tokens) - 1; i > 0; i-- {
		if t, before := s.tokens[i], s.tokens[i-1]; t.kind == tokUnit && t.text == "deg" &&
			before.kind == tokName && s.letters.Kind(before.text) == Angle {
			s.tokens = slices.Delete(s.tokens, i, i+1)
		}
	}
	for i, t := range s.tokens {
		if t.kind != tokTimes || s.runes[t.pos] != 'x' && s.runes[t.pos] != 'X' {
			continue
		}
		switch s.tokens[i+1].kind {
		case tokEquals, tokEnd, tokPlus, tokMinus, tokClose, tokPower:
			s.tokens[i] = token{kind: tokName, text: "x", unknown: true, pos: t.pos, end: t.end}
		}
	}
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
		if _, more := p.accept(tokEquals); !more {
			break
		}
	}
	if t := p.peekToken(); t.kind != tokEnd {
		if t.kind == tokNumber && p.next > 0 && p.tokens[p.next-1].kind == tokNumber {
			return line, unreadable(t.pos, t.end, saidTwoNums)
		}
		return line, unreadable(t.pos, t.end, saidUnexpected(t))
	}
	return line, nil
}

func (p *parser) side() (*Node, *ReadError) {
	n, err := p.sum()
	if err != nil {
		return nil, err
	}
	if t, ok := p.accept(tokUnit); ok {
		return &Node{Op: Measured, Args: []*Node{n}, Unit: t.text, Pos: n.Pos, End: t.end}, nil
	}
	return n, nil
}

func (p *parser) enter() *ReadError {
	p.depth++
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

func (p *parser) bracket() (*Node, *ReadError) {
	open, _ := p.accept(tokOpen)
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
	if u, ok := p.accept(tokUnit); ok {
		return &Node{Op: Measured, Args: []*Node{inner}, Unit: u.text, Pos: open.pos, End: u.end}, nil
	}
	if inner.Op == Name || inner.Op == Number {
		return inner, nil
	}
	inner.Pos, inner.End = open.pos, closing.end
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
	if p.takes(tokPower) {
		var err *ReadError
		if exponent, err = p.exponent(); err != nil {
			return nil, err
		}
		if inverse, ok := inverses[name]; ok && isMinusOne(exponent) {
			name, exponent = inverse, nil
		}
	}
	arg, err := p.argument(name)
	if err != nil {
		return nil, err
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

var inverses = map[string]string{"sin": "asin", "cos": "acos", "tan": "atan"}

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

func isTrig(function string) bool {
	switch function {
	case "sin", "cos", "tan", "cot", "sec", "csc":
		return true
	}
	return false
}
