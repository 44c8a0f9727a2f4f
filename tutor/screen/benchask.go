package screen

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/record"
	"example.org/standstill/tutor/screen/frame"
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
	m.line.set(a.q.Typed)
	m.sheet = a
}

func (a *asking) question(*model) string { return a.q.Text }

func (a *asking) under(m *model, cols, rows int) []frame.Row {
	if a.q.Sample == "" {
		return nil
	}
	return m.labelledText(wordSample, a.q.Sample, cols)
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

func (a *asking) keys(m *model) []binding {
	var keys []binding
	switch {
	case a.q.Choices != nil:
		keys = append(keys, m.on.upDown)
	case a.more():
		keys = append(keys, m.on.scrollHere)
	}
	switch {
	case len(a.lines()) > 1:
		keys = append(keys, m.on.layBeside)
	case a.q.Many:
		keys = append(keys, m.on.open)
	default:
		keys = append(keys, m.on.goOn)
	}
	if a.q.Many {
		keys = append(keys, m.on.mark)
	}
	if m.sheet == m.bench.base {
		return append(keys, m.on.menu, m.on.leave)
	}
	return append(keys, m.on.back, m.on.leave)
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
	case a.more() && a.top+a.room < a.rows:
		a.scroller.press(tea.KeyMsg{Type: tea.KeyPgDown})
		return
	}
	m.bench.answered(m, a.q.Accept(line), a)
	if a.q.Leaves(text) {
		m.line.set(text) // it was typed for the next question
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
		m.line.set("")
		b.begun(m)
		b.at = b.table.Named(bench.StepValues)
		b.to(m, b.form)
	case answer.Blocks != nil || answer.Scene != nil:
		m.figure(answer)
	case answer.Stay && a != nil:
	case answer.Stay:
		m.home()
	default:
		m.line.set("")
		then(m)
	}
	if said := strings.Join(answer.Said, " "); said != "" {
		m.say(said)
	}
}

// leastChoices is how many rows of choices are seen beside any warnings.
const leastChoices = 2

func (a *asking) body(m *model, cols, rows int) []frame.Row {
	if a.step >= 0 && m.bench.table.Steps[a.step].Name == bench.StepByHand {
		return m.besideApparatus(cols, rows, func(cols, rows int) []frame.Row { return a.list(m, cols, rows, m.bench.warnings) })
	}
	return a.list(m, cols, rows, nil)
}

// list is what is shown, and the choices.
func (a *asking) list(m *model, cols, rows int, warnings []string) []frame.Row {
	out := []frame.Row{m.look.Rule(cols, a.title, "")}
	out = append(out, m.warningRows(warnings, cols, rows-1-leastChoices)...)
	room := rows - len(out)
	var all []frame.Row
	for _, b := range a.shows {
		for _, line := range b.Lines {
			all = append(all, m.pointRows(line, cols)...)
		}
	}
	from, to := 0, 0
	for i, c := range a.q.Choices {
		if i == a.at {
			from = len(all)
		}
		all = append(all, a.choiceRows(m, i, c, cols)...)
		if i == a.at {
			to = len(all) - 1
		}
	}
	if a.q.Choices != nil {
		a.follow(to, len(all), room)
		a.follow(from, len(all), room)
	}
	return append(out, a.cut(all, room)...)
}

func (a *asking) choiceRows(m *model, i int, c bench.Choice, cols int) []frame.Row {
	label := m.look.Row(frame.Plain, c.Label)
	if a.marked[i] {
		label = append(m.look.Row(frame.Bold, wordMarked+"  "), label...)
	}
	rows := []frame.Row{m.pickRow(i == a.at, label)}
	if c.Detail == "" {
		return rows
	}
	for _, part := range m.look.WrapMeasured(c.Detail, cols-8) {
		rows = append(rows, append(frame.Row{frame.Gap(6)}, m.look.Text(frame.Quiet, part)))
	}
	return rows
}

// pointRows is one of several points, behind a sign.
func (m *model) pointRows(said string, cols int) []frame.Row {
	var rows []frame.Row
	for i, part := range m.look.Wrap(said, cols-4) {
		r := frame.Row{frame.Gap(3)}
		if i == 0 {
			r = frame.Row{frame.Gap(1), m.look.Text(frame.Near, m.look.Signs.Kept), frame.Gap(1)}
		}
		rows = append(rows, append(r, m.tint(frame.Plain, part, true)...))
	}
	return rows
}

// warningRows are the warnings about what was measured; where there is no room for all of
// them, the word that shows them.
func (m *model) warningRows(warnings []string, cols, most int) []frame.Row {
	var rows []frame.Row
	sign := mark{m.look.Signs.Kept, wordWarning, frame.Near}
	for _, w := range warnings {
		rows = append(rows, m.marked(sign, w, frame.Plain, true, cols)...)
	}
	if len(rows) > most {
		rows = m.marked(sign, saidReadWarnings, frame.Plain, true, cols)
	}
	return rows
}

// figure lays blocks and a drawing over the form, to be read.
func (m *model) figure(answer bench.Answer) {
	blocks := slices.Clone(answer.Blocks)
	if len(blocks) > 0 && blocks[0].Title == answer.Title {
		blocks[0].Title = ""
	}
	m.lay(answer.Title, func(m *model, cols int) []frame.Row {
		rows := m.blockRows(blocks, cols)
		if answer.Scene != nil {
			rows = append(rows, m.paint(*answer.Scene, cols-1, max(m.rows*2/3, leastFigure))...)
		}
		return rows
	})
}

// leastFigure is how many rows a drawing has at least.
const leastFigure = 8

// predict leads a student through the stages on the measured numbers.
func (m *model) predict(s record.Student) {
	desk, lesson, err := m.bench.table.Lesson(s)
	if err != nil {
		m.say(troubleWith(m.bench.table.Form.Problem().ID, err))
		return
	}
	m.desk, m.lesson, m.lent = desk, lesson, false
	m.actions = byHandActions()
	m.line.begin(lesson)
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
	m.line.past = nil
	m.line.set("")
	m.refresh()
	next := &asking{step: m.bench.table.Named(bench.StepByHand), title: bench.StepByHand, q: m.bench.table.ByHand(), then: (*model).home, marked: map[int]bool{}}
	if m.bench.hand != nil && m.bench.hand.then != nil {
		next.then = m.bench.hand.then
	}
	next.at = slices.IndexFunc(m.bench.table.Students, func(s record.Student) bool { return s.ID == student.ID }) + 1
	m.sheet = next
	m.say(m.bench.table.Standing(student) + ".")
}
