package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// onLesson is what sheets have in common that lie over the work: the line still
// belongs to the problem in hand.
type onLesson struct{}

func (onLesson) question(m *model) string {
	if s := m.resting(); s != nil {
		return s.question(m)
	}
	return views.SaidNoLesson
}

// resting is the sheet that others lie over, nil for none.
func (m *model) resting() sheet {
	switch {
	case m.work != nil:
		return m.work
	}
	return nil
}

// beneath is the view of the sheet that others lie over, nil for none.
func (m *model) beneath() views.Sheet {
	if s := m.resting(); s != nil {
		return s.view(m)
	}
	return nil
}

func (onLesson) typed(m *model) {
	if s := m.resting(); s != nil {
		s.typed(m)
	}
}

// enter checks what was typed; an empty line goes back to the work.
func (onLesson) enter(m *model, text string) {
	switch {
	case m.line.IsEmpty():
		m.home()
	case m.work == nil:
		m.say(views.SaidNoLesson)
	default:
		m.check(text)
	}
}

// reader is a sheet of rows to be read.
type reader struct {
	onLesson
	title string
	make  func(m *model) views.Content
	frame.Scroller
}

func (r *reader) view(m *model) views.Sheet {
	return views.Reader{Title: r.title, Content: r.make(m), Top: r.Seen.Top, Beneath: m.beneath()}
}

func (r *reader) keys(m *model) []frame.Binding {
	return append(m.lineKeysOver(), m.on.ScrollHere, m.on.Back, m.on.Quit)
}

func (r *reader) press(_ *model, k tea.KeyMsg) bool { return r.Scroll(k) }

// lineKeysOver are the keys of the line while another sheet lies on the page.
func (m *model) lineKeysOver() []frame.Binding {
	if m.line.IsEmpty() || m.work == nil {
		return nil
	}
	return []frame.Binding{m.on.Check}
}

func (m *model) showPage() {
	m.sheet = &reader{title: views.WordPage, make: func(m *model) views.Content { return m.now.WholePage }}
}

func (m *model) showWords() {
	m.sheet = &reader{title: views.WordInWords, make: func(m *model) views.Content { return views.Sentences(m.inWords()) }}
}

// showText shows the problem's text with what is given and asked.
func (m *model) showText() {
	m.sheet = &reader{title: wordText, make: func(m *model) views.Content { return m.now.ProblemText }}
}

func (m *model) showTyping() {
	m.sheet = &reader{title: wordTyping, make: (*model).typing}
}

func (m *model) typing() views.Content {
	if m.lesson == nil {
		return views.Typing("")
	}
	return views.Typing(m.lesson.Letters())
}

// showHelp says what is asked now in other words, and below it what can be typed.
func (m *model) showHelp() {
	m.sheet = &reader{title: wordHelp, make: (*model).help}
	if m.lesson == nil {
		m.sheet = &reader{title: wordHelpEarly, make: func(*model) views.Content { return views.Sentences([]string{saidHelpList, saidHelpLater}) }}
	}
}

func (m *model) help() views.Content {
	return views.Help(m.lesson.Lost(), m.lesson.Refused(tutor.AskHint) == "", m.lesson.Letters())
}

// showIdeas lists the ideas that had their chance.
func (m *model) showIdeas() {
	var all []views.Idea
	for _, held := range m.desk.Past().Ideas() {
		// An idea that was never needed says nothing about the student.
		if len(held.Chances) > 0 {
			all = append(all, views.Idea{HeldIdea: held, SlippedIn: m.desk.SlippedIn(held)})
		}
	}
	m.sheet = &reader{title: wordIdeas, make: func(*model) views.Content { return views.Ideas(all) }}
}
