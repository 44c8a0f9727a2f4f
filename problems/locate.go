package problems

import (
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// dimension words what package statics says of quantities that do not go
// together.
func (r *reader) dimension(d *draft, err error) {
	at := d.locate(err.Error())
	// Package statics says what is wrong in words, so what was expected is found by these words.
	expected := "quantities with compatible units"
	for _, row := range []struct{ said, expected string }{
		{"it must be a force", "a force, such as m*g or 24 N"},
		{"it must be an angle", "an angle, such as 35 deg"},
		{"not given above this formula", "letters that are given above this formula"},
		{"depends on itself", "no size for an unknown force"},
		{"are both unknown", "only one unknown letter"},
	} {
		if strings.Contains(err.Error(), row.said) {
			expected = row.expected
		}
	}
	strange := strings.Contains(err.Error(), "another quantity") // which no word of ours names
	for _, f := range d.formulas() {
		for _, g := range d.System.Givens {
			switch {
			case f.node != at || f.tree == nil || !f.tree.Has(g.Name):
			case g.Unit.Symbol == "none":
				expected += fmt.Sprintf(" (%s is given without a unit)", g.Name)
			case strange:
				expected += fmt.Sprintf(" (%s is given in %s)", g.Name, g.Unit.Symbol)
			}
		}
	}
	if name := d.weighed(at); name != "" {
		g, _ := d.System.Given(name)
		r.at(at, fmt.Sprintf("%s is in %s, which is a unit of force, so it cannot be multiplied by g", name, g.Unit.Symbol), fmt.Sprintf("size: %s, or %s in kg", name, name))
		return
	}
	r.at(at, err.Error(), expected)
}

// weighed returns the given force that the size at a place takes for a mass, "" if there is none.
func (d *draft) weighed(at *yaml.Node) string {
	for _, f := range d.forces {
		if f.size == nil || f.size.node != at || f.Size == nil || f.Size.Op != expr.Mul {
			continue
		}
		for i, factor := range f.Size.Args {
			g, isGiven := d.System.Given(factor.Name)
			if isGiven && g.Unit.Dim == quantity.Force && f.Size.Args[1-i].Name == "g" {
				return g.Name
			}
		}
	}
	return ""
}

// locate finds the place that a message of package statics speaks of: the first
// force or letter that it names, and of a force its size or angle if it says so.
func (d *draft) locate(message string) *yaml.Node {
	words := strings.FieldsFunc(message, func(c rune) bool { return c == ' ' || c == ',' || c == ':' })
	if len(words) > 3 && strings.HasPrefix(message, "the formula for ") {
		for _, f := range d.follow {
			if f.letter == words[3] {
				return f.node
			}
		}
	}
	for i, word := range words {
		f, ok := d.force(word)
		// Not the first word: “a unit cannot …” does not speak of a force that is called a.
		if !ok || i == 0 {
			continue
		}
		part := ""
		if i > 1 && words[i-1] == "of" {
			part = words[i-2]
		}
		for _, e := range []struct {
			name string
			*formula
		}{{"size", f.size}, {"angle", f.angle}, {"direction", f.direction}} {
			if e.name == part && e.formula != nil {
				return e.node
			}
		}
		return f.name
	}
	for _, word := range words {
		for _, f := range d.formulas() {
			if f.tree.Has(word) {
				return f.node
			}
		}
	}
	return d.cause(message)
}

// cause finds the expression without which the message would be another one.
func (d *draft) cause(message string) *yaml.Node {
	newton := &expr.Node{Op: expr.Number, Num: quantity.Exact(1), Unit: "N"}
	radian := &expr.Node{Op: expr.Number, Num: quantity.Exact(1), Unit: "rad"}
	for _, f := range d.formulas() {
		// Whatever fits in its place: if the message goes away, this expression was its cause.
		harmless := newton
		if f.angle {
			harmless = radian
		}
		if _, err := statics.Compile(replacing(d.System, f.tree, harmless)); err == nil || err.Error() != message {
			return f.node
		}
	}
	return d.top.values["forces"]
}

// replacing returns the system with another tree in the place of one.
func replacing(s *statics.System, tree, by *expr.Node) *statics.System {
	other := *s
	other.Bodies = slices.Clone(s.Bodies)
	for i := range other.Bodies {
		other.Bodies[i].Forces = slices.Clone(other.Bodies[i].Forces)
		for j := range other.Bodies[i].Forces {
			f := &other.Bodies[i].Forces[j]
			for _, part := range []**expr.Node{&f.Size, &f.Angle, &f.Direction} {
				if *part == tree {
					*part = by
				}
			}
		}
	}
	return &other
}
