package problems

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
	"example.org/standstill/problems/draw"
)

// DrawRules names the rules by which numbers are drawn and thrown back. Released rules
// are never changed: a student's numbers would change with them.
const DrawRules = draw.Rules

// The limits of rules 2. The hair on each keeps computers that round differently
// in the last place from deciding differently where a limit is met exactly.
const (
	widestSpread = 10 * (1 + hair)   // the largest size of a force over the smallest
	nearestPath  = 0.03 * (1 + hair) // how near, as a share, a wrong path may come
	sameNumber   = 1e-6              // within this share, two paths give one number
	hair         = 1e-9
)

// Reasons for which a draw is thrown back, beside the codes of wrong paths.
const (
	NoSolution = "no solution"
	Unphysical = "unphysical"
	TooSpread  = "forces too far apart"
)

// thrownBack says why the numbers of a copy are not handed out, "" if they are.
func (p *Problem) thrownBack() string {
	why, exact := p.nearPaths()
	if why != "" {
		return why
	}
	// Looked at last, because it solves the problem for other numbers, too.
	for _, w := range exact {
		if !p.alwaysRight(misstep{w.Key, w.Unknown}) {
			return string(w.Code)
		}
	}
	return ""
}

// nearPaths says why a copy is not handed out, and lists the wrong paths that give
// exactly the right number. These are no mistakes here if they do so whatever the
// numbers are; a path that comes near without meeting it hides in the number, unless
// it is near by nature, as tan and sin are of a small angle.
func (p *Problem) nearPaths() (why string, exact []draw.Path) {
	s, err := solve(p.System)
	switch {
	case err != nil:
		return NoSolution, nil
	case s.unphysical() != "":
		return Unphysical, nil
	case s.spread() > widestSpread:
		return TooSpread, nil
	}
	for _, w := range s.wrongPaths() {
		switch off := s.away(w); {
		case off <= sameNumber:
			exact = append(exact, w)
		// Whoever makes this mistake would be marked right with these numbers.
		case off <= nearestPath && !p.nearByNature(misstep{w.Key, w.Unknown}):
			return string(w.Code), nil
		}
	}
	return "", exact
}

// wrongPaths lists what the mistakes that a number must tell apart lead to.
func (s *solution) wrongPaths() []draw.Path { return draw.Paths(s.Model, s.env) }

// WrongPaths lists what the mistakes that a drawn number must tell apart lead to with
// the numbers of this copy; none where it has no solution.
func (p *Problem) WrongPaths() []draw.Path {
	s, err := solve(p.System)
	if err != nil {
		return nil
	}
	return s.wrongPaths()
}

// away returns how far a path's number is from the right one, as a share of it. A
// path that leads to no number is beyond everything.
func (s *solution) away(w draw.Path) float64 {
	right := s.value(w.Unknown)
	var off float64
	switch v, _ := s.Variable(w.Unknown); {
	case v.Angle && s.TurnsFully(w.Unknown):
		// 359° and 1° are 2° apart.
		off = math.Abs(math.Remainder(w.Value-right, 2*math.Pi))
	case v.Angle:
		off = math.Abs(acute(w.Value) - acute(right))
	default:
		off = math.Abs(math.Abs(w.Value) - math.Abs(right))
	}
	if off /= math.Abs(right); math.IsNaN(off) {
		return math.Inf(1)
	}
	return off
}

// acute returns the angle that a student gives who is asked for one between a
// force and an axis: −40°, 140° and 220° are all 40° from it, as −5 N for a pull is
// 5 N. Without this it would be left to the solver which of them comes out.
func acute(angle float64) float64 { return math.Abs(math.Remainder(angle, math.Pi)) }

// misstep is one mistake and the unknown that it gives a number for.
type misstep struct{ key, unknown string }

// How many sets of numbers decide whether a path is always right, and how many are
// rolled to find as many that have a solution.
const (
	probeCount = 6
	probeRolls = 60
)

// alwaysRight reports whether a path gives the right number whatever the numbers
// are, looking at a fixed choice of those that the problem can have. More than half
// must agree, not all: where the wrong sums have two solutions, the solver may come
// to the other one, and by accident no path is exactly right more than once.
func (p *Problem) alwaysRight(w misstep) bool {
	right, wrong := 0, 0
	for _, offs := range p.probes() {
		if off, ok := offs[w]; ok && off <= sameNumber {
			right++
		} else if ok {
			wrong++
		}
	}
	return right > wrong
}

// nearByNature reports whether a path comes near the right number whatever the numbers
// are, and is not always right.
func (p *Problem) nearByNature(w misstep) bool {
	probes := p.probes()
	for _, offs := range probes {
		if off, ok := offs[w]; !ok || off > nearestPath {
			return false
		}
	}
	// With fewer probes, coming near could be chance.
	return len(probes) == probeCount && !p.alwaysRight(w)
}

// nearMistakes lists the mistakes that come near the right number by nature.
func (p *Problem) nearMistakes() []string {
	found := map[string]bool{}
	for _, w := range p.WrongPaths() {
		if p.nearByNature(misstep{w.Key, w.Unknown}) {
			found[string(w.Code)] = true
		}
	}
	return slices.Sorted(maps.Keys(found))
}

// probe works out how far every path is off for a fixed choice of the numbers.
func (p *Problem) probe() []map[misstep]float64 {
	// Always the same dice: the same numbers must be thrown back on every computer.
	d := draw.NewDice("probe", p.Numbers)
	var probes []map[misstep]float64
	for range probeRolls {
		own := p.roll(d)
		s, err := solve(own.System)
		// No student gets such numbers, so they tell nothing of a path.
		if err != nil || s.unphysical() != "" {
			continue
		}
		offs := map[misstep]float64{}
		for _, w := range s.wrongPaths() {
			if off := s.away(w); !math.IsInf(off, 0) {
				offs[misstep{w.Key, w.Unknown}] = off
			}
		}
		if probes = append(probes, offs); len(probes) == probeCount {
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
				return fmt.Sprintf("the angle of %s would be %s, which does not fit the directions in which %s points", f.Name, inDegrees(angle), f.Name)
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
