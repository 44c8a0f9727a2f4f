package problems

import (
	"fmt"
	"math"
	"slices"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// DrawRules names the rules by which a draw is thrown back. Released rules are
// never changed: a student's numbers would change with them.
const DrawRules = 1

// The limits of rules 1. The hair on each keeps computers that round differently
// in the last place from deciding differently where a limit is met exactly.
const (
	widestSpread = 10 * (1 + hair)   // the largest size of a force over the smallest
	nearestPath  = 0.03 * (1 + hair) // how near, as a share, a wrong path may come
	sameNumber   = 1e-6              // within this share, two paths give one number
	hair         = 1e-9
)

// frozenPaths are the mistakes that rules 1 look for.
var frozenPaths = []string{
	"sign", "sine-cosine", "tangent", "not-resolved", "missing-force", "mass-for-weight", "equal-tensions",
	"shared-weight", "factor", "other-angle", "normal-equals-weight",
}

// Reasons for which a draw is thrown back, beside the codes of wrong paths.
const (
	NoSolution = "no solution"
	Unphysical = "unphysical"
	TooSpread  = "sizes too far apart"
)

// thrownBack says why the numbers of a copy are not handed out, "" if they are.
func (p *Problem) thrownBack() string {
	s, err := p.reference()
	switch {
	case err != nil:
		return NoSolution
	case s.unphysical() != "":
		return Unphysical
	case s.spread() > widestSpread:
		return TooSpread
	}
	return p.hidden(s)
}

// hidden returns the code of a wrong path that gives nearly the right number, ""
// if every mistake can be told. A path that gives the right number whatever the
// numbers are is no mistake here.
func (p *Problem) hidden(s *solution) string {
	for i, path := range s.wrongPaths() {
		if !slices.Contains(frozenPaths, path.Code) {
			continue
		}
		off := s.off(path)
		if !(off > nearestPath) && !(off <= sameNumber && p.alwaysRight(i, path)) {
			return path.Code
		}
	}
	return ""
}

// off returns how far the path's number is from the right one, as a share of it;
// beyond everything for a path that leads to no number.
func (s *solution) off(w wrongPath) float64 {
	right := s.value(w.Unknown)
	off := math.Abs(w.Value-right) / math.Abs(right)
	if math.IsNaN(off) {
		return math.Inf(1)
	}
	return off
}

// How many sets of numbers decide whether a path is always right, and how many are
// rolled to find as many that have a solution.
const (
	probeCount = 6
	probeRolls = 60
)

// alwaysRight reports whether the i-th path gives the right number for a fixed
// choice of the numbers that the problem can have.
func (p *Problem) alwaysRight(i int, path wrongPath) bool {
	for _, s := range p.probes() {
		paths := s.wrongPaths()
		if i >= len(paths) || paths[i].Code != path.Code || paths[i].Unknown != path.Unknown || s.off(paths[i]) > sameNumber {
			return false
		}
	}
	return true
}

// probe solves the problem for a fixed choice of its numbers.
func (p *Problem) probe() []*solution {
	d := newDice("probe", p.Hash)
	var probes []*solution
	for range probeRolls {
		s, err := p.roll(d).reference()
		if err == nil && s.unphysical() == "" {
			probes = append(probes, s)
		}
		if len(probes) == probeCount {
			break
		}
	}
	return probes
}

// unphysical says what cannot be about a solution, "" if nothing.
func (s *solution) unphysical() string {
	for _, b := range s.Bodies {
		for _, f := range b.Forces {
			if f.Angle == nil {
				continue
			}
			angle := s.Program(f.Angle).Run(s.env)
			if !(angle > hair && angle < math.Pi/2-hair) {
				return fmt.Sprintf("the angle of %s comes out as %s, beyond the sides that %s points to", f.Name, inDegrees(angle), f.Name)
			}
		}
	}
	return s.Unphysical(s.env)
}

func inDegrees(angle float64) string {
	unit, _ := quantity.Find("deg")
	return unit.In(angle, 3)
}

func (s *solution) value(name string) float64 {
	slot, ok := s.Slot(name)
	if !ok {
		return math.NaN()
	}
	return s.env[slot]
}

// spread returns the largest size of a force over the smallest.
func (s *solution) spread() float64 {
	smallest, largest := math.Inf(1), 0.0
	s.eachSize(func(size float64) { smallest, largest = math.Min(smallest, size), math.Max(largest, size) })
	return largest / smallest
}

func (s *solution) largestForce() float64 {
	largest := 0.0
	s.eachSize(func(size float64) { largest = math.Max(largest, size) })
	return largest
}

func (s *solution) eachSize(f func(float64)) {
	for _, b := range s.Bodies {
		for _, force := range b.Forces {
			f(math.Abs(s.value(force.Name)))
		}
	}
}

// equations counts the sums that have a term.
func equations(s *statics.System) int {
	n := 0
	for i := range s.Bodies {
		for _, axis := range []statics.Axis{statics.X, statics.Y} {
			if s.Bodies[i].Sum(axis) != nil {
				n++
			}
		}
	}
	return n
}
