package screen

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/checker"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// past is an earlier stage, to be read, with its drawing.
type past struct {
	onLesson
	frame.Scroller
	at int // in checker.Stages
}

// goBack reads the stage before the one that is shown.
func (m *model) goBack() {
	if p, ok := m.sheet.(*past); ok {
		p.turn(m, -1)
		return
	}
	at := slices.Index(checker.Stages, m.stage()) - 1
	if !m.now.Open {
		at = len(checker.Stages) - 1
	}
	if at < 0 {
		m.say(saidNoStageBefore)
		return
	}
	m.sheet = &past{at: at}
}

// turn goes to the stage before or after, home again behind the last.
func (p *past) turn(m *model, step int) {
	last := slices.Index(checker.Stages, m.stage())
	switch to := p.at + step; {
	case to < 0:
		m.say(saidNoStageBefore)
	// The stage in hand is the work itself.
	case to > last, to == last && m.now.Open:
		m.home()
	default:
		p.at, p.Seen.Top = to, 0
	}
}

func (p *past) press(m *model, k tea.KeyMsg) bool {
	switch k.Type {
	case tea.KeyLeft:
		p.turn(m, -1)
		return true
	case tea.KeyRight:
		p.turn(m, +1)
		return true
	}
	return p.Scroll(k)
}

func (p *past) keys(m *model) []frame.Binding {
	return append(m.lineKeysOver(), m.on.Stages, m.on.ScrollHere, m.on.Back, m.on.Quit)
}

func (p *past) view(m *model) views.Sheet {
	return views.Past{Lesson: &m.now, Of: checker.Stages[p.at], Top: p.Seen.Top, Beneath: m.beneath()}
}
