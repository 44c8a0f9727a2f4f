package trial

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// A typed number may stand for letters: 35 for α, 55 for 90° − α, 31.4 for m·g,
// 0.819 for cos α. What a number stands for decides which letters of the same
// line keep their value while the others vary.

// knownValue is a value that follows from some givens.
type knownValue struct {
	Value  float64
	kind   knownKind
	givens GivenSet
	dim    quantity.Dimension // of a plain value
}

// knownKind tells angles, and sines and the like of them, from other values.
type knownKind uint8

const (
	plainValue knownKind = iota
	angleValue
	ratioValue
)

// Literal is a number of a line: the givens it may stand for, and how far the
// true value may lie from what was typed.
type Literal struct {
	Node   *expr.Node
	Givens GivenSet
	half   float64 // in the problem's own units
	moves  float64 // the same, in the unit that was typed
	// foreign marks an angle that is none of the problem's, 36° for 35°.
	foreign bool
}

// knownValues lists what a number may stand for.
func (p *Problem) knownValues() []knownValue {
	var plain, angles, all []knownValue
	for i, v := range p.Solved.Variables {
		set := p.givensOf(v.Name)
		if set == 0 || v.Role == statics.IsUnknown || v.Role == statics.IsDerived && !p.Solved.Fixed(v.Size) {
			continue
		}
		if v.Dim == quantity.Angle {
			angles = append(angles, knownValue{Value: p.Solved.Values[i], kind: angleValue, givens: set})
		} else {
			plain = append(plain, knownValue{p.Solved.Values[i], plainValue, set, v.Dim})
		}
	}
	angles = append(angles, p.Directions()...)
	for _, a := range angles {
		all = append(all, turns(a)...)
		for _, b := range angles {
			if a != b {
				all = append(all, turns(knownValue{Value: a.Value + b.Value, kind: angleValue, givens: a.givens | b.givens})...)
				all = append(all, knownValue{Value: a.Value - b.Value, kind: angleValue, givens: a.givens | b.givens})
			}
		}
	}
	ratios := all
	for _, a := range ratios {
		for _, f := range []func(float64) float64{math.Sin, math.Cos, math.Tan} {
			all = append(all, knownValue{Value: f(a.Value), kind: ratioValue, givens: a.givens})
		}
	}
	for _, p := range plain {
		all = append(all, p)
		for _, q := range plain {
			// m·g, k·s, μ·P; 10·10 is no number of the problem.
			if p.dim.Times(q.dim) == quantity.Force {
				all = append(all, knownValue{p.Value * q.Value, plainValue, p.givens | q.givens, quantity.Force})
			}
		}
		for _, a := range ratios {
			all = append(all, knownValue{Value: p.Value * math.Sin(a.Value), kind: plainValue, givens: p.givens | a.givens},
				knownValue{Value: p.Value * math.Cos(a.Value), kind: plainValue, givens: p.givens | a.givens})
		}
	}
	return all
}

// Directions lists the angles of forces that are worked out from givens, such as the
// acos(b/c) of a line between two middles.
func (p *Problem) Directions() []knownValue {
	var all []knownValue
	for _, c := range p.Solved.Components {
		if a := c.Force.Factor(c.Axis).Angle; a != nil && a.Op != expr.Name && p.Solved.Fixed(a) {
			if x := p.Solved.ProgramOf(a).Run(p.Solved.Values); !math.IsNaN(x) {
				all = append(all, knownValue{Value: x, kind: angleValue, givens: p.givens(a)})
			}
		}
	}
	return all
}

// turns lists the angles that go with an angle.
func turns(a knownValue) []knownValue {
	var all []knownValue
	for _, x := range []float64{a.Value, math.Pi/2 - a.Value, math.Pi - a.Value, math.Pi/2 + a.Value, math.Pi + a.Value, 2*math.Pi - a.Value, 2 * a.Value} {
		all = append(all, knownValue{Value: x, kind: angleValue, givens: a.givens})
	}
	return all
}

// Literals finds the numbers of a line that are more than structure.
func (p *Problem) Literals(sides []*expr.Node) []Literal {
	var found []Literal
	for _, side := range sides {
		p.collect(side, &found)
	}
	for _, n := range p.fractionsOf(sides) {
		for i := range found {
			if found[i].Node == n {
				found[i] = Literal{Node: n}
			}
		}
	}
	return found
}

func (p *Problem) collect(n *expr.Node, found *[]Literal) {
	if n.Op == expr.Number {
		if l, ok := p.Literal(n); ok {
			*found = append(*found, l)
		}
		return
	}
	if n.Op == expr.Pow {
		p.collect(n.Args[0], found)
		return
	}
	for _, a := range n.Args {
		p.collect(a, found)
	}
}

// Structural numbers belong to the form of an equation, not to the problem.
func Structural(n *expr.Node) bool {
	switch n.Unit {
	case "":
		whole := n.Num.Value == math.Trunc(n.Num.Value) && n.Num.Value <= 4
		return (whole || n.Num.Value == 0.5) && n.Num.Figures <= 1 || n.Num.Value == 0
	case "deg":
		return math.Mod(n.Num.Value, 90) == 0
	}
	return n.Num.Value == 0 || n.Num.Text == "π"
}

func (p *Problem) Literal(n *expr.Node) (Literal, bool) {
	unit, ok := quantity.Find(n.Unit)
	unit = p.Solved.Own.Inner(unit)
	if !ok {
		unit.Factor = 1
	}
	value, half := n.Num.Value*unit.Factor, n.Num.Half*unit.Factor
	if n.Num.Figures < 2 || Structural(n) {
		half = 0
	}
	l := Literal{Node: n, half: half, moves: half / unit.Factor}
	for _, k := range p.known {
		off := math.Abs(k.Value - value)
		if off <= 1e-9*math.Abs(value) {
			l.Givens |= k.givens
			l.half = 0
		}
	}
	if l.half == 0 && l.Givens != 0 && (unit.Dim == quantity.Angle || !p.alsoRounds(value, half)) {
		return l, true
	}
	l.half = half
	for _, k := range p.known {
		if half > 0 && math.Abs(k.Value-value) <= half*(1+1e-9) {
			l.Givens |= k.givens
		}
	}
	if unit.Dim == quantity.Angle && !Structural(n) && !p.isDrawn(value, half, n.Unit == "rad") && !p.isUnknownAngle(value, half) {
		return Literal{Node: n, foreign: true}, true
	}
	if n.Num.Figures == 2 && l.Givens == 0 && unit.Dim != quantity.Angle && !p.roundsToResult(value, half) {
		l.half, l.moves = 0, 0 // 1.1 stands for nothing that was worked out, so it is what it is
	}
	slot, ok := p.Solved.Slots["g"]
	alone := l.Givens|1<<slot == 1<<slot || n.Num.Certain == 1
	if ok && alone && n.Unit == "" && slices.Contains(UsualG, value) {
		// 9.81 for 9.8 is near enough, and 9.80 may be a force as well. 10 is another g,
		// not 9.8 rounded; 10.0 may be a force.
		off := math.Abs(value - p.Solved.Values[slot])
		switch {
		case off <= RoundedShare*value:
			half = math.Max(off, half)
			return Literal{Node: n, Givens: 1 << slot, half: half, moves: half}, true
		case half > RoundedShare*value:
			return Literal{Node: n, Givens: 1 << slot}, true
		}
	}
	return l, l.Givens != 0 || !Structural(n)
}

// isDrawn reports whether an angle is a given one, or the sum, the difference, the double or the
// half of given ones; or differs from such an angle, or from the opposite one, by a multiple of
// 90°, as its complement, its supplement and its full-circle forms do. Angles that follow from
// lengths, or are typed in radians, may be rounded.
func (p *Problem) isDrawn(value, half float64, rounded bool) bool {
	near := func(x, within float64) bool {
		for _, sum := range []float64{value - x, value + x} {
			if math.Abs(math.Remainder(sum, math.Pi/2)) <= within+1e-9 {
				return true
			}
		}
		return false
	}
	for i, a := range p.drawn {
		a.workedOut = a.workedOut || rounded
		if near(a.value, a.slack(half)) || near(2*a.value, 2*a.slack(half)) || near(a.value/2, a.slack(half)) {
			return true
		}
		for _, b := range p.drawn[:i] {
			within := math.Max(a.slack(half), b.slack(half))
			if near(a.value+b.value, within) || near(a.value-b.value, within) {
				return true
			}
		}
	}
	return false
}

// drawnAngle is an angle of the drawing; worked out says that it is none that was given as a
// number.
type drawnAngle struct {
	value     float64
	workedOut bool
}

func (a drawnAngle) slack(half float64) float64 {
	if a.workedOut {
		return half
	}
	return 0
}

// drawnAngles lists the angles of givens, of forces and of slopes.
func (p *Problem) drawnAngles() []drawnAngle {
	var all []drawnAngle
	for i, v := range p.Solved.Variables {
		if v.Dim == quantity.Angle && v.Role != statics.IsUnknown {
			all = append(all, drawnAngle{p.Solved.Values[i], v.Role == statics.IsDerived})
		}
	}
	put := func(n *expr.Node) {
		if n != nil && n.Op != expr.Name && p.Solved.Fixed(n) {
			if x := p.Solved.ProgramOf(n).Run(p.Solved.Values); !math.IsNaN(x) {
				all = append(all, drawnAngle{x, len(n.Names()) > 0})
			}
		}
	}
	for b := range p.Solved.Bodies {
		put(p.Solved.Bodies[b].Tilt)
		for i := range p.Solved.Bodies[b].Forces {
			put(p.Solved.Bodies[b].Forces[i].Angle)
			put(p.Solved.Bodies[b].Forces[i].Direction)
		}
	}
	return all
}

// isUnknownAngle reports whether an angle that is asked for, or one that goes with it,
// rounds to the value.
func (p *Problem) isUnknownAngle(value, half float64) bool {
	for i, v := range p.Solved.Variables {
		if v.Dim != quantity.Angle || v.Role == statics.IsGiven {
			continue
		}
		for _, k := range turns(knownValue{Value: p.Solved.Values[i]}) {
			if math.Abs(k.Value-value) <= math.Max(half, RoundedShare) {
				return true
			}
		}
	}
	return false
}

// alsoRounds reports whether a force of the problem's own, or a sine or the like,
// rounds to a number without being it: 23.5 may be a pull that is given and a weight of
// 23.52 as well, 0.0400 a tangent from lengths and a sine of 0.03997.
func (p *Problem) alsoRounds(value, half float64) bool {
	for i, v := range p.Solved.Variables {
		off := math.Abs(p.Solved.Values[i] - value)
		if v.Dim == quantity.Force && p.Solved.Fixed(expr.Letter(v.Name)) && off <= half && off > 1e-9*math.Abs(value) {
			return true
		}
	}
	for _, k := range p.known {
		off := math.Abs(k.Value - value)
		if k.kind == ratioValue && off <= half && off > 1e-9*math.Abs(value) {
			return true
		}
	}
	return false
}

// roundsToResult reports whether something that a student may have worked out rounds to a number
// of two figures: a size or an angle's function at rest, or a quotient or product of two of them.
func (p *Problem) roundsToResult(value, half float64) bool {
	near := func(x float64) bool { return math.Abs(math.Abs(x)-math.Abs(value)) <= half*(1+1e-9) }
	results := slices.Clone(p.Solved.Values)
	for i, v := range p.Solved.Variables {
		if v.Dim == quantity.Angle {
			results = append(results, math.Sin(p.Solved.Values[i]), math.Cos(p.Solved.Values[i]), math.Tan(p.Solved.Values[i]))
		}
	}
	for _, k := range p.known {
		if k.kind == ratioValue {
			results = append(results, k.Value)
		}
	}
	for i, a := range results {
		if near(a) || a != 0 && near(1/a) {
			return true
		}
		for _, b := range results[:i] {
			if near(a*b) || b != 0 && near(a/b) || a != 0 && near(b/a) {
				return true
			}
		}
	}
	return false
}
