package tutor

import (
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
	"example.org/standstill/problems"
)

// Given is one given of a problem as it is listed: its letter, its value with the unit
// ("" for a letter without a number), and what it is, which may be "".
type Given struct{ Letter, Value, Meaning string }

// Text is a given without its meaning: "α = 35°".
func (g Given) Text() string {
	if g.Value == "" {
		return g.Letter + " (any)"
	}
	return g.Letter + " = " + g.Value
}

// Givens lists what is given, g among it, in the order of the file.
func (g *Page) Givens() []Given {
	var all []Given
	for _, given := range g.Problem.System.Givens {
		all = append(all, Given{expr.Set(given.Name), givenValue(given), g.Meaning(given.Name)})
	}
	return all
}

func givenValue(g statics.Given) string {
	if g.Any {
		return ""
	}
	return problems.PrintGiven(g)
}

// Meaning says what a letter is: what the file says, else as far as it can be said without telling which forces
// act: "left rope, from the vertical". It is "" for letters that need no word.
func (g *Page) Meaning(name string) string {
	if said := g.Problem.System.Words.Meaning[name]; said != "" {
		return said
	}
	v, ok := g.Ref.Variable(name)
	if !ok || name == "g" {
		return ""
	}
	for i := range g.Ref.Bodies {
		b := &g.Ref.Bodies[i]
		// Before the forces: their angles on a slope are the slope's.
		if v.Angle && b.Tilt != nil && isLetter(b.Tilt, name) {
			return saidSlope
		}
		for j := range b.Forces {
			f := &b.Forces[j]
			if v.Angle && (isLetter(f.Angle, name) || isLetter(f.Direction, name)) {
				return g.angleOf(b, f)
			}
			if f.Size == nil || !slices.Contains(f.Size.Names(), name) {
				continue
			}
			switch v.Dim {
			case quantity.Mass:
				return onWhose(saidMass, b)
			case quantity.Stiffness:
				return saidStiffness
			case quantity.Force:
				if f.Kind == statics.Weight {
					return onWhose(saidWeight, b)
				}
				return saidForceOf(g.which(b, f))
			case quantity.None:
				if f.Kind == statics.Friction {
					return saidFriction
				}
			}
		}
	}
	return ""
}

// isLetter tells whether an expression is a letter, with a minus or without.
func isLetter(n *expr.Node, name string) bool {
	for n != nil && n.Op == expr.Neg {
		n = n.Args[0]
	}
	return n != nil && n.Op == expr.Name && n.Name == name
}

func onWhose(what string, b *statics.Body) string {
	if b.Name == "" {
		return what
	}
	return what + " of " + b.Name
}

// angleOf says what an angle is of, and from which line it is measured.
func (g *Page) angleOf(b *statics.Body, f *statics.Force) string {
	switch {
	// These have an angle only where a slope has turned the axes.
	case f.Kind == statics.Weight || f.Kind == statics.Normal:
		return saidSlope
	case f.Direction != nil:
		return g.which(b, f) + saidFromX
	case b.Tilt != nil:
		return g.which(b, f) + saidToSlope
	case f.From == statics.Y:
		return g.which(b, f) + saidFromVertical
	case f.Points[statics.Y] > 0 && f.Kind != statics.Push:
		return g.which(b, f) + saidAboveHorizontal
	case f.Kind == statics.Push || f.Kind == statics.Strut:
		return g.which(b, f) + saidToHorizontal
	}
	return g.which(b, f) + saidBelowHorizontal
}

// which names a force by what exerts it, as the file says or by its kind, and then by its
// side where there are two of its kind.
func (g *Page) which(b *statics.Body, f *statics.Force) string {
	// “floor” would be understood as the normal force.
	if by := g.Problem.System.Words.ByOn(b.Name, f.Name); by != "" && f.Kind != statics.Friction {
		return by
	}
	noun := holderNouns[f.Kind]
	several := 0
	for i := range b.Forces {
		if b.Forces[i].Kind == f.Kind {
			several++
		}
	}
	if several < 2 {
		return noun
	}
	switch f.Points[statics.X] {
	case -1:
		return "left " + noun
	case +1:
		return "right " + noun
	}
	return noun
}
