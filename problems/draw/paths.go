package draw

import (
	"fmt"
	"math"

	"example.org/standstill/checker/statics"
)

// Path is a number that a mistake of the list gives for an unknown, in SI. Key names
// the mistake and where it was made; it is the same for every draw of a problem.
type Path struct {
	Code    Code
	Key     string
	Unknown string
	Value   float64
}

// Paths works out what the mistakes of the list give for every unknown asked for;
// solution holds the right values. A mistake with which the equations have no
// solution gives NaN, so that the list has the same entries in the same order
// whatever the numbers are.
func Paths(m *statics.Model, solution []float64) []Path {
	p := newProblem(m, solution)
	var all []Path
	counts := map[string]int{}
	for _, s := range p.wrongSystems() {
		if s.code == EqualTensions && p.isSized(s.about) {
			continue // nobody takes two tensions that are given for equal
		}
		name := fmt.Sprintf("%s %v", s.code, s.about)
		// The same mistake can be made at several places, and each needs a key of its own.
		counts[name]++
		env, ok := p.solve(s.rows)
		for _, unknown := range p.Find {
			value := math.NaN()
			if slot, known := p.Slot(unknown); ok && known {
				value = env[slot]
			}
			all = append(all, Path{s.code, fmt.Sprintf("%s %d", name, counts[name]), unknown, value})
		}
	}
	for _, unknown := range p.Find {
		all = append(all, p.fromAnswers(unknown)...)
	}
	return all
}

// isSized reports whether the sizes of all these forces are given.
func (p *problem) isSized(names []string) bool {
	for _, name := range names {
		if f, ok := p.Force(name); !ok || f.Size == nil {
			return false
		}
	}
	return true
}

// wrongSystem is every equation, with a change.
type wrongSystem struct {
	code  Code
	about []string
	rows  []row
}

// wrongSystems lists the systems with one change, and those in which one change is
// made everywhere.
func (p *problem) wrongSystems() []wrongSystem {
	var all []wrongSystem
	for i, w := range p.rows {
		// The rows are x and y of each body in turn.
		for _, v := range p.changed(place{i / 2, statics.Axis(i % 2)}, w) {
			rows := append([]row(nil), p.rows...)
			rows[i] = v.row
			all = append(all, wrongSystem{v.code, v.about, rows})
		}
	}
	for _, c := range changes {
		if c.everywhere {
			all = append(all, p.everywhere(c))
		}
	}
	return all
}

func (p *problem) everywhere(c change) wrongSystem {
	s := wrongSystem{code: c.code}
	for k, w := range p.rows {
		w = append(row(nil), w...)
		for i := range w {
			if ways := c.each(p, place{k / 2, statics.Axis(k % 2)}, w[i]); len(ways) > 0 {
				w[i] = ways[0]
			}
		}
		s.rows = append(s.rows, w)
	}
	return s
}
