package screen

import (
	"fmt"
	"sync"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"example.org/standstill/tutor"
	atbench "example.org/standstill/tutor/screen/bench"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

func newModel(t *tutor.Tutor, o Options, r *lipgloss.Renderer) *model {
	return newModelAt(nil, t, o, r)
}

// What thousands of instances in one host have in common, made once and only read.
var (
	ownActions     = sync.OnceValue(actions)
	visitorActions = sync.OnceValue(func() views.Actions[*model] { return visitActions(actions()) })
)

// newModelAt makes the model of a bench, or of lessons where there is none.
func newModelAt(b *atbench.Bench, t *tutor.Tutor, o Options, r *lipgloss.Renderer) *model {
	m := &model{bench: b, tutor: t, renderer: r, notice: o.Notice, actions: ownActions(), on: frame.SharedKeys(), line: frame.NewLine()}
	if t.IsVisit() {
		m.actions = visitorActions()
	}
	m.chooseBackground(o)
	m.look = frame.NewLook(r, m.light, o.ASCII)
	m.pen = views.NewPen(m.look, nil, nil)
	m.begin()
	return m
}

// guarded stands between the library and the model, so that a fault of ours ends
// the program in order and without a trace. The screen is made when the state has
// changed, so that a fault in making it is met here too.
type guarded struct{ *model }

func (g guarded) Init() tea.Cmd { return nil }

func (g guarded) Update(msg tea.Msg) (next tea.Model, cmd tea.Cmd) {
	defer func() {
		if r := recover(); r != nil {
			g.fault = fmt.Errorf("internal error: %v", r)
			next, cmd = g, tea.Quit
		}
	}()
	cmd = g.update(msg)
	g.shown = g.draw()
	return g, cmd
}

func (g guarded) View() string { return g.shown }

func (m *model) update(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		// A client over SSH may claim any size, and rows and canvases are made in it.
		m.cols, m.rows = min(max(msg.Width, 0), mostCols), min(max(msg.Height, 0), mostRows)
	case tea.KeyMsg:
		return m.key(msg)
	case notice:
		m.say(string(msg))
	}
	return nil
}

// The largest screen that is filled; a terminal may claim any size.
const (
	mostCols = 400
	mostRows = 200
)

// notice is a sentence that has nothing to do with what was typed.
type notice string

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
			m.work.chooser.meet(&m.line, k)
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

// enter hands the line in: a word is obeyed, anything else is the sheet's.
func (m *model) enter() {
	text := m.line.Text()
	if word, ok := m.wordOf(text); ok {
		m.obeyTyped(word)
		return
	}
	m.sheet.enter(m, text)
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

// keyTooSmall takes the one key that works in a window that is too small.
func (m *model) keyTooSmall(k tea.KeyMsg) {
	if k.Type == tea.KeyEnter {
		m.bye.Plain = true
		m.quit()
	}
}
