package problems

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
)

// validate checks the whole: the sums settle what is asked for, in one way, and what
// comes out can be.
func (r *reader) validate(d *draft) {
	if err := tiltTrouble(d.System); err != nil {
		r.at(d.top.values["axes"], err.Error(), "an angle that contains only given values and unknowns from \"forces\"")
		return
	}
	m, err := statics.Compile(d.System)
	if err != nil {
		r.dimension(d, err)
		return
	}
	r.asked(d, m)
	r.answerUnits(d, m)
	r.valued(d)
	// Not solved yet: findings about a solution would only follow from those about the parts.
	if r.heavy(d); len(r.found) > 0 {
		return
	}
	s, err := solve(d.System)
	// “equal” is an equation only where one is missing; elsewhere it is
	// checked. It is used up by this, so that validate is not called a third time.
	if errors.Is(err, statics.ErrOpen) && d.makeEqual() {
		r.validate(d)
		return
	}
	if err != nil {
		r.unsolved(d, m, err)
		return
	}
	free := d.withoutNumber()
	said := s.unphysical()
	if other, err := s.elsewhere(free); free != nil && (err != nil || (other.unphysical() == "") != (said == "")) {
		r.at(d.given[free[0]], fmt.Sprintf("for some values of %s, there is no possible solution", listed(free, "and")), "a number for "+listed(free, "and"))
	} else if said != "" {
		r.impossible(d, s, said)
	} else {
		r.equalSizes(d, s)
		r.formulaUnits(d, s, other)
	}
}

// impossible refuses a solution that cannot be, with the size that comes out: where one
// force has the wrong direction, another is often the one that acts the wrong way.
func (r *reader) impossible(d *draft, s *solution, said string) {
	expected := "forces and angles that are possible"
	// Before it, an angle may have been refused.
	if f := s.WrongWay(s.env); f != nil && said == s.Unphysical(s.env) {
		expected += fmt.Sprintf("; the mistake is not necessarily in %s: check %s", f.Name, listed(d.suspects(), "and"))
		said += fmt.Sprintf(" (the equations give %s = %s)", f.Name, inUnit(s.value(f.Name), d.forceUnit()))
	}
	r.at(d.locate(said), said, expected)
}

// suspects lists what turns a force round: directions, axes that are level, coefficients.
func (d *draft) suspects() []string {
	all := []string{"where each force points"}
	if len(d.tilts) == 0 && slices.ContainsFunc(d.bodies, d.restsOnSurface) {
		all = append(all, "the axes (on a slope: axes: {tilt: alpha})")
	}
	if slices.ContainsFunc(d.System.Givens, func(g statics.Given) bool { return g.Unit.Dim == quantity.None }) {
		all = append(all, "the coefficients")
	}
	return all
}

// forceUnit is the unit in which forces are told where the file does not say one.
func (d *draft) forceUnit() quantity.Unit { return usualUnit(quantity.Force, d.allPounds()) }

func inUnit(x float64, unit quantity.Unit) string {
	return strings.Replace(unit.In(x, 3), "-", "−", 1)
}

// tiltTrouble checks the angles by which axes are turned. The sums do not contain
// them, so each is checked as the direction of a force that is not there.
func tiltTrouble(s *statics.System) error {
	for _, b := range s.Bodies {
		if b.Tilt == nil {
			continue
		}
		plain, err := statics.Compile(s)
		if err != nil {
			// validate compiles the system again and words this error.
			return nil
		}
		for _, name := range b.Tilt.Names() {
			if !plain.Has(name) {
				return fmt.Errorf("%s in the tilt of the axes is neither a given value nor an unknown from \"forces\"", name)
			}
		}
		probe := *s
		newton := &expr.Node{Op: expr.Number, Num: quantity.Exact(1), Unit: "N"}
		probe.Bodies = append(slices.Clone(s.Bodies), statics.Body{Forces: []statics.Force{{Name: "tilt", Direction: b.Tilt, Size: newton}}})
		if _, err := statics.Compile(&probe); err != nil {
			return errors.New(strings.Replace(err.Error(), "the direction of tilt", "the tilt of the axes", 1))
		}
	}
	return nil
}

// asked checks that what is asked for is unknown, or a force.
func (r *reader) asked(d *draft, m *statics.Model) {
	for i, name := range d.System.Find {
		v, known := m.Variable(name)
		switch {
		case !known:
			r.at(d.find[i], fmt.Sprintf("%s is neither an unknown nor a force of this problem", name), instead(name, findable(m)))
		case d.follows(name):
			r.at(d.find[i], fmt.Sprintf("%s follows from the given values (%s), so the problem cannot ask for it", name, d.formulaFor(name)), "\"find\" without "+name)
		case v.Role == statics.IsGiven:
			r.at(d.find[i], name+" is given", "one of "+strings.Join(findable(m), " "))
		}
	}
}

func findable(m *statics.Model) []string {
	var names []string
	for _, v := range m.Variables {
		if _, follows := m.Formula(v.Name); v.Role != statics.IsGiven && !follows {
			names = append(names, v.Name)
		}
	}
	return names
}

// answerUnits checks the units that the file asks answers in and fills in the
// usual ones.
func (r *reader) answerUnits(d *draft, m *statics.Model) {
	pounds := d.allPounds()
	for _, name := range d.System.Find {
		v, _ := m.Variable(name)
		unit, asked := d.System.Answer[name]
		if asked && unit.Dim != v.Dim {
			r.at(d.units[name], fmt.Sprintf("%s is %s, so its unit cannot be %s", name, v.Dim, unit.Symbol), "a unit of "+strings.TrimPrefix(v.Dim.String(), "a "))
		}
		if !asked {
			d.System.Answer[name] = usualUnit(v.Dim, pounds)
		}
	}
}

// usualUnit is the unit in which an answer is asked where the file does not say: that of
// a solved system, which is asked here before anything is solved.
func usualUnit(d quantity.Dimension, pounds bool) quantity.Unit {
	var s solved.System
	if pounds {
		s.Own.Force = quantity.PoundForce
	}
	return s.UsualUnit(d)
}

// allPounds reports whether forces are given, and every one of them in lb.
func (d *draft) allPounds() bool {
	pounds, others := 0, 0
	count := func(unit quantity.Unit) {
		switch {
		case unit.Dim != quantity.Force:
		case unit.Symbol == "lb":
			pounds++
		default:
			others++
		}
	}
	for _, g := range d.System.Givens {
		count(g.Unit)
	}
	for _, f := range d.formulas() {
		f.tree.Walk(func(n *expr.Node) {
			unit, _ := quantity.Find(n.Unit)
			count(unit)
		})
	}
	return pounds > 0 && others == 0
}

// unsolved words the reasons for which there is no single solution.
func (r *reader) unsolved(d *draft, m *statics.Model, err error) {
	at := d.top.values["forces"]
	unknowns := m.Unknowns()
	counted := fmt.Sprintf("%d unknowns (%s)", len(unknowns), strings.Join(unknowns, ", "))
	if len(unknowns) == 1 {
		counted = "one unknown (" + unknowns[0] + ")"
	}
	switch {
	case errors.Is(err, statics.ErrOpen):
		r.at(at, counted+" cannot be found from fewer equations", "a size, an angle or a given value for one of them")
	// With too few unknowns, it is likelier that one is missing than that the directions are wrong.
	case errors.Is(err, statics.ErrNoSolution) && len(unknowns) < equations(d.System):
		r.at(at, fmt.Sprintf("no values satisfy all the equations: %s for %d equations", counted, equations(d.System)), "as many unknowns as equations")
	case errors.Is(err, statics.ErrNoSolution):
		r.at(at, err.Error(), "forces that can balance with these directions")
	case errors.Is(err, statics.ErrSeveral):
		r.at(at, err.Error(), "exactly one solution; use \"points\" to say which way a force with an unknown angle points")
	default:
		r.at(at, err.Error(), "a problem with exactly one solution")
	}
}

// equalSizes checks that sizes said to be equal are.
func (r *reader) equalSizes(d *draft, s *solution) {
	for _, e := range d.System.Equal {
		first := s.value(e.Names[0])
		for _, name := range e.Names[1:] {
			if math.Abs(s.value(name)-first) > 1e-6*s.largestForce() {
				r.at(d.top.values["equal"], fmt.Sprintf("%s and %s are not equal", e.Names[0], name), "forces of equal size")
				break
			}
		}
	}
}

// withoutNumber lists the givens that are letters without a number.
func (d *draft) withoutNumber() []string {
	var free []string
	for _, g := range d.System.Givens {
		if g.Any {
			free = append(free, g.Name)
		}
	}
	return free
}

// elsewhere solves for other values of the letters without a number.
func (s *solution) elsewhere(free []string) (*solution, error) {
	env := s.Environment()
	for i, name := range free {
		slot, _ := s.Slot(name)
		// Other than the 1 that Environment puts in, and different from each other.
		env[slot] = 2.6 + 0.7*float64(i)
	}
	out, err := s.Solve(env)
	return &solution{s.Model, out}, err
}

// formulaUnits refuses a unit for what depends on a letter without a number: it is
// answered by a formula.
func (r *reader) formulaUnits(d *draft, s, other *solution) {
	for _, name := range d.System.Find {
		n := d.units[name]
		if n != nil && math.Abs(other.value(name)-s.value(name)) > 1e-6*math.Abs(s.value(name)) {
			r.at(n, fmt.Sprintf("the answer for %s is a formula that contains %s, so it cannot have a unit", name, listed(d.withoutNumber(), "and")), "no unit, or a number for the letter")
		}
	}
}
