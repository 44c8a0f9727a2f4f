package bench

import (
	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// formView is what is measured: fields under their headings, beside the apparatus.
type formView struct {
	fields   []fieldView
	at, top  int
	bad      int // fields
	warnings []string
	under    []views.Label
}

// fieldView is a field with what the problem's file says in its place, "" for nothing.
type fieldView struct {
	*bench.Field
	file string
}

// Under is how the line is taken.
func (f formView) Under(s *views.Screen, cols, rows int) []frame.Row {
	if s.Command != nil {
		return s.CommandRows()
	}
	return s.Labels(f.under, cols)
}

// Shares of the screen that the drawing takes beside the form.
const (
	narrowDrawing = 28
	wideDrawing   = 38
	leastForm     = 76 // columns from which there is room for a drawing
)

// Body is the apparatus with the measured angles, and the form beside it.
func (f formView) Body(s *views.Screen, cols, rows int) ([]frame.Row, frame.Seen) {
	return besideApparatus(s, cols, rows, func(cols, rows int) ([]frame.Row, frame.Seen) { return f.list(s.Pen, cols, rows) })
}

func besideApparatus(s *views.Screen, cols, rows int, draw func(cols, rows int) ([]frame.Row, frame.Seen)) ([]frame.Row, frame.Seen) {
	share := narrowDrawing
	if cols >= views.WideCols {
		share = wideDrawing
	}
	if cols < leastForm {
		return draw(cols, rows)
	}
	left := min(cols*share/100, rows*5/2+8)
	right, seen := draw(cols-left-2, rows)
	return frame.Columns(s.Drawing(left, rows), left+1, frame.Indented(right)), seen
}

// leastFields is how many rows of the form are seen beside any warnings.
const leastFields = 4

// list is the fields under their headings, the one in hand in sight.
func (f formView) list(p *views.Pen, cols, rows int) ([]frame.Row, frame.Seen) {
	toMend := ""
	if f.bad > 0 {
		toMend = saidToMend(f.bad)
	}
	out := []frame.Row{p.Look.Rule(cols, wordMeasured, toMend)}
	out = append(out, warningRows(p, f.warnings, cols, rows-1-leastFields)...)
	room := rows - len(out)
	all, from, to := f.rows(p, cols)
	top := frame.Follow(frame.Follow(f.top, to, room), from, room)
	shown, seen := frame.Window(all, top, room)
	return append(out, shown...), seen
}

// rows are the fields; those from and to belong to the one in hand.
func (f formView) rows(p *views.Pen, cols int) (rows []frame.Row, from, to int) {
	c := columnsOf(f.fields, cols)
	heading := ""
	for i, e := range f.fields {
		if h := headingOf(e.Kind); h != heading {
			heading = h
			rows = append(rows, p.Look.Row(frame.Bold, " "+h))
		}
		if i == f.at {
			from = len(rows)
		}
		rows = append(rows, e.rows(p, i == f.at, c, cols)...)
		if i == f.at {
			to = len(rows) - 1
		}
	}
	return rows, from, to
}

func headingOf(k bench.Kind) string {
	switch k {
	case bench.Measure:
		return wordSums
	case bench.Reading:
		return wordScales
	case bench.Scale:
		return wordShared
	}
	return wordOwn
}

// rows are the name of a field, what stands in it and what was taken from it; under
// a bad one, what is the matter.
func (e fieldView) rows(p *views.Pen, isPicked bool, c fieldColumns, cols int) []frame.Row {
	l := p.Look
	shade, typed := frame.Plain, e.Typed
	if isPicked {
		shade = frame.Bold
	}
	taken := l.Row(frame.Quiet, e.Value.Short())
	switch {
	case e.Typed == "" && e.file != "":
		typed, taken = e.file, l.Row(frame.Quiet, wordFromFile)
		shade = frame.Quiet
	case e.Typed == "":
		typed = l.Signs.Nothing
		shade = frame.Quiet
	}
	name, room := p.Tint(frame.Bold, e.Name(), false).Padded(c.name), c.typed
	isWide := frame.TextWidth(l.Letters(typed)) > room
	if isWide { // what was taken goes under it
		room = cols - 3 - c.name
	}
	r := append(name, l.Text(shade, l.Shortened(typed, room)))
	if !isWide {
		r = append(r.Padded(c.name+c.typed+1), taken...)
	}
	rows := []frame.Row{p.Picked(isPicked, r)}
	if isWide && taken.Width() > 0 {
		rows = append(rows, append(frame.Row{frame.Gap(3 + c.name)}, taken...))
	}
	if e.Why != "" {
		mend := views.Mark{Sign: l.Signs.Unclear, Word: wordMend, Shade: frame.Near}
		rows = append(rows, p.Marked(mend, beginning(e.Why), frame.Near, true, cols)...)
	}
	return rows
}

// fieldColumns are how wide a field's name is and what is typed in it; behind these
// stands what was taken from it.
type fieldColumns struct{ name, typed int }

// columnsOf gives what was taken the room that it needs, if at least a short value can be
// seen beside it.
func columnsOf(fields []fieldView, cols int) fieldColumns {
	name, taken := 0, frame.TextWidth(wordFromFile)
	for _, e := range fields {
		name, taken = max(name, frame.TextWidth(e.Name())+2), max(taken, frame.TextWidth(e.Value.Short()))
	}
	return fieldColumns{name, max(cols-3-name-1-taken, shortValue)}
}

// shortValue is the least width in which a value is shown.
const shortValue = 12
