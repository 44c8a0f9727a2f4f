package picture

// grid collects the marks of a drawing, cell by cell.
type grid struct {
	cols, rows int
	ascii      bool
	marks      []mark
	clip       box // the panel that is being drawn; nothing reaches into the next one
}

// mark is what one cell holds: dots, or a character that stands instead.
type mark struct {
	dots   uint8
	rune   rune
	tag    Tag
	strong bool
	hard   bool // crossed by a line that no label may cover
	text   bool
	arms   uint8 // of rules that pass
	broken dash  // how they are broken
	kept   bool  // a sign that no line hides: the tip of an arrow, a knot
}

// look says what a stroke belongs to and how it takes part in the drawing.
type look struct {
	tag    Tag
	strong bool
	soft   bool // a label may cover it where nothing better is free
}

func newGrid(cols, rows int) *grid {
	cols, rows = min(max(cols, 0), MaxCols), min(max(rows, 0), MaxRows)
	if cols == 0 || rows == 0 {
		// One of them alone would leave a grid with rows and no cells.
		cols, rows = 0, 0
	}
	return &grid{cols: cols, rows: rows, marks: make([]mark, cols*rows), clip: box{0, 0, cols, rows}}
}

// at gives the cell, or nil outside of what may be drawn on.
func (g *grid) at(col, row int) *mark {
	if col < g.clip.left || col >= g.clip.right || row < g.clip.top || row >= g.clip.bottom {
		return nil
	}
	return &g.marks[row*g.cols+col]
}

// ink notes in a cell that a stroke passes; the cell takes the higher tag.
func (m *mark) ink(l look) {
	m.hard = m.hard || !l.soft
	mine, its := min(l.tag, tagForce), min(m.tag, tagForce)
	// A cell shows one colour: that of the more telling thing, whatever was drawn first.
	if mine > its || mine == its && (l.strong || !m.strong) {
		m.tag, m.strong = l.tag, l.strong
	}
}

// write puts a text into cells. Dots there are gone.
func (g *grid) write(col, row int, text []rune, l look) {
	for i, r := range text {
		if m := g.at(col+i, row); m != nil {
			// hard stays, so that a later label still keeps off the line below this one.
			*m = mark{rune: r, tag: l.tag, strong: l.strong, text: true, hard: m.hard}
		}
	}
}

func (g *grid) canvas() Canvas {
	c := Canvas{Cols: g.cols, Rows: g.rows, cells: make([]Cell, len(g.marks))}
	for i := range g.marks {
		m := &g.marks[i]
		cell := Cell{Rune: m.rune, Tag: m.tag, Strong: m.strong}
		switch {
		case m.text, m.kept && !g.ascii:
		// Arms before dots: a cell holds one character, and a rule is drawn whole.
		case m.arms != 0 && !m.kept:
			cell.Rune = ruleRune(m.arms, m.broken, m.strong, g.ascii)
		case m.dots != 0:
			cell.Rune = brailleBase + rune(m.dots)
		case m.rune == 0:
			cell = Cell{Rune: ' '}
		}
		c.cells[i] = cell
	}
	return c
}
