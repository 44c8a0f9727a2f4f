package views

import "example.org/standstill/tutor/screen/frame"

// Told is what is the matter with the line that was checked last, with the mark that the
// page has for it. Shown says that it stands under the line.
type Told struct {
	Mark
	Text  string
	Shown bool
}

// Note is a sentence about what was just done, with its word in the gutter.
type Note struct{ Word, Text string }

// NoteOf is a sentence with the usual word.
func NoteOf(text string) Note { return Note{wordNote, text} }

// bottom is what is asked, the line, and what is under it, in at most so many rows. What is
// asked and said is shown to its end: drawing and page give way.
func (s *Screen) bottom(cols, most int) []frame.Row {
	width := cols - Gutter - 1
	asked := s.LabelledProse(wordAsked, s.Question, cols)
	// Never fewer, so that the page does not jump up and down with every sentence.
	least := s.underRows()
	under := s.under(cols, least)
	under = s.upTo(under, max(most-1-len(asked), least))
	under = frame.Fill(under, max(len(under), least))
	paint := func(text string) frame.Row { return s.Tint(frame.Plain, text, false) }
	rows := append(s.upTo(asked, max(most-1-len(under), leastAsked)), s.lineRow(s.Line.Show(s.Look, width, paint)))
	return append(rows, under...)
}

// leastAsked is how many rows of a question stay, however much is said.
const leastAsked = 2

// upTo is the beginning of a text in so many rows; where it goes on, it says so.
func (s *Screen) upTo(text []frame.Row, rows int) []frame.Row {
	if len(text) <= rows {
		return text
	}
	last := text[rows-1]
	// A text that just stops would look as if it were whole.
	more := s.Look.Text(last[len(last)-1].Shade, " "+s.Look.Signs.More)
	return append(text[:rows-1:rows-1], append(last.Cut(s.Cols-more.Width), more))
}

// lineRow puts the word of the gutter in front of the line: with a mark while it is the
// text that was refused.
func (s *Screen) lineRow(r frame.Row) frame.Row {
	if !s.Line.Refused {
		return s.Labelled(wordLine, r)
	}
	mark := s.Look.Text(s.Told.Shade, s.Told.Sign+" ")
	label := s.Look.Text(frame.Quiet, wordLine)
	return append(frame.Row{frame.Gap(Gutter - 1 - label.Width - mark.Width), mark, label, frame.Gap(1)}, r...)
}

// underRows is how many rows there are under the line: enough for a fraction.
func (s *Screen) underRows() int {
	if s.Rows < LowRows {
		return 2
	}
	return 3
}

// under is what is the matter with the line that was checked last; else what was just said,
// and what the sheet puts under the line, in so many rows where nothing is said.
func (s *Screen) under(cols, rows int) []frame.Row {
	if s.Note.Text == "" && s.Told.Shown {
		return s.explained(cols, rows)
	}
	var said []frame.Row
	if s.Note.Text != "" {
		said = s.noted(cols)
	}
	if room := rows - len(said); room > 0 {
		said = append(said, s.upTo(s.Sheet.Under(s, cols, room), room)...)
	}
	return said
}

func (s *Screen) noted(cols int) []frame.Row {
	var said []frame.Row
	word := s.Note.Word
	for _, part := range s.Look.Wrap(s.Note.Text, cols-Gutter-1) {
		said = append(said, s.Labelled(word, s.Tint(frame.Plain, part, true)))
		word = ""
	}
	return said
}

// explained is what is the matter with the line that was checked last, the brightest text
// of the screen, under how the line is read now.
func (s *Screen) explained(cols, rows int) []frame.Row {
	var told []frame.Row
	label := s.Told.Sign + " " + s.Told.Word
	if frame.TextWidth(s.Look.Letters(label)) > Gutter-1 {
		// The gutter is narrow, and the sign alone says what the word would.
		label = s.Told.Sign
	}
	for _, part := range s.Look.WrapMeasured(s.Told.Text, cols-Gutter-1) {
		word := s.Look.Text(s.Told.Shade, label)
		told = append(told, append(frame.Row{frame.Gap(Gutter - 1 - word.Width), word, frame.Gap(1)}, s.Tint(frame.Bold, part, true)...))
		label = ""
	}
	room := rows - len(told)
	if room < 1 {
		return told
	}
	// How the line is read stays in sight, because it changes while the message is read.
	return append(frame.Fill(s.Sheet.Under(s, cols, 1), 1), told...)
}

// CommandRows say what the command does that stands in the line.
func (s *Screen) CommandRows() []frame.Row {
	return []frame.Row{s.Labelled(wordMeans, s.Look.Row(frame.Plain, *s.Command))}
}
