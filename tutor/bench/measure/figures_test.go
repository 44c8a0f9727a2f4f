// Inside the package: it rounds decimals, of which only the written ones leave the package.

package measure

import (
	"math"
	"math/big"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// NIST SP 811 (2008), B.7.1, worked examples of rule 3 (as transcribed in a public
// test-oracle source that was read; the guide itself was not).
// A place far behind the point is written out, however many digits that takes.
func TestManyDigits(t *testing.T) {
	for x, want := range map[float64]string{3.5: "3.50000000000000", 225: "2.2500000000000000×10^2", 0.25: "2.5000000000000×10^-1"} {
		if got := shortest(x).round(-14).String(); got != want {
			t.Errorf("%v is %s", x, got)
		}
	}
}

func TestRoundingAsInB71(t *testing.T) {
	for _, c := range []struct {
		typed   string
		figures int
		want    string
	}{
		{"6.9749515", 3, "6.97"},
		{"6.9749515", 2, "7.0"},
		{"6.9749515", 5, "6.9750"},
		{"6.9749515", 7, "6.974952"},
		{"6.9749505", 7, "6.974950"},
	} {
		d := decimalOf(c.typed)
		if got := d.round(d.leading() - c.figures + 1).String(); got != c.want {
			t.Errorf("%s to %d digits: %s, want %s", c.typed, c.figures, got, c.want)
		}
	}
	// B.7.2 (same source): 36 ft × 0.3048 m/ft = 10.9728 m = 11.0 m.
	if got := Figured(36*0.3048, 3); got != "11.0" {
		t.Errorf("36 ft: %s m, want 11.0 m", got)
	}
}

// The binary number for 6.9749505 is a hair above it; its shortest numeral is not.
func TestRoundingOfANumberTakesItsShortestNumeral(t *testing.T) {
	if got := Figured(6.9749505, 7); got != "6.974950" {
		t.Errorf("6.9749505: %s", got)
	}
}

func TestQuotedFigures(t *testing.T) {
	for _, c := range []struct {
		x, u  float64
		value string
		u2    string
	}{
		{3.590709, 0.031296, "3.591", "0.031"},
		{28.139282, 1.157357, "28.1", "1.2"},
		{10.05762, 0.027, "10.058", "0.027"}, // GUM 7.2.6 as quoted on a calibration page that was read
		{0.5, 0.0996, "0.50", "0.10"},
		{-0.04, 0.0125, "−0.040", "0.012"},
		{1234567, 8910, "1234600", "8900"},
		{-0.0001, 0.3, "0.00", "0.30"},
		{9.81, 0, "9.81", ""},
		{math.Pi, 0, "3.142", ""},
	} {
		value, u := Quote(c.x, c.u)
		if value != c.value || u != c.u2 {
			t.Errorf("quote(%v, %v) = %q, %q; want %q, %q", c.x, c.u, value, u, c.value, c.u2)
		}
	}
}

// Rounding against exact fractions: never further than half a place, and even where it
// is just half.
func TestRoundingAgainstExactFractions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`-?[0-9]{1,6}\.[0-9]{0,6}[05]?`).Draw(t, "numeral")
		text = strings.TrimSuffix(text, ".")
		place := rapid.IntRange(-7, 3).Draw(t, "place")
		exact, ok := new(big.Rat).SetString(text)
		if !ok {
			t.Fatal(text)
		}
		got, ok := new(big.Rat).SetString(strings.Replace(decimalOf(text).round(place).String(), "−", "-", 1))
		if !ok {
			t.Fatal(decimalOf(text).round(place).String())
		}
		unit, _ := new(big.Rat).SetString("1e" + strconv.Itoa(place))
		off := new(big.Rat).Abs(new(big.Rat).Sub(got, exact))
		half := new(big.Rat).Quo(unit, big.NewRat(2, 1))
		count := new(big.Rat).Quo(got, unit)
		if !count.IsInt() || off.Cmp(half) > 0 || off.Cmp(half) == 0 && count.Num().Bit(0) == 1 {
			t.Fatalf("%s to 10^%d gives %s", text, place, got.FloatString(8))
		}
	})
}
