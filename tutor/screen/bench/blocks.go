package bench

import (
	"strings"

	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// blockRows sets blocks of a result, each title over what belongs to it.
func blockRows(p *views.Pen, blocks []bench.Block, cols int) []frame.Row {
	var rows []frame.Row
	for _, b := range blocks {
		if len(b.Lines) == 0 && len(b.Rows) == 0 {
			continue
		}
		if b.Title != "" {
			rows = append(rows, p.Look.Row(frame.Bold, " "+b.Title))
		}
		for _, line := range b.Lines {
			for i, part := range p.Look.WrapMeasured(line, cols-6) {
				rows = append(rows, append(frame.Row{frame.Gap(3 + 2*min(i, 1))}, p.Tint(frame.Plain, part, true)...))
			}
		}
		rows = append(rows, tableRows(p, b, cols)...)
	}
	return rows
}

// tableRows sets the table of a block in columns, or, where it is too wide, row by row.
func tableRows(p *views.Pen, b bench.Block, cols int) []frame.Row {
	if len(b.Rows) == 0 {
		return nil
	}
	var rows []frame.Row
	fits := true
	for i, line := range (bench.Style{Width: cols}).Set([]bench.Block{{Head: b.Head, Rows: b.Rows}})[1:] {
		base := frame.Plain
		if i == 0 {
			base = frame.Quiet
		}
		rows = append(rows, append(frame.Row{frame.Gap(1)}, p.Tint(base, line, false)...))
		fits = fits && frame.TextWidth(line) < cols
	}
	if fits {
		return rows
	}
	if narrow, ok := b.Narrower(); ok {
		return tableRows(p, narrow, cols)
	}
	rows = nil
	for _, cells := range b.Rows {
		var parts []string
		for i := 1; i < len(cells); i++ {
			parts = append(parts, b.Head[i]+": "+cells[i])
		}
		rows = append(rows, p.Entry("  "+cells[0], strings.Join(parts, "; "), wideTableName, cols)...)
	}
	return rows
}

// wideTableName is the room for the names of rows where a table is too wide for columns.
const wideTableName = 17

// figure is blocks with a drawing under them, to be read.
func figure(blocks []bench.Block, scene *picture.Scene) views.Content {
	return func(s *views.Screen, cols int) []frame.Row {
		rows := blockRows(s.Pen, blocks, cols)
		if scene != nil {
			rows = append(rows, s.Paint(*scene, cols-1, max(s.Rows*2/3, leastFigure))...)
		}
		return rows
	}
}

// leastFigure is how many rows a drawing has at least.
const leastFigure = 8

// notation says what can be typed into a field.
func notation(s *views.Screen, cols int) []frame.Row {
	var rows []frame.Row
	for _, entry := range bench.Notation().Rows {
		rows = append(rows, s.Entry(entry[0], entry[1], notationWidth, cols)...)
	}
	rows = append(rows, nil)
	return append(rows, s.Look.Rows(frame.Quiet, saidAnyField, cols)...)
}

// notationWidth is how wide the samples are in the list of what can be typed.
const notationWidth = 31

// warningRows are the warnings about what was measured; where there is no room for all of
// them, the word that shows them.
func warningRows(p *views.Pen, warnings []string, cols, most int) []frame.Row {
	var rows []frame.Row
	sign := views.Mark{Sign: p.Look.Signs.Disputed, Word: wordWarning, Shade: frame.Near}
	for _, w := range warnings {
		rows = append(rows, p.Marked(sign, w, frame.Plain, true, cols)...)
	}
	if len(rows) > most {
		rows = p.Marked(sign, saidReadWarnings, frame.Plain, true, cols)
	}
	return rows
}
