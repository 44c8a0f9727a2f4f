// Package bench knows how runs at the bench are led on the screen: which questions, fields and
// pages follow each other, and what each key does there. What is asked and said is decided in
// tutor/bench; here it is only laid out.
//
// Start with Bench. It is the whole state; Key changes it, Screen shows it, and a Wish is what
// it leaves to the screens around it.
//
//	bench.go         the run in hand, and who has the line
//	update.go        a key comes in → the state changes
//	actions.go       every key and every word, with what it does
//	steps.go         the row of steps, and what follows what
//	screen.go        the state → what is shown of it
//	ask.go, form.go, result.go, apparatus.go, sheets.go   what can lie on the screen
//	askview.go, formview.go, formfields.go, resultview.go, blocks.go   what each of them looks like
//	sentences.go     everything that is said
package bench

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/record"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// Bench is the run in hand of the students at a table, with what lies on the screen. While
// one of them predicts by hand, the screen belongs to their lesson, and the bench waits.
type Bench struct {
	Table bench.Table

	problem *problems.Problem // to begin with; nil to choose one
	notice  string            // of the record, to be agreed to
	line    *frame.Line       // lent by the screens around
	on      *frame.Keys
	actions views.Actions[*Bench]

	look    *frame.Look
	pen     *views.Pen
	memos   views.Memos
	version int // of everything that is drawn

	sheet sheet
	base  sheet // that others lie over
	lent  bool  // the line belongs to the sheet, not to the one under all others
	said  string
	wish  Wish
	away  bool // somebody predicts by hand

	at       int // the step in hand
	form     *form
	hand     *asking            // from where somebody was led to predict by hand
	ref      *checker.Reference // with the numbers that were measured
	warnings []string
	latest   latest
	rest     string // what is typed behind a word
	refused  string // the line that named a field and could not be taken
	unsaved  error  // why the run is not in the record as it stands
}

// sheet is what lies on the page's place.
type sheet interface {
	// question says what the line is for.
	question(*Bench) string
	// view is what is to be seen of it.
	view(*Bench) views.Sheet
	// Saw is told how much of it was seen.
	Saw(frame.Seen)
	// keys lists the keys that work here, beside those of the line.
	keys(*Bench) []frame.Binding
	// press takes a key that types nothing; false leaves it to the bench.
	press(b *Bench, k tea.KeyMsg) bool
	// typed is told that the text in the line has changed.
	typed(*Bench)
	// enter takes the line when Enter is pressed. It is no word.
	enter(b *Bench, text string)
}

// Wish is what a key at the bench asks of the screens around it.
type Wish struct {
	Quit            bool
	ToLesson        bool        // where a visitor goes on
	OtherBackground bool        // light or dark
	Predicts        *Prediction // somebody is led through the lesson on the measured numbers
}

// Prediction is the lesson of a student on the numbers that were measured.
type Prediction struct {
	Desk   *tutor.Desk
	Lesson *tutor.Lesson
}

// Options are what a run begins with. Problem is the model of the apparatus, nil to have the
// students choose one; Names are proposed as those at the table. Save writes files; nil where
// none can be written.
type Options struct {
	Problem *problems.Problem
	Names   []string
	Save    bench.Saver
}

// New makes a bench at which nothing has begun.
func New(t *tutor.Tutor, o Options) *Bench {
	b := &Bench{
		Table:   bench.Table{Tutor: t, Steps: bench.Script(), Save: o.Save, Names: o.Names},
		problem: o.Problem, on: frame.SharedKeys(), actions: ownActions(),
	}
	if t.IsVisit() {
		b.actions = visitorActions()
	}
	return b
}

// Begin opens the bench on a screen, at the choice of an apparatus where none was named.
// Notice, if any, has to be agreed to first.
func (b *Bench) Begin(line *frame.Line, look *frame.Look, notice string) {
	b.line, b.notice = line, notice
	b.Repaint(look)
	b.begin()
}

func (b *Bench) begin() {
	switch {
	case b.notice != "":
		b.to(&agree{})
	case b.problem == nil:
		b.to(newApparatus(b))
	default:
		b.take(b.problem)
	}
}

// Repaint takes other colours.
func (b *Bench) Repaint(look *frame.Look) {
	b.look = look
	b.refresh()
}

// refresh follows a change of what is drawn.
func (b *Bench) refresh() {
	b.version++
	var colours map[string]int
	if b.ref != nil {
		colours = picture.Colours(b.ref)
	}
	b.pen = views.NewPen(b.look, colours, nil)
}

// take puts an apparatus on the table.
func (b *Bench) take(p *problems.Problem) {
	if err := b.Table.Begin(p); err != nil {
		b.Say(views.SaidTrouble(p.ID, err))
		return
	}
	b.begun()
	b.goOn(0)
}

// begun follows a form that was put in hand.
func (b *Bench) begun() {
	b.form = newForm()
	b.changed()
}

// to lays a sheet under all others, with an empty line.
func (b *Bench) to(s sheet) {
	b.base, b.lent = s, true
	b.line.Set("")
	b.home()
}

// changed follows a change of what was measured.
func (b *Bench) changed() {
	b.ref, b.warnings = b.Table.Form.Ref(), b.Table.Form.Warnings()
	b.refresh()
}

// home goes back to the sheet under all others. The line then holds again what it is
// for there.
func (b *Bench) home() {
	b.sheet = b.base
	if !b.lent {
		return
	}
	b.lent = false
	b.line.Set("")
	if b.base == sheet(b.form) {
		b.form.load(b)
	}
}

// hasLine reports whether the line belongs to the form.
func (b *Bench) hasLine() bool {
	return b.form != nil && b.base == sheet(b.form) && !b.lent && !b.away
}

// lend gives the line to another sheet, once what stands in it is in the form. It is
// false, and says why, where that cannot be.
func (b *Bench) lend() bool {
	if b.hasLine() && !b.form.commit(b) {
		return false
	}
	b.lent = true
	b.line.Set("")
	return true
}

// Say puts one sentence under the line, until the next key.
func (b *Bench) Say(sentence string) { b.said = sentence }

// save writes the run to the record; false, and said, where that does not work.
func (b *Bench) save() bool {
	err := b.Table.SaveRun()
	if b.unsaved = err; err != nil {
		b.Say(record.Sentence(err))
	}
	return err == nil
}

// Close saves what was typed, a half-typed value too. What can be saved nowhere is handed
// on to the lines of text, if these are to follow.
func (b *Bench) Close() {
	switch {
	case b.hasLine():
		if !b.form.commit(b) && b.form.asking == nil {
			stash(b.Table.Form, b.line.Text())
		}
		b.form.settle()
	case !b.away && b.isMeasuring() && bench.Assigns(b.line.Text()):
		if _, answer := b.assign(b.line.Text()); answer.Then != nil {
			b.form.asking = answer.Then
			b.form.settle()
		} else if answer.Stay {
			stash(b.Table.Form, b.line.Text())
		}
	}
	b.save()
}

// Unsaved is what was measured where it is saved nowhere, nil else.
func (b *Bench) Unsaved() *bench.Form {
	if b.Table.Run() == "" {
		return b.Table.Form
	}
	return nil
}

// Fault is why the run is not in the record as it stands, nil where it is.
func (b *Bench) Fault() error { return b.unsaved }

// Goodbye says where the run is.
func (b *Bench) Goodbye() string {
	switch {
	case b.Table.Form == nil || b.Table.Form.Empty():
		return saidNothingMeasured
	case b.Table.Run() == "":
		return saidRunNotSaved
	case b.Table.Tutor.SavedIn() == "":
		return views.SaidNothingSaved
	}
	return saidRunSaved(b.Table.Number())
}

// latest is the result of a form, or why there is none, for as long as the same
// stands in it.
type latest struct {
	text   string
	result *bench.Result
	why    []string
}

func (o *latest) of(f *bench.Form) (*bench.Result, []string) {
	text := f.Heading() + "\n" + f.Text()
	if o.text != text {
		r, why := f.Result()
		*o = latest{text, r, why}
	}
	return o.result, o.why
}
