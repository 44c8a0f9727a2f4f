package bench

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// Key takes one key: typing always types; what is left belongs to the sheet, then
// to the table of actions, then to the line.
func (b *Bench) Key(k tea.KeyMsg) Wish {
	b.said, b.wish = "", Wish{}
	switch {
	case frame.Types(k):
		b.edit(k)
	case k.Type == tea.KeyF1:
		b.obeyWord(tutor.AskHelp)
	// The sheet comes before the table, because arrows and Tab mean something else on each.
	case b.sheet.press(b, k):
	case b.actions.Press(b, k):
	case k.Type == tea.KeyEnter:
		b.enter()
	case k.Type == tea.KeyEsc:
		b.esc()
	case k.Type == tea.KeyCtrlU:
		b.line.Set("")
		b.sheet.typed(b)
	case k.Type == tea.KeyUp:
		b.line.Earlier(-1)
		b.sheet.typed(b)
	case k.Type == tea.KeyDown:
		b.line.Earlier(+1)
		b.sheet.typed(b)
	default:
		b.edit(k)
	}
	return b.wish
}

func (b *Bench) edit(k tea.KeyMsg) {
	if b.line.Edit(k) {
		b.sheet.typed(b)
	}
}

// enter hands the line in: a word is obeyed, anything else is the sheet's.
func (b *Bench) enter() {
	text := b.line.Text()
	if word, rest, ok := b.wordOf(text); ok {
		b.obeyTyped(word, rest)
		return
	}
	b.sheet.enter(b, text)
}

// obeyTyped obeys a word with what stands behind it. In the form, the field in hand keeps
// what it had.
func (b *Bench) obeyTyped(word tutor.Word, rest string) {
	b.rest = rest
	if b.hasLine() {
		// The field in hand keeps what it had before the word was typed.
		b.form.load(b)
	} else {
		b.line.Set("")
	}
	b.obeyWord(word)
	b.rest = ""
}

func (b *Bench) obeyWord(word tutor.Word) {
	for _, a := range b.actions {
		if a.Word == word && a.Can(b) {
			a.Do(b)
			return
		}
	}
	b.Say(views.SaidNoLesson)
}

// esc opens the menu, and closes whatever else is open.
func (b *Bench) esc() {
	if b.sheet == b.base {
		b.sheet = &menu{}
		return
	}
	b.home()
}
