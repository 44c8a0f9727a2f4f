package bench

import (
	"strings"

	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// pages are those of what comes of a run, in the order in which tab turns them.
var pages = []bench.Page{bench.PageResult, bench.PageBudget, bench.PagePlot, bench.PageValues}

// resultView is a page of what comes of a run.
type resultView struct {
	page   bench.Page
	result *bench.Result
	plot   picture.Scene
	notes  []string // about the plot
	top    int
	under  []views.Label
}

// Under is how the line is taken.
func (o resultView) Under(s *views.Screen, cols, rows int) []frame.Row {
	if s.Command != nil {
		return s.CommandRows()
	}
	return s.Labels(o.under, cols)
}

// Body is the names of the pages, and the one in hand; the plot has the whole width.
func (o resultView) Body(s *views.Screen, cols, rows int) ([]frame.Row, frame.Seen) {
	if o.page == bench.PagePlot {
		return append([]frame.Row{o.names(s.Look, cols)}, o.plotRows(s.Pen, cols, rows-1)...), frame.Seen{}
	}
	return s.BesideDrawing(cols, rows, func(cols, rows int) ([]frame.Row, frame.Seen) {
		shown, seen := frame.Window(o.rows(s.Pen, cols), o.top, rows-1)
		return append([]frame.Row{o.names(s.Look, cols)}, shown...), seen
	})
}

// names are those of the pages, the one in hand between hands.
func (o resultView) names(l *frame.Look, cols int) frame.Row {
	r := frame.Row{frame.Gap(1)}
	for _, page := range pages {
		word := capital(string(page))
		if page == o.page {
			r = append(r, views.InHand(l, word), frame.Gap(1))
			continue
		}
		r = append(r, l.Text(frame.Quiet, "  "+word+"  "), frame.Gap(1))
	}
	rest := max(cols-r.Width(), 0)
	return append(r, l.Text(frame.Quiet, strings.Repeat(l.Signs.Dotted, rest)))
}

func (o resultView) plotRows(p *views.Pen, cols, rows int) []frame.Row {
	var notes []frame.Row
	for _, note := range o.notes {
		notes = append(notes, p.Look.Rows(frame.Quiet, note, cols)...)
	}
	notes = notes[:min(len(notes), rows/3)]
	if o.plot.Plot == nil {
		return notes
	}
	return append(p.Paint(o.plot, cols-1, rows-len(notes)), notes...)
}

func (o resultView) rows(p *views.Pen, cols int) []frame.Row {
	switch o.page {
	case bench.PageBudget:
		return blockRows(p, o.result.Long(), cols)
	case bench.PageValues:
		return blockRows(p, o.result.MeasuredBlocks(), cols)
	}
	rows := warningRows(p, o.result.Warnings, cols, len(o.result.Warnings)*cols)
	return append(rows, blockRows(p, o.result.Short(), cols)...)
}
