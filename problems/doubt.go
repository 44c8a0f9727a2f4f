package problems

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// warnings looks for what can be solved and meant, and is more often a slip of the
// author. None of it refuses a file.
func (r *reader) warnings(d *draft) Findings {
	s, err := solve(d.System)
	if err != nil {
		return nil
	}
	for _, look := range []func(*draft, *solution){
		r.frictionOfWeight, r.largeCoefficient, r.springInNewtons, r.strutThatPulls, r.stringThatPushes,
		r.otherAxis, r.askedInText, r.otherG, r.numberTwice,
	} {
		look(d, s)
	}
	r.doubts.sort()
	return r.doubts
}

// frictionOfWeight warns of a friction force that is a coefficient times the weight where the
// normal force differs from the weight. It compares numbers, so that mu*m*g*cos(alpha) passes.
func (r *reader) frictionOfWeight(d *draft, s *solution) {
	for _, f := range d.forces {
		normal, weight := d.only(f.On, statics.Normal), d.only(f.On, statics.Weight)
		if f.Kind != statics.Friction || f.size == nil || f.Size == nil || normal == nil || weight == nil || f.Size.Has(normal.Name) {
			continue
		}
		n, w := s.value(normal.Name), s.value(weight.Name)
		if alike(n, w) {
			continue
		}
		for _, c := range s.plainFactors(f.Size) {
			if alike(c.value*w, s.value(f.Name)) {
				r.warn(f.size.node.Line, f.size.node.Column, fmt.Sprintf("the friction %s is %s times the weight %s, but the normal force %s is not equal to %s here; did you mean size: %s*%s?",
					f.Name, c.text, weight.Name, normal.Name, weight.Name, c.text, normal.Name))
			}
		}
	}
}

// only returns the one force of a kind on a body, nil where there are none or several.
func (d *draft) only(body string, kind statics.Kind) *forceEntry {
	var found *forceEntry
	for _, f := range d.forces {
		switch {
		case f.On != body || f.Kind != kind:
		case found != nil:
			return nil
		default:
			found = f
		}
	}
	return found
}

// plainFactor is a number or a letter without a unit.
type plainFactor struct {
	text  string
	value float64
}

func (s *solution) plainFactors(tree *expr.Node) (all []plainFactor) {
	tree.Walk(func(n *expr.Node) {
		switch v, _ := s.Variable(n.Name); {
		case n.Op == expr.Number && n.Unit == "":
			all = append(all, plainFactor{n.Num.Text, n.Num.Value})
		case n.Op == expr.Name && v.Dim == quantity.None:
			all = append(all, plainFactor{n.Name, s.value(n.Name)})
		}
	})
	return all
}

func alike(a, b float64) bool { return math.Abs(a-b) <= 1e-6*(math.Abs(a)+math.Abs(b)) }

// largestCoefficient is more than nearly all pairs of surfaces have.
const largestCoefficient = 2

// largeCoefficient warns of a coefficient of friction such as 45, meant as 0.45.
func (r *reader) largeCoefficient(d *draft, s *solution) {
	for _, g := range d.System.Givens {
		if g.Any || g.Unit.Dim != quantity.None || g.Value() <= largestCoefficient || !d.isCoefficient(g.Name) {
			continue
		}
		meant := g.Value()
		power := 1.0
		for meant/power >= 1 {
			power *= 10
		}
		n := d.given[g.Name]
		r.warn(n.Line, n.Column, fmt.Sprintf("%s is %s: a coefficient of friction above %d is rare; did you mean %s?",
			g.Name, g.Number.Text, largestCoefficient, strconv.FormatFloat(meant/power, 'g', -1, 64)))
	}
}

// isCoefficient reports whether a letter multiplies a normal force in the size of a friction.
func (d *draft) isCoefficient(name string) bool {
	return slices.ContainsFunc(d.forces, func(f *forceEntry) bool {
		normal := func(n *forceEntry) bool { return n.Kind == statics.Normal && f.Size.Has(n.Name) }
		return f.Kind == statics.Friction && f.Size != nil && f.Size.Has(name) && slices.ContainsFunc(d.forces, normal)
	})
}

// springInNewtons warns of a spring constant given as a force, so that the extension comes
// out as a plain number.
func (r *reader) springInNewtons(d *draft, s *solution) {
	for _, f := range d.forces {
		if f.Kind != statics.Spring || f.size == nil || f.Size == nil || f.Size.Op != expr.Mul {
			continue
		}
		for i, factor := range f.Size.Args {
			other := f.Size.Args[1-i].Name
			g, isGiven := d.System.Given(factor.Name)
			v, _ := s.Variable(other)
			if n := d.given[factor.Name]; isGiven && g.Unit.Dim == quantity.Force && v.Role == statics.IsUnknown && v.Dim == quantity.None {
				r.warn(n.Line, n.Column, fmt.Sprintf("%s has no unit, because %s is in %s; a spring constant is in N/m", other, g.Name, g.Unit.Symbol))
			}
		}
	}
}

// strutThatPulls warns of a strut whose force comes out negative. A strut may push or pull, so
// this can be solved; the student would be asked for a compression below zero.
func (r *reader) strutThatPulls(d *draft, s *solution) {
	for _, f := range d.forces {
		size := s.value(f.Name)
		if f.Kind != statics.Strut || !(size < -1e-9*s.largestForce()) {
			continue
		}
		said := fmt.Sprintf("the equations give a negative value for %s (%s), so the strut acts in the opposite direction", f.Name, inUnit(size, d.forceUnit()))
		if f.Direction == nil {
			said += "; did you mean points: " + opposed(f.Points) + "?"
		}
		r.warn(f.name.Line, f.name.Column, said)
	}
}

// opposed writes the opposite of two sides as "points" has them.
func opposed(points statics.Side) string {
	var words []string
	for _, s := range sides {
		for axis := range s.side {
			if s.side[axis] != 0 && s.side[axis] == -points[axis] {
				words = append(words, s.word)
			}
		}
	}
	return strings.Join(words, " ")
}

// props are names of things that push.
var props = []string{"strut", "prop"}

// stringThatPushes warns of a tension in something that is called a strut.
func (r *reader) stringThatPushes(d *draft, _ *solution) {
	for _, f := range d.forces {
		for _, word := range strings.Fields(strings.ToLower(f.by)) {
			if f.Kind == statics.Tension && slices.Contains(props, word) {
				r.warn(f.name.Line, f.name.Column, fmt.Sprintf("%s is a tension, but the file says that a %s exerts it; a %s that pushes has kind: strut", f.Name, word, word))
			}
		}
	}
}
