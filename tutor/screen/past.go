package screen

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/checker"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
)

// past is an earlier stage, to be read, with its drawing.
type past struct {
	onLesson
	scroller
	at int // in checker.Stages
}

// goBack reads the stage before the one that is shown.
func (m *model) goBack() {
	if p, ok := m.sheet.(*past); ok {
		p.turn(m, -1)
		return
	}
	at := slices.Index(checker.Stages, m.stage()) - 1
	if !m.now.open {
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
	case to > last, to == last && m.now.open:
		m.home()
	default:
		p.at, p.top = to, 0
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
	return p.scroller.press(k)
}

func (p *past) keys(m *model) []binding {
	keys := append(m.lineKeysOver(), m.on.stages)
	if p.more() {
		keys = append(keys, m.on.scrollHere)
	}
	return append(keys, m.on.back, m.on.leave)
}

func (p *past) body(m *model, cols, rows int) []frame.Row {
	stage := checker.Stages[p.at]
	left := min(cols*44/100, rows*5/2+8)
	v := picture.View{Stage: stage}
	if stage == checker.Diagram || stage == checker.Solve {
		v = picture.View{Solved: stage == checker.Solve && !m.now.open}
	}
	right := []frame.Row{m.look.Rule(cols-left-2, saidPast(p.at+1, stageTitle(stage)), "")}
	right = append(right, p.cut(m.stageRows(stage, cols-left-2), rows-1)...)
	return frame.Columns(m.paint(picture.OfProblem(m.lesson.Ref, v), left, rows), left+1, frame.Indented(right))
}

func (m *model) stageRows(stage checker.Stage, cols int) []frame.Row {
	var rows []frame.Row
	if stage == checker.Components {
		rows = append(componentTable(m, cols), nil)
	}
	lines := m.lesson.Of(stage)
	for i := range lines {
		rows = append(rows, m.paperLine(&lines[i], "", cols)...)
	}
	if rows == nil {
		return m.look.Rows(frame.Quiet, saidNothingWritten, cols)
	}
	return rows
}
