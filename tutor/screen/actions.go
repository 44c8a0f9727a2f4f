package screen

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// action is something that a student can do in a lesson.
type action = views.Action[*model]

// actions is the table of everything that can be done. Its keys are single bytes that no
// common terminal, multiplexer or browser keeps for itself, and that are none of the control
// codes of tab, enter and backspace.
func actions() views.Actions[*model] {
	return views.Actions[*model]{
		{Word: tutor.AskHint, Key: frame.Bind("ctrl+g", "hint", "ctrl+g"), Menu: menuHint, Can: (*model).isOpen, Do: (*model).hint},
		{Word: tutor.AskText, Key: frame.Bind("ctrl+r", "problem", "ctrl+r"), Menu: menuText, Can: (*model).hasLesson, Do: (*model).showText},
		{Word: tutor.DisputeLine, Key: frame.Bind("ctrl+y", "go on anyway", "ctrl+y"), Menu: menuDispute, Can: (*model).canDispute, Do: (*model).dispute},
		{Word: tutor.AskPage, Key: frame.Bind("ctrl+o", "page", "ctrl+o"), Menu: menuPage, Can: (*model).hasLesson, Do: (*model).showPage},
		{Word: tutor.GoBack, Menu: menuBack, Can: (*model).hasLesson, Do: (*model).goBack},
		{Word: tutor.AskDrawing, Menu: menuDrawing, Can: (*model).hasLesson, Do: (*model).showWords},
		{Word: tutor.AskHelp, Menu: menuHelp, Can: (*model).isSeated, Do: (*model).showHelp},
		{Word: tutor.AskTyping, Menu: menuTyping, Can: (*model).isSeated, Do: (*model).showTyping},
		{Word: tutor.AskIdeas, Menu: menuIdeas, Can: (*model).hasDesk, Do: (*model).showIdeas},
		{Word: tutor.PassOver, Menu: menuSums, Can: (*model).hasLesson, Do: (*model).passOver},
		{Word: tutor.AskSolution, Menu: menuSolution, Can: (*model).hasLesson, Do: (*model).askSolution},
		{Word: tutor.AskAngles, Menu: menuAngles, Can: (*model).canTurn, Do: (*model).turnAngles},
		{Word: tutor.GoNext, Menu: menuNext, Can: (*model).hasDesk, Do: (*model).next},
		{Word: tutor.GoAgain, Menu: menuAgain, Can: (*model).hasLesson, Do: (*model).again},
		{Word: tutor.AskProblems, Key: frame.Bind("ctrl+l", "all problems", "ctrl+l"), Menu: menuProblems, Can: (*model).hasDesk, Do: (*model).showProblems},
		{Word: tutor.AskStudent, Menu: menuStudent, Can: (*model).hasDesk, Do: (*model).showStudents},
		{Word: tutor.AskMenu, Can: (*model).hasDesk, Do: (*model).openMenu},
		{Menu: views.MenuBackground, Can: always, Do: (*model).otherBackground},
		{Word: tutor.Quit, Key: frame.Bind("ctrl+c", "quit", "ctrl+c"), Menu: views.MenuQuit, Can: always, Do: (*model).quit},
	}
}

func always(*model) bool          { return true }
func (m *model) hasLesson() bool  { return m.lesson != nil }
func (m *model) hasDesk() bool    { return m.desk != nil }
func (m *model) isSeated() bool   { return m.desk != nil || m.bench != nil }
func (m *model) isOpen() bool     { return m.lesson != nil && m.now.Open }
func (m *model) canDispute() bool { return m.lesson != nil && m.now.CanDispute }
func (m *model) canTurn() bool    { return m.lesson != nil && m.lesson.Over() }

func (m *model) isAtHome() bool   { return m.work != nil && m.sheet == sheet(m.work) }
func (m *model) isTooSmall() bool { return m.cols < views.LeastCols || m.rows < views.LeastRows }

// key takes one key: typing always types; what is left belongs to the sheet, then
// to the table of actions, then to the line.
func (m *model) key(k tea.KeyMsg) tea.Cmd {
	m.say("")
	switch {
	// Before everything: whatever a sheet does with keys, this one always ends the program.
	case k.Type == tea.KeyCtrlC:
		m.quit()
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
	case m.actions.Press(m, k):
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
	if m.quitting {
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
		if a.Word != word {
			continue
		}
		switch {
		case a.Can(m):
			a.Do(m)
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

func (m *model) quit() { m.quitting = true }

// keyTooSmall takes the one key that works in a window that is too small.
func (m *model) keyTooSmall(k tea.KeyMsg) {
	if k.Type == tea.KeyEnter {
		m.bye.Plain = true
		m.quit()
	}
}
