package mistake

import (
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
	"example.org/standstill/checker/trial"
)

// Mistakes in taking a force apart: which function, of which angle, whether at all.
var resolving = []Row{
	{
		Code: SineCosine, Meaning: "sine and cosine swapped", Cost: 1.1,
		Term: functionBy(solved.Swapped), AllTerms: true, SameZero: true, Everywhere: true,
		Tree:  callBy(map[string]string{"sin": "cos", "cos": "sin", "asin": "acos", "acos": "asin"}),
		Value: complementOf,
		Shows: func(f trial.Form, _ int) bool { return f.Sines || !f.Functions && (f.Decimals || f.Quotients) },
		Said: Said{
			Component: "{Component} is one side of the triangle for {force}. Seen from {angle|the angle}, is this the opposite side or the adjacent side?",
			Line:      "{In}, look at the trigonometric function that you used with {force}. Which side of the triangle for {force} does this function give?",
			Lines:     "{In}, look at the trigonometric functions that you used with {forces|the forces}. Which side of a triangle does each function give?",
			Value:     "You get this value of {unknown} if you swap two sides of the triangle for a force.",
		},
		Hints: []Hint{
			{At: OnComponent | OnSum, Slanted: true,
				Ask:     "Imagine that {angle|the angle} is almost 0°. How large should {component} be then, and what does your line give?",
				Rule:    "In the triangle for {force}, {component} is the side {beside} {angle|the angle}. Use the cosine for the side adjacent to an angle and the sine for the side opposite it.",
				AskAny:  "Imagine that each angle in turn is almost 0°. How large should each component be then, and what does your line give?",
				RuleAny: "Use the cosine for the side adjacent to an angle and the sine for the side opposite it. For each force, find which of these two sides is parallel to {axis}."},
			{At: OnLine | OnValue,
				Ask:  "Imagine that an angle is almost 0°. How large should each component be then, and what does your line give?",
				Rule: "Use the cosine for the side adjacent to an angle and the sine for the side opposite it. Check which line the angle is measured from."},
		},
	},
	{
		Code: SineCosine, Cost: 1.9, Term: frictionOfOther,
		Said: Said{
			Component: "Look at your expression for the normal force. Which component of the weight does the normal force balance?",
			Line:      "{In}, look at your expression for the normal force. Which component of the weight does the normal force balance?",
		},
	},
	{
		Code: NotResolved, Meaning: "a whole force used instead of its component", Cost: 1.08, InNumbers: 0.25,
		Term: wholeForce, AllTerms: true, Everywhere: true, Sum: wholeForces, Tree: resolvedAgain, Value: wholeWeight,
		Said: Said{
			Component: "You used the whole of {force}, but {force} is at an angle to {axis}.",
			Line:      "{In}, you used the whole of {force}, but {force} is at an angle to the axis.",
			Lines:     "{In}, you used the whole of a force that is at an angle to the axis. Look at {forces|each term}.",
			Value:     "You get this value of {unknown} if you use the whole of {what|a force at an angle}, although only one of its components belongs in the equation.",
		},
		Hints: []Hint{
			{At: OnComponent | OnSum, Slanted: true,
				Ask:     "Does {force} act only {along}, or also along the other axis?",
				Rule:    "{The force} is at an angle to both axes. In the triangle for {force}, the component {along} is only one of the sides: the side {beside} {angle|its angle}.",
				AskAny:  "Which of the forces {names} are at an angle to {axis}?",
				RuleAny: "If a force is at an angle, only its component {along} counts. In the triangle for the force, this component is the side parallel to {axis}."},
			{At: OnLine | OnValue,
				Ask:  "Which of the forces {names} are at an angle to the axes?",
				Rule: "A force at an angle has a component along each axis. Neither equation contains the whole force."},
		},
	},
	{
		Code: OverResolved, Meaning: "a sine or cosine used with a force along the axis", Cost: 1.25,
		Term: resolvedThoughAlong, Seen: true, NotInSums: true,
		Shows: func(f trial.Form, _ int) bool { return f.Functions || f.Decimals || f.Quotients },
		Said: Said{
			Component: "You multiplied {force} by a trigonometric function. What is the angle between {force} and {axis}?",
			Line:      "{In}, you multiplied {force} by a trigonometric function. What is the angle between {force} and the axis?",
			Lines:     "{In}, you multiplied a force along the axis by a trigonometric function. Look at {forces|each term}.",
			Value:     "You get this value of {unknown} if you use a sine or cosine with a force that acts along one of the axes.",
		},
		Hints: []Hint{
			{At: OnComponent | OnSum,
				Ask:     "In the drawing, how much of {force} acts along the other axis?",
				Rule:    "{The force} acts along {axis}, so its component along this axis is the whole force. You do not need a sine or cosine.",
				AskAny:  "Which of the forces {names} act along one of the axes?",
				RuleAny: "If a force acts along an axis, its component along that axis is the whole force. You do not need a sine or cosine."},
			{At: OnLine | OnValue,
				Ask:  "Which of the forces {names} act along one of the axes?",
				Rule: "If a force acts along an axis, its component along that axis is the whole force. You do not need a sine or cosine."},
		},
	},
	{
		Code: OtherAngle, Meaning: "another force's angle", Cost: 1.8,
		Term: otherAngle, Everywhere: true, Tree: angleLetter,
		Shows: hasFunction,
		Said: Said{
			Component: "The angle in your line is not the angle of {force} in the drawing.",
			Line:      "{In}, the angle that you used with {force} is not the angle of {force} in the drawing.",
			Lines:     "{In}, the angle of a force does not match the drawing. Look at {forces|each term}.",
			Value:     "You get this value of {unknown} if you use the angle of another force.",
		},
		Hints: []Hint{
			{At: OnComponent | OnSum, Slanted: true,
				Ask:     "Which angle of {force} is marked in the drawing, and from which line is this angle measured?",
				Rule:    "Find the components of {force} from its own angle, which is measured {measured|from a line in the drawing}.",
				AskAny:  "For which of the forces {names} is an angle marked in the drawing?",
				RuleAny: "Find the components of a force from its own angle. The angle of another force tells you nothing about them."},
			{At: OnLine | OnValue,
				Ask:  "For which of the forces {names} is an angle marked in the drawing?",
				Rule: "Find the components of a force from its own angle. The angle of another force tells you nothing about them."},
		},
	},
	{
		Code: OtherAngle, Cost: 1.9, Term: fromTheHorizontal, NotInSums: true, Shows: hasFunction,
		Said: Said{
			Component: "The angle in your line is not the angle between {force} and an axis.",
			Line:      "{In}, the angle that you used with {force} is not the angle between {force} and an axis.",
		},
		Hints: []Hint{{At: OnComponent | OnSum | OnLine, Slanted: true,
			Ask:  "In which direction does {axis} point, and from which line is the marked angle of {force} measured?",
			Rule: "In this problem, the axes are turned. Use the angle between {force} and one of these axes, not the angle between {force} and the horizontal."}},
	},
	{
		Code: OtherAngle, Cost: 1.8, Value: givenAngle,
		Said: Said{Value: "This value of {unknown} comes from one of the given angles, but {unknown} is a different angle."},
	},
	{
		Code: Tangent, Meaning: "a tangent used instead of a sine or cosine", Cost: 1.9,
		Term: tangentFor, AllTerms: true, SameZero: true, Everywhere: true,
		Tree:  callBy(map[string]string{"tan": "sin cos", "sin": "tan", "cos": "tan", "atan": "asin acos", "asin": "atan", "acos": "atan"}),
		Shows: hasFunction,
		Said: Said{
			Component: "Look at the trigonometric function in your line. Which two sides of the triangle for {force} does this function relate?",
			Line:      "{In}, look at the trigonometric function that you used with {force}. Which two sides of the triangle for {force} does this function relate?",
			Lines:     "{In}, look at the trigonometric functions. Which two sides of a triangle does each function relate?",
			Value:     "You get this value of {unknown} if you use a trigonometric function for the wrong two sides of a triangle.",
		},
		Hints: []Hint{
			{At: OnComponent | OnSum, Slanted: true,
				Ask:     "Imagine that {angle|the angle} is almost 90°. Can {component} be larger than {force} itself?",
				Rule:    "{The force} is the hypotenuse of its triangle. The sine and cosine relate a side to the hypotenuse; the tangent relates the other two sides to each other.",
				AskAny:  "Imagine that an angle is almost 90°. Can a component be larger than the force itself?",
				RuleAny: "A force is the hypotenuse of its triangle. The sine and cosine relate a side to the hypotenuse; the tangent relates the other two sides to each other."},
			{At: OnLine | OnValue,
				Ask:  "Which two sides of the triangle does your line relate, and which trigonometric function belongs to them?",
				Rule: "The sine and cosine relate a side to the hypotenuse; the tangent relates the other two sides to each other."},
		},
	},
	{
		Code: Tangent, Cost: 2.2, Value: functionAsAngle,
		Said: Said{Value: "This value is {what}, not the angle {unknown}."},
	},
	{
		Code: Inverted, Meaning: "numerator and denominator swapped", Cost: 2,
		Term: functionBy(solved.Upturned), AllTerms: true, SameZero: true, Tree: upsideDown, Value: inverted,
		// T2 = w cos φ is one division taken for a product; where two functions have changed
		// places, nothing was divided.
		Shows: func(f trial.Form, forces int) bool {
			return f.Quotients || f.Decimals && !f.Functions || (f.Functions || f.Decimals) && forces == 1
		},
		Said: Said{
			Component: "In your line, check which quantities belong in the numerator and which in the denominator.",
			Line:      "{In}, look at {force}. Which quantities belong in the numerator, and which in the denominator?",
			Lines:     "{In}, check which quantities belong in the numerator and which in the denominator.",
			Value:     "You get this value of {unknown} if you swap the numerator and the denominator of a fraction.",
		},
		Hints: []Hint{
			{At: OnComponent | OnSum, Slanted: true,
				Ask:     "Can {component} be larger than {force} itself?",
				Rule:    "No component can be larger than {force} itself, so you never multiply {force} by a number greater than one.",
				AskAny:  "Can a component be larger than the force itself?",
				RuleAny: "No component can be larger than the force itself, so you never multiply a force by a number greater than one."},
			{At: OnComponent | OnSum,
				Ask:  "Imagine that one of the quantities in your line increases. Does {force} then increase or decrease, and does your line say the same?",
				Rule: "{law|If a letter is multiplied by a quantity, divide both sides by that quantity. If the letter is divided by a quantity, multiply both sides by that quantity.}"},
			{At: OnLine | OnValue,
				Ask:  "What do you have to do to both sides of the equation so that the unknown is alone on one side?",
				Rule: "If a letter is multiplied by a quantity, divide both sides by that quantity. If the letter is divided by a quantity, multiply both sides by that quantity."},
		},
	},
	{
		Code: Inverted, Cost: 2, Sum: functionElsewhere, Alone: true, Seen: true,
		Said: Said{
			Line:  "{In}, check which force the trigonometric function belongs to.",
			Lines: "{In}, check which force the trigonometric function belongs to.",
		},
		Hints: []Hint{{At: OnSum | OnLine,
			Ask:  "Which of the forces {names} are at an angle to {axis}, and which of them act along this axis?",
			Rule: "Use a sine or cosine only with a force that is at an angle to the axis, not with a force that acts along the axis."}},
	},
	{
		Code: Inverted, Cost: 2.4, Term: sizeUpsideDown,
		Said: Said{
			Component: "In your expression for {force}, check which quantities belong in the numerator and which in the denominator.",
			Line:      "{In}, look at your expression for {force}. Which quantities belong in the numerator, and which in the denominator?",
		},
		Hints: []Hint{{At: OnComponent | OnSum | OnLine,
			Ask:  "Imagine that one of the quantities in your line increases. Does {force} then increase or decrease, and does your line say the same?",
			Rule: "{law|If a letter is multiplied by a quantity, divide both sides by that quantity. If the letter is divided by a quantity, multiply both sides by that quantity.}"}},
	},
	{
		Code: Radians, Meaning: "the angle in radians", Cost: 2.05, InNumbers: 0.15,
		Term: inRadians, AllTerms: true, Everywhere: true, NotInSums: true, Value: degreesAsRadians,
		Shows: func(f trial.Form, _ int) bool { return f.Decimals },
		Said: Said{
			Component: "You get this number for {component} if your calculator is set to the wrong angle unit.",
			Line:      "{In}, you get the number in the {force} term if your calculator is set to the wrong angle unit.",
			Lines:     "{In}, you get one of the numbers if your calculator is set to the wrong angle unit.",
			Value:     "You get this value of {unknown} if your calculator is set to the wrong angle unit.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Which angle unit is your calculator set to? What does your calculator give for sin 30?",
			Rule: "The angles in this problem are in degrees. The sine of 30° is 0.5."}},
	},
}

// frictionOfOther has in the friction the other component of the weight than the one that the
// surface holds: μ w sin α for μ w cos α.
func frictionOfOther(p *trial.Problem, at solved.Place, t solved.Term) []solved.Term {
	body := &p.Solved.Bodies[at.Body]
	weight, normal := solved.OnlyOf(body, statics.Weight), solved.OnlyOf(body, statics.Normal)
	size := p.Solved.SizeTree(t)
	if weight == nil || normal == nil || t.Scale == 0 || size == nil || !size.Has(normal.Name) || !weight.Slanted() {
		return nil
	}
	along := weight.Factor(at.Axis)
	if along.Angle == nil {
		return nil
	}
	return []solved.Term{p.Solved.WithSize(t, weight.Name+" along for "+normal.Name, func() *expr.Node {
		return expr.Substitute(size, normal.Name, expr.Join(expr.Mul, expr.Letter(weight.Name), expr.Apply(along.Function, along.Angle)))
	})}
}

func hasFunction(f trial.Form, _ int) bool { return f.Functions || f.Decimals || f.Quotients }

func functionBy(table map[solved.Function]solved.Function) func(*trial.Problem, solved.Place, solved.Term) []solved.Term {
	return func(_ *trial.Problem, _ solved.Place, t solved.Term) []solved.Term {
		f, ok := table[t.Function]
		if !ok || t.Scale == 0 {
			return nil
		}
		t.Function = f
		return []solved.Term{t}
	}
}

// functionElsewhere takes the function that some terms share to the others, as who multiplies
// where a division was needed does: T = w cos θ for T cos θ = w.
func functionElsewhere(_ *trial.Problem, _ solved.Place, w solved.Sum) []Change {
	c := Change{Sum: slices.Clone(w)}
	var shared *solved.Term
	plain := 0
	for i := range w {
		switch {
		case w[i].Scale == 0:
		case w[i].Function == solved.Whole:
			plain++
		case shared == nil || shared.Function == w[i].Function && shared.Letter == w[i].Letter && shared.Letter != "":
			shared = &w[i]
			c.About = append(c.About, w[i].Force.Name)
		default:
			return nil
		}
	}
	if shared == nil || plain == 0 {
		return nil
	}
	for i := range c.Sum {
		t := &c.Sum[i]
		if t.Function == solved.Whole {
			t.Function, t.Angle, t.Letter = shared.Function, shared.Angle, shared.Letter
		} else {
			t.Function = solved.Whole
		}
	}
	return []Change{c}
}

func wholeForce(_ *trial.Problem, _ solved.Place, t solved.Term) []solved.Term {
	if t.Function == solved.Whole || t.Scale == 0 {
		return nil
	}
	t.Function = solved.Whole
	return []solved.Term{t}
}

// wholeForces adds up the forces as if they lay in one line: all of them whole, and one of them
// with the wrong sign.
func wholeForces(p *trial.Problem, at solved.Place, w solved.Sum) []Change {
	// Two mistakes, as wholeForce in every term is one without the sign.
	whole := Change{Sum: slices.Clone(w), Cost: costOfAll + costOfPair}
	for i := range whole.Sum {
		if t := &whole.Sum[i]; t.Scale != 0 && t.Function != solved.Whole {
			t.Function = solved.Whole
			whole.About = append(whole.About, t.Force.Name)
		}
	}
	if len(whole.About) < 2 {
		return nil
	}
	var all []Change
	for i := range whole.Sum {
		if whole.Sum[i].Scale != 0 {
			c := whole
			c.Sum = slices.Clone(whole.Sum)
			c.Sum[i].Scale = -c.Sum[i].Scale
			all = append(all, c)
		}
	}
	return all
}

// resolvedThoughAlong gives a force that lies along the axis a sine or cosine of any angle of
// the problem, as who resolves everything does.
func resolvedThoughAlong(p *trial.Problem, at solved.Place, t solved.Term) []solved.Term {
	if t.Function != solved.Whole || t.Scale == 0 || t.Force.Slanted() {
		return nil
	}
	return withFunctions(p, at, t)
}

// withFunctions multiplies a term by a sine and by a cosine of each angle that goes by a letter.
func withFunctions(p *trial.Problem, at solved.Place, t solved.Term) []solved.Term {
	var all []solved.Term
	for _, letter := range p.Solved.AngleLetters(at.Body) {
		for _, f := range []solved.Function{solved.Sine, solved.Cosine} {
			turned := p.Solved.WithAngle(t, letter)
			turned.Function = f
			all = append(all, turned)
		}
	}
	return all
}

func otherAngle(p *trial.Problem, at solved.Place, t solved.Term) []solved.Term {
	if t.Function == solved.Whole || t.Scale == 0 {
		return nil
	}
	var all []solved.Term
	for _, letter := range p.Solved.AngleLetters(at.Body) {
		if letter != t.Letter {
			all = append(all, p.Solved.WithAngle(t, letter))
		}
	}
	return all
}

// fromTheHorizontal measures an angle from the horizontal where the axes are those of a slope, or takes
// one that is measured from the slope for such an angle.
func fromTheHorizontal(p *trial.Problem, at solved.Place, t solved.Term) []solved.Term {
	tilt := p.Solved.Bodies[at.Body].Tilt
	if t.Function == solved.Whole || t.Scale == 0 || t.Letter == "" || tilt == nil || tilt.Op != expr.Name || tilt.Name == t.Letter {
		return nil
	}
	return p.Solved.TurnedBy(t, tilt.Name)
}

func tangentFor(_ *trial.Problem, _ solved.Place, t solved.Term) []solved.Term {
	if t.Function != solved.Sine && t.Function != solved.Cosine {
		return nil
	}
	t.Function = solved.TangentOf
	return []solved.Term{t}
}

// inRadians takes an angle's degrees for radians.
func inRadians(_ *trial.Problem, _ solved.Place, t solved.Term) []solved.Term {
	if t.Function == solved.Whole || t.Scale == 0 {
		return nil
	}
	t.Radians = true
	return []solved.Term{t}
}

// sizeUpsideDown divides in a force's size where the problem multiplies: k/s for k s.
func sizeUpsideDown(p *trial.Problem, _ solved.Place, t solved.Term) []solved.Term {
	size := p.Solved.SizeTree(t)
	if size == nil || t.Scale == 0 || size.Op != expr.Mul && size.Op != expr.Div {
		return nil
	}
	a, b := size.Args[0], size.Args[1]
	if size.Op == expr.Div {
		return []solved.Term{p.Solved.WithSize(t, "multiplied", func() *expr.Node { return expr.Join(expr.Mul, a, b) })}
	}
	return []solved.Term{
		p.Solved.WithSize(t, "first over second", func() *expr.Node { return expr.Join(expr.Div, a, b) }),
		p.Solved.WithSize(t, "second over first", func() *expr.Node { return expr.Join(expr.Div, b, a) }),
	}
}

// callBy replaces a function by each of those that the table names for it.
func callBy(table map[string]string) func(*trial.Problem, *expr.Node) []*expr.Node {
	return func(_ *trial.Problem, n *expr.Node) []*expr.Node {
		if n.Op != expr.Call {
			return nil
		}
		var all []*expr.Node
		for _, name := range strings.Fields(table[n.Name]) {
			all = append(all, expr.Apply(name, n.Args[0]))
		}
		return all
	}
}

// upsideDown turns a fraction over, divides where was multiplied and the other way round.
func upsideDown(_ *trial.Problem, n *expr.Node) []*expr.Node {
	switch {
	case n.Op == expr.Div:
		return []*expr.Node{expr.Join(expr.Div, n.Args[1], n.Args[0]), expr.Join(expr.Mul, n.Args[0], n.Args[1])}
	case n.Op == expr.Mul:
		return []*expr.Node{expr.Join(expr.Div, n.Args[0], n.Args[1]), expr.Join(expr.Div, n.Args[1], n.Args[0])}
	case n.Op == expr.Call && n.Name == "tan":
		return []*expr.Node{expr.Apply("cot", n.Args[0])}
	}
	return nil
}

// resolvedAgain puts a component in the place of a whole force.
func resolvedAgain(p *trial.Problem, n *expr.Node) []*expr.Node {
	var all []*expr.Node
	for _, f := range forcesNamed(p, n) {
		for _, axis := range []statics.Axis{statics.X, statics.Y} {
			if factor := f.Factor(axis); f.Slanted() && factor.Angle != nil {
				all = append(all, expr.Join(expr.Mul, n, expr.Apply(factor.Function, factor.Angle)))
			}
		}
	}
	return all
}

// forcesNamed lists the forces, one for each body, of which a node is the letter.
func forcesNamed(p *trial.Problem, n *expr.Node) []*statics.Force {
	if n.Op != expr.Name {
		return nil
	}
	var all []*statics.Force
	for i := range p.Solved.Bodies {
		if f, here := p.Solved.Bodies[i].Force(n.Name); here {
			all = append(all, f)
		}
	}
	return all
}

func angleLetter(p *trial.Problem, n *expr.Node) []*expr.Node {
	v, ok := p.Solved.Model.Variable(n.Name)
	if n.Op != expr.Name || !ok || !v.Angle {
		return nil
	}
	var all []*expr.Node
	for _, other := range p.Solved.Model.Variables {
		if other.Angle && other.Name != v.Name {
			all = append(all, expr.Letter(other.Name))
		}
	}
	return all
}
