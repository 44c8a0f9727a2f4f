package bench

import (
	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// askView is what is shown with a question, and its choices.
type askView struct {
	title    string
	shows    []bench.Block
	choices  []bench.Choice
	marked   map[int]bool
	at, top  int
	warnings []string
	isBeside bool // the apparatus stands beside it
	sample   string
}

// Under is a sample of an answer.
func (a askView) Under(s *views.Screen, cols, rows int) []frame.Row {
	if a.sample == "" {
		return nil
	}
	return s.LabelledText(views.WordSample, a.sample, cols)
}

// Body has the picked choice in sight, to its end where there is room.
func (a askView) Body(s *views.Screen, cols, rows int) ([]frame.Row, frame.Seen) {
	draw := func(cols, rows int) ([]frame.Row, frame.Seen) { return a.list(s.Pen, cols, rows) }
	if a.isBeside {
		return besideApparatus(s, cols, rows, draw)
	}
	return draw(cols, rows)
}

// leastChoices is how many rows of choices are seen beside any warnings.
const leastChoices = 2

func (a askView) list(p *views.Pen, cols, rows int) ([]frame.Row, frame.Seen) {
	out := []frame.Row{p.Look.Rule(cols, a.title, "")}
	out = append(out, warningRows(p, a.warnings, cols, rows-1-leastChoices)...)
	room := rows - len(out)
	var all []frame.Row
	for _, b := range a.shows {
		for _, line := range b.Lines {
			all = append(all, pointRows(p, line, cols)...)
		}
	}
	from, to := 0, 0
	for i, c := range a.choices {
		if i == a.at {
			from = len(all)
		}
		all = append(all, a.choiceRows(p, i, c, cols)...)
		if i == a.at {
			to = len(all) - 1
		}
	}
	top := a.top
	if a.choices != nil {
		top = frame.Follow(frame.Follow(top, to, room), from, room)
	}
	shown, seen := frame.Window(all, top, room)
	return append(out, shown...), seen
}

func (a askView) choiceRows(p *views.Pen, i int, c bench.Choice, cols int) []frame.Row {
	label := p.Look.Row(frame.Plain, c.Label)
	if a.marked[i] {
		label = append(p.Look.Row(frame.Bold, wordMarked+"  "), label...)
	}
	rows := []frame.Row{p.Picked(i == a.at, label)}
	if c.Detail == "" {
		return rows
	}
	for _, part := range p.Look.WrapMeasured(c.Detail, cols-8) {
		rows = append(rows, append(frame.Row{frame.Gap(6)}, p.Look.Text(frame.Quiet, part)))
	}
	return rows
}

// pointRows is one of several points, behind a sign.
func pointRows(p *views.Pen, said string, cols int) []frame.Row {
	var rows []frame.Row
	for i, part := range p.Look.Wrap(said, cols-4) {
		r := frame.Row{frame.Gap(3)}
		if i == 0 {
			r = frame.Row{frame.Gap(1), p.Look.Text(frame.Near, p.Look.Signs.Disputed), frame.Gap(1)}
		}
		rows = append(rows, append(r, p.Tint(frame.Plain, part, true)...))
	}
	return rows
}
