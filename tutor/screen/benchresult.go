package screen

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/checker/expr"
	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// outcome is what comes of a run, in pages.
type outcome struct {
	scroller
	page   bench.Page
	result *bench.Result
	by     int // the letter that the plot is against, among those that can be
	letter []string
	scene  picture.Scene
	notes  []string
}

func (*outcome) place(m *model) int { return m.bench.table.Named(bench.StepResult) }

// showOutcome shows a page, once the students had the offer to predict by hand.
func (m *model) showOutcome(page bench.Page) {
	b := m.bench
	if !b.lend(m) {
		return
	}
	step := b.table.Named(bench.StepByHand)
	if q, ok := b.table.Steps[step].Ask(&b.table); ok {
		by := b.rest
		b.put(m, step, q, func(m *model) { m.bench.rest = by; m.openOutcome(&outcome{page: page}); m.bench.rest = "" })
		return
	}
	m.openOutcome(&outcome{page: page})
}

// openOutcome lays the pages of a result on the screen. Where there is none, the field
// that stands in its way is in hand.
func (m *model) openOutcome(o *outcome) {
	b := m.bench
	if !b.lend(m) {
		return
	}
	var why []string
	if o.result, why = b.result(); why != nil {
		b.mend(m, why)
		return
	}
	if !b.keep(m) {
		return
	}
	b.at = b.table.Named(bench.StepResult)
	b.table.Pass(bench.StepResult, true)
	for i := range b.table.Form.Fields {
		if e := &b.table.Form.Fields[i]; e.Kind == bench.Measure {
			o.letter = append(o.letter, e.Letter)
		}
	}
	o.by = -1
	m.sheet = o
	if o.page == bench.PagePlot {
		o.plot(m, b.rest)
	}
	if o.page == bench.PagePlot && o.scene.Plot == nil {
		why := m.said
		o.plot(m, "")
		m.say(why)
	}
}

// mend goes to the first field that is bad, and says why there is no result.
func (b *atBench) mend(m *model, why []string) {
	bad := func(e bench.Field) bool { return e.Why != "" }
	if i := slices.IndexFunc(b.table.Form.Fields, bad); i >= 0 {
		b.form.at = i
	}
	m.home()
	m.say(strings.Join(why, " "))
}

// plot draws against a letter or an expression; "" for the letter that tells most.
func (o *outcome) plot(m *model, by string) {
	c, _, _ := bench.CommandOf("plot")
	answer := m.bench.table.Do(c, by)
	if answer.Scene == nil {
		m.say(strings.Join(answer.Said, " "))
		return
	}
	o.scene, o.notes = *answer.Scene, answer.Said
	o.by = slices.IndexFunc(o.letter, func(l string) bool { return expr.Glyph(l) == o.scene.Plot.X.Name })
}

func (o *outcome) question(*model) string { return saidWhatNext }

func (o *outcome) view(m *model) views.Sheet {
	v := resultView{page: o.page, result: o.result, plot: o.scene, notes: o.notes, top: o.seen.Top}
	if text := m.bench.anew(m, m.line.Text(), m.bench.refused); bench.Assigns(text) {
		v.under = m.assigned(text)
	}
	return v
}

func (o *outcome) typed(*model) {}

func (o *outcome) keys(m *model) []frame.Binding {
	keys := []frame.Binding{m.on.NextPage}
	switch {
	case !m.line.IsEmpty():
		keys = append(keys, m.on.TakeIt)
	default:
		keys = append(keys, m.on.ToForm)
	}
	switch {
	case o.page == bench.PagePlot:
		keys = append(keys, m.on.Letter)
	default:
		keys = append(keys, m.on.ScrollHere)
	}
	return append(keys, m.on.Back, m.on.Leave)
}

func (o *outcome) press(m *model, k tea.KeyMsg) bool {
	switch {
	case k.Type == tea.KeyTab:
		o.turn(m, 1)
	case k.Type == tea.KeyShiftTab:
		o.turn(m, len(pages)-1)
	case o.page == bench.PagePlot && k.Type == tea.KeyDown:
		o.plot(m, o.letter[(o.by+1)%len(o.letter)])
	case o.page == bench.PagePlot && k.Type == tea.KeyUp:
		o.plot(m, o.letter[(max(o.by, 0)+len(o.letter)-1)%len(o.letter)])
	default:
		return o.scroller.press(k)
	}
	return true
}

func (o *outcome) turn(m *model, by int) {
	o.page, o.seen.Top = pages[(slices.Index(pages, o.page)+by)%len(pages)], 0
	if o.page == bench.PagePlot && o.scene.Plot == nil {
		o.plot(m, "")
	}
}

// enter changes a value and follows it; an empty line goes back to the form.
func (o *outcome) enter(m *model, text string) {
	text = m.bench.anew(m, text, m.bench.refused)
	switch {
	case m.line.IsEmpty():
		m.home()
	case !bench.Assigns(text):
		m.say(saidNothingAfter)
	default:
		o.change(m, text)
	}
}

// change takes a letter and its value; where something is asked about it, the form does
// that, with the field in hand.
func (o *outcome) change(m *model, text string) {
	b := m.bench
	field, answer := b.assign(m, text)
	switch {
	case answer.Then != nil:
		b.form.at = field
		m.home()
		b.form.answered(m, answer)
		return
	case answer.Stay:
		m.say(strings.Join(answer.Said, " "))
		return
	}
	b.form.at = field
	r, wrong := b.result()
	if wrong != nil {
		b.mend(m, wrong)
		return
	}
	m.line.Set("")
	page := o.page
	if r.Warnings != nil {
		page = bench.PageResult
	}
	m.openOutcome(&outcome{page: page})
	m.say(strings.Join(answer.Said, " "))
}
