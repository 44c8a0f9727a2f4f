package mistake

import (
	"slices"

	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/trial"
)

// What makes an explanation cost more than its mistakes do by themselves. A term that is seen
// in the line as the mistake makes it is good evidence; that the equation is true where the
// mistaken sum is zero, with other terms, is much weaker.
const (
	costOfPair   = 2     // a second mistake in the same sum
	costOfForce  = 0.1   // each further force with the same mistake
	costOfTwin   = 0.001 // the terms agree in number, but not letter by letter: T1 is not T2
	costOfAll    = 0.8   // all terms at once, where one would do
	costOfTurned = 0.7   // every sign the other way round, seen against the axis
	costOfApart  = 4.5   // none of the terms is seen
	mostCost     = 7.5   // beyond this, the evidence is too thin to say anything
)

// one returns every sum that one mistake makes of the right one. They are made when first
// asked for.
func (s *Search) one(at solved.Place) []Change {
	s.mu.Lock()
	defer s.mu.Unlock()
	if made, ok := s.singles[at]; ok {
		return made
	}
	all := s.changed(at, s.p.Solved.SumOf(at.Body, at.Axis), s.rows, true)
	s.singles[at] = all
	return all
}

// changed applies rows to a sum; whole says that they may change it as a whole, too.
func (s *Search) changed(at solved.Place, w solved.Sum, rows []*Row, whole bool) []Change {
	var all []Change
	scratch := slices.Clone(w)
	for _, row := range rows {
		s.eachTerm(at, w, scratch, row, func(c Change) {
			c.Sum = slices.Clone(c.Sum)
			all = append(all, c)
		})
		if !whole {
			continue
		}
		if row.AllTerms {
			all = append(all, s.everyTerm(row, at, w)...)
		}
		if row.Sum != nil {
			for _, c := range row.Sum(s.p, at, w) {
				c.Row, c.Cost, c.seen = row, c.Cost+row.Cost, row.Seen
				all = append(all, c)
			}
		}
	}
	return all
}

// eachTerm calls f with every way in which a mistake can change one term. The sum that f gets
// is scratch, a copy of w, each time; who keeps it copies it.
func (s *Search) eachTerm(at solved.Place, w, scratch solved.Sum, row *Row, f func(Change)) {
	if row.Term == nil {
		return
	}
	for i := range w {
		for _, t := range row.Term(s.p, at, w[i]) {
			scratch[i] = t
			f(Change{Row: row, Cost: row.Cost, About: []string{t.Force.Name}, Sum: scratch, seen: row.Seen})
		}
		scratch[i] = w[i]
	}
}

// everyTerm makes one mistake with all terms that it can change, where there are several.
func (s *Search) everyTerm(row *Row, at solved.Place, w solved.Sum) []Change {
	c := Change{Row: row, Cost: row.Cost + costOfAll, Sum: slices.Clone(w)}
	for i := range w {
		if ways := row.Term(s.p, at, w[i]); len(ways) > 0 {
			c.Sum[i] = ways[0]
			c.About = append(c.About, w[i].Force.Name)
		}
	}
	if len(c.About) < 2 {
		return nil
	}
	return []Change{c}
}

func (r *Row) shows(f trial.Form, forces int) bool { return r.Shows == nil || r.Shows(f, forces) }

// both puts two mistakes together: it is told as the cheaper one, about all the forces that
// the two changed if they are the same mistake.
func both(first, second Change) Change {
	c := Change{Row: first.Row, Cost: first.Cost + second.Cost + costOfPair, About: first.About, Sum: second.Sum, seen: first.seen || second.seen}
	c.second = &second
	switch {
	case first.Row.Code == second.Row.Code:
		c.About = slices.Clone(first.About)
		for _, name := range second.About {
			if !slices.Contains(c.About, name) {
				c.About = append(c.About, name)
			}
		}
		c.Cost -= costOfPair / 2
	case second.Row.tells() < first.Row.tells():
		c.Row, c.About, c.second = second.Row, second.About, &first
	}
	return c
}

func (r *Row) tells() float64 {
	if r.Tells != 0 {
		return r.Tells
	}
	return r.Cost
}

// cheapest picks the explanation, if there is one that is cheap enough. Where several of the same mistake cost the same, the force is
// left open unless they agree on it.
func cheapest(found []Change) (f Finding, ok bool) {
	if len(found) == 0 {
		return Finding{}, false
	}
	best := found[0]
	for _, c := range found[1:] {
		if c.Cost < best.Cost-hair {
			best = c
		}
	}
	if best.Cost > mostCost {
		return Finding{}, false
	}
	f = Finding{Code: best.Row.Code, Row: best.Row, All: slices.Clone(best.About)}
	for _, c := range found {
		if c.Row.Code != best.Row.Code || c.Cost > best.Cost+hair || len(c.About) != len(best.About) {
			continue
		}
		for _, name := range c.About {
			if !slices.Contains(f.All, name) {
				f.All = append(f.All, name)
			}
		}
	}
	if len(f.All) == 1 {
		f.About = f.All[0]
	}
	return f, true
}

// hair is the difference between two costs that says nothing.
const hair = 1e-9
