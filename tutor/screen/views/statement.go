package views

import (
	"slices"

	"example.org/standstill/tutor/screen/frame"
)

// statement is the problem's text.
func (l *Lesson) statement(s *Screen, cols int) []frame.Row {
	return s.Memos.statement.get(pageKey{l.Version, cols}, func() []frame.Row {
		var rows []frame.Row
		for _, part := range s.Look.Wrap(l.Statement, cols) {
			rows = append(rows, s.Tint(frame.Plain, part, true))
		}
		return rows
	})
}

// givens lists what is given, with what each letter is where there is room for it.
func (l *Lesson) givens(p *Pen, cols, rows int) []frame.Row {
	var short []string
	var long []frame.Row
	letters := 0
	for _, g := range l.Givens {
		if g.Meaning != "" && g.Meaning != wordMass {
			letters = max(letters, frame.TextWidth(p.Look.Letters(g.Text())))
		}
	}
	for _, g := range l.Givens {
		// Half a meaning would mislead; the text of the problem has it too.
		if g.Meaning == "" || g.Meaning == wordMass || letters+2+frame.TextWidth(g.Meaning) > cols {
			short = append(short, g.Text())
			continue
		}
		r := p.Tint(frame.Plain, g.Text(), false).Padded(letters + 2)
		long = append(long, append(r, p.Look.Text(frame.Quiet, g.Meaning)))
	}
	out := append(p.spaced(short, cols), long...)
	if len(out) <= rows {
		return out
	}
	// With no room for all of them, the meanings go and the numbers stay.
	short = nil
	for _, g := range l.Givens {
		short = append(short, g.Text())
	}
	return p.spaced(short, cols)
}

// ProblemText is the text with what is given and asked, to be read.
func (l *Lesson) ProblemText(s *Screen, cols int) []frame.Row {
	rows := append(slices.Clone(l.statement(s, cols-2)), nil)
	for _, g := range l.Givens {
		text := g.Text()
		if g.Meaning != "" {
			text += "  " + g.Meaning
		}
		rows = append(rows, s.Tint(frame.Plain, text, false))
	}
	return frame.Indented(append(rows, nil, s.Tint(frame.Plain, saidFind(l.Wanted), true)))
}
