package views

import (
	"strings"

	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
)

// Figure is the drawing of what is in hand. Key stands for all that it depends on.
type Figure struct {
	Key   FigureKey
	Scene func() picture.Scene
}

// FigureKey is what a drawing depends on: a version of the lesson or of what was measured,
// and of a diagram that is being made the forces and which of them is in hand.
type FigureKey struct {
	Version int
	Listed  string
	At      int
}

// Drawing paints the figure in hand.
func (s *Screen) Drawing(cols, rows int) []frame.Row {
	key := drawingKey{s.Figure.Key, cols, rows}
	return s.Memos.drawing.get(key, func() []frame.Row { return s.Paint(s.Figure.Scene(), cols, rows) })
}

// BesideDrawing leaves the drawing where it stands on a wide screen.
func (s *Screen) BesideDrawing(cols, rows int, draw func(cols, rows int) ([]frame.Row, frame.Seen)) ([]frame.Row, frame.Seen) {
	if s.Cols < WideCols || s.Figure == nil {
		return draw(cols, rows)
	}
	left := drawingBeside(cols, rows)
	right, seen := draw(cols-left-2, rows)
	return frame.Columns(s.Drawing(left, rows), left+1, frame.Indented(right)), seen
}

// drawingBeside is how wide a drawing of some height is beside the page.
func drawingBeside(cols, rows int) int { return min(cols*44/100, rows*5/2+8) }

// Paint draws a scene in its colours.
func (p *Pen) Paint(s picture.Scene, cols, rows int) []frame.Row {
	draw := picture.Braille
	if p.Look.Ascii {
		draw = picture.ASCII
	}
	canvas := draw(s, cols, rows)
	out := make([]frame.Row, canvas.Rows)
	for i := range out {
		out[i] = p.canvasRow(canvas.Row(i))
	}
	return out
}

func (p *Pen) canvasRow(cells []picture.Cell) frame.Row {
	var r frame.Row
	var text strings.Builder
	now := frame.Plain
	for _, c := range cells {
		// The second cell of a wide character.
		if c.Rune == 0 {
			continue
		}
		// A blank has no colour, and needs no change of it.
		if s := p.shadeOf(c); s != now && c.Rune != ' ' {
			r = p.append(r, now, text.String())
			text.Reset()
			now = s
		}
		text.WriteRune(c.Rune)
	}
	return p.append(r, now, text.String())
}

func (p *Pen) shadeOf(c picture.Cell) frame.Shade {
	if colour, ok := c.Tag.Force(); ok {
		// While forces are chosen, their colours would tell which act.
		if p.grey {
			return frame.Plain
		}
		return frame.ForceShade(colour)
	}
	if c.Tag == picture.TagBody || c.Tag == picture.TagAngle || c.Tag == picture.TagMarker || c.Tag == picture.TagLink {
		return frame.Plain
	}
	return frame.Quiet
}
