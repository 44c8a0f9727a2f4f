package measure

import (
	"fmt"
	"strings"

	"example.org/standstill/checker/quantity"
)

// What is said about a measured value that cannot be read.
const (
	saidTooLong      = "This value is too long to read: 500 characters are the most."
	saidCommaBetween = "A comma may be a decimal comma, so readings are separated by a semicolon, as in 35; 34.5; 35.5 deg."
	saidBandOfTwo    = "A band goes from one value to one other, as in 0.48 to 0.52 kg."
	saidNoDivision   = "The smallest division of a scale is more than nothing, as in div 0.5 deg."
	saidNoRating     = "A rating is more than nothing, as in 20 N max."
)

func saidNothingTyped(w Want) string {
	return fmt.Sprintf("Nothing stands here; type what was measured for %s, such as %s.", w.Name, w.Sample())
}

func saidTwoPoints(typed string) string {
	return fmt.Sprintf("The number %s… has more than one decimal sign.", Shorten(typed))
}

func saidOutOfReach(typed string) string {
	return fmt.Sprintf("The number %s is out of reach.", Shorten(typed))
}

func saidUnknownWord(typed string) string {
	return fmt.Sprintf("“%s” is neither a unit nor one of the words ±, u, div, zero, max and to.", typed)
}

func saidNumberMissing(behind string) string {
	if behind == "" {
		return "A value begins with a number, as in 0.500 kg ± 1 %."
	}
	return fmt.Sprintf("Behind “%s” a number is missing.", behind)
}

func saidTwoNumbers(second string) string {
	return fmt.Sprintf("Before %s a word is missing that says what it is: ±, u, div, zero or max, or a semicolon before another reading.", second)
}

func saidOutOfPlace(typed string) string {
	return fmt.Sprintf("“%s” has no meaning at this place; a value goes like 20.4 N ± 0.2 N.", typed)
}

func saidTwice(word string) string {
	return fmt.Sprintf("“%s” stands here twice, and only one of the two can be meant.", word)
}

func saidNoUnit(w Want, number string) string {
	return fmt.Sprintf("%s needs a unit behind the number: %s %s.", w.Name, number, w.Unit.Symbol)
}

func saidWrongUnit(w Want, u quantity.Unit) string {
	if w.Dim == quantity.None {
		return fmt.Sprintf("%s is a plain number and takes no unit, and %s is the unit of %s.", w.Name, Symbol(u), u.Dim)
	}
	if u.Dim == quantity.None {
		return fmt.Sprintf("%s is %s and needs a unit such as %s.", w.Name, w.Dim, w.Unit.Symbol)
	}
	return fmt.Sprintf("%s is %s, measured in %s, and %s is the unit of %s.", w.Name, w.Dim, Listed(UnitsOf(w.Dim), "or"), Symbol(u), u.Dim)
}

// UnitsOf lists the first few units of a dimension.
func UnitsOf(d quantity.Dimension) []string {
	const few = 3
	var all []string
	for _, s := range quantity.Symbols() {
		if u, _ := quantity.Find(s); u.Dim == d && len(all) < few {
			all = append(all, s)
		}
	}
	return all
}

func saidShareOfNothing(number string) string {
	return fmt.Sprintf("%s %% stands alone, and a share needs a value before it, as in 0.500 kg ± 1 %%.", number)
}

func saidShare(word string) string {
	return fmt.Sprintf("“%s” takes a number with a unit, not a share in %%.", word)
}

func saidNegative(word, number string) string {
	what := map[string]string{plusMinus: "A half-width", "u": "A standard uncertainty", "div": "A division"}[word]
	return fmt.Sprintf("%s is a size and cannot be below zero, so %s cannot be meant.", what, number)
}

// SaidNothingMeasured says that a quality stands without a value.
func SaidNothingMeasured(w Want) string {
	return fmt.Sprintf("The value of %s itself is missing; it comes first, as in %s.", w.Name, w.Sample())
}

// Sample is a value of the kind that is wanted.
func (w Want) Sample() string {
	samples := map[quantity.Dimension]string{
		quantity.Mass: "0.350 kg ± 1 %", quantity.Angle: "35; 34.5; 35.5 deg div 1 deg", quantity.Force: "3.6 N div 0.1 N",
		quantity.Length: "24.5 cm ± 0.1 cm", quantity.Stiffness: "85 N/m ± 2 %", quantity.Acceleration: "9.81 m/s^2", quantity.None: "0.35 ± 0.02",
	}
	if s := samples[w.Dim]; s != "" {
		return s
	}
	return "12.5 " + w.Unit.Symbol
}

// Listed joins words with commas and a conjunction before the last.
func Listed(words []string, conjunction string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " " + conjunction + " " + words[len(words)-1]
}

// Taken says what was taken from a value: its parts and their sum, in the unit
// that was typed.
func (v Value) Taken() string {
	var parts []string
	for _, p := range v.Parts {
		parts = append(parts, v.partSaid(p))
	}
	if v.Zeroed && !v.has(ZeroDivision) {
		parts = append(parts, fmt.Sprintf("the zero reading %s taken off", WithUnit(Plain(v.Zero/v.Unit.Factor), v.Unit)))
	}
	if v.Rated {
		parts = append(parts, "rated up to "+WithUnit(Plain(v.Rating/v.Unit.Factor), v.Unit))
	}
	if !v.Measured {
		return Listed(parts, "and")
	}
	x, u := Quote(v.Estimate/v.Unit.Factor, v.U()/v.Unit.Factor)
	if u == "" {
		if !strings.ContainsAny(v.numeral, "e×") && v.numeral != "" {
			x = strings.Replace(v.numeral, "-", "−", 1)
		}
		parts = append([]string{SaidExact}, parts...)
		return WithUnit(x, v.Unit) + ": " + strings.Join(parts, "; ")
	}
	return WithUnit(x, v.Unit) + ", u = " + WithUnit(u, v.Unit) + ": " + strings.Join(parts, "; ")
}

// SaidExact says that nothing makes a value unsure.
const SaidExact = "taken as exact, since nothing is said of its quality"

// partSaid words one part; how much it is by itself is said where there are
// several.
func (v Value) partSaid(p Part) string {
	alone := ""
	if len(v.Parts) > 1 {
		alone = " = " + WithUnit(QuoteU(p.U/v.Unit.Factor), v.Unit)
	}
	exact := func(x float64) string { return WithUnit(Plain(x/v.Unit.Factor), v.Unit) }
	switch p.Cause {
	case Repeats:
		return fmt.Sprintf("s/√n of %d readings%s, with %s", len(v.Readings), alone, degrees(p.Nu))
	case HalfWidth:
		return fmt.Sprintf("half-width %s ÷ √3%s", exact(p.Half), alone)
	case Standard:
		return "standard uncertainty" + alone
	case Division:
		if v.AssumedDivision {
			return fmt.Sprintf("no division was given, so the last typed place is taken, half of %s ÷ √3%s; give the scale's own with div", exact(2*p.Half), alone)
		}
		return fmt.Sprintf("half a division of %s ÷ √3%s", exact(2*p.Half), alone)
	case ZeroDivision:
		return fmt.Sprintf("the zero reading %s taken off, half a division of %s ÷ √3%s", exact(v.Zero), exact(2*p.Half), alone)
	}
	return fmt.Sprintf("the ring stays still over ± %s about the middle, ÷ √3%s", exact(p.Half), alone)
}

func degrees(nu int) string {
	if nu == 1 {
		return "1 degree of freedom"
	}
	return fmt.Sprintf("%d degrees of freedom", nu)
}

// SaidCoverage says what an expanded uncertainty stands for: "k = 2".
func SaidCoverage(k float64, nu int) string {
	if nu == 0 {
		return "k = 2"
	}
	return fmt.Sprintf("k = %.2f, 95 %% with %s", k, degrees(nu))
}
