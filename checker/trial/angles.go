package trial

import (
	"math"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// AngleLetters lists the letters that stand for angles: those of forces, and that of the slope
// under the body.
func (p *Problem) AngleLetters(body int) []string {
	var letters []string
	for _, v := range p.Variables {
		tilts := p.Bodies[body].Tilt != nil && p.Bodies[body].Tilt.Has(v.Name) && v.Dim == quantity.Angle
		if v.Angle || tilts {
			letters = append(letters, v.Name)
		}
	}
	return letters
}

// AngleValues lists the sizes of the angles at which the body's forces are drawn, in radians.
func (p *Problem) AngleValues(body *statics.Body) []float64 {
	var all []float64
	for i := range body.Forces {
		f := &body.Forces[i]
		if factor := f.Factor(statics.X); f.Slanted() && factor.Angle != nil {
			if a := p.ProgramOf(factor.Angle).Run(p.Solution); !math.IsNaN(a) {
				all = append(all, a)
			}
		}
	}
	return all
}

// Factors lists what a value may have been divided by instead of multiplied: the plain numbers
// that are given, the functions of the given angles, and for a length the stiffnesses.
func (p *Problem) Factors(dim quantity.Dimension) []float64 {
	var all []float64
	for i, v := range p.Variables {
		x := p.Solution[i]
		switch {
		case v.Role != statics.IsGiven || x == 0:
		case v.Dim == quantity.None, v.Dim == quantity.Stiffness && dim == quantity.Length:
			all = append(all, x)
		case v.Dim == quantity.Angle:
			all = append(all, math.Sin(x), math.Cos(x), math.Tan(x))
		}
	}
	for _, a := range p.Directions() {
		all = append(all, math.Sin(a.Value), math.Cos(a.Value), math.Tan(a.Value))
	}
	return all
}

// IsAWeight reports whether a value is the size of one of the weights.
func (p *Problem) IsAWeight(x float64) bool {
	for _, b := range p.Bodies {
		for _, f := range b.Forces {
			if w := p.Solution[p.Slots[f.Name]]; f.Kind == statics.Weight && math.Abs(w-x) <= RoundedShare*math.Abs(x) {
				return true
			}
		}
	}
	return false
}

// Text prints a tree of the problem.
func (p *Problem) Text(n *expr.Node) string { return p.Readers[""].PrintNode(n) }

// SpeaksOf reports whether a letter of a tree belongs to a force, an angle or an unknown: its own
// letter, a component of it, or a letter of its size.
func (p *Problem) SpeaksOf(n *expr.Node, about string) bool {
	f, isForce := p.Force(about)
	for _, name := range n.Names() {
		if c, ok := p.Component(name); ok {
			if c.Force.Name == about {
				return true
			}
			continue
		}
		if name == about || p.Owner(name) == about || isForce && f.Size != nil && f.Size.Has(name) {
			return true
		}
	}
	return false
}

// BodyName is how a body is called in a sentence: by its letter, or by its word with an article.
func (p *Problem) BodyName(b int) string {
	name := p.Bodies[b].Name
	if len(name) > 1 && name == strings.ToLower(name) {
		return "the " + name
	}
	return name
}
