// Package mistake knows the mistakes that students make, and which of them explains a line.
//
// A mistake is one Row of the table, and the row is the only place that knows it: what it
// does to a term, to a whole sum, to a typed tree or to a value, how likely it is, and
// everything that is said about it.
//
//	mistake.go, codes.go                         a row, what is found, and the names, which are a contract
//	resolving.go, forces.go, sizes.go, numbers.go, form.go   the rows; table.go puts them together
//	search.go, system.go                         what is tried: one change of a sum or of all sums, then two
//	matching.go                                  which of the changes give the line, and what that costs
//	component.go, sum.go, working.go, value.go   the four kinds of evidence
//
// An explanation costs the more, the less likely its mistakes are and the worse they fit what
// was typed; the cheapest is told. Where nothing fits, nothing is guessed.
package mistake

import (
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
	"example.org/standstill/checker/trial"
	"example.org/standstill/checker/wording"
)

// Row is one mistake. To add one, add a row to one of the tables. A row is found by one of its
// functions, by one of the flags Strange, NoLetter and OfGiven, or by its code alone; a code has
// one row with a Meaning, and may have others that are told in other words. TestTable says which
// fields may stand together.
type Row struct {
	Code    Code
	Meaning string // in a teacher's words, as in "sine and cosine swapped"

	// Cost is minus the logarithm of how likely the mistake is before anything is seen, but
	// for a constant. Among equal evidence the lower one wins.
	Cost      float64
	InNumbers float64 // what it costs more where only the number that comes out is seen
	Tells     float64 // in a pair, the mistake that tells less is told; its Cost where this is 0

	// A component, a sum and the numbers that follow from sums are tried with Term and Sum.

	// Term gives the ways in which the mistake changes one term of a sum.
	Term func(p *trial.Problem, at solved.Place, t solved.Term) []solved.Term
	// Sum gives the ways in which it changes a sum as a whole.
	Sum func(p *trial.Problem, at solved.Place, w solved.Sum) []Change
	// Shows reports whether a line of that form, with the mistake made in so many forces, can
	// show it at all; nil for any line.
	Shows func(f trial.Form, forces int) bool

	AllTerms   bool // Term is also applied to all the terms of a sum that it can change
	Everywhere bool // Term is also applied in every sum at once
	Alone      bool // it is tried by itself only, in a sum as it was typed
	AtLast     bool // it is often made in the last equation, after the others gave what is right
	NotInSums  bool // a changed sum with it is not solved for its numbers
	OfSums     bool // only a sum can show it, where an axis is asked; no line of working is told so
	Seen       bool // it is told only where the line has the terms that it makes
	SameZero   bool // a sum with it may be zero just where the right one is, as for equal angles
	Signed     bool // in a component it is seen in the sign alone, which a size does not show

	// A sum or a line of working is tried with Line, a line of working with Tree, too.

	// Line reports whether the equation shows the mistake by itself, and with which forces.
	Line func(p *trial.Problem, e *trial.Equation) (about []string, ok bool)
	// LineLast says that Line is asked only where nothing else explains the line.
	LineLast bool
	// Tree gives the ways in which a node of a typed line may be changed to undo the mistake.
	Tree func(p *trial.Problem, n *expr.Node) []*expr.Node

	// A value is tried with Value and Digits.

	// Value gives the numbers that the mistake makes of a value.
	Value func(p *trial.Problem, v Target) []Number
	// Formula reports whether a formula for a letter can show the mistake by its value; nil for any.
	Formula func(n *expr.Node) bool
	// Digits reports whether a number is the right one but for its digits.
	Digits     func(v Target, typed float64) bool
	DigitsCost float64 // what that costs

	// What the checker finds without a trial.

	Strange  StrangeForce // what is odd about a force that the problem does not have
	NoLetter bool         // the line has a letter that the problem lacks
	OfGiven  bool         // a given value is typed otherwise

	// What the code says of a line; asked of the row that has its Meaning.

	Open      bool // nothing is named: the line is wrong and no mistake is found; of a value, it may be asked of any row
	Passing   bool // it is no habit: whoever makes it twice is not making the same mistake again
	OfKind    bool // which kind of force it is decides what is wrong, and the rule is that kind's
	OtherList bool // in a force diagram it is another mistake than in an equation
	UnitOnly  bool // the number is right, and only its unit is not
	Elsewhere bool // the line is true and is kept, though something else was asked
	OfAxis    bool // a line for the other axis looks like it
	OfValue   bool // a side alone is taken for the value of what is asked
	Absent    bool // its force is one that the line does not speak of

	// What is said.

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
	// Used is the sum with the mistake, where the line is about another one and only uses what
	// follows from it; nil where it is the sum that was asked for.
	Used *solved.Place
	Row  *Row
}

// Change is a sum after a mistake, or after two. About names the forces that were changed.
type Change struct {
	Row      *Row
	Cost     float64
	About    []string
	Sum      solved.Sum
	second   *Change       // of a pair, the mistake that is not told
	seen     bool          // one of its mistakes must be seen in the line
	unspoken bool          // it is about a force of which the line does not speak
	used     *solved.Place // the one sum of all that has the mistake
}

// Target is a value that a line states: its letter, and the true value in the problem's own
// units. Force is nil for what is no force's size.
type Target struct {
	Name  string
	Slot  int
	Value float64
	Dim   quantity.Dimension
	Force *statics.Force
}

// Typed is a value as it was typed, in the problem's own units: Half is half of its last place,
// Figures how many figures it has, zeros at its end not counted.
type Typed struct {
	Value, Half float64
	Figures     int
}

// Number is what a mistake makes of a value. Cost is what it costs more or less than its row's;
// What says what the number is, as in "half the weight", where that is more than the mistake.
type Number struct {
	Value  float64
	Cost   float64
	What   string
	Answer bool // it is the value of another unknown
	Shown  bool // it can be read off the problem or its answers
	Rounds int  // how many numbers were rounded on the way to it, each to the places that were typed
	last   bool // the mistake is in the last equation alone
	row    *Row
}

// hair is the difference between two costs that says nothing.
const hair = 1e-9

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
	mostCost     = 7.5   // beyond this, the evidence of a sum or a line of working is too thin to say anything
)

// StrangeForce is what is odd about a force that the problem does not have.
type StrangeForce uint8
