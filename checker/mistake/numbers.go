package mistake

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
	"example.org/standstill/checker/trial"
)

// Mistakes that show in numbers alone.
var numbers = []Row{
	{
		Code: Pythagoras, Meaning: "magnitudes combined as if directions did not matter", Cost: 2.6,
		Value: putTogether, Formula: isPutTogether,
		Said: Said{
			Line:  "In this line, you combined magnitudes as if the forces were parallel or at right angles to each other.",
			Lines: "In this line, you combined magnitudes as if the forces were parallel or at right angles to each other.",
			Value: "You get this value of {unknown} if {what|you combine magnitudes as if the forces were parallel or at right angles to each other}.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Are the forces in your line parallel, or are they at right angles to each other?",
			Rule: "Add the magnitudes of two forces only if the forces are parallel. Add the squares of the magnitudes only if the forces are at right angles. In every other case, add the components along each axis."}},
	},
	{
		Code: Pythagoras, Cost: 2.6, Line: triangleOfTwo, LineLast: true,
		Said: Said{Lines: "In this line, you treated two forces as two sides of a right-angled triangle. Do the forces form such a triangle?"},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Which two forces are at right angles to each other?",
			Rule: "The ratio of two sides is the sine, cosine or tangent of an angle only in a right-angled triangle. In every other case, use the equations for the axes."}},
	},
	{
		Code: Unexplained, Cost: 2.58, Value: oneStep, Open: true,
		Said: Said{Value: "This value of {unknown} is {what}. Which equation would give this value?"},
	},
	{
		Code: Unexplained, Cost: 0.5, Value: secondRoot,
		Said: Said{Value: "This value of {unknown} belongs to a second solution of the equations. This solution does not fit the drawing."},
		Hints: []Hint{{At: Anywhere,
			Ask:  "With this value, what do the equations give for the other unknown? Does every force then point in the direction shown in the drawing?",
			Rule: "Two different angles can have the same sine or the same cosine, so the equations can have two solutions. In the correct solution, every force points in the direction shown in the drawing."}},
	},
	{
		Code: Slip, Meaning: "a numerical slip", Cost: 5, Passing: true,
		Digits: isNear, DigitsCost: 2.55,
		Said: Said{
			Component: "The number for {component} is almost right, but rounding does not explain the difference.",
			Line:      "{In}, the number in the {force} term is almost right, but rounding does not explain the difference.",
			Lines:     "{In}, one of the numbers is almost right, but rounding does not explain the difference.",
			Value:     "This value of {unknown} is almost right, but rounding does not explain the difference.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Where did you round during your calculation, and to how many significant figures?",
			Rule: "Keep four significant figures during the calculation, and round only the result. Also check each number that you typed into your calculator."}},
	},
	{
		Code: Slip, Cost: 9, OfGiven: true,
		Said: Said{
			Component: "Compare each number in your line with the values that the problem gives.",
			Line:      "Compare each number in your line with the values that the problem gives.",
			Lines:     "Compare each number in your line with the values that the problem gives.",
			Value:     "Compare each number in your line with the values that the problem gives.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Which numbers in your line are given values? Are these numbers exactly the same as in the problem?",
			Rule: "Use each given value exactly as it is in the problem, with all its digits."}},
	},
	{
		Code: PowerOfTen, Meaning: "a wrong power of ten", Cost: 4,
		Digits: isShifted, DigitsCost: 2.15,
		Said: Said{
			Component: "The digits for {component} are right, but check the power of ten.",
			Line:      "{In}, the digits in the {force} term are right, but check the power of ten.",
			Lines:     "{In}, the digits are right, but check the power of ten of each number.",
			Value:     "The digits of this value of {unknown} are right, but check the power of ten.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Which units does the problem use, and in which unit should you give the answer?",
			Rule: "A kilogram is a thousand grams, a metre is a hundred centimetres, and a kilonewton is a thousand newtons. Convert the units first, and then check the decimal point."}},
	},
	{Code: PowerOfTen, Cost: 3, Term: asWritten, Alone: true},
	{
		Code: Link, Meaning: "one wrong equals sign in a line with several", Cost: 3,
		Said: Said{
			Component: "In this line, the expressions on the two sides of one equals sign are not equal. Work out these two expressions again; the rest of the line is right.",
			Line:      "In this line, the expressions on the two sides of one equals sign are not equal. Work out these two expressions again; the rest of the line is right.",
			Lines:     "In this line, the expressions on the two sides of one equals sign are not equal. Work out these two expressions again; the rest of the line is right.",
			Value:     "In this line, the expressions on the two sides of one equals sign are not equal. Work out these two expressions again; the rest of the line is right.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "If you work out each expression in your line separately, which two values are different?",
			Rule: "In a line with several equals signs, all the expressions must be equal. Work out each step separately, and keep four significant figures."}},
	},
}

// asWritten puts a given into a size as its number is written, whatever its unit: the 850 of
// 850 g, the 12 of 12 cm.
func asWritten(p *trial.Problem, _ solved.Place, t solved.Term) []solved.Term {
	size := p.Solved.SizeTree(t)
	if size == nil || t.Scale == 0 {
		return nil
	}
	var all []solved.Term
	for _, g := range p.Solved.Givens {
		if g.Unit.Factor == 1 || !IsPowerOfTen(g.Unit.Factor, trial.Hair) || !size.Has(g.Name) {
			continue
		}
		all = append(all, p.Solved.WithSize(t, g.Name+" as written", func() *expr.Node {
			return expr.Substitute(size, g.Name, expr.Join(expr.Div, expr.Letter(g.Name), expr.Constant(g.Unit.Factor)))
		}))
	}
	return all
}

func isOpposite(v Target, typed float64) bool {
	return math.Abs(typed/v.Value+1) < trial.RoundedShare && v.Dim != quantity.Angle
}

func isShifted(v Target, typed float64) bool {
	return typed/v.Value > 0 && IsPowerOfTen(typed/v.Value, trial.RoundedShare)
}

func isNear(v Target, typed float64) bool { return math.Abs(typed/v.Value-1) <= trial.SlipShare }

// IsPowerOfTen reports whether a ratio is 10, 100, 1/10 and the like, to a share of it.
func IsPowerOfTen(ratio, share float64) bool {
	power := math.Round(math.Log10(ratio))
	return power != 0 && math.Abs(ratio/math.Pow(10, power)-1) <= share
}

// ofOwnAngle is what a number costs less that the weight and the force's own angle give in one step.
const ofOwnAngle = -1.05

// seen is what a number costs less that can be read off the problem or its answers: it takes no
// equation to write it.
const seen = -1.2

// shown returns a number that is readily seen.
func shown(value float64, what string) Number {
	return Number{Value: value, Cost: seen, What: what, Shown: true}
}

// handedBackMass gives a mass back as a force, by itself or in the friction, and the other way
// round.
func handedBackMass(p *trial.Problem, v Target) []Number {
	g, ok := p.Solved.Slots["g"]
	if !ok {
		return nil
	}
	strength := p.Solved.Values[g]
	switch v.Dim {
	case quantity.Mass:
		return []Number{{Value: v.Value * strength, What: "a weight is used as a mass"}, {Value: v.Value / strength, What: "a value that is already a mass is divided by g"}}
	case quantity.Force:
		all := []Number{{Value: v.Value / strength}}
		for i, other := range p.Solved.Model.Variables {
			if other.Dim != quantity.Mass || other.Role != statics.IsGiven {
				continue
			}
			all = append(all, shown(p.Solved.Values[i], "the mass is used as a weight"))
			if v.Force == nil || v.Force.Kind != statics.Friction {
				continue
			}
			for j, mu := range p.Solved.Model.Variables {
				if mu.Dim == quantity.None && mu.Role == statics.IsGiven {
					all = append(all, Number{Value: p.Solved.Values[i] * p.Solved.Values[j], Cost: seen / 2, What: "the coefficient of friction is multiplied by a mass"})
				}
			}
		}
		return all
	}
	return nil
}

// timesGAgain multiplies by the strength of gravity what is in newtons already.
func timesGAgain(p *trial.Problem, v Target) []Number {
	g, ok := p.Solved.Slots["g"]
	if !ok {
		return nil
	}
	if v.Dim != quantity.Force {
		return nil
	}
	return []Number{{Value: v.Value * p.Solved.Values[g], What: "the correct value"}}
}

// hostsOf calls f with each body on which the force acts, and the body's only weight, if that is
// another force.
func hostsOf(p *trial.Problem, v Target, f func(body *statics.Body, on, weight *statics.Force)) {
	if v.Force == nil || v.Dim != quantity.Force {
		return
	}
	for b := range p.Solved.Bodies {
		body := &p.Solved.Bodies[b]
		if on, here := body.Force(v.Force.Name); here {
			weight := solved.OnlyOf(body, statics.Weight)
			if weight == on {
				weight = nil
			}
			f(body, on, weight)
		}
	}
}

// wholeWeightAsNormal takes the force of a surface to be the whole weight, by itself or in the
// friction.
func wholeWeightAsNormal(p *trial.Problem, v Target) []Number {
	var all []Number
	hostsOf(p, v, func(body *statics.Body, on, weight *statics.Force) {
		normal := solved.OnlyOf(body, statics.Normal)
		switch {
		// A value that is a weight is right to be one.
		case weight == nil || normal == nil || p.IsAWeight(v.Value):
		case on == normal:
			all = append(all, shown(p.Solved.Values[p.Solved.Slots[weight.Name]], ""))
		case on.Kind == statics.Friction && on.Size != nil && on.Size.Has(normal.Name):
			env := slices.Clone(p.Solved.Values)
			env[p.Solved.Slots[normal.Name]] = env[p.Solved.Slots[weight.Name]]
			all = append(all, Number{Value: p.Solved.ProgramOf(on.Size).Run(env), Cost: seen / 2})
		}
	})
	return all
}

// shareOfWeight gives each of several strings a share of the weight, or all of it; or lets its
// vertical component be such a share.
func shareOfWeight(p *trial.Problem, v Target) []Number {
	var all []Number
	hostsOf(p, v, func(body *statics.Body, on, weight *statics.Force) {
		if weight == nil || on.Kind == statics.Normal || on.Kind == statics.Friction {
			return
		}
		w := p.Solved.Values[p.Solved.Slots[weight.Name]]
		if on.Kind == statics.Tension && (solved.OnlyOf(body, statics.Tension) != nil || !slants(body)) || joins(p, on.Name) {
			return
		}
		whole, half := shown(w, "the whole weight"), shown(w/2, "half the weight")
		_, y := p.Solved.ComponentsOf(on)
		if y == 0 {
			whole.Cost, half.Cost = 0, 0 // a level string holds up nothing
		}
		all = append(all, whole)
		if on.Kind != statics.Tension {
			return
		}
		all = append(all, half)
		if on.Slanted() && y != 0 {
			half := Number{Value: w / 2 * math.Abs(v.Value/y), Cost: -0.4, What: "the tension that this string would have if it supported half the weight", Shown: true}
			all = append(all, half)
		}
	})
	return all
}

// slants reports whether a force on the body is at an angle; where none is, no angle was forgotten.
func slants(body *statics.Body) bool {
	return slices.ContainsFunc(body.Forces, func(f statics.Force) bool { return f.Slanted() })
}

// wholeWeight takes the weight for the one string that is not vertical, and a whole pull at an
// angle for the weight of an unknown mass.
func wholeWeight(p *trial.Problem, v Target) []Number {
	var all []Number
	hostsOf(p, v, func(body *statics.Body, on, weight *statics.Force) {
		if weight != nil && on.Kind == statics.Tension && solved.OnlyOf(body, statics.Tension) == on {
			all = append(all, shown(p.Solved.Values[p.Solved.Slots[weight.Name]], ""))
		}
	})
	g, ok := p.Solved.Slots["g"]
	if v.Dim != quantity.Mass || !ok {
		return all
	}
	for b := range p.Solved.Bodies {
		weight := solved.OnlyOf(&p.Solved.Bodies[b], statics.Weight)
		if weight == nil || weight.Size == nil || !weight.Size.Has(v.Name) {
			continue
		}
		for i := range p.Solved.Bodies[b].Forces {
			if f := &p.Solved.Bodies[b].Forces[i]; f != weight && (f.Slanted() || weight.Slanted()) {
				at := f
				if !f.Slanted() {
					at = weight
				}
				all = append(all, Number{Value: p.Solved.Values[p.Solved.Slots[f.Name]] / p.Solved.Values[g], Cost: seen / 2, What: expr.Set(at.Name), Shown: true})
			}
		}
	}
	return all
}

// otherBodyValue takes a weight or a mass of another body.
func otherBodyValue(p *trial.Problem, v Target) []Number {
	var all []Number
	switch v.Dim {
	case quantity.Mass:
		for i, other := range p.Solved.Model.Variables {
			if other.Dim == quantity.Mass && other.Role == statics.IsGiven && other.Name != v.Name {
				all = append(all, shown(p.Solved.Values[i], "another mass from the problem"))
			}
		}
	case quantity.Force:
		if v.Force == nil || len(p.Solved.Bodies) < 2 {
			break
		}
		for b := range p.Solved.Bodies {
			weight := solved.OnlyOf(&p.Solved.Bodies[b], statics.Weight)
			if _, here := p.Solved.Bodies[b].Force(v.Force.Name); weight != nil && (!here || joins(p, v.Force.Name) && balances(p, b, v.Force, weight)) && weight.Name != v.Name {
				all = append(all, Number{Value: p.Solved.Values[p.Solved.Slots[weight.Name]], Cost: seen + 0.4, What: "the weight of " + statics.Called(p.Solved.Bodies[b].Name)})
			}
		}
	}
	return all
}

// joins reports whether a force acts on more than one body.
func joins(p *trial.Problem, force string) bool {
	bodies := 0
	for i := range p.Solved.Bodies {
		if _, here := p.Solved.Bodies[i].Force(force); here {
			bodies++
		}
	}
	return bodies > 1
}

// balances reports whether two forces of a body act along one axis, so that one may hold the
// other.
func balances(p *trial.Problem, b int, f, weight *statics.Force) bool {
	for _, axis := range []statics.Axis{statics.X, statics.Y} {
		acting := 0
		for _, t := range p.Solved.SumOf(b, axis) {
			if (t.Force.Name == f.Name || t.Force == weight) && t.Scale != 0 {
				acting++
			}
		}
		if acting == 2 {
			return true
		}
	}
	return false
}

// otherUnknown takes the value of another unknown of the problem.
func otherUnknown(p *trial.Problem, v Target) []Number {
	var all []Number
	for i, other := range p.Solved.Model.Variables {
		if other.Name == v.Name || other.Dim != v.Dim || other.Role == statics.IsGiven {
			continue
		}
		// A force that follows from this letter, as f = μN from N, is not another answer.
		if p.Solved.Open(expr.Letter(p.Solved.Model.Variables[i].Name)) && (other.Size == nil || !other.Size.Has(v.Name)) {
			all = append(all, Number{Value: p.Solved.Values[i], Cost: seen, Shown: true, Answer: true})
		}
	}
	return all
}

// givenForce hands back the force that is given for another one, which lies across it.
func givenForce(p *trial.Problem, v Target) []Number {
	var all []Number
	hostsOf(p, v, func(body *statics.Body, on, weight *statics.Force) {
		for i := range body.Forces {
			if f := &body.Forces[i]; f != on && f != weight && isAcross(p, on, f) && p.Solved.Fixed(expr.Letter(f.Name)) {
				all = append(all, Number{Value: p.Solved.Values[p.Solved.Slots[f.Name]], Cost: seen / 2, What: expr.Set(f.Name), Shown: true})
			}
		}
	})
	return all
}

// givenTension hands back the tension that is given for another string of the body.
func givenTension(p *trial.Problem, v Target) []Number {
	var all []Number
	hostsOf(p, v, func(body *statics.Body, on, _ *statics.Force) {
		for i := range body.Forces {
			f := &body.Forces[i]
			if on.Kind == statics.Tension && f.Kind == on.Kind && f != on && f.Size != nil && p.Solved.Fixed(f.Size) {
				all = append(all, Number{Value: p.Solved.Values[p.Solved.Slots[f.Name]], Cost: 2 * seen})
			}
		}
	})
	return all
}

func wholeFactor(_ *trial.Problem, v Target) []Number {
	var all []Number
	for _, times := range wholeFactors {
		all = append(all, Number{Value: times.factor * v.Value, What: times.multiple, Cost: tellsMore}, Number{Value: v.Value / times.factor, What: times.share, Cost: tellsMore})
	}
	return all
}

// tellsMore is what a number costs less than the same one that comes from an equation with this mistake,
// because what it is can be said.
const tellsMore = -2 * hair

// wholeFactors are the factors by which a value is found too large or too small, in words.
var wholeFactors = []struct {
	factor          float64
	multiple, share string
}{
	{2, "twice as large as it should be", "half as large as it should be"},
	{3, "three times as large as it should be", "a third of what it should be"},
	{4, "four times as large as it should be", "a quarter of what it should be"},
}

// inverted multiplies where the right value comes from a division, and the other way round.
func inverted(p *trial.Problem, v Target) []Number {
	var all []Number
	for _, f := range p.Numbers.Factors(v.Dim) {
		// Whoever multiplies by f instead of dividing by it is off by f².
		all = append(all, Number{Value: v.Value * f * f}, Number{Value: v.Value / (f * f)})
	}
	if v.Dim == quantity.None || v.Dim == quantity.Length {
		all = append(all, Number{Value: 1 / v.Value})
	}
	if v.Dim == quantity.Length {
		all = append(all, Number{Value: 0.01 / v.Value}) // typed in centimetres
		for _, f := range p.Numbers.Factors(v.Dim) {
			all = append(all, Number{Value: 0.01 * v.Value * f * f})
		}
	}
	return all
}

func complementOf(_ *trial.Problem, v Target) []Number {
	if v.Dim != quantity.Angle {
		return nil
	}
	return []Number{{Value: math.Pi/2 - v.Value}}
}

func degreesAsRadians(_ *trial.Problem, v Target) []Number {
	if v.Dim != quantity.Angle {
		return nil
	}
	return []Number{{Value: v.Value * quantity.Degree}}
}

// oppositeDirection is the direction of the sum in place of the one that balances it.
func oppositeDirection(_ *trial.Problem, v Target) []Number {
	if v.Dim != quantity.Angle {
		return nil
	}
	return []Number{{Value: v.Value + math.Pi}, {Value: v.Value - math.Pi}}
}

// givenAngle hands back an angle that is given for one that is asked for.
func givenAngle(p *trial.Problem, v Target) []Number {
	if v.Dim != quantity.Angle {
		return nil
	}
	var all []Number
	for i, other := range p.Solved.Model.Variables {
		if other.Role == statics.IsGiven && other.Dim == quantity.Angle && other.Name != v.Name {
			all = append(all, shown(p.Solved.Values[i], ""), Number{Value: math.Pi/2 - p.Solved.Values[i]})
		}
	}
	return all
}

// functionAsAngle gives the value of a function where the angle is asked: 0.644 for atan 0.644.
func functionAsAngle(_ *trial.Problem, v Target) []Number {
	if v.Dim != quantity.Angle {
		return nil
	}
	return []Number{
		// 0.644 was read in the unit that is asked for, as 0.644°.
		{Value: math.Tan(v.Value) * quantity.Degree, What: "a tangent"},
		{Value: math.Sin(v.Value) * quantity.Degree, What: "a sine", Cost: 0.1},
		{Value: math.Cos(v.Value) * quantity.Degree, What: "a cosine", Cost: 0.1},
	}
}

// withOtherG works the value out with other values of g that are in use.
func withOtherG(p *trial.Problem, v Target) []Number {
	slot, ok := p.Solved.Slots["g"]
	if !ok {
		return nil
	}
	var all []Number
	for _, g := range trial.UsualG {
		env := slices.Clone(p.Solved.Values[:len(p.Solved.Model.Variables)])
		if math.Abs(g-env[slot]) < trial.Same {
			continue
		}
		env[slot] = g
		if solved, ok := p.Samples.SolveSums(p.Solved.Sums, env); ok {
			p.Solved.Fill(solved, nil)
			all = append(all, Number{Value: solved[v.Slot], Cost: -0.9})
		}
	}
	return all
}

// isPutTogether reports whether something is added or a root is drawn in a formula.
func isPutTogether(n *expr.Node) bool {
	found := false
	n.Walk(func(n *expr.Node) {
		found = found || n.Op == expr.Add || n.Op == expr.Sub || n.Op == expr.Call && n.Name == "sqrt"
	})
	return found
}

// putTogether adds sizes as if the forces lay in one line, or puts them together or takes one
// apart as if at a right angle.
func putTogether(p *trial.Problem, v Target) []Number {
	var all []Number
	hostsOf(p, v, func(body *statics.Body, on, _ *statics.Force) {
		var others []*statics.Force
		for i := range body.Forces {
			if f := &body.Forces[i]; f != on {
				others = append(others, f)
			}
		}
		for i, f := range others {
			for _, o := range others[:i] {
				a, b := p.Solved.Values[p.Solved.Slots[f.Name]], p.Solved.Values[p.Solved.Slots[o.Name]]
				how := "the magnitudes of " + expr.Set(o.Name) + " and " + expr.Set(f.Name) + " are "
				all = append(all, Number{Value: math.Hypot(a, b)}, Number{Value: math.Sqrt(math.Abs(a*a - b*b))},
					Number{Value: a + b, What: how + "simply added"}, Number{Value: math.Abs(a - b), What: how + "simply subtracted"})
			}
		}
		x, y := p.Solved.ComponentsOf(on)
		all = append(all, Number{Value: math.Abs(x) + math.Abs(y), Rounds: 2, What: "the magnitudes of the two components are simply added"})
	})
	if v.Dim == quantity.Angle {
		all = append(all, anglesOfPairs(p)...)
	}
	return all
}

// oneStep multiplies the weight by a function of an angle, as if it had a component along the
// force that is asked for. Nothing is wrong with that but that no equation gives it.
func oneStep(p *trial.Problem, v Target) []Number {
	var all []Number
	hostsOf(p, v, func(body *statics.Body, on, weight *statics.Force) {
		if weight == nil || on.Kind == statics.Normal || on.Kind == statics.Friction {
			return
		}
		w := p.Solved.Values[p.Solved.Slots[weight.Name]]
		x, y := p.Solved.ComponentsOf(on)
		for _, c := range []float64{x, y} {
			number := w * math.Abs(c/v.Value)
			// The row of inverted says more about the same number.
			isInverted := slices.ContainsFunc(inverted(p, v), func(n Number) bool { return math.Abs(n.Value-number) <= trial.ExactShare*number })
			if on.Slanted() && v.Value != 0 && !isInverted {
				all = append(all, Number{Value: number, Cost: ofOwnAngle, What: "the weight times a sine or cosine", Shown: true})
			}
		}
		for _, a := range p.Solved.AngleValues(body) {
			all = append(all, Number{Value: w * math.Sin(a), What: "the weight times a sine"}, Number{Value: w * math.Cos(a), What: "the weight times a cosine"},
				Number{Value: w * math.Tan(a), What: "the weight times a tangent"}, Number{Value: w / math.Tan(a), What: "the weight divided by a tangent"})
		}
	})
	return all
}

// secondRoot is the value in another solution of the right equations. It is never one of the problem:
// package statics refuses a problem with two solutions that are possible.
func secondRoot(p *trial.Problem, v Target) []Number {
	names := p.Solved.Model.Unknowns()
	if p.Solved.Model.Linear() || len(names) != 2 {
		return nil
	}
	env, ok := p.Solved.SecondRoot([2]string(names))
	// A letter of equal sizes has a slot behind those of the model.
	if !ok || v.Slot >= len(env) {
		return nil
	}
	for _, name := range names {
		slot := p.Solved.Slots[name]
		x, right := env[slot], p.Solved.Values[slot]
		if known, _ := p.Solved.Model.Variable(name); known.Angle {
			x, right = math.Sin(x), math.Sin(right)
		}
		// A force turned round, or the drawing upside down: who gets that has a sign wrong.
		if math.Abs(math.Abs(x)-math.Abs(right)) <= trial.RoundedShare*math.Abs(right) {
			return nil
		}
	}
	if v.Dim == quantity.Angle {
		return []Number{{Value: math.Remainder(env[v.Slot], 2*math.Pi)}}
	}
	return []Number{{Value: env[v.Slot]}}
}

// acrossTheWeight takes a string between two bodies, which lies across the weight of one of them, to
// be as large as that weight; or a given force that lies across it for the weight of an unknown mass.
// With a single body the same number comes from exchanging two sides of a triangle.
func acrossTheWeight(p *trial.Problem, v Target) []Number {
	var all []Number
	hostsOf(p, v, func(body *statics.Body, on, weight *statics.Force) {
		if weight != nil && on.Kind == statics.Tension && joins(p, on.Name) && isAcross(p, on, weight) {
			all = append(all, shown(p.Solved.Values[p.Solved.Slots[weight.Name]], expr.Set(on.Name)+" equals the weight"))
		}
	})
	g, ok := p.Solved.Slots["g"]
	if v.Dim != quantity.Mass || !ok {
		return all
	}
	for b := range p.Solved.Bodies {
		body := &p.Solved.Bodies[b]
		weight := solved.OnlyOf(body, statics.Weight)
		if weight == nil || weight.Size == nil || !weight.Size.Has(v.Name) {
			continue
		}
		for i := range body.Forces {
			if f := &body.Forces[i]; isAcross(p, f, weight) && p.Solved.Fixed(expr.Letter(f.Name)) {
				all = append(all, shown(p.Solved.Values[p.Solved.Slots[f.Name]]/p.Solved.Values[g], "the weight equals "+expr.Set(f.Name)))
			}
		}
	}
	return all
}

// isAcross reports whether two forces are at a right angle.
func isAcross(p *trial.Problem, a, b *statics.Force) bool {
	ax, ay := p.Solved.UnitVector(a)
	bx, by := p.Solved.UnitVector(b)
	return math.Abs(ax*bx+ay*by) <= trial.Felt
}

// triangleOfTwo reports whether a line makes a quotient of two forces the sine, cosine or tangent of
// an angle, though no two forces of their body are at a right angle.
func triangleOfTwo(p *trial.Problem, e *trial.Equation) ([]string, bool) {
	function, quotient := e.Sides[0], e.Sides[1]
	if function.Op != expr.Call {
		function, quotient = quotient, function
	}
	if function.Op != expr.Call || quotient.Op != expr.Div || !slices.Contains([]string{"sin", "cos", "tan"}, function.Name) {
		return nil, false
	}
	names := []string{quotient.Args[0].Name, quotient.Args[1].Name}
	for b := range p.Solved.Bodies {
		body := &p.Solved.Bodies[b]
		_, one := body.Force(names[0])
		_, other := body.Force(names[1])
		if one && other && names[0] != names[1] && !hasRightAngle(p, body) {
			return names, true
		}
	}
	return nil, false
}

// hasRightAngle reports whether two of a body's forces are at a right angle.
func hasRightAngle(p *trial.Problem, body *statics.Body) bool {
	for i := range body.Forces {
		for k := range body.Forces[:i] {
			if isAcross(p, &body.Forces[i], &body.Forces[k]) {
				return true
			}
		}
	}
	return false
}

// anglesOfPairs are the angles that two sizes would make if they were at a right angle.
func anglesOfPairs(p *trial.Problem) []Number {
	var sizes []float64
	for _, v := range p.Solved.Model.Variables {
		if v.Dim == quantity.Force {
			sizes = append(sizes, math.Abs(p.Solved.Values[p.Solved.Slots[v.Name]]))
		}
	}
	var all []Number
	for _, a := range sizes {
		for _, b := range sizes {
			if a != b && b != 0 {
				all = append(all, Number{Value: math.Atan(a / b), Cost: 0.3, What: "two forces are assumed to be at right angles to each other"})
			}
		}
	}
	return all
}
