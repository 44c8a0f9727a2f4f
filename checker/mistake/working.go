package mistake

import (
	"math"
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/trial"
)

// costFromEdit is what it costs that the line would follow if one thing in it were otherwise.
const costFromEdit = 1

// Working explains why a line of working does not follow: it is a sum with a mistake; or it
// follows from sums with one mistake in them; or one change of the line itself would make it
// follow; or a mistake gives the number that comes out of it.
func (s *Search) Working(e *trial.Equation) Finding {
	if f, ok := s.foreignAngle(e); ok {
		return f
	}
	if f, ok := s.fromLine(e, false); ok {
		return f
	}
	ways := s.fromOneSum(e)
	if !hasSpoken(ways) {
		ways = append(append(ways, s.fromSystems(e, s.oneMistake())...), s.fromEdits(e)...)
	}
	if f, ok := cheapest(ways); ok {
		return f
	}
	if f, ok := s.fromValue(e); ok {
		return f
	}
	if f, ok := cheapest(s.fromTwo(e)); ok {
		return f
	}
	if f, ok := s.fromLine(e, true); ok {
		return f
	}
	return s.named(DoesNotFollow)
}

// hasSpoken reports whether one of the ways is about what the line speaks of, so that there is
// nothing better to look for.
func hasSpoken(ways []Change) bool {
	return slices.ContainsFunc(ways, func(c Change) bool { return !c.unspoken && c.Cost <= mostCost })
}

// fromOneSum finds the changes of a sum that give the line as it is.
func (s *Search) fromOneSum(e *trial.Equation) []Change {
	var all []Change
	for _, tied := range s.p.TiedFor(e) {
		for _, at := range s.p.Solved.Places() {
			for _, c := range s.matching(e, s.one(at), tied) {
				if !c.Row.OfSums {
					all = append(all, c)
				}
			}
		}
		if len(all) > 0 {
			break
		}
	}
	return all
}

// fromTwo finds the pairs of changes of a sum that give the line as it is.
func (s *Search) fromTwo(e *trial.Equation) []Change {
	var all []Change
	if e.Stray {
		return nil
	}
	for _, tied := range s.p.TiedFor(e) {
		for _, at := range s.p.Solved.Places() {
			all = append(all, s.pairs(e, at, tied)...)
		}
	}
	return all
}

// mostEdited is how many nodes a line may have to be edited; what students write has fewer, and
// each edit is a tree of its own.
const mostEdited = 40

// fromEdits tries the line with one change made to what was typed.
func (s *Search) fromEdits(e *trial.Equation) []Change {
	difference := expr.Join(expr.Sub, e.Sides[0], e.Sides[1])
	// Each node gives several edits and each of these is solved for: the cost grows with the square.
	if difference.Size() > mostEdited {
		return nil
	}
	share := trial.RoundedShare
	if e.Exact {
		// In letters, what follows follows exactly; a near miss is no explanation.
		share = trial.ExactShare
	}
	var found []Change
	for _, row := range s.rows {
		if row.Tree == nil {
			continue
		}
		row.eachEdit(s.p, difference, func(n *expr.Node) *expr.Node { return n }, func(tree *expr.Node) {
			mended := s.p.Edited(e, tree)
			if s.p.Follows(mended, share) && !s.p.EditedAlways(mended, tree) {
				found = append(found, Change{Row: row, Cost: row.Cost + costFromEdit})
			}
		})
	}
	return found
}

// eachEdit calls f with every tree that the row's change of one node gives; within puts a changed
// node back in its place.
func (r *Row) eachEdit(p *trial.Problem, n *expr.Node, within func(*expr.Node) *expr.Node, f func(*expr.Node)) {
	for _, changed := range r.Tree(p, n) {
		f(within(changed))
	}
	for i := range n.Args {
		r.eachEdit(p, n.Args[i], func(changed *expr.Node) *expr.Node {
			c := *n
			c.Args = slices.Clone(n.Args)
			c.Args[i] = changed
			return within(&c)
		}, f)
	}
}

// fromValue names a line X = … by the number that comes out of it, as "T = P + w" by the sum of
// the two. With an unknown in it, the number must be met exactly.
func (s *Search) fromValue(e *trial.Equation) (f Finding, ok bool) {
	letter, formula := e.Sides[0], e.Sides[1]
	if letter.Op != expr.Name {
		letter, formula = formula, letter
	}
	if letter.Op != expr.Name || e.Stray || s.p.Solved.Open(formula) && !e.Exact {
		return Finding{}, false
	}
	v := s.Target(letter.Name)
	value := s.p.Solved.ProgramOf(formula).Run(slices.Clone(s.p.Solved.Values))
	share := e.Fit()
	if e.Exact {
		share = trial.ExactShare
	}
	var best *Number
	for _, n := range s.numbersFor(v, one) {
		// A mistake may turn a size's sign, which a student leaves out.
		if n.row.Formula != nil && !n.row.Formula(formula) {
			continue
		}
		if off := min(math.Abs(n.Value-value), math.Abs(n.Value+value)); off <= share*math.Abs(value) && (best == nil || n.Cost < best.Cost) {
			best = &n
		}
	}
	if best == nil {
		return Finding{}, false
	}
	f = finding(best.row, letter.Name)
	f.What = best.What
	if _, ok := s.p.Solved.Model.Variable(letter.Name); !ok {
		f.About = ""
	}
	return f, true
}
