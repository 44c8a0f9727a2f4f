package problems

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// Warnings about a text that says something else than the rest of the file.

// angleInText finds an angle whose axis the text names.
var angleInText = pattern.Of(`\{([^{}]*)\}\s+(?:to|from|with|above|below)\s+the\s+(vertical|horizontal)`)

// otherAxis warns of an angle that the text counts from one axis and the forces only from
// the other.
func (r *reader) otherAxis(d *draft, _ *solution) {
	axes := map[string][]statics.Axis{}
	var letters []string
	for _, m := range angleInText().FindAllStringSubmatch(d.Text, -1) {
		letter := canonical(m[1])
		axis := statics.X
		if m[2] == "vertical" {
			axis = statics.Y
		}
		axes[letter] = append(axes[letter], axis)
		letters = append(letters, letter)
	}
	for i, letter := range letters {
		f := d.soleUse(letter)
		if slices.Index(letters, letter) != i || f == nil || slices.Contains(axes[letter], f.From) {
			continue
		}
		n := f.angle.node
		word := map[statics.Axis]string{statics.X: "horizontal", statics.Y: "vertical"}
		r.warn(n.Line, n.Column, fmt.Sprintf("the text measures %s from the %s, but the force %s measures it from the %s; did you mean from: %s?",
			letter, word[f.From.Other()], f.Name, word[f.From], f.From.Other()))
	}
}

// soleUse returns a force that has a letter as its angle in level axes, nil where the letter is
// used in another way, too. A normal force does not count: the angle that it has from the
// vertical is the angle that its surface has from the horizontal.
func (d *draft) soleUse(letter string) (found *forceEntry) {
	uses := 0
	for _, e := range d.formulas() {
		if e.tree.Has(letter) {
			uses++
		}
	}
	for _, f := range d.forces {
		if f.angle == nil || f.angle.tree.Op != expr.Name || f.angle.tree.Name != letter || f.Kind == statics.Normal || d.tilts[f.On] != nil {
			continue
		}
		if uses--; found != nil && found.From != f.From {
			return nil
		}
		found = f
	}
	if uses != 0 {
		return nil
	}
	return found
}

// request finds what a text asks for, up to where a condition begins.
var (
	request   = pattern.Of(`(?:^|[.?!]\s+)(?:Find|Calculate|Determine|Work out|What|Which|How)\b((?:[^.?!]|[.]\S)*)`)
	condition = pattern.Of(`\b(?:so that|that|which|when|if|where|while|in terms of|as a function of|for|without|instead)\b.*`)
	askedFor  = pattern.Of(`(?:^|\band)\s+(?:at what|what|the|its) (angle|mass|coefficient|extension)\b(?:\s+(\w+))?`)
)

// askable is what the nouns of askedFor measure.
var askable = map[string]quantity.Dimension{"angle": quantity.Angle, "mass": quantity.Mass, "coefficient": quantity.None, "extension": quantity.Length}

// askedInText warns of what the text asks for and "find" does not.
func (r *reader) askedInText(d *draft, s *solution) {
	n := d.top.values["find"]
	for _, m := range request().FindAllStringSubmatch(strings.Join(strings.Fields(d.Text), " "), -1) {
		asked := condition().ReplaceAllString(m[1], "")
		before := len(r.doubts)
		for _, letter := range word().FindAllString(asked, -1) {
			if said := d.notFound(s, canonical(letter)); said != "" {
				r.warn(n.Line, n.Column, said)
			}
		}
		for _, noun := range askedFor().FindAllStringSubmatch(asked, -1) {
			measures := func(name string) bool { v, _ := s.Variable(name); return v.Dim == askable[noun[1]] }
			// One warning for “the angle theta” is enough.
			if len(r.doubts) == before && !d.isAsked(canonical(noun[2])) && !slices.ContainsFunc(d.System.Find, measures) {
				r.warn(n.Line, n.Column, fmt.Sprintf("the text asks for the %s, but \"find\" contains no letter for it", noun[1]))
			}
		}
	}
}

// notFound says that a letter in a request is not in "find", "" where it is, or is no unknown.
func (d *draft) notFound(s *solution, name string) string {
	v, known := s.Variable(name)
	switch {
	// Words of the language are no letters.
	case !known || slices.Contains([]string{"a", "A", "I"}, name) || d.isAsked(name):
		return ""
	case d.follows(name):
		return name + " follows from the given values, so the problem cannot ask for it; remove it from the question in the text"
	// A force that has a size may be named as a thing: “between cord C and the x axis”.
	case v.Role != statics.IsUnknown:
		return ""
	}
	return fmt.Sprintf("the text asks for %s, but \"find\" does not contain it", name)
}

// isAsked reports whether "find" has a letter, or the common letter of forces of one size.
func (d *draft) isAsked(name string) bool {
	if slices.Contains(d.System.Find, name) {
		return true
	}
	return slices.ContainsFunc(d.System.Equal, func(e statics.Equal) bool {
		group := append(slices.Clone(e.Names), e.Letter)
		return slices.Contains(group, name) && slices.ContainsFunc(d.System.Find, func(f string) bool { return slices.Contains(group, f) })
	})
}

var gInText = pattern.Of(`\bg\s*=\s*(\d+(?:[.,]\d+)?)`)

// otherG warns of a g in the text that is not the one of the file.
func (r *reader) otherG(d *draft, _ *solution) {
	g, used := d.System.Given("g")
	m := gInText().FindStringSubmatch(d.Text)
	if !used || m == nil {
		return
	}
	if x, err := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64); err != nil || math.Abs(x-g.Value()) < 1e-9 {
		return
	}
	line, column := r.placeInText(d.top.values["text"], m[0], 1)
	r.warn(line, column, fmt.Sprintf("the text says %s, but the file uses g = %s; write g: %s m/s^2 under \"given\", and {g} in the text", m[0], PrintGiven(g), m[1]))
}

// numberBefore finds a number with a unit in front of a letter in braces.
var numberBefore = pattern.Of(`(\d+(?:[.,]\d+)?\s*([^\s\d(){}]+))\s*\(?\{([^{}]*)\}`)

// numberTwice warns of a number in the text where the letter behind it prints its own.
func (r *reader) numberTwice(d *draft, _ *solution) {
	for _, m := range numberBefore().FindAllStringSubmatch(d.Text, -1) {
		unit, isUnit := quantity.Find(m[2])
		g, isGiven := d.System.Given(canonical(m[3]))
		if !isUnit || !isGiven || g.Unit.Dim != unit.Dim {
			continue
		}
		line, column := r.placeInText(d.top.values["text"], m[1], 1)
		r.warn(line, column, fmt.Sprintf("the text has the number %[1]s in front of {%[2]s}, but the program replaces {%[2]s} with %[3]s; remove %[1]s", m[1], m[3], PrintGiven(g)))
	}
}
