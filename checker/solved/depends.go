package solved

import (
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
)

// What a tree speaks of.

// Fixed reports whether a tree depends on givens alone.
func (s *System) Fixed(n *expr.Node) bool {
	for _, name := range n.Names() {
		v, ok := s.Model.Variable(name)
		if !ok || v.Role == statics.IsUnknown || v.Role == statics.IsDerived && !s.Fixed(v.Size) {
			return false
		}
	}
	return true
}

// Open reports whether an unknown stands in the tree.
func (s *System) Open(n *expr.Node) bool {
	for _, name := range n.Names() {
		slot, ok := s.Slots[name]
		// Components and letters of equal sizes have their slots behind
		// the variables. They count as open, whatever they are made of.
		if !ok || slot >= len(s.Model.Variables) || s.Model.Variables[slot].Role == statics.IsUnknown {
			return true
		}
		if s.Model.Variables[slot].Role == statics.IsDerived && s.Open(s.Model.Variables[slot].Size) {
			return true
		}
	}
	return false
}

// SpeaksOf reports whether a letter of a tree belongs to a force, an angle or an unknown: its own
// letter, a component of it, a letter of its size, or a size with its letter in it.
func (s *System) SpeaksOf(n *expr.Node, about string) bool {
	f, isForce := s.Force(about)
	for _, name := range n.Names() {
		if c, ok := s.Component(name); ok {
			if c.Force.Name == about {
				return true
			}
			continue
		}
		if v, ok := s.Model.Variable(name); ok && v.Size != nil && v.Size.Has(about) {
			return true
		}
		if name == about || s.Owner(name) == about || isForce && f.Size != nil && f.Size.Has(name) {
			return true
		}
	}
	return false
}

// GivenSet is a set of givens, by their place in the model. A problem file is refused long
// before a given would have no bit.
type GivenSet uint64

// Has reports whether a given is in the set.
func (s GivenSet) Has(i int) bool { return i < 64 && s>>i&1 == 1 }

// GivensIn returns the givens that the letters of a tree depend on.
func (s *System) GivensIn(n *expr.Node) GivenSet {
	var set GivenSet
	for _, name := range n.Names() {
		set |= s.GivensOf(name)
	}
	return set
}

// GivensOf returns the givens that a letter depends on.
func (s *System) GivensOf(name string) GivenSet {
	slot, ok := s.Slots[name]
	if !ok {
		return 0
	}
	if slot >= len(s.Model.Variables) {
		if c, ok := s.Component(name); ok {
			set := s.GivensOf(c.Force.Name)
			if f := c.Force.Factor(c.Axis); f.Angle != nil {
				set |= s.GivensIn(f.Angle)
			}
			return set
		}
		return 0
	}
	switch v := s.Model.Variables[slot]; v.Role {
	case statics.IsGiven:
		// Givens have the first slots.
		return 1 << slot
	case statics.IsDerived:
		return s.GivensIn(v.Size)
	}
	return 0
}
