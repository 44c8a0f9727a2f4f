package checker

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
	value  float64
	kind   knownKind
	givens letterSet
	dim    quantity.Dimension // of a plain value
}

// knownKind tells angles, and sines and the like of them, from other values.
type knownKind uint8

const (
	plainValue knownKind = iota
	angleValue
	ratioValue
)

// literal is a number of a line: the givens it may stand for, and how far the
// true value may lie from what was typed.
type literal struct {
	node   *expr.Node
	givens letterSet
	half   float64 // in the problem's own units
	moves  float64 // the same, in the unit that was typed
	// foreign marks an angle that is none of the problem's, 36° for 35°.
	foreign bool
}

// knownValues lists what a number may stand for.
func (r *Reference) knownValues() []knownValue {
	var plain, angles, all []knownValue
	for i, v := range r.Variables {
		set := r.givensOf(v.Name)
		if set == 0 || v.Role == statics.IsUnknown || v.Role == statics.IsDerived && !r.fixed(v.Size) {
			continue
		}
		if v.Dim == quantity.Angle {
			angles = append(angles, knownValue{value: r.solution[i], kind: angleValue, givens: set})
		} else {
			plain = append(plain, knownValue{r.solution[i], plainValue, set, v.Dim})
		}
	}
	for _, a := range append(angles, r.directions()...) {
		all = append(all, turns(a)...)
		for _, b := range angles {
			if a != b {
				all = append(all, turns(knownValue{value: a.value + b.value, kind: angleValue, givens: a.givens | b.givens})...)
				all = append(all, knownValue{value: a.value - b.value, kind: angleValue, givens: a.givens | b.givens})
			}
		}
	}
	ratios := all
	for _, a := range ratios {
		for _, f := range []func(float64) float64{math.Sin, math.Cos, math.Tan} {
			all = append(all, knownValue{value: f(a.value), kind: ratioValue, givens: a.givens})
		}
	}
	for _, p := range plain {
		all = append(all, p)
		for _, q := range plain {
			// m·g, k·s, μ·P; 10·10 is no number of the problem.
			if p.dim.Times(q.dim) == quantity.Force {
				all = append(all, knownValue{p.value * q.value, plainValue, p.givens | q.givens, quantity.Force})
			}
		}
		for _, a := range ratios {
			all = append(all, knownValue{value: p.value * math.Sin(a.value), kind: plainValue, givens: p.givens | a.givens},
				knownValue{value: p.value * math.Cos(a.value), kind: plainValue, givens: p.givens | a.givens})
		}
	}
	return all
}

// directions lists the angles of forces that are worked out from givens, such as the
// acos(b/c) of a line between two middles.
func (r *Reference) directions() []knownValue {
	var all []knownValue
	for _, c := range r.components {
		if a := c.force.Factor(c.axis).Angle; a != nil && len(a.Args) > 0 && r.fixed(a) {
			if x := r.program(a).Run(r.solution); !math.IsNaN(x) {
				all = append(all, knownValue{value: x, kind: angleValue, givens: r.givens(a)})
			}
		}
	}
	return all
}

// fixed reports whether a tree depends on givens alone.
func (r *Reference) fixed(n *expr.Node) bool {
	for _, name := range n.Names() {
		v, ok := r.Variable(name)
		if !ok || v.Role == statics.IsUnknown || v.Role == statics.IsDerived && !r.fixed(v.Size) {
			return false
		}
	}
	return true
}

// turns lists the angles that go with an angle.
func turns(a knownValue) []knownValue {
	var all []knownValue
	for _, x := range []float64{a.value, math.Pi/2 - a.value, math.Pi - a.value, math.Pi/2 + a.value, math.Pi + a.value, 2*math.Pi - a.value, 2 * a.value} {
		all = append(all, knownValue{value: x, kind: angleValue, givens: a.givens})
	}
	return all
}

// literals finds the numbers of a line that are more than structure.
func (r *Reference) literals(sides []*expr.Node) []literal {
	var found []literal
	for _, side := range sides {
		r.collect(side, &found)
	}
	for _, n := range r.fractionsOf(sides) {
		for i := range found {
			if found[i].node == n {
				found[i] = literal{node: n}
			}
		}
	}
	return found
}

func (r *Reference) collect(n *expr.Node, found *[]literal) {
	if n.Op == expr.Number {
		if l, ok := r.literal(n); ok {
			*found = append(*found, l)
		}
		return
	}
	if n.Op == expr.Pow {
		r.collect(n.Args[0], found)
		return
	}
	for _, a := range n.Args {
		r.collect(a, found)
	}
}

// structural numbers belong to the form of an equation, not to the problem.
func structural(n *expr.Node) bool {
	switch n.Unit {
	case "":
		whole := n.Num.Value == math.Trunc(n.Num.Value) && n.Num.Value <= 4
		return (whole || n.Num.Value == 0.5) && n.Num.Figures <= 1 || n.Num.Value == 0
	case "deg":
		return math.Mod(n.Num.Value, 90) == 0
	}
	return n.Num.Value == 0 || n.Num.Text == "π"
}

func (r *Reference) literal(n *expr.Node) (literal, bool) {
	unit, ok := quantity.Find(n.Unit)
	unit = r.own.inner(unit)
	if !ok {
		unit.Factor = 1
	}
	value, half := n.Num.Value*unit.Factor, n.Num.Half*unit.Factor
	if n.Num.Figures < 2 || structural(n) {
		half = 0
	}
	l := literal{node: n, half: half, moves: half / unit.Factor}
	for _, k := range r.known {
		off := math.Abs(k.value - value)
		if off <= 1e-9*math.Abs(value) {
			l.givens |= k.givens
			l.half = 0
		}
	}
	if l.half == 0 && l.givens != 0 && (unit.Dim == quantity.Angle || !r.alsoRounds(value, half)) {
		return l, true
	}
	l.half = half
	for _, k := range r.known {
		if half > 0 && math.Abs(k.value-value) <= half*(1+1e-9) {
			l.givens |= k.givens
		}
	}
	if unit.Dim == quantity.Angle && l.givens == 0 && !structural(n) && !r.isUnknownAngle(value, half) {
		return literal{node: n, foreign: true}, true
	}
	slot, ok := r.slots["g"]
	alone := l.givens|1<<slot == 1<<slot || n.Num.Certain == 1
	if ok && alone && n.Unit == "" && slices.Contains(usualG, value) {
		// 9.81 for 9.8 is near enough, and 9.80 may be a force as well. 10 is another g,
		// not 9.8 rounded; 10.0 may be a force.
		off := math.Abs(value - r.solution[slot])
		switch {
		case off <= roundedShare*value:
			half = math.Max(off, half)
			return literal{node: n, givens: 1 << slot, half: half, moves: half}, true
		case half > roundedShare*value:
			return literal{node: n, givens: 1 << slot}, true
		}
	}
	return l, l.givens != 0 || !structural(n)
}

// isUnknownAngle reports whether an angle that is asked for, or one that goes with it,
// rounds to the value.
func (r *Reference) isUnknownAngle(value, half float64) bool {
	for i, v := range r.Variables {
		if v.Dim != quantity.Angle || v.Role == statics.IsGiven {
			continue
		}
		for _, k := range turns(knownValue{value: r.solution[i]}) {
			if math.Abs(k.value-value) <= math.Max(half, roundedShare) {
				return true
			}
		}
	}
	return false
}

// alsoRounds reports whether a force of the problem's own, or a sine or the like,
// rounds to a number without being it: 23.5 may be a pull that is given and a weight of
// 23.52 as well, 0.0400 a tangent from lengths and a sine of 0.03997.
func (r *Reference) alsoRounds(value, half float64) bool {
	for i, v := range r.Variables {
		off := math.Abs(r.solution[i] - value)
		if v.Dim == quantity.Force && r.fixed(expr.Letter(v.Name)) && off <= half && off > 1e-9*math.Abs(value) {
			return true
		}
	}
	for _, k := range r.known {
		off := math.Abs(k.value - value)
		if k.kind == ratioValue && off <= half && off > 1e-9*math.Abs(value) {
			return true
		}
	}
	return false
}
