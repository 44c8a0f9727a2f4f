package views

import (
	"slices"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
)

// page is the rule, and as much of the working as fits, its end first.
func (w Work) page(s *Screen, cols, rows int) ([]frame.Row, frame.Seen) {
	written := w.working(s, cols)
	room := max(rows-1, 0)
	// The window may have grown since the key was pressed.
	scroll := min(w.Scroll, max(len(written)-room, 0))
	end := len(written) - scroll
	from := max(end-room, 0)
	above := ""
	if from > 0 {
		above = saidAbove(from)
	}
	seen := frame.Seen{Top: from, Rows: len(written), Room: room}
	out := []frame.Row{s.Look.Rule(cols, WordPage, above)}
	if written == nil {
		return frame.Fill(append(out, emptyPage(s.Look, cols)...), rows), seen
	}
	return frame.Fill(append(out, written[from:end]...), rows), seen
}

func emptyPage(look *frame.Look, cols int) []frame.Row {
	return look.Rows(frame.Quiet, saidPageEmpty, cols)
}

// working is what was written so far, one line under the other, each with its mark and
// with what was said about it.
func (w Work) working(s *Screen, cols int) []frame.Row {
	return s.Memos.page.get(pageKey{w.Version, cols}, func() []frame.Row {
		var rows []frame.Row
		lines := w.Lines
		for i := range lines {
			l := &lines[i]
			if l.Kind == tutor.Hinted && l.Message == w.Told {
				continue // it stands under the line
			}
			elsewhere := ""
			if i == len(lines)-1 || lines[i+1].Kind == tutor.Hinted && i == len(lines)-2 {
				// What is under the line now is not said a second time above it.
				elsewhere = w.Told
			}
			rows = append(rows, s.pageLine(l, elsewhere, cols)...)
		}
		return rows
	})
}

// WholePage is the working from the beginning, stage by stage.
func (l *Lesson) WholePage(s *Screen, cols int) []frame.Row {
	var rows []frame.Row
	for _, stage := range checker.Stages {
		lines := l.of(stage)
		if len(lines) == 0 {
			continue
		}
		rows = append(rows, s.Look.Row(frame.Bold, " "+tutor.Title(stage)))
		for _, line := range lines {
			rows = append(rows, s.pageLine(line, "", cols)...)
		}
		rows = append(rows, nil)
	}
	if rows == nil {
		return emptyPage(s.Look, cols)
	}
	return rows
}

// pageLine is one line of the page; each line of a text with several has a mark and a
// message of its own, but for the message that is elsewhere on the screen.
func (p *Pen) pageLine(l *tutor.Line, elsewhere string, cols int) []frame.Row {
	switch l.Kind {
	case tutor.Hinted:
		return p.Marked(HintMark(p.Look, l.Level), l.Message, frame.Quiet, true, cols)
	case tutor.Revealed:
		return p.Marked(Mark{p.Look.Signs.Shown, wordShown, frame.Quiet}, saidShown, frame.Quiet, true, cols)
	case tutor.Guessed:
		return p.Marked(Mark{p.Look.Signs.Hint, wordPredict, frame.Quiet}, l.Message, frame.Quiet, true, cols)
	case tutor.Limited:
		rows := p.Marked(MarkOf(p.Look, l, l.Report), strings.ReplaceAll(l.AsTyped, "\n", "; "), frame.Plain, false, cols)
		return append(rows, p.Marked(Mark{}, l.Message, frame.Quiet, true, cols)...)
	}
	var rows []frame.Row
	for i := range l.Statements() {
		rows = append(rows, p.statement(l, i, elsewhere, cols)...)
	}
	return rows
}

func (p *Pen) statement(l *tutor.Line, at int, elsewhere string, cols int) []frame.Row {
	one := l.Statements()[at]
	text := p.Flat(one.Stage, one.Read)
	// What could not be read is shown as it was typed.
	if one.Read == "" {
		text = strings.ReplaceAll(one.Text, "\n", "; ")
	}
	// “T sin α” alone does not say which component it is.
	if one.Item != "" && one.Stage != checker.Solve && !strings.Contains(text, "=") {
		text = itemName(one.Item) + ": " + text
	}
	rows := p.Marked(MarkOf(p.Look, l, one), text, frame.Plain, false, cols)
	if said := SaidOf(l, at); said != "" && said != elsewhere {
		rows = append(rows, p.Marked(Mark{}, said, frame.Quiet, true, cols)...)
	}
	return rows
}

// SaidOf is what is said of one statement of a line: the judgement, and with the first
// that is wrong, else with the last, what the lesson says besides.
func SaidOf(l *tutor.Line, at int) string {
	all := l.Statements()
	first := slices.IndexFunc(all, func(one checker.Report) bool { return one.Verdict == checker.Wrong })
	if first < 0 {
		// What the lesson says besides goes with the end of the text, where all of it is right.
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

// TellOf is what is said of a line: of the first of its statements that is not right, or
// what is remarked on one that is.
func TellOf(look *frame.Look, l *tutor.Line) Told {
	var remark Told
	for i, part := range l.Statements() {
		t := Told{Text: SaidOf(l, i), Mark: MarkOf(look, l, part)}
		switch {
		case t.Text == "":
		case part.Verdict != checker.Right:
			return t
		case remark.Text == "":
			remark = t
		}
	}
	return remark
}

// itemName is an item as it is shown: "T₁ₓ", on a body "A T₁ₓ".
func itemName(item string) string {
	if body, part, dotted := strings.Cut(item, "."); dotted {
		return body + " " + frame.OnPaper(part)
	}
	return frame.OnPaper(item)
}
