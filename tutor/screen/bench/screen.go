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
		Pen: b.pen, Memos: &b.memos, Cols: cols, Rows: rows, Rope: b.rope(),
		Question: b.sheet.question(b), Line: b.line.Shown(), Command: b.command(), Note: noteOf(b.said),
		Sheet: b.sheet.view(b), Keys: b.sheet.keys(b), Stay: []string{b.on.Check.Help().Key}, Scroll: b.on.ScrollHere,
	}
	s.Title, s.Right = b.head()
	if b.ref != nil {
		key := views.FigureKey{Version: b.version, At: -1}
		s.Figure = &views.Figure{Key: key, Scene: func() picture.Scene { return picture.OfProblem(b.ref, picture.View{}) }}
	}
	return s
}

// Saw is told how much was seen of what lies on the screen.
func (b *Bench) Saw(seen frame.Seen) { b.sheet.Saw(seen) }

// head is the apparatus and who is at the table.
func (b *Bench) head() (title, right string) {
	if b.Table.Form == nil {
		return views.SaidProgram, wordBench
	}
	right = wordBench
	if names := strings.Join(bench.NamesOf(b.Table.Students), ", "); names != "" {
		right += " " + b.look.Signs.Dash + " " + names
	}
	return b.Table.Form.Problem().Title, right
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

// rope are the words of a run on their rope, taut as far as the table has come.
func (b *Bench) rope() views.Rope {
	at := b.step()
	rope := views.Rope{Reached: -1}
	for i, s := range b.Table.Steps {
		switch word := s.Name; {
		case word == "":
			continue
		// A step without a name is shown as the one before it.
		case i == at, i < at && nameless(b.Table.Steps[i+1:at+1]):
			rope.Reached = len(rope.Words)
			rope.Words = append(rope.Words, views.InHand(b.look, word))
		case b.Table.Form != nil && s.IsDone != nil && s.IsDone(&b.Table):
			rope.Words = append(rope.Words, b.look.Text(frame.Good, " "+b.look.Signs.Done+" "+word+" "))
		default:
			rope.Words = append(rope.Words, b.look.Text(frame.Quiet, " "+word+" "))
		}
	}
	return rope
}
