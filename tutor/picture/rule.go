package picture

import "math"

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
func ruleRune(arms uint8, broken dash, strong, ascii bool) rune {
	flat := arms&(armUp|armDown) == 0
	steep := arms&(armLeft|armRight) == 0
	switch {
	case ascii && broken == dotted && flat:
		return '.'
	case ascii && broken == dotted && steep:
		return ':'
	case ascii && flat:
		return '-'
	case ascii && steep:
		return '|'
	case ascii:
		return '+'
	case broken == dashed && flat:
		return '╌'
	case broken == dashed && steep:
		return '╎'
	case broken == dotted && flat:
		return '┄'
	case broken == dotted && steep:
		return '┊'
	case strong && flat:
		return '━'
	case strong && steep:
		return '┃'
	}
	return armRunes[arms]
}

// heads are the heads of arrows, anticlockwise from the right: level and vertical ones
// are in the oldest fonts and have no coloured picture form.
var heads = [8]rune{'►', '↗', '▲', '↖', '◄', '↙', '▼', '↘'}

// head puts the head of an arrow into the cell of its tip.
func (g *grid) head(s *stroke) {
	tip := s.points[0]
	ahead := tip.minus(s.points[1].plus(s.points[2]).times(0.5)).unit()
	col, row := cellOf(tip.along(ahead, -shortOfTip))
	m := g.at(col, row)
	if m == nil {
		return
	}
	const slant = 14 // degrees from level or vertical beyond which a head is a slanted one
	eighth := int(math.Round(fullTurn(0, ahead.degrees())/90)) * 2
	if off := math.Abs(turn(float64(eighth)*45, ahead.degrees())); off > slant {
		eighth = 2*int(fullTurn(0, ahead.degrees())/90) + 1
	}
	m.ink(s.look)
	m.rune, m.kept, m.arms, m.dots = heads[eighth%8], true, 0, 0
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
			if mine, its := min(s.tag, tagForce), min(m.tag, tagForce); m.dots != 0 && mine < its {
				// something in front passes here
			} else if m.arms == 0 || mine > its && s.tag >= tagForce {
				m.arms, m.broken = arms, s.dash // an arrow on an axis hides it
			} else if mine == its || its < tagForce {
				m.arms |= arms
				if s.dash == solid {
					m.broken = solid
				}
			}
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
