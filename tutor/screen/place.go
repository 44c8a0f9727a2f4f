package screen

import (
	"slices"
	"strings"

	"example.org/standstill/checker"
)

// body lays the work out: the drawing beside the page where there is room, else
// above it with the problem's text at its side.
func (w *work) body(m *model, cols, rows int) []row {
	if m.beside() {
		return w.sideBySide(m, cols, rows)
	}
	return w.stacked(m, cols, rows)
}

// leastPage is how many rows the page keeps in any layout.
const leastPage = 4

func (w *work) sideBySide(m *model, cols, rows int) []row {
	left := min(cols*44/100, rows*5/2+8)
	return columns(m.drawing(left, rows), left+1, indented(w.column(m, cols-left-2, rows)))
}

// indented sets rows in by one cell.
func indented(rows []row) []row {
	out := make([]row, len(rows))
	for i, r := range rows {
		out[i] = append(row{gap(1)}, r...)
	}
	return out
}

// column is what stands at the right of the drawing: the problem's text where it
// fits or is wanted, the stage's table, and the page.
func (w *work) column(m *model, cols, rows int) []row {
	table := w.table(m, cols)
	if room := max(rows-2-w.lastLine(m, cols), leastTable); len(table) > room {
		table = w.around(m, table, room)
	}
	rest := leastPage + 1
	if table != nil {
		rest += len(table) + 1
	}
	var out []row
	text := w.statement(m, cols)
	w.textFits = len(text)+1 <= rows
	w.textSeen = w.textFits && (w.text || len(text)+1+rest <= rows)
	if w.textSeen {
		out = append(append(out, text...), nil)
	}
	if table != nil && len(out)+len(table)+1 <= rows {
		out = append(append(out, table...), nil)
	}
	if len(out)+leastPage > rows && table != nil {
		out = out[:len(out)-1]
	}
	if rows-len(out) < 2 {
		return fill(out, rows)
	}
	return append(out, w.page(m, cols, rows-len(out))...)
}

// leastTable is how many rows of a table are seen, however long a message is.
const leastTable = 2

// around takes the rows of a table that are near what is in hand.
func (w *work) around(m *model, table []row, n int) []row {
	at, head := w.chooser.at, 0
	if !m.choosing() {
		at, head = max(slices.Index(m.lesson.Ref.Items(checker.Components), m.now.ask.Item), 0)/2, 1
	}
	from := min(max(at-(n-head)/2, 0), len(table)-n)
	return slices.Concat(table[:head], table[head+from:from+n])
}

// lastLine is how many rows the page needs for what was said last.
func (w *work) lastLine(m *model, cols int) int {
	lines := m.lesson.Lines()
	if len(lines) == 0 {
		return 0
	}
	return 1 + len(m.paperLine(&lines[len(lines)-1], cols))
}

func (w *work) stacked(m *model, cols, rows int) []row {
	table := w.table(m, cols*53/100)
	below := []row(nil)
	if m.choosing() {
		table, below = nil, w.table(m, cols)
	}
	page := leastPage
	if m.choosing() {
		page = min(page, len(m.paper(cols)))
	}
	band := rows - 1 - page - len(below)
	band = min(max(band, 6), rows*2/3)
	left := min(cols*47/100, band*4)
	side := table
	text := w.statement(m, cols-left-3)
	fits := len(table)+1+len(text) <= band
	w.textFits = len(text) <= band
	w.textSeen = w.textFits && (table == nil || w.text || fits)
	switch {
	case table == nil || w.text:
		side = m.withRest(text, band)
	case fits:
		side = slices.Concat(text, []row{nil}, table)
	}
	out := fill(columns(m.drawing(left, band), left+1, indented(side)), band)
	out = append(out, w.page(m, cols, rows-band-len(below))...)
	return append(out, below...)
}

// withRest is a text in so many rows; where it goes on, the last one says so.
func (m *model) withRest(text []row, rows int) []row {
	if len(text) <= rows || rows < 1 {
		return text
	}
	return append(text[:rows-1:rows-1], m.look.row(quiet, saidTextGoesOn))
}

// choosing reports whether the student is at the force diagram.
func (m *model) choosing() bool { return m.now.open && m.stage() == checker.Diagram }

// statement is the problem's text with what is given and asked.
func (w *work) statement(m *model, cols int) []row {
	return m.memos.statement.get(paperKey{m.now.version, cols}, func() []row { return w.makeStatement(m, cols) })
}

func (w *work) makeStatement(m *model, cols int) []row {
	var rows []row
	for _, part := range m.look.wrap(m.lesson.Statement(), cols) {
		rows = append(rows, m.tint(plain, part, true))
	}
	for _, part := range m.look.wrap(saidGiven(w.given), cols) {
		rows = append(rows, m.tint(quiet, part, true))
	}
	return rows
}

// table is what the stage in hand adds to the page.
func (w *work) table(m *model, cols int) []row {
	switch {
	case m.choosing():
		return w.chooser.rows(m, cols)
	case m.now.open && m.stage() != checker.Solve:
		return componentTable(m, cols)
	}
	return nil
}

// page is the rule with the directions, and as much of the working as fits, its
// end first.
func (w *work) page(m *model, cols, rows int) []row {
	written := m.paper(cols)
	room := rows - 1
	w.overflow = len(written) > room
	w.scroll = min(w.scroll, max(len(written)-room, 0))
	end := len(written) - w.scroll
	from := max(end-room, 0)
	title := wordPage
	if from > 0 {
		title = saidAbove(from)
	}
	out := []row{m.rule(cols, title, m.directions(cols-textWidth(wordPage)-8))}
	if written == nil {
		return fill(append(out, m.emptyPage(cols)...), rows)
	}
	return append(out, written[from:end]...)
}

func (m *model) emptyPage(cols int) []row {
	var rows []row
	for _, part := range m.look.wrap(saidPageEmpty, cols-2) {
		rows = append(rows, row{gap(1), m.look.text(quiet, part)})
	}
	return rows
}

// directions says which way the axes point, of the body in hand: both axes where
// there is room, else the one that is asked about.
func (m *model) directions(width int) string {
	if !m.now.open || m.choosing() {
		return ""
	}
	both := m.now.ask.Directions
	said := joinSentences(both)
	if textWidth(said) > width && len(both) == 2 {
		said = both[m.axis()]
	}
	return said
}

// axis is the axis that is asked about: 0 for x, 1 for y.
func (m *model) axis() int {
	if m.stage() == checker.YSum || m.stage() == checker.Components && strings.HasSuffix(m.now.ask.Item, "y") {
		return 1
	}
	return 0
}
