package solved

import (
	"strings"
	"unicode"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// The names that letters go by in words ("normal force", "tension 1", "mass"), and
// spellings that follow from a letter ("FT1", "Tx1"). A name serves only where one letter
// of the problem can be meant.

// kindNames are the names of a kind of force.
var kindNames = []struct {
	kind  statics.Kind
	names string
}{
	{statics.Weight, "weight, weight force, gravity, gravity force, gravitational force, force of gravity"},
	{statics.Normal, "normal, normal force, normal reaction, reaction, reaction force, support force, contact force"},
	{statics.Friction, "friction, friction force, frictional force, force of friction"},
	{statics.Tension, "tension, tension force, string tension, rope tension, cord tension, cable tension"},
	{statics.Spring, "spring force, spring, force of the spring, elastic force"},
	{statics.Push, "push, push force, pushing force"},
	{statics.Pull, "pull, pull force, pulling force"},
	{statics.Strut, "strut, strut force, thrust"},
}

// measureNames are the names of a letter that is alone in measuring something.
var measureNames = []struct {
	dim   quantity.Dimension
	names string
}{
	{quantity.Mass, "mass"},
	{quantity.Angle, "angle"},
	{quantity.Stiffness, "spring constant, stiffness"},
}

// coefficientNames are what mu is called.
const coefficientNames = "coefficient, coefficient of friction, friction coefficient, coefficient of static friction, coefficient of kinetic friction"

var countWords = []string{"", "one", "two", "three", "four", "five"}

// addNames adds the names and spellings of what a line about a body may speak of; nil
// for all bodies.
func (x *Vocabulary) addNames(l *expr.Letters, m *statics.Model, body *statics.Body) {
	for _, v := range m.Variables {
		l.Measures(v.Name, v.Dim)
	}
	for _, e := range x.Equals {
		l.Measures(e.Name, m.Variables[e.Slots[0]].Dim)
	}
	for i := range x.Components {
		c := &x.Components[i]
		l.Measures(c.Name, quantity.Force)
		if body == nil || m.Bodies[c.Body].Name == body.Name {
			addSpellings(l, c)
			l.Phrase(c.Axis.String()+" component of "+c.Force.Name, c.Name)
		}
	}
	forces := forcesOn(m, body)
	for _, row := range kindNames {
		addKind(l, ofKind(forces, row.kind), row.names)
	}
	for _, e := range x.Equals {
		// “tension” is the letter T of equal tensions only if T stands for all the strings.
		if f, ok := m.Force(m.Variables[e.Slots[0]].Name); ok && len(e.Slots) == len(ofKind(forces, f.Kind)) {
			for _, row := range kindNames {
				if row.kind == f.Kind {
					addPhrases(l, row.names, e.Name)
				}
			}
		}
	}
	for _, row := range measureNames {
		if name := onlyMeasure(m, row.dim); name != "" {
			addPhrases(l, row.names, name)
		}
	}
	if l.Has("mu") {
		addPhrases(l, coefficientNames, "mu")
	}
	for i := range m.Bodies {
		l.Body(m.Bodies[i].Name)
	}
}

// addSpellings adds what a component and its force may be typed as: Tx1, FT1x, FT1.
func addSpellings(l *expr.Letters, c *Component) {
	stem, index := cutIndex(c.Force.Name)
	if index != "" {
		l.Alias(stem+c.Axis.String()+index, c.Name)
	}
	// Nobody writes FF1 for a force that is called F1.
	if !strings.HasPrefix(c.Force.Name, "F") {
		l.Alias("F"+c.Force.Name, c.Force.Name)
		l.Alias("F"+c.Force.Name+c.Axis.String(), c.Name)
	}
}

// cutIndex takes the digits off the end of a name.
func cutIndex(name string) (stem, index string) {
	stem = strings.TrimRight(name, "0123456789")
	return stem, name[len(stem):]
}

// forcesOn lists the forces on a body, on all for nil, each name once.
func forcesOn(m *statics.Model, body *statics.Body) []*statics.Force {
	var forces []*statics.Force
	seen := map[string]bool{}
	for b := range m.Bodies {
		if body != nil && m.Bodies[b].Name != body.Name {
			continue
		}
		for i := range m.Bodies[b].Forces {
			if f := &m.Bodies[b].Forces[i]; !seen[f.Name] {
				seen[f.Name] = true
				forces = append(forces, f)
			}
		}
	}
	return forces
}

func ofKind(forces []*statics.Force, kind statics.Kind) []*statics.Force {
	var some []*statics.Force
	for _, f := range forces {
		if f.Kind == kind {
			some = append(some, f)
		}
	}
	return some
}

// onlyUnknown returns the force that is alone of its kind, or alone in being asked for, or alone in
// having a usual letter of the kind: where T and H are tensions, "tension" is T.
func onlyUnknown(forces []*statics.Force) *statics.Force {
	if len(forces) == 1 {
		return forces[0]
	}
	if only := onlyOne(forces, func(f *statics.Force) bool { return f.Size == nil }); only != nil {
		return only
	}
	return onlyOne(forces, func(f *statics.Force) bool { _, usual := KindOfLetter(f.Name); return usual })
}

// onlyOne returns the one force of which something holds, nil for none or several.
func onlyOne(forces []*statics.Force, holds func(*statics.Force) bool) *statics.Force {
	var only *statics.Force
	for _, f := range forces {
		if !holds(f) {
			continue
		}
		if only != nil {
			return nil
		}
		only = f
	}
	return only
}

// addKind adds the names of the forces of one kind: alone it has the kind's own names,
// and each has them with its index or letter behind.
func addKind(l *expr.Letters, forces []*statics.Force, names string) {
	if only := onlyUnknown(forces); only != nil {
		addPhrases(l, names, only.Name)
	}
	for _, f := range forces {
		for name := range strings.SplitSeq(names, ", ") {
			l.Phrase(name+" "+f.Name, f.Name)
			_, index := cutIndex(f.Name)
			switch {
			case len(index) == 1 && int(index[0]-'0') < len(countWords):
				l.Phrase(name+" "+index, f.Name)
				l.Phrase(name+" "+countWords[index[0]-'0'], f.Name)
				l.Phrase(name+" sub "+index, f.Name)
			// “tension A” for TA.
			case index == "" && len(f.Name) == 2 && unicode.IsLetter(rune(f.Name[1])):
				l.Phrase(name+" "+f.Name[1:], f.Name)
			}
		}
	}
}

func addPhrases(l *expr.Letters, names, letter string) {
	for name := range strings.SplitSeq(names, ", ") {
		l.Phrase(name, letter)
	}
}

// onlyMeasure returns the letter that is alone in measuring something, "" if there are
// several.
func onlyMeasure(m *statics.Model, dim quantity.Dimension) string {
	only := ""
	for _, v := range m.Variables {
		if v.Dim != dim {
			continue
		}
		if only != "" {
			return ""
		}
		only = v.Name
	}
	return only
}

// SameStem reports whether two letters differ only in a subscript: m1 and m.
func SameStem(a, b string) bool {
	return strings.TrimRight(a, "0123456789") == strings.TrimRight(b, "0123456789")
}
