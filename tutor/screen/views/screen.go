package views

import "example.org/standstill/tutor/screen/frame"

// The least screen on which a lesson can be led, the width from which the drawing stands
// beside page and line, and the height below which there is none in Forces.
const (
	LeastCols = 60
	LeastRows = 16
	WideCols  = 110
	LowRows   = 20
)

// Screen is all that is seen at once, and nothing else.
type Screen struct {
	*Pen
	Memos      *Memos
	Cols, Rows int

	Title, Right string // of the first row
	Rope         Rope
	Question     string
	Line         frame.ShownLine
	Command      *string // what the command that stands in the line does; nil for none
	Told         Told    // about the line that was checked last
	Note         Note    // what was said since
	Figure       *Figure
	Wide         bool // the drawing stands beside page and line, where there is room
	Sheet        Sheet
	Keys         []frame.Binding
	Stay         []string      // the keys that give way to none
	Scroll       frame.Binding // the key that is named only where there is more than fits
}

// Sheet is what lies on the page's place.
type Sheet interface {
	// Body fills the places of the drawing and the page, and says how much was seen of what
	// can be scrolled.
	Body(s *Screen, cols, rows int) ([]frame.Row, frame.Seen)
	// Under fills the rows under the line.
	Under(s *Screen, cols, rows int) []frame.Row
}

// Draw fills the screen: head, sheet, line, keys, exactly as many rows as there are.
func (s *Screen) Draw() ([]frame.Row, frame.Seen) {
	rows := []frame.Row{s.head(), s.Rope.row(s.Look, s.Cols)}
	room := s.Rows - len(rows) - keyRows
	var middle []frame.Row
	var seen frame.Seen
	if left := s.drawingCols(room); left > 0 {
		middle, seen = s.middle(s.Cols-left-2, room)
		middle = frame.Columns(s.Drawing(left, room), left+1, frame.Indented(middle))
	} else {
		middle, seen = s.middle(s.Cols, room)
	}
	rows = append(append(rows, middle...), s.keyRow(seen)...)
	for i := range rows {
		// A row that is too long would wrap, and move everything below it by one.
		rows[i] = rows[i].Cut(s.Cols)
	}
	return rows[:s.Rows], seen
}

// leastBody is how many rows of the sheet stay, however much is asked and said.
const leastBody = 5

// middle is what lies between head and keys in a width: the sheet's own part, and the line
// under it.
func (s *Screen) middle(cols, rows int) ([]frame.Row, frame.Seen) {
	// First what is asked and typed; the sheet has what is left.
	bottom := s.bottom(cols, rows-leastBody)
	room := max(rows-len(bottom), 1)
	body, seen := s.Sheet.Body(s, cols, room)
	return append(frame.Fill(body, room), bottom...), seen
}

// drawingCols is the width of the drawing that stands beside page and line on a wide
// screen, 0 where there is none.
func (s *Screen) drawingCols(rows int) int {
	if s.Cols < WideCols || !s.Wide {
		return 0
	}
	return drawingBeside(s.Cols, rows)
}
