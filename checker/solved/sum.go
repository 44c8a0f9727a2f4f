package solved

import (
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
)

func (s *System) SumOf(body int, axis statics.Axis) Sum { return s.Sums[2*body+int(axis)] }

// SizeTree returns the tree of a term's size; nil for a size that is a letter of its own.
func (s *System) SizeTree(t Term) *expr.Node {
	if t.Size != nil {
		return t.Size.Tree
	}
	if v, ok := s.Model.Variable(t.Force.Name); ok && v.Role == statics.IsDerived {
		return v.Size
	}
	return nil
}

// WithSize gives a term another size. The name says all that is done to the size that the term
// has so far, with every letter that it brings in: bodies that share a force share what is made.
func (s *System) WithSize(t Term, name string, tree func() *expr.Node) Term {
	if t.Size != nil {
		// The key must say all that was done, or a size changed twice would be taken for one that
		// was changed once.
		name = t.Size.name + ", " + name
	}
	key := t.Force.Name + ": " + name
	made, ok := s.made.sizes.Load(key)
	if !ok {
		size := &Size{Tree: tree(), name: name}
		program := s.Model.Program(size.Tree)
		size.program = &program
		made, _ = s.made.sizes.LoadOrStore(key, size)
	}
	t.Size = made.(*Size)
	return t
}

// WithAngle gives a term the angle of that letter.
func (s *System) WithAngle(t Term, letter string) Term {
	t.Angle, t.Letter = s.ready("angle "+letter, func() *expr.Node { return expr.Letter(letter) }), letter
	return t
}

// TurnedBy gives the terms whose angle is larger or smaller by that letter.
func (s *System) TurnedBy(t Term, letter string) []Term {
	more, less := t, t
	more.Angle = s.ready("angle "+t.Letter+" + "+letter, func() *expr.Node { return expr.Join(expr.Add, expr.Letter(t.Letter), expr.Letter(letter)) })
	less.Angle = s.ready("angle "+t.Letter+" - "+letter, func() *expr.Node { return expr.Join(expr.Sub, expr.Letter(t.Letter), expr.Letter(letter)) })
	more.Letter, less.Letter = "", ""
	return []Term{more, less}
}

// ready compiles a tree once and keeps the program under its key.
func (s *System) ready(key string, tree func() *expr.Node) *expr.Program {
	if made, ok := s.made.programs.Load(key); ok {
		return made.(*expr.Program)
	}
	made := s.Model.Program(tree())
	// Another goroutine may have compiled it meanwhile; then both use the first.
	kept, _ := s.made.programs.LoadOrStore(key, &made)
	return kept.(*expr.Program)
}

// IsEmpty reports whether no force of the body acts along the axis.
func (s *System) IsEmpty(at Place) bool {
	return !slices.ContainsFunc(s.SumOf(at.Body, at.Axis), func(t Term) bool { return t.Scale != 0 })
}

// Places lists every sum of the problem.
func (s *System) Places() []Place {
	var all []Place
	for b := range s.Bodies {
		all = append(all, Place{b, statics.X}, Place{b, statics.Y})
	}
	return all
}
