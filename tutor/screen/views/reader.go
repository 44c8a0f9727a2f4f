package views

import (
	"strings"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
)

// Reader is rows to be read, beside the drawing where that has room.
type Reader struct {
	Title   string
	Content Content
	Top     int
	Beneath Sheet // that it lies over; nil for none
}

// Content is what is to be read, in a width.
type Content func(s *Screen, cols int) []frame.Row

// Under is that of the sheet beneath.
func (r Reader) Under(s *Screen, cols, rows int) []frame.Row { return under(r.Beneath, s, cols, rows) }

// Body is the title, and as much as fits.
func (r Reader) Body(s *Screen, cols, rows int) ([]frame.Row, frame.Seen) {
	return s.BesideDrawing(cols, rows, func(cols, rows int) ([]frame.Row, frame.Seen) {
		shown, seen := frame.Window(r.Content(s, cols), r.Top, rows-1)
		return append([]frame.Row{s.Look.Rule(cols, r.Title, "")}, shown...), seen
	})
}

// Sentences are paragraphs, one under the other.
func Sentences(sentences []string) Content {
	return func(s *Screen, cols int) []frame.Row {
		var rows []frame.Row
		for _, sentence := range sentences {
			for _, part := range s.Look.Wrap(sentence, cols-2) {
				rows = append(rows, append(frame.Row{frame.Gap(1)}, s.Tint(frame.Plain, part, true)...))
			}
		}
		return rows
	}
}

// Typing says what can be typed. Letters are those of the problem in hand, "" for none.
func Typing(letters string) Content {
	return func(s *Screen, cols int) []frame.Row {
		var rows []frame.Row
		add := func(label, text string, width int) { rows = append(rows, s.Entry(label, text, width, cols)...) }
		for _, n := range tutor.Notation() {
			add(n.What, n.Examples, 19)
		}
		if letters != "" {
			rows = append(rows, nil)
			add(wordLetters, letters, 19)
		}
		rows = append(rows, nil, s.Look.Row(frame.Quiet, " "+saidWords))
		for _, w := range tutor.Words() {
			add(string(w.Word), w.Does+".", 11)
		}
		return append(rows, nil, s.Look.Row(frame.Quiet, " "+saidCtrl))
	}
}

// Help says what is asked now in other words, and below it what can be typed.
func Help(lost tutor.Lost, mayHint bool, letters string) Content {
	return func(s *Screen, cols int) []frame.Row {
		rows := s.Entry(wordHelpNow, lost.Now, 11, cols)
		if lost.Example != "" {
			rows = append(rows, s.Entry(WordSample, lost.Example, 11, cols)...)
			if mayHint {
				rows = append(rows, s.Entry(wordHelpHint, saidAskHint, 11, cols)...)
			}
		}
		return append(append(rows, nil), Typing(letters)(s, cols)...)
	}
}

// Idea is one idea with how it went: a word, the last tries as signs, and where it went
// wrong last.
type Idea struct {
	tutor.HeldIdea
	SlippedIn string
}

// Ideas lists those that had their chance.
func Ideas(all []Idea) Content {
	return func(s *Screen, cols int) []frame.Row {
		if len(all) == 0 {
			return Sentences([]string{saidNoIdeas})(s, cols)
		}
		var rows []frame.Row
		for _, part := range s.Look.Wrap(saidIdeas, cols-2) {
			rows = append(rows, s.Look.Row(frame.Quiet, " "+part))
		}
		rows = append(rows, nil)
		// A terminal of seven bits has other signs.
		signs := strings.NewReplacer("✓", s.Look.Signs.Right, "✗", s.Look.Signs.Wrong)
		for _, one := range all {
			r := frame.Row{frame.Gap(1), s.Look.Text(frame.Plain, one.Title())}.Padded(ideaWidth)
			r = append(r, s.Look.Text(ideaShade(one.State), string(one.State))).Padded(ideaWidth + stateWidth)
			rows = append(rows, append(r, s.Look.Text(frame.Plain, signs.Replace(one.Marks()))))
			if one.SlippedIn == "" {
				continue
			}
			for _, part := range s.Look.WrapMeasured(saidSlippedIn+one.SlippedIn+".", cols-4) {
				rows = append(rows, frame.Row{frame.Gap(3), s.Look.Text(frame.Quiet, part)})
			}
		}
		return rows
	}
}

// The columns of the ideas.
const (
	ideaWidth  = 33
	stateWidth = 10
)

func ideaShade(s tutor.IdeaState) frame.Shade {
	switch s {
	case tutor.Steady:
		return frame.Good
	case tutor.Slipping:
		return frame.Near
	}
	return frame.Quiet
}
