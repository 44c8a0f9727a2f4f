package screen

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/checker/expr"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
)

// menu lists everything that can be done now.
type menu struct {
	onLesson
	scroller
	at int
}

// open lists the actions that can be done now.
func (n *menu) open(m *model) []action {
	var can []action
	for _, a := range m.actions {
		if a.menu != "" && a.can(m) {
			can = append(can, a)
		}
	}
	return can
}

func (n *menu) press(m *model, k tea.KeyMsg) bool {
	can := n.open(m)
	switch k.Type {
	case tea.KeyUp, tea.KeyShiftTab:
		n.at = (n.at + len(can) - 1) % len(can)
	case tea.KeyDown, tea.KeyTab:
		n.at = (n.at + 1) % len(can)
	case tea.KeyEnter:
		m.home()
		can[n.at].do(m)
	default:
		return false
	}
	return true
}

// typed closes the menu: what is typed belongs to the problem.
func (n *menu) typed(m *model) {
	m.home()
	m.sheet.typed(m)
}

func (n *menu) keys(m *model) []binding {
	return []binding{m.on.upDown, m.on.choose, m.on.back, m.on.leave}
}

func (n *menu) body(m *model, cols, rows int) []frame.Row {
	return m.withDrawing(cols, rows, func(cols, rows int) []frame.Row {
		can := n.open(m)
		n.follow(n.at, len(can), rows-1)
		var list []frame.Row
		for i, a := range can {
			list = append(list, m.menuRow(a, i == n.at, cols))
		}
		head := m.look.Rule(cols-menuKeys, wordMenu, "").Padded(cols - menuKeys)
		head = append(head, m.look.Text(frame.Quiet, wordKey)).Padded(cols - menuWords)
		return append([]frame.Row{append(head, m.look.Text(frame.Quiet, wordWord))}, n.cut(list, rows-1)...)
	})
}

// Where the keys and the words stand in the menu, from the right.
const (
	menuKeys  = 18
	menuWords = 10
)

// menuRow shows what an action does, with its key and its word.
func (m *model) menuRow(a action, picked bool, cols int) frame.Row {
	l := m.look
	s := frame.Plain
	if picked {
		s = frame.Bold
	}
	r := m.pickRow(picked, frame.Row{l.Text(s, a.menu)}).Padded(cols - menuKeys)
	if a.key.Enabled() {
		r = append(r, l.Text(frame.Quiet, a.key.Help().Key))
	}
	return append(r.Padded(cols-menuWords), l.Text(frame.Quiet, string(a.word)))
}

// pickRow is a row of a list of which one is picked.
func (m *model) pickRow(picked bool, r frame.Row) frame.Row {
	sign := "  "
	if picked {
		sign = m.look.Signs.Pick + " "
	}
	return append(frame.Row{frame.Gap(1), m.look.Text(frame.Bold, sign)}, r...)
}

// picked moves along a list with the arrow keys.
func picked(at *int, n int, k tea.KeyMsg) bool {
	switch k.Type {
	case tea.KeyUp:
		*at = max(*at-1, 0)
	case tea.KeyDown:
		*at = max(min(*at+1, n-1), 0)
	default:
		return false
	}
	return true
}

func (m *model) openMenu() { m.sheet = &menu{} }

func (m *model) showTyping() {
	m.sheet = &reader{title: wordTyping, make: (*model).typingRows}
}

// showHelp says what is asked now in other words, and below it what can be typed.
func (m *model) showHelp() {
	m.sheet = &reader{title: wordHelp, make: (*model).helpRows}
}

func (m *model) helpRows(cols int) []frame.Row {
	if m.lesson == nil {
		return m.typingRows(cols)
	}
	lost := m.lesson.Lost()
	rows := m.entryRows(wordHelpNow, lost.Now, 11, cols)
	if lost.Example != "" {
		rows = append(rows, m.entryRows(wordSample, lost.Example, 11, cols)...)
		if m.lesson.Refused(tutor.AskHint) == "" {
			rows = append(rows, m.entryRows(wordHelpHint, saidAskHint, 11, cols)...)
		}
	}
	return append(append(rows, nil), m.typingRows(cols)...)
}

func (m *model) showIdeas() {
	m.sheet = &reader{title: wordIdeas, make: (*model).ideaRows}
}

// ideaRows lists the ideas: a word, the last tries as signs, and where each went wrong
// last.
func (m *model) ideaRows(cols int) []frame.Row {
	rows := []frame.Row{m.look.Row(frame.Quiet, " "+saidIdeas), nil}
	for _, held := range m.desk.Past().Ideas() {
		if len(held.Chances) == 0 {
			continue
		}
		r := frame.Row{frame.Gap(1), m.look.Text(frame.Plain, held.Title())}.Padded(ideaWidth)
		r = append(r, m.look.Text(ideaShade(held.State), string(held.State))).Padded(ideaWidth + stateWidth)
		rows = append(rows, append(r, m.look.Text(frame.Plain, strings.NewReplacer("✓", m.look.Signs.Right, "✗", m.look.Signs.Wrong).Replace(held.Marks()))))
		if where := m.desk.SlippedIn(held); where != "" {
			for _, part := range m.look.WrapMeasured(saidSlippedIn+where+".", cols-4) {
				rows = append(rows, frame.Row{frame.Gap(3), m.look.Text(frame.Quiet, part)})
			}
		}
	}
	if len(rows) == 2 {
		return []frame.Row{m.look.Row(frame.Plain, " "+saidNoIdeas)}
	}
	return rows
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

// typingRows says what can be typed.
func (m *model) typingRows(cols int) []frame.Row {
	var rows []frame.Row
	add := func(label, text string, width int) { rows = append(rows, m.entryRows(label, text, width, cols)...) }
	for _, n := range tutor.Notation() {
		add(n.What, n.Examples, 19)
	}
	if m.lesson != nil {
		rows = append(rows, nil)
		add(wordLetters, m.lesson.Letters(), 19)
	}
	rows = append(rows, nil, m.look.Row(frame.Quiet, " "+saidWords))
	for _, w := range tutor.Words() {
		add(string(w.Word), w.Does+".", 11)
	}
	rows = append(rows, nil, m.look.Row(frame.Quiet, " "+saidCtrl))
	return rows
}

// entryRows is a word or a sample with what is said about it, wrapped behind it.
func (m *model) entryRows(label, text string, width, cols int) []frame.Row {
	var rows []frame.Row
	for i, part := range m.look.WrapMeasured(text, cols-width-1) {
		r := frame.Row{frame.Gap(width)}
		if i == 0 {
			r = frame.Row{frame.Gap(1), m.look.Text(frame.Bold, label)}.Padded(width)
		}
		rows = append(rows, append(r, m.tint(frame.Plain, part, true)...))
	}
	return rows
}

func meaning(w tutor.Word) string {
	for _, h := range tutor.Words() {
		if h.Word == w {
			return saidMeaning(h.Does)
		}
	}
	return ""
}

func glyph(name string) string { return expr.Glyph(name) }
