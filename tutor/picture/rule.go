package picture

// What is level or vertical is drawn with whole characters: lines, boxes, walls.
// Where rules meet in a cell their arms join, so that corners need no care.

// The arms of a rule in a cell.
const (
	armLeft uint8 = 1 << iota
	armRight
	armUp
	armDown
)

// armRunes is the character for each set of arms.
var armRunes = [16]rune{
	0: ' ', armLeft: '─', armRight: '─', armLeft | armRight: '─',
	armUp: '│', armDown: '│', armUp | armDown: '│',
	armRight | armDown: '┌', armLeft | armDown: '┐', armRight | armUp: '└', armLeft | armUp: '┘',
	armLeft | armRight | armDown: '┬', armLeft | armRight | armUp: '┴',
	armUp | armDown | armRight: '├', armUp | armDown | armLeft: '┤', 15: '┼',
}

// ruleRune is the character of a cell that rules pass.
func ruleRune(arms uint8, broken, ascii bool) rune {
	flat := arms&(armUp|armDown) == 0
	steep := arms&(armLeft|armRight) == 0
	switch {
	case ascii && broken && flat:
		return '.'
	case ascii && broken && steep:
		return ':'
	case ascii && flat:
		return '-'
	case ascii && steep:
		return '|'
	case ascii:
		return '+'
	case broken && flat:
		return '┄'
	case broken && steep:
		return '┊'
	}
	return armRunes[arms]
}

// rule puts a level or vertical stroke into its cells.
func (g *grid) rule(s *stroke) {
	a, b := s.points[0], s.points[1]
	col, row := cellOf(a)
	toCol, toRow := cellOf(b)
	first, last := armRight, armLeft
	if row != toRow {
		first, last, toCol = armDown, armUp, col
	}
	if col > toCol || row > toRow {
		col, row, toCol, toRow = toCol, toRow, col, row
	}
	for c, r := col, row; c <= toCol && r <= toRow; {
		arms := first | last
		if c == col && r == row {
			arms &^= last
		}
		if c == toCol && r == toRow {
			arms &^= first
		}
		if m := g.at(c, r); m != nil && arms != 0 {
			m.broken = (m.arms == 0 || m.broken) && s.dash != solid
			m.arms |= arms
			m.ink(s.look)
		}
		if first == armRight {
			c++
		} else {
			r++
		}
	}
}

// glyph puts one character into its cell, over everything.
func (g *grid) glyph(s *stroke) {
	col, row := cellOf(s.points[0])
	m := g.at(col, row)
	if m == nil {
		return
	}
	r := s.rune
	if plain, ok := plainSigns[r]; ok && g.ascii {
		r = plain
	}
	if m.ink(s.look); m.kept && r == '├' && m.rune == '┤' {
		r = '┼'
	}
	m.rune, m.kept, m.arms, m.dots = r, true, 0, 0
}

// plainSigns is what stands for a character in seven bits.
var plainSigns = map[rune]rune{'╱': '/', '╲': '\\', '●': '@', '▪': '#', '═': '=', '∼': '~', '║': 'H', '∙': '+', '├': '+', '┤': '+', '┬': '+', '┴': '+', '┼': '+'}

func cellOf(p vec) (col, row int) { return nearest(p.x) >> 1, nearest(p.y) >> 2 }

// cell is the middle of a cell.
func cell(col, row int) vec { return vec{float64(2*col) + 0.5, float64(4*row) + 1.5} }
