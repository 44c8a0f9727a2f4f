package views

import (
	"slices"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
)

// Past is an earlier stage, to be read, with its drawing.
type Past struct {
	*Lesson
	Of      checker.Stage
	Top     int
	Beneath Sheet
}

// Under is that of the work.
func (p Past) Under(s *Screen, cols, rows int) []frame.Row { return under(p.Beneath, s, cols, rows) }

// Body has the drawing at the left at any width.
func (p Past) Body(s *Screen, cols, rows int) ([]frame.Row, frame.Seen) {
	left := drawingBeside(cols, rows)
	v := picture.View{Stage: p.Of}
	if p.Of == checker.Diagram || p.Of == checker.Solve {
		v = picture.View{Solved: p.Of == checker.Solve && !p.Open}
	}
	right := []frame.Row{s.Look.Rule(cols-left-2, saidPast(slices.Index(checker.Stages, p.Of)+1, tutor.Title(p.Of)), "")}
	shown, seen := frame.Window(p.stageRows(s.Pen, cols-left-2), p.Top, rows-1)
	right = append(right, shown...)
	return frame.Columns(s.Paint(picture.OfProblem(p.Ref, v), left, rows), left+1, frame.Indented(right)), seen
}

func (p Past) stageRows(pen *Pen, cols int) []frame.Row {
	var rows []frame.Row
	if p.Of == checker.Components {
		rows = append(p.components(pen, cols), nil)
	}
	for _, line := range p.of(p.Of) {
		rows = append(rows, pen.pageLine(line, "", cols)...)
	}
	if rows == nil {
		return pen.Look.Rows(frame.Quiet, saidNothingWritten, cols)
	}
	return rows
}
