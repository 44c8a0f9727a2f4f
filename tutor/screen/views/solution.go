package views

import (
	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
)

// Solution is the worked solution beside the student's own page.
type Solution struct {
	*Lesson
	Worked  []tutor.Step
	Next    string // why which problem is next; "" where none is
	Top     int
	Beneath Sheet
}

// Under is why the next problem is advised; where something is typed, how it is read.
func (n Solution) Under(s *Screen, cols, rows int) []frame.Row {
	switch {
	// Whoever types sees how it is read, and not what comes next.
	case !s.Line.IsEmpty():
		return under(n.Beneath, s, cols, rows)
	case n.Next == "":
		return nil
	}
	return s.LabelledText(wordNext, n.Next, cols)
}

// Body has the drawing at the left where there is room.
func (n Solution) Body(s *Screen, cols, rows int) ([]frame.Row, frame.Seen) {
	if s.Cols < WideCols {
		return n.pages(s.Pen, cols, rows)
	}
	left := cols * 30 / 100
	pages, seen := n.pages(s.Pen, cols-left-1, rows)
	return frame.Columns(s.Drawing(left, rows), left+1, pages), seen
}

// pages puts the student's page and the worked one side by side.
func (n Solution) pages(p *Pen, cols, rows int) ([]frame.Row, frame.Seen) {
	left := cols / 2
	right := cols - left - 2
	heads := frame.Columns([]frame.Row{p.Look.Rule(left-1, wordStands, "")}, left+1, []frame.Row{p.Look.Rule(right, WordSolution, "")})
	both := frame.Columns(n.status(p, left-1), left+1, n.worked(p, right))
	shown, seen := frame.Window(both, n.Top, rows-1)
	return append(heads, shown...), seen
}

// status is what counts of the page, to be compared line by line.
func (n Solution) status(p *Pen, cols int) []frame.Row {
	var rows []frame.Row
	for _, stage := range checker.Stages {
		rows = append(rows, p.Look.Row(frame.Bold, tutor.Title(stage)))
		for i := range n.Lines {
			line := &n.Lines[i]
			for at, one := range line.Statements() {
				// Wrong lines and hints would push the two pages apart.
				if line.Kind == tutor.Typed && one.Stage == stage && counts(line, one) {
					rows = append(rows, p.statement(line, at, "", cols)...)
				}
			}
		}
	}
	return rows
}

func (n Solution) worked(p *Pen, cols int) []frame.Row {
	var rows []frame.Row
	for _, step := range n.Worked {
		rows = append(rows, p.Look.Row(frame.Bold, step.Title))
		for _, line := range step.Lines {
			for _, part := range p.Look.Wrap(line, cols-2) {
				rows = append(rows, append(frame.Row{frame.Gap(2)}, p.Tint(frame.Plain, part, true)...))
			}
		}
	}
	return rows
}

// Reveal is the work, while it is asked whether the solution is to be shown.
type Reveal struct{ Work }

// Under is empty.
func (Reveal) Under(*Screen, int, int) []frame.Row { return nil }
