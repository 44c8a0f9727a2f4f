package views

import (
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
)

// Welcome is the first screen, which asks who is practising.
type Welcome struct{}

// Under is a sample of a name.
func (Welcome) Under(s *Screen, cols, rows int) []frame.Row {
	return s.LabelledText(WordSample, saidNameSample, cols)
}

// Body is something that stands still, and what the program is for.
func (Welcome) Body(s *Screen, cols, rows int) ([]frame.Row, frame.Seen) {
	left, between := cols*45/100, []frame.Row{nil}
	if s.Rows < LowRows {
		left, between = cols*28/100, nil
	}
	var right []frame.Row
	for _, p := range []string{saidWelcome1, saidWelcome2, saidWelcome3} {
		right = append(append(right, between...), s.Look.Rows(frame.Plain, p, cols-left-2)...)
	}
	return frame.Columns(s.Paint(sign(), left, rows), left+1, frame.Indented(right)), frame.Seen{}
}

// sign is the drawing of the first screen.
func sign() picture.Scene {
	return picture.Scene{
		Bodies: []picture.Body{{Shape: picture.Ring, Bare: true}},
		Forces: []picture.Force{
			{Kind: picture.Tension, Direction: 148, Colour: 0},
			{Kind: picture.Tension, Direction: 55, Colour: 1},
			{Kind: picture.Weight, Direction: -90, Colour: 2},
		},
	}
}

// Agree is a notice of the record, to be agreed to.
type Agree struct{ Notice string }

// Under is empty.
func (Agree) Under(*Screen, int, int) []frame.Row { return nil }

// Body is the notice.
func (a Agree) Body(s *Screen, cols, rows int) ([]frame.Row, frame.Seen) {
	return append([]frame.Row{nil}, s.Look.Rows(frame.Plain, a.Notice, cols)...), frame.Seen{}
}

// TooSmall says that the window is too small for what, and what can be done about it.
func TooSmall(look *frame.Look, what string, cols, rows int) []frame.Row {
	out := look.Rows(frame.Plain, saidTooSmall(what, cols, rows), cols)
	out = append(out, look.Rows(frame.Bold, saidTooSmallKeys, cols)...)
	for i := range out {
		out[i] = out[i].Cut(cols)
	}
	return frame.Fill(out, rows)
}
