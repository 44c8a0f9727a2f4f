package screen

import "strings"

// fill makes a number of rows exactly.
func fill(rows []row, n int) []row {
	if len(rows) >= n {
		return rows[:n]
	}
	return append(rows, make([]row, n-len(rows))...)
}

// rule divides the sheet, with words at its left and right. Where there is no
// room for both, those at the right are the ones that are needed.
func (l *look) rule(width int, left, right string) row {
	if right != "" && textWidth(left)+textWidth(right)+8 > width {
		left, right = right, ""
	}
	r := row{l.text(quiet, l.signs.dotted+l.signs.dotted+" "), l.text(bold, left), gap(1)}
	var end row
	if right != "" {
		end = row{gap(1), l.text(plain, right), gap(1), l.text(quiet, l.signs.dotted)}
	}
	rest := max(width-r.width()-end.width(), 0)
	r = append(r, l.text(quiet, strings.Repeat(l.signs.dotted, rest)))
	return append(r, end...).cut(width)
}

// columns puts rows side by side, the left ones in a width.
func columns(left []row, width int, right []row) []row {
	rows := make([]row, max(len(left), len(right)))
	for i := range rows {
		var r row
		if i < len(left) {
			r = append(r, left[i].cut(width)...)
		}
		if i < len(right) && len(right[i]) > 0 {
			r = append(r.padded(width), right[i]...)
		}
		rows[i] = r
	}
	return rows
}

// indented sets rows in by one cell.
func indented(rows []row) []row {
	out := make([]row, len(rows))
	for i, r := range rows {
		out[i] = append(row{gap(1)}, r...)
	}
	return out
}

// shortened is a text cut to a width, with a sign where something is cut off.
func (l *look) shortened(text string, width int) string {
	text = l.letters(text)
	if textWidth(text) <= width {
		return text
	}
	sign := l.letters("…")
	return head(text, max(width-textWidth(sign), 0)) + sign
}
