package bench

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
	frame.Scroller
	page   bench.Page
	result *bench.Result
	by     int // the letter that the plot is against, among those that can be
	letter []string
	scene  picture.Scene
	notes  []string
}

func (*outcome) place(b *Bench) int { return b.Table.Named(bench.StepResult) }

// showOutcome shows a page, once the students had the offer to predict by hand.
func (b *Bench) showOutcome(page bench.Page) {
	if !b.lend() {
		return
	}
	step := b.Table.Named(bench.StepByHand)
	// Whoever wants to predict by hand must be asked before the result is seen.
	if q, ok := b.Table.Steps[step].Ask(&b.Table); ok {
		by := b.rest
		b.put(step, q, func(b *Bench) { b.rest = by; b.openOutcome(&outcome{page: page}); b.rest = "" })
		return
	}
	b.openOutcome(&outcome{page: page})
}

// openOutcome lays the pages of a result on the screen. Where there is none, the field
// that stands in its way is in hand.
func (b *Bench) openOutcome(o *outcome) {
	if !b.lend() {
		return
	}
	var why []string
	if o.result, why = b.latest.of(b.Table.Form); why != nil {
		b.mend(why)
		return
	}
	// First in the record: a result that is not saved could be looked at and forgotten.
	if !b.save() {
		return
	}
	b.at = b.Table.Named(bench.StepResult)
	b.Table.Pass(bench.StepResult, true)
	for i := range b.Table.Form.Fields {
		if e := &b.Table.Form.Fields[i]; e.Kind == bench.Measure {
			o.letter = append(o.letter, e.Letter)
		}
	}
	o.by = -1
	b.sheet = o
	if o.page == bench.PagePlot {
		o.plot(b, b.rest)
	}
	if o.page == bench.PagePlot && o.scene.Plot == nil {
		// The letter that was asked for cannot be plotted; the usual one is drawn, and it is said why.
		why := b.said
		o.plot(b, "")
		b.Say(why)
	}
}

// mend goes to the first field that is bad, and says why there is no result.
func (b *Bench) mend(why []string) {
	bad := func(e bench.Field) bool { return e.Why != "" }
	if i := slices.IndexFunc(b.Table.Form.Fields, bad); i >= 0 {
		// The field that is wrong is in hand, with its reason.
		b.form.at = i
	}
	b.home()
	b.Say(strings.Join(why, " "))
}

// plot draws against a letter or an expression; "" for the letter that tells most.
func (o *outcome) plot(b *Bench, by string) {
	c, _, _ := bench.CommandOf("plot")
	answer := b.Table.Do(c, by)
	if answer.Scene == nil {
		b.Say(strings.Join(answer.Said, " "))
		return
	}
	o.scene, o.notes = *answer.Scene, answer.Said
	o.by = slices.IndexFunc(o.letter, func(l string) bool { return expr.Glyph(l) == o.scene.Plot.X.Name })
}

func (o *outcome) question(*Bench) string { return saidWhatNext }

func (o *outcome) view(b *Bench) views.Sheet {
	v := resultView{page: o.page, result: o.result, plot: o.scene, notes: o.notes, top: o.Seen.Top}
	if text := b.anew(b.line.Text(), b.refused); bench.Assigns(text) {
		v.under = underAssigned(b.Table.Form, text)
	}
	return v
}

func (o *outcome) typed(*Bench) {}

func (o *outcome) keys(b *Bench) []frame.Binding {
	keys := []frame.Binding{b.on.NextPage, b.on.ToForm, b.on.ScrollHere}
	if !b.line.IsEmpty() {
		keys[1] = b.on.TakeIt
	}
	if o.page == bench.PagePlot {
		keys[2] = b.on.Letter
	}
	return append(keys, b.on.Back, b.on.Quit)
}

func (o *outcome) press(b *Bench, k tea.KeyMsg) bool {
	switch {
	case k.Type == tea.KeyTab:
		o.turn(b, 1)
	case k.Type == tea.KeyShiftTab:
		o.turn(b, len(pages)-1)
	case o.page == bench.PagePlot && k.Type == tea.KeyDown:
		o.plot(b, o.letter[(o.by+1)%len(o.letter)])
	case o.page == bench.PagePlot && k.Type == tea.KeyUp:
		o.plot(b, o.letter[(max(o.by, 0)+len(o.letter)-1)%len(o.letter)])
	default:
		return o.Scroll(k)
	}
	return true
}

func (o *outcome) turn(b *Bench, by int) {
	o.page, o.Seen.Top = pages[(slices.Index(pages, o.page)+by)%len(pages)], 0
	if o.page == bench.PagePlot && o.scene.Plot == nil {
		o.plot(b, "")
	}
}

// enter changes a value and follows it; an empty line goes back to the form.
func (o *outcome) enter(b *Bench, text string) {
	text = b.anew(text, b.refused)
	switch {
	case b.line.IsEmpty():
		b.home()
	case !bench.Assigns(text):
		b.Say(saidNothingAfter)
	default:
		o.change(b, text)
	}
}

// change takes a letter and its value; where something is asked about it, the form does
// that, with the field in hand.
func (o *outcome) change(b *Bench, text string) {
	field, answer := b.assign(text)
	switch {
	case answer.Then != nil:
		b.form.at = field
		b.home()
		b.form.answered(b, answer)
		return
	case answer.Stay:
		b.Say(strings.Join(answer.Said, " "))
		return
	}
	b.form.at = field
	r, wrong := b.latest.of(b.Table.Form)
	if wrong != nil {
		b.mend(wrong)
		return
	}
	b.line.Set("")
	page := o.page
	if r.Warnings != nil {
		// A warning about a string must not be on another page.
		page = bench.PageResult
	}
	b.openOutcome(&outcome{page: page})
	b.Say(strings.Join(answer.Said, " "))
}
