package views

import "example.org/standstill/tutor/screen/frame"

// Menu lists what can be done now.
type Menu struct {
	Items   []MenuItem
	At, Top int
	Beneath Sheet // that the menu lies over; nil for none
}

// MenuItem is what can be done, with its key and its word, "" for none.
type MenuItem struct{ Does, Key, Word string }

// Under is that of the sheet beneath.
func (n Menu) Under(s *Screen, cols, rows int) []frame.Row { return under(n.Beneath, s, cols, rows) }

// under is what a sheet puts under the line, nothing where there is none.
func under(sheet Sheet, s *Screen, cols, rows int) []frame.Row {
	if sheet == nil {
		return nil
	}
	return sheet.Under(s, cols, rows)
}

// Body has the picked item in sight.
func (n Menu) Body(s *Screen, cols, rows int) ([]frame.Row, frame.Seen) {
	return s.BesideDrawing(cols, rows, func(cols, rows int) ([]frame.Row, frame.Seen) {
		var list []frame.Row
		for i, item := range n.Items {
			list = append(list, item.row(s.Pen, i == n.At, cols))
		}
		// One row is the rule's.
		shown, seen := frame.Window(list, frame.Follow(n.Top, n.At, rows-1), rows-1)
		head := s.Look.Rule(cols-menuKeys, wordMenu, "").Padded(cols - menuKeys)
		head = append(head, s.Look.Text(frame.Quiet, wordKey)).Padded(cols - menuWords)
		return append([]frame.Row{append(head, s.Look.Text(frame.Quiet, wordWord))}, shown...), seen
	})
}

// Where the keys and the words stand in the menu, from the right.
const (
	menuKeys  = 18
	menuWords = 10
)

func (i MenuItem) row(p *Pen, picked bool, cols int) frame.Row {
	shade := frame.Plain
	if picked {
		shade = frame.Bold
	}
	r := p.Picked(picked, frame.Row{p.Look.Text(shade, i.Does)}).Padded(cols - menuKeys)
	if i.Key != "" {
		r = append(r, p.Look.Text(frame.Quiet, i.Key))
	}
	return append(r.Padded(cols-menuWords), p.Look.Text(frame.Quiet, i.Word))
}
