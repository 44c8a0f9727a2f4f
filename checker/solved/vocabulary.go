package solved

import (
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// Vocabulary holds the letters that a student may type for one system, and where
// each has its place in an environment: first the model's variables, then the
// letters of equal sizes, then the components.
type Vocabulary struct {
	Slots      map[string]int
	Equals     []EqualLetter
	Components []Component
	Readers    map[string]*expr.Letters // by body; "" where no body is named
	width      int
}

type EqualLetter struct {
	Name  string
	Slot  int
	Slots []int
}

// Component is one force's component on one axis of its body. Name is how it is
// called in files and reports: T1x, or A.T1x where there are several bodies.
type Component struct {
	Name  string
	Body  int
	Force *statics.Force
	Axis  statics.Axis
	Slot  int
	Term  Term
}

// usualLetters are letters that teachers write for a kind of force, whatever the
// problem calls it. They serve where only one force of the kind is on the body
// and the problem does not use the letter otherwise.
var usualLetters = []struct {
	kind    statics.Kind
	letters string
}{
	{statics.Weight, "w W Fg FG G"},
	{statics.Normal, "N FN R n"},
	{statics.Friction, "f Ff FR Ffr fs fk"},
	{statics.Tension, "T FT"},
}

func (x *Vocabulary) place(name string) int {
	if slot, taken := x.Slots[name]; taken {
		return slot
	}
	x.Slots[name] = x.width
	x.width++
	return x.width - 1
}

// Component finds a component by its name in reports.
func (x *Vocabulary) Component(name string) (*Component, bool) {
	for i := range x.Components {
		if x.Components[i].Name == name {
			return &x.Components[i], true
		}
	}
	return nil, false
}

// HasKind reports whether a force of the kind is on the body.
func HasKind(body *statics.Body, kind statics.Kind) bool {
	return slices.ContainsFunc(body.Forces, func(f statics.Force) bool { return f.Kind == kind })
}

// OnlyOf returns the force that is alone of its kind on the body, nil for none.
func OnlyOf(b *statics.Body, kind statics.Kind) *statics.Force {
	var only *statics.Force
	for i := range b.Forces {
		if b.Forces[i].Kind == kind {
			if only != nil {
				return nil
			}
			only = &b.Forces[i]
		}
	}
	return only
}

func kindOf(v statics.Variable) expr.Kind {
	switch v.Dim {
	case quantity.Angle:
		return expr.Angle
	case quantity.Mass:
		return expr.Mass
	}
	return expr.Plain
}

// KindOfLetter tells which kind of force a usual letter speaks of.
func KindOfLetter(name string) (statics.Kind, bool) {
	for _, u := range usualLetters {
		if slices.Contains(strings.Fields(u.letters), name) {
			return u.kind, true
		}
	}
	return "", false
}
