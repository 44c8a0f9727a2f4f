package mistake

import (
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
	"example.org/standstill/checker/trial"
)

// Mistakes about how large a force is: masses and weights, what a surface or a string carries.
var sizes = []Row{
	{
		Code: MassForWeight, Meaning: "the mass used as the weight", Cost: 1.1, InNumbers: -0.15,
		Term: massAlone, Everywhere: true, Tree: weightOfMass, Value: handedBackMass,
		Said: Said{
			Component: "Does your expression for {component} give a mass or a force?",
			Line:      "{In}, does your expression for {force} give a mass or a force?",
			Lines:     "{In}, the terms do not all have the same unit.",
			Value:     "You get this value of {unknown} if {what|a mass is used as a weight}.",
			List:      "Your list includes {stranger|a quantity}, which is not a force. Which force on {body} does {stranger|this quantity} belong to?",
		},
		Hints: []Hint{
			{At: OnList,
				Ask:  "Which force does the Earth exert on {body}?",
				Rule: "A mass is measured in kilograms and is not a force. Because {body} has a mass, it also has a weight, which acts straight down."},
			{At: Anywhere,
				Ask:  "What is the unit of each term in your line?",
				Rule: "Mass is measured in kilograms and force in newtons. The weight is the mass times g."}},
	},
	{Code: MassForWeight, Cost: 1.95, Term: massAsWritten, Alone: true},
	{
		Code: WeightForMass, Meaning: "a weight multiplied by g", Cost: 2.2,
		Term: timesG, Everywhere: true, Tree: withoutG, Value: timesGAgain,
		Shows: func(f trial.Form, _ int) bool { return f.Letters },
		Said: Said{
			Component: "Check the unit of your expression for {component}. Which quantity in your line is already a force?",
			Line:      "{In}, check the unit of your expression for {force}. Is {force} a mass or a force?",
			Lines:     "{In}, one term has one factor of g too many. Check the unit of each term.",
			Value:     "You get this value of {unknown} if you multiply {what|a weight} by g again.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Which values in your line are in kilograms, and which are in newtons?",
			Rule: "Multiply only masses by g. A value in newtons is already a force."}},
	},
	{
		Code: NormalEqualsWeight, Meaning: "the normal force assumed to be equal to the weight", Cost: 1.15, InNumbers: -0.18,
		Term: weightForNormal, Sum: normalAlone, Everywhere: true, Tree: normalLetter, Value: wholeWeightAsNormal,
		Said: Said{
			Component: "You assumed that the normal force equals the whole weight.",
			Line:      "{In}, you assumed that the normal force equals the whole weight.",
			Lines:     "{In}, you assumed that the normal force equals the whole weight.",
			Value:     "You get this value of {unknown} if you assume that the normal force equals the whole weight.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Which forces on {body} act {square}, and which of them balance each other?",
			Rule: "The normal force is as large as it must be for equilibrium. It equals the weight only if the surface is horizontal and no other force has a vertical component. Until you know its magnitude, use its letter."}},
	},
	{
		Code: SharedWeight, Meaning: "the weight shared between the strings", Cost: 2.15,
		Sum: weightShared, Alone: true, Value: shareOfWeight,
		Said: Said{
			Line:  "{In}, you gave each string a fixed share of the weight. Do all the strings pull upwards equally hard?",
			Lines: "{In}, you gave each string a fixed share of the weight. Do all the strings pull upwards equally hard?",
			Value: "This value of {unknown} is {what|a fixed share of the weight}. Should {unknown} depend on the angles of the strings?",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "If a string were nearly horizontal, could it support its share of the weight with the same tension?",
			Rule: "Only the vertical component of a tension supports the weight, so the tension in a string at an angle is larger than the weight that the string supports. The steeper of two strings supports more of the weight."}},
	},
	{
		Code: SharedWeight, Cost: 2.3, Term: weightForForce, Seen: true, NotInSums: true,
		Said: Said{
			Component: "You assumed that {force} equals the weight or a fixed share of the weight.",
			Line:      "{In}, you assumed that {force} equals the weight or a fixed share of the weight.",
		},
	},
	{
		Code: LimitAssumed, Meaning: "friction assumed to be at its maximum", Cost: 2.35,
		Term: frictionAtLimit, Line: frictionIsLimit, Value: limitValue,
		Said: Said{
			Component: "You assumed that the friction force has its maximum value. Is {body} just about to slide?",
			Line:      "You assumed that the friction force has its maximum value. Is {body} just about to slide?",
			Lines:     "You assumed that the friction force has its maximum value. Is {body} just about to slide?",
			Value:     "You get this value of {unknown} if you assume that the friction force has its maximum value.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Does the problem give a coefficient of friction, and does it say that {body} is just about to slide?",
			Rule: "The static friction force is only as large as it must be for equilibrium. Its maximum value is the coefficient of friction times the normal force."}},
	},
	{
		Code: LimitAssumed, Cost: 9, NoLetter: true,
		Said: Said{
			Component: "This problem gives no coefficient of friction, so you have to find the friction force from the equations.",
			Line:      "This problem gives no coefficient of friction, so you have to find the friction force from the equations.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Which letters does the problem give, and is one of them a coefficient of friction?",
			Rule: "If the problem gives no coefficient of friction, use a letter for the friction force. You can then find its magnitude from the equation for the axis along the surface."}},
	},
	{
		Code: OtherG, Meaning: "another g", Cost: 2.6,
		Term: otherG, NotInSums: true, Value: withOtherG,
		Shows: func(f trial.Form, _ int) bool { return f.Decimals },
		Said: Said{
			Component: "You get this number for {component} if you do not use the value of g from this problem.",
			Line:      "{In}, you get the number for {force} if you do not use the value of g from this problem.",
			Lines:     "{In}, you get one of the numbers if you do not use the value of g from this problem.",
			Value:     "You get this value of {unknown} if you do not use the value of g from this problem.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "What value of g does this problem give?",
			Rule: "{gravity}"}},
	},
}

// massAlone writes the mass where the weight belongs: m·g without g, also in the friction where the
// surface holds the whole weight. Where a weight has several masses, one of them may be without g.
func massAlone(p *trial.Problem, at solved.Place, t solved.Term) []solved.Term {
	size := p.Solved.SizeTree(t)
	if body := &p.Solved.Bodies[at.Body]; size != nil && isTheWeight(p, body) && t.Force.Kind == statics.Friction {
		size = expr.Substitute(size, solved.OnlyOf(body, statics.Normal).Name, solved.OnlyOf(body, statics.Weight).Size)
	}
	if size == nil || !size.Has("g") || t.Scale == 0 {
		return nil
	}
	all := []solved.Term{p.Solved.WithSize(t, "mass", func() *expr.Node { return expr.Substitute(size, "g", expr.Constant(1)) })}
	masses := slices.DeleteFunc(size.Names(), func(name string) bool { v, ok := p.Solved.Model.Variable(name); return !ok || v.Dim != quantity.Mass })
	for _, name := range masses {
		if len(masses) > 1 {
			all = append(all, p.Solved.WithSize(t, "only mass of "+name, func() *expr.Node {
				return expr.Substitute(size, name, expr.Join(expr.Div, expr.Letter(name), expr.Letter("g")))
			}))
		}
	}
	return all
}

// massAsWritten writes 850, for 850 g, where the weight belongs.
func massAsWritten(p *trial.Problem, _ solved.Place, t solved.Term) []solved.Term {
	size := p.Solved.SizeTree(t)
	if size == nil || !size.Has("g") || t.Scale == 0 {
		return nil
	}
	for _, g := range p.Solved.Givens {
		if g.Unit.Dim == quantity.Mass && g.Unit.Factor != 1 && size.Has(g.Name) {
			return []solved.Term{p.Solved.WithSize(t, "mass as written", func() *expr.Node {
				written := expr.Join(expr.Div, expr.Letter(g.Name), expr.Constant(g.Unit.Factor))
				return expr.Substitute(expr.Substitute(size, "g", expr.Constant(1)), g.Name, written)
			})}
		}
	}
	return nil
}

// timesG multiplies a force by the strength of gravity, as if it were a mass.
func timesG(p *trial.Problem, _ solved.Place, t solved.Term) []solved.Term {
	if !p.Solved.Model.Has("g") || t.Scale == 0 || t.Force.Kind == statics.Normal || t.Force.Kind == statics.Friction {
		return nil
	}
	return []solved.Term{p.Solved.WithSize(t, "times g", func() *expr.Node {
		size := p.Solved.SizeTree(t)
		if size == nil {
			size = expr.Letter(t.Force.Name)
		}
		return expr.Join(expr.Mul, size, expr.Letter("g"))
	})}
}

// weightForNormal puts the whole weight in the place of the normal force, by itself or inside
// the friction.
func weightForNormal(p *trial.Problem, at solved.Place, t solved.Term) []solved.Term {
	body := &p.Solved.Bodies[at.Body]
	weight := solved.OnlyOf(body, statics.Weight)
	if weight == nil || t.Scale == 0 || isTheWeight(p, body) {
		return nil
	}
	heavy := expr.Letter(weight.Name)
	if weight.Size != nil {
		heavy = weight.Size // so that a mass may stand in for it in turn
	}
	if t.Force.Kind == statics.Normal {
		return []solved.Term{p.Solved.WithSize(t, weight.Name, func() *expr.Node { return heavy })}
	}
	size := p.Solved.SizeTree(t)
	for i := range body.Forces {
		if f := &body.Forces[i]; f.Kind == statics.Normal && size != nil && size.Has(f.Name) {
			return []solved.Term{p.Solved.WithSize(t, weight.Name+" for "+f.Name, func() *expr.Node { return expr.Substitute(size, f.Name, heavy) })}
		}
	}
	return nil
}

// isTheWeight reports whether the normal force of a body equals its weight, so that nobody is
// wrong who says so.
func isTheWeight(p *trial.Problem, body *statics.Body) bool {
	normal, weight := solved.OnlyOf(body, statics.Normal), solved.OnlyOf(body, statics.Weight)
	if normal == nil || weight == nil {
		return false
	}
	n, w := p.Solved.Values[p.Solved.Slots[normal.Name]], p.Solved.Values[p.Solved.Slots[weight.Name]]
	return math.Abs(n-w) <= trial.ExactShare*math.Abs(w)
}

// normalAlone sets the normal force equal to the weight, whatever else there is.
func normalAlone(p *trial.Problem, at solved.Place, w solved.Sum) []Change {
	body := &p.Solved.Bodies[at.Body]
	normal, weight := solved.OnlyOf(body, statics.Normal), solved.OnlyOf(body, statics.Weight)
	// A single term is a component, and no sum that could be replaced.
	if normal == nil || weight == nil || len(w) == 1 {
		return nil
	}
	two := solved.Sum{{Force: normal, Scale: 1, Slot: p.Solved.Slots[normal.Name]}, {Force: weight, Scale: -1, Slot: p.Solved.Slots[weight.Name]}}
	return []Change{{About: []string{normal.Name}, Sum: two}}
}

// weightShared lets one string carry half the weight, or all of it.
func weightShared(p *trial.Problem, at solved.Place, w solved.Sum) []Change {
	if solved.OnlyOf(&p.Solved.Bodies[at.Body], statics.Tension) != nil {
		return nil // one string shares with nobody
	}
	var all []Change
	for i := range w {
		for j := range w {
			if w[i].Force.Kind != statics.Tension || w[j].Force.Kind != statics.Weight || w[i].Scale == 0 || w[j].Scale == 0 {
				continue
			}
			half, straight := w[j], w[i]
			half.Scale /= 2
			straight.Function = solved.Whole
			// Half the weight for the component, half of it for
			// the whole string, or all of it for the whole string.
			for _, shared := range []solved.Sum{{w[i], half}, {straight, half}, {straight, w[j]}} {
				all = append(all, Change{About: []string{w[i].Force.Name}, Sum: shared})
			}
		}
	}
	return all
}

// weightForForce gives a string, a pull or the like the size of the weight, or of half of it.
func weightForForce(p *trial.Problem, at solved.Place, t solved.Term) []solved.Term {
	weight := solved.OnlyOf(&p.Solved.Bodies[at.Body], statics.Weight)
	if weight == nil || t.Scale == 0 || t.Force.Size != nil || t.Force.Kind == statics.Weight || t.Force.Kind == statics.Normal {
		return nil
	}
	heavy := expr.Letter(weight.Name)
	return []solved.Term{
		p.Solved.WithSize(t, "as large as "+weight.Name, func() *expr.Node { return heavy }),
		p.Solved.WithSize(t, "as large as half "+weight.Name, func() *expr.Node { return expr.Join(expr.Div, heavy, expr.Constant(2)) }),
	}
}

// frictionAtLimit puts a coefficient that is given in front of the normal force, where the
// problem leaves the friction to the sums.
func frictionAtLimit(p *trial.Problem, at solved.Place, t solved.Term) []solved.Term {
	normal := solved.OnlyOf(&p.Solved.Bodies[at.Body], statics.Normal)
	if t.Force.Kind != statics.Friction || t.Force.Size != nil || t.Scale == 0 || normal == nil {
		return nil
	}
	var all []solved.Term
	for _, mu := range coefficients(p) {
		all = append(all, p.Solved.WithSize(t, mu+" at the limit of "+normal.Name, func() *expr.Node {
			return expr.Join(expr.Mul, expr.Letter(mu), expr.Letter(normal.Name))
		}))
	}
	return all
}

// coefficients lists the letters of coefficients of friction.
func coefficients(p *trial.Problem) []string {
	var all []string
	for _, v := range p.Solved.Model.Variables {
		if v.Dim == quantity.None && strings.HasPrefix(v.Name, "mu") {
			all = append(all, v.Name)
		}
	}
	return all
}

// frictionIsLimit reports whether a line says f = μN of a friction that the problem leaves to the sums.
func frictionIsLimit(p *trial.Problem, e *trial.Equation) ([]string, bool) {
	for b := range p.Solved.Bodies {
		friction, normal := solved.OnlyOf(&p.Solved.Bodies[b], statics.Friction), solved.OnlyOf(&p.Solved.Bodies[b], statics.Normal)
		if friction == nil || normal == nil || friction.Size != nil {
			continue
		}
		for i, side := range e.Sides {
			if side.Op != expr.Name || side.Name != friction.Name {
				continue
			}
			for _, mu := range coefficients(p) {
				if other := e.Sides[1-i]; other.Op == expr.Mul && other.Size() == 3 && other.Has(mu) && other.Has(normal.Name) {
					return []string{friction.Name}, true
				}
			}
		}
	}
	return nil, false
}

// limitValue is the most that friction can be, where the problem leaves it to the sums.
func limitValue(p *trial.Problem, v Target) []Number {
	var all []Number
	hostsOf(p, v, func(body *statics.Body, on, _ *statics.Force) {
		normal := solved.OnlyOf(body, statics.Normal)
		if on.Kind != statics.Friction || on.Size != nil || normal == nil {
			return
		}
		for _, mu := range coefficients(p) {
			all = append(all, Number{Value: p.Solved.Values[p.Solved.Slots[mu]] * p.Solved.Values[p.Solved.Slots[normal.Name]], Cost: seen / 2})
		}
	})
	return all
}

// otherG works a weight out with another g that is in use, where the problem says otherwise.
func otherG(p *trial.Problem, _ solved.Place, t solved.Term) []solved.Term {
	size := p.Solved.SizeTree(t)
	slot, ok := p.Solved.Slots["g"]
	if !ok || size == nil || !size.Has("g") || t.Scale == 0 {
		return nil
	}
	var all []solved.Term
	for _, g := range trial.UsualG {
		if math.Abs(g-p.Solved.Values[slot]) > trial.RoundedShare*g {
			all = append(all, p.Solved.WithSize(t, "g "+expr.Constant(g).Num.Text, func() *expr.Node { return expr.Substitute(size, "g", expr.Constant(g)) }))
		}
	}
	return all
}

// weightOfMass multiplies the letter of a mass by g.
func weightOfMass(p *trial.Problem, n *expr.Node) []*expr.Node {
	v, ok := p.Solved.Model.Variable(n.Name)
	if n.Op != expr.Name || !ok || v.Dim != quantity.Mass || !p.Solved.Model.Has("g") {
		return nil
	}
	return []*expr.Node{expr.Join(expr.Mul, n, expr.Letter("g"))}
}

// withoutG takes g off a product.
func withoutG(_ *trial.Problem, n *expr.Node) []*expr.Node {
	var all []*expr.Node
	if n.Op == expr.Mul {
		for i, arg := range n.Args {
			if arg.Op == expr.Name && arg.Name == "g" {
				all = append(all, n.Args[1-i])
			}
		}
	}
	return all
}

// normalLetter puts the normal force where the weight was typed, as a letter or as m·g.
func normalLetter(p *trial.Problem, n *expr.Node) []*expr.Node {
	var all []*expr.Node
	product := n.Op == expr.Mul && n.Args[0].Op == expr.Name && n.Args[1].Op == expr.Name && n.Args[1].Name == "g"
	for i := range p.Solved.Bodies {
		normal := solved.OnlyOf(&p.Solved.Bodies[i], statics.Normal)
		f, here := p.Solved.Bodies[i].Force(n.Name)
		if normal != nil && (product || n.Op == expr.Name && here && f.Kind == statics.Weight) {
			all = append(all, expr.Letter(normal.Name))
		}
	}
	return all
}
