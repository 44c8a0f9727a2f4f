package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// solution is the worked solution beside the student's own page.
type solution struct {
	onLesson
	frame.Scroller
	advice tutor.Advice
	ok     bool // there is a next problem
	worked []tutor.Step
}

func newSolution(m *model) *solution {
	s := &solution{worked: m.lesson.Worked()}
	// On measured numbers the next thing is the bench.
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
	done := m.now.Progress.Result("")
	if s.ok {
		done += " " + saidNext(s.advice)
	}
	return done
}

func (s *solution) view(m *model) views.Sheet {
	v := views.Solution{Lesson: &m.now, Worked: s.worked, Top: s.Seen.Top, Beneath: m.beneath()}
	if s.ok {
		v.Next = s.advice.Why
	}
	return v
}

func (s *solution) enter(m *model, text string) {
	if m.line.IsEmpty() {
		m.next()
		return
	}
	m.check(text)
}

func (s *solution) press(m *model, k tea.KeyMsg) bool {
	if k.Type == tea.KeyTab && m.canTurn() {
		m.turnAngles()
		return true
	}
	return s.Scroll(k)
}

func (s *solution) keys(m *model) []frame.Binding {
	keys := []frame.Binding{m.on.NextProblem, m.on.Angles}
	if m.bench != nil {
		keys[0] = m.on.ToBench
	}
	if !m.line.IsEmpty() {
		keys = []frame.Binding{m.on.Check, m.on.Angles}
	}
	return append(keys, m.on.ScrollHere, m.on.MyPage, m.on.Quit)
}

// reveal asks before the solution is shown for a problem that is not done.
type reveal struct{ frame.Still }

func (reveal) question(*model) string { return saidReveal }

func (reveal) view(m *model) views.Sheet { return views.Reveal{Work: m.work.shown(m)} }

func (reveal) keys(m *model) []frame.Binding {
	return []frame.Binding{m.on.ShowIt, m.on.Back, m.on.Quit}
}

func (reveal) press(*model, tea.KeyMsg) bool { return false }

func (reveal) typed(m *model) { m.home() }

func (reveal) enter(m *model, _ string) {
	// First in the record: whoever pulls the plug has still seen it.
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
		m.say(views.SaidNoProblems)
		return
	}
	left := ""
	if m.lesson != nil {
		left = m.lesson.SaidLeft()
	}
	m.openAdvised(advice)
	if left != "" {
		m.say(left)
	}
}

func (m *model) openAdvised(a tutor.Advice) {
	m.open(a.ID, a.Again)
	// Only if it was opened, and nothing more urgent was said on the way.
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
	// After the last hint there is no new line.
	if all := m.lesson.Lines(); done && len(all) > lines {
		last := &all[len(all)-1]
		m.told.Text, m.told.Mark = last.Message, views.HintMark(m.look, last.Level)
	} else if done {
		m.say(saidAllHints)
	}
}

// dispute lets the refused line stand.
func (m *model) dispute() {
	var result tutor.Result
	if !m.do(func() (err error) { result, err = m.lesson.Dispute(); return err }) {
		return
	}
	m.home()
	if result.Line == nil {
		m.say(saidNothingToDispute)
		return
	}
	// The disputed line still stands in it, to be mended.
	m.line.Set("")
	m.textChanged()
	m.onward(result)
	// onward may have said that the next stage begins.
	if m.said == "" {
		m.say(saidDisputed)
	}
}
