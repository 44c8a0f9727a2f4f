package bench

import (
	"fmt"
	"slices"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
	"example.org/standstill/problems"

	"example.org/standstill/tutor/bench/measure"
)

// apparatus is a problem taken as the model of what stands on the table.
type apparatus struct {
	problem *problems.Problem
	ref     *checker.Reference
	model   *statics.Model
	letters expr.Letters
}

func newApparatus(p *problems.Problem) (*apparatus, error) {
	ref, err := p.Reference()
	if err != nil {
		return nil, err
	}
	// The reference's own model may be in pounds or kilonewtons.
	model, err := statics.Compile(p.System)
	if err != nil {
		return nil, err
	}
	a := &apparatus{problem: p, ref: ref, model: model}
	for _, v := range model.Variables {
		a.letters.Add(v.Name, expr.Plain)
	}
	for _, e := range p.System.Equal {
		a.letters.Alias(e.Letter, e.Names[0])
	}
	return a, nil
}

// letter finds the letter that a text names, as students write letters.
func (a *apparatus) letter(text string) (string, bool) {
	text = strings.TrimSpace(text)
	for _, e := range a.problem.System.Equal {
		if text == e.Letter {
			return e.Names[0], true
		}
	}
	reading, err := a.letters.Read(text)
	if err != nil {
		return "", false
	}
	side := reading.Lines[0].Sides[0]
	if side.Op != expr.Name || side.Unknown || len(reading.Lines[0].Sides) > 1 {
		return "", false
	}
	return side.Name, true
}

// want says what a value for a letter must be.
func (a *apparatus) want(name string) measure.Want {
	v, _ := a.model.Variable(name)
	w := measure.Want{Name: expr.Set(name), Dim: v.Dim, Unit: a.ref.Unit(name)}
	// The reference gives everything that it is not asked for in newtons.
	if w.Unit.Dim != w.Dim {
		w.Unit, _ = quantity.Find(append(measure.UnitsOf(w.Dim), "none")[0])
	}
	return w
}

// carrier finds the given mass that hangs on a body: that of its only weight m·g,
// to which the body's own mass is added.
func (a *apparatus) carrier(body *statics.Body) (mass string, ok bool) {
	for _, f := range body.Forces {
		if f.Kind != statics.Weight || f.Size == nil {
			continue
		}
		for _, name := range f.Size.Names() {
			if g, given := a.problem.System.Given(name); given && g.Unit.Dim == quantity.Mass && !g.Any {
				// With several masses on one hanger nobody could say to which a ring belongs.
				if ok {
					return "", false
				}
				mass, ok = name, true
			}
		}
	}
	return mass, ok
}

// physical says what about a value cannot be, "" if nothing is wrong.
func (a *apparatus) physical(name string, v measure.Value) string {
	w := a.want(name)
	given, isGiven := a.problem.System.Given(name)
	force, isForce := a.model.Force(name)
	switch {
	// The file itself has a minus here, or the force may point either way.
	case isGiven && given.Minus, isForce && force.Kind == statics.Strut:
		return ""
	case a.isSide(name):
		if x := v.Estimate / quantity.Degree; x < 0 || x > 90 {
			return saidBeyondQuarter(w)
		}
		return ""
	// A direction goes round the full circle, so any number is one.
	case w.Dim == quantity.Angle:
		return ""
	case v.Estimate < 0:
		return saidBelowZero(w)
	case v.Estimate == 0 && (w.Dim == quantity.Mass || w.Dim == quantity.Acceleration || w.Dim == quantity.Stiffness):
		return saidNoneOfIt(w)
	}
	return ""
}

// isSide reports whether a letter is an angle between a force and an axis, which
// lies within a quarter of the circle.
func (a *apparatus) isSide(name string) bool {
	for _, b := range a.problem.System.Bodies {
		for _, f := range b.Forces {
			if f.Direction == nil && f.Angle != nil && f.Angle.Op == expr.Name && f.Angle.Name == name {
				return true
			}
		}
	}
	return false
}

// needs lists the unknown letters that must be known for a sum to be added up.
func (a *apparatus) needs(tree *expr.Node) []string {
	var needed []string
	var visit func(*expr.Node)
	visit = func(n *expr.Node) {
		for _, name := range n.Names() {
			v, _ := a.model.Variable(name)
			switch {
			case v.Role == statics.IsUnknown && !slices.Contains(needed, name):
				needed = append(needed, name)
			case v.Role == statics.IsDerived:
				visit(v.Size)
			}
		}
	}
	visit(tree)
	return needed
}

// Heading names the problem: its title and its id.
func (a *apparatus) Heading() string {
	return fmt.Sprintf("%s (%s)", a.problem.Title, a.problem.ID)
}
