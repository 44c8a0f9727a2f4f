package quantity

import (
	"errors"
	"math"
	"strconv"
	"strings"
)

// Number is a typed numeral. Figures counts every digit from the first that is
// not zero; Certain leaves out the zeros at the end of a whole number, of which
// nobody can say whether they were measured. Half is half a unit of the last
// typed place; Wide is half a unit of the last place that need be meant, with two
// figures at least (130 may be 127 rounded).
type Number struct {
	Text       string
	Value      float64
	Figures    int
	Certain    int
	Half, Wide float64
}

// ParseNumber reads a numeral with a decimal point, an optional exponent
// ("1e3") or power of ten ("1.2×10^3"). It does not read units, signs or commas.
func ParseNumber(text string) (Number, error) {
	digits, exponent := text, 0
	for _, mark := range []string{"×10^", "e", "E"} {
		if head, tail, found := strings.Cut(text, mark); found {
			n, err := strconv.Atoi(tail)
			// A float64 ends near 10^308, and the digits in front need room, too.
			if err != nil || n < -300 || n > 300 {
				return Number{}, errors.New("the power of ten is too large or too small")
			}
			digits, exponent = head, n
			break
		}
	}
	value, err := strconv.ParseFloat(digits+"e"+strconv.Itoa(exponent), 64)
	if err != nil || math.IsInf(value, 0) {
		return Number{}, errors.New("the number is too large")
	}
	n := Number{Text: text, Value: value}
	whole, fraction, _ := strings.Cut(digits, ".")
	all := strings.TrimLeft(whole+fraction, "0")
	n.Figures = len(all)
	n.Certain = n.Figures
	if fraction == "" && exponent == 0 {
		n.Certain = len(strings.TrimRight(all, "0"))
	}
	n.Half = 0.5 * math.Pow(10, float64(exponent-len(fraction)))
	// 130 has two certain figures: it may be 127 rounded, so it is ±5 wide, not ±0.5.
	n.Wide = n.Half * math.Pow(10, float64(max(n.Figures-max(n.Certain, 2), 0)))
	return n, nil
}

// Exact returns the number for a value that was not typed but computed.
func Exact(value float64) Number {
	text := strconv.FormatFloat(value, 'g', -1, 64)
	n, err := ParseNumber(strings.Replace(text, "e+", "e", 1))
	if err != nil {
		return Number{Text: text, Value: value}
	}
	return n
}

// Stands reports whether x, rounded to the typed figures, is this number. One
// figure alone stands for nothing but itself. Zeros at the end of a whole number
// count as figures if the rounding then fits: 20 stands for 20.2.
func (n Number) Stands(x float64) bool {
	return n.Figures >= 2 && n.Rounds(x)
}

// hair is what binary arithmetic may add to a decimal number, as a share of it.
const hair = 1e-9

// Rounds reports whether x lies within half a unit of the last place. A hair is
// added, because 0.5 units of a binary number are not exactly half.
func (n Number) Rounds(x float64) bool {
	return math.Abs(x-n.Value) <= n.Wide*(1+hair)
}

// Coarse reports whether x rounds to this number at one figure only.
func (n Number) Coarse(x float64) bool {
	return n.Certain == 1 && roundFigures(x, 1) == roundFigures(n.Value, 1)
}

func roundFigures(x float64, figures int) float64 {
	v, err := strconv.ParseFloat(strconv.FormatFloat(x, 'e', figures-1, 64), 64)
	if err != nil {
		return x
	}
	return v
}

// Format prints x with that many significant figures, without an exponent for
// sizes that a student meets ("0.0785", "28.1", "1250").
func Format(x float64, figures int) string {
	if x == 0 {
		return "0"
	}
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "not a number"
	}
	r := roundFigures(x, figures)
	// Without the small addition log₁₀ 1000 is slightly less than 3.
	magnitude := int(math.Floor(math.Log10(math.Abs(r)) + 1e-12))
	if magnitude > 6 || magnitude < -5 {
		mantissa, exponent, _ := strings.Cut(strconv.FormatFloat(r, 'e', figures-1, 64), "e")
		n, err := strconv.Atoi(exponent)
		if err != nil {
			return mantissa
		}
		return mantissa + "×10^" + strconv.Itoa(n)
	}
	return strconv.FormatFloat(r, 'f', max(figures-1-magnitude, 0), 64)
}

// In prints the SI value x in the unit with that many figures: "20.2 N", "47.6°".
func (u Unit) In(x float64, figures int) string {
	text := Format(x/u.Factor, figures)
	switch u.Symbol {
	case "deg":
		return text + "°"
	case "none", "":
		return text
	}
	return text + " " + u.Symbol
}
