package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
)

// solution is the worked solution beside the student's own page.
type solution struct {
	onLesson
	scroller
	advice tutor.Advice
	ok     bool // there is a next problem
}

func newSolution(m *model) *solution {
	s := &solution{}
	if m.bench == nil {
		s.advice, s.ok = m.desk.Next()
	}
	return s
}

// askSolution shows the solution, after a question where that costs something.
func (m *model) askSolution() {
	if m.lesson.Over() {
		m.sheet = newSolution(m)
		return
	}
	if why := m.lesson.Refused(tutor.AskSolution); why != "" {
		m.say(why)
		return
	}
	m.sheet = &reveal{}
}

func (s *solution) question(m *model) string {
	done := saidStanding(m.now.progress)
	if s.ok {
		done += " " + saidNext(s.advice)
	}
	return done
}

func (s *solution) under(m *model, cols, rows int) []frame.Row {
	if !m.line.isEmpty() {
		return s.onLesson.under(m, cols, rows)
	}
	if !s.ok {
		return nil
	}
	return m.labelledText(wordNext, s.advice.Why, cols)
}

func (s *solution) enter(m *model, text string) {
	if m.line.isEmpty() {
		m.next()
		return
	}
	m.handIn(text)
}

func (s *solution) press(m *model, k tea.KeyMsg) bool {
	if k.Type == tea.KeyTab && m.canTurn() {
		m.turnAngles()
		return true
	}
	return s.scroller.press(k)
}

func (s *solution) keys(m *model) []binding {
	keys := []binding{m.on.nextProblem, m.on.angles}
	if m.bench != nil {
		keys[0] = m.on.toBench
	}
	if !m.line.isEmpty() {
		keys = []binding{m.on.handIn, m.on.angles}
	}
	if s.more() {
		keys = append(keys, m.on.scrollHere)
	}
	return append(keys, m.on.myPage, m.on.leave)
}

// body has the drawing at the left where there is room.
func (s *solution) body(m *model, cols, rows int) []frame.Row {
	if m.cols < wideCols {
		return s.pages(m, cols, rows)
	}
	left := cols * 30 / 100
	return frame.Columns(m.drawing(left, rows), left+1, s.pages(m, cols-left-1, rows))
}

// pages puts the student's page and the worked one side by side.
func (s *solution) pages(m *model, cols, rows int) []frame.Row {
	left := cols / 2
	right := cols - left - 2
	own := m.standing(left - 1)
	worked := m.worked(right)
	heads := frame.Columns([]frame.Row{m.look.Rule(left-1, wordStands, "")}, left+1, []frame.Row{m.look.Rule(right, wordSolution, "")})
	return append(heads, s.cut(frame.Columns(own, left+1, worked), rows-1)...)
}

// standing is what counts of the page, to be compared line by line.
func (m *model) standing(cols int) []frame.Row {
	var rows []frame.Row
	lines := m.lesson.Lines()
	for _, stage := range checker.Stages {
		rows = append(rows, m.look.Row(frame.Bold, stageTitle(stage)))
		for i := range lines {
			for at, one := range lines[i].Statements() {
				counts := one.Verdict == checker.Right || lines[i].Kept || lines[i].Accepted
				if lines[i].Kind == tutor.Typed && one.Stage == stage && counts {
					rows = append(rows, m.statement(&lines[i], at, "", cols)...)
				}
			}
		}
	}
	return rows
}

func (m *model) worked(cols int) []frame.Row {
	var rows []frame.Row
	for _, step := range m.lesson.Worked() {
		rows = append(rows, m.look.Row(frame.Bold, step.Title))
		for _, line := range step.Lines {
			for _, part := range m.look.Wrap(line, cols-2) {
				rows = append(rows, append(frame.Row{frame.Gap(2)}, m.tint(frame.Plain, part, true)...))
			}
		}
	}
	return rows
}

// reveal asks before the solution is shown for a problem that is not done.
type reveal struct{}

func (reveal) question(*model) string { return saidReveal }

func (reveal) under(*model, int, int) []frame.Row { return nil }

func (reveal) body(m *model, cols, rows int) []frame.Row { return m.work.body(m, cols, rows) }

func (reveal) keys(m *model) []binding { return []binding{m.on.showIt, m.on.back, m.on.leave} }

func (reveal) press(*model, tea.KeyMsg) bool { return false }

func (reveal) typed(m *model) { m.home() }

func (reveal) enter(m *model, _ string) {
	if m.do(func() error { _, err := m.lesson.Solution(); return err }) {
		m.sheet = newSolution(m)
	}
}

func (m *model) next() {
	if m.bench != nil {
		m.toBench()
		return
	}
	advice, ok := m.desk.Next()
	if !ok {
		m.say(saidNoProblems)
		return
	}
	m.openAdvised(advice)
}

func (m *model) openAdvised(a tutor.Advice) {
	m.open(a.ID, a.Again)
	if m.lesson != nil && m.lesson.Problem.ID == a.ID && m.said == "" {
		m.say(a.Why)
	}
}

func (m *model) again() { m.open(m.lesson.Problem.ID, true) }

// hint shows the next hint on the page.
func (m *model) hint() {
	if why := m.lesson.Refused(tutor.AskHint); why != "" {
		m.say(why)
		return
	}
	lines := len(m.lesson.Lines())
	done := m.do(func() error { _, err := m.lesson.Hint(); return err })
	m.home()
	if all := m.lesson.Lines(); done && len(all) > lines {
		last := &all[len(all)-1]
		m.told.text, m.told.mark = last.Message, hintMark(m.look, last.Level)
	} else if done {
		m.say(saidAllHints)
	}
}

// keep lets the refused line stand.
func (m *model) keep() {
	var result tutor.Result
	if !m.do(func() (err error) { result, err = m.lesson.Keep(); return err }) {
		return
	}
	m.home()
	if result.Line == nil {
		m.say(saidNothingToKeep)
		return
	}
	m.line.set("")
	m.textChanged()
	m.onward(result)
	if m.said == "" {
		m.say(saidKept)
	}
}
