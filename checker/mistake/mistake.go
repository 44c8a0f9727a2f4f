// Package mistake knows the mistakes that students make, and which of them explains a line.
//
// A mistake is one Row of the table, and the row is the only place that knows it: what it
// does to a term, to a whole sum, to a typed tree or to a value, how likely it is, and
// everything that is said about it.
//
//	codes.go                                     the names of mistakes, which are a contract
//	resolving.go, forces.go, sizes.go, numbers.go, form.go   the table
//	search.go                                    what is tried: one change, then two
//	component.go, sum.go, working.go, value.go   the four kinds of evidence
//	system.go                                    all the sums at once, with a change
//
// An explanation costs the more, the less likely its mistakes are and the worse they fit what
// was typed; the cheapest is told. Where nothing fits, nothing is guessed.
package mistake

import (
	"slices"
	"sync"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/trial"
	"example.org/standstill/checker/wording"
)

// Row is one mistake. Any of the functions that say what it does may be nil. To add a
// mistake, add a row to one of the tables.
type Row struct {
	Code    Code
	Meaning string // in a teacher's words, as in "sine and cosine exchanged"

	// Cost is minus the logarithm of how likely the mistake is before anything is seen, but
	// for a constant. Among equal evidence the lower one wins.
	Cost float64

	// InNumbers is what it costs more where only the number that comes out is seen.
	InNumbers float64

	// Term gives the ways in which the mistake changes one term of a sum.
	Term func(p *trial.Problem, at solved.Place, t solved.Term) []solved.Term
	// Sum gives the ways in which it changes a sum as a whole.
	Sum func(p *trial.Problem, at solved.Place, w solved.Sum) []Change
	// Tree gives the ways in which a node of a typed line may be changed to undo the mistake.
	Tree func(p *trial.Problem, n *expr.Node) []*expr.Node
	// Line reports whether the equation shows the mistake by itself, and with which forces.
	Line func(p *trial.Problem, e *trial.Equation) (about []string, ok bool)
	// Value gives the numbers that the mistake makes of a value.
	Value func(p *trial.Problem, v Target) []Number
	// Formula reports whether a formula for a letter can show the mistake by its value; nil for any.
	Formula func(n *expr.Node) bool
	// Digits reports whether a number is the right one but for its digits.
	Digits func(v Target, typed float64) bool
	// DigitsCost is what that costs.
	DigitsCost float64

	AllTerms   bool    // it is also made in all the terms of a sum that it can change
	Everywhere bool    // it is also made in every sum at once
	Alone      bool    // it is tried by itself only, in a sum as it was typed
	AtLast     bool    // it is often made in the last equation, after the others gave what is right
	NotInSums  bool    // a changed sum with it is not solved for its numbers
	Tells      float64 // in a pair, the mistake that tells less is told; its Cost where this is 0
	Absent     bool    // its force is one that the line does not speak of
	Seen       bool    // it is told only where the line has the terms that it makes
	OfGiven    bool    // a given value is typed otherwise
	SameZero   bool    // a sum with it may be zero just where the right one is, as for equal angles

	// Shows reports whether a line of that form, with the mistake made in so many forces, can
	// show it at all; nil for any line.
	Shows func(f trial.Form, forces int) bool

	Said  Said
	Hints []Hint
}

// The words of a row, as package wording takes them.
type (
	Said = wording.Said
	Hint = wording.Hint
	Spot = wording.Spot
)

// The spots that a hint is about, as package wording has them.
const (
	OnComponent = wording.OnComponent
	OnSum       = wording.OnSum
	OnLine      = wording.OnLine
	OnValue     = wording.OnValue
	OnList      = wording.OnList
	Anywhere    = wording.Anywhere
)

// Finding is what explains a wrong line. About is empty where the evidence does not say which
// force it is; All lists the forces that are concerned; What says what a value is, as in
// "half the weight"; Second says that it takes a second mistake to get the value.
type Finding struct {
	Code   Code
	About  string
	All    []string
	What   string
	Second bool
	// Instead says that a component stands in a force diagram in place of its force.
	Instead bool
	Row     *Row
}

// Change is a sum after a mistake, or after two. About names the forces that were changed.
type Change struct {
	Row      *Row
	Cost     float64
	About    []string
	Sum      solved.Sum
	second   *Change // of a pair, the mistake that is not told
	seen     bool    // one of its mistakes must be seen in the line
	unspoken bool    // it is about a force of which the line does not speak
}

// table holds every row. It is put together once and never changed.
var table = slices.Concat(resolving, forces, sizes, numbers, form)

// Table returns the rows of all mistakes.
func Table() []Row { return slices.Clone(table) }

// Search explains lines about one problem by the rows of a table. It may be used by several
// goroutines.
type Search struct {
	p    *trial.Problem
	rows []*Row

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

// Mistyped is what is found of a line that has another number in the place of a given value.
func (s *Search) Mistyped() Finding {
	for _, row := range s.rows {
		if row.OfGiven {
			return finding(row)
		}
	}
	return s.named(Slip)
}
