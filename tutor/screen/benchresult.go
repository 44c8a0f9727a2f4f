package screen

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
)

// pages are those of what comes of a run, in the order in which tab turns them.
var pages = []bench.Page{bench.PageResult, bench.PageBudget, bench.PagePlot, bench.PageValues}

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
	o.by = slices.IndexFunc(o.letter, func(l string) bool { return glyph(l) == o.scene.Plot.X.Name })
}

func (o *outcome) question(*model) string { return saidWhatNext }

func (o *outcome) under(m *model, cols, rows int) []frame.Row {
	text := m.bench.anew(m, m.line.text(), m.bench.refused)
	if word, ok := m.wordOf(text); ok {
		return []frame.Row{m.labelled(wordMeans, m.look.Row(frame.Plain, m.whatItDoes(word)))}
	}
	if bench.Assigns(text) {
		return m.assigned(text, cols)
	}
	return nil
}

func (o *outcome) typed(*model) {}

func (o *outcome) keys(m *model) []binding {
	keys := []binding{m.on.nextPage}
	switch {
	case !m.line.isEmpty():
		keys = append(keys, m.on.takeIt)
	default:
		keys = append(keys, m.on.toForm)
	}
	switch {
	case o.page == bench.PagePlot:
		keys = append(keys, m.on.letter)
	case o.more():
		keys = append(keys, m.on.scrollHere)
	}
	return append(keys, m.on.back, m.on.leave)
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
	o.page, o.top = pages[(slices.Index(pages, o.page)+by)%len(pages)], 0
	if o.page == bench.PagePlot && o.scene.Plot == nil {
		o.plot(m, "")
	}
}

// enter changes a value and follows it; an empty line goes back to the form.
func (o *outcome) enter(m *model, text string) {
	text = m.bench.anew(m, text, m.bench.refused)
	switch {
	case m.line.isEmpty():
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
	m.line.set("")
	page := o.page
	if r.Warnings != nil {
		page = bench.PageResult
	}
	m.openOutcome(&outcome{page: page})
	m.say(strings.Join(answer.Said, " "))
}

func (o *outcome) body(m *model, cols, rows int) []frame.Row {
	if o.page == bench.PagePlot {
		return append([]frame.Row{m.pagesRow(o.page, cols)}, o.plotRows(m, cols, rows-1)...)
	}
	return m.withDrawing(cols, rows, func(cols, rows int) []frame.Row {
		return append([]frame.Row{m.pagesRow(o.page, cols)}, o.cut(o.pageRows(m, cols), rows-1)...)
	})
}

// pagesRow names the pages, the one in hand between hands.
func (m *model) pagesRow(page bench.Page, cols int) frame.Row {
	l := m.look
	r := frame.Row{frame.Gap(1)}
	for _, p := range pages {
		word := capital(string(p))
		if p == page {
			r = append(r, l.Text(frame.Bold, l.Signs.HandLeft+" "+word+" "+l.Signs.HandRight), frame.Gap(1))
			continue
		}
		r = append(r, l.Text(frame.Quiet, "  "+word+"  "), frame.Gap(1))
	}
	rest := max(cols-r.Width(), 0)
	return append(r, l.Text(frame.Quiet, strings.Repeat(l.Signs.Dotted, rest)))
}

func (o *outcome) plotRows(m *model, cols, rows int) []frame.Row {
	var notes []frame.Row
	for _, note := range o.notes {
		notes = append(notes, m.look.Rows(frame.Quiet, note, cols)...)
	}
	notes = notes[:min(len(notes), rows/3)]
	if o.scene.Plot == nil {
		return notes
	}
	return append(m.paint(o.scene, cols-1, rows-len(notes)), notes...)
}

func (o *outcome) pageRows(m *model, cols int) []frame.Row {
	switch o.page {
	case bench.PageBudget:
		return m.blockRows(o.result.Long(), cols)
	case bench.PageValues:
		return m.blockRows(o.result.MeasuredBlocks(), cols)
	}
	rows := m.warningRows(o.result.Warnings, cols, len(o.result.Warnings)*cols)
	return append(rows, m.blockRows(o.result.Short(), cols)...)
}
