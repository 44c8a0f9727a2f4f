package screen

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/checker/expr"
	"example.org/standstill/tutor"
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

func (n *menu) body(m *model, cols, rows int) []row {
	return m.withDrawing(cols, rows, func(cols, rows int) []row {
		can := n.open(m)
		n.follow(n.at, len(can), rows-1)
		var list []row
		for i, a := range can {
			list = append(list, m.menuRow(a, i == n.at, cols))
		}
		head := m.look.rule(cols-menuKeys, wordMenu, "").padded(cols - menuKeys)
		head = append(head, m.look.text(quiet, wordKey)).padded(cols - menuWords)
		return append([]row{append(head, m.look.text(quiet, wordWord))}, n.cut(list, rows-1)...)
	})
}

// Where the keys and the words stand in the menu, from the right.
const (
	menuKeys  = 18
	menuWords = 10
)

// menuRow shows what an action does, with its key and its word.
func (m *model) menuRow(a action, picked bool, cols int) row {
	l := m.look
	s := plain
	if picked {
		s = bold
	}
	r := m.pickRow(picked, row{l.text(s, a.menu)}).padded(cols - menuKeys)
	if a.key.Enabled() {
		r = append(r, l.text(quiet, a.key.Help().Key))
	}
	return append(r.padded(cols-menuWords), l.text(quiet, string(a.word)))
}

// pickRow is a row of a list of which one is picked.
func (m *model) pickRow(picked bool, r row) row {
	sign := "  "
	if picked {
		sign = m.look.signs.pick + " "
	}
	return append(row{gap(1), m.look.text(bold, sign)}, r...)
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

func (m *model) helpRows(cols int) []row {
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
func (m *model) ideaRows(cols int) []row {
	rows := []row{m.look.row(quiet, " "+saidIdeas), nil}
	for _, held := range m.desk.Past().Ideas() {
		if len(held.Chances) == 0 {
			continue
		}
		r := row{gap(1), m.look.text(plain, held.Title())}.padded(ideaWidth)
		r = append(r, m.look.text(ideaShade(held.State), string(held.State))).padded(ideaWidth + stateWidth)
		rows = append(rows, append(r, m.look.text(plain, strings.NewReplacer("✓", m.look.signs.right, "✗", m.look.signs.wrong).Replace(held.Marks()))))
		if where := m.desk.SlippedIn(held); where != "" {
			for _, part := range m.look.wrapMeasured(saidSlippedIn+where+".", cols-4) {
				rows = append(rows, row{gap(3), m.look.text(quiet, part)})
			}
		}
	}
	if len(rows) == 2 {
		return []row{m.look.row(plain, " "+saidNoIdeas)}
	}
	return rows
}

// The columns of the ideas.
const (
	ideaWidth  = 33
	stateWidth = 10
)

func ideaShade(s tutor.IdeaState) shade {
	switch s {
	case tutor.Steady:
		return good
	case tutor.Slipping:
		return near
	}
	return quiet
}

// typingRows says what can be typed.
func (m *model) typingRows(cols int) []row {
	var rows []row
	add := func(label, text string, width int) { rows = append(rows, m.entryRows(label, text, width, cols)...) }
	for _, n := range tutor.Notation() {
		add(n.What, n.Examples, 19)
	}
	if m.lesson != nil {
		rows = append(rows, nil)
		add(wordLetters, m.lesson.Letters(), 19)
	}
	rows = append(rows, nil, m.look.row(quiet, " "+saidWords))
	for _, w := range tutor.Words() {
		add(string(w.Word), w.Does+".", 11)
	}
	rows = append(rows, nil, m.look.row(quiet, " "+saidCtrl))
	return rows
}

// entryRows is a word or a sample with what is said about it, wrapped behind it.
func (m *model) entryRows(label, text string, width, cols int) []row {
	var rows []row
	for i, part := range m.look.wrapMeasured(text, cols-width-1) {
		r := row{gap(width)}
		if i == 0 {
			r = row{gap(1), m.look.text(bold, label)}.padded(width)
		}
		rows = append(rows, append(r, m.tint(plain, part, true)...))
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
