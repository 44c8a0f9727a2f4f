package measure

import (
	"math"
	"math/big"
	"strconv"
	"strings"

	"example.org/standstill/checker/quantity"
)

// decimal is a numeral as it stands on paper: digits × 10^exp. Rounding works on
// these digits, because a binary number is only near the typed one: 6.9749505 is a
// hair more in binary, and half to even would go the wrong way.
type decimal struct {
	minus  bool
	digits string // without zeros in front; "0" for zero
	exp    int
}

// decimalOf reads a numeral with a decimal point and an optional exponent.
func decimalOf(text string) decimal {
	d := decimal{minus: strings.HasPrefix(text, "-")}
	mantissa, exponent, _ := strings.Cut(strings.TrimPrefix(text, "-"), "e")
	d.exp, _ = strconv.Atoi(exponent) // "" is no exponent, which is 0
	whole, fraction, _ := strings.Cut(mantissa, ".")
	d.exp -= len(fraction)
	d.digits = strings.TrimLeft(whole+fraction, "0")
	if d.digits == "" {
		d.digits = "0"
	}
	return d
}

// shortest is the shortest numeral that stands for x.
func shortest(x float64) decimal { return decimalOf(strconv.FormatFloat(x, 'e', -1, 64)) }

// leading is the power of ten of the first digit.
func (d decimal) leading() int { return d.exp + len(d.digits) - 1 }

// round rounds to a place (a power of ten), in one step, half to even.
func (d decimal) round(place int) decimal {
	drop := place - d.exp
	if drop <= 0 {
		return decimal{d.minus, d.digits + strings.Repeat("0", -drop), place}.tidy()
	}
	// At least one digit stays in front: 0.03 rounds to 0 and 0.07 to 0.1.
	padded := strings.Repeat("0", max(drop+1-len(d.digits), 0)) + d.digits
	kept, dropped := padded[:len(padded)-drop], padded[len(padded)-drop:]
	half := "5" + strings.Repeat("0", drop-1)
	odd := (kept[len(kept)-1]-'0')%2 == 1
	// Strings of one length compare as their numbers do.
	if dropped > half || dropped == half && odd {
		n, _ := new(big.Int).SetString(kept, 10)
		kept = n.Add(n, big.NewInt(1)).String()
	}
	return decimal{d.minus, kept, place}.tidy()
}

func (d decimal) tidy() decimal {
	d.digits = strings.TrimLeft(d.digits, "0")
	if d.digits == "" {
		// A result of −0.00 would look like a sign that means something.
		d.digits, d.minus = "0", false
	}
	return d
}

// beyond is how far from the decimal point a place may be before a power of ten is
// written.
const beyond = 6

// String writes the numeral with every digit down to its last place.
func (d decimal) String() string {
	sign := ""
	if d.minus {
		sign = "−"
	}
	// A long row of zeros would look like figures that were measured.
	if power := d.leading(); power != 0 && (d.exp > beyond || d.exp < -2*beyond) {
		mantissa := decimal{digits: d.digits, exp: d.exp - power}
		return sign + mantissa.String() + "×10^" + strconv.Itoa(power)
	}
	if d.digits == "0" && d.exp > 0 {
		return "0"
	}
	if d.exp >= 0 {
		return sign + d.digits + strings.Repeat("0", d.exp)
	}
	digits := strings.Repeat("0", max(1-d.exp-len(d.digits), 0)) + d.digits
	return sign + digits[:len(digits)+d.exp] + "." + digits[len(digits)+d.exp:]
}

// TwoFigures is the place to which an uncertainty is quoted: that of its second
// digit (GUM 7.2.6). 0.0996 is quoted as 0.10.
func TwoFigures(u float64) int {
	d := shortest(u)
	place := d.leading() - 1
	// 0.0996 is 0.100 there, with three figures.
	if len(d.round(place).digits) > 2 {
		place++
	}
	return place
}

// Round writes x rounded to a place, which is a power of ten.
func Round(x float64, place int) string { return shortest(x).round(place).String() }

// exactFigures is how many figures a number without uncertainty is shown with.
const exactFigures = 4

// Quote writes a value and its uncertainty, both rounded to the place of the
// second digit of the uncertainty. Without one, u is "".
func Quote(x, u float64) (value, unsure string) {
	if !(u > 0) || math.IsInf(u, 0) {
		return Plain(x), ""
	}
	place := TwoFigures(u)
	d := shortest(x).round(place)
	if d.digits == "0" && place >= 0 {
		// 0.00 ± 0.30 says where the value lies, 000 ± 300 does not.
		return small(x, u), shortest(u).round(place).String()
	}
	return d.String(), shortest(u).round(place).String()
}

// QuoteTurning is the value that Quote writes, within one turn: 359.98 of 360 is quoted
// as 0.0.
func QuoteTurning(x, u, turn float64) string {
	x = math.Mod(math.Mod(x, turn)+turn, turn)
	value, _ := Quote(x, u)
	if rounded, err := strconv.ParseFloat(value, 64); err == nil && rounded >= turn {
		// It was rounded up to the full turn.
		value, _ = Quote(x-turn, u)
		value = strings.TrimPrefix(value, "−")
	}
	return value
}

// small is a value far below its uncertainty, with one figure.
func small(x, u float64) string {
	if math.Abs(x) < 1e-9*u {
		return "0"
	}
	return Figured(x, 1)
}

// QuoteU writes an uncertainty alone, with two figures.
func QuoteU(u float64) string {
	if !(u > 0) || math.IsInf(u, 0) {
		return "0"
	}
	return shortest(u).round(TwoFigures(u)).String()
}

// Plain writes a number that nothing is known to be unsure about: as short as
// it is, with four figures where it is long. Dust of binary arithmetic in the last
// digits does not count.
func Plain(x float64) string {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return quantity.Format(x, 1)
	}
	d := shortest(x)
	clean := d.round(d.leading() - dustFree).trimmed(1)
	if len(clean.digits) > exactFigures {
		clean = d.round(d.leading() - exactFigures + 1)
	}
	return clean.String()
}

// dustFree is how many figures behind the first are free of rounding errors.
const dustFree = 12

// trimmed leaves out zeros behind the decimal point at the end, down to so many figures.
func (d decimal) trimmed(figures int) decimal {
	for d.exp < 0 && len(d.digits) > figures && strings.HasSuffix(d.digits, "0") {
		d.digits, d.exp = d.digits[:len(d.digits)-1], d.exp+1
	}
	return d
}

// Figured writes a number with so many figures.
func Figured(x float64, figures int) string {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return quantity.Format(x, 1)
	}
	d := shortest(x)
	return d.round(d.leading() - figures + 1).String()
}

// WithUnit puts a unit behind a number: "20.2 N", "47.6°".
func WithUnit(number string, u quantity.Unit) string {
	switch u.Symbol {
	case "deg":
		return number + "°"
	case "none", "":
		return number
	}
	return number + " " + Symbol(u)
}

// Symbol is a unit as it is printed.
func Symbol(u quantity.Unit) string {
	if u.Symbol == "none" {
		return ""
	}
	return strings.Replace(u.Symbol, "^2", "²", 1)
}
