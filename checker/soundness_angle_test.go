package checker_test

import (
	"math"
	"strconv"
)

// function writes a sine, cosine or tangent.
func (w *writer) function(fn string, angle *tree) []*tree {
	known := w.isKnown(angle)
	if known && chance(w.Rand, w.decimals) {
		if x := apply(fn, angle).value(w.at); x > 0.01 {
			return []*tree{rounded(x, w.figures)}
		}
	}
	if angle.op == 'f' && chance(w.Rand, 0.6) {
		return []*tree{w.leaves(ofInverse(fn, angle))}
	}
	if known && angle.op != 'v' && angle.op != 'n' && chance(w.Rand, w.numbers) {
		return []*tree{apply(fn, roundDegrees(angle.value(w.at), pick(w.Rand, 3, 4)))}
	}
	if chance(w.Rand, 0.8) {
		return []*tree{apply(fn, w.leaves(angle))}
	}
	return w.identity(fn, angle)
}

func roundDegrees(radians float64, figures int) *tree {
	return degrees(rounded(radians*180/math.Pi, figures).text)
}

// ofInverse writes the sine of an arcsine and the like with a root.
func ofInverse(fn string, angle *tree) *tree {
	x := angle.args[0]
	a, c := x, whole(1)
	if x.op == '/' {
		a, c = x.args[0], x.args[1]
	}
	long := apply("sqrt", plus(squared(a), squared(c)))
	short := apply("sqrt", plus(squared(c), negative(squared(a))))
	sides := map[string][3]*tree{"asin": {a, short, c}, "acos": {short, a, c}, "atan": {a, c, long}}[angle.name]
	switch fn {
	case "sin":
		return over(sides[0], sides[2])
	case "cos":
		return over(sides[1], sides[2])
	}
	return over(sides[0], sides[1])
}

// identity writes a function as another one.
func (w *writer) identity(fn string, angle *tree) []*tree {
	a := w.leaves(angle)
	co := map[string]string{"sin": "cos", "cos": "sin"}[fn]
	if co == "" {
		return []*tree{apply("sin", a), over(whole(1), apply("cos", a))}
	}
	switch w.IntN(4) {
	case 0:
		return []*tree{apply(co, w.complement(a))}
	case 1:
		return []*tree{apply(co, plus(degrees("90"), negative(a)))}
	case 2:
		if fn == "sin" {
			return []*tree{apply("tan", a), apply("cos", a)}
		}
		return []*tree{over(apply("sin", a), apply("tan", a))}
	}
	if fn == "sin" {
		return []*tree{apply("sin", plus(degrees("180"), negative(a)))}
	}
	return []*tree{apply("cos", negative(a))}
}

// complement subtracts an angle from 90 degrees, in the head where it is a number.
func (w *writer) complement(a *tree) *tree {
	if a.op != 'n' {
		return plus(degrees("90"), negative(a))
	}
	x, _ := strconv.ParseFloat(a.text, 64)
	return degrees(strconv.FormatFloat(math.Round((90-x)*1e6)/1e6, 'f', -1, 64))
}
