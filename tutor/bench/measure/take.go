package measure

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/stat"

	"example.org/standstill/checker/quantity"
)

// finish turns what was read into numbers, once the unit of everything is known.
func (p *parser) finish(typed string) (Value, string) {
	p.whole()
	v := Value{Typed: typed, Unit: p.unit(), Measured: len(p.readings) > 0}
	// In this order: shares need the estimate, and the assumed division needs to know what was stated.
	p.estimates(&v)
	p.zero(&v)
	p.repeats(&v)
	p.stated(&v)
	p.divisions(&v)
	p.rating(&v)
	if p.why != "" {
		return Value{}, p.why
	}
	return v, ""
}

// whole sees to it that there is a value for the qualities; a rating stands alone.
func (p *parser) whole() {
	for _, a := range p.readings {
		if a.percent {
			p.refuse(saidShareOfNothing(a.text))
		}
	}
	if _, rated := p.qualities["max"]; p.readings == nil && (len(p.qualities) > 1 || !rated) {
		p.refuse(SaidNothingMeasured(p.want))
	}
}

// unit is the unit of numbers that stand without one: that of the last reading
// with a unit, else that of the first quality with one.
func (p *parser) unit() quantity.Unit {
	// “34; 35; 36 deg” has its unit at the end, as a table has it in its head.
	for i := len(p.readings) - 1; i >= 0; i-- {
		if p.readings[i].hasUnit {
			return p.readings[i].unit
		}
	}
	for _, w := range words() {
		if a, ok := p.qualities[w.word]; ok && a.hasUnit {
			return a.unit
		}
	}
	none, _ := quantity.Find("none")
	if p.want.Dim != quantity.None {
		p.refuse(saidNoUnit(p.want, p.someNumber()))
	}
	return none
}

func (p *parser) someNumber() string {
	for _, t := range p.tokens {
		if t.kind == tokenNumber {
			return t.text
		}
	}
	return ""
}

// inSI turns an amount into SI. A share needs the value that it is a share of.
func (p *parser) inSI(a amount, usual quantity.Unit) float64 {
	unit := usual
	if a.hasUnit {
		unit = a.unit
	}
	if unit.Dim != p.want.Dim {
		p.refuse(saidWrongUnit(p.want, unit))
	}
	x := a.number.Value * unit.Factor
	if a.minus {
		return -x
	}
	return x
}

func (p *parser) estimates(v *Value) {
	for _, a := range p.readings {
		v.Readings = append(v.Readings, p.inSI(a, v.Unit))
	}
	switch {
	case !v.Measured:
	case p.band:
		low, high := min(v.Readings[0], v.Readings[1]), max(v.Readings[0], v.Readings[1])
		v.Estimate = (low + high) / 2
		// Anywhere within the band is equally likely: friction holds the ring wherever it is put.
		v.rectangular(Band, (high-low)/2)
	default:
		if p.want.Dim == quantity.Angle {
			v.Readings = roundTheCircle(v.Readings)
		}
		v.Estimate = stat.Mean(v.Readings, nil)
		p.single(v)
	}
}

// roundTheCircle moves angles by whole turns so that each is within half a turn of the
// first, and all so that their mean is one that a protractor shows: 359°, 1° and 0°
// have the mean 0°, not 120°.
func roundTheCircle(angles []float64) []float64 {
	near := make([]float64, len(angles))
	for i, a := range angles {
		near[i] = angles[0] + Turn(a-angles[0])
	}
	shift := 0.0
	switch mean := stat.Mean(near, nil); {
	// The small number keeps the mean of equal readings from tipping over by rounding.
	case mean >= 2*math.Pi-1e-9 && slices.Max(angles) < 2*math.Pi:
		shift = -2 * math.Pi
	case mean < -1e-9 && slices.Min(angles) >= 0:
		shift = 2 * math.Pi
	}
	for i := range near {
		near[i] += shift
	}
	return near
}

// Turn is an angle taken back to half a turn to either side, in radians.
func Turn(angle float64) float64 { return math.Remainder(angle, 2*math.Pi) }

// single keeps the numeral of a single reading, and what 0.500(5) says of it.
func (p *parser) single(v *Value) {
	if len(p.readings) > 1 {
		return
	}
	a := p.readings[0]
	v.numeral = a.number.Text
	if a.minus {
		v.numeral = "-" + v.numeral
	}
	if last, err := strconv.ParseFloat(a.last, 64); err == nil {
		// Half is half a unit of the last place, and (5) counts whole ones.
		lastPlace := 2 * a.number.Half * v.Unit.Factor
		v.Parts = append(v.Parts, Part{Cause: Standard, U: last * lastPlace})
	}
}

// zero takes off what the scale reads with nothing on.
func (p *parser) zero(v *Value) {
	if _, v.Zeroed = p.qualities["zero"]; v.Zeroed {
		v.Zero = p.unshared("zero", v.Unit)
		v.Estimate -= v.Zero
		// The numeral that was typed is no longer the value.
		v.numeral = ""
	}
}

// unshared is a quality in SI that cannot be a share.
func (p *parser) unshared(word string, usual quantity.Unit) float64 {
	a := p.qualities[word]
	if a.percent {
		p.refuse(saidShare(word))
	}
	return p.inSI(a, usual)
}

// repeats adds the spread of repeated readings: u = s/√n with n − 1 degrees of
// freedom (GUM 4.2).
func (p *parser) repeats(v *Value) {
	n := len(v.Readings)
	// The ends of a band are limits and not readings of one value.
	if n < 2 || p.band {
		return
	}
	u := stat.StdErr(stat.StdDev(v.Readings, nil), float64(n))
	v.Parts = append(v.Parts, Part{Cause: Repeats, U: u, Nu: n - 1})
}

// stated adds half-widths (GUM 4.3.7: u = a/√3), standard uncertainties and expanded
// ones (GUM 4.3.3: u = U/k). Behind a half-width, k says that it is none but U.
func (p *parser) stated(v *Value) {
	k := p.factor()
	for _, word := range []string{plusMinus, "U", "u"} {
		a, ok := p.qualities[word]
		switch size := p.size(v, word, a); {
		case !ok:
		case word == "u":
			v.Parts = append(v.Parts, Part{Cause: Standard, U: size})
		case word == "U" || k > 0:
			if k == 0 {
				// The usual factor where none is given (GUM 6.3.3).
				k = 2
			}
			v.Parts = append(v.Parts, Part{Cause: Expanded, U: size / k, K: k})
		default:
			v.rectangular(HalfWidth, size)
		}
	}
}

// factor is the coverage factor that was typed, 0 for none.
func (p *parser) factor() float64 {
	a, ok := p.qualities["k"]
	_, half := p.qualities[plusMinus]
	_, expanded := p.qualities["U"]
	switch {
	case !ok:
		return 0
	case a.hasUnit || a.percent || a.minus || a.number.Value == 0:
		p.refuse(saidFactor)
	case !half && !expanded:
		p.refuse(saidFactorOfNothing)
	}
	return a.number.Value
}

// size is how large a quality is, in SI; a share is one of the estimate.
func (p *parser) size(v *Value, word string, a amount) float64 {
	switch {
	case a.kind != tokenNumber:
		return 0
	case a.minus:
		p.refuse(saidNegative(word, a.text))
	case a.percent && word == "div":
		p.refuse(saidShare(word))
	case a.percent:
		return a.number.Value / 100 * math.Abs(v.Estimate)
	}
	return p.inSI(a, v.Unit)
}

func (v *Value) rectangular(c Cause, half float64) { v.Parts = append(v.Parts, Rectangular(c, half)) }

// divisions adds half a division as a half-width, and that of the zero reading. What
// was read has one in any case: neither one reading nor three equal ones are exact.
func (p *parser) divisions(v *Value) {
	a, ok := p.qualities["div"]
	division := p.size(v, "div", a)
	if v.AssumedDivision = !ok && p.unqualified(v); v.AssumedDivision {
		division, ok = p.lastPlace(v), true
	}
	if !ok {
		return
	}
	if division == 0 {
		// A scale without divisions reads nothing; “exact” is the word for no uncertainty.
		p.refuse(saidNoDivision)
	}
	v.rectangular(Division, division/2)
	if v.Zeroed {
		if p.zeroDiv != nil {
			division = p.size(v, "div", *p.zeroDiv)
		}
		// Reading less zero reading: the scale was read twice, so its division counts twice.
		v.rectangular(ZeroDivision, division/2)
	} else if p.zeroDiv != nil {
		p.refuse(saidTwice("div"))
	}
}

// unqualified reports whether nothing but readings tells how unsure a value is. An
// acceleration alone may be a constant, such as the g that a class agrees on.
func (p *parser) unqualified(v *Value) bool {
	for _, word := range []string{plusMinus, "U", "u", "exact"} {
		if _, ok := p.qualities[word]; ok {
			return false
		}
	}
	constant := p.want.Dim == quantity.Acceleration && len(v.Readings) == 1 && !v.Zeroed
	return v.Measured && !p.band && !constant && !v.has(Standard)
}

// lastPlace is one unit of the last place that any reading was typed with.
func (p *parser) lastPlace(v *Value) float64 {
	place := math.Inf(1)
	for _, a := range p.readings {
		unit := v.Unit
		if a.hasUnit {
			unit = a.unit
		}
		place = min(place, 2*a.number.Half*unit.Factor)
	}
	return place
}

func (p *parser) rating(v *Value) {
	if _, v.Rated = p.qualities["max"]; !v.Rated {
		return
	}
	if v.Rating = p.unshared("max", v.Unit); v.Rating <= 0 {
		p.refuse(saidNoRating)
	}
}

// leastFigures is how many figures of an estimate are left, zeros too.
const leastFigures = 3

// Numeral is the estimate as a numeral in the unit that was typed, with the
// figures that its uncertainty lets stand, a single reading as it was typed.
func (v Value) Numeral() string {
	if v.numeral != "" {
		return v.numeral
	}
	x, u := v.Estimate/v.Unit.Factor, v.U()/v.Unit.Factor
	d := shortest(x)
	if u > 0 {
		d = d.round(TwoFigures(u))
	}
	// A problem file has the sign of the keyboard.
	return strings.Replace(d.trimmed(leastFigures).String(), "−", "-", 1)
}
