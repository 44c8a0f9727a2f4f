package views

import "example.org/standstill/tutor/screen/frame"

// Students lists who has practised here.
type Students struct {
	All     []Student
	At, Top int
	Note    string // who sees what is written
}

// Student is one of them; Here says that the place is theirs.
type Student struct {
	Name string
	Here bool
}

// Under is who sees what is written.
func (n Students) Under(s *Screen, cols, rows int) []frame.Row {
	return s.LabelledText(wordNote, n.Note, cols)
}

// Body has the picked student in sight.
func (n Students) Body(s *Screen, cols, rows int) ([]frame.Row, frame.Seen) {
	return s.BesideDrawing(cols, rows, func(cols, rows int) ([]frame.Row, frame.Seen) {
		var list []frame.Row
		for i, one := range n.All {
			r := frame.Row{s.Look.Text(frame.Plain, one.Name)}
			if one.Here {
				r = append(r, s.Look.Text(frame.Quiet, "  "+saidHere))
			}
			list = append(list, s.Picked(i == n.At && s.Line.IsEmpty(), r))
		}
		shown, seen := frame.Window(list, frame.Follow(n.Top, n.At, rows-1), rows-1)
		return append([]frame.Row{s.Look.Rule(cols, wordStudents, "")}, shown...), seen
	})
}
