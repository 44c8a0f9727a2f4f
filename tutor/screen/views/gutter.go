package views

import "example.org/standstill/tutor/screen/frame"

// Gutter is the width of the words in front of what is asked, typed and said.
const Gutter = 9

// Labelled puts a word of the gutter in front of a row.
func (p *Pen) Labelled(word string, r frame.Row) frame.Row {
	label := p.Look.Text(frame.Quiet, word)
	return append(frame.Row{frame.Gap(Gutter - 1 - label.Width), label, frame.Gap(1)}, r...)
}

// LabelledText is a text that is read once, wrapped behind a word.
func (p *Pen) LabelledText(word, text string, cols int) []frame.Row {
	var rows []frame.Row
	for _, part := range p.Look.Wrap(text, cols-Gutter-1) {
		rows = append(rows, p.Labelled(word, p.Look.Row(frame.Quiet, part)))
		word = ""
	}
	return rows
}

// LabelledProse is a text with its forces in their colours, wrapped behind a word.
func (p *Pen) LabelledProse(word, text string, cols int) []frame.Row {
	var rows []frame.Row
	for _, part := range p.Look.WrapMeasured(text, cols-Gutter-1) {
		rows = append(rows, p.Labelled(word, p.Tint(frame.Plain, part, true)))
		word = ""
	}
	return rows
}

// labelledAll puts a word in front of the middle one of some rows.
func (p *Pen) labelledAll(word string, rows []frame.Row) []frame.Row {
	// A stacked fraction has its bar there.
	base := len(rows) / 2
	for i := range rows {
		label := ""
		if i == base {
			label = word
		}
		rows[i] = p.Labelled(label, rows[i])
	}
	return rows
}

// Label is a text behind a word of the gutter. Prose has forces in it, and may be as bright
// as what is typed.
type Label struct {
	Word, Text string
	IsProse    bool
}

// Labels are several of them, one under the other.
func (p *Pen) Labels(all []Label, cols int) []frame.Row {
	var rows []frame.Row
	for _, l := range all {
		if l.IsProse {
			rows = append(rows, p.LabelledProse(l.Word, l.Text, cols)...)
		} else {
			rows = append(rows, p.LabelledText(l.Word, l.Text, cols)...)
		}
	}
	return rows
}
