package views

import (
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
)

// head is the row of the title.
func (s *Screen) head() frame.Row {
	// A long name must not push the problem's title off the screen.
	last := s.Look.Row(frame.Quiet, s.Right).Cut(s.Cols / 2)
	first := frame.Row{frame.Gap(1), s.Look.Text(frame.Bold, s.Title)}.Cut(s.Cols - last.Width() - 3)
	return append(first.Padded(s.Cols-last.Width()-1), last...)
}

// Rope is words on a rope that is taut up to one of them; a slack one where there are no
// words.
type Rope struct {
	Words   []frame.Span
	Reached int
}

func (r Rope) row(look *frame.Look, cols int) frame.Row {
	if r.Words == nil {
		return frame.Row{slack(look, cols)}
	}
	words := r.Words
	taken := frame.Row(words).Width()
	if taken > cols {
		words = make([]frame.Span, len(r.Words))
		for i, w := range r.Words {
			// The blanks around the words go first.
			words[i] = look.Text(w.Shade, strings.TrimRight(w.Text, " "))
		}
	}
	piece := func(n int, isTaut bool) frame.Span {
		if isTaut {
			return look.Text(frame.Plain, strings.Repeat(look.Signs.Taut, max(n, 0)))
		}
		return slack(look, n)
	}
	between := max((cols-taken)/(len(words)+1), 0)
	var row frame.Row
	for i, w := range words {
		row = append(row, piece(between, i <= r.Reached), w)
	}
	// The rest of the division is here, so that the rope ends at the edge.
	return append(row, piece(cols-row.Width(), r.Reached == len(words)))
}

func slack(look *frame.Look, cols int) frame.Span {
	return look.Text(frame.Quiet, strings.Repeat(look.Signs.Slack, max(cols, 0)))
}

// RopeOf are the five stages of a lesson, as far as the student has come.
func RopeOf(look *frame.Look, l *Lesson) Rope {
	r := Rope{Words: make([]frame.Span, len(checker.Stages)), Reached: len(checker.Stages)}
	for i, stage := range checker.Stages {
		r.Words[i] = stageWord(look, l, i)
		if l.Open && stage == l.Ask.Stage {
			r.Reached = i
		}
	}
	return r
}

func stageWord(look *frame.Look, l *Lesson, i int) frame.Span {
	stage, state := checker.Stages[i], l.Stages[i]
	title, s := tutor.Title(stage), look.Signs
	switch {
	case l.Open && stage == l.Ask.Stage:
		return InHand(look, title)
	case state.Nothing:
		return look.Text(frame.Quiet, " "+s.Nothing+" "+title+" ")
	case state.Done && state.Disputed:
		return look.Text(frame.Near, " "+s.Disputed+" "+title+" ")
	case state.Done:
		return look.Text(frame.Good, " "+s.Done+" "+title+" ")
	}
	return look.Text(frame.Quiet, " "+title+" ")
}

// InHand is the word of what is in hand, between two hands.
func InHand(look *frame.Look, word string) frame.Span {
	return look.Text(frame.Bold, look.Signs.HandLeft+" "+word+" "+look.Signs.HandRight)
}
