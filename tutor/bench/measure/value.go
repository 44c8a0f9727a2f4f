package measure

import (
	"math"
	"slices"

	"example.org/standstill/checker/quantity"
)

// Grammar of a measured value:
//
//	value    = [ estimate ] { quality }
//	estimate = number [unit]                      one reading
//	         | number { ";" number } unit         repeated readings
//	         | number "to" number unit            the band within which pulleys hold the ring still
//	quality  = ("±" | "+-" | "+/-") amount        a half-width
//	         | "u" amount                         a standard uncertainty
//	         | "U" amount                         an expanded uncertainty, k = 2
//	         | "k" ["="] number                   makes ± an expanded uncertainty, or gives U its k
//	         | "div" amount                       the smallest division of the scale
//	         | "zero" amount                      the reading with nothing on
//	         | "max" amount | amount "max"        a rating
//	         | "exact"
//	amount   = number [unit] | number "%"
//
// Brackets round a quality, or round estimate and quality, do no harm. 20°30' is a
// number of degrees. A unit that is left out is that of the estimate, or, where the estimate has
// none, that of the first quality: "0.500 ± 0.005 kg". The decimal comma is a
// decimal point everywhere. 0.500(5) kg has a standard uncertainty of 0.005 kg
// (GUM 7.2.2). A second "div", or one after a "zero" that follows the first, is
// that of the zero reading; without it the first serves both.

// Cause is where a part of an uncertainty comes from.
type Cause uint8

// The causes.
const (
	Repeats      Cause = iota // the spread of repeated readings (Type A)
	HalfWidth                 // limits that were stated
	Standard                  // a standard uncertainty that was stated
	Expanded                  // an expanded uncertainty that was stated
	Division                  // the smallest division of a scale
	ZeroDivision              // the same, of the reading with nothing on
	Band                      // within which pulleys hold the ring still
)

// Part is one independent reason why a value is unsure. Half is the half-width of
// a rectangular part, 0 for the others. Nu is the degrees of freedom, 0 for
// without limit. K is the factor of an expanded uncertainty that was stated.
type Part struct {
	Cause Cause
	U     float64
	Half  float64
	Nu    int
	K     float64
}

// Rectangular is the part of a half-width: u = a/√3 (GUM 4.3.7).
func Rectangular(c Cause, half float64) Part {
	return Part{Cause: c, U: half / math.Sqrt(3), Half: half}
}

// Value is a measured value as it was typed and what was taken from it. Estimate,
// Zero and Rating are in SI; Estimate has the zero reading taken off. Measured is
// false for a text that states nothing but a rating.
type Value struct {
	Typed    string
	Unit     quantity.Unit
	Measured bool
	Readings []float64
	Estimate float64
	Zero     float64
	Zeroed   bool
	Parts    []Part
	Rating   float64
	Rated    bool
	// AssumedDivision says that no quality of the scale was given, and the last typed
	// place was taken for its division.
	AssumedDivision bool
	numeral         string // a single reading as typed
}

// U is the standard uncertainty, in SI.
func (v Value) U() float64 {
	sum := 0.0
	for _, p := range v.Parts {
		sum += p.U * p.U
	}
	return math.Sqrt(sum)
}

// AssumedSize is the division that was assumed from the last typed place, in SI.
func (v Value) AssumedSize() float64 {
	for _, p := range v.Parts {
		if p.Cause == Division && v.AssumedDivision {
			return 2 * p.Half
		}
	}
	return 0
}

func (v Value) has(c Cause) bool {
	return slices.ContainsFunc(v.Parts, func(p Part) bool { return p.Cause == c })
}

// Want is what a value is for: Name as it is said ("T1"), what it must measure and
// in which unit it is usually given.
type Want struct {
	Name string
	Dim  quantity.Dimension
	Unit quantity.Unit
}

// Read reads a measured value. why is one sentence for the student where it
// cannot be read, and "" else.
func Read(text string, want Want) (v Value, why string) {
	tokens, why := scan(text)
	if why != "" {
		return Value{}, why
	}
	p := &parser{tokens: tokens, want: want}
	p.value()
	if p.why != "" {
		return Value{}, p.why
	}
	return p.finish(text)
}

// parser reads the tokens of one value; the first thing that is wrong stands in
// why.
type parser struct {
	tokens    []token
	at        int
	want      Want
	why       string
	readings  []amount
	band      bool
	qualities map[string]amount
	zeroDiv   *amount
}

// amount is a number with its unit; hasUnit is false where it stood without one.
type amount struct {
	token
	unit    quantity.Unit
	hasUnit bool
	percent bool
}

func (p *parser) peek() token {
	if p.at < len(p.tokens) {
		return p.tokens[p.at]
	}
	return token{}
}

func (p *parser) refuse(why string) {
	if p.why == "" {
		p.why = why
	}
}

func (p *parser) isWord(word string) bool {
	t := p.peek()
	return t.kind == tokenWord && t.text == word
}

func (p *parser) value() {
	p.qualities = map[string]amount{}
	if len(p.tokens) == 0 {
		p.refuse(saidNothingTyped(p.want))
		return
	}
	if p.peek().kind == tokenNumber {
		p.estimate()
	}
	for p.why == "" && p.at < len(p.tokens) {
		p.quality()
	}
}

func (p *parser) estimate() {
	p.readings = append(p.readings, p.amount())
	for p.why == "" && p.peek().kind == tokenSemicolon {
		p.at++
		if p.at == len(p.tokens) {
			return // a semicolon behind the last reading does no harm
		}
		p.readings = append(p.readings, p.amount())
	}
	if p.why == "" && p.isWord("to") {
		p.at++
		p.band = true
		p.readings = append(p.readings, p.amount())
		if len(p.readings) != 2 {
			p.refuse(saidBandOfTwo)
		}
	}
	// “50 N max” alone is a rating in front of its word and no reading.
	if p.isWord("max") && len(p.readings) == 1 && !p.numberAfter() {
		p.at++
		p.qualities["max"] = p.readings[0]
		p.readings = nil
	}
}

// numberAfter reports whether a number follows the next token: then that is a word
// about the number, and not about what stands before it.
func (p *parser) numberAfter() bool {
	return p.at+1 < len(p.tokens) && p.tokens[p.at+1].kind == tokenNumber
}

// amount reads a number with its unit.
func (p *parser) amount() amount {
	t := p.peek()
	if t.kind != tokenNumber {
		p.refuse(saidNumberMissing(p.behind()))
		return amount{}
	}
	p.at++
	// 0.500(5) speaks of one reading; repeated ones, and qualities, have their own spread.
	if t.last != "" && (p.at > 1 || len(p.tokens) > 1 && p.tokens[1].kind == tokenSemicolon) {
		p.refuse(saidOutOfPlace("(" + t.last + ")"))
	}
	a := amount{token: t, unit: t.unit, hasUnit: t.unit.Symbol != ""}
	switch next := p.peek(); {
	case next.kind == tokenUnit && !a.hasUnit:
		p.at++
		a.unit, a.hasUnit = next.unit, true
	case next.kind == tokenPercent:
		p.at++
		a.percent = true
	}
	return a
}

// behind is the token that was read last, for messages.
func (p *parser) behind() string {
	if p.at == 0 {
		return ""
	}
	return p.tokens[p.at-1].text
}

// quality reads one quality. Twice the same is refused, but for "div".
func (p *parser) quality() {
	t := p.peek()
	var word string
	var a amount
	switch {
	case t.kind == tokenNumber:
		a = p.amount()
		if word = "max"; !p.isWord(word) {
			p.refuse(saidTwoNumbers(t.text))
			return
		}
		p.at++
	case t.kind == tokenWord && t.text == "exact":
		p.at++
		word, a = t.text, amount{token: t}
	case t.kind == tokenWord && t.text != "to":
		p.at++
		word, a = t.text, p.amount()
	default:
		p.refuse(saidOutOfPlace(t.text))
	}
	p.keep(word, a)
}

func (p *parser) keep(word string, a amount) {
	if p.why != "" {
		return
	}
	_, twice := p.qualities[word]
	switch {
	// The second division is that of the zero reading, perhaps from another scale.
	case word == "div" && twice && p.zeroDiv == nil:
		p.zeroDiv = &a
	case twice:
		p.refuse(saidTwice(word))
	default:
		p.qualities[word] = a
	}
}
