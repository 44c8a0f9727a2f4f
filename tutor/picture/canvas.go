package picture

import "strings"

// The largest canvas. It bounds memory whatever a window claims to be.
const (
	MaxCols = 400
	MaxRows = 200
)

// Tag says what a cell belongs to, so that the caller can colour it. A higher
// tag covers a lower one.
type Tag int16

const (
	TagNone    Tag = iota
	TagAxis        // axes, scales and their letters
	TagSurface     // ground, slope, hatching
	TagLink        // ropes, springs and struts between bodies
	TagBody        // bodies and their names
	TagAngle       // arcs and their letters
	TagMarker      // the present value in a plot
	tagForce   Tag = 16
)

// ForceTag is the tag of everything that shows the force with this colour index.
func ForceTag(colour int) Tag { return tagForce + Tag(min(max(colour, 0), 999)) }

// Force gives back the colour index of ForceTag.
func (t Tag) Force() (colour int, ok bool) { return int(t - tagForce), t >= tagForce }

// Cell is one character of a canvas. Rune is 0 in the right half of a character
// that is two cells wide.
type Cell struct {
	Rune   rune
	Tag    Tag
	Strong bool // belongs to what is in hand
}

// Canvas is a drawing of Cols × Rows cells.
type Canvas struct {
	Cols, Rows int
	cells      []Cell
}

// At gives the cell in a column and a row, counted from 0 at the upper left;
// outside the canvas it is blank.
func (c Canvas) At(col, row int) Cell {
	if col < 0 || row < 0 || col >= c.Cols || row >= c.Rows {
		return Cell{Rune: ' '}
	}
	return c.cells[row*c.Cols+col]
}

// Row gives the cells of a row, which must not be changed.
func (c Canvas) Row(row int) []Cell { return c.cells[row*c.Cols : (row+1)*c.Cols] }

// Lines gives the rows as text, without spaces at their ends.
func (c Canvas) Lines() []string {
	lines := make([]string, c.Rows)
	for row := range lines {
		var b strings.Builder
		for _, cell := range c.Row(row) {
			if cell.Rune != 0 {
				b.WriteRune(cell.Rune)
			}
		}
		lines[row] = strings.TrimRight(b.String(), " ")
	}
	return lines
}

func (c Canvas) String() string { return strings.Join(c.Lines(), "\n") }
