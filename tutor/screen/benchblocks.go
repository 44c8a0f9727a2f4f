package screen

import (
	"strings"

	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/screen/frame"
)

// blockRows sets blocks of a result, each title over what belongs to it.
func (m *model) blockRows(blocks []bench.Block, cols int) []frame.Row {
	var rows []frame.Row
	for _, b := range blocks {
		if len(b.Lines) == 0 && len(b.Rows) == 0 {
			continue
		}
		if b.Title != "" {
			rows = append(rows, m.look.Row(frame.Bold, " "+b.Title))
		}
		for _, line := range b.Lines {
			for i, part := range m.look.WrapMeasured(line, cols-6) {
				rows = append(rows, append(frame.Row{frame.Gap(3 + 2*min(i, 1))}, m.tint(frame.Plain, part, true)...))
			}
		}
		rows = append(rows, m.tableRows(b, cols)...)
	}
	return rows
}

// tableRows sets the table of a block in columns, or, where it is too wide, row by row.
func (m *model) tableRows(b bench.Block, cols int) []frame.Row {
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
		rows = append(rows, append(frame.Row{frame.Gap(1)}, m.tint(base, line, false)...))
		fits = fits && frame.TextWidth(line) < cols
	}
	if fits {
		return rows
	}
	if narrow, ok := b.Narrower(); ok {
		return m.tableRows(narrow, cols)
	}
	rows = nil
	for _, cells := range b.Rows {
		var parts []string
		for i := 1; i < len(cells); i++ {
			parts = append(parts, b.Head[i]+": "+cells[i])
		}
		rows = append(rows, m.entryRows("  "+cells[0], strings.Join(parts, "; "), wideTableName, cols)...)
	}
	return rows
}

// wideTableName is the room for the names of rows where a table is too wide for columns.
const wideTableName = 17
