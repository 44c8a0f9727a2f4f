// Package solved holds a system together with its solution, its units and the letters in
// which a student writes about it.
//
// Start with System:
//
//	vocabulary.go   the letters, their places in an environment, the components
//	reader.go       how they may be typed; names.go what letters and bodies are called in words
//	letters.go      which letters a text about an item may have
//	units.go        the problem's own units; asked.go the unit that an answer is in
//	term.go         a sum of forces along an axis, as terms; sum.go the sums of a system
//	stage.go        the five stages and the items of each
//	depends.go      what a tree speaks of: unknowns, givens, forces
//	direction.go    where forces really point; angles.go the angles at which they are drawn
//	root.go         a second solution of the sums
package solved

import (
	"math"
	"sync"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
)

// System is a solved system. It is in the problem's own units, and never changed after New,
// so that several goroutines may use it.
type System struct {
	*statics.System
	Model  *statics.Model
	Values []float64 // of all letters at the solution, by slot
	*Vocabulary
	Own  Units
	Sums []Sum   // of each body along x and along y
	Bulk float64 // the largest force at the solution

	sense []float64 // of each component at the solution: +1 or −1
	made  *made
}

// made is what was worked out once.
type made struct {
	programs sync.Map // of *expr.Program, by what they work out
	sizes    sync.Map // of *Size, by force and name
}

// New puts a solution to its model, which is one of the kin.
func New(m *statics.Model, solution []float64, own Units, kin *Kin) *System {
	s := &System{System: m.System, Model: m, Vocabulary: newVocabulary(m, kin), Own: own, made: &made{}}
	s.Values = make([]float64, s.width)
	copy(s.Values, solution)
	for _, c := range s.Components {
		s.Bulk = math.Max(s.Bulk, math.Abs(s.Values[c.Term.Slot]))
		// Before Fill, which gives a size its sign from this.
		s.sense = append(s.sense, math.Copysign(1, c.Term.Value(s.Values)))
	}
	s.Fill(s.Values, nil)
	for b := range m.Bodies {
		for _, axis := range []statics.Axis{statics.X, statics.Y} {
			s.Sums = append(s.Sums, sumOf(s.Components, b, axis))
		}
	}
	return s
}

// Signed says for each component whether its letter stands for the signed
// component; otherwise for its size.
type Signed []bool

// Fill computes everything that follows from givens and unknowns, in place.
func (s *System) Fill(env []float64, signs Signed) {
	s.Model.Derive(env)
	for _, e := range s.Equals {
		// The sizes are equal at rest. Where a sample has them apart, the first stands for all.
		env[e.Slot] = env[e.Slots[0]]
	}
	for i := range s.Components {
		c := &s.Components[i]
		env[c.Slot] = c.Term.Value(env)
		// A size is the component turned to the side to which it points at rest, so that it stays
		// one function of the angles when these vary.
		if signs == nil || !signs[i] {
			env[c.Slot] *= s.sense[i]
		}
	}
}

// LettersAt gives each letter its value in an environment.
func (s *System) LettersAt(env []float64) map[string]float64 {
	values := make(map[string]float64, len(s.Slots))
	for name, slot := range s.Slots {
		values[name] = env[slot]
	}
	return values
}

func (s *System) ProgramOf(n *expr.Node) expr.Program {
	return expr.Compile(s.Own.Tree(n), func(name string) (int, bool) { s, ok := s.Slots[name]; return s, ok })
}

// Text prints a tree of the problem.
func (s *System) Text(n *expr.Node) string { return s.Readers[""].PrintNode(n) }

// InSI returns a letter's value in SI at the solution.
func (s *System) InSI(name string) (float64, bool) {
	slot, ok := s.Model.Slot(name)
	if !ok {
		return 0, false
	}
	return s.Values[slot] * s.Own.Scale(s.Model.Variables[slot].Dim), true
}

// sumOf makes a sum of its components.
func sumOf(components []Component, body int, axis statics.Axis) Sum {
	var w Sum
	for i := range components {
		if c := &components[i]; c.Body == body && c.Axis == axis {
			w = append(w, c.Term)
		}
	}
	return w
}
