package wording

import (
	"slices"
	"strings"

	"example.org/standstill/checker/derivation"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
)

// names lists the forces on the body in question, or on all bodies.
func names(s *Subject) string {
	var names []string
	for b := range s.solved.Bodies {
		if s.Body != nil && &s.solved.Bodies[b] != s.Body {
			continue
		}
		for _, f := range s.solved.Bodies[b].Forces {
			if !slices.Contains(names, f.Name) {
				names = append(names, f.Name)
			}
		}
	}
	return listed(names)
}

// lie is the rule for a component, by how the force lies to the axis.
func lie(s *Subject) string {
	switch {
	case s.Force == nil:
		return ""
	case s.Force.Direction != nil:
		// Such an angle goes round the full circle, so there is no triangle to speak of.
		return "If the angle is measured anticlockwise from the positive x axis, use the cosine for the x component and the sine for the y component. The signs are then right, too."
	case s.Force.Slanted():
		return "{The force} is the hypotenuse of a right-angled triangle. {Component} is the side {beside} {angle|its angle}, so use the {function} of that angle."
	case s.Force.Factor(s.axis).Sign != 0:
		return "{The force} acts along {axis}, so its component along this axis is the whole force. If you do not know the magnitude of {force}, use its letter. The sign of the component shows which way {force} points."
	}
	return "A force at right angles to an axis has no component along that axis. What is the angle between {force} and {axis}?"
}

// look asks about the triangle of a slanted force, else about how the force lies.
func look(s *Subject) string {
	if s.Force != nil && s.Force.Slanted() {
		return "In the triangle for {force}, which side is {force} itself, and which side is {component}?"
	}
	return "Does {force} act along {axis}, at right angles to this axis, or at another angle?"
}

// beside says how the component's side lies to the force's angle.
func beside(s *Subject) string {
	switch function(s) {
	case "cosine":
		return "adjacent to"
	case "sine":
		return "opposite"
	}
	return ""
}

func function(s *Subject) string {
	if s.Force == nil {
		return ""
	}
	return map[string]string{"cos": "cosine", "sin": "sine"}[s.Force.Factor(s.axis).Function]
}

// kindRules say where a force of a kind points.
var kindRules = []struct {
	kind statics.Kind
	rule string
}{
	{statics.Tension, "A string pulls along its length, away from the body."},
	{statics.Spring, "A stretched spring pulls along its length, and a compressed spring pushes."},
	{statics.Strut, "A strut pushes along its length, away from its far end."},
	{statics.Normal, "The normal force is at right angles to the surface."},
	{statics.Friction, "Friction opposes sliding along the surface."},
	{statics.Push, "A push or pull acts as the problem says."},
	{statics.Weight, "Weight acts straight down."},
}

// kinds puts together the rules for the kinds of force on the body.
func kinds(s *Subject) string {
	var rules []string
	for _, row := range kindRules {
		// Push and pull share a rule, which speaks of both.
		if s.Body != nil && (solved.HasKind(s.Body, row.kind) || row.kind == statics.Push && solved.HasKind(s.Body, statics.Pull)) {
			rules = append(rules, row.rule)
		}
	}
	return strings.Join(rules, " ")
}

func kind(s *Subject) string {
	for _, row := range kindRules {
		if s.Force != nil && (s.Force.Kind == row.kind || s.Force.Kind == statics.Pull && row.kind == statics.Push) {
			return row.rule
		}
	}
	return ""
}

// square names the line along which a surface pushes.
func square(s *Subject) string {
	for b := range s.solved.Bodies {
		if s.Body != nil && &s.solved.Bodies[b] != s.Body {
			continue
		}
		normal := solved.OnlyOf(&s.solved.Bodies[b], statics.Normal)
		switch {
		case normal == nil:
		case normal.Slanted() || s.solved.Bodies[b].Tilt != nil:
			return "at right angles to the surface"
		case normal.Points[statics.X] != 0:
			return "in the horizontal direction"
		default:
			return "in the vertical direction"
		}
	}
	return "at right angles to the surface"
}

// start is the rule for beginning to solve, by what the first group of sums is.
func start(s *Subject) string {
	how, first := derivation.Begin(s.solved)
	if how == derivation.OneUnknown {
		return "The equation " + first + " has only one unknown, so begin with it."
	}
	return beginnings[how]
}

// beginnings are the rules for beginning without a sum of one unknown.
var beginnings = map[derivation.Beginning]string{
	derivation.Quotient:     "In both equations, collect the unknowns on one side. If you then divide one equation by the other, the magnitude of the force cancels and only the angle is left.",
	derivation.Trying:       "Solve one equation for one unknown and substitute the result into another equation. You can then find the remaining angle numerically.",
	derivation.Substitution: "Solve one equation for one unknown and substitute the result into another equation. Repeat this until an equation has only one unknown.",
}

// askedIn names the unit that is asked for, as in "give T in newtons".
func askedIn(s *Subject) string {
	symbol := asked(s).Symbol
	switch words := unitWords[symbol]; {
	case symbol == "none":
		return "without a unit"
	case words != "":
		return "in " + words
	}
	return "in " + symbol
}

func asked(s *Subject) quantity.Unit {
	if s.Stage == solved.Solve && s.Unknown != "" {
		return s.solved.Unit(s.Unknown)
	}
	return s.solved.UsualUnit(quantity.Force)
}

var unitWords = map[string]string{
	"N": "newtons", "kN": "kilonewtons", "mN": "millinewtons", "lb": "pounds", "kg": "kilograms", "deg": "degrees", "rad": "radians",
	"m": "metres", "cm": "centimetres", "mm": "millimetres", "ft": "feet", "in": "inches",
	"N/m": "newtons per metre", "N/cm": "newtons per centimetre", "kN/m": "kilonewtons per metre",
}

func symbol(s *Subject) string {
	switch symbol := asked(s).Symbol; symbol {
	case "deg":
		return "° or deg"
	case "none":
		return "no unit"
	default:
		return symbol
	}
}

// gravity says what a kilogram weighs here.
func gravity(s *Subject) string {
	if g, ok := s.solved.Given("g"); ok {
		return "In this problem, a mass of 1 kg weighs " + g.Number.Text + " N."
	}
	return "Use the value of g that the problem gives."
}

// component is the step for a component: with its sign, and as a size.
func component(s *Subject) string {
	if s.Force == nil {
		return "Name the component first, for example T1x."
	}
	text := s.page().ComponentEquation(s.Force, s.axis)
	if c := s.page().Tidy(s.Force.Component(s.axis)); c.Op == expr.Neg && !s.Signed {
		return text + ", or " + s.page().Write(c.Args[0]) + " if you give only the magnitude."
	}
	return text + "."
}

// equation is the step for a sum.
func equation(s *Subject) string {
	tree := s.Body.Sum(s.axis)
	if tree == nil {
		return "0 = 0"
	}
	return s.page().Write(s.page().Tidy(tree)) + " = 0"
}

// numbers is the step for solving: the sums that speak of the unknown, with the
// numbers put in.
func numbers(s *Subject) string {
	var sums []string
	for b := range s.solved.Bodies {
		for _, axis := range []statics.Axis{statics.X, statics.Y} {
			tree := s.solved.Bodies[b].Sum(axis)
			if tree != nil && speaksOf(s.solved, tree, s.Unknown) {
				// With nil no unknown counts as found, so the hint does not hold the answer.
				sums = append(sums, s.page().Write(s.page().Insert(s.page().Tidy(tree), nil, 3))+" = 0")
			}
		}
	}
	return strings.Join(append(sums, laws(s)...), "; ")
}

// laws are what the problem says of the sizes of forces that the equations leave open: f = μN for
// a body that is about to slide, F = k s for a spring, w = m g for an unknown mass.
func laws(s *Subject) []string {
	var all []string
	for b := range s.solved.Bodies {
		for i := range s.solved.Bodies[b].Forces {
			f := &s.solved.Bodies[b].Forces[i]
			// A size that depends on givens alone is already a number in the equations.
			if f.Size == nil || s.solved.Fixed(f.Size) || expr.Equal(f.Size, expr.Letter(f.Name)) {
				continue
			}
			law := expr.Set(f.Name) + " = " + s.page().Write(s.page().Insert(f.Size, nil, 3))
			if !slices.Contains(all, law) {
				all = append(all, law)
			}
		}
	}
	return all
}

// speaksOf reports whether a letter stands in a sum, by itself or in the size of a
// force; every sum speaks of no letter in particular.
func speaksOf(r *solved.System, tree *expr.Node, name string) bool {
	if name == "" || tree.Has(name) || !r.Model.Has(name) {
		return true
	}
	return slices.ContainsFunc(tree.Names(), func(n string) bool {
		v, _ := r.Model.Variable(n)
		return v.Size != nil && speaksOf(r, v.Size, name)
	})
}

// diagram is the step for a force diagram, in words that it accepts.
func diagram(s *Subject) string {
	var forces []string
	for i := range s.Body.Forces {
		f := &s.Body.Forces[i]
		forces = append(forces, expr.Set(f.Name)+" "+roomWords(s, f))
	}
	return strings.Join(forces, "; ")
}

// roomWords names the sides of the room to which a force points, or those of the
// slope where it lies along an axis of the slope.
func roomWords(s *Subject, f *statics.Force) string {
	x, y := s.solved.Room(s.Body, f)
	// “up right” fits many directions near a slope; “up the slope” fits one. What is vertical stays up or down.
	if bx, by := s.solved.UnitVector(f); s.tilted() && solved.SignOf(x) != 0 && solved.SignOf(bx)*solved.SignOf(by) == 0 {
		if solved.SignOf(bx) != 0 {
			return s.way(statics.X, solved.SignOf(bx))
		}
		return s.way(statics.Y, solved.SignOf(by))
	}
	var words []string
	for _, axis := range []struct {
		sign  int
		words [3]string
	}{{solved.SignOf(y), [3]string{"down", "", "up"}}, {solved.SignOf(x), [3]string{"left", "", "right"}}} {
		if axis.sign != 0 {
			words = append(words, axis.words[axis.sign+1])
		}
	}
	return strings.Join(words, " ")
}

// whichWay asks in which direction a force points, in words that its direction has.
func whichWay(s *Subject) string {
	if s.tilted() {
		return "Does {force} act along the slope, at right angles to the slope, or vertically? Which way does {force} point?"
	}
	if s.solved.Words.Above {
		return "Imagine that {body} moves in the direction of {force}. Does it move to the left or to the right? Does it move away from you or towards you?"
	}
	return "Imagine that {body} moves in the direction of {force}. Does it move to the left or to the right? Does it move up or down?"
}

// lawWords say in words what the size of a force of a kind comes from.
var lawWords = map[statics.Kind]string{
	statics.Spring:   "The force of a spring equals the stiffness of the spring times its extension or compression.",
	statics.Friction: "If a body is sliding or is just about to slide, the friction force equals the coefficient of friction times the normal force.",
	statics.Weight:   "The weight is the mass times g.",
}

// law says what the size of the force in question comes from, or that of the first force on the
// body that has such a law; nothing where there is none.
func law(s *Subject) string {
	if s.Force != nil && s.Force.Size != nil {
		return lawWords[s.Force.Kind]
	}
	if s.Force != nil || s.Body == nil {
		return ""
	}
	for i := range s.Body.Forces {
		if f := &s.Body.Forces[i]; f.Size != nil && f.Kind != statics.Weight && lawWords[f.Kind] != "" {
			return lawWords[f.Kind]
		}
	}
	return ""
}

// noWeight says why the weight of a body is none of its forces, by whether the body is seen from above.
var noWeight = map[bool]struct{ said, ask, rule string }{
	true: {
		"The drawing is a view from above. Does the weight act along one of its axes?",
		"In a view from above, where does “straight down” point?",
		"In a view from above, the weight has no component along either axis.",
	},
	false: {
		"Does the problem give a mass or a weight for {body}?",
		"Which of the given values is the mass or the weight of {body}?",
		"You can neglect the weight of a very light body, such as a ring or a knot.",
	},
}

// isOfOtherUnit reports whether what was typed is not measured as a force is.
func isOfOtherUnit(s *Subject) bool {
	d := s.Typed.Dim
	return s.Typed.Mixed || s.Typed.Known && d != quantity.Force && (s.Stage == solved.Components || d != quantity.None)
}

// unitCheck points to the unit of what was typed, where that is not the unit of a force.
func unitCheck(s *Subject) string {
	d := s.Typed.Dim
	words := unitWords[s.solved.UsualUnit(d).Symbol]
	switch {
	case s.Typed.Mixed:
		return "The terms in your line do not all have the same unit."
	case s.Stage == solved.Solve:
		return "" // squares and quotients of forces may follow, too
	case !s.Typed.Known || d == quantity.Force || s.Stage != solved.Components && d == quantity.None:
		return ""
	case d == quantity.None:
		return "Your expression has no unit, but a force has a unit."
	case words == "":
		return "Check the unit of your expression. Is it a unit of force?"
	}
	return "Your expression is in " + words + ". Is this a unit of force?"
}
