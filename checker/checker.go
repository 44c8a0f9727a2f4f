// Package checker knows whether a line of a student's reasoning is right, and if
// it is not, why. The rooms below it know one thing each; it puts them together.
//
// Start with New, which makes a Reference of a system, and Reference.Mark. How a
// line is judged:
//
//	mark.go           a text, line by line, and one line: the best is told of its three likeliest readings and one that is right
//	answers.go, own.go                     what a line answers; the mistakes that the author watches for
//	judge.go          one reading: its letters, its numbers, and what it is for its stage
//	mistyped.go, coined.go, unknownletter.go   lines with letters or numbers that are not the problem's
//	true.go, strict.go                     what changes the judgement for a stage
//	components.go, sums.go, solve.go, value.go, digits.go, diagram.go, diagram/   the stages
//	verdict.go, say.go, same.go, wording/  what is said of a line, and when it is the same again
//	marking.go, statement.go, dimension.go, bearing.go, chain.go, withoutvalue.go   what is known of a reading before it is judged
//	text.go, lines/   a text and the lines in it
//	checker.go, report.go, codes.go       the reference, and what is said of an answer
//	hints.go, worked.go, derivation/      hints and the worked solution
//	trial/            where a line is tried, and whether it holds there
//	mistake/          the table of mistakes, and which of them gives what was typed
//	solved/           the system with its solution, letters and units, which all of them know
//
// A file uses those further down in this list, and none further up; but mistyped.go and coined.go
// have a changed line judged by judge.go again.
//
// The package is pure: text and reference in, report out. It keeps no clock, no
// randomness, no files and no goroutines, and it always ends.
package checker

import (
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/memory"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
	"example.org/standstill/checker/trial"
)

// Version names the rules of judgement. It changes with every change of a
// verdict, so that a cache of verdicts can be thrown away.
const Version = "5"

// Stage is one of the five steps of a solution.
type Stage = solved.Stage

// The stages, as package solved has them.
const (
	Diagram    = solved.Diagram
	Components = solved.Components
	XSum       = solved.XSum
	YSum       = solved.YSum
	Solve      = solved.Solve
)

// Stages lists the stages in order.
var Stages = solved.Stages

// Reference is a solved system, ready to judge lines. It may be used by several
// goroutines. The model inside is in the problem's own units (solved/units.go), as a
// student's bare numbers are; Value is in SI.
type Reference struct {
	*statics.System
	solved   *solved.System
	trial    *trial.Problem
	mistakes *mistake.Search
	kin      *Kin
	si       *Reference // the same in SI, where own is not
	Watched  []Own      // the author's own mistakes
	share    float64    // how far a value may be off, as a share of it
	rules    Rules      // what a teacher asks beyond
}

// New solves the system and makes a reference of it. The errors are those of
// package statics.
func New(s *statics.System) (*Reference, error) { return NewOf(&Kin{}, s) }

// Kin is what the references of the copies of one problem share: the letters, and what was
// read in them last. The zero value is ready.
type Kin struct {
	letters solved.Kin
	texts   memory.Latest[wholeText, textLines]
}

// NewOf is New for one of several copies of a problem, which differ in their numbers alone.
func NewOf(kin *Kin, s *statics.System) (*Reference, error) {
	r, err := solve(s, solved.Units{Force: 1, Length: 1}, kin)
	if err != nil {
		return nil, err
	}
	// Solved twice: a student may also answer a problem of kilonewtons in newtons without writing the unit.
	if own := solved.UnitsOf(r.solved); !own.AreSI() {
		si := r
		if r, err = solve(s, own, kin); err != nil {
			return nil, err
		}
		r.si = si
	}
	return r, nil
}

func solve(s *statics.System, own solved.Units, kin *Kin) (*Reference, error) {
	model, err := statics.Compile(own.System(s))
	if err != nil {
		return nil, err
	}
	solution, err := model.Solve(model.Environment())
	if err != nil {
		return nil, err
	}
	return newReference(model, solution, own, kin), nil
}

// Has reports whether a letter is one of the problem's.
func (r *Reference) Has(name string) bool { return r.solved.Model.Has(name) }

// Variable returns a letter of the problem.
func (r *Reference) Variable(name string) (statics.Variable, bool) {
	return r.solved.Model.Variable(name)
}

// Variables lists the letters of the problem: givens, unknowns, and what follows from them.
func (r *Reference) Variables() []statics.Variable { return r.solved.Model.Variables }

// Unit returns the unit in which a letter is asked for.
func (r *Reference) Unit(name string) quantity.Unit { return r.solved.Unit(name) }

// UsualUnit returns the unit in which a dimension is asked for where the file does not say.
func (r *Reference) UsualUnit(dim quantity.Dimension) quantity.Unit { return r.solved.UsualUnit(dim) }

// Value returns a letter's value in SI at the solution.
func (r *Reference) Value(name string) (float64, bool) { return r.solved.InSI(name) }

// Items lists what a stage asks for, in order: one empty item where there is
// only one, else components, bodies or unknowns.
func (r *Reference) Items(stage Stage) []string { return r.solved.Items(stage) }

// LetterOf returns the letter or component that a text names and does no more,
// read as in a line about the item.
func (r *Reference) LetterOf(text, item string) (name string, ok bool) {
	return r.solved.LetterOf(text, item)
}

// Echo reads a half-typed line as far as it goes and prints what was understood.
// It returns an error where nothing sensible can be shown yet.
func (r *Reference) Echo(text, item string) (string, error) {
	letters := r.solved.LettersFor(item)
	reading, err := letters.ReadPart(text)
	if err != nil {
		return "", err
	}
	return letters.Print(reading.Lines[0]), nil
}

// Room returns a force's unit vector in the room, from the solved problem: x to
// the right, y up. The force's line is turned by the body's tilt.
func (r *Reference) Room(body *statics.Body, f *statics.Force) (x, y float64) {
	return r.solved.Room(body, f)
}

// Tilt returns how far a body's x axis is turned, in radians.
func (r *Reference) Tilt(body *statics.Body) float64 { return r.solved.Tilt(body) }

// Print writes a tree of the problem file as a student would see it.
func (r *Reference) Print(n *expr.Node) string { return r.solved.Readers[""].PrintNode(n) }

// Negative reports whether a force's component is against the axis at rest.
func (r *Reference) Negative(f *statics.Force, axis statics.Axis) bool {
	t := solved.TermOf(r.solved.Model, f, axis)
	return t.Value(r.solved.Values) < 0
}

func newReference(m *statics.Model, solution []float64, own solved.Units, kin *Kin) *Reference {
	p := trial.NewProblem(solved.New(m, solution, own, &kin.letters))
	return &Reference{System: m.System, solved: p.Solved, trial: p, kin: kin, mistakes: mistake.New(p, mistake.Table()), share: trial.RoundedShare}
}

// Own is a mistake that the author of a problem watches for: a line that is wrong and
// equal to Typed as algebra, for the same stage and item, is told Say. Item is "" for
// any item; Hints may be empty.
type Own struct {
	Stage      Stage
	Item       string
	Typed, Say string
	Hints      []string
}

// Watching returns a reference that knows these mistakes.
func (r *Reference) Watching(own []Own) *Reference {
	if len(own) == 0 {
		return r
	}
	c := *r
	c.Watched = own
	return &c
}

// Rules are what a teacher asks of a line beyond its being right. The zero value asks
// nothing, and changes no verdict.
type Rules struct {
	Share   float64 // how far a value may be off, as a share of it; 0 for one part in a hundred
	Signs   bool    // a component is written with its sign, its size alone is not enough
	Figures int     // significant figures that a value needs; 0 for two, 1 for any
}

// Under returns a reference that judges by these rules. A correctly rounded value is
// within every share.
func (r *Reference) Under(rules Rules) *Reference {
	c := *r
	c.rules = rules
	if rules.Share > 0 {
		c.share = rules.Share
	}
	if r.si != nil {
		c.si = r.si.Under(rules)
	}
	return &c
}
