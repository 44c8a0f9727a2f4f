package screen

import (
	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/screen/frame"
)

// question says what the line is for.
func (f *form) question(m *model) string {
	if f.asking != nil {
		return f.asking.Text
	}
	return m.bench.table.Form.Question(f.at)
}

// under is how the line is taken, or why it cannot be yet; a sample where it is empty.
func (f *form) under(m *model, cols, rows int) []frame.Row {
	text := f.meant(m, m.line.text())
	word, isWord := m.wordOf(text)
	switch {
	case isWord:
		return []frame.Row{m.labelled(wordMeans, m.look.Row(frame.Plain, m.whatItDoes(word)))}
	case f.asking != nil:
		return f.underAsked(m, cols)
	case m.line.isEmpty(), text == f.field(m).Typed && f.field(m).Why != "":
		// What is the matter with a bad value stands beside it.
		return m.labelledText(wordSample, m.bench.table.Form.Sample(f.at), cols)
	case bench.Assigns(text):
		return m.assigned(text, cols)
	}
	return m.taken(f.at, text, cols)
}

// underAsked are the choices of what is asked about a field, or a sample.
func (f *form) underAsked(m *model, cols int) []frame.Row {
	var rows []frame.Row
	for _, c := range f.asking.Choices {
		rows = append(rows, m.labelledText("", c.Label, cols)...)
	}
	if rows == nil && f.asking.Sample != "" {
		rows = m.labelledText(wordSample, f.asking.Sample, cols)
	}
	return rows
}

// assigned is how a line that names its field is taken.
func (m *model) assigned(text string, cols int) []frame.Row {
	field, value, why := m.bench.table.Form.Aim(text)
	if why != "" {
		return m.labelledText(wordNotYet, beginning(why), cols)
	}
	return m.taken(field, value, cols)
}

func (m *model) taken(field int, text string, cols int) []frame.Row {
	taken, why := m.bench.table.Form.Echo(field, text)
	if why != "" {
		return m.labelledText(wordNotYet, beginning(why), cols)
	}
	name := m.bench.table.Form.Fields[field].Name()
	return m.labelledProse(wordTaken, name+" = "+taken, cols)
}

// labelledProse is a text with its forces in their colours, wrapped behind a word.
func (m *model) labelledProse(word, text string, cols int) []frame.Row {
	var rows []frame.Row
	for _, part := range m.look.WrapMeasured(text, cols-gutter-1) {
		rows = append(rows, m.labelled(word, m.tint(frame.Plain, part, true)))
		word = ""
	}
	return rows
}

// Shares of the screen that the drawing takes beside the form.
const (
	narrowDrawing = 28
	wideDrawing   = 38
	leastForm     = 76 // columns from which there is room for a drawing
)

// body is the apparatus with the measured angles, and the form beside it.
func (f *form) body(m *model, cols, rows int) []frame.Row {
	return m.besideApparatus(cols, rows, func(cols, rows int) []frame.Row { return f.list(m, cols, rows) })
}

func (m *model) besideApparatus(cols, rows int, make func(cols, rows int) []frame.Row) []frame.Row {
	share := narrowDrawing
	if cols >= wideCols {
		share = wideDrawing
	}
	if cols < leastForm {
		return make(cols, rows)
	}
	left := min(cols*share/100, rows*5/2+8)
	return frame.Columns(m.drawing(left, rows), left+1, frame.Indented(make(cols-left-2, rows)))
}

// list is the fields under their headings, the one in hand in sight.
func (f *form) list(m *model, cols, rows int) []frame.Row {
	out := []frame.Row{m.look.Rule(cols, wordMeasured, m.toMend())}
	out = append(out, m.warningRows(m.bench.warnings, cols, rows-1-leastFields)...)
	room := rows - len(out)
	all, from, to := f.rows(m, cols)
	f.follow(to, len(all), room)
	f.follow(from, len(all), room)
	return append(out, f.cut(all, room)...)
}

// leastFields is how many rows of the form are seen beside any warnings.
const leastFields = 4

// toMend counts the fields that are bad.
func (m *model) toMend() string {
	if n := len(m.bench.table.Form.Bad()); n > 0 {
		return saidToMend(n)
	}
	return ""
}

// rows are the fields; those from and to belong to the one in hand.
func (f *form) rows(m *model, cols int) (rows []frame.Row, from, to int) {
	fields := m.bench.table.Form.Fields
	c := columnsOf(fields, cols)
	heading := ""
	for i := range fields {
		if h := headingOf(fields[i].Kind); h != heading {
			heading = h
			rows = append(rows, m.look.Row(frame.Bold, " "+h))
		}
		if i == f.at {
			from = len(rows)
		}
		rows = append(rows, f.fieldRows(m, i, c, cols)...)
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

// fieldRows are the name of a field, what stands in it and what was taken from it; under
// a bad one, what is the matter.
func (f *form) fieldRows(m *model, i int, c fieldColumns, cols int) []frame.Row {
	l, e := m.look, &m.bench.table.Form.Fields[i]
	shade, typed := frame.Plain, e.Typed
	if i == f.at {
		shade = frame.Bold
	}
	taken := l.Row(frame.Quiet, e.Value.Short())
	switch file := m.bench.table.Form.File(e); {
	case e.Typed == "" && file != "":
		typed, taken = file, l.Row(frame.Quiet, wordFromFile)
		shade = frame.Quiet
	case e.Typed == "":
		typed = l.Signs.Nothing
		shade = frame.Quiet
	}
	name, room := m.tint(frame.Bold, e.Name(), false).Padded(c.name), c.typed
	isWide := frame.TextWidth(l.Letters(typed)) > room
	if isWide { // what was taken goes under it
		room = cols - 3 - c.name
	}
	r := append(name, l.Text(shade, l.Shortened(typed, room)))
	if !isWide {
		r = append(r.Padded(c.name+c.typed+1), taken...)
	}
	rows := []frame.Row{m.pickRow(i == f.at, r)}
	if isWide && taken.Width() > 0 {
		rows = append(rows, append(frame.Row{frame.Gap(3 + c.name)}, taken...))
	}
	if e.Why != "" {
		rows = append(rows, m.marked(mark{l.Signs.Unread, wordMend, frame.Near}, beginning(e.Why), frame.Near, true, cols)...)
	}
	return rows
}

// fieldColumns are how wide a field's name is and what is typed in it; behind these
// stands what was taken from it.
type fieldColumns struct{ name, typed int }

// columnsOf gives what was taken the room that it needs, if at least a short value can be
// seen beside it.
func columnsOf(fields []bench.Field, cols int) fieldColumns {
	name, taken := 0, frame.TextWidth(wordFromFile)
	for i := range fields {
		name, taken = max(name, frame.TextWidth(fields[i].Name())+2), max(taken, frame.TextWidth(fields[i].Value.Short()))
	}
	return fieldColumns{name, max(cols-3-name-1-taken, shortValue)}
}

// shortValue is the least width in which a value is shown.
const shortValue = 12
