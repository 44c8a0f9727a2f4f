package bench

import (
	"slices"
	"strconv"
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
	frame.Scroller
	step   int // in the script, −1 for none
	title  string
	q      *bench.Question
	shows  []bench.Block
	at     int // the choice that is picked
	marked map[int]bool
	then   func(*Bench) // once it is answered
}

func (a *asking) place(b *Bench) int {
	if a.step < 0 {
		return b.at
	}
	return a.step
}

// ask lays a question over everything, with the line for itself.
func (b *Bench) ask(a *asking) {
	// The steps have lent the line themselves.
	if a.step < 0 && !b.lend() {
		return
	}
	a.marked = map[int]bool{}
	// The run in hand is the likeliest to be laid beside another.
	a.at = max(slices.IndexFunc(a.q.Choices, func(c bench.Choice) bool { return a.q.Many && c.Line == strconv.Itoa(b.Table.Number()) }), 0)
	b.line.Set(a.q.Typed)
	b.sheet = a
}

func (a *asking) question(*Bench) string { return a.q.Text }

func (a *asking) view(b *Bench) views.Sheet {
	v := askView{title: a.title, shows: a.shows, choices: a.q.Choices, marked: a.marked, at: a.at, top: a.Seen.Top, sample: a.q.Sample}
	if a.step >= 0 && b.Table.Steps[a.step].Name == bench.StepByHand {
		v.isBeside, v.warnings = true, b.warnings
	}
	return v
}

func (*asking) typed(*Bench) {}

func (a *asking) press(b *Bench, k tea.KeyMsg) bool {
	switch {
	case k.Type == tea.KeyTab && a.q.Many:
		if a.at < len(a.q.Choices) {
			a.marked[a.at] = !a.marked[a.at]
		}
		return true
	case a.q.Choices == nil:
		return a.Scroll(k)
	}
	at, ok := frame.Picked(a.at, len(a.q.Choices), k)
	a.at = at
	return ok
}

func (a *asking) keys(b *Bench) []frame.Binding {
	var keys []frame.Binding
	if a.q.Choices != nil {
		keys = append(keys, b.on.UpDown)
	} else {
		keys = append(keys, b.on.ScrollHere)
	}
	switch {
	case len(a.lines()) > 1:
		keys = append(keys, b.on.LayBeside)
	case a.q.Many:
		keys = append(keys, b.on.Open)
	default:
		keys = append(keys, b.on.GoOn)
	}
	if a.q.Many {
		keys = append(keys, b.on.Mark)
	}
	if b.sheet == b.base {
		return append(keys, b.on.Menu, b.on.Quit)
	}
	return append(keys, b.on.Back, b.on.Quit)
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
func (a *asking) enter(b *Bench, text string) {
	marked := a.lines()
	line := text
	switch {
	case strings.TrimSpace(text) != "":
	// One run alone cannot be laid beside another.
	case len(marked) == 1:
		b.Say(saidMarkTwo)
		return
	case len(marked) > 1:
		line = strings.Join(marked, " ")
	case a.at < len(a.q.Choices):
		line = a.q.Choices[a.at].Line
	// Safety rules are scrolled to their end before they can be agreed to.
	case a.Seen.More() && !a.Seen.IsAtEnd():
		a.Scroll(tea.KeyMsg{Type: tea.KeyPgDown})
		return
	}
	b.answered(a.q.Accept(line), a)
	if a.q.Leaves(text) {
		b.line.Set(text) // it was typed for the next question
	}
}

// answered says and shows an answer, and goes to what follows it. a is the question that
// it answers, nil for a command.
func (b *Bench) answered(answer bench.Answer, a *asking) {
	then := (*Bench).home
	if a != nil && a.then != nil {
		then = a.then
	}
	switch {
	case answer.Predicts != nil:
		b.hand = a
		b.predict(*answer.Predicts)
		return
	case answer.Then != nil:
		b.ask(&asking{step: -1, title: answer.Title, q: answer.Then})
	case answer.Opened && !answer.Stay:
		b.line.Set("")
		b.begun()
		b.at = b.Table.Named(bench.StepValues)
		b.to(b.form)
	case answer.Blocks != nil || answer.Scene != nil:
		b.show(answer)
	case answer.Stay && a != nil:
	case answer.Stay:
		b.home()
	default:
		b.line.Set("")
		then(b)
	}
	if said := strings.Join(answer.Said, " "); said != "" {
		b.Say(said)
	}
}

// show lays blocks and a drawing over the form, to be read.
func (b *Bench) show(answer bench.Answer) {
	blocks := slices.Clone(answer.Blocks)
	if len(blocks) > 0 && blocks[0].Title == answer.Title {
		// The rule above the sheet has it already.
		blocks[0].Title = ""
	}
	b.lay(answer.Title, figure(blocks, answer.Scene))
}

// predict leaves the screen to the lesson of a student on the measured numbers.
func (b *Bench) predict(student record.Student) {
	desk, lesson, err := b.Table.Lesson(student)
	if err != nil {
		b.Say(views.SaidTrouble(b.Table.Form.Problem().ID, err))
		return
	}
	b.wish.Predicts, b.away = &Prediction{desk, lesson}, true
}

// Back follows a prediction by hand: the next student may predict.
func (b *Bench) Back(student record.Student) {
	b.away, b.lent = false, true
	b.line.Set("")
	b.refresh()
	next := &asking{step: b.Table.Named(bench.StepByHand), title: bench.StepByHand, q: b.Table.ByHand(), then: (*Bench).home, marked: map[int]bool{}}
	if b.hand != nil && b.hand.then != nil {
		next.then = b.hand.then
	}
	// The next student, or going on behind the last.
	next.at = slices.IndexFunc(b.Table.Students, func(s record.Student) bool { return s.ID == student.ID }) + 1
	b.sheet = next
	b.Say(b.Table.Status(student) + ".")
}
