package picture

import (
	"math"
	"strconv"
)

// headed is the heading of a scale.
func headed(s Scale) string {
	if s.Unit == "" {
		return s.Name
	}
	return s.Name + " / " + s.Unit
}

// equals says a value on a scale. Only the sign of degrees stands close to its number.
func equals(s Scale, x float64) string { return s.Name + " = " + measure(x, s.Unit) }

func measure(x float64, unit string) string {
	if unit == "°" {
		return withUnit(degreesText(x), unit)
	}
	return withUnit(figures(x), unit)
}

func withUnit(number, unit string) string {
	switch unit {
	case "", "°":
		return number + unit
	}
	return number + " " + unit
}

// figuresOf is how many decimals show two figures of an uncertainty.
func figuresOf(u float64) int { return min(max(1-int(math.Floor(math.Log10(u))), 0), 9) }

func fixed(x float64, decimals int) string { return strconv.FormatFloat(x, 'f', decimals, 64) }

// figures writes a number with three figures.
func figures(x float64) string {
	if x == 0 {
		return "0"
	}
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 3, 64), 64)
	// Of the rounded number: 9.996 has three figures as 10.0. The
	// small addition is for 1000, whose logarithm is a hair below 3.
	size := int(math.Floor(math.Log10(math.Abs(rounded)) + 1e-12))
	if size > 6 || size < -4 {
		return strconv.FormatFloat(x, 'g', 3, 64)
	}
	return strconv.FormatFloat(x, 'f', max(2-size, 0), 64)
}

// degreesText writes an angle with a tenth of a degree where it has one.
func degreesText(x float64) string {
	return strconv.FormatFloat(math.Round(x*10)/10+0, 'f', -1, 64)
}
