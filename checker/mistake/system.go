package mistake

import (
	"slices"

	"example.org/standstill/checker/solved"
)

// costEverywhere is what it costs more that a mistake is made in every sum at once: the one
// place that is looked at explains a line better.
const costEverywhere = 0.3

// index is a place's position among all sums.
func index(at solved.Place) int { return 2*at.Body + int(at.Axis) }

func (s *Search) with(at solved.Place, c Change) system {
	sums := slices.Clone(s.p.Solved.Sums)
	sums[index(at)] = c.Sum
	return system{row: c.Row, at: at, cost: c.Cost, about: c.About, sums: sums}
}

// oneMistake lists the systems with one mistake, made in one sum or in all of them. They are
// made when first asked for.
func (s *Search) oneMistake() []system {
	s.mu.Lock()
	made := s.systems
	s.mu.Unlock()
	if made != nil {
		return made
	}
	// Not under the lock, which one takes as well. If two goroutines get here, both make the same.
	for _, at := range s.p.Solved.Places() {
		for _, c := range s.one(at) {
			if !c.Row.Alone && !c.Row.NotInSums {
				made = append(made, s.with(at, c))
			}
		}
	}
	for _, row := range s.rows {
		if row.Everywhere {
			made = append(made, s.everywhere(row))
		}
	}
	s.mu.Lock()
	s.systems = made
	s.mu.Unlock()
	return made
}

// everywhere makes one mistake in every sum, wherever it can be made.
func (s *Search) everywhere(row *Row) system {
	made := system{row: row, all: true, cost: row.Cost + costEverywhere}
	for _, at := range s.p.Solved.Places() {
		w := slices.Clone(s.p.Solved.SumOf(at.Body, at.Axis))
		for i := range w {
			if ways := row.Term(s.p, at, w[i]); len(ways) > 0 {
				w[i] = ways[0]
			}
		}
		made.sums = append(made.sums, w)
	}
	return made
}

// costOfCommon is up to where a mistake is common enough to be made twice on the way to a
// number; with all of them, some pair would give nearly any number.
const costOfCommon = 1.85

// twoMistakes lists the systems with two common mistakes, in one sum or in two.
func (s *Search) twoMistakes() []system {
	var common []*Row
	for _, row := range s.rows {
		if row.Term != nil && row.Cost <= costOfCommon && !row.Alone && !row.NotInSums {
			common = append(common, row)
		}
	}
	var all []system
	places := s.p.Solved.Places()
	for p, at := range places {
		for _, first := range s.changed(at, s.p.Solved.SumOf(at.Body, at.Axis), common, false) {
			for _, second := range s.changed(at, first.Sum, common, false) {
				// Each pair once, the cheaper mistake first.
				if second.Row.Cost >= first.Row.Cost {
					all = append(all, s.with(at, both(first, second)))
				}
			}
			one := s.with(at, first)
			for _, other := range places[p+1:] {
				for _, second := range s.changed(other, s.p.Solved.SumOf(other.Body, other.Axis), common, false) {
					pair := both(first, second)
					// Two sums spoilt at once are less likely than two mistakes in one.
					pair.Cost += costOfPair / 2
					two := system{row: pair.Row, at: at, cost: pair.Cost, about: pair.About, sums: slices.Clone(one.sums)}
					two.sums[index(other)] = second.Sum
					all = append(all, two)
				}
			}
		}
	}
	return all
}
