package checker

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// markSolve judges a line of working: it must follow from the sums and the
// givens. A line X = number unit for an X asked for settles X.
func (m *marking) markSolve() Report {
	if m.item != "" && len(m.line.Sides) == 1 && m.letters("").Has(m.item) {
		return m.markNamed()
	}
	if len(m.line.Sides) == 1 {
		return m.markLone()
	}
	signs := m.conventions()
	always := true
	var settles []string
	for i := 1; i < len(m.line.Sides); i++ {
		left, right := m.line.Sides[i-1], m.line.Sides[i]
		name, number := m.statement(left, right)
		if name != "" {
			always = false
			if report := m.markValue(name, number); report.Verdict != Right {
				return report
			}
			settles = append(settles, m.settled(name)...)
			continue
		}
		e := m.equation(left, right, signs)
		if m.always(e) {
			continue
		}
		always = false
		formula := m.formulaFor(left, right)
		if !m.follows(e, roundedShare) {
			f := m.explainLine(e)
			if formula != "" {
				f.about = formula
			}
			return m.wrong(f)
		}
		if formula != "" {
			settles = append(settles, m.settled(formula)...)
		}
	}
	if always {
		return m.almost(HoldsAlways, "")
	}
	report := m.right()
	report.Settles = append(report.Settles, m.settledBy(settles)...)
	return report
}

// isFormula reports whether a letter's value depends on a given without a number,
// so that only a formula can answer it.
func (r *Reference) isFormula(name string) bool {
	slot, ok := r.slots[name]
	if !ok {
		return false
	}
	for i, g := range r.Givens {
		if g.Any && math.Abs(r.rest(1<<i, 1)[slot]-r.solution[slot]) > 1e-6*math.Abs(r.solution[slot]) {
			return true
		}
	}
	return false
}

// formulaFor returns the unknown that a link answers by a formula of givens, ""
// for none.
func (m *marking) formulaFor(left, right *expr.Node) string {
	if left.Op != expr.Name {
		left, right = right, left
	}
	if left.Op == expr.Name && m.isFormula(left.Name) && !m.open(right) {
		return left.Name
	}
	return ""
}

// settledBy lists what a right line settles: X of a link X = number, and X where
// the chain that begins with X ends in a number.
func (m *marking) settledBy(settles []string) []string {
	first, last := m.line.Sides[0], m.line.Sides[len(m.line.Sides)-1]
	if len(m.line.Sides) > 2 && first.Op == expr.Name && isQuantity(last) {
		if m.markValue(first.Name, last).Verdict == Right {
			for _, name := range m.settled(first.Name) {
				if !slices.Contains(settles, name) {
					settles = append(settles, name)
				}
			}
		}
	}
	return settles
}

// isQuantity reports whether a side is a number, perhaps with a sign and a unit.
func isQuantity(n *expr.Node) bool {
	if n.Op == expr.Neg {
		n = n.Args[0]
	}
	return n.Op == expr.Number
}

// statement takes "X = number" apart, in either order. X is a letter of the
// system; a chain's inner links are no statements but for the last.
func (m *marking) statement(left, right *expr.Node) (name string, number *expr.Node) {
	if isQuantity(left) {
		left, right = right, left
	}
	if left.Op != expr.Name || !isQuantity(right) {
		return "", nil
	}
	if _, ok := m.Variable(left.Name); ok {
		return left.Name, right
	}
	for _, e := range m.equals {
		if e.name == left.Name {
			return left.Name, right
		}
	}
	return "", nil
}

// settled lists the unknowns asked for that a letter stands for.
func (m *marking) settled(name string) []string {
	names := []string{name}
	for _, e := range m.equals {
		if e.name == name {
			names = nil
			for _, slot := range e.slots {
				names = append(names, m.Variables[slot].Name)
			}
		}
	}
	return slices.DeleteFunc(names, func(n string) bool { return !slices.Contains(m.Find, n) })
}

// markNamed judges an answer for the named item that is no equation.
func (m *marking) markNamed() Report {
	value := m.line.Sides[0]
	if isQuantity(value) {
		report := m.markValue(m.item, value)
		if report.Verdict == Right {
			report.Settles = append(report.Settles, m.settled(m.item)...)
		}
		return report
	}
	e := m.equation(expr.Letter(m.item), value, m.conventions())
	switch {
	case m.always(e):
		return m.almost(HoldsAlways, m.item)
	case !m.follows(e, roundedShare):
		f := m.explainLine(e)
		f.about = m.item
		return m.wrong(f)
	case m.open(value):
		return m.almost(StillUnknown, m.item)
	}
	report := m.right()
	if m.isFormula(m.item) {
		report.Settles = m.settled(m.item)
	}
	return report
}

// open reports whether an unknown stands in the tree.
func (r *Reference) open(n *expr.Node) bool {
	for _, name := range n.Names() {
		slot, ok := r.slots[name]
		if !ok || slot >= len(r.Variables) || r.Variables[slot].Role == statics.IsUnknown {
			return true
		}
		if r.Variables[slot].Role == statics.IsDerived && r.open(r.Variables[slot].Size) {
			return true
		}
	}
	return false
}

// markLone judges an expression with no name and no equals sign: the answer, if
// only one thing is asked for.
func (m *marking) markLone() Report {
	left := slices.DeleteFunc(slices.Clone(m.Find), func(n string) bool { return n == "" })
	for _, e := range m.equals {
		if len(left) > 1 && len(m.settled(e.name)) == len(left) {
			left = left[:1]
		}
	}
	if len(left) == 1 {
		m.item = left[0]
		return m.markNamed()
	}
	return m.almost(NoEquation, "")
}

// markValue judges "X = number unit".
func (m *marking) markValue(name string, number *expr.Node) Report {
	v := m.valueOf(name)
	a := m.readValue(v, number)
	about := m.aboutOf(name)
	switch {
	case m.fits(v, a):
		switch {
		case a.unitIsOther && a.bare == "":
			return m.almost(WrongUnit, about)
		case a.bare == "assumed" && v.unit.Dim != quantity.None && slices.Contains(m.asksFor(), name):
			return m.almost(NoUnit, about)
		}
		return m.right()
	case a.number.Coarse(a.inUnit(v)) && a.positive && !a.unitIsOther:
		return m.almost(Coarse, about)
	}
	f := m.explainValue(v, a)
	f.about = about
	return m.wrong(f)
}

// asksFor lists what must be given with a unit: what is asked for, and the
// letters that stand for it.
func (m *marking) asksFor() []string {
	names := slices.Clone(m.Find)
	for _, e := range m.equals {
		names = append(names, e.name)
	}
	return names
}

// aboutOf returns the file's own name for a letter; none for a letter of several
// equal sizes.
func (m *marking) aboutOf(name string) string {
	if _, ok := m.Variable(name); ok {
		return name
	}
	return ""
}

// asked is a value that the line states: its letter, the true value in SI and the
// unit that it is asked in.
type asked struct {
	name  string
	slot  int
	value float64
	unit  quantity.Unit
	force *statics.Force
}

func (m *marking) valueOf(name string) asked {
	v := asked{name: name, slot: m.slots[name], value: m.solution[m.slots[name]], unit: m.own.inner(m.Unit(name))}
	if v.slot < len(m.Variables) {
		v.force, _ = m.Force(name)
	} else {
		for _, e := range m.equals {
			if e.name == name {
				v.force, _ = m.Force(m.Variables[e.slots[0]].Name)
			}
		}
	}
	return v
}

// Unit returns the unit in which a letter is asked for.
func (r *Reference) Unit(name string) quantity.Unit {
	if u, ok := r.Answer[name]; ok {
		return u
	}
	for _, e := range r.equals {
		if e.name == name {
			return r.Unit(r.Variables[e.slots[0]].Name)
		}
	}
	if g, ok := r.Given(name); ok {
		u, _ := quantity.Find(g.Unit.Symbol)
		return u
	}
	dim := quantity.Force
	if v, ok := r.Variable(name); ok {
		dim = v.Dim
	}
	return r.usualUnit(dim)
}

// usualUnit is the unit in which a dimension is asked for if the file does not
// say: SI, or pounds where every force that is given is in pounds.
func (r *Reference) usualUnit(dim quantity.Dimension) quantity.Unit {
	symbol := map[quantity.Dimension]string{
		quantity.Force: "N", quantity.Mass: "kg", quantity.Angle: "deg", quantity.Length: "m",
		quantity.Stiffness: "N/m", quantity.Acceleration: "m/s^2", quantity.None: "none",
	}[dim]
	if dim == quantity.Force && r.inPounds() {
		symbol = "lb"
	}
	u, _ := quantity.Find(symbol)
	return u
}

func (r *Reference) inPounds() bool { return r.own.force == quantity.PoundForce }

// given is a value as it was typed: bare says that no unit was typed, unitIsOther
// that the unit measures something else.
type given struct {
	number      quantity.Number
	value       float64 // SI; a bare number or one with another's unit in the unit asked
	half        float64
	positive    bool
	bare        string
	unitIsOther bool
	factor      float64
}

// inUnit returns the true value in the unit that was typed.
func (a given) inUnit(v asked) float64 { return v.value / a.factor }

func (m *marking) readValue(v asked, n *expr.Node) given {
	a := given{positive: true, factor: v.unit.Factor}
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
		a.factor = m.own.inner(unit).Factor
	default:
		a.unitIsOther = true
	}
	a.number = n.Num
	a.value = sign * n.Num.Value * a.factor
	a.half = n.Num.Wide * a.factor
	if m.turned.other && v.unit.Dim == quantity.Angle {
		a.value = math.Pi/2 - a.value
	}
	return a
}

// fits reports whether the typed value is right: within one part in a hundred, or
// correctly rounded to two figures. An angle may be the same direction, said
// otherwise.
func (m *marking) fits(v asked, a given) bool {
	for _, x := range m.sameValue(v) {
		off := math.Abs(a.value - x)
		if v.unit.Dim == quantity.Angle {
			off = math.Abs(math.Remainder(a.value-x, 2*math.Pi))
		}
		if off <= roundedShare*math.Abs(v.value)*(1+1e-9) || a.number.Figures >= 2 && off <= a.half*(1+1e-9) {
			return true
		}
	}
	return false
}

// sameValue lists the values that say the same: for an angle of a force also its
// full-circle direction.
func (m *marking) sameValue(v asked) []float64 {
	same := []float64{v.value}
	if v.unit.Dim != quantity.Angle {
		return same
	}
	for _, b := range m.Bodies {
		for i := range b.Forces {
			f := &b.Forces[i]
			if f.Angle == nil || !f.Slanted() || f.Angle.Op != expr.Name || f.Angle.Name != v.name {
				continue
			}
			x := termOf(m.Model, f, statics.X)
			y := termOf(m.Model, f, statics.Y)
			size := m.solution[x.slot]
			if size != 0 {
				same = append(same, math.Atan2(y.value(m.solution)/size, x.value(m.solution)/size))
			}
		}
	}
	return same
}
