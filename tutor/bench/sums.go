package bench

import (
	"math"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"

	"example.org/standstill/tutor/bench/measure"
)

// sums solves a model's sums for other givens, near a solution that is known:
// package statics finds the solution and refuses what has none or several, this
// follows it. It keeps its working room, so it serves one goroutine.
type sums struct {
	model    *statics.Model
	unknowns []int        // their slots
	forces   []int        // the slots of all forces
	turns    map[int]bool // the slots of directions, which go round the circle
	start    []float64    // the unknowns at the known solution
	env      []float64
	u        []float64
	rows     [][]float64
	by       []float64
	at, near []float64 // the sums' values
	linear   bool
}

func newSums(m *statics.Model, solved []float64) *sums {
	s := &sums{model: m, env: append([]float64(nil), solved...), linear: m.Linear(), turns: map[int]bool{}}
	for _, name := range m.Unknowns() {
		slot, _ := m.Slot(name)
		s.unknowns = append(s.unknowns, slot)
		s.start = append(s.start, solved[slot])
		if m.TurnsFully(name) {
			s.turns[slot] = true
		}
	}
	for i, v := range m.Variables {
		if v.Dim == quantity.Force {
			s.forces = append(s.forces, i)
		}
	}
	// Allocated here once: solve runs for every one of the random trials.
	s.u, s.by = make([]float64, len(s.unknowns)), make([]float64, len(s.unknowns))
	s.at = m.Residuals(solved, nil)
	s.near = make([]float64, 0, len(s.at))
	s.rows = make([][]float64, len(s.at))
	for i := range s.rows {
		s.rows[i] = make([]float64, len(s.unknowns)+1)
	}
	return s
}

// settle puts the unknowns and what follows from them into s.env.
func (s *sums) settle() {
	for i, slot := range s.unknowns {
		s.env[slot] = s.u[i]
	}
	s.model.Derive(s.env)
}

// residuals evaluates the sums with the unknowns at s.u.
func (s *sums) residuals(into []float64) []float64 {
	s.settle()
	return s.model.Residuals(s.env, into[:0])
}

const (
	mostSteps  = 25
	closed     = 1e-12 // how near zero the sums must come, as a share of the largest force
	consistent = 1e-8  // the same for sums beyond those needed
	shift      = 1e-7
)

// solve finds the unknowns for the givens that stand in s.env, and fills in the
// derived letters too. False where the sums settle nothing, or cannot all be zero.
func (s *sums) solve() bool {
	if s.linear {
		clear(s.u)
		s.at = s.residuals(s.at)
		// Straight sums have the same derivative over any width, and 1 costs no figures.
		missed, ok := s.step(1)
		s.settle()
		return ok && missed <= consistent*s.scale()
	}
	// Always from the same place: the result of a trial must not depend on the trial before it.
	copy(s.u, s.start)
	for range mostSteps {
		s.at = s.residuals(s.at)
		if largest(s.at) <= closed*s.scale() {
			return true
		}
		if _, ok := s.step(shift); !ok {
			return false
		}
	}
	s.at = s.residuals(s.at)
	return largest(s.at) <= consistent*s.scale()
}

// step moves the unknowns to where the sums, taken as straight over the width h,
// are zero. s.at holds their values. What it returns is as for statics.Eliminate.
func (s *sums) step(h float64) (missed float64, ok bool) {
	n := len(s.u)
	for j, was := range s.u {
		wide := h
		if !s.linear {
			// A share of the unknown, but a direction may be 0.
			wide = h * max(math.Abs(was), 1e-3)
		}
		s.u[j] = was + wide
		s.near = s.residuals(s.near)
		s.u[j] = was
		for i := range s.rows {
			s.rows[i][j] = (s.near[i] - s.at[i]) / wide
		}
	}
	for i := range s.rows {
		s.rows[i][n] = -s.at[i]
	}
	missed, ok = statics.Eliminate(s.rows, s.by, 0) // exactly zero: how near zero is too near shows in the trials
	for j, by := range s.by {
		s.u[j] += by
		ok = ok && !math.IsNaN(s.u[j]) && !math.IsInf(s.u[j], 0)
	}
	return missed, ok
}

// scale is the size of the largest force.
func (s *sums) scale() float64 {
	scale := 0.0
	for _, slot := range s.forces {
		scale = max(scale, math.Abs(s.env[slot]))
	}
	return scale
}

// function takes inputs, each added to the letter at its slot, to the letters at the
// slots of outputs. A direction is followed round the circle from where it was solved.
func (s *sums) function(slots, outputs []int) measure.Function {
	from := append([]float64(nil), s.env...)
	return func(x, y []float64) bool {
		for _, slot := range slots {
			// One letter may be the sum of several inputs, such as a hanger and its rings.
			s.env[slot] = 0
		}
		for i, slot := range slots {
			s.env[slot] += x[i]
		}
		if !s.solve() {
			return false
		}
		for j, slot := range outputs {
			if y[j] = s.env[slot]; s.turns[slot] {
				// Otherwise trials about 0° would fall to both ends of the circle and have a mean of 180°.
				y[j] = from[slot] + measure.Turn(y[j]-from[slot])
			}
		}
		return true
	}
}

// physical is the function for givens that can be: where a string would have to push,
// it has no value, and pushed counts one more.
func (s *sums) physical(f measure.Function, pushed *int) measure.Function {
	return func(x, y []float64) bool {
		if !f(x, y) {
			return false
		}
		for slot := range s.turns {
			// Package statics judges directions between 0° and 360° only.
			s.env[slot] = math.Mod(s.env[slot]+4*math.Pi, 2*math.Pi)
		}
		if s.model.Unphysical(s.env) != "" {
			*pushed++
			return false
		}
		return true
	}
}

func largest(values []float64) float64 {
	most := 0.0
	for _, v := range values {
		if math.IsNaN(v) {
			// max would pass over a NaN, and the sums would count as zero.
			return math.Inf(1)
		}
		most = max(most, math.Abs(v))
	}
	return most
}
