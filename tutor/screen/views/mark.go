package views

import (
	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
)

// Mark is a sign and a word that says the same.
type Mark struct {
	Sign, Word string
	Shade      frame.Shade
}

// MarkOf is the mark of one statement of a line.
func MarkOf(look *frame.Look, l *tutor.Line, one checker.Report) Mark {
	s := look.Signs
	switch {
	case one.Verdict == checker.Right:
		return Mark{s.Right, wordRight, frame.Good}
	case l.Accepted:
		return Mark{s.Right, wordAccepted, frame.Good}
	case l.Disputed:
		return Mark{s.Disputed, wordDisputed, frame.Near}
	case one.Verdict == checker.Almost:
		return Mark{s.Almost, wordAlmost, frame.Near}
	case one.Verdict == checker.Wrong:
		return Mark{s.Wrong, wordWrong, frame.Bad}
	}
	return Mark{s.Unclear, wordUnread, frame.Near}
}

// HintMark is the mark of a hint of a level.
func HintMark(look *frame.Look, level int) Mark {
	return Mark{look.Signs.Hint, wordHint(level), frame.Quiet}
}

// markWidth is the width of the marks at the left edge of the page.
const markWidth = 11

// Marked puts a mark in front of a text that is wrapped behind it.
func (p *Pen) Marked(k Mark, text string, s frame.Shade, prose bool, cols int) []frame.Row {
	wrap := p.Look.Wrap
	if prose {
		wrap = p.Look.WrapMeasured
	}
	var rows []frame.Row
	for i, part := range wrap(text, cols-markWidth-1) {
		r := frame.Row{frame.Gap(markWidth)}
		if i == 0 && k.Word != "" {
			r = frame.Row{frame.Gap(1), p.Look.Text(k.Shade, k.Sign+" "+k.Word)}.Padded(markWidth)
		}
		rows = append(rows, append(r, p.Tint(s, part, prose)...))
	}
	return rows
}
