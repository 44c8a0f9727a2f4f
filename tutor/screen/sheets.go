package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/checker"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
)

// onLesson is what sheets have in common that lie over the work: the line still
// belongs to the problem in hand.
type onLesson struct{}

func (onLesson) question(m *model) string {
	if s := m.resting(); s != nil {
		return s.question(m)
	}
	return saidNoLesson
}

// resting is the sheet that others lie over, nil for none.
func (m *model) resting() sheet {
	switch {
	case m.work != nil:
		return m.work
	case m.bench != nil:
		return m.bench.base
	}
	return nil
}

func (onLesson) under(m *model, cols, rows int) []frame.Row {
	if s := m.resting(); s != nil {
		return s.under(m, cols, rows)
	}
	return nil
}

func (onLesson) typed(m *model) {
	if s := m.resting(); s != nil {
		s.typed(m)
	}
}

// enter hands in what was typed; an empty line goes back to the work.
func (onLesson) enter(m *model, text string) {
	switch {
	case m.line.isEmpty():
		m.home()
	case m.isAtBench():
		m.home()
		m.sheet.enter(m, m.line.text())
	case m.work == nil:
		m.say(saidNoLesson)
	default:
		m.handIn(text)
	}
}

// scroller is a place in rows that are more than fit.
type scroller struct{ top, rows, room int }

// press takes the keys that scroll.
func (s *scroller) press(k tea.KeyMsg) bool {
	step, ok := map[tea.KeyType]int{
		tea.KeyUp: -1, tea.KeyDown: 1, tea.KeyPgUp: -(s.room - 1), tea.KeyPgDown: s.room - 1,
	}[k.Type]
	if ok {
		s.top = min(max(s.top+step, 0), max(s.rows-s.room, 0))
	}
	return ok
}

// cut takes the rows that are to be seen.
func (s *scroller) cut(rows []frame.Row, room int) []frame.Row {
	s.rows, s.room = len(rows), room
	s.top = min(max(s.top, 0), max(s.rows-s.room, 0))
	return rows[s.top:min(s.top+room, len(rows))]
}

// follow scrolls so that a row is seen.
func (s *scroller) follow(at, total, room int) {
	s.rows, s.room = total, room
	if at < s.top {
		s.top = at
	}
	if at >= s.top+room {
		s.top = at - room + 1
	}
}

func (s *scroller) more() bool { return s.rows > s.room }

// reader is a sheet of rows to be read.
type reader struct {
	onLesson
	title string
	make  func(m *model, cols int) []frame.Row
	scroller
}

func (r *reader) keys(m *model) []binding {
	keys := m.lineKeysOver()
	if r.more() {
		keys = append(keys, m.on.scrollHere)
	}
	return append(keys, m.on.back, m.on.leave)
}

func (r *reader) press(_ *model, k tea.KeyMsg) bool { return r.scroller.press(k) }

func (r *reader) body(m *model, cols, rows int) []frame.Row {
	return m.withDrawing(cols, rows, func(cols, rows int) []frame.Row {
		out := []frame.Row{m.look.Rule(cols, r.title, "")}
		return append(out, r.cut(r.make(m, cols), rows-1)...)
	})
}

// withDrawing leaves the drawing where it stands on a wide screen.
func (m *model) withDrawing(cols, rows int, make func(cols, rows int) []frame.Row) []frame.Row {
	if m.cols < wideCols || m.lesson == nil && (m.bench == nil || m.bench.ref == nil) {
		return make(cols, rows)
	}
	left := min(cols*44/100, rows*5/2+8)
	right := make(cols-left-2, rows)
	return frame.Columns(m.drawing(left, rows), left+1, frame.Indented(right))
}

// lineKeysOver are the keys of the line while another sheet lies on the page.
func (m *model) lineKeysOver() []binding {
	if m.line.isEmpty() || m.work == nil {
		return nil
	}
	return []binding{m.on.handIn}
}

func (m *model) showPage() {
	m.sheet = &reader{title: wordPage, make: (*model).wholePage}
}

// wholePage is the working from the beginning, stage by stage.
func (m *model) wholePage(cols int) []frame.Row {
	var rows []frame.Row
	for _, stage := range checker.Stages {
		lines := m.lesson.Of(stage)
		if len(lines) == 0 {
			continue
		}
		rows = append(rows, m.look.Row(frame.Bold, " "+stageTitle(stage)))
		for i := range lines {
			rows = append(rows, m.paperLine(&lines[i], "", cols)...)
		}
		rows = append(rows, nil)
	}
	if rows == nil {
		return m.emptyPage(cols)
	}
	return rows
}

func (m *model) showWords() {
	m.sheet = &reader{title: wordInWords, make: func(m *model, cols int) []frame.Row {
		return m.paragraphs(m.inWords(), cols)
	}}
}

// inWords says what can be seen: in Forces the scene.
func (m *model) inWords() []string {
	s := m.picture()
	if m.lesson != nil && m.choosing() && m.lesson.ShowsScene() {
		s.Setup = picture.NewSetup(m.lesson.Ref, m.lesson.Problem.Figure)
	}
	return picture.Sentences(s)
}

func (m *model) paragraphs(sentences []string, cols int) []frame.Row {
	var rows []frame.Row
	for _, s := range sentences {
		for _, part := range m.look.Wrap(s, cols-2) {
			rows = append(rows, append(frame.Row{frame.Gap(1)}, m.tint(frame.Plain, part, true)...))
		}
	}
	return rows
}

// showText shows the problem's text with what is given and asked.
func (m *model) showText() {
	m.sheet = &reader{title: wordText, make: func(m *model, cols int) []frame.Row {
		return frame.Indented(m.work.problem(m, cols-2))
	}}
}
