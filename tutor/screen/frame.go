package screen

import (
	"slices"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
)

// The least screen on which a lesson can be led, the width from which the drawing stands
// beside page and line, and the height below which there is none in Forces.
const (
	leastCols = 60
	leastRows = 16
	wideCols  = 110
	lowRows   = 20
)

// view makes the whole screen.
func (m *model) view() string {
	if m.cols == 0 || m.rows == 0 {
		return ""
	}
	return m.look.Sheet(m.compose())
}

// compose fills the screen: head, sheet, line, keys, exactly as many rows as
// there are.
func (m *model) compose() []frame.Row {
	if m.isTooSmall() {
		return m.tooSmall()
	}
	rows := m.top()
	room := m.rows - len(rows) - keyRows
	if left := m.drawingCols(room); left > 0 {
		right := m.cols - left - 2
		rows = append(rows, frame.Columns(m.drawing(left, room), left+1, frame.Indented(m.middle(right, room)))...)
	} else {
		rows = append(rows, m.middle(m.cols, room)...)
	}
	rows = append(rows, m.keys()...)
	for i := range rows {
		rows[i] = rows[i].Cut(m.cols)
	}
	return rows[:m.rows]
}

// middle is what lies between head and keys in a width: the sheet's own part, and the line
// under it.
func (m *model) middle(cols, rows int) []frame.Row {
	bottom := m.bottom(cols, rows-leastBody)
	room := max(rows-len(bottom), 1)
	return append(frame.Fill(m.sheet.body(m, cols, room), room), bottom...)
}

// drawingCols is the width of the drawing that stands beside page and line on a wide
// screen, 0 where there is none.
func (m *model) drawingCols(rows int) int {
	if m.cols < wideCols || m.work == nil || m.sheet != sheet(m.work) {
		return 0
	}
	return min(m.cols*44/100, rows*5/2+8)
}

// top is the title, and the stages along their rope.
func (m *model) top() []frame.Row {
	title, right := saidProgram, ""
	if m.bench != nil {
		title, right = m.benchTop()
	}
	if m.lesson != nil {
		h := m.lesson.Problem.Heading
		title, right = h.Title, m.topic(h.Topic)+" "+m.look.Signs.Dash+" "+levelWord(h.Level)
	}
	if m.desk != nil {
		right = strings.TrimPrefix(right+" "+m.look.Signs.Dash+" "+m.desk.Student.Name, " "+m.look.Signs.Dash+" ")
	}
	last := m.look.Row(frame.Quiet, right).Cut(m.cols / 2)
	first := frame.Row{frame.Gap(1), m.look.Text(frame.Bold, title)}.Cut(m.cols - last.Width() - 3)
	line := append(first.Padded(m.cols-last.Width()-1), last...)
	return []frame.Row{line, m.stages()}
}

func (m *model) topic(id string) string {
	if m.work != nil && m.work.topic != "" {
		return m.work.topic
	}
	return id
}

// stages are the five words on a rope that is taut as far as the student has
// come.
func (m *model) stages() frame.Row {
	if m.isAtBench() {
		return m.steps()
	}
	if m.lesson == nil {
		return frame.Row{m.look.Text(frame.Quiet, strings.Repeat(m.look.Signs.Slack, m.cols))}
	}
	words := make([]frame.Span, len(checker.Stages))
	reached := len(checker.Stages)
	for i, stage := range checker.Stages {
		words[i] = m.stageWord(stage, m.now.stages[i])
		if m.now.open && stage == m.now.ask.Stage {
			reached = i
		}
	}
	return m.alongRope(words, reached)
}

// alongRope strings words on a rope that is taut up to one of them.
func (m *model) alongRope(words []frame.Span, reached int) frame.Row {
	taken := frame.Row(words).Width()
	if taken > m.cols {
		for i := range words {
			words[i] = m.look.Text(words[i].Shade, strings.TrimRight(words[i].Text, " "))
		}
	}
	rope := max((m.cols-taken)/(len(words)+1), 0)
	var r frame.Row
	for i, w := range words {
		r = append(r, m.rope(rope, i <= reached), w)
	}
	return append(r, m.rope(m.cols-r.Width(), reached == len(words)))
}

func (m *model) rope(n int, taut bool) frame.Span {
	if taut {
		return m.look.Text(frame.Plain, strings.Repeat(m.look.Signs.Taut, max(n, 0)))
	}
	return m.look.Text(frame.Quiet, strings.Repeat(m.look.Signs.Slack, max(n, 0)))
}

func (m *model) stageWord(stage checker.Stage, state stageState) frame.Span {
	title, s := tutor.Title(stage), m.look.Signs
	switch {
	case m.now.open && stage == m.now.ask.Stage:
		return m.look.Text(frame.Bold, s.HandLeft+" "+title+" "+s.HandRight)
	case state.nothing:
		return m.look.Text(frame.Quiet, " "+s.Nothing+" "+title+" ")
	case state.done && state.kept:
		return m.look.Text(frame.Near, " "+s.Kept+" "+title+" ")
	case state.done:
		return m.look.Text(frame.Good, " "+s.Done+" "+title+" ")
	}
	return m.look.Text(frame.Quiet, " "+title+" ")
}

// gutter is the width of the words in front of what is asked and typed.
const gutter = 9

// leastBody is how many rows of the sheet stay, however much is asked and said.
const leastBody = 5

// bottom is what is asked, the line, and what is under it, in at most so many rows. What is
// asked and said is shown to its end: drawing and page give way.
func (m *model) bottom(cols, most int) []frame.Row {
	width := cols - gutter - 1
	var asked []frame.Row
	for i, part := range m.look.WrapMeasured(m.sheet.question(m), width) {
		word := ""
		if i == 0 {
			word = wordAsked
		}
		asked = append(asked, m.labelled(word, m.tint(frame.Plain, part, true)))
	}
	least := m.underRows()
	under := m.under(cols, least)
	under = m.upTo(under, max(most-1-len(asked), least))
	under = frame.Fill(under, max(len(under), least))
	paint := func(text string) frame.Row { return m.tint(frame.Plain, text, false) }
	rows := append(m.upTo(asked, max(most-1-len(under), leastAsked)), m.lineRow(m.line.show(m.look, width, paint)))
	return append(rows, under...)
}

// leastAsked is how many rows of a question stay, however much is said.
const leastAsked = 2

// upTo is the beginning of a text in so many rows; where it goes on, it says so.
func (m *model) upTo(text []frame.Row, rows int) []frame.Row {
	if len(text) <= rows {
		return text
	}
	last := text[rows-1]
	more := m.look.Text(last[len(last)-1].Shade, " "+m.look.Signs.More)
	return append(text[:rows-1:rows-1], append(last.Cut(m.cols-more.Width), more))
}

// lineRow puts the word of the gutter in front of the line: with a mark while it is the
// text that was refused.
func (m *model) lineRow(r frame.Row) frame.Row {
	if !m.line.refused {
		return m.labelled(wordLine, r)
	}
	mark := m.look.Text(m.told.shade, m.told.sign+" ")
	label := m.look.Text(frame.Quiet, wordLine)
	return append(frame.Row{frame.Gap(gutter - 1 - label.Width - mark.Width), mark, label, frame.Gap(1)}, r...)
}

// underRows is how many rows there are under the line: enough for a fraction.
func (m *model) underRows() int {
	if m.rows < lowRows {
		return 2
	}
	return 3
}

// under is what is the matter with the line that was checked last; else what was just said,
// and what the sheet puts under the line, in so many rows where nothing is said.
func (m *model) under(cols, rows int) []frame.Row {
	width := cols - gutter - 1
	if m.said == "" && m.told.text != "" && m.isAtHome() {
		return m.explained(cols, rows)
	}
	var said []frame.Row
	if m.said != "" {
		said = m.noted(width)
	}
	if room := rows - len(said); room > 0 {
		said = append(said, m.upTo(m.sheet.under(m, cols, room), room)...)
	}
	return said
}

// noted is what was just said, with its word in the gutter.
func (m *model) noted(width int) []frame.Row {
	var said []frame.Row
	label, text := wordNote, m.said
	if m.bench != nil {
		label, text = noteOf(m.said)
	}
	for i, part := range m.look.Wrap(text, width) {
		word := ""
		if i == 0 {
			word = label
		}
		said = append(said, m.labelled(word, m.tint(frame.Plain, part, true)))
	}
	return said
}

// explained is what is the matter with the line that was checked last, the brightest text
// of the screen, under how the line is read now.
func (m *model) explained(cols, rows int) []frame.Row {
	var told []frame.Row
	label := m.told.sign + " " + m.told.word
	if frame.TextWidth(m.look.Letters(label)) > gutter-1 {
		label = m.told.sign
	}
	for _, part := range m.look.WrapMeasured(m.told.text, cols-gutter-1) {
		word := m.look.Text(m.told.shade, label)
		told = append(told, append(frame.Row{frame.Gap(gutter - 1 - word.Width), word, frame.Gap(1)}, m.tint(frame.Bold, part, true)...))
		label = ""
	}
	room := rows - len(told)
	if room < 1 {
		return told
	}
	return append(frame.Fill(m.sheet.under(m, cols, 1), 1), told...)
}

// labelled puts a word of the gutter in front of a row.
func (m *model) labelled(word string, r frame.Row) frame.Row {
	label := m.look.Text(frame.Quiet, word)
	return append(frame.Row{frame.Gap(gutter - 1 - label.Width), label, frame.Gap(1)}, r...)
}

// keyRows is how many rows say which keys work now.
const keyRows = 1

// keys says which keys work now. Where they do not all fit, those of the stage give way,
// the last first: hint, problem, menu and the way out stay, because whoever is stuck
// looks for them.
func (m *model) keys() []frame.Row {
	all := m.sheet.keys(m)
	for {
		rows := m.layKeys(all, 2)
		at := m.leastKey(all)
		if len(rows) > keyRows && at < 0 {
			rows = m.layKeys(all, 1)
		}
		if len(rows) <= keyRows || at < 0 {
			return frame.Fill(rows, keyRows)
		}
		all = slices.Delete(slices.Clone(all), at, at+1)
	}
}

// leastKey is the key that gives way first; -1 where none may.
func (m *model) leastKey(all []binding) int {
	for at := len(all) - 3; at >= 0; at-- {
		if k := all[at].Help().Key; k != m.on.handIn.Help().Key && !slices.Contains(m.stayKeys(), k) {
			return at
		}
	}
	return -1
}

// stayKeys are those of the hint, and of the problem's text where that is not in sight.
func (m *model) stayKeys() []string {
	switch {
	case m.lesson == nil || m.isAtBench():
		return nil
	case m.choosing():
		return []string{"ctrl+g"}
	}
	return []string{"ctrl+g", "ctrl+r"}
}

func (m *model) layKeys(all []binding, space int) []frame.Row {
	var rows []frame.Row
	line := frame.Row{frame.Gap(1)}
	for _, b := range all {
		entry := frame.Row{m.look.Text(frame.Bold, b.Help().Key), frame.Gap(1), m.look.Text(frame.Quiet, b.Help().Desc)}
		if line.Width()+entry.Width()+space > m.cols && line.Width() > 1 {
			rows = append(rows, line)
			line = frame.Row{frame.Gap(1)}
		}
		if line.Width() > 1 {
			line = append(line, frame.Gap(space))
		}
		line = append(line, entry...)
	}
	return append(rows, line)
}
