package screen

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/picture"
)

// The pages of what comes of a run.
const (
	pageResult = iota
	pageBudget
	pagePlot
	pageValues
)

// pageWords name the pages.
func pageWords() []string { return []string{"Result", "Budget", "Plot", "Values"} }

// outcome is what comes of a run, in pages.
type outcome struct {
	scroller
	page   int
	result *bench.Result
	by     int // the letter that the plot is against, among those that can be
	letter []string
	scene  picture.Scene
	notes  []string
}

func (*outcome) step(*model) benchStep { return stepResult }

// showOutcome shows a page, once the students had the offer to predict by hand. Where
// there is no result, the field that stands in its way is in hand.
func (m *model) showOutcome(page int) {
	if !m.bench.lend(m) {
		return
	}
	r, why := m.bench.result()
	if why != nil {
		m.bench.mend(m, why)
		return
	}
	m.bench.offer(m, func(m *model) { m.openOutcome(&outcome{page: page, result: r}) })
}

// openOutcome lays the pages of a result on the screen.
func (m *model) openOutcome(o *outcome) {
	if !m.bench.lend(m) || !m.bench.keep(m) {
		return
	}
	m.bench.passed[stepResult] = true
	for i := range m.bench.table.Form.Fields {
		if e := &m.bench.table.Form.Fields[i]; e.Kind == bench.Measure {
			o.letter = append(o.letter, e.Letter)
		}
	}
	o.by = -1
	m.sheet = o
	if o.page == pagePlot {
		o.plot(m, m.bench.rest)
	}
	if o.page == pagePlot && o.scene.Plot == nil {
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

func (m *model) showPlot() { m.showOutcome(pagePlot) }

// plot draws against a letter; "" for the one that tells most.
func (o *outcome) plot(m *model, by string) {
	scene, notes, why, err := m.bench.table.Plot(by)
	if err != nil || why != "" {
		m.bench.tell(m, why, err)
		return
	}
	o.scene, o.notes = scene, notes
	o.by = slices.IndexFunc(o.letter, func(l string) bool { return glyph(l) == scene.Plot.X.Name })
}

func (o *outcome) question(*model) string { return saidWhatNext }

func (o *outcome) under(m *model, cols, rows int) []row {
	text := m.bench.anew(m, m.line.text(), m.bench.refused)
	if word, ok := m.wordOf(text); ok {
		return []row{m.labelled(wordMeans, m.look.row(plain, m.whatItDoes(word)))}
	}
	if strings.Contains(text, "=") {
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
	case o.page == pagePlot:
		keys = append(keys, m.on.letter)
	case o.more():
		keys = append(keys, m.on.scrollHere)
	}
	return append(keys, m.on.back, m.on.leave)
}

func (o *outcome) press(m *model, k tea.KeyMsg) bool {
	pages := len(pageWords())
	switch {
	case k.Type == tea.KeyTab:
		o.turn(m, (o.page+1)%pages)
	case k.Type == tea.KeyShiftTab:
		o.turn(m, (o.page+pages-1)%pages)
	case o.page == pagePlot && k.Type == tea.KeyDown:
		o.plot(m, o.letter[(o.by+1)%len(o.letter)])
	case o.page == pagePlot && k.Type == tea.KeyUp:
		o.plot(m, o.letter[(max(o.by, 0)+len(o.letter)-1)%len(o.letter)])
	default:
		return o.scroller.press(k)
	}
	return true
}

func (o *outcome) turn(m *model, page int) {
	o.page, o.top = page, 0
	if page == pagePlot && o.scene.Plot == nil {
		o.plot(m, "")
	}
}

// enter changes a value and follows it; an empty line goes back to the form.
func (o *outcome) enter(m *model, text string) {
	text = m.bench.anew(m, text, m.bench.refused)
	switch {
	case m.line.isEmpty():
		m.home()
	case !strings.Contains(text, "="):
		m.say(saidNothingAfter)
	default:
		o.change(m, text)
	}
}

func (o *outcome) change(m *model, text string) {
	field, why := m.bench.assign(m, text)
	if why != "" {
		m.say(why)
		return
	}
	m.bench.form.at = field
	r, wrong := m.bench.result()
	if wrong != nil {
		m.bench.mend(m, wrong)
		return
	}
	m.line.set("")
	page := o.page
	if r.Warnings != nil {
		page = pageResult
	}
	m.openOutcome(&outcome{page: page, result: r})
	m.say(saidChanged(&m.bench.table.Form.Fields[field]))
}

func (o *outcome) body(m *model, cols, rows int) []row {
	if o.page == pagePlot {
		return append([]row{m.pagesRow(o.page, cols)}, o.plotRows(m, cols, rows-1)...)
	}
	return m.withDrawing(cols, rows, func(cols, rows int) []row {
		return append([]row{m.pagesRow(o.page, cols)}, o.cut(o.pageRows(m, cols), rows-1)...)
	})
}

// pagesRow names the pages, the one in hand between hands.
func (m *model) pagesRow(page, cols int) row {
	l := m.look
	r := row{gap(1)}
	for i, word := range pageWords() {
		if i == page {
			r = append(r, l.text(bold, l.signs.handLeft+" "+word+" "+l.signs.handRight), gap(1))
			continue
		}
		r = append(r, l.text(quiet, "  "+word+"  "), gap(1))
	}
	rest := max(cols-r.width(), 0)
	return append(r, l.text(quiet, strings.Repeat(l.signs.dotted, rest)))
}

func (o *outcome) plotRows(m *model, cols, rows int) []row {
	var notes []row
	for _, note := range o.notes {
		notes = append(notes, m.look.rows(quiet, note, cols)...)
	}
	notes = notes[:min(len(notes), rows/3)]
	if o.scene.Plot == nil {
		return notes
	}
	return append(m.paint(o.scene, cols-1, rows-len(notes)), notes...)
}

func (o *outcome) pageRows(m *model, cols int) []row {
	switch o.page {
	case pageBudget:
		return m.blockRows(o.result.Details(), cols)
	case pageValues:
		return m.blockRows(o.result.MeasuredBlocks(), cols)
	}
	rows := m.warningRows(o.result.Warnings, cols, len(o.result.Warnings)*cols)
	return append(rows, m.blockRows(o.result.Main(), cols)...)
}
