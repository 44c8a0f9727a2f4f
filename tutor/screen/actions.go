package screen

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// action is something that a student can do from everywhere: by typing a word, by
// choosing it from the menu, and some of them by a key.
//
// The keys are single bytes that no common terminal, multiplexer or browser keeps
// for itself, and that are none of the control codes of tab, enter and backspace.
type action struct {
	word tutor.Word
	key  frame.Binding
	menu string
	can  func(*model) bool
	do   func(*model)
}

// actions is the table of everything that can be done, in the order of the menu.
func actions() []action {
	return []action{
		{tutor.AskHint, frame.Bind("ctrl+g", "hint", "ctrl+g"), menuHint, (*model).isOpen, (*model).hint},
		{tutor.AskText, frame.Bind("ctrl+r", "problem", "ctrl+r"), menuText, (*model).hasLesson, (*model).showText},
		{tutor.KeepLine, frame.Bind("ctrl+y", "go on anyway", "ctrl+y"), menuKeep, (*model).canKeep, (*model).keep},
		{tutor.AskPage, frame.Bind("ctrl+o", "page", "ctrl+o"), menuPage, (*model).hasLesson, (*model).showPage},
		{tutor.GoBack, frame.Binding{}, menuBack, (*model).hasLesson, (*model).goBack},
		{tutor.AskDrawing, frame.Binding{}, menuDrawing, (*model).hasLesson, (*model).showWords},
		{tutor.AskHelp, frame.Binding{}, menuHelp, (*model).isSeated, (*model).showHelp},
		{tutor.AskTyping, frame.Binding{}, menuTyping, (*model).isSeated, (*model).showTyping},
		{tutor.AskIdeas, frame.Binding{}, menuIdeas, (*model).hasDesk, (*model).showIdeas},
		{tutor.PassOver, frame.Binding{}, menuSums, (*model).hasLesson, (*model).passOver},
		{tutor.AskSolution, frame.Binding{}, menuSolution, (*model).hasLesson, (*model).askSolution},
		{tutor.AskAngles, frame.Binding{}, menuAngles, (*model).canTurn, (*model).turnAngles},
		{tutor.GoNext, frame.Binding{}, menuNext, (*model).hasDesk, (*model).next},
		{tutor.GoAgain, frame.Binding{}, menuAgain, (*model).hasLesson, (*model).again},
		{tutor.AskProblems, frame.Bind("ctrl+l", "all problems", "ctrl+l"), menuProblems, (*model).hasDesk, (*model).showProblems},
		{tutor.AskStudent, frame.Binding{}, menuStudent, (*model).hasDesk, (*model).showStudents},
		{tutor.AskMenu, frame.Binding{}, "", (*model).hasDesk, (*model).openMenu},
		{"", frame.Binding{}, views.MenuBackground, always, (*model).otherBackground},
		{tutor.Leave, frame.Bind("ctrl+c", "quit", "ctrl+c"), views.MenuLeave, always, (*model).leave},
	}
}

func always(*model) bool         { return true }
func (m *model) hasLesson() bool { return m.lesson != nil }
func (m *model) hasDesk() bool   { return m.desk != nil }
func (m *model) isSeated() bool  { return m.desk != nil || m.bench != nil }
func (m *model) isOpen() bool    { return m.lesson != nil && m.now.Open }
func (m *model) canKeep() bool   { return m.lesson != nil && m.now.CanKeep }
func (m *model) canTurn() bool   { return m.lesson != nil && m.lesson.Over() }

func (m *model) isAtHome() bool   { return m.work != nil && m.sheet == sheet(m.work) }
func (m *model) isTooSmall() bool { return m.cols < views.LeastCols || m.rows < views.LeastRows }

// key takes one key: typing always types; what is left belongs to the sheet, then
// to the table of actions, then to the line.
func (m *model) key(k tea.KeyMsg) tea.Cmd {
	m.say("")
	switch {
	// Before everything: whatever a sheet does with keys, this one always ends the program.
	case k.Type == tea.KeyCtrlC:
		m.leave()
	case m.isTooSmall():
		m.keyTooSmall(k)
	case m.isAtBench():
		m.grant(m.bench.Key(k))
	case frame.Types(k):
		if m.isAtHome() {
			m.work.chooser.meet(m, k)
		}
		m.edit(k)
	case k.Type == tea.KeyF1:
		m.obeyWord(tutor.AskHelp)
	// The sheet comes before the table, because arrows and Tab mean something else on each.
	case m.sheet.press(m, k):
	case m.obey(k):
	case k.Type == tea.KeyEnter:
		m.enter()
	case k.Type == tea.KeyEsc:
		m.esc()
	case k.Type == tea.KeyCtrlU:
		m.line.Set("")
		m.textChanged()
	case k.Type == tea.KeyUp:
		m.earlier(-1)
	case k.Type == tea.KeyDown:
		m.earlier(+1)
	default:
		m.edit(k)
	}
	if m.leaving {
		return tea.Quit
	}
	return nil
}

func (m *model) edit(k tea.KeyMsg) {
	if m.line.Edit(k) {
		m.textChanged()
	}
}

func (m *model) earlier(step int) {
	m.line.Earlier(step)
	m.textChanged()
}

func (m *model) textChanged() {
	m.read()
	m.sheet.typed(m)
}

// obey does what the table says for a key.
func (m *model) obey(k tea.KeyMsg) bool {
	for _, a := range m.actions {
		if key.Matches(k, a.key) && a.can(m) {
			a.do(m)
			return true
		}
	}
	return false
}

// enter hands the line in: a word is obeyed, anything else is the sheet's.
func (m *model) enter() {
	text := m.line.Text()
	if word, ok := m.wordOf(text); ok {
		m.obeyTyped(word)
		return
	}
	m.sheet.enter(m, text)
}

// wordOf finds the word that a whole line is.
func (m *model) wordOf(text string) (tutor.Word, bool) {
	switch {
	case strings.EqualFold(strings.TrimSpace(text), string(goToBench)) && (m.bench != nil || m.tutor.IsVisit()):
		return goToBench, true
	// The lesson knows which of its letters look like a word.
	case m.bench == nil && m.lesson != nil && !m.lent:
		return m.lesson.WordOf(text)
	}
	return tutor.WordOf(text)
}

// obeyTyped obeys the word that the line is.
func (m *model) obeyTyped(word tutor.Word) {
	m.putBack()
	m.obeyWord(word)
}

// putBack empties the line after a word, or puts back what was refused before it: who asks
// for a hint goes on with the same line.
func (m *model) putBack() {
	m.line.Set("")
	if m.told.Text != "" && m.lesson != nil && !m.lent {
		// Asking for a hint must not cost the line that the hint is about.
		m.line.PutBack(m.toldOf)
	}
	m.textChanged()
}

func (m *model) obeyWord(word tutor.Word) {
	for _, a := range m.actions {
		if a.word != word {
			continue
		}
		switch {
		case a.can(m):
			a.do(m)
		case !m.isSeated():
			m.say(saidFirstAnswer)
		default:
			m.say(saidNotNow(word))
		}
		return
	}
	if m.bench != nil {
		m.say(saidAtBench)
	} else {
		m.say(saidNotNow(word))
	}
}

// esc opens the menu, and closes whatever else is open.
func (m *model) esc() {
	switch {
	case m.isAtHome():
		m.sheet = &menu{}
	case m.work != nil:
		m.home()
	case m.desk != nil:
		// Without a lesson there is nothing under the menu but the list.
		if _, open := m.sheet.(*menu); open {
			m.sheet = newList(m)
			return
		}
		m.sheet = &menu{}
	}
}

func (m *model) leave() { m.leaving = true }

// keyTooSmall takes the one key that works in a window that is too small.
func (m *model) keyTooSmall(k tea.KeyMsg) {
	if k.Type == tea.KeyEnter {
		m.bye.Plain = true
		m.leave()
	}
}
