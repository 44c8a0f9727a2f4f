package screen

import (
	"strconv"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/record"
)

// atBench is the run in hand of the students at a table. While one of them predicts
// by hand, the model holds a lesson as well.
type atBench struct {
	table bench.Table
	Bench

	at       int   // the step in hand
	base     sheet // that others lie over
	form     *form
	hand     *asking            // from where somebody was led to predict by hand
	ref      *checker.Reference // with the numbers that were measured
	warnings []string
	outcome  outcomeOf
	rest     string // what is typed behind a word
	refused  string // the line that named a field and could not be taken
}

func newBench(t *tutor.Tutor, b Bench) *atBench {
	return &atBench{Bench: b, table: bench.Table{Tutor: t, Steps: bench.Script(), Save: b.Save, Names: b.Names}}
}

// isAtBench reports whether the bench is on the screen, and not the lesson of one who
// predicts by hand.
func (m *model) isAtBench() bool { return m.bench != nil && m.lesson == nil }

// begin opens the bench, at the choice of an apparatus where none was named.
func (b *atBench) begin(m *model) {
	m.actions = m.actionsAtBench()
	switch {
	case m.notice != "":
		b.to(m, &agree{})
	case b.Problem == nil:
		b.to(m, newApparatus(m))
	default:
		b.take(m, b.Problem)
	}
}

// take puts an apparatus on the table.
func (b *atBench) take(m *model, p *problems.Problem) {
	if err := b.table.Begin(p); err != nil {
		m.say(troubleWith(p.ID, err))
		return
	}
	b.begun(m)
	b.goOn(m, 0)
}

// begun follows a form that was put in hand.
func (b *atBench) begun(m *model) {
	b.form = newForm()
	b.changed(m)
}

// to lays a sheet under all others, with an empty line.
func (b *atBench) to(m *model, s sheet) {
	b.base, m.lent = s, true
	m.line.Set("")
	m.home()
}

// changed follows a change of what was measured.
func (b *atBench) changed(m *model) {
	b.ref, b.warnings = b.table.Form.Ref(), b.table.Form.Warnings()
	m.refresh()
}

// colourBench gives the forces of the apparatus their colours.
func (m *model) colourBench() {
	if m.bench == nil || m.bench.ref == nil {
		return
	}
	m.colours = picture.Colours(m.bench.ref)
}

// home goes back to the sheet under all others. The line then holds again what it is
// for there.
func (b *atBench) home(m *model) {
	m.sheet = b.base
	if !m.lent {
		return
	}
	m.lent = false
	m.line.Set("")
	if b.base == sheet(b.form) {
		b.form.load(m)
	}
}

// hasLine reports whether the line belongs to the form.
func (b *atBench) hasLine(m *model) bool {
	return b.form != nil && b.base == sheet(b.form) && !m.lent && m.isAtBench()
}

// lend gives the line to another sheet, once what stands in it is in the form. It is
// false, and says why, where that cannot be.
func (b *atBench) lend(m *model) bool {
	if b.hasLine(m) && !b.form.commit(m) {
		return false
	}
	m.lent = true
	m.line.Set("")
	return true
}

func (b *atBench) esc(m *model) {
	if m.sheet == b.base {
		m.sheet = &menu{}
		return
	}
	m.home()
}

// keep writes the run to the record; false, and said, where that does not work.
func (b *atBench) keep(m *model) bool {
	err := b.table.Keep()
	if m.unkept = err; err != nil {
		m.say(record.Sentence(err))
	}
	return err == nil
}

// number is that of the run in hand, as it is typed.
func (b *atBench) number() string { return strconv.Itoa(b.table.Number()) }

// close keeps what was typed, a half-typed value too. What can be kept nowhere is handed
// on to the lines of text, if these are to follow.
func (b *atBench) close(m *model) {
	switch {
	case b.hasLine(m):
		if !b.form.commit(m) && b.form.asking == nil {
			b.stash(m.line.Text())
		}
		b.form.settle()
	case m.isAtBench() && m.isMeasuring() && bench.Assigns(m.line.Text()):
		if _, answer := b.assign(m, m.line.Text()); answer.Then != nil {
			b.form.asking = answer.Then
			b.form.settle()
		} else if answer.Stay {
			b.stash(m.line.Text())
		}
	}
	b.keep(m)
	if b.table.Run() == "" {
		m.bye.Form = b.table.Form
	}
}

// goodbye says where the run is.
func (b *atBench) goodbye(m *model) string {
	switch {
	case b.table.Form == nil || b.table.Form.Empty():
		return saidNothingMeasured
	case b.table.Run() == "":
		return saidRunNotKept
	case m.tutor.Kept() == "":
		return saidGoodbyeNotKept
	}
	return saidRunKept(b.table.Number())
}

// outcomeOf is the result of a form, or why there is none, for as long as the same
// stands in it.
type outcomeOf struct {
	text   string
	result *bench.Result
	why    []string
}

func (b *atBench) result() (*bench.Result, []string) {
	text := b.table.Form.Heading() + "\n" + b.table.Form.Text()
	if b.outcome.text != text {
		r, why := b.table.Form.Result()
		b.outcome = outcomeOf{text, r, why}
	}
	return b.outcome.result, b.outcome.why
}
