package wording

import (
	"fmt"
	"math"
	"slices"

	"example.org/standstill/checker/solved"
)

// What is said of a value that no mistake explains: in which equations it shows that it is wrong.
// None of the sentences says by how much, because what is left over in an equation is what the value
// is wrong by.
const (
	saidFits     = "This value of {unknown} does not agree with the values that the problem gives."
	saidLeaves   = "If you substitute this value of {unknown} into the equation %s, the terms do not add up to zero."
	saidWithYour = "Substitute this value of {unknown} into %s, together with your %s of %s. If the terms add up to zero, check your %[2]s of %[3]s."
	saidNoOther  = "If you substitute this value of {unknown} into %s, no %s of %s can make the terms add up to zero in every equation."
)

// putBack sends a student with a wrong value back to the equations that contain its letter: to one
// that has no other unknown, if there is one.
func putBack(s *Subject) string {
	var equations, others []string
	for _, at := range s.solved.Places() {
		if !s.isFelt(s.slotsOf(s.Unknown), at) {
			continue
		}
		name, beside := s.nameOfSum(at), s.besideIn(at)
		if len(beside) == 0 {
			return fmt.Sprintf(saidLeaves, name)
		}
		equations, others = append(equations, name), append(others, beside...)
	}
	slices.Sort(others)
	others = slices.Compact(others)
	in, values := "the equation ", "value"
	if len(equations) > 1 {
		in = "the equations "
	}
	if len(others) > 1 {
		values = "values"
	}
	in += andBetween(equations)
	switch {
	case len(equations) == 0:
		return saidFits
	case len(others) < len(equations) && s.solved.Model.Linear():
		return fmt.Sprintf(saidNoOther, in, values, listed(others))
	}
	return fmt.Sprintf(saidWithYour, in, values, listed(others))
}

// besideIn lists the other unknowns that are felt in a sum.
func (s *Subject) besideIn(at solved.Place) []string {
	return slices.DeleteFunc(s.solved.Model.Unknowns(), func(name string) bool {
		slot := s.solved.Slots[name]
		return slices.Contains(s.slotsOf(s.Unknown), slot) || !s.isFelt([]int{slot}, at)
	})
}

// slotsOf lists the places of an unknown, or of all that a letter of equal sizes is for.
func (s *Subject) slotsOf(name string) []int {
	for _, e := range s.solved.Equals {
		if e.Name == name {
			return e.Slots
		}
	}
	if slices.Contains(s.solved.Model.Unknowns(), name) {
		return []int{s.solved.Slots[name]}
	}
	return nil
}

// isFelt reports whether a sum that is zero at rest is zero no longer when some letters have another
// value.
func (s *Subject) isFelt(slots []int, at solved.Place) bool {
	const moved = 1.1
	env := slices.Clone(s.solved.Values)
	for _, slot := range slots {
		if env[slot] == 0 {
			env[slot] = s.solved.Bulk
		}
		env[slot] *= moved
	}
	s.solved.Fill(env, nil)
	w := s.solved.SumOf(at.Body, at.Axis)
	return math.Abs(w.Value(env)) > felt*w.Largest(env)
}

// felt is how much of its largest term a sum must be off by, for that to be more than arithmetic
// leaves over.
const felt = 1e-6

func (s *Subject) nameOfSum(at solved.Place) string {
	of := *s
	of.Body, of.axis = &s.solved.Bodies[at.Body], at.Axis
	return of.sumName()
}
