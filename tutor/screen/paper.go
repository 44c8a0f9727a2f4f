package screen

import (
	"slices"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
)

// markWidth is the width of the marks at the left edge of the page.
const markWidth = 11

// paper is the working so far, one line under the other, each with its mark and
// with what was said about it.
func (m *model) paper(cols int) []frame.Row {
	return m.memos.paper.get(paperKey{m.now.version, cols}, func() []frame.Row {
		var rows []frame.Row
		lines := m.lesson.Lines()
		for i := range lines {
			l := &lines[i]
			if l.Kind == tutor.Hinted && l.Message == m.told.text {
				continue // it stands under the line
			}
			elsewhere := ""
			if i == len(lines)-1 || lines[i+1].Kind == tutor.Hinted && i == len(lines)-2 {
				elsewhere = m.told.text
			}
			rows = append(rows, m.paperLine(l, elsewhere, cols)...)
		}
		return rows
	})
}

// paperLine is one line of the page; each line of a text with several has a mark and a
// message of its own, but for the message that is elsewhere on the screen.
func (m *model) paperLine(l *tutor.Line, elsewhere string, cols int) []frame.Row {
	switch l.Kind {
	case tutor.Hinted:
		return m.marked(hintMark(m.look, l.Level), l.Message, frame.Quiet, true, cols)
	case tutor.Revealed:
		return m.marked(mark{m.look.Signs.Shown, wordShown, frame.Quiet}, saidShown, frame.Quiet, true, cols)
	}
	if l.Kind == tutor.Guessed || l.Kind == tutor.Limited {
		return m.questionLine(l, cols)
	}
	var rows []frame.Row
	for i := range l.Statements() {
		rows = append(rows, m.statement(l, i, elsewhere, cols)...)
	}
	return rows
}

// questionLine is a prediction, or what was answered to the question after Solve.
func (m *model) questionLine(l *tutor.Line, cols int) []frame.Row {
	if l.Kind == tutor.Guessed {
		return m.marked(mark{m.look.Signs.Hint, wordPredict, frame.Quiet}, l.Message, frame.Quiet, true, cols)
	}
	rows := m.marked(m.markOf(l, l.Report), strings.ReplaceAll(l.Text, "\n", "; "), frame.Plain, false, cols)
	return append(rows, m.marked(mark{}, l.Message, frame.Quiet, true, cols)...)
}

// saidOf is what is said of one statement of a line: the judgement, and with the first
// that is wrong, else with the last, what the lesson says besides.
func saidOf(l *tutor.Line, at int) string {
	all := l.Statements()
	first := slices.IndexFunc(all, func(one checker.Report) bool { return one.Verdict == checker.Wrong })
	if first < 0 {
		first = len(all) - 1
	}
	if at != first {
		return all[at].Message
	}
	parts := []string{l.Doubt}
	if all[at].Verdict != checker.Wrong || len(l.Notes) == 0 {
		parts = append(parts, all[at].Message) // else the rule says where, too, and there is little room
	}
	parts = append(parts, l.Notes...)
	if l.OffersHint {
		parts = append(parts, saidHintIsNear)
	}
	return strings.Join(slices.DeleteFunc(parts, func(s string) bool { return s == "" }), " ")
}

func (m *model) statement(l *tutor.Line, at int, elsewhere string, cols int) []frame.Row {
	one := l.Statements()[at]
	text := m.flat(one.Stage, one.Read)
	if one.Read == "" {
		text = strings.ReplaceAll(one.Text, "\n", "; ")
	}
	if one.Item != "" && one.Stage != checker.Solve && !strings.Contains(text, "=") {
		text = itemName(one.Item) + ": " + text
	}
	rows := m.marked(m.markOf(l, one), text, frame.Plain, false, cols)
	if said := saidOf(l, at); said != "" && said != elsewhere {
		rows = append(rows, m.marked(mark{}, said, frame.Quiet, true, cols)...)
	}
	return rows
}

// mark is a sign and a word.
type mark struct {
	sign, word string
	shade      frame.Shade
}

func (m *model) markOf(l *tutor.Line, one checker.Report) mark {
	s := m.look.Signs
	switch {
	case one.Verdict == checker.Right:
		return mark{s.Right, wordRight, frame.Good}
	case l.Accepted:
		return mark{s.Right, wordAccepted, frame.Good}
	case l.Kept:
		return mark{s.Kept, wordKept, frame.Near}
	case one.Verdict == checker.Almost:
		return mark{s.Almost, wordAlmost, frame.Near}
	case one.Verdict == checker.Wrong:
		return mark{s.Wrong, wordWrong, frame.Bad}
	}
	return mark{s.Unread, wordUnread, frame.Near}
}

func hintMark(l *frame.Look, level int) mark {
	return mark{l.Signs.Hint, wordHint(level), frame.Quiet}
}

// marked puts a mark in front of a text that is wrapped behind it.
func (m *model) marked(k mark, text string, s frame.Shade, prose bool, cols int) []frame.Row {
	wrap := m.look.Wrap
	if prose {
		wrap = m.look.WrapMeasured
	}
	var rows []frame.Row
	for i, part := range wrap(text, cols-markWidth-1) {
		r := frame.Row{frame.Gap(markWidth)}
		if i == 0 && k.word != "" {
			r = frame.Row{frame.Gap(1), m.look.Text(k.shade, k.sign+" "+k.word)}.Padded(markWidth)
		}
		rows = append(rows, append(r, m.tint(s, part, prose)...))
	}
	return rows
}

// itemName is an item as it is shown: "T₁ₓ", on a body "A T₁ₓ".
func itemName(item string) string {
	if body, part, dotted := strings.Cut(item, "."); dotted {
		return body + " " + frame.OnPaper(part)
	}
	return frame.OnPaper(item)
}
