package expr

import "strings"

// functions is the table of functions with every spelling.
var functions = []struct{ spelling, name string }{
	{"sin", "sin"}, {"cos", "cos"}, {"tan", "tan"},
	{"asin", "asin"}, {"acos", "acos"}, {"atan", "atan"},
	{"arcsin", "asin"}, {"arccos", "acos"}, {"arctan", "atan"},
	{"sqrt", "sqrt"}, {"root", "sqrt"},
	{"cot", "cot"}, {"sec", "sec"}, {"csc", "csc"}, {"cosec", "csc"},
	{"sine", "sin"}, {"cosine", "cos"}, {"tangent", "tan"},
	{"abs", "abs"}, {"fabs", "abs"},
	{"sen", "sin"}, {"tg", "tan"}, {"ctg", "cot"}, {"cotg", "cot"},
	{"arcsen", "asin"}, {"arctg", "atan"}, {"invsin", "asin"}, {"invcos", "acos"}, {"invtan", "atan"},
	{"radians", "radians"}, {"deg2rad", "radians"}, {"degrees", "degrees"}, {"rad2deg", "degrees"},
}

func isTrig(function string) bool {
	switch function {
	case "sin", "cos", "tan", "cot", "sec", "csc":
		return true
	}
	return false
}

var inverses = map[string]string{"sin": "asin", "cos": "acos", "tan": "atan"}

// endsInFunction reports whether letters that stand together end in a function's name.
func endsInFunction(run []rune) bool {
	for i := range run {
		if isFunction(run[i:]) {
			return true
		}
	}
	return false
}

func isFunction(run []rune) bool {
	for _, f := range functions {
		if strings.EqualFold(f.spelling, string(run)) {
			return true
		}
	}
	return false
}
