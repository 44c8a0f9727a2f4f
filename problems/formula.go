package problems

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// letterRun matches letters that stand together in an expression, with the number
// in front of them if there is one: a unit belongs to a number.
var letterRun = pattern.Of(`(\d[.,]?\s*)?(\p{L}[\p{L}\p{N}_₀-₉]*)`)

// vocabulary gathers the letters of the problem. A file need not declare its
// unknowns, so those that stand in expressions are found first: capitals count
// here, and M must not be taken for a given m.
func vocabulary(givens []statics.Given, forces []*forceEntry, formulas []*formula) *expr.Letters {
	l := &expr.Letters{}
	for _, g := range givens {
		l.Add(g.Name, letterKind(g.Unit.Dim))
	}
	for _, f := range formulas {
		if f.letter != "" {
			l.Add(f.letter, f.kindOf(givens))
		}
	}
	for _, f := range forces {
		l.Add(f.Name, expr.Plain)
	}
	for _, f := range formulas {
		// A letter that is all of an angle may be an unknown angle, which nothing else declares.
		if name := canonical(strings.TrimSpace(f.node.Value)); f.angle && isLetter(name) {
			l.Add(name, expr.Angle)
		}
	}
	// A file need not give g; if it is used, assumeGravity adds it later.
	l.Add("g", expr.Plain)
	for _, f := range formulas {
		for _, m := range letterRun().FindAllStringSubmatch(f.node.Value, -1) {
			name := canonical(m[2])
			// Behind a number, N is the newton and no letter.
			if _, unit := quantity.Find(m[2]); isLetter(name) && !(m[1] != "" && unit) && !splits(m[2], l) {
				l.Add(name, expr.Plain)
			}
		}
	}
	return l
}

// kindOf tells a formula that is an angle from others: it ends in an inverse function,
// or its letters are angles.
func (f *formula) kindOf(givens []statics.Given) expr.Kind {
	for _, m := range letterRun().FindAllStringSubmatch(f.node.Value, -1) {
		if slices.Contains([]string{"asin", "acos", "atan", "arcsin", "arccos", "arctan", "deg"}, strings.ToLower(m[2])) {
			return expr.Angle
		}
		for _, g := range givens {
			if g.Name == canonical(m[2]) && g.Unit.Dim == quantity.Angle {
				return expr.Angle
			}
		}
	}
	return expr.Plain
}

func letterKind(d quantity.Dimension) expr.Kind {
	switch d {
	case quantity.Angle:
		return expr.Angle
	case quantity.Mass:
		return expr.Mass
	}
	return expr.Plain
}

// splits reports whether a run is made of known letters and functions only, as
// "mg" and "mgsin" are.
func splits(run string, l *expr.Letters) bool {
	if run == "" {
		return true
	}
	for n := 1; n <= len(run); n++ {
		if (l.Has(run[:n]) || slices.Contains(functions, run[:n])) && splits(run[n:], l) {
			return true
		}
	}
	return false
}

// read makes the formula's tree. The likeliest reading of a student's line is not
// good enough for a file: where there are two, the author has to choose.
func (r *reader) read(f *formula, l *expr.Letters) {
	text := f.node.Value
	if at := digitGroups().FindStringIndex(text); at != nil {
		r.within(f.node, len([]rune(text[:at[0]])), "the comma in this number can be read in two ways", "a number with a decimal point and no other marks")
		return
	}
	reading, err := l.Read(text)
	if err != nil {
		r.unreadable(f, err)
		return
	}
	line := reading.Lines[0]
	switch {
	case len(line.Sides) != 1:
		r.at(f.node, f.what+" is an equation", "an expression")
	case len(reading.Lines) > 1 && line.Slash:
		r.at(f.node, fmt.Sprintf("the slash in %q can be read in two ways", shorten(text)), "brackets around the denominator, or around the whole fraction")
	case r.knownLetters(f, line.Sides[0]):
		f.tree = line.Sides[0]
	}
}

func (r *reader) unreadable(f *formula, err error) {
	pos := 0
	if e, ok := err.(*expr.ReadError); ok {
		pos = e.Pos
	}
	r.within(f.node, pos, f.what+" cannot be read: "+fragment(err.Error()), "an expression that uses the letters of the problem")
}

// fragment turns a sentence to a student into a part of one.
func fragment(sentence string) string {
	runes := []rune(strings.TrimSuffix(sentence, "."))
	if len(runes) > 1 && !unicode.IsUpper(runes[1]) {
		runes[0] = unicode.ToLower(runes[0])
	}
	return string(runes)
}

// knownLetters refuses names that no letter can have. A stranger that could be a
// letter is one more unknown.
func (r *reader) knownLetters(f *formula, tree *expr.Node) bool {
	ok := true
	tree.Walk(func(n *expr.Node) {
		switch {
		case !n.Unknown:
		case isLetter(n.Name) && !slices.Contains(functions, strings.ToLower(n.Name)) && !isCommand(n.Name, r.kept):
			n.Unknown = false
		default:
			r.within(f.node, n.Pos, fmt.Sprintf("%s contains the word %q, which is not a letter", f.what, shorten(n.Name)), "a letter with at most three letters or digits after it")
			ok = false
		}
	})
	return ok
}
