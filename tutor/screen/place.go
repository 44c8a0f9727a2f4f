package screen

import (
	"slices"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/tutor/screen/frame"
)

// body lays the work out. While the forces are chosen: the scene, the text and the givens,
// and the forces on offer under them. Afterwards: the drawing, the stage's table and the
// givens, and the page under them. Heights and widths are the same throughout a stage.
func (w *work) body(m *model, cols, rows int) []frame.Row {
	wide := m.drawingCols(rows) > 0
	switch {
	case m.choosing() && wide:
		return w.forcesWide(m, cols, rows)
	case m.choosing():
		return w.forces(m, cols, rows)
	case wide:
		side := w.side(m, cols, max(rows*3/5, rows-12))
		return append(append(side, nil), w.page(m, cols, rows-len(side)-1)...)
	}
	band := w.band(m, rows)
	left := drawingWidth(cols)
	out := frame.Columns(m.drawing(left, band), left+1, frame.Indented(w.side(m, cols-left-2, band)))
	return append(frame.Fill(out, band), w.page(m, cols, rows-band)...)
}

// leastPage is how many rows the page keeps beside its rule; mostBand is the most that
// goes to the drawing above it.
const (
	leastPage = 4
	mostBand  = 18
)

// band is how high the drawing is above the page. It goes by the window and not by how
// long a question is, so that nothing jumps within a stage: the page gives way.
func (w *work) band(m *model, rows int) int {
	others := 2 + 1 + 1 + m.underRows() + keyRows // head, question, line, what is under it, keys
	return min(max(m.rows-others-1-leastPage, 4), mostBand, max(rows-2, 1))
}

// drawingWidth is how wide a drawing is beside text.
func drawingWidth(cols int) int { return cols * 45 / 100 }

// forces is the first stage: the scene and the text, the offers under them.
func (w *work) forces(m *model, cols, rows int) []frame.Row {
	offers := w.chooser.rows(m, cols)
	band := max(rows-1-len(offers), 1)
	var out []frame.Row
	if m.rows < lowRows || m.cols < 72 {
		text := w.statement(m, cols-2)
		out = m.givenFirst(text, w.givens(m, cols-2, max(band-len(text), 1)), band)
		out = frame.Indented(out)
	} else {
		left := drawingWidth(cols)
		width := cols - left - 2
		text := w.statement(m, width)
		side := m.givenFirst(text, w.givens(m, width, max(band-len(text), 2)), band)
		out = frame.Columns(m.scene(left, band), left+1, frame.Indented(side))
	}
	out = append(frame.Fill(out, band), m.look.Rule(cols, m.offersTitle(), ""))
	return append(out, offers...)
}

// forcesWide is the first stage where the diagram that grows stands at the left.
func (w *work) forcesWide(m *model, cols, rows int) []frame.Row {
	offers := w.chooser.rows(m, cols)
	text := append(append(w.statement(m, cols), nil), w.givens(m, cols, 6)...)
	scene := rows - len(text) - len(offers) - 3
	var out []frame.Row
	if scene >= 9 {
		out = append(out, m.scene(min(cols, 3*scene+6), scene)...)
		out = append(out, nil)
	}
	out = frame.Fill(append(out, text...), rows-1-len(offers))
	return append(append(out, m.look.Rule(cols, m.offersTitle(), "")), offers...)
}

// givenFirst puts the givens under a text; where there is no room for both, the text says
// how it goes on, because the givens are needed in every line.
func (m *model) givenFirst(text, givens []frame.Row, rows int) []frame.Row {
	switch {
	case len(text)+1+len(givens) <= rows:
		return append(append(slices.Clone(text), nil), givens...)
	case len(text)+len(givens) <= rows:
		return append(slices.Clone(text), givens...)
	}
	return append(m.withRest(text, rows-len(givens)), givens...)
}

func (m *model) offersTitle() string {
	if item := m.now.ask.Item; item != "" {
		return saidForcesOn(item)
	}
	return wordForces
}

// side is what stands beside the drawing: the stage's table, or what was found, and the
// givens at the bottom.
func (w *work) side(m *model, cols, rows int) []frame.Row {
	givens := w.givens(m, cols, max(rows-5, 2))
	table := w.table(m, cols)
	if room := max(rows-len(givens)-1, leastTable); len(table) > room {
		table = w.around(m, table, room)
	}
	out := slices.Clone(table)
	if said := m.axesSaid(cols); said != nil && len(out)+1+len(said)+1+len(givens) <= rows {
		out = append(append(out, nil), said...)
	}
	out = frame.Fill(out, max(rows-len(givens), 0))
	return append(out, givens...)[:rows]
}

// axesSaid says which way the axes of the body in hand point.
func (m *model) axesSaid(cols int) []frame.Row {
	if !m.now.open || m.stage() == checker.Solve {
		return nil
	}
	var rows []frame.Row
	for _, part := range m.look.Wrap(joinSentences(m.now.ask.Directions), cols) {
		rows = append(rows, m.look.Row(frame.Quiet, part))
	}
	return rows
}

// givens lists what is given, with what each letter is where there is room for it.
func (w *work) givens(m *model, cols, rows int) []frame.Row {
	var short []string
	var long []frame.Row
	all := m.lesson.Givens()
	letters := 0
	for _, g := range all {
		if g.Meaning != "" && g.Meaning != wordMass {
			letters = max(letters, frame.TextWidth(m.look.Letters(g.Text())))
		}
	}
	for _, g := range all {
		if g.Meaning == "" || g.Meaning == wordMass || letters+2+frame.TextWidth(g.Meaning) > cols {
			short = append(short, g.Text())
			continue
		}
		r := m.tint(frame.Plain, g.Text(), false).Padded(letters + 2)
		long = append(long, append(r, m.look.Text(frame.Quiet, g.Meaning)))
	}
	out := append(m.spaced(short, cols), long...)
	if len(out) <= rows {
		return out
	}
	short = nil
	for _, g := range all {
		short = append(short, g.Text())
	}
	return m.spaced(short, cols)
}

// spaced sets texts side by side, none of them broken.
func (m *model) spaced(texts []string, cols int) []frame.Row {
	var rows []frame.Row
	var r frame.Row
	for _, text := range texts {
		own := m.tint(frame.Plain, text, false)
		if len(r) > 0 && r.Width()+3+own.Width() > cols {
			rows, r = append(rows, r), nil
		}
		if len(r) > 0 {
			r = append(r, frame.Gap(3))
		}
		r = append(r, own...)
	}
	if len(r) > 0 {
		rows = append(rows, r)
	}
	return rows
}

// leastTable is how many rows of a table are seen, however much else there is.
const leastTable = 2

// around takes the rows of a table that are near what is in hand.
func (w *work) around(m *model, table []frame.Row, n int) []frame.Row {
	at := max(slices.Index(m.lesson.Ref.Items(checker.Components), m.now.ask.Item), 0) / 2
	from := min(max(at-(n-1)/2, 0), len(table)-n)
	return slices.Concat(table[:1], table[1+from:from+n])
}

// withRest is a text in so many rows; where it goes on, the last one says so.
func (m *model) withRest(text []frame.Row, rows int) []frame.Row {
	if len(text) <= rows || rows < 1 {
		return text
	}
	return append(text[:rows-1:rows-1], m.look.Row(frame.Quiet, saidTextGoesOn))
}

// choosing reports whether the student is at the force diagram.
func (m *model) choosing() bool { return m.now.open && m.stage() == checker.Diagram }

// statement is the problem's text.
func (w *work) statement(m *model, cols int) []frame.Row {
	return m.memos.statement.get(paperKey{m.now.version, cols}, func() []frame.Row {
		var rows []frame.Row
		for _, part := range m.look.Wrap(m.lesson.Statement(), cols) {
			rows = append(rows, m.tint(frame.Plain, part, true))
		}
		return rows
	})
}

// problem is the text with what is given and asked, to be read.
func (w *work) problem(m *model, cols int) []frame.Row {
	rows := append(slices.Clone(w.statement(m, cols)), nil)
	for _, g := range m.lesson.Givens() {
		text := g.Text()
		if g.Meaning != "" {
			text += "  " + g.Meaning
		}
		rows = append(rows, m.tint(frame.Plain, text, false))
	}
	return append(rows, nil, m.tint(frame.Plain, saidFind(m.lesson.Wanted()), true))
}

// table is what the stage in hand adds: the components so far, in Solve the sums and what
// is found.
func (w *work) table(m *model, cols int) []frame.Row {
	switch {
	case m.now.open && m.stage() == checker.Solve:
		return m.foundTable(cols)
	case m.now.open:
		return componentTable(m, cols)
	}
	return m.foundTable(cols)
}

// foundTable shows the sums as they were written, and the values that are found.
func (m *model) foundTable(cols int) []frame.Row {
	var rows []frame.Row
	for _, stage := range []checker.Stage{checker.XSum, checker.YSum} {
		lines := m.lesson.Of(stage)
		for i := range lines {
			for _, one := range lines[i].Statements() {
				if one.Stage != stage || one.Verdict != checker.Right && !lines[i].Kept && !lines[i].Accepted || !strings.Contains(one.Read, "=") {
					continue
				}
				name := "ΣF" + stageAxis(stage)
				if one.Item != "" && len(m.lesson.Ref.Bodies) > 1 {
					name = one.Item + " " + name
				}
				rows = append(rows, append(frame.Row{m.look.Text(frame.Bold, name), frame.Gap(2)}, m.tint(frame.Plain, m.flat(stage, one.Read), false)...).Cut(cols))
			}
		}
	}
	if len(rows) > 0 {
		rows = append(rows, nil)
	}
	for _, item := range m.lesson.Items(checker.Solve) {
		name := expr.Set(item.Name)
		word, value := wordToFind, frame.Row{m.look.Text(frame.Quiet, "?")}
		if item.Done {
			word, value = wordFound, m.tint(frame.Plain, m.flat(checker.Solve, m.found(item.Name)), false)
		}
		rows = append(rows, append(append(frame.Row{m.look.Text(frame.Quiet, word+"  ")}, m.tint(frame.Bold, name, false)...).Padded(12), value...).Cut(cols))
	}
	return rows
}

// found is the value of an unknown as it was written.
func (m *model) found(name string) string {
	text := ""
	lines := m.lesson.Of(checker.Solve)
	for i := range lines {
		for _, one := range lines[i].Statements() {
			if slices.Contains(one.Settles, name) {
				text = one.Read
			}
		}
	}
	if left, right, ok := strings.Cut(text, "="); ok && strings.TrimSpace(left) == expr.Glyph(name) {
		return strings.TrimSpace(right)
	}
	return text
}

func stageAxis(stage checker.Stage) string {
	if stage == checker.YSum {
		return "y"
	}
	return "x"
}

// page is the rule, and as much of the working as fits, its end first.
func (w *work) page(m *model, cols, rows int) []frame.Row {
	written := m.paper(cols)
	room := max(rows-1, 0)
	scroll := min(w.scroll, max(len(written)-room, 0))
	end := len(written) - scroll
	from := max(end-room, 0)
	above := ""
	if from > 0 {
		above = saidAbove(from)
	}
	out := []frame.Row{m.look.Rule(cols, wordPage, above)}
	if written == nil {
		return frame.Fill(append(out, m.emptyPage(cols)...), rows)
	}
	return frame.Fill(append(out, written[from:end]...), rows)
}

func (m *model) emptyPage(cols int) []frame.Row {
	var rows []frame.Row
	for _, part := range m.look.Wrap(saidPageEmpty, cols-2) {
		rows = append(rows, frame.Row{frame.Gap(1), m.look.Text(frame.Quiet, part)})
	}
	return rows
}
