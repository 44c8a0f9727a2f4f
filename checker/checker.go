// Package checker knows whether a line of a student's reasoning is right, and if
// it is not, why. The rooms below it know one thing each; it puts them together.
//
// Start with New, which makes a Reference of a system, and Reference.Mark. How a
// line is judged:
//
//	text.go, lines/   a text and the lines in it
//	mark.go           one line: its readings, its stage; marking is one reading of it
//	components.go, sums.go, solve.go, value.go, diagram.go   the stages
//	true.go, stranger.go, coined.go, strict.go   lines that are true elsewhere, with letters of their own, under a class's rules
//	trial/            where a line is tried, and whether it holds there
//	mistake/          the table of mistakes, and which of them gives what was typed
//	say.go, hints.go, wording/   what is said of a line
//	worked.go, derivation/       the worked solution
//	solved/           the system with its solution, letters and units, which all of them know
//
// The package is pure: text and reference in, report out. It keeps no clock, no
// randomness, no files and no goroutines, and it always ends.
package checker

import (
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
	"example.org/standstill/checker/trial"
)

// Version names the rules of judgement. It changes with every change of a
// verdict, so that a cache of verdicts can be thrown away.
const Version = "3"

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

// Verdict is what is said of a line.
type Verdict string

// The verdicts. Almost is right but for its form; Unread counts no attempt.
const (
	Right  Verdict = "right"
	Almost Verdict = "almost"
	Wrong  Verdict = "wrong"
	Unread Verdict = "unread"
)

// Answer is one typed line. Item names what it is about where the stage has
// several items (a component "T1x", a body, an unknown); it may be empty.
type Answer struct {
	Stage Stage  `json:"stage"`
	Item  string `json:"item,omitempty"`
	Text  string `json:"answer"`
}

// Report is the judgement of one line. Code and About are set with Wrong and
// Almost, Settles (never nil for a right line) in the stage Solve. Pos and End
// are rune offsets into the typed text as [lines.Clean] leaves it, for Unread and Wrong
// lines; Item is the item that the line was taken for, Stage the stage that it was judged
// for. Text is the line alone, as it was judged, and From and To are where it stands in
// the typed text. Answers lists the items that it is an answer to, right or wrong, Void
// those of them that another line of the same text answers otherwise, so that none is
// settled. AsSize is what is said of a right component whose sign was left out. Concludes
// says that the line was said to follow from the one before it. Working lists the unknowns
// that a right line of the stage Solve says something of beyond their value. Each holds the reports of
// a text with several lines.
type Report struct {
	Verdict  Verdict
	Code     Code
	About    string
	Item     string
	Read     string
	Message  string
	Settles  []string
	Pos, End int
	Stage    Stage
	Text     string
	From, To int
	Answers  []string
	Void     []string

	row       *mistake.Row // the mistake, where a row of the table explains it
	AsSize    string
	Concludes bool
	Working   []string
	Each      []Report
}

// Reference is a solved system, ready to judge lines. It may be used by several
// goroutines. The model inside is in the problem's own units (units.go), as a
// student's bare numbers are; Value is in SI.
type Reference struct {
	*statics.System
	solved   *solved.System
	trial    *trial.Problem
	mistakes *mistake.Search
	si       *Reference // the same in SI, where own is not
	Watched  []Own      // the author's own mistakes
	share    float64    // how far a value may be off, as a share of it
	rules    Rules      // what a teacher asks beyond
}

// New solves the system and makes a reference of it. The errors are those of
// package statics.
func New(s *statics.System) (*Reference, error) {
	r, err := solve(s, solved.Units{Force: 1, Length: 1})
	if err != nil {
		return nil, err
	}
	if own := solved.UnitsOf(r.solved); !own.AreSI() {
		si := r
		if r, err = solve(s, own); err != nil {
			return nil, err
		}
		r.si = si
	}
	return r, nil
}

func solve(s *statics.System, own solved.Units) (*Reference, error) {
	model, err := statics.Compile(own.System(s))
	if err != nil {
		return nil, err
	}
	solution, err := model.Solve(model.Environment())
	if err != nil {
		return nil, err
	}
	return newReference(model, solution, own), nil
}

// Has reports whether a letter is one of the problem's.
func (r *Reference) Has(name string) bool { return r.solved.Has(name) }

// Variable returns a letter of the problem.
func (r *Reference) Variable(name string) (statics.Variable, bool) { return r.solved.Variable(name) }

// Variables lists the letters of the problem: givens, unknowns, and what follows from them.
func (r *Reference) Variables() []statics.Variable { return r.solved.Variables }

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
	reading, err := r.solved.LettersFor(item).Read(text)
	if err != nil {
		return "", false
	}
	sides := reading.Lines[0].Sides
	if len(sides) != 1 || sides[0].Op != expr.Name || sides[0].Unknown {
		return "", false
	}
	return sides[0].Name, true
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

func newReference(m *statics.Model, solution []float64, own solved.Units) *Reference {
	p := trial.NewProblem(solved.New(m, solution, own))
	return &Reference{System: m.System, solved: p.Solved, trial: p, mistakes: mistake.New(p, mistake.Table()), share: trial.RoundedShare}
}
