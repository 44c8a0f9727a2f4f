package mistake

import (
	"slices"
	"sync"

	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/trial"
)

// Search explains lines about one problem by the rows of a table. It may be used by several
// goroutines.
type Search struct {
	p    *trial.Problem
	rows []*Row
	Near bool // a sum is explained by what is wrong with it alone

	mu      sync.Mutex
	singles map[solved.Place][]Change
	numbers map[numbersKey][]Number
	systems []system
}

// New makes a search for a problem with the rows of a table.
func New(p *trial.Problem, rows []Row) *Search {
	s := &Search{p: p, singles: map[solved.Place][]Change{}, numbers: map[numbersKey][]Number{}}
	for i := range rows {
		s.rows = append(s.rows, &rows[i])
	}
	// Rows of equal cost stay in the order of the table, which decides between explanations of equal cost.
	slices.SortStableFunc(s.rows, func(a, b *Row) int { return order(a.Cost, b.Cost) })
	return s
}

func order(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// Rows returns the rows of a code; the one that says what the code means comes first.
func (s *Search) Rows(code Code) []*Row {
	var all []*Row
	for _, row := range s.rows {
		switch {
		case row.Code == code && row.Meaning != "":
			all = slices.Insert(all, 0, row)
		case row.Code == code:
			all = append(all, row)
		}
	}
	return all
}

func finding(row *Row, about ...string) Finding {
	f := Finding{Code: row.Code, Row: row, All: about}
	if len(about) == 1 {
		f.About = about[0]
	}
	return f
}

// named finds something by its code alone, where no row made a change.
func (s *Search) named(code Code, about ...string) Finding {
	f := Finding{Code: code, All: about}
	if rows := s.Rows(code); len(rows) > 0 {
		f.Row = rows[0]
	}
	if len(about) == 1 {
		f.About = about[0]
	}
	return f
}

// The body has another weight, or none at all; it has no friction.
const (
	NotStrange StrangeForce = iota
	SecondWeight
	NoWeightHere
	NoFrictionHere
)

// StrangeForce is what is found of a line with a force that the problem does not have.
func (s *Search) StrangeForce(is StrangeForce, name string) Finding {
	if row := s.firstRow(func(r *Row) bool { return r.Strange == is }); row != nil {
		return Finding{Code: row.Code, Row: row, All: []string{name}}
	}
	return s.named(ExtraForce)
}

// NoCoefficient is what is found of a line with a coefficient of friction that the problem lacks.
func (s *Search) NoCoefficient(friction string) Finding {
	if row := s.firstRow(func(r *Row) bool { return r.NoLetter }); row != nil {
		return finding(row, friction)
	}
	return s.named(LimitAssumed, friction)
}

// firstRow returns the cheapest row of which something holds, nil for none.
func (s *Search) firstRow(holds func(*Row) bool) *Row {
	at := slices.IndexFunc(s.rows, holds)
	if at < 0 {
		return nil
	}
	return s.rows[at]
}

// Mistyped is what is found of a line that has another number in the place of a given value.
func (s *Search) Mistyped() Finding {
	for _, row := range s.rows {
		if row.OfGiven {
			return finding(row)
		}
	}
	return s.named(Slip)
}

// system is every sum of a problem, with a mistake in it.
type system struct {
	row   *Row
	at    solved.Place
	all   bool // the mistake is in every sum, not in the one at this place
	cost  float64
	about []string
	sums  []solved.Sum
}

// How many mistakes a number may come from, and how well it must fit. The more numbers there
// are to choose from, the more of them fit by chance.
type mistakes uint8

type numbersKey struct {
	name string
	mistakes
}

const (
	one mistakes = iota
	two
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
		// A student who takes sine for cosine as a rule does so in all terms, and pairs of changes
		// would not reach three.
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
		ways := row.Term(s.p, at, w[i])
		var about []string
		for _, t := range ways {
			// Nearly all ways are dropped again, and nobody writes into a list of forces, so
			// those about the same force share one.
			if about == nil || about[0] != t.Force.Name {
				about = []string{t.Force.Name}
			}
			scratch[i] = t
			f(Change{Row: row, Cost: row.Cost, About: about, Sum: scratch, seen: row.Seen})
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
	// In one term it is the change that eachTerm has made, for less.
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
		// The same mistake twice is likelier than two different ones.
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
