package problems

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// units lists what a problem may be stated and answered in.
var units = strings.Fields("N kN mN lb kg g deg rad m cm mm ft in N/m N/cm N/mm kN/m lb/ft lb/in m/s^2 N/kg none")

// StandardGravity is g where a file does not say it.
const StandardGravity = "9.8 m/s^2"

// mostGivens is so few that each, and g with them, has a bit in a solved.GivenSet.
const mostGivens = 60

var (
	numeral       = pattern.Of(`^([-−–]?)\s*((?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][-+]?\d+|\s*[×x*·]\s*10\^-?\d+)?)\s*(.*)$`)
	digitGroups   = pattern.Of(`\d,\d{3}(?:\D|$)`)
	powerOfTen    = pattern.Of(`\s*[×x*·]\s*10\^`)
	wordOfUnknown = pattern.Of(`^(?i:any)\b\s*(.*)$`)
)

// readGiven reads "3.2 kg", "35°", "0.45" or "any kg". The error is worded as a
// Finding: what is wrong, what was expected.
func readGiven(name, text string) (statics.Given, *misread) {
	g := statics.Given{Name: name}
	symbol := ""
	if m := wordOfUnknown().FindStringSubmatch(text); m != nil {
		g.Any, symbol = true, m[1]
		if symbol == "" {
			return g, &misread{"a letter without a number needs a unit", "the word any and a unit, such as any kg"}
		}
	} else {
		m := numeral().FindStringSubmatch(text)
		if m == nil {
			return g, &misread{fmt.Sprintf("%q is not a quantity", shorten(text)), "a number and a unit, such as 3.2 kg"}
		}
		if digitGroups().MatchString(m[2]) {
			return g, &misread{fmt.Sprintf("the comma in %q can be read in two ways", shorten(text)), "a number with a decimal point and no other marks"}
		}
		number, err := quantity.ParseNumber(plainNumeral(m[2]))
		if err != nil {
			return g, &misread{fmt.Sprintf("%q: %v", shorten(text), err), "a number that is not too large or too small"}
		}
		g.Minus, g.Number, symbol = m[1] != "", number, m[3]
	}
	unit, wrong := readUnit(symbol)
	g.Unit = unit
	return g, wrong
}

// plainNumeral turns the decimal comma and every spelling of a power of ten into
// the forms of quantity.ParseNumber.
func plainNumeral(typed string) string {
	typed = powerOfTen().ReplaceAllString(typed, "×10^")
	return strings.TrimSuffix(strings.Replace(typed, ",", ".", 1), ".")
}

func readUnit(symbol string) (quantity.Unit, *misread) {
	if symbol == "" {
		symbol = "none"
	}
	unit, ok := quantity.Find(symbol)
	switch {
	case !ok:
		return unit, &misread{fmt.Sprintf("unknown unit %q", shorten(symbol)), "one of " + strings.Join(units, " ")}
	case !slices.Contains(units, unit.Symbol):
		return unit, &misread{fmt.Sprintf("problem files cannot use the unit %s", unit.Symbol), "one of " + strings.Join(units, " ")}
	}
	return unit, nil
}

// givens reads the part "given": quantities, and formulas in other givens, whose
// expressions are still unread.
func (r *reader) givens(n *yaml.Node) (list []statics.Given, formulas []*formula) {
	keys := givenNames(n)
	for i, e := range r.mapping(n, `"given"`, "m: 3.2 kg") {
		if i == mostGivens && !r.kept {
			r.at(e.key, "there are too many given values", fmt.Sprintf("at most %d", mostGivens))
			break
		}
		name, ok := r.letter(e.key, "the given value")
		if !ok {
			continue
		}
		if slices.ContainsFunc(list, func(g statics.Given) bool { return g.Name == name }) {
			r.at(e.key, fmt.Sprintf("the given value %s is listed twice", name), "each letter once")
			continue
		}
		text, ok := r.word(e.value, "the given value "+name, "3.2 kg")
		if !ok {
			continue
		}
		g, wrong := readGiven(name, text)
		// A quantity is tried first: 3 m is three metres, also where m is a given.
		if wrong != nil && followsFrom(text, name, keys) {
			formulas = append(formulas, &formula{node: e.value, what: "the formula for " + name, letter: name})
			continue
		}
		if wrong != nil {
			r.at(e.value, wrong.what, wrong.expected)
			continue
		}
		// This rule came later; a file that a record kept must stay readable.
		if g.Minus && g.Unit.Dim == quantity.Mass && !r.kept {
			r.at(e.value, "the mass "+name+" is negative", "a number above zero")
			continue
		}
		if size := math.Abs(g.Value()); size != 0 && (size < leastGiven || size > mostGiven) && !r.kept {
			r.at(e.value, name+" is too large or too small for this program", "a number from 1e-9 to 1e12 in N, kg or m")
			continue
		}
		list = append(list, g)
	}
	return list, formulas
}

// The least and the most that a given can be, in SI units. Beyond them, rounding decides whether
// the forces balance.
const (
	leastGiven = 1e-9
	mostGiven  = 1e12
)

// followsFrom reports whether a given is a formula: it names another given, or a
// function.
func followsFrom(text, name string, givens map[string]*yaml.Node) bool {
	for _, m := range letterRun().FindAllStringSubmatchIndex(text, -1) {
		run := text[m[4]:m[5]]
		rest := strings.TrimSpace(text[m[5]:])
		if slices.Contains(functions, strings.ToLower(run)) && (strings.HasPrefix(rest, "(") || len(rest) > 0) {
			return true
		}
		letter := canonical(run)
		_, isUnit := quantity.Find(run)
		// In 3 m + h the m behind the number is a unit, so it does not make the given a formula.
		if givens[letter] != nil && letter != name && !(isUnit && m[2] >= 0) {
			return true
		}
	}
	return false
}

// PrintGiven writes a given as a statement shows it: "3.2 kg", "35°", "0.45"; the
// letter for one without a number.
func PrintGiven(g statics.Given) string {
	if g.Any {
		return setLetter(g.Name)
	}
	text := g.Number.Text
	if g.Minus {
		text = "−" + text
	}
	switch g.Unit.Symbol {
	case "deg":
		return text + "°"
	case "none", "":
		return text
	}
	return text + " " + strings.Replace(g.Unit.Symbol, "^2", "²", 1)
}

// unreadableGivens reports whether "given" is no mapping at all, so that nothing
// can be said of its letters.
func (d *draft) unreadableGivens() bool {
	n := d.top.values["given"]
	return n != nil && n.Kind != yaml.MappingNode || n == nil && d.top.misspelt("given", problemKeys)
}
