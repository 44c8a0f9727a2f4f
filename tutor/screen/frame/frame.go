// Package frame knows how text comes into the cells of a terminal and out of its keys: as rows
// of spans, each of one shade, that are wrapped, cut and set side by side to fit a width; and
// as the line at which the student types. It knows no lesson.
//
// A Look is how one instance of the program paints; start there. Rows are made from texts by
// it alone, so that nothing which acts on a terminal gets into one.
//
//	look.go, palette.go, row.go, frame.go   how things are painted, rows, and rows side by side
//	maths.go, names.go    formulas with stacked fractions, letters as on paper
//	scroll.go             which of more rows than fit are seen
//	line.go, keys.go      the line that is typed, and the keys with their names
package frame

import "strings"

// Fill makes a number of rows exactly.
func Fill(rows []Row, n int) []Row {
	if len(rows) >= n {
		return rows[:n]
	}
	return append(rows, make([]Row, n-len(rows))...)
}

// Rule divides the sheet, with words at its left and right. Where there is no
// room for both, those at the right are the ones that are needed.
func (l *Look) Rule(width int, left, right string) Row {
	if right != "" && TextWidth(left)+TextWidth(right)+8 > width {
		left, right = right, ""
	}
	r := Row{l.Text(Quiet, l.Signs.Dotted+l.Signs.Dotted+" "), l.Text(Bold, left), Gap(1)}
	var end Row
	if right != "" {
		end = Row{Gap(1), l.Text(Plain, right), Gap(1), l.Text(Quiet, l.Signs.Dotted)}
	}
	rest := max(width-r.Width()-end.Width(), 0)
	r = append(r, l.Text(Quiet, strings.Repeat(l.Signs.Dotted, rest)))
	return append(r, end...).Cut(width)
}

// Columns puts rows side by side, the left ones in a width.
func Columns(left []Row, width int, right []Row) []Row {
	rows := make([]Row, max(len(left), len(right)))
	for i := range rows {
		var r Row
		if i < len(left) {
			r = append(r, left[i].Cut(width)...)
		}
		if i < len(right) && len(right[i]) > 0 {
			r = append(r.Padded(width), right[i]...)
		}
		rows[i] = r
	}
	return rows
}

// Indented sets rows in by one cell.
func Indented(rows []Row) []Row {
	out := make([]Row, len(rows))
	for i, r := range rows {
		out[i] = append(Row{Gap(1)}, r...)
	}
	return out
}

// Shortened is a text cut to a width, with a sign where something is cut off.
func (l *Look) Shortened(text string, width int) string {
	text = l.Letters(text)
	if TextWidth(text) <= width {
		return text
	}
	sign := l.Letters("…")
	return head(text, max(width-TextWidth(sign), 0)) + sign
}
