package screen

import "example.org/standstill/checker"

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
	right := w.column(m, cols-left-2, rows)
	for i := range right {
		right[i] = append(row{gap(1)}, right[i]...)
	}
	return columns(m.drawing(left, rows), left+1, right)
}

// column is what stands at the right of the drawing: the problem's text where it
// fits or is wanted, the stage's table, and the page.
func (w *work) column(m *model, cols, rows int) []row {
	table := w.table(m, cols)
	page := leastPage + len(table)
	if table != nil {
		page++
	}
	var out []row
	w.textSeen = false
	if text := w.statement(m, cols); len(text)+1+page <= rows || w.text {
		out = append(append(out, text...), nil)
		w.textSeen = true
	}
	if table != nil && !(w.text && len(out)+page > rows) {
		out = append(append(out, table...), nil)
	}
	if rows-len(out) < 2 {
		return fill(out, rows)
	}
	return append(out, w.page(m, cols, rows-len(out))...)
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
	w.textSeen = table == nil || w.text || fits
	switch {
	case table == nil || w.text:
		side = text
	case fits:
		side = append(append(text, nil), table...)
	}
	for i := range side {
		side[i] = append(row{gap(1)}, side[i]...)
	}
	out := fill(columns(m.drawing(left, band), left+1, side), band)
	out = append(out, w.page(m, cols, rows-band-len(below))...)
	return append(out, below...)
}

// choosing reports whether the student is at the force diagram.
func (m *model) choosing() bool { return m.now.open && m.stage() == checker.Diagram }

// statement is the problem's text with what is given and asked.
func (w *work) statement(m *model, cols int) []row {
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
	out := []row{m.rule(cols, title, m.directions())}
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

// directions says which way the axes point, of the body in hand.
func (m *model) directions() string {
	if !m.now.open || m.stage() == checker.Diagram {
		return ""
	}
	return joinSentences(m.now.ask.Directions)
}
