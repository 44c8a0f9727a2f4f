package checker

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
	"example.org/standstill/checker/trial"
)

// values judges numbers that are the value of a letter.
type values struct{ m *marking }

func (m *marking) values() values { return values{m} }

// markValue judges "X = number unit".
func (j values) markValue(name string, number *expr.Node) Report {
	v := j.valueOf(name)
	a := j.readValue(v, number)
	about := j.aboutOf(name)
	if a.bare != "" && !j.fits(v, a) && !slices.Contains(j.asksFor(), name) {
		a = a.inUnits(j.m.solved.Own.Inner(j.m.solved.UsualUnit(v.unit.Dim))) // 0.85 for a mass of 850 g
	}
	if number := a; !j.fits(v, a) && a.unitIsTyped(v) && j.fits(v, number.inUnits(v.unit)) {
		return j.m.almost(WrongUnit, about) // the number of pounds, called newtons
	}
	switch {
	case j.fits(v, a):
		switch {
		case a.unitIsOther && a.bare == "":
			return j.m.almost(WrongUnit, about)
		case a.bare == "assumed" && v.unit.Dim != quantity.None && slices.Contains(j.asksFor(), name):
			return j.m.almost(NoUnit, about)
		}
		return j.m.right()
	case a.number.Coarse(a.inUnit(v)) && a.positive && !a.unitIsOther:
		if j.m.ref.rules.Figures == oneFigure {
			return j.m.right()
		}
		return j.m.almost(Coarse, about)
	}
	if v.unit.Dim == quantity.Angle && j.m.turned.missForce(j.m.solved, name) {
		return j.m.wrong(mistake.Finding{Code: Sign, About: about})
	}
	// The search behind this is the dearest of all, and nobody reads what it finds.
	if j.m.brief {
		return j.m.wrong(mistake.Finding{Code: Unexplained})
	}
	f := j.m.ref.mistakes.Value(j.m.ref.mistakes.Target(name), a.asTyped())
	f.About = about
	return j.m.wrong(f)
}

// asksFor lists what must be given with a unit: what is asked for, and the
// letters that stand for it or are of its size.
func (j values) asksFor() []string {
	names := slices.Clone(j.m.solved.Find)
	for _, e := range j.m.solved.Equals {
		names = append(names, e.Name)
	}
	for _, v := range j.m.solved.Model.Variables {
		if len(settled(j.m.solved, v.Name)) > 0 {
			names = append(names, v.Name)
		}
	}
	return names
}

// aboutOf returns the file's own name for a letter; none for a letter of several
// equal sizes.
func (j values) aboutOf(name string) string {
	if _, ok := j.m.solved.Model.Variable(name); ok {
		return name
	}
	return ""
}

// target is a value that the line states: its letter, the true value in SI and the
// unit that it is asked in.
type target struct {
	name  string
	slot  int
	value float64
	unit  quantity.Unit
	force *statics.Force
}

func (j values) valueOf(name string) target {
	v := target{name: name, slot: j.m.solved.Slots[name], value: j.m.solved.Values[j.m.solved.Slots[name]], unit: j.m.solved.Own.Inner(j.m.solved.Unit(name))}
	if v.slot < len(j.m.solved.Model.Variables) {
		v.force, _ = j.m.solved.Force(name)
	} else {
		for _, e := range j.m.solved.Equals {
			if e.Name == name {
				v.force, _ = j.m.solved.Force(j.m.solved.Model.Variables[e.Slots[0]].Name)
			}
		}
	}
	return v
}

// typedValue is a value as it was typed: bare says that no unit was typed, unitIsOther
// that the unit measures something else.
type typedValue struct {
	number      quantity.Number
	value       float64 // SI; a bare number or one with another's unit in the unit asked
	typed       float64 // the same, before words behind it turned it to another axis
	half        float64
	positive    bool
	bare        string
	unitIsOther bool
	factor      float64
}

// asTyped is what the search for a mistake needs of it.
func (a typedValue) asTyped() mistake.Typed {
	return mistake.Typed{Value: a.value, Half: a.half, Figures: a.number.Figures}
}

// inUnits returns the same number in another unit.
func (a typedValue) inUnits(unit quantity.Unit) typedValue {
	a.value, a.half, a.factor = a.value/a.factor*unit.Factor, a.half/a.factor*unit.Factor, unit.Factor
	return a
}

// unitIsTyped reports whether the number has a unit of the right dimension that is no
// prefix of the one that is asked.
func (a typedValue) unitIsTyped(v target) bool {
	return a.bare == "" && !a.unitIsOther && a.factor != v.unit.Factor && !mistake.IsPowerOfTen(a.factor/v.unit.Factor, trial.Hair)
}

// inUnit returns the true value in the unit that was typed.
func (a typedValue) inUnit(v target) float64 { return v.value / a.factor }

func (j values) readValue(v target, n *expr.Node) typedValue {
	a := typedValue{positive: true, factor: v.unit.Factor}
	sign := 1.0
	if n.Op == expr.Neg {
		sign, n = -1, n.Args[0]
		a.positive = false
	}
	unit, typed := quantity.Find(n.Unit)
	switch {
	case !typed || n.Assumed:
		a.bare = "assumed"
	case unit.Dim == v.unit.Dim:
		a.factor = j.m.solved.Own.Inner(unit).Factor
	default:
		a.unitIsOther = true
	}
	a.number = n.Num
	a.value = sign * n.Num.Value * a.factor
	a.typed = a.value
	a.half = n.Num.Wide * a.factor
	if j.m.turned.said && v.unit.Dim == quantity.Angle {
		a.value = j.m.turned.measured(j.m.solved, v.name, a.value)
	}
	return a
}

// fits reports whether the typed value is right: within one part in a hundred, or
// correctly rounded to two figures. An angle may be the same direction, said
// otherwise.
func (j values) fits(v target, a typedValue) bool {
	if v.unit.Dim == quantity.Angle && j.m.turned.missForce(j.m.solved, v.name) {
		return false
	}
	for i, x := range j.sameValue(v) {
		if i > 0 && math.Abs(math.Remainder(x-(math.Pi/2-v.value), 2*math.Pi)) < 2*trial.RoundedShare && !j.m.turned.said {
			// Whoever means the angle to the other axis has to say so.
			continue // the bare complement stays wrong, whatever else it is
		}
		off := math.Abs(a.value - x)
		if v.unit.Dim == quantity.Angle {
			off = math.Abs(math.Remainder(a.value-x, 2*math.Pi))
		}
		if i > 0 && j.m.turned.said && j.m.turned.axis == statics.X {
			off = math.Abs(math.Remainder(a.typed-x, 2*math.Pi)) // 120° from +x, all the way round
		}
		if off <= j.m.ref.share*math.Abs(v.value)*(1+trial.Same) || a.number.Figures >= 2 && off <= a.half*(1+trial.Same) {
			return true
		}
	}
	return false
}

// sameValue lists the values that say the same: for an angle of a force also its
// full-circle direction.
func (j values) sameValue(v target) []float64 {
	same := []float64{v.value}
	if v.unit.Dim != quantity.Angle {
		return same
	}
	for _, b := range j.m.solved.Bodies {
		for i := range b.Forces {
			f := &b.Forces[i]
			if f.Angle == nil || !f.Slanted() || f.Angle.Op != expr.Name || f.Angle.Name != v.name {
				continue
			}
			x := solved.TermOf(j.m.solved.Model, f, statics.X)
			y := solved.TermOf(j.m.solved.Model, f, statics.Y)
			size := j.m.solved.Values[x.Slot]
			if size != 0 {
				same = append(same, math.Atan2(y.Value(j.m.solved.Values)/size, x.Value(j.m.solved.Values)/size))
			}
		}
	}
	return same
}

// oneFigure is the number of figures at which no value is coarse.
const oneFigure = 1
