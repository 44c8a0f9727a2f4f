package mistake

import (
	"math"
	"slices"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/trial"
)

// Target finds a letter's true value.
func (s *Search) Target(name string) Target {
	v := Target{Name: name, Slot: s.p.Solved.Slots[name], Value: s.p.Solved.Values[s.p.Solved.Slots[name]], Dim: s.p.Solved.Unit(name).Dim}
	if v.Slot < len(s.p.Solved.Model.Variables) {
		v.Force, _ = s.p.Solved.Force(name)
		return v
	}
	for _, e := range s.p.Solved.Equals {
		if e.Name == name {
			v.Force, _ = s.p.Solved.Force(s.p.Solved.Model.Variables[e.Slots[0]].Name)
		}
	}
	return v
}

// costOfOff is what it costs that a number lies as far off as rounding allows; half of the last
// place off is as likely as right on it, but a number in the middle is more often meant.
const costOfOff = 1

// Value explains a wrong value of a letter: a mistake gives a number that rounds to what was
// typed, or the right one's digits do; else two mistakes give it.
func (s *Search) Value(v Target, typed Typed) Finding {
	// Two mistakes are tried only if one does not explain the number:
	// they reach so many numbers that they would win by chance.
	f, cost, ok := nearest(s.numbersFor(v, one), typed)
	if digits, found := s.Digits(v, typed.Value); found && (!ok || digits.Row.DigitsCost < cost) {
		return digits
	}
	if ok {
		return f
	}
	if f, _, ok := nearest(s.numbersFor(v, two), typed); ok {
		f.Second = true
		return f
	}
	return s.named(Unexplained)
}

// Digits explains a number by its digits alone, if they do.
func (s *Search) Digits(v Target, typed float64) (f Finding, ok bool) {
	var best *Row
	for _, row := range s.rows {
		if row.Digits != nil && v.Value != 0 && row.Digits(v, typed) && (best == nil || row.DigitsCost < best.DigitsCost) {
			best = row
		}
	}
	if best == nil {
		return Finding{}, false
	}
	return finding(best), true
}

// nearest picks the number that costs least among those that round to what was typed. One
// figure alone is explained only by a number that is it exactly.
func nearest(all []Number, typed Typed) (f Finding, cost float64, ok bool) {
	var best *Number
	least := 0.0
	for i := range all {
		n := &all[i]
		// A mistake may turn a size's sign, which a student leaves out or not.
		off := min(math.Abs(n.Value-typed.Value), math.Abs(math.Abs(n.Value)-typed.Value))
		exact := off <= trial.Same*math.Abs(typed.Value)
		half := typed.Half * float64(1+n.Rounds)
		if !exact && (off > half*(1+trial.Same) || typed.Figures < 2) {
			continue
		}
		cost := n.Cost
		if !exact {
			misfit := costOfOff * off / half
			if n.Shown {
				// Of all numbers that are met by chance, these are the ones that a student had at hand.
				misfit *= 0.3 // it was rounded once, from a number that is known
			}
			cost += misfit
		}
		if best == nil || cost < least-hair {
			best, least = n, cost
		}
	}
	if best == nil {
		return Finding{}, 0, false
	}
	// Where a mistake in an equation gives the very number that is another unknown's, too, or
	// that the weight gives in one step, it is no chance that they are the same.
	for i := range all {
		n := &all[i]
		if (best.Answer && !n.Answer || best.row.Open) && !n.last && math.Abs(n.Value-best.Value) <= trial.Felt*typed.Half && n.row.Cost+n.row.InNumbers < best.row.Cost+best.row.InNumbers {
			best = n
		}
	}
	f = finding(best.row)
	f.What = best.What
	return f, best.Cost, true
}

// numbersFor lists the wrong numbers for a letter; they are made when first asked for. What is
// within one part in a hundred of the right value is no wrong number.
func (s *Search) numbersFor(v Target, of mistakes) []Number {
	key := numbersKey{v.Name, of}
	s.mu.Lock()
	made, ok := s.numbers[key]
	s.mu.Unlock()
	if ok {
		return made
	}
	if of == one {
		made = slices.Concat(s.fromSums(v, s.oneMistake()), s.fromLastSum(v), s.fromRows(v))
	} else if s.p.Solved.Model.Linear() {
		// Where the sums bend, two mistakes give so many numbers that one of them fits anything.
		made = s.fromSums(v, s.twoMistakes())
	}
	kept := made[:0]
	for _, n := range made {
		if of == two || math.Abs(n.Value-v.Value) > trial.RoundedShare*math.Abs(v.Value) {
			kept = append(kept, n)
		}
	}
	s.mu.Lock()
	s.numbers[key] = kept
	s.mu.Unlock()
	return kept
}

// farthest is how many times the true value a wrong number may be. Sums with a mistake can be
// nearly singular, and what they give then fits nothing that was typed.
const farthest = 1e4

// fromSums solves each system for the letter.
func (s *Search) fromSums(v Target, systems []system) []Number {
	var all []Number
	rounds := 0
	if v.Dim == quantity.None {
		rounds = 1 // a coefficient is a quotient of two forces, which were rounded before
	}
	for _, one := range systems {
		// A mistaken system may contradict itself; then it gives no number.
		env, ok := s.p.Samples.SolveSums(one.sums, s.p.Solved.Values)
		if !ok {
			continue
		}
		s.p.Solved.Fill(env, nil)
		if x := env[v.Slot]; s.agree(v, env) && !math.IsNaN(x) && math.Abs(x) < farthest*math.Abs(v.Value)+trial.Same {
			all = append(all, Number{Value: x, Cost: one.cost + one.row.InNumbers, Rounds: rounds, row: one.row})
		}
	}
	return all
}

// costOfLast is what it costs more that a mistake is made in the last equation alone, after the
// others gave what is right.
const costOfLast = 0.5

// fromLastSum solves each sum with a mistake in it for the letter, with all other values right.
func (s *Search) fromLastSum(v Target) []Number {
	if v.Slot >= len(s.p.Solved.Model.Variables) {
		return nil
	}
	var all []Number
	for _, at := range s.p.Solved.Places() {
		for _, c := range s.one(at) {
			if !c.Row.AtLast {
				continue
			}
			if x, ok := s.p.Samples.SolveFor(c.Sum, v.Slot); ok && math.Abs(x) < farthest*math.Abs(v.Value) {
				all = append(all, Number{Value: x, Cost: c.Cost + c.Row.InNumbers + costOfLast, row: c.Row, last: true})
			}
		}
	}
	return all
}

// agree reports whether the sizes that a letter of equal sizes is for are equal still.
func (s *Search) agree(v Target, env []float64) bool {
	for _, e := range s.p.Solved.Equals {
		for _, slot := range e.Slots {
			if e.Name == v.Name && math.Abs(env[slot]-env[e.Slots[0]]) > trial.Felt*math.Abs(env[slot]) {
				return false
			}
		}
	}
	return true
}

// fromRows asks each row what it makes of the value by itself.
func (s *Search) fromRows(v Target) []Number {
	var all []Number
	for _, row := range s.rows {
		if row.Value == nil {
			continue
		}
		for _, n := range row.Value(s.p, v) {
			n.Cost += row.Cost + row.InNumbers
			n.row = row
			all = append(all, n)
		}
	}
	return all
}
