// Package quantity knows numbers with units and figures: what a unit measures,
// how many figures a typed number has, and which values round to it.
//
// Start with Find for units, in this file, and ParseNumber for numbers, in number.go. Values are in SI
// (newton, kilogram, metre, radian) once multiplied by a unit's Factor.
package quantity

import (
	"math"
	"strings"
)

// Dimension is the product of powers of mass, length, time and angle that a
// unit measures. Angle is kept apart from a plain number, because a student who
// writes 42 for 42° has left a unit out.
type Dimension struct{ Mass, Length, Time, Angle int }

// The dimensions that statics speaks of.
var (
	None         = Dimension{}
	Force        = Dimension{Mass: 1, Length: 1, Time: -2}
	Mass         = Dimension{Mass: 1}
	Angle        = Dimension{Angle: 1}
	Length       = Dimension{Length: 1}
	Stiffness    = Dimension{Mass: 1, Time: -2}
	Acceleration = Dimension{Length: 1, Time: -2}
)

// Times returns the dimension of a product.
func (d Dimension) Times(e Dimension) Dimension {
	return Dimension{d.Mass + e.Mass, d.Length + e.Length, d.Time + e.Time, d.Angle + e.Angle}
}

// Over returns the dimension of a quotient.
func (d Dimension) Over(e Dimension) Dimension {
	return Dimension{d.Mass - e.Mass, d.Length - e.Length, d.Time - e.Time, d.Angle - e.Angle}
}

// Root halves every exponent; ok is false where one is odd.
func (d Dimension) Root() (half Dimension, ok bool) {
	half = Dimension{d.Mass / 2, d.Length / 2, d.Time / 2, d.Angle / 2}
	return half, half.Times(half) == d
}

// String names what the dimension measures, in a physicist's words.
func (d Dimension) String() string {
	for _, k := range kinds {
		if k.dim == d {
			return k.word
		}
	}
	return "another quantity"
}

var kinds = []struct {
	dim  Dimension
	word string
}{
	{None, "a plain number"},
	{Force, "a force"},
	{Mass, "a mass"},
	{Angle, "an angle"},
	{Length, "a length"},
	{Stiffness, "a spring constant"},
	{Acceleration, "an acceleration"},
	{Dimension{Mass: 1, Length: 2, Time: -2}, "an energy or a moment"},
	{Dimension{Mass: 1, Length: -1, Time: -2}, "a pressure"},
	{Dimension{Time: 1}, "a time"},
	{Dimension{Length: 1, Time: -1}, "a speed"},
}

// Unit is a unit of measurement. Factor turns a number in this unit into SI.
type Unit struct {
	Symbol string
	Dim    Dimension
	Factor float64
}

const (
	// Degree is one degree in radians.
	Degree = 3.14159265358979323846 / 180
	// PoundForce is the pound-force in newtons: the international pound of
	// 0.45359237 kg in standard gravity 9.80665 m/s² (3rd CGPM, 1901), exactly.
	PoundForce = 4.4482216152605
)

// units is the table of everything that may stand behind a number. The first
// spelling is the symbol that is printed; the last few rows are not asked for by
// any problem, they are known so that a wrong unit can be called by its name.
var units = []struct {
	spellings string
	dim       Dimension
	factor    float64
}{
	{"N newton newtons Newton Newtons", Force, 1},
	{"kN kilonewton kilonewtons", Force, 1e3},
	{"mN millinewton millinewtons", Force, 1e-3},
	{"lb lbs lbf pound pounds", Force, PoundForce},
	{"kgf kp", Force, 9.80665},
	{"kg kgs kilogram kilograms kilo kilos", Mass, 1},
	{"g gram grams", Mass, 1e-3},
	{"deg ° º degree degrees", Angle, Degree},
	{"rad radian radians", Angle, 1},
	{"m metre metres meter meters", Length, 1},
	{"cm centimetre centimetres centimeter centimeters", Length, 1e-2},
	{"mm millimetre millimetres millimeter millimeters", Length, 1e-3},
	{"ft foot feet", Length, 0.3048},
	{"in inch inches", Length, 0.0254},
	{"N/m", Stiffness, 1},
	{"N/cm", Stiffness, 100},
	{"N/mm", Stiffness, 1000},
	{"kN/m", Stiffness, 1e3},
	{"lb/ft lbf/ft", Stiffness, PoundForce / 0.3048},
	{"lb/in lbf/in", Stiffness, PoundForce / 0.0254},
	{"m/s^2 m/s² m/s**2 m/s2", Acceleration, 1},
	{"N/kg", Acceleration, 1},
	{"none", None, 1},
	{"% percent", None, 0.01},
	{"J joule joules", Dimension{Mass: 1, Length: 2, Time: -2}, 1},
	{"Pa pascal pascals", Dimension{Mass: 1, Length: -1, Time: -2}, 1},
	{"s second seconds", Dimension{Time: 1}, 1},
	{"m/s", Dimension{Length: 1, Time: -1}, 1},
}

// Find returns the unit of that spelling; letter case counts.
func Find(spelling string) (Unit, bool) {
	if spelling == "" {
		return Unit{}, false
	}
	for _, u := range units {
		for s := range strings.FieldsSeq(u.spellings) {
			if s == spelling {
				return Unit{Symbol: symbolOf(u.spellings), Dim: u.dim, Factor: u.factor}, true
			}
		}
	}
	return Unit{}, false
}

// Of returns the first unit of the table that measures this and has this factor.
func Of(d Dimension, factor float64) (Unit, bool) {
	for _, u := range units {
		// “none” marks that there is no unit, and must not be printed behind a number.
		if u.dim == d && math.Abs(u.factor-factor) <= hair*factor && u.spellings != "none" {
			return Unit{Symbol: symbolOf(u.spellings), Dim: u.dim, Factor: u.factor}, true
		}
	}
	return Unit{}, false
}

// Spellings lists every way a unit may be written, longest first where one is
// the beginning of another is left to the caller.
func Spellings() []string {
	var all []string
	for _, u := range units {
		all = append(all, strings.Fields(u.spellings)...)
	}
	return all
}

// Symbols lists the symbols that are printed, for messages.
func Symbols() []string {
	var all []string
	for _, u := range units {
		all = append(all, symbolOf(u.spellings))
	}
	return all
}

func symbolOf(spellings string) string {
	symbol, _, _ := strings.Cut(spellings, " ")
	return symbol
}
