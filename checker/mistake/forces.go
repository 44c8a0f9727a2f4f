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
			Component: "{Component} has the right size. Check in the drawing which way it points.",
			Line:      "{In}, check the sign of the term with {force}. Does it fit the way {force} points in the drawing?",
			Lines:     "{In}, some signs do not fit the way the forces point. Look at {forces|each term}.",
			Value:     "You get this value of {unknown} if a force has the wrong sign in one of the equations.",
			SignTwice: "You wrote {component} with its own minus sign, so its letter already says which way it points. {In} the direction is counted twice.",
			SignNever: "You wrote {component} as a size without a sign, so its letter does not say which way it points. {In} nothing else says it either.",
			Negative:  "The digits are right, but {unknown} is a size: it says how much, not which way.",
		},
		Hints: []Hint{
			{At: OnComponent | OnSum,
				Ask:     "Which way does {force} point in the drawing, and which way does {axis} point?",
				Rule:    "A component that points {positive} is positive, and one that points {negative} is negative. {The force} points {points|as its angle says}.",
				AskAny:  "Which way does each of {names} point in the drawing, and which way does {axis} point?",
				RuleAny: "On one side of the equation, components that point {positive} and components that point {negative} have opposite signs."},
			{At: OnLine,
				Ask:  "What happens to the sign of a term that you move to the other side?",
				Rule: "A term that moves to the other side changes its sign, and a term that stays keeps it."},
			{At: OnValue,
				Ask:  "Which way does each of {names} point in the drawing, and do the signs in your equations agree?",
				Rule: "On one side of an equation, forces that point opposite ways have opposite signs. A term that moves to the other side changes its sign."},
		},
	},
	{
		Code: Sign, Cost: 1, Tree: signOfNode,
		Said: Said{Lines: "In this line, a sign is not right. Compare it with the equation or the line that it comes from."},
	},
	{
		Code: MissingForce, Meaning: "a force left out", Cost: 1.2, InNumbers: -0.1, Tells: 0.1, Absent: true,
		Term: leftOut,
		Said: Said{
			Component: "You wrote zero for {component}. Look at how {force} lies to {axis}.",
			Line:      "{Line} needs every force that acts {along|here}. Count them in the drawing, and then count your terms.",
			Lines:     "{Line} needs every force that acts {along|here}. Count them in the drawing, and then count your terms.",
			Value:     "You get this value of {unknown} if one of the forces is left out of an equation.",
			List:      "Not every force on {body} is in your list yet.",
		},
		Hints: []Hint{
			{At: OnComponent,
				Ask:  "Does {force} act {along} at all, even a little?",
				Rule: "{lie}"},
			{At: OnSum,
				Ask:     "Which of {names} have a component {along}? Count them, and then count the terms of your line.",
				Rule:    "{The force} has a component {along} too, and every component belongs in the equation.",
				RuleAny: "Every force that is not at right angles to {axis} has a component {along}, and every component belongs in the equation."},
			{At: OnLine | OnValue,
				Ask:  "Does each of {names} appear in every equation in which it has a component?",
				Rule: "Every force that is not at right angles to an axis belongs in the equation for that axis, and two equal forces are still two."},
			{At: OnList,
				Ask:  "If you go once round {body}, what touches it, and what pulls on it without touching it?",
				Rule: "{kinds}"},
		},
	},
	{
		Code: MissingForce, Cost: 1.9, Term: lessOfSize,
		Said: Said{
			Component: "This is not all of {force}. What makes up {force}?",
			Line:      "{In}, you did not write all of {force}. What makes up {force}?",
			Value:     "You get this value of {unknown} if one of the masses is left out. What do the other forces hold up?",
		},
		Hints: []Hint{{At: OnComponent | OnSum | OnLine,
			Ask:  "Which masses does the problem give, and is each of them in your line?",
			Rule: "{The force} is the weight of everything that belongs to {body}: every mass counts once."}, {At: OnValue,
			Ask:  "Which masses does the problem give, and did you use each of them?",
			Rule: "A weight is the weight of everything that belongs to {body}: every mass counts once."}},
	},
	{
		Code: Sign, Cost: 2.4, Term: differenceInSize, Signed: true,
		Said: Said{
			Component: "In your line for {component}, something is subtracted. What makes up {force}, and which way does each thing pull?",
			Line:      "{In}, something is subtracted inside {force}. What makes up {force}, and which way does each thing pull?",
			Value:     "You get this value of {unknown} if one mass is subtracted from another. Which way does the weight of each of them act?",
		},
		Hints: []Hint{{At: OnComponent | OnSum | OnLine | OnValue,
			Ask:  "Which things belong to {body}, and which way does the earth pull each of them?",
			Rule: "The earth pulls everything that belongs to {body} the same way, so no mass takes away from another."}},
	},
	{
		Code: Unexplained, Cost: 2.5, Term: pressedByOther, NotInSums: true,
		Said: Said{
			Component: "For {component}, the coefficient stands beside another force. Which force presses the two surfaces together?",
			Line:      "{In}, the coefficient of friction stands beside a force that does not belong there. Which force presses the two surfaces together?",
		},
		Hints: []Hint{{At: OnComponent | OnSum | OnLine,
			Ask:  "With which force do the two surfaces push each other straight apart?",
			Rule: "A body that is just about to slide, or that slides, has a friction as large as the coefficient times the normal force. No other force comes into it."}},
	},
	{
		Code: ExtraForce, Meaning: "a force too many", Cost: 1.6, Tells: 0.2, OfAxis: true,
		Term: putIn, Tree: lessOfSum,
		Said: Said{
			Component: "{Component} needs another look. How does {force} lie to {axis} in the drawing?",
			Line:      "{In}, you counted {force} where it has no component, or more often than it acts.",
			Lines:     "{In}, you counted a force where it has no component, or more often than it acts.",
			Value:     "You get this value of {unknown} if a force is counted where it has no component, or twice.",
			List:      "{The force|One force} is in your list more than once.",
			NoForce:   "In your list, {stranger} is not a force. Which force on {body} does it belong to?",
			Stranger:  "What would have to touch or pull {body} to exert {stranger} on it?",
		},
		Hints: []Hint{
			{At: OnComponent,
				Ask:  "If you walk along {force}, how far does that take you {along}?",
				Rule: "{lie}"},
			{At: OnSum,
				Ask:  "Which of {names} have a component {along}, and is each of these in your line just once?",
				Rule: "A force at right angles to {axis} has no component {along}. Every other force on {body} is in the equation once, and nothing else is."},
			{At: OnLine | OnValue,
				Ask:  "Does each of {names} appear only in the equations in which it has a component, and just once there?",
				Rule: "A force at right angles to an axis has no component along it, and no force is in one equation twice."},
			{At: OnList,
				Ask:  "What exerts each force of your list: which string, which surface, which other thing?",
				Rule: "Each thing that touches {body} exerts one force on it, and gravity exerts the weight. A force that nothing exerts does not belong in the list."},
		},
	},
	{
		Code: ExtraForce, Cost: 9, Weight: SecondWeight,
		Said: Said{
			Line: "{The force} is already the whole weight of {body}. Which weight is {stranger} then?",
			List: "{The force} is already the whole weight of {body}. Which weight is {stranger} then?",
		},
		Hints: []Hint{{At: OnSum | OnList,
			Ask:  "What belongs to {body}, and which letter is the weight of all of it?",
			Rule: "The earth pulls on all of {body} with one force, its weight. Whatever belongs to {body} is counted in it."}},
	},
	{
		Code: ExtraForce, Cost: 9, Weight: NoWeightHere,
		Said: Said{
			Stranger: "The forces of this problem include no weight of {body}. Is the drawing seen from above, or does {body} weigh next to nothing?",
		},
		Hints: []Hint{{At: OnSum | OnList,
			Ask:  "Does the problem give a mass or a weight of {body}, and do you look at it from the side or from above?",
			Rule: "A weight points straight down. In a drawing that is seen from above it has no component along x or y, and the weight of a light thing is left out."}},
	},
	{Code: ExtraForce, Cost: 2.6, Sum: bothComponents, Alone: true},
	{Code: ExtraForce, Cost: 2, Tells: 0.2, Term: putInResolved, NotInSums: true, Seen: true},
	{
		Code: ExtraForce, Cost: 1.7, Sum: otherForceToo, Alone: true,
		Said: Said{Component: "{Component} is about one force alone. Does another force belong in it?"},
		Hints: []Hint{{At: OnComponent,
			Ask:  "Which forces are in your line, and of which one is the component asked?",
			Rule: "A component belongs to one force alone. Every other force has its own, and all of them meet in the equation for the axis."}},
	},
	{
		Code: WrongAxis, Meaning: "the other axis", Cost: 1.7,
		Sum: otherAxis, Alone: true, OfSums: true, OfAxis: true,
		Said: Said{
			Component: "This is how {force} acts along the other axis. Here {component} is asked.",
			Line:      "{In}, the term with {force} belongs to the other axis.",
			Lines:     "This is about the other axis. Here {sum} is asked.",
			Value:     "You get this value of {unknown} if a component along one axis gets into the equation for the other.",
		},
		Hints: []Hint{
			{At: OnComponent, Slanted: true,
				Ask:  "Which side of the triangle of {force} runs {along}?",
				Rule: "{lie}"},
			{At: OnSum,
				Ask:  "Which way does {axis} point, and which components run that way?",
				Rule: "The equation asked for has only the components {along}. Those along the other axis have an equation of their own."},
			{At: OnLine | OnValue,
				Ask:  "Does each of your equations have only components along one axis?",
				Rule: "The equation for an axis has only components along that axis."},
		},
	},
	{
		Code: WrongAxis, Cost: 1.8, Value: acrossTheWeight,
		Said: Said{Value: "You get this value of {unknown} if {what}. Do the two act along the same axis?"},
		Hints: []Hint{{At: OnValue,
			Ask:  "Which of {names} act only along x, which only along y, and which along both?",
			Rule: "Two forces at a right angle cannot balance each other: the equation for an axis has only components along that axis."}},
	},
	{
		Code: TwiceCounted, Meaning: "a force beside its own component", Cost: 2.4,
		Sum: besideItself, Alone: true,
		Said: Said{
			Component: "You counted {force} twice: as a whole, and again as one of its components.",
			Line:      "{In}, you counted {force} twice: as a whole, and again as one of its components.",
			Lines:     "{In}, you counted a force twice: as a whole, and again as one of its components.",
			Value:     "You get this value of {unknown} if a force and one of its components are both counted.",
			Instead:   "Your list has a component of {force}, but not {force} itself. What belongs in a force diagram?",
			List:      "Your list has a component of {force|a force}. Is a component one more force on {body}?",
		},
		Hints: []Hint{{At: OnList,
			Ask:  "Is each entry of your list a whole force?",
			Rule: "A force diagram shows every force once and whole, in its own direction. Its components come in the next step."}, {At: Anywhere &^ OnList,
			Ask:     "Are the components of {force} further forces, or are they {force} once more?",
			Rule:    "The components of {force} replace it: where a component is counted, {force} itself is not.",
			AskAny:  "Are the components of a force further forces, or the same force once more?",
			RuleAny: "The components of a force replace it: where a component is counted, the force itself is not."}},
	},
	{
		Code: WholeFactor, Meaning: "doubled or halved", Cost: 2.65, Tells: 1.05,
		Term: doubledOrHalved, Sum: stringsDoubled, Tree: doubledTree, Value: wholeFactor,
		Said: Said{
			Component: "Check the number in your line for {component}: something is doubled or halved.",
			Line:      "{In}, the term with {force} is off by a whole-number factor. How often does {force} act?",
			Lines:     "{In}, a term is off by a whole-number factor. Look at {forces|each term}.",
			Value:     "You get this value of {unknown} if {what|something} is doubled or halved on the way.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:     "How often does {force} act on {body}, and where does each number in your line come from?",
			Rule:    "{The force} is in the equation as often as it acts. Any other number must come from the problem.",
			AskAny:  "How often does each force act, and where does each number in your line come from?",
			RuleAny: "A force is in the equation as often as it acts: two equal forces count as two. Any other number must come from the problem."}},
	},
	{
		Code: EqualTensions, Meaning: "tensions taken as equal", Cost: 2.1, InNumbers: -0.4,
		Term: otherTension, Tree: otherTensionLetter, Line: twoTensions, Value: givenTension,
		Said: Said{
			Component: "For {component}, you wrote the force of another string.",
			Line:      "{In}, the force of one string is in the place of another. Look at {force}.",
			Lines:     "You took {forces|the strings} to pull equally hard. Does the problem say so?",
			Value:     "You get this value of {unknown} if all the strings pull equally hard. Does the problem say so?",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Which string is steeper, and which carries more?",
			Rule: "Each string has a tension of its own. Two of them are equal only for a reason, such as one rope or the same angle on both sides."}},
	},
	{
		Code: OtherBody, Meaning: "another body's mass or force", Cost: 1.22, InNumbers: -0.1,
		Term: fromOtherBody, Tree: otherWeightLetter, Value: otherBodyValue,
		Said: Said{
			Component: "What you wrote for {component} belongs to another body.",
			Line:      "{In}, what you wrote for {force} belongs to another body.",
			Lines:     "{In}, something belongs to another body.",
			Value:     "You get this value of {unknown} if {what|something that belongs to another body} is used.",
		},
		Hints: []Hint{{At: OnLine | OnValue,
			Ask:  "Which force acts on which body, and does each of your equations have only the forces on one of them?",
			Rule: "The equation for one body has only the forces on that body. What acts on another body is in the equations of the other."}, {At: Anywhere &^ (OnLine | OnValue),
			Ask:  "Which forces act on {body} itself?",
			Rule: "The equation for one body has only the forces on that body. What acts on another body is in the equations of the other."}},
	},
	{
		Code: OtherBody, Cost: 2.7, Sum: foreignForce, Alone: true,
		Said: Said{
			Component: "{Component} is about {force} alone. Does everything in your line act on {body}?",
			Line:      "{In}, you counted {force|a force}, which acts on another body.",
		},
	},
	{
		Code: OtherUnknown, Meaning: "another unknown's value", Cost: 1.25, InNumbers: -0.1,
		Value: otherUnknown,
		Said: Said{
			Value: "This value belongs to another unknown of the problem, not to {unknown}.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Which letter did you work out last?",
			Rule: "Each value belongs to the letter that was alone on its side. Follow the letters back to the equation they come from."}},
	},
	{
		Code: OtherUnknown, Cost: 1.4, Value: givenForce,
		Said: Said{Value: "This value is given, but for {what}, not for {unknown}."},
		Hints: []Hint{{At: OnValue,
			Ask:  "Which of {names} are given, and which equation has {unknown} in it?",
			Rule: "What is given for one force holds for another only if an equation says so. {start}"}},
	},
	{
		Code: Unbalanced, Meaning: "something left over at rest", Cost: 3,
		Said: Said{
			Component: "At rest nothing is left over along either axis. Write {component} by itself.",
			Line:      "At rest, or at a steady speed, the acceleration is zero. What does that say about the two sides of your line?",
			Lines:     "At rest, or at a steady speed, the acceleration is zero. What does that say about the two sides of your line?",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "How large is the acceleration of {body}?",
			Rule: "What is at rest, or moves at a steady speed, has no acceleration: the forces one way are just as large as the forces the other way. No force has to win."}},
	},
	{
		Code: WrongSide, Meaning: "a force with the wrong direction", Cost: 3,
		Said: Said{List: "Check the direction of {force|each force}."},
		Hints: []Hint{{At: OnList,
			Ask:     "{whichway}",
			Rule:    "{kind}",
			AskAny:  "For each force, think of what exerts it. Which way does that pull or push {body}?",
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
	if len(c.About) < 2 {
		return nil
	}
	return []Change{c}
}

func leftOut(_ *trial.Problem, _ solved.Place, t solved.Term) []solved.Term {
	if t.Scale == 0 {
		return nil
	}
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
			return []Change{{About: []string{t.Force.Name}, Sum: solved.Sum{t}, Cost: 1.2}}
		}
	}
	return nil
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
