package measure

import (
	"fmt"
	"strings"

	"example.org/standstill/checker/quantity"
)

// What is said about a measured value that cannot be read.
const (
	saidTooLong         = "This value is too long. A value can have at most 500 characters."
	saidCommaBetween    = "A comma can be a decimal comma, so put semicolons between the readings, as in 35; 34.5; 35.5 deg."
	saidBandOfTwo       = "A range needs two values, as in 0.48 to 0.52 kg."
	saidNoDivision      = "The smallest division of a scale must be greater than zero, as in div 0.5 deg."
	saidFactor          = "k must be a number greater than zero without a unit, as in (9.80 ± 0.12) N, k = 2."
	saidFactorOfNothing = "Use k only with an expanded uncertainty, as in (9.80 ± 0.12) N, k = 2."
	saidNoRating        = "A rated load must be greater than zero, as in 20 N max."
)

func saidNothingTyped(w Want) string {
	return fmt.Sprintf("Type your measured value for %s, such as %s.", w.Name, w.Sample())
}

func saidTwoPoints(typed string) string {
	return fmt.Sprintf("The number %s… has more than one decimal point.", Shorten(typed))
}

func saidOutOfReach(typed string) string {
	return fmt.Sprintf("The number %s is too large or too small.", Shorten(typed))
}

func saidUnknownWord(typed string) string {
	return fmt.Sprintf("“%s” is not a unit or one of these: ±, u, U, k, div, zero, max, to, exact.", typed)
}

func saidNumberMissing(behind string) string {
	if behind == "" {
		return "A value starts with a number, as in 0.500 kg ± 1 %."
	}
	return fmt.Sprintf("There is no number after “%s”.", behind)
}

func saidTwoNumbers(second string) string {
	return fmt.Sprintf("What does %s mean? Type ±, u, U, div, zero or max before this number, or a semicolon if it is another reading.", second)
}

func saidOutOfPlace(typed string) string {
	return fmt.Sprintf("“%s” is in the wrong place. Type a value such as 20.4 N ± 0.2 N.", typed)
}

func saidTwice(word string) string {
	return fmt.Sprintf("“%s” appears twice. Use it once.", word)
}

func saidNoUnit(w Want, number string) string {
	return fmt.Sprintf("%s needs a unit after the number, as in %s %s.", w.Name, number, w.Unit.Symbol)
}

func saidWrongUnit(w Want, u quantity.Unit) string {
	if w.Dim == quantity.None {
		return fmt.Sprintf("%s is a number without a unit, but %s is the unit of %s.", w.Name, Symbol(u), u.Dim)
	}
	if u.Dim == quantity.None {
		return fmt.Sprintf("%s needs a unit such as %s.", w.Name, w.Unit.Symbol)
	}
	return fmt.Sprintf("%s is measured in %s, but %s is the unit of %s.", w.Name, Listed(UnitsOf(w.Dim), "or"), Symbol(u), u.Dim)
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
	return fmt.Sprintf("There is no value before %s %%. Type a value before the percentage, as in 0.500 kg ± 1 %%.", number)
}

func saidShare(word string) string {
	return fmt.Sprintf("“%s” needs a number with a unit, not a percentage.", word)
}

func saidNegative(word, number string) string {
	what := map[string]string{plusMinus: "A half-width", "u": "A standard uncertainty", "U": "An expanded uncertainty", "div": "A division"}[word]
	return fmt.Sprintf("%s cannot be negative, so %s is not possible.", what, number)
}

// SaidNothingMeasured says that a quality stands without a value.
func SaidNothingMeasured(w Want) string {
	return fmt.Sprintf("The value of %s is missing. Type the value first, as in %s.", w.Name, w.Sample())
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
	// Otherwise the part of that division says it.
	if v.Zeroed && !v.has(ZeroDivision) {
		parts = append(parts, fmt.Sprintf("zero reading of %s subtracted", WithUnit(Plain(v.Zero/v.Unit.Factor), v.Unit)))
	}
	if v.Rated {
		parts = append(parts, "rated load "+WithUnit(Plain(v.Rating/v.Unit.Factor), v.Unit))
	}
	if !v.Measured {
		return Listed(parts, "and")
	}
	x, u := Quote(v.Estimate/v.Unit.Factor, v.U()/v.Unit.Factor)
	if u == "" {
		// An exact value keeps the zeros that were typed: 0.500 is not 0.5 to an experimenter.
		if !strings.ContainsAny(v.numeral, "e×") && v.numeral != "" {
			x = strings.Replace(v.numeral, "-", "−", 1)
		}
		parts = append([]string{SaidExact}, parts...)
		return WithUnit(x, v.Unit) + ": " + strings.Join(parts, "; ")
	}
	return WithUnit(x, v.Unit) + ", u = " + WithUnit(u, v.Unit) + ": " + strings.Join(parts, "; ")
}

// Short is what was taken from a value, without what it is made of: "35.00°, u = 0.41°".
func (v Value) Short() string {
	short, _, _ := strings.Cut(v.Taken(), ": ")
	if v.Measured && len(v.Parts) == 0 {
		short += ", exact"
	}
	return short
}

// SaidExact says that a value has no uncertainty.
const SaidExact = "taken as exact"

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
		return fmt.Sprintf("s/√n of %d readings%s, %s", len(v.Readings), alone, degrees(p.Nu))
	case HalfWidth:
		return fmt.Sprintf("half-width %s ÷ √3%s", exact(p.Half), alone)
	case Standard:
		return "standard uncertainty" + alone
	case Expanded:
		return fmt.Sprintf("expanded uncertainty %s ÷ %s (k)%s", exact(p.U*p.K), Plain(p.K), alone)
	case Division:
		if v.AssumedDivision {
			return fmt.Sprintf("half a division of %s (assumed from the last digit) ÷ √3%s", exact(2*p.Half), alone)
		}
		return fmt.Sprintf("half a division of %s ÷ √3%s", exact(2*p.Half), alone)
	case ZeroDivision:
		return fmt.Sprintf("zero reading of %s subtracted, half a division of %s ÷ √3%s", exact(v.Zero), exact(2*p.Half), alone)
	}
	return fmt.Sprintf("half the range for which the ring stays still, %s ÷ √3%s", exact(p.Half), alone)
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
	return fmt.Sprintf("k = %.2f, ν = %d", k, nu)
}
