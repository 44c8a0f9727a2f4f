package screen

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/record"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// asking is the sheet of a question: of a step of the script, or of what follows from a
// command or an answer.
type asking struct {
	scroller
	step   int // in the script, −1 for none
	title  string
	q      *bench.Question
	shows  []bench.Block
	at     int // the choice that is picked
	marked map[int]bool
	then   func(*model) // once it is answered
}

func (a *asking) place(m *model) int {
	if a.step < 0 {
		return m.bench.at
	}
	return a.step
}

// ask lays a question over everything, with the line for itself.
func (b *atBench) ask(m *model, a *asking) {
	if a.step < 0 && !b.lend(m) {
		return
	}
	a.marked = map[int]bool{}
	a.at = max(slices.IndexFunc(a.q.Choices, func(c bench.Choice) bool { return a.q.Many && c.Line == b.number() }), 0)
	m.line.Set(a.q.Typed)
	m.sheet = a
}

func (a *asking) question(*model) string { return a.q.Text }

func (a *asking) view(m *model) views.Sheet {
	v := askView{title: a.title, shows: a.shows, choices: a.q.Choices, marked: a.marked, at: a.at, top: a.seen.Top, sample: a.q.Sample}
	if a.step >= 0 && m.bench.table.Steps[a.step].Name == bench.StepByHand {
		v.isBeside, v.warnings = true, m.bench.warnings
	}
	return v
}

func (*asking) typed(*model) {}

func (a *asking) press(m *model, k tea.KeyMsg) bool {
	switch {
	case k.Type == tea.KeyTab && a.q.Many:
		if a.at < len(a.q.Choices) {
			a.marked[a.at] = !a.marked[a.at]
		}
		return true
	case a.q.Choices == nil:
		return a.scroller.press(k)
	}
	return picked(&a.at, len(a.q.Choices), k)
}

func (a *asking) keys(m *model) []frame.Binding {
	var keys []frame.Binding
	switch {
	case a.q.Choices != nil:
		keys = append(keys, m.on.UpDown)
	default:
		keys = append(keys, m.on.ScrollHere)
	}
	switch {
	case len(a.lines()) > 1:
		keys = append(keys, m.on.LayBeside)
	case a.q.Many:
		keys = append(keys, m.on.Open)
	default:
		keys = append(keys, m.on.GoOn)
	}
	if a.q.Many {
		keys = append(keys, m.on.Mark)
	}
	if m.sheet == m.bench.base {
		return append(keys, m.on.Menu, m.on.Leave)
	}
	return append(keys, m.on.Back, m.on.Leave)
}

// lines are those of the marked choices.
func (a *asking) lines() []string {
	var lines []string
	for i, c := range a.q.Choices {
		if a.marked[i] {
			lines = append(lines, c.Line)
		}
	}
	return lines
}

// enter hands in what is typed, else what is marked, else what is picked. What is shown
// is seen to its end first.
func (a *asking) enter(m *model, text string) {
	marked := a.lines()
	line := text
	switch {
	case strings.TrimSpace(text) != "":
	case len(marked) == 1:
		m.say(saidMarkTwo)
		return
	case len(marked) > 1:
		line = strings.Join(marked, " ")
	case a.at < len(a.q.Choices):
		line = a.q.Choices[a.at].Line
	case a.seen.More() && !a.seen.IsAtEnd():
		a.scroller.press(tea.KeyMsg{Type: tea.KeyPgDown})
		return
	}
	m.bench.answered(m, a.q.Accept(line), a)
	if a.q.Leaves(text) {
		m.line.Set(text) // it was typed for the next question
	}
}

// answered says and shows an answer, and goes to what follows it. a is the question that
// it answers, nil for a command.
func (b *atBench) answered(m *model, answer bench.Answer, a *asking) {
	then := (*model).home
	if a != nil && a.then != nil {
		then = a.then
	}
	switch {
	case answer.Predicts != nil:
		b.hand = a
		m.predict(*answer.Predicts)
		return
	case answer.Then != nil:
		b.ask(m, &asking{step: -1, title: answer.Title, q: answer.Then})
	case answer.Opened && !answer.Stay:
		m.line.Set("")
		b.begun(m)
		b.at = b.table.Named(bench.StepValues)
		b.to(m, b.form)
	case answer.Blocks != nil || answer.Scene != nil:
		m.show(answer)
	case answer.Stay && a != nil:
	case answer.Stay:
		m.home()
	default:
		m.line.Set("")
		then(m)
	}
	if said := strings.Join(answer.Said, " "); said != "" {
		m.say(said)
	}
}

// show lays blocks and a drawing over the form, to be read.
func (m *model) show(answer bench.Answer) {
	blocks := slices.Clone(answer.Blocks)
	if len(blocks) > 0 && blocks[0].Title == answer.Title {
		blocks[0].Title = ""
	}
	m.lay(answer.Title, figure(blocks, answer.Scene))
}

// predict leads a student through the stages on the measured numbers.
func (m *model) predict(s record.Student) {
	desk, lesson, err := m.bench.table.Lesson(s)
	if err != nil {
		m.say(troubleWith(m.bench.table.Form.Problem().ID, err))
		return
	}
	m.desk, m.lesson, m.lent = desk, lesson, false
	m.actions = byHandActions()
	m.beginLine(lesson)
	m.work = newWork(m)
	m.refresh()
	m.sheet = m.work
	m.say(saidByHandNow(s.Name))
}

// toBench leads back from a prediction by hand, to whoever is next.
func (m *model) toBench() {
	m.saveDraft()
	student := m.desk.Student
	m.desk, m.lesson, m.work, m.lent = nil, nil, nil, true
	m.actions = m.actionsAtBench()
	m.line.Forget()
	m.line.Set("")
	m.refresh()
	next := &asking{step: m.bench.table.Named(bench.StepByHand), title: bench.StepByHand, q: m.bench.table.ByHand(), then: (*model).home, marked: map[int]bool{}}
	if m.bench.hand != nil && m.bench.hand.then != nil {
		next.then = m.bench.hand.then
	}
	next.at = slices.IndexFunc(m.bench.table.Students, func(s record.Student) bool { return s.ID == student.ID }) + 1
	m.sheet = next
	m.say(m.bench.table.Standing(student) + ".")
}
