package mistake

import (
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
	"example.org/standstill/checker/trial"
)

// Mistakes about which forces act, which way, and in which equation.
var forces = []Row{
	{
		Code: Sign, Meaning: "a wrong sign", Cost: 1,
		Term: otherSign, Sum: allPlus, AtLast: true, Digits: isOpposite, DigitsCost: 3, Value: oppositeDirection, Signed: true,
		Said: Said{
			Component: "The magnitude of {component} is right. Which way does this component point in the drawing?",
			Line:      "{In}, check the sign of the {force} term. Does this sign agree with the direction of {force} in the drawing?",
			Lines:     "{In}, some signs do not agree with the directions of the forces. Look at {forces|each term}.",
			Value:     "You get this value of {unknown} if a force has the wrong sign in one of the equations.",
			SignTwice: "Earlier, you wrote {component} with a minus sign, which already shows its direction. {In}, you included the direction a second time.",
			SignNever: "Earlier, you gave only the magnitude of {component}, without the direction. {In}, there is no minus sign to show the direction either.",
			Negative:  "The digits are right, but {unknown} is a magnitude, and a magnitude is never negative.",
		},
		Hints: []Hint{
			{At: OnComponent | OnSum,
				Ask:     "Which way does {force} point in the drawing, and which way does {axis} point?",
				Rule:    "A component that points {positive} is positive, and one that points {negative} is negative. {The force} points {points|in the direction given by its angle}.",
				AskAny:  "Which way do the forces {names} point in the drawing, and which way does {axis} point?",
				RuleAny: "On the same side of the equation, components that point {positive} and components that point {negative} have opposite signs."},
			{At: OnLine,
				Ask:  "What happens to the sign of a term when you move the term to the other side of an equation?",
				Rule: "A term changes its sign when you move it to the other side of an equation. A term that you do not move does not change its sign."},
			{At: OnValue,
				Ask:  "Which way do the forces {names} point in the drawing, and do the signs in your equations agree with these directions?",
				Rule: "On the same side of an equation, forces in opposite directions have opposite signs. A term changes its sign when you move it to the other side."},
		},
	},
	{
		Code: Sign, Cost: 1, Tree: signOfNode,
		Said: Said{Lines: "One of the signs in this line is wrong. Compare this line with the equation or the line that you started from."},
	},
	{
		Code: MissingForce, Meaning: "a force left out", Cost: 1.2, InNumbers: -0.1, Tells: 0.1, Absent: true,
		Term: leftOut,
		Said: Said{
			Component: "You wrote zero for {component}. What is the angle between {force} and {axis}?",
			Line:      "Does {line} include every force that has a component {along|along the same axis}? Count these forces in the drawing, and then count your terms.",
			Lines:     "Does {line} include every force that has a component {along|along the same axis}? Count these forces in the drawing, and then count your terms.",
			Value:     "You get this value of {unknown} if you leave one of the forces out of an equation.",
			List:      "Your list does not include every force on {body} yet.",
		},
		Hints: []Hint{
			{At: OnComponent,
				Ask:  "Does {force} have any component {along}, even a small one?",
				Rule: "{lie}"},
			{At: OnSum,
				Ask:     "Which of the forces {names} have a component {along}? Count these forces, and then count the terms in your line.",
				Rule:    "{The force} also has a component {along}, and this component belongs in the equation.",
				RuleAny: "Every force that is not at right angles to {axis} has a component along this axis, and each of these components belongs in the equation."},
			{At: OnLine | OnValue,
				Ask:  "Along which axes do the forces {names} have components? Are all these components in your equations?",
				Rule: "A force belongs in the equation for an axis unless it is at right angles to that axis. Two equal forces count as two."},
			{At: OnList,
				Ask:  "Look all the way around {body} in the drawing. What touches {body}, and what pulls on {body} without touching it?",
				Rule: "{kinds}"},
		},
	},
	{
		Code: MissingForce, Cost: 1.9, Term: lessOfSize,
		Said: Said{
			Component: "Something is missing from your expression for {force}. What contributes to {force}?",
			Line:      "{In}, something is missing from your expression for {force}. What contributes to {force}?",
			Value:     "You get this value of {unknown} if you leave out one of the masses. Which masses do the other forces have to support?",
		},
		Hints: []Hint{{At: OnComponent | OnSum | OnLine,
			Ask:  "Which masses does the problem give, and are all of them in your line?",
			Rule: "{The force} is the weight of everything that belongs to {body}, so every mass counts once."}, {At: OnValue,
			Ask:  "Which masses does the problem give, and did you use each of them?",
			Rule: "The weight of {body} is the weight of everything that belongs to it, so every mass counts once."}},
	},
	{
		Code: Sign, Cost: 2.4, Term: differenceInSize, Signed: true,
		Said: Said{
			Component: "In your line for {component}, you subtracted one mass from another. Which way does the weight of each mass act?",
			Line:      "{In}, you subtracted one mass from another in your expression for {force}. Which way does the weight of each mass act?",
			Value:     "You get this value of {unknown} if you subtract one mass from another. Which way does the weight of each mass act?",
		},
		Hints: []Hint{{At: OnComponent | OnSum | OnLine | OnValue,
			Ask:  "Which masses belong to {body}, and which way does the Earth pull each mass?",
			Rule: "The Earth pulls everything that belongs to {body} in the same direction, so you never subtract one mass from another."}},
	},
	{
		Code: Unexplained, Cost: 2.5, Term: pressedByOther, NotInSums: true,
		Said: Said{
			Component: "For {component}, you multiplied the coefficient of friction by the wrong force. Which force presses the two surfaces together?",
			Line:      "{In}, you multiplied the coefficient of friction by the wrong force. Which force presses the two surfaces together?",
		},
		Hints: []Hint{{At: OnComponent | OnSum | OnLine,
			Ask:  "Which force between the two surfaces is at right angles to them?",
			Rule: "If a body is sliding or is just about to slide, the friction force equals the coefficient of friction times the normal force."}},
	},
	{
		Code: ExtraForce, Meaning: "an extra force", Cost: 1.6, Tells: 0.2, OfAxis: true, OtherList: true,
		Term: putIn, Tree: lessOfSum,
		Said: Said{
			Component: "Look again at {component}. In the drawing, what is the angle between {force} and {axis}?",
			Line:      "{In}, either {force} has no component {along|along the axis}, or you included {force} too many times.",
			Lines:     "{In}, either one of the forces has no component {along|along the axis}, or you included a force too many times.",
			Value:     "You get this value of {unknown} if the equation for one axis includes a force that has no component along that axis, or includes the same force twice.",
			List:      "{The force|One force} is in your list more than once.",
			NoForce:   "Your list includes {stranger}, which is not a force. Which force on {body} does {stranger} belong to?",
			Stranger:  "Your list includes {stranger}. What would have to touch or pull {body} to exert this force?",
		},
		Hints: []Hint{
			{At: OnComponent,
				Ask:  "If you follow the arrow of {force} in the drawing, how far do you move {along}?",
				Rule: "{lie}"},
			{At: OnSum,
				Ask:  "Which of the forces {names} have a component {along}? Does each of these forces appear exactly once in your line?",
				Rule: "A force at right angles to {axis} has no component along this axis. Every other force on {body} appears exactly once in the equation, and nothing else belongs there."},
			{At: OnLine | OnValue,
				Ask:  "Along which axes do the forces {names} have components? Does each component appear exactly once in your equations?",
				Rule: "A force at right angles to an axis has no component along that axis. No force appears twice in the same equation."},
			{At: OnList,
				Ask:  "What exerts each force in your list: a string, a surface, or something else?",
				Rule: "Anything that touches {body} can exert a force on it. The Earth exerts a force, too: the weight. A force belongs in the list only if something exerts it."},
		},
	},
	{
		Code: ExtraForce, Cost: 9, Strange: SecondWeight,
		Said: Said{
			Line: "{The force} is already the whole weight of {body}. What could {stranger} be the weight of?",
			List: "{The force} is already the whole weight of {body}. What could {stranger} be the weight of?",
		},
		Hints: []Hint{{At: OnSum | OnList,
			Ask:  "What belongs to {body}, and which letter stands for its whole weight?",
			Rule: "The weight of {body} is the pull of the Earth on {body} and everything that belongs to it."}},
	},
	{
		Code: ExtraForce, Cost: 9, Strange: NoWeightHere,
		Said: Said{
			Stranger: "In this problem, the weight of {body} is not one of the forces. {noweight}",
		},
		Hints: []Hint{{At: OnSum | OnList,
			Ask:  "{askweight}",
			Rule: "{ruleweight}"}},
	},
	{
		Code: ExtraForce, Cost: 9, Strange: NoFrictionHere,
		Said: Said{
			Stranger: "In this problem, friction is not one of the forces on {body}. Does {body} touch a surface, and what does the text say about this surface?",
		},
		Hints: []Hint{{At: OnSum | OnList,
			Ask:  "Does the text say that a surface is rough, or does it give a coefficient of friction?",
			Rule: "Friction acts only where two surfaces touch. If the text calls a surface smooth or does not mention friction, assume that there is no friction."}},
	},
	{Code: ExtraForce, Cost: 2.6, Sum: bothComponents, Alone: true},
	{Code: ExtraForce, Cost: 2, Tells: 0.2, Term: putInResolved, NotInSums: true, Seen: true},
	{
		Code: ExtraForce, Cost: 1.7, Sum: otherForceToo, Alone: true,
		Said: Said{Component: "{Component} comes from {force} alone. Which other force is in your line?"},
		Hints: []Hint{{At: OnComponent,
			Ask:  "Which forces are in your line, and which force are you asked to resolve?",
			Rule: "A component belongs to one force, and every other force has its own components. You add up the components later, in the equation for each axis."}},
	},
	{
		Code: WrongAxis, Meaning: "the other axis", Cost: 1.7,
		Sum: otherAxis, Alone: true, OfSums: true, OfAxis: true,
		Said: Said{
			Component: "This is the component of {force} along the other axis. You are asked for {component}.",
			Line:      "{In}, the {force} term belongs in the equation for the other axis.",
			Lines:     "This line is about the other axis. You are asked for {sum}.",
			Value:     "You get this value of {unknown} if the equation for one axis includes a component along the other axis.",
		},
		Hints: []Hint{
			{At: OnComponent, Slanted: true,
				Ask:  "Which side of the triangle for {force} is parallel to {axis}?",
				Rule: "{lie}"},
			{At: OnSum,
				Ask:  "Which way does {axis} point, and which components are parallel to it?",
				Rule: "{Sum} contains only the components {along}. The other components belong in the other equation."},
			{At: OnLine | OnValue,
				Ask:  "Does each of your equations contain only components along one axis?",
				Rule: "The equation for an axis contains only components along that axis."},
		},
	},
	{
		Code: WrongAxis, Cost: 1.8, Value: acrossTheWeight,
		Said: Said{Value: "You get this value of {unknown} if you assume that {what}. Do these two forces act along the same axis?"},
		Hints: []Hint{{At: OnValue,
			Ask:  "Which of the forces {names} act only along the x axis, which act only along the y axis, and which have components along both?",
			Rule: "Two forces at right angles to each other cannot balance. The equation for an axis contains only components along that axis."}},
	},
	{
		Code: WrongAxis, Cost: 2.2, Sum: twoAcross, Alone: true, Seen: true, NotInSums: true,
		Said: Said{Lines: "{In}, {forces|the two forces} act along different axes. Can one of them balance the other?"},
		Hints: []Hint{{At: OnSum | OnLine,
			Ask:  "Which of the forces {names} act only along the x axis, which act only along the y axis, and which have components along both?",
			Rule: "Two forces at right angles to each other cannot balance. The equation for an axis contains only components along that axis."}},
	},
	{
		Code: TwiceCounted, Meaning: "a force counted together with its component", Cost: 2.4,
		Sum: besideItself, Alone: true,
		Said: Said{
			Component: "You counted {force} twice: once as a whole and once as a component.",
			Line:      "{In}, you counted {force} twice: once as a whole and once as a component.",
			Lines:     "{In}, you counted a force twice: once as a whole and once as a component.",
			Value:     "You get this value of {unknown} if you count both a force and one of its components.",
			Instead:   "Your list includes a component of {force}, but not {force} itself. What belongs in a force diagram?",
			List:      "Your list includes a component of {force|a force}. Is a component an additional force on {body}?",
		},
		Hints: []Hint{{At: OnList,
			Ask:  "Is each entry in your list a whole force?",
			Rule: "A force diagram shows every force once, as a whole and in its own direction. You find the components in the next step."}, {At: Anywhere &^ OnList,
			Ask:     "Are the components of {force} additional forces, or are they another way to describe {force}?",
			Rule:    "The components of {force} replace {force}: if you count a component, do not count {force} itself as well.",
			AskAny:  "Are the components of a force additional forces, or are they another way to describe the same force?",
			RuleAny: "The components of a force replace the force: if you count a component, do not count the force itself as well."}},
	},
	{
		Code: WholeFactor, Meaning: "doubled or halved", Cost: 2.65, Tells: 1.05,
		Term: doubledOrHalved, Sum: stringsDoubled, Tree: doubledTree,
		Said: Said{
			Component: "Check the numbers in your line for {component}: something is doubled or halved.",
			Line:      "{In}, the {force} term is too large or too small by a whole-number factor. In how many places does {force} act?",
			Lines:     "{In}, a term is too large or too small by a whole-number factor. Look at {forces|each term}.",
			Value:     "You get this value of {unknown} if a whole-number factor is missing or is used twice.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:     "In how many places does {force} act on {body}, and where does each number in your line come from?",
			Rule:    "{The force} appears in the equation once for each place where it acts on {body}. Any other number must come from the problem.",
			AskAny:  "How many times does each force appear in the drawing, and where does each number in your line come from?",
			RuleAny: "Each force in the drawing appears in the equation once, so two equal forces count as two. Any other number must come from the problem."}},
	},
	{
		Code: WholeFactor, Cost: 2.65, Value: wholeFactor,
		Said: Said{Value: "This value of {unknown} is {what}. Where in your working is a factor missing or used twice?"},
	},
	{
		Code: EqualTensions, Meaning: "tensions assumed equal", Cost: 2.1, InNumbers: -0.4,
		Term: otherTension, Tree: otherTensionLetter, Line: twoTensions, Value: givenTension,
		Said: Said{
			Component: "For {component}, you used the tension in another string.",
			Line:      "{In}, you confused one tension with another. Look at {force}.",
			Lines:     "You assumed that {forces|the tensions} are equal. Does the problem say so?",
			Value:     "You get this value of {unknown} if you assume that all the tensions are equal. Does the problem say so?",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Which string is steeper, and which string supports more of the weight?",
			Rule: "Each string has its own tension. Two tensions are equal only if there is a reason, such as a single rope or equal angles on both sides."}},
	},
	{
		Code: OtherBody, Meaning: "a mass or force of another body", Cost: 1.22, InNumbers: -0.1,
		Term: fromOtherBody, Tree: otherWeightLetter, Value: otherBodyValue,
		Said: Said{
			Component: "Your expression for {component} belongs to another body.",
			Line:      "{In}, your expression for {force} belongs to another body.",
			Lines:     "{In}, one of the quantities belongs to another body.",
			Value:     "You get this value of {unknown} if you use {what|a quantity that belongs to another body}.",
		},
		Hints: []Hint{{At: OnLine | OnValue,
			Ask:  "Which forces act on which body, and does each of your equations include only the forces on one body?",
			Rule: "The equation for a body includes only the forces on that body. Every other body has its own equations."}, {At: Anywhere &^ (OnLine | OnValue),
			Ask:  "Which forces act on {body} itself?",
			Rule: "The equation for a body includes only the forces on that body. Every other body has its own equations."}},
	},
	{
		Code: OtherBody, Cost: 2.7, Sum: foreignForce, Alone: true,
		Said: Said{
			Component: "{Component} comes from {force} alone. Does every force in your line act on {body}?",
			Line:      "{In}, you included {force|a force}, but {force|this force} acts on another body.",
		},
	},
	{
		Code: OtherUnknown, Meaning: "another unknown's value", Cost: 1.25, InNumbers: -0.1,
		Value: otherUnknown,
		Said: Said{
			Value: "This is the value of another unknown in the problem, not of {unknown}.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Which unknown did you work out last?",
			Rule: "A value belongs to the letter that was alone on one side of the equation. Go back through your working to find that letter."}},
	},
	{
		Code: OtherUnknown, Cost: 1.4, Value: givenForce,
		Said: Said{Value: "The problem gives this value for {what}, not for {unknown}."},
		Hints: []Hint{{At: OnValue,
			Ask:  "Which of the forces {names} are given, and which equation contains {unknown}?",
			Rule: "The given value of one force is the value of another force only if an equation says so. {start}"}},
	},
	{
		Code: Unbalanced, Meaning: "unbalanced forces on a body at rest", Cost: 3,
		Said: Said{
			Component: "When a body is at rest, the net force along each axis is zero. Here, write only {component}.",
			Line:      "When a body is at rest or moves at constant velocity, its acceleration is zero. What does this tell you about the two sides of your equation?",
			Lines:     "When a body is at rest or moves at constant velocity, its acceleration is zero. What does this tell you about the two sides of your equation?",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "What is the acceleration of {body}?",
			Rule: "A body that is at rest or moves at constant velocity has no acceleration, so the forces in one direction balance the forces in the opposite direction."}},
	},
	{
		Code: WrongSide, Meaning: "a force in the wrong direction", Cost: 3, OfKind: true,
		Said: Said{List: "Check the direction of {force|each force}."},
		Hints: []Hint{{At: OnList,
			Ask:     "{whichway}",
			Rule:    "{kind}",
			AskAny:  "For each force, think about the object that exerts it. Which way does that object pull or push {body}?",
			RuleAny: "{kinds}"}},
	},
}

func otherSign(_ *trial.Problem, _ solved.Place, t solved.Term) []solved.Term {
	if t.Scale == 0 {
		return nil
	}
	t.Scale = -t.Scale
	return []solved.Term{t}
}

// allPlus gives every term a plus, as who adds up all the forces does.
func allPlus(_ *trial.Problem, _ solved.Place, w solved.Sum) []Change {
	c := Change{Sum: slices.Clone(w), Cost: 0.2}
	for i := range c.Sum {
		if c.Sum[i].Scale < 0 {
			c.Sum[i].Scale = -c.Sum[i].Scale
			c.About = append(c.About, c.Sum[i].Force.Name)
		}
	}
	// One sign alone is the mistake of otherSign.
	if len(c.About) < 2 {
		return nil
	}
	return []Change{c}
}

func leftOut(_ *trial.Problem, _ solved.Place, t solved.Term) []solved.Term {
	if t.Scale == 0 {
		return nil
	}
	// Not taken out: all changes of a sum keep its places, so that a second change can follow.
	t.Scale = 0
	return []solved.Term{t}
}

// lessOfSize leaves out a summand of a force's size: one of two masses that make a weight.
func lessOfSize(p *trial.Problem, _ solved.Place, t solved.Term) []solved.Term {
	return withLess(p, t, "less", func(kept, dropped *expr.Node) *expr.Node { return kept })
}

// differenceInSize subtracts one of two masses that make a weight from the other.
func differenceInSize(p *trial.Problem, _ solved.Place, t solved.Term) []solved.Term {
	if t.Force.Kind != statics.Weight {
		return nil
	}
	return withLess(p, t, "difference", func(kept, other *expr.Node) *expr.Node { return expr.Join(expr.Sub, kept, other) })
}

// pressedByOther puts another force of the body into the friction in the place of the normal force.
func pressedByOther(p *trial.Problem, at solved.Place, t solved.Term) []solved.Term {
	body := &p.Solved.Bodies[at.Body]
	normal := solved.OnlyOf(body, statics.Normal)
	size := p.Solved.SizeTree(t)
	if t.Force.Kind != statics.Friction || t.Scale == 0 || normal == nil || size == nil || !size.Has(normal.Name) {
		return nil
	}
	var all []solved.Term
	for i := range body.Forces {
		// The weight in this place is a mistake of its own, weightForNormal.
		if f := &body.Forces[i]; f != normal && f.Kind != statics.Friction && f.Kind != statics.Weight {
			all = append(all, p.Solved.WithSize(t, f.Name+" in the place of "+normal.Name, func() *expr.Node {
				return expr.Substitute(size, normal.Name, expr.Letter(f.Name))
			}))
		}
	}
	return all
}

// withLess changes each sum that a force's size has in it.
func withLess(p *trial.Problem, t solved.Term, name string, of func(a, b *expr.Node) *expr.Node) []solved.Term {
	size := p.Solved.SizeTree(t)
	if size == nil || t.Scale == 0 {
		return nil
	}
	var all []solved.Term
	size.Walk(func(n *expr.Node) {
		if n.Op != expr.Add && n.Op != expr.Sub {
			return
		}
		for i, kept := range n.Args {
			other := n.Args[1-i]
			is := func(m *expr.Node) bool { return m == n }
			all = append(all, p.Solved.WithSize(t, name+" "+p.Solved.Text(kept), func() *expr.Node { return expr.Replace(size, is, of(kept, other)) }))
		}
	})
	return all
}

// putIn puts a force that lies across the axis into the sum.
func putIn(p *trial.Problem, at solved.Place, t solved.Term) []solved.Term {
	if t.Scale != 0 || p.Solved.IsEmpty(at) {
		return nil
	}
	up, down := t, t
	up.Scale, down.Scale = 1, -1
	return []solved.Term{up, down}
}

// putInResolved puts a force that lies across the axis into the sum with a function of an angle.
func putInResolved(p *trial.Problem, at solved.Place, t solved.Term) []solved.Term {
	if t.Scale != 0 || t.Force.Slanted() {
		return nil
	}
	var all []solved.Term
	for _, whole := range putIn(p, at, t) {
		all = append(all, withFunctions(p, at, whole)...)
	}
	return all
}

// bothComponents puts both components of a force into one sum.
func bothComponents(_ *trial.Problem, _ solved.Place, w solved.Sum) []Change {
	var all []Change
	for _, t := range w {
		other, slanted := solved.Swapped[t.Function]
		if !slanted {
			continue
		}
		for _, sign := range trial.BothSigns {
			extra := t
			extra.Function, extra.Scale = other, sign
			all = append(all, Change{About: []string{t.Force.Name}, Sum: append(slices.Clone(w), extra)})
		}
	}
	return all
}

// otherForceToo adds another force of the body to a single component.
func otherForceToo(p *trial.Problem, at solved.Place, w solved.Sum) []Change {
	if len(w) != 1 {
		return nil
	}
	var all []Change
	for _, axis := range []statics.Axis{at.Axis, at.Axis.Other()} {
		for _, t := range p.Solved.SumOf(at.Body, axis) {
			if t.Force == w[0].Force || t.Scale == 0 {
				continue
			}
			whole := t
			whole.Function = solved.Whole
			for _, extra := range []solved.Term{t, whole} {
				for _, sign := range trial.BothSigns {
					extra.Scale = sign
					all = append(all, Change{About: []string{w[0].Force.Name}, Sum: solved.Sum{w[0], extra}})
				}
			}
		}
	}
	return all
}

// otherAxis writes the sum along the other axis; for one component, that of the same force.
func otherAxis(p *trial.Problem, at solved.Place, w solved.Sum) []Change {
	across := p.Solved.SumOf(at.Body, at.Axis.Other())
	if len(w) != 1 || len(across) == 1 {
		return []Change{{Sum: across}}
	}
	for _, t := range across {
		if t.Force == w[0].Force && t.Scale != 0 {
			// Dearer than another function alone, which is sine-cosine: the axis
			// is blamed only if sign and side are those of the other axis, too.
			return []Change{{About: []string{t.Force.Name}, Sum: solved.Sum{t}, Cost: 1.2}}
		}
	}
	return nil
}

// twoAcross sets two forces equal that lie along different axes.
func twoAcross(p *trial.Problem, at solved.Place, w solved.Sum) []Change {
	if len(w) == 1 {
		return nil
	}
	var all []Change
	forces := p.Solved.Bodies[at.Body].Forces
	for i := range forces {
		for k := range forces[:i] {
			a, b := &forces[k], &forces[i]
			if a.Slanted() || b.Slanted() || !isAcross(p, a, b) {
				continue
			}
			for _, sign := range trial.BothSigns {
				// As T = w or as T + w = 0: both are written.
				two := solved.Sum{{Force: a, Scale: 1, Slot: p.Solved.Slots[a.Name]}, {Force: b, Scale: sign, Slot: p.Solved.Slots[b.Name]}}
				all = append(all, Change{About: []string{a.Name, b.Name}, Sum: two})
			}
		}
	}
	return all
}

// besideItself puts a force beside its own component.
func besideItself(_ *trial.Problem, _ solved.Place, w solved.Sum) []Change {
	var all []Change
	for _, t := range w {
		if t.Function == solved.Whole || t.Scale == 0 {
			continue
		}
		for _, sign := range trial.BothSigns {
			again := t
			again.Function = solved.Whole
			again.Scale *= sign
			all = append(all, Change{About: []string{t.Force.Name}, Sum: append(slices.Clone(w), again)})
		}
	}
	return all
}

func doubledOrHalved(_ *trial.Problem, _ solved.Place, t solved.Term) []solved.Term {
	if t.Scale == 0 {
		return nil
	}
	double, half := t, t
	double.Scale, half.Scale = 2*t.Scale, t.Scale/2
	return []solved.Term{double, half}
}

// stringsDoubled doubles or halves all the strings at once, as who counts the strands of a
// pulley twice does; four times as much is a factor taken to the wrong side.
func stringsDoubled(_ *trial.Problem, _ solved.Place, w solved.Sum) []Change {
	var all []Change
	for _, k := range []float64{2, 0.5, 4, 0.25} {
		c := Change{Sum: slices.Clone(w)}
		for i := range c.Sum {
			if c.Sum[i].Force.Kind == statics.Tension && c.Sum[i].Scale != 0 {
				c.Sum[i].Scale *= k
				c.About = append(c.About, c.Sum[i].Force.Name)
			}
		}
		if len(c.About) < 2 {
			continue
		}
		// T = 2 w is T/4 + T/4 = w, with both sides doubled.
		twice := Change{Sum: slices.Clone(c.Sum), About: c.About}
		for i := range twice.Sum {
			twice.Sum[i].Scale *= 2
		}
		all = append(all, c, twice)
	}
	return all
}

// otherTension writes another string's tension.
func otherTension(p *trial.Problem, at solved.Place, t solved.Term) []solved.Term {
	if t.Force.Kind != statics.Tension || t.Scale == 0 {
		return nil
	}
	var all []solved.Term
	for i := range p.Solved.Bodies[at.Body].Forces {
		f := &p.Solved.Bodies[at.Body].Forces[i]
		if f.Kind == statics.Tension && f.Name != t.Force.Name {
			other := t
			other.Slot, other.Size = p.Solved.Slots[f.Name], nil
			all = append(all, other)
		}
	}
	return all
}

// twoTensions reports whether a line says that two strings pull equally hard.
func twoTensions(p *trial.Problem, e *trial.Equation) ([]string, bool) {
	var names []string
	for _, side := range e.Sides {
		f, ok := p.Solved.Force(side.Name)
		if side.Op != expr.Name || !ok || f.Kind != statics.Tension {
			return nil, false
		}
		names = append(names, side.Name)
	}
	return names, true
}

// fromOtherBody takes a force of the same kind from another body, a mass that belongs to another
// force, or another body's weight for what is no weight, also inside the friction. Strings belong
// to both bodies that they join.
func fromOtherBody(p *trial.Problem, at solved.Place, t solved.Term) []solved.Term {
	if t.Scale == 0 {
		return nil
	}
	all := otherMasses(p, t)
	for b := range p.Solved.Bodies {
		for i := range p.Solved.Bodies[b].Forces {
			f := &p.Solved.Bodies[b].Forces[i]
			within := t.Force.Size != nil && t.Force.Size.Has(f.Name) || f.Size != nil && f.Size.Has(t.Force.Name)
			if b != at.Body && f.Kind == t.Force.Kind && f.Kind != statics.Tension && f.Name != t.Force.Name && !within {
				other := t
				other.Slot, other.Size = p.Solved.Slots[f.Name], nil
				all = append(all, other)
			}
			if b != at.Body && f.Kind == statics.Weight && !within {
				all = append(all, weightFor(p, at, t, f)...)
			}
		}
	}
	return all
}

// weightFor puts a weight in the place of a force that is none and that has no size of its own, or
// in the place of the normal force inside the friction.
func weightFor(p *trial.Problem, at solved.Place, t solved.Term, weight *statics.Force) []solved.Term {
	heavy := expr.Letter(weight.Name)
	size := p.Solved.SizeTree(t)
	normal := solved.OnlyOf(&p.Solved.Bodies[at.Body], statics.Normal)
	switch {
	case t.Force.Kind != statics.Weight && size == nil:
		return []solved.Term{p.Solved.WithSize(t, "as large as "+weight.Name, func() *expr.Node { return heavy })}
	case normal != nil && size != nil && size.Has(normal.Name):
		return []solved.Term{p.Solved.WithSize(t, weight.Name+" for "+normal.Name, func() *expr.Node { return expr.Substitute(size, normal.Name, heavy) })}
	}
	return nil
}

// otherMasses puts a mass of another body into a force's size.
func otherMasses(p *trial.Problem, t solved.Term) []solved.Term {
	size := p.Solved.SizeTree(t)
	if size == nil {
		return nil
	}
	var all []solved.Term
	for _, name := range size.Names() {
		if v, ok := p.Solved.Model.Variable(name); !ok || v.Dim != quantity.Mass {
			continue
		}
		for _, other := range p.Solved.Model.Variables {
			if other.Dim == quantity.Mass && !size.Has(other.Name) {
				all = append(all, p.Solved.WithSize(t, other.Name+" for "+name, func() *expr.Node {
					return expr.Substitute(size, name, expr.Letter(other.Name))
				}))
			}
		}
	}
	return all
}

// foreignForce puts a force into the sum that acts on another body only.
func foreignForce(p *trial.Problem, at solved.Place, w solved.Sum) []Change {
	var all []Change
	seen := map[string]bool{}
	for _, t := range p.Solved.SumOf(at.Body, at.Axis) {
		seen[t.Force.Name] = true
	}
	for b := range p.Solved.Bodies {
		for i := range p.Solved.Bodies[b].Forces {
			f := &p.Solved.Bodies[b].Forces[i]
			if seen[f.Name] {
				continue
			}
			seen[f.Name] = true
			whole := solved.Term{Force: f, Scale: 1, Slot: p.Solved.Slots[f.Name]}
			for _, extra := range []solved.Term{whole, solved.TermOf(p.Solved.Model, f, at.Axis)} {
				for _, sign := range trial.BothSigns {
					extra.Scale = sign
					all = append(all, Change{About: []string{f.Name}, Sum: append(slices.Clone(w), extra)})
				}
				// Along an axis the second term is the same as the first, or nothing.
				if !f.Slanted() {
					break
				}
			}
		}
	}
	return all
}

// signOfNode turns a sign of a typed line round.
func signOfNode(_ *trial.Problem, n *expr.Node) []*expr.Node {
	switch n.Op {
	case expr.Add:
		return []*expr.Node{expr.Join(expr.Sub, n.Args[0], n.Args[1])}
	case expr.Sub:
		return []*expr.Node{expr.Join(expr.Add, n.Args[0], n.Args[1])}
	case expr.Neg:
		return []*expr.Node{n.Args[0]}
	}
	return nil
}

// lessOfSum leaves out one of two things that are added up.
func lessOfSum(_ *trial.Problem, n *expr.Node) []*expr.Node {
	switch n.Op {
	case expr.Add:
		return []*expr.Node{n.Args[0], n.Args[1]}
	case expr.Sub:
		return []*expr.Node{n.Args[0]}
	}
	return nil
}

// doubledTree doubles or halves the right side of the line.
func doubledTree(_ *trial.Problem, n *expr.Node) []*expr.Node {
	if n.Op != expr.Sub {
		return nil
	}
	var all []*expr.Node
	for _, k := range []float64{2, 0.5} {
		all = append(all, expr.Join(expr.Sub, n.Args[0], expr.Join(expr.Mul, expr.Constant(k), n.Args[1])))
	}
	return all
}

func otherTensionLetter(p *trial.Problem, n *expr.Node) []*expr.Node {
	return lettersLike(p, n, statics.Tension, true)
}

func otherWeightLetter(p *trial.Problem, n *expr.Node) []*expr.Node {
	return lettersLike(p, n, statics.Weight, false)
}

// lettersLike lists the letters of other forces of that kind, on the same bodies as the force
// that a node names or on others.
func lettersLike(p *trial.Problem, n *expr.Node, kind statics.Kind, same bool) []*expr.Node {
	if n.Op != expr.Name {
		return nil
	}
	var all []*expr.Node
	for i := range p.Solved.Bodies {
		f, here := p.Solved.Bodies[i].Force(n.Name)
		if !here || f.Kind != kind {
			continue
		}
		for b := range p.Solved.Bodies {
			for k := range p.Solved.Bodies[b].Forces {
				if other := &p.Solved.Bodies[b].Forces[k]; (b == i) == same && other.Kind == kind && other.Name != n.Name {
					all = append(all, expr.Letter(other.Name))
				}
			}
		}
	}
	return all
}
