package problems

import (
	"fmt"
	"math"
	"slices"

	"example.org/standstill/checker/quantity"
)

// sensible refuses what can be solved and is still a slip of the author: zeros,
// givens that nothing uses or nobody sees, own numbers outside their range. These
// rules came later than the others, so a kept file is not held to them.
func (r *reader) sensible(d *draft) {
	if r.kept || r.parts {
		return
	}
	r.zeros(d)
	r.idle(d)
	r.unseen(d)
	r.outside(d)
}

func (r *reader) zeros(d *draft) {
	for _, g := range d.System.Givens {
		// An angle of zero is a direction like any other.
		if n := d.given[g.Name]; n != nil && !g.Any && g.Number.Value == 0 && g.Unit.Dim != quantity.Angle {
			r.at(n, g.Name+" is zero", "a number above zero")
		}
	}
	s, err := solve(d.System)
	// A given that is zero makes forces zero, too, and the author has to know the cause.
	if err != nil || len(r.found) > 0 {
		return
	}
	largest := s.largestForce()
	if largest < 1e-12 {
		r.at(d.top.values["forces"], "the solution gives zero for every force", "a weight, or another force with a size")
		return
	}
	for _, f := range d.forces {
		if math.Abs(s.value(f.Name)) <= 1e-9*largest {
			r.at(f.name, fmt.Sprintf("the solution gives zero for the force %s", f.Name), "no such force, or numbers for which it is not zero")
			return
		}
	}
}

// idle refuses givens that nothing uses and that are not meant to be left aside.
func (r *reader) idle(d *draft) {
	for _, name := range d.givenLetters() {
		n := d.given[name]
		if n == nil || d.uses(name) || slices.Contains(d.System.Words.Surplus, name) || d.isForceSize(name) {
			continue
		}
		r.at(n, fmt.Sprintf("the given value %s is not used", name), fmt.Sprintf("%s in a size or an angle, or surplus: [%s] if the solution does not need it", name, name))
	}
}

// isForceSize reports whether a force has the name of a given, which is its size.
func (d *draft) isForceSize(name string) bool {
	_, ok := d.force(name)
	return ok
}

// unseen refuses givens that the student would meet as bare letters.
func (r *reader) unseen(d *draft) {
	shown := map[string]bool{"g": true}
	for _, m := range placeholder().FindAllStringSubmatch(d.Text, -1) {
		shown[canonical(m[1])] = true
	}
	for _, g := range d.System.Givens {
		n := d.given[g.Name]
		if n == nil || shown[g.Name] || d.System.Words.Meaning[g.Name] != "" || g.Any {
			continue
		}
		if d.uses(g.Name) || d.isForceSize(g.Name) || slices.Contains(d.System.Words.Surplus, g.Name) {
			r.at(n, fmt.Sprintf("the problem does not tell the student what %s is", g.Name), fmt.Sprintf("{%s} in the text, or an entry for it under \"meaning\"", g.Name))
		}
	}
}

// outside refuses numbers of the file that no student could have.
func (r *reader) outside(d *draft) {
	for _, v := range d.Vary {
		g, ok := d.System.Given(v.Name)
		if !ok {
			continue
		}
		x, scale := g.Number.Value, math.Pow10(v.Places)
		if g.Minus {
			x = -x
		}
		// Half of the last place on either side: the file may have its number with more places.
		if x < (float64(v.Low)-0.5)/scale || x > (float64(v.High)+0.5)/scale {
			r.at(d.given[v.Name], fmt.Sprintf("%s is outside its range, which is %s to %s", v.Name, v.Text(0), v.Text(v.Count()-1)), "a number in the range, or a wider range")
		}
	}
}
