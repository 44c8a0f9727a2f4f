package bench

import (
	"strings"

	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// Screen is all that is seen now, in a window of some size.
func (b *Bench) Screen(cols, rows int) *views.Screen {
	s := &views.Screen{
		Pen: b.pen, Memos: &b.memos, Cols: cols, Rows: rows, Rope: ropeOf(&b.Table, b.step(), b.look),
		Question: b.sheet.question(b), Line: b.line.Shown(), Command: b.command(), Note: noteOf(b.said),
		Sheet: b.sheet.view(b), Keys: b.sheet.keys(b), Stay: []string{b.on.Check.Help().Key}, Scroll: b.on.ScrollHere,
	}
	s.Title, s.Right = headOf(&b.Table, b.look)
	if b.ref != nil {
		key := views.FigureKey{Version: b.version, At: -1}
		s.Figure = &views.Figure{Key: key, Scene: func() picture.Scene { return picture.OfProblem(b.ref, picture.View{}) }}
	}
	return s
}

// Saw is told how much was seen of what lies on the screen.
func (b *Bench) Saw(seen frame.Seen) { b.sheet.Saw(seen) }

// headOf is the apparatus and who is at the table.
func headOf(t *bench.Table, look *frame.Look) (title, right string) {
	if t.Form == nil {
		return views.SaidProgram, wordBench
	}
	right = wordBench
	if names := strings.Join(bench.NamesOf(t.Students), ", "); names != "" {
		right += " " + look.Signs.Dash + " " + names
	}
	return t.Form.Problem().Title, right
}

// command says what the command does that stands in the line, as the menu has it; nil for
// none.
func (b *Bench) command() *string {
	word, _, ok := b.wordOf(b.line.Text())
	if !ok {
		return nil
	}
	does := ""
	for _, a := range b.actions {
		if a.Word == word {
			does = a.Menu + "."
		}
	}
	return &does
}

// ropeOf are the words of a run on their rope, taut as far as the step in hand.
func ropeOf(t *bench.Table, at int, look *frame.Look) views.Rope {
	rope := views.Rope{Reached: -1}
	for i, s := range t.Steps {
		switch word := s.Name; {
		case word == "":
			continue
		// A step without a name is shown as the one before it.
		case i == at, i < at && nameless(t.Steps[i+1:at+1]):
			rope.Reached = len(rope.Words)
			rope.Words = append(rope.Words, views.InHand(look, word))
		case t.Form != nil && s.IsDone != nil && s.IsDone(t):
			rope.Words = append(rope.Words, look.Text(frame.Good, " "+look.Signs.Done+" "+word+" "))
		default:
			rope.Words = append(rope.Words, look.Text(frame.Quiet, " "+word+" "))
		}
	}
	return rope
}
