package checker

import (
	"fmt"
	"math"
	"slices"
)

// WrongPath is a number that a listed mistake gives for an unknown. Key names the
// mistake and where it was made; it is the same for every draw of a problem.
type WrongPath struct {
	Code    Code
	Key     string
	Unknown string
	Value   float64 // SI
}

// pathCodes are the mistakes that a drawn number must tell apart from the right
// one. Draws that were handed out depend on this list and on the changes behind
// it: it is frozen, and a new list needs a new version of the rules of drawing.
var pathCodes = []Code{Sign, SineCosine, Tangent, NotResolved, MissingForce, MassForWeight, EqualTensions,
	SharedWeight, WholeFactor, OtherAngle, NormalEqualsWeight}

// WrongPaths works out what the listed mistakes give for every unknown asked for.
// A mistake with which the sums have no solution gives NaN, so that the list has
// the same entries in the same order whatever the numbers are.
func (r *Reference) WrongPaths() []WrongPath {
	m := &marking{Reference: r}
	var all []WrongPath
	counts := map[string]int{}
	put := func(code Code, key, unknown string, value float64) {
		if slices.Contains(pathCodes, code) {
			slot := r.Slots[unknown]
			scale := 1.0
			if slot < len(r.Variables) {
				scale = r.Own.Scale(r.Variables[slot].Dim)
			}
			all = append(all, WrongPath{code, key, unknown, value * scale})
		}
	}
	for _, s := range m.oneChange() {
		if s.code == EqualTensions && m.isSized(s.about) {
			continue // nobody takes two pulls that are given for equal
		}
		name := fmt.Sprintf("%s %v", s.code, s.about)
		counts[name]++
		env, ok := r.SolveSums(s.rows, r.Solution)
		for _, unknown := range r.Find {
			value := math.NaN()
			if ok {
				value = env[r.Slots[unknown]]
			}
			put(s.code, fmt.Sprintf("%s %d", name, counts[name]), unknown, value)
		}
	}
	for _, unknown := range r.Find {
		for i, c := range m.fromAnswers(m.valueOf(unknown)) {
			put(c.code, fmt.Sprintf("%s answer %d", c.code, i), unknown, c.value)
		}
	}
	return all
}

// isSized reports whether the sizes of all these forces are given.
func (r *Reference) isSized(names []string) bool {
	for _, name := range names {
		if f, ok := r.Force(name); !ok || f.Size == nil {
			return false
		}
	}
	return true
}
