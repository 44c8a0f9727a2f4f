package views

import (
	"slices"

	"example.org/standstill/checker"
	"example.org/standstill/tutor/screen/frame"
)

// Work is the problem in hand: while the forces are chosen, the scene, the text and the
// givens, and the forces on offer under them; afterwards the drawing, the stage's table and
// the givens, and the page under them. Heights and widths are the same throughout a stage.
type Work struct {
	*Lesson
	Reading Reading
	Offers  Offers
	Told    string // stands under the line, and so not on the page
	Scroll  int    // rows of the page below what is shown
}

// Body lays the work out. What is seen is of the page.
func (w Work) Body(s *Screen, cols, rows int) ([]frame.Row, frame.Seen) {
	wide := s.drawingCols(rows) > 0
	switch {
	case w.Choosing() && wide:
		return w.forcesWide(s, cols, rows), frame.Seen{}
	case w.Choosing():
		return w.forces(s, cols, rows), frame.Seen{}
	case wide:
		// A table that grows takes no more than leaves the page a dozen rows.
		side := w.side(s, cols, max(rows*3/5, rows-12))
		page, seen := w.page(s, cols, rows-len(side)-1)
		return append(append(side, nil), page...), seen
	}
	band := w.band(s, rows)
	left := drawingWidth(cols)
	out := frame.Columns(s.Drawing(left, band), left+1, frame.Indented(w.side(s, cols-left-2, band)))
	page, seen := w.page(s, cols, rows-band)
	return append(frame.Fill(out, band), page...), seen
}

// leastPage is how many rows the page keeps beside its rule; mostBand is the most that
// goes to the drawing above it.
const (
	leastPage = 4
	mostBand  = 18
)

// band is how high the drawing is above the page. It goes by the window and not by how
// long a question is, so that nothing jumps within a stage: the page gives way.
func (w Work) band(s *Screen, rows int) int {
	others := 2 + 1 + 1 + s.underRows() + keyRows // head, question, line, what is under it, keys
	return min(max(s.Rows-others-1-leastPage, 4), mostBand, max(rows-2, 1))
}

// drawingWidth is how wide a drawing is beside text.
func drawingWidth(cols int) int { return cols * 45 / 100 }

// side is what stands beside the drawing: the stage's table, or what was found, and the
// givens at the bottom.
func (w Work) side(s *Screen, cols, rows int) []frame.Row {
	givens := w.givens(s.Pen, cols, max(rows-5, 2))
	table := w.table(s.Pen, cols)
	if room := max(rows-len(givens)-1, leastTable); len(table) > room {
		// The row in hand must be in sight, and the heading with it.
		table = w.around(table, room)
	}
	out := slices.Clone(table)
	if said := w.axes(s.Pen, cols); said != nil && len(out)+1+len(said)+1+len(givens) <= rows {
		out = append(append(out, nil), said...)
	}
	out = frame.Fill(out, max(rows-len(givens), 0))
	return append(out, givens...)[:rows]
}

// axes says which way the axes of the body in hand point.
func (w Work) axes(p *Pen, cols int) []frame.Row {
	if !w.Open || w.Stage() == checker.Solve {
		return nil
	}
	var rows []frame.Row
	for _, part := range p.Look.Wrap(joinSentences(w.Ask.Directions), cols) {
		rows = append(rows, p.Look.Row(frame.Quiet, part))
	}
	return rows
}

// table is what the stage in hand adds: the components so far, in Solve the sums and what
// is found.
func (w Work) table(p *Pen, cols int) []frame.Row {
	if w.Open && w.Stage() != checker.Solve {
		return w.components(p, cols)
	}
	return w.found(p, cols)
}

// leastTable is how many rows of a table are seen, however much else there is.
const leastTable = 2

// around takes the rows of a table that are near what is in hand.
func (w Work) around(table []frame.Row, n int) []frame.Row {
	at := max(slices.Index(w.Ref.Items(checker.Components), w.Ask.Item), 0) / 2
	from := min(max(at-(n-1)/2, 0), len(table)-n)
	// The heading stays, so one row less of the others.
	return slices.Concat(table[:1], table[1+from:from+n])
}

// Under is the read-back of what is typed; in an empty line, a sample of what can
// be typed and the problem's letters.
func (w Work) Under(s *Screen, cols, rows int) []frame.Row {
	switch width := cols - Gutter - 1; {
	case s.Command != nil:
		return s.CommandRows()
	case s.Line.IsEmpty():
		return w.sample(s.Pen, width, rows)
	case w.Reading.Echo == "":
		return []frame.Row{s.Labelled(wordRead, s.Look.Row(frame.Quiet, saidUnreadable))}
	default:
		return s.labelledAll(wordRead, w.Reading.Rows(s.Pen, w.Stage(), width, rows))
	}
}

func (w Work) sample(p *Pen, width, room int) []frame.Row {
	if !w.Open {
		return nil
	}
	rows := p.LabelledText(WordSample, w.Ask.Sample, width+Gutter+1)
	rows = rows[:min(len(rows), 2)]
	if w.Choosing() || len(rows) >= room { // while choosing, letters would tell which forces act
		return rows
	}
	for i, part := range p.Look.Wrap(w.Ask.Letters, width) {
		if i < 2 {
			rows = append(rows, p.Labelled("", p.Tint(frame.Quiet, part, true)))
		}
	}
	return rows
}
