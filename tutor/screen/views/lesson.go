package views

import (
	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
)

// Lesson is what the lesson in hand comes to, found out once after each change and not once
// for each screen.
type Lesson struct {
	Version    int // of everything that is drawn from the lesson
	Ask        tutor.Ask
	Open       bool // something is asked
	Over       bool
	CanDispute bool
	Stages     [5]StageState
	Progress   tutor.Progress
	Done       string // what is said once nothing is asked

	Ref        *checker.Reference
	Problem    string                // stands for the problem with its numbers
	Setup      func() *picture.Setup // what the text describes; nil where it is not to be shown
	Statement  string
	Givens     []tutor.Given
	Wanted     []string
	Lines      []tutor.Line
	Components []tutor.Item // the components
	Unknowns   []tutor.Item // what is found in Solve
}

// StageState is how far a stage has come.
type StageState struct {
	Nothing  bool // is asked in this problem
	Done     bool
	Disputed bool // an item of it stands on a line that is disputed
}

// Stage is the one in hand; the last once nothing is open.
func (l *Lesson) Stage() checker.Stage {
	if l.Open {
		return l.Ask.Stage
	}
	return checker.Solve
}

// Choosing reports whether the student is at the force diagram.
func (l *Lesson) Choosing() bool { return l.Open && l.Stage() == checker.Diagram }

// of lists the lines of a stage.
func (l *Lesson) of(stage checker.Stage) []*tutor.Line {
	var lines []*tutor.Line
	for i := range l.Lines {
		if l.Lines[i].TypedIn == stage {
			lines = append(lines, &l.Lines[i])
		}
	}
	return lines
}

// Reading is how the line is read: in one text, and stacked where it is a formula.
type Reading struct {
	Echo    string
	Formula []frame.Block
}

// Rows show how the line is read: with stacked fractions where these fit, else
// as one line that is broken where it must be.
func (r Reading) Rows(p *Pen, stage checker.Stage, width, most int) []frame.Row {
	var out []frame.Row
	lines, wide := p.Look.SideBySide(r.Formula)
	// A stacked formula cannot be broken.
	if lines == nil || len(lines) > most || wide > width {
		lines = p.Look.Wrap(p.Flat(stage, r.Echo), width)
	}
	for _, l := range lines {
		out = append(out, p.Tint(frame.Plain, l, false))
	}
	return out
}
