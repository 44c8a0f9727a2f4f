package trial

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
)

// A typed number may stand for letters: 35 for α, 55 for 90° − α, 31.4 for m·g,
// 0.819 for cos α. What a number stands for decides which letters of the same
// line keep their value while the others vary.

// knownValue is a value that follows from some givens.
type knownValue struct {
	Value  float64
	kind   knownKind
	givens solved.GivenSet
	dim    quantity.Dimension // of a plain value
}

// Numbers knows what the typed numbers of a line may stand for.
type Numbers struct {
	solved *solved.System
	known  []knownValue
	drawn  []drawnAngle
}

func newNumbers(s *solved.System) *Numbers {
	k := &Numbers{solved: s}
	k.known, k.drawn = k.knownValues(), k.drawnAngles()
	return k
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
	Givens solved.GivenSet
	half   float64 // in the problem's own units
	moves  float64 // the same, in the unit that was typed
	// foreign marks an angle that is none of the problem's, 36° for 35°.
	foreign bool
}

// knownValues lists what a number may stand for.
func (nums *Numbers) knownValues() []knownValue {
	var plain, angles, all []knownValue
	for i, v := range nums.solved.Model.Variables {
		set := nums.solved.GivensOf(v.Name)
		if set == 0 || v.Role == statics.IsUnknown || v.Role == statics.IsDerived && !nums.solved.Fixed(v.Size) {
			continue
		}
		if v.Dim == quantity.Angle {
			angles = append(angles, knownValue{Value: nums.solved.Values[i], kind: angleValue, givens: set})
		} else {
			plain = append(plain, knownValue{nums.solved.Values[i], plainValue, set, v.Dim})
		}
	}
	angles = append(angles, nums.Directions()...)
	for _, a := range angles {
		all = append(all, turns(a)...)
		for _, b := range angles {
			if a != b {
				all = append(all, turns(knownValue{Value: a.Value + b.Value, kind: angleValue, givens: a.givens | b.givens})...)
				all = append(all, knownValue{Value: a.Value - b.Value, kind: angleValue, givens: a.givens | b.givens})
			}
		}
	}
	// Sines of sums and of doubles count too, so this is the list of all angles.
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
	return eachOnce(all)
}

// eachOnce leaves out what is there twice, and the room that a growing list has taken:
// a host keeps these values for hundreds of students.
func eachOnce(all []knownValue) []knownValue {
	seen := map[knownValue]bool{}
	return slices.Clone(slices.DeleteFunc(all, func(k knownValue) bool {
		twice := seen[k]
		seen[k] = true
		return twice
	}))
}

// Directions lists the angles of forces that are worked out from givens, such as the
// acos(b/c) of a line between two middles.
func (nums *Numbers) Directions() []knownValue {
	var all []knownValue
	for _, c := range nums.solved.Components {
		if a := c.Force.Factor(c.Axis).Angle; a != nil && a.Op != expr.Name && nums.solved.Fixed(a) {
			if x := nums.solved.ProgramOf(a).Run(nums.solved.Values); !math.IsNaN(x) {
				all = append(all, knownValue{Value: x, kind: angleValue, givens: nums.solved.GivensIn(a)})
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
func (nums *Numbers) Literals(sides []*expr.Node) []Literal {
	var found []Literal
	for _, side := range sides {
		nums.collect(side, &found)
	}
	for _, n := range nums.fractionsOf(sides) {
		for i := range found {
			if found[i].Node == n {
				// The 3 and the 5 of 3/5 are a ratio of lengths and exact, whatever givens they look like.
				found[i] = Literal{Node: n}
			}
		}
	}
	return found
}

func (nums *Numbers) collect(n *expr.Node, found *[]Literal) {
	if n.Op == expr.Number {
		if l, ok := nums.Literal(n); ok {
			*found = append(*found, l)
		}
		return
	}
	if n.Op == expr.Pow {
		// An exponent is structure: the 2 of T² is no given of 2 m.
		nums.collect(n.Args[0], found)
		return
	}
	for _, a := range n.Args {
		nums.collect(a, found)
	}
}

// Structural numbers belong to the form of an equation, not to the problem.
func Structural(n *expr.Node) bool {
	switch n.Unit {
	case "":
		// Up to 4, as in 2 T, T/3, the 4 of a quadratic; and one figure, for 2.0 was measured.
		whole := n.Num.Value == math.Trunc(n.Num.Value) && n.Num.Value <= 4
		return (whole || n.Num.Value == 0.5) && n.Num.Figures <= 1 || n.Num.Value == 0
	case "deg":
		return math.Mod(n.Num.Value, 90) == 0
	}
	return n.Num.Value == 0 || n.Num.Text == "π"
}

func (nums *Numbers) Literal(n *expr.Node) (Literal, bool) {
	unit, ok := quantity.Find(n.Unit)
	unit = nums.solved.Own.Inner(unit)
	if !ok {
		unit.Factor = 1
	}
	value, half := n.Num.Value*unit.Factor, n.Num.Half*unit.Factor
	// One figure is as often a count as a rounded value, and half of its last place would let
	// nearly anything through.
	if n.Num.Figures < 2 || Structural(n) {
		half = 0
	}
	l := Literal{Node: n, half: half, moves: half / unit.Factor}
	for _, k := range nums.known {
		off := math.Abs(k.Value - value)
		if off <= Same*math.Abs(value) {
			l.Givens |= k.givens
			l.half = 0
		}
	}
	if l.half == 0 && l.Givens != 0 && (unit.Dim == quantity.Angle || !nums.alsoRounds(value, half)) {
		return l, true
	}
	l.half = half
	for _, k := range nums.known {
		if half > 0 && math.Abs(k.Value-value) <= half*(1+Same) {
			l.Givens |= k.givens
		}
	}
	if unit.Dim == quantity.Angle && !Structural(n) && !nums.isDrawn(value, half, n.Unit == "rad") && !nums.isUnknownAngle(value, half) {
		return Literal{Node: n, foreign: true}, true
	}
	if n.Num.Figures == 2 && l.Givens == 0 && unit.Dim != quantity.Angle && !nums.roundsToResult(value, half) {
		l.half, l.moves = 0, 0 // 1.1 stands for nothing that was worked out, so it is what it is
	}
	slot, ok := nums.solved.Slots["g"]
	alone := l.Givens|1<<slot == 1<<slot || n.Num.Certain == 1
	// Only a number that is nothing else of the problem is taken for another g.
	if ok && alone && n.Unit == "" && slices.Contains(UsualG, value) {
		// 9.81 for 9.8 is near enough, and 9.80 may be a force as well. 10 is another g,
		// not 9.8 rounded; 10.0 may be a force.
		off := math.Abs(value - nums.solved.Values[slot])
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
func (nums *Numbers) isDrawn(value, half float64, rounded bool) bool {
	near := func(x, within float64) bool {
		// Modulo 90°, difference and sum cover the angle, its complement, its supplement and all
		// full-circle forms.
		for _, sum := range []float64{value - x, value + x} {
			if math.Abs(math.Remainder(sum, math.Pi/2)) <= within+Same {
				return true
			}
		}
		return false
	}
	for i, a := range nums.drawn {
		// Nobody types 0.6109 rad as an exact value of 35°.
		a.workedOut = a.workedOut || rounded
		if near(a.value, a.slack(half)) || near(2*a.value, 2*a.slack(half)) || near(a.value/2, a.slack(half)) {
			return true
		}
		for _, b := range nums.drawn[:i] {
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
func (nums *Numbers) drawnAngles() []drawnAngle {
	var all []drawnAngle
	for i, v := range nums.solved.Model.Variables {
		if v.Dim == quantity.Angle && v.Role != statics.IsUnknown {
			all = append(all, drawnAngle{nums.solved.Values[i], v.Role == statics.IsDerived})
		}
	}
	put := func(n *expr.Node) {
		if n != nil && n.Op != expr.Name && nums.solved.Fixed(n) {
			if x := nums.solved.ProgramOf(n).Run(nums.solved.Values); !math.IsNaN(x) {
				all = append(all, drawnAngle{x, len(n.Names()) > 0})
			}
		}
	}
	for b := range nums.solved.Bodies {
		put(nums.solved.Bodies[b].Tilt)
		for i := range nums.solved.Bodies[b].Forces {
			put(nums.solved.Bodies[b].Forces[i].Angle)
			put(nums.solved.Bodies[b].Forces[i].Direction)
		}
	}
	return all
}

// isUnknownAngle reports whether an angle that is asked for, or one that goes with it,
// rounds to the value.
func (nums *Numbers) isUnknownAngle(value, half float64) bool {
	for i, v := range nums.solved.Model.Variables {
		if v.Dim != quantity.Angle || v.Role == statics.IsGiven {
			continue
		}
		for _, k := range turns(knownValue{Value: nums.solved.Values[i]}) {
			if math.Abs(k.Value-value) <= math.Max(half, RoundedShare) {
				return true
			}
		}
	}
	return false
}

// NearGiven finds the given value to which a number is near that is none of the problem's, nor the
// rounding of one, nor of a size that may have been worked out.
func (nums *Numbers) NearGiven(l Literal) (name string, ok bool) {
	unit, typed := quantity.Find(l.Node.Unit)
	if l.Givens != 0 || l.foreign || Structural(l.Node) || typed && unit.Dim == quantity.Angle {
		return "", false
	}
	factor := 1.0
	if typed {
		factor = nums.solved.Own.Inner(unit).Factor
	}
	value, half := l.Node.Num.Value*factor, l.Node.Num.Half*factor
	for i, v := range nums.solved.Model.Variables {
		off := math.Abs(nums.solved.Values[i] - value)
		// An angle that is near is judged as a foreign angle, and another g as such.
		if v.Role != statics.IsGiven || v.Dim == quantity.Angle || v.Name == "g" || typed && unit.Dim != v.Dim {
			continue
		}
		if off > half*(1+Same) && off <= SlipShare*math.Abs(nums.solved.Values[i]) && !slices.ContainsFunc(nums.solved.Values, func(x float64) bool { return math.Abs(math.Abs(x)-value) <= half*(1+Same) }) {
			return v.Name, true
		}
	}
	return "", false
}

// alsoRounds reports whether a force of the problem's own, or a sine or the like,
// rounds to a number without being it: 23.5 may be a pull that is given and a weight of
// 23.52 as well, 0.0400 a tangent from lengths and a sine of 0.03997.
func (nums *Numbers) alsoRounds(value, half float64) bool {
	for i, v := range nums.solved.Model.Variables {
		off := math.Abs(nums.solved.Values[i] - value)
		if v.Dim == quantity.Force && nums.solved.Fixed(expr.Letter(v.Name)) && off <= half && off > Same*math.Abs(value) {
			return true
		}
	}
	for _, k := range nums.known {
		off := math.Abs(k.Value - value)
		if k.kind == ratioValue && off <= half && off > Same*math.Abs(value) {
			return true
		}
	}
	return false
}

// roundsToResult reports whether something that a student may have worked out rounds to a number
// of two figures: a size or an angle's function at rest, or a quotient or product of two of them.
func (nums *Numbers) roundsToResult(value, half float64) bool {
	near := func(x float64) bool { return math.Abs(math.Abs(x)-math.Abs(value)) <= half*(1+Same) }
	results := slices.Clone(nums.solved.Values)
	for i, v := range nums.solved.Model.Variables {
		if v.Dim == quantity.Angle {
			results = append(results, math.Sin(nums.solved.Values[i]), math.Cos(nums.solved.Values[i]), math.Tan(nums.solved.Values[i]))
		}
	}
	for _, k := range nums.known {
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

// Factors lists what a value may have been divided by instead of multiplied: the plain numbers
// that are given, the functions of the given angles, and for a length the stiffnesses.
func (nums *Numbers) Factors(dim quantity.Dimension) []float64 {
	var all []float64
	for i, v := range nums.solved.Model.Variables {
		x := nums.solved.Values[i]
		switch {
		case v.Role != statics.IsGiven || x == 0:
		case v.Dim == quantity.None, v.Dim == quantity.Stiffness && dim == quantity.Length:
			all = append(all, x)
		case v.Dim == quantity.Angle:
			all = append(all, math.Sin(x), math.Cos(x), math.Tan(x))
		}
	}
	for _, a := range nums.Directions() {
		all = append(all, math.Sin(a.Value), math.Cos(a.Value), math.Tan(a.Value))
	}
	return all
}

// UsualG are the values of g that are in use, in m/s² (common practice; 9.80665
// is the standard value of the 3rd CGPM, 1901).
var UsualG = []float64{9.8, 9.81, 10, 9.80665, 9.82}
