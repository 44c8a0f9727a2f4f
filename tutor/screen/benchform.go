package screen

import (
	"math"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor/bench"
)

// form is the sheet of what is measured: the field in hand is typed in the line.
type form struct {
	scroller
	at     int
	asking bool            // how sure the value of the field in hand is
	unsure map[string]bool // values for which that was asked before
	before map[int]string  // the last good value that was typed over, by field
}

// newForm is the sheet of an empty or a reopened form.
func newForm() *form { return &form{unsure: map[string]bool{}, before: map[int]string{}} }

func (f *form) step(m *model) benchStep {
	if f.field(m).Kind == bench.Reading {
		return stepReadings
	}
	return stepValues
}

func (f *form) field(m *model) *bench.Field { return &m.bench.table.Form.Fields[f.at] }

// load puts what stands in the field in hand into the line.
func (f *form) load(m *model) {
	f.asking = false
	m.line.set(f.field(m).Typed)
}

// meant is the line without the value that stood in it, where something new was typed
// behind that without emptying it first: a word, a line that names its field, or a value
// that can be read where both together cannot.
func (f *form) meant(m *model, text string) string {
	text = m.bench.anew(m, text, m.bench.refused)
	typed := f.field(m).Typed
	rest := behind(text, typed)
	if rest == "" || f.asking {
		return text
	}
	if other := m.bench.anew(m, text, typed); other != text {
		return other
	}
	_, whole := m.bench.table.Form.Echo(f.at, text)
	_, alone := m.bench.table.Form.Echo(f.at, rest)
	if whole != "" && alone == "" {
		return rest
	}
	return text
}

// behind is what was typed behind a text that stands in front, "" for nothing.
func behind(text, front string) string {
	rest, found := strings.CutPrefix(strings.TrimSpace(text), front)
	if !found || front == "" {
		return ""
	}
	return strings.TrimSpace(rest)
}

// anew is the word, or the line that names its field, that was typed behind a text which
// stood in the line; the whole line where there is none.
func (b *atBench) anew(m *model, text, front string) string {
	rest := behind(text, front)
	if _, _, isWord := b.wordIn(m, rest); rest != "" && (isWord || strings.Contains(rest, "=")) {
		return rest
	}
	return text
}

// typedText is what the line comes to for the field in hand.
func (f *form) typedText(m *model) string {
	if !f.asking {
		return f.meant(m, m.line.text())
	}
	if m.line.isEmpty() {
		return f.field(m).Typed
	}
	return m.bench.table.Form.Surer(f.at, m.line.text())
}

// commit puts the line into its field, good or bad. It is false where the line names a
// letter and cannot be taken there; it then stays as it is.
func (f *form) commit(m *model) bool {
	text := f.typedText(m)
	if strings.Contains(text, "=") {
		_, ok := f.assign(m, text)
		return ok
	}
	f.asking = false
	if strings.TrimSpace(text) != f.field(m).Typed {
		f.note(m, f.at)
		m.bench.table.Form.Type(f.at, text)
		m.bench.changed(m)
	}
	return true
}

// assign obeys a line that names its field.
func (f *form) assign(m *model, text string) (field int, ok bool) {
	field, why := m.bench.assign(m, text)
	if why != "" {
		m.say(why + " " + saidMendLine)
		return f.at, false
	}
	return field, true
}

// assign puts in a line such as alpha = 35 deg. A value that cannot be taken changes
// nothing, and why says what is the matter.
func (b *atBench) assign(m *model, text string) (field int, why string) {
	field, value, why := b.table.Form.Aim(text)
	if why == "" {
		b.form.note(m, field)
		why = b.table.Form.Put(field, value)
	}
	if b.refused = ""; why != "" {
		b.refused = strings.TrimSpace(m.line.text())
		return field, why
	}
	b.changed(m)
	return field, ""
}

// note keeps the good value of a field that is about to change.
func (f *form) note(m *model, field int) {
	if e := &m.bench.table.Form.Fields[field]; e.Good() {
		f.before[field] = e.Typed
	}
}

// stash puts a value that cannot be taken into the field that the line names, where that
// is empty: it is to be mended the next time.
func (b *atBench) stash(text string) {
	field, value, why := b.table.Form.Aim(text)
	if why == "" && b.table.Form.Fields[field].Typed == "" {
		b.table.Form.Type(field, value)
	}
}

// canRestore reports whether another value stood in the field in hand.
func (m *model) canRestore() bool {
	f := m.bench.form
	return m.isMeasuring() && m.sheet == sheet(f) && !f.asking && f.before[f.at] != "" && f.before[f.at] != m.line.text()
}

// restore brings the value into the line that stood in the field before.
func (m *model) restore() { m.line.set(m.bench.form.before[m.bench.form.at]) }

func (f *form) press(m *model, k tea.KeyMsg) bool {
	step, ok := map[tea.KeyType]int{
		tea.KeyUp: -1, tea.KeyShiftTab: -1, tea.KeyDown: 1, tea.KeyTab: 1, tea.KeyPgUp: -4, tea.KeyPgDown: 4,
	}[k.Type]
	if ok && f.commit(m) {
		f.to(m, f.at+step)
	}
	return ok
}

// to goes to a field.
func (f *form) to(m *model, at int) {
	f.at = min(max(at, 0), len(m.bench.table.Form.Fields)-1)
	f.load(m)
}

// enter takes the line for the field in hand and goes on to the next, once it can be read
// and it is settled how sure it is.
func (f *form) enter(m *model, text string) {
	text = f.meant(m, text)
	switch {
	case strings.Contains(text, "=") && !f.asking:
		if at, ok := f.assign(m, text); ok {
			f.to(m, at)
			f.settle(m)
		}
	case f.asking:
		f.answer(m)
	case f.commit(m):
		f.load(m)
		f.settle(m)
	}
}

// settle goes on from a field, unless it is bad or unsure.
func (f *form) settle(m *model) {
	e := f.field(m)
	question, _ := m.bench.table.Form.Unsure(f.at)
	switch {
	case e.Why != "":
	case question != "" && !f.unsure[e.Name()+e.Typed]:
		f.unsure[e.Name()+e.Typed] = true
		f.asking = true
		m.line.set("")
	default:
		f.next(m)
	}
}

// answer takes how sure a value is. What cannot be read stays in the line, and the value
// as it was.
func (f *form) answer(m *model) {
	text := f.typedText(m)
	if _, why := m.bench.table.Form.Echo(f.at, text); why != "" {
		m.say(why)
		return
	}
	f.commit(m)
	f.next(m)
}

// veryUnsure is the share of a value above which its uncertainty is more likely a slip.
const veryUnsure = 0.2

// next goes to the next field; from the values to the readings by way of the prediction
// by hand, and from the last to the result.
func (f *form) next(m *model) {
	fields := m.bench.table.Form.Fields
	if e := f.field(m); e.Value.U() > veryUnsure*math.Abs(e.Value.Estimate) {
		m.say(saidVeryUnsure(e))
	}
	last := f.at+1 == len(fields)
	toReadings := f.field(m).Kind != bench.Reading && !last && fields[f.at+1].Kind == bench.Reading
	f.to(m, f.at+1)
	switch {
	case last:
		m.showOutcome(pageResult)
	case toReadings:
		m.bench.offer(m, (*model).home)
	}
}

func (f *form) typed(*model) {}

func (f *form) keys(m *model) []binding {
	keys := []binding{m.on.upDown, m.on.nextField}
	if f.at+1 == len(m.bench.table.Form.Fields) {
		keys[1] = m.on.toResult
	}
	if f.asking || f.field(m).Why != "" || m.line.text() != f.field(m).Typed {
		keys = []binding{m.on.takeIt, m.on.upDown}
	}
	if !m.line.isEmpty() {
		keys = append(keys, m.on.empty)
	}
	for _, a := range m.actions {
		if a.key.Enabled() && a.can(m) && a.menu != menuLeave {
			keys = append(keys, a.key)
		}
	}
	return append(keys, m.on.menu, m.on.leave)
}
