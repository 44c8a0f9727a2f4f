package derivation

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
)

// visible is the share by which two sizes differ at least where one is called larger.
const visible = 0.01

// group is forces that act the same way along an axis, and those of them at an angle to it.
type group struct {
	names, slanted []string
	size, written  float64 // of all together, and of their sizes as they are written
	numbers        int     // how many of the forces have one
}

// sensible says why the result can be true: how the sizes of the forces that pull one way compare
// with those that pull the other way. Forces at an angle to an axis are larger than what they
// balance along it. It is empty where both ways hold such forces.
func sensible(t *working) string {
	if text := dropsOut(t); text != "" {
		return text
	}
	best, rank := "", 0
	for _, at := range t.solved.Places() {
		one, other := ways(t, at)
		text, how := compare(t, at, one, other)
		if text == "" {
			continue
		}
		for _, name := range append(slices.Clone(one.names), other.names...) {
			if slices.Contains(t.solved.Find, name) {
				how += 2
				break
			}
		}
		if at.Axis == statics.Y {
			how++
		}
		if how > rank {
			best, rank = text, how
		}
	}
	return best
}

// dropsOut names a given without a number on which no answer depends.
func dropsOut(t *working) string {
	for _, name := range t.solved.Find {
		if !t.page.numbered(expr.Letter(name), t.found) {
			return ""
		}
	}
	for _, g := range t.solved.Givens {
		if g.Any {
			return fmt.Sprintf(sayDropsOut, expr.Set(g.Name), expr.Set(g.Name))
		}
	}
	return ""
}

// ways sorts the forces of a sum by the way that they act along its axis.
func ways(t *working, at solved.Place) (one, other group) {
	body := &t.solved.Bodies[at.Body]
	for i := range body.Forces {
		f := &body.Forces[i]
		x, y := t.solved.UnitVector(f)
		along, across := x, y
		if at.Axis == statics.Y {
			along, across = y, x
		}
		if math.Abs(along) < vanishing {
			continue
		}
		way := &one
		if along < 0 {
			way = &other
		}
		way.names = append(way.names, f.Name)
		if math.Abs(across) > vanishing {
			way.slanted = append(way.slanted, f.Name)
		}
		size, _ := t.solved.InSI(f.Name)
		way.size += size
		if t.page.numbered(expr.Letter(f.Name), t.found) {
			way.numbers++
			way.written += expr.ValueOf(t.page.numberOf(f.Name, t.figures))
		}
	}
	return one, other
}

// compare says which of two groups is larger, and how much the sentence is worth.
func compare(t *working, at solved.Place, one, other group) (text string, worth int) {
	if len(one.slanted) == 0 && len(other.slanted) > 0 {
		one, other = other, one
	}
	all, numbers := len(one.names)+len(other.names), one.numbers+other.numbers
	// Forces at an angle on both sides allow no conclusion, and a number cannot be compared with a letter.
	if len(one.names) == 0 || len(other.names) == 0 || len(other.slanted) > 0 || numbers > 0 && numbers < all {
		return "", 0
	}
	head := sayCheckSize + t.forBody(at.Body) + ": "
	isAre, itThey := "is", "it"
	if len(one.names) > 1 {
		isAre, itThey = "are", "they"
	}
	if len(one.slanted) == 0 {
		if math.Abs(one.size-other.size) > shown*one.size {
			return "", 0
		}
		one.written, other.written = one.size, other.size // equal in print, too
		return head + fmt.Sprintf(sayAsLarge, together(t, one), isAre, together(t, other), itThey, at.Axis), 1
	}
	if one.size < other.size*(1+visible) {
		return "", 0
	}
	// X is 0 and Y is 1, so this is the other axis.
	across := statics.X + statics.Y - at.Axis
	hasHave := "has a component"
	if len(one.slanted) > 1 {
		hasHave = "have components"
	}
	return head + fmt.Sprintf(sayLarger, together(t, one), isAre, together(t, other), itThey, listed(set(one.slanted)), hasHave, across), 4
}

func set(names []string) []string {
	out := make([]string, len(names))
	for i, name := range names {
		out[i] = expr.Set(name)
	}
	return out
}

// together names the forces of a group with what their sizes add up to.
func together(t *working, g group) string {
	text := listed(set(g.names))
	if len(g.names) > 1 {
		text += sayTogether
	}
	if g.numbers > 0 {
		text += " (" + t.page.Write(number(g.written, t.solved.Unit(g.names[0]), t.figures)) + ")"
	}
	return text
}

// secondAngle says which other angle has the same sine, cosine or tangent, and why it is not meant.
func (t *working) secondAngle(function, name string, is float64) {
	degrees, _ := quantity.Find("deg")
	write := func(angle float64) string { return t.page.Write(number(angle, degrees, t.figuresOf(angle))) }
	// The sentence gives 0° to 90° as the reason, so it must hold for the angle itself.
	if is > 0 && is < math.Pi/2 && !t.solved.TurnsFully(name) {
		other := map[string]float64{"sin": math.Pi - is, "cos": 2*math.Pi - is, "tan": math.Pi + is}[function]
		t.lines = append(t.lines, fmt.Sprintf(sayOtherAngle, functionNames[function], write(other), expr.Set(name)))
		return
	}
	if function == "tan" {
		other := math.Mod(is+math.Pi, 2*math.Pi)
		t.lines = append(t.lines, fmt.Sprintf(sayOpposite, write(other)))
	}
}

// figuresOf gives an angle of three digits before the point one figure more, so that it has as many
// decimals as the smaller angle that it belongs to.
func (t *working) figuresOf(angle float64) int {
	if math.Abs(angle) >= 100*quantity.Degree {
		return t.figures + 1
	}
	return t.figures
}

// secondRoot says which other values two sums of two unknowns have, and why they are not meant.
func (t *working) secondRoot(sums []balance, names []string) {
	if len(sums) != 2 || len(names) != 2 {
		return
	}
	other, ok := t.solved.SecondRoot([2]string(names))
	if !ok {
		return
	}
	var values, outside, negative []string
	for _, name := range names {
		v, _ := t.solved.Model.Variable(name)
		value, figures := other[t.solved.Slots[name]], t.figures
		if v.Angle {
			value = math.Remainder(value, 2*math.Pi)
			figures = t.figuresOf(value)
		} else {
			value *= t.solved.Own.Scale(v.Dim)
		}
		values = append(values, expr.Set(name)+" = "+t.page.Write(number(value, t.solved.Unit(name), figures)))
		switch {
		case v.Angle && (value < 0 || value > math.Pi/2) && !t.solved.TurnsFully(name):
			outside = append(outside, expr.Set(name))
		case !v.Angle && value < 0:
			negative = append(negative, expr.Set(name))
		}
	}
	var reasons []string
	if len(outside) > 0 {
		reasons = append(reasons, fmt.Sprintf(sayOutside, listed(outside)))
	}
	if len(negative) > 0 {
		reasons = append(reasons, fmt.Sprintf(sayNegative, listed(negative)))
	}
	// If nothing rules out the second solution, it is not
	// mentioned: the student would be left with two answers.
	if len(reasons) > 0 {
		t.lines = append(t.lines, fmt.Sprintf(saySecond, listed(values), strings.Join(reasons, sayAndAlso)))
	}
}
