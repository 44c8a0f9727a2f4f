package screen

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/screen/frame"
)

// form is the sheet of what is measured: the field in hand is typed in the line.
type form struct {
	scroller
	at     int
	asking *bench.Question // about the field in hand, before anything else
	before map[int]string  // the last good value that was typed over, by field
}

// newForm is the sheet of an empty or a reopened form.
func newForm() *form { return &form{before: map[int]string{}} }

func (f *form) place(m *model) int {
	return m.bench.table.Asks(f.field(m).Kind)
}

func (f *form) field(m *model) *bench.Field { return &m.bench.table.Form.Fields[f.at] }

// first goes to the first field of these kinds, unless one of them is in hand.
func (f *form) first(m *model, kinds []bench.Kind) {
	if !slices.Contains(kinds, f.field(m).Kind) {
		f.to(m, slices.IndexFunc(m.bench.table.Form.Fields, func(e bench.Field) bool { return slices.Contains(kinds, e.Kind) }))
	}
}

// load puts what stands in the field in hand into the line.
func (f *form) load(m *model) {
	f.asking = nil
	m.line.Set(f.field(m).Typed)
}

// meant is the line without the value that stood in it, where something new was typed
// behind that without emptying it first: a word, a line that names its field, or a value
// that can be read where both together cannot.
func (f *form) meant(m *model, text string) string {
	text = m.bench.anew(m, text, m.bench.refused)
	typed := f.field(m).Typed
	rest := behind(text, typed)
	if rest == "" || f.asking != nil {
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

// commit puts the line into its field, good or bad, or answers what is asked about it.
// It is false where the line has to stay: it names a letter and cannot be taken there, or
// something is asked.
func (f *form) commit(m *model) bool {
	b, text := m.bench, f.meant(m, m.line.Text())
	switch {
	case f.asking != nil:
		return f.answered(m, f.asking.Accept(m.line.Text()))
	case bench.Assigns(text):
		field, answer := b.assign(m, text)
		if answer.Stay && answer.Then == nil {
			m.say(strings.Join(answer.Said, " ") + " " + saidMendLine)
			return false
		}
		f.at = field
		return f.answered(m, answer)
	case strings.TrimSpace(text) == f.field(m).Typed:
		return true
	}
	f.note(m, f.at)
	answer := b.table.Put(f.at, text)
	b.changed(m)
	if answer.Stay && answer.Then == nil {
		return true // what is the matter is shown at the field
	}
	return f.answered(m, answer)
}

// answered takes what comes of a line: a question that follows, or the next field.
func (f *form) answered(m *model, answer bench.Answer) bool {
	m.bench.changed(m)
	if len(answer.Said) > 1 || answer.Stay && answer.Then == nil {
		m.say(strings.Join(answer.Said, " "))
	}
	if answer.Stay && answer.Then == nil {
		return false
	}
	if f.asking = answer.Then; f.asking != nil {
		m.line.Set(f.asking.Typed)
		return false
	}
	return true
}

// settle answers what is still asked as an empty line does: the value is kept.
func (f *form) settle() {
	for f.asking != nil {
		f.asking = f.asking.Accept("").Then
	}
}

// assign puts in a line such as alpha = 35 deg. A value that cannot be taken changes
// nothing.
func (b *atBench) assign(m *model, text string) (field int, answer bench.Answer) {
	field, _, why := b.table.Form.Aim(text)
	if why == "" {
		b.form.note(m, field)
	}
	answer = b.table.Assign(text)
	if b.refused = ""; answer.Stay && answer.Then == nil {
		b.refused = strings.TrimSpace(m.line.Text())
	}
	b.changed(m)
	return field, answer
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
	return m.isMeasuring() && m.sheet == sheet(f) && f.asking == nil && f.before[f.at] != "" && f.before[f.at] != m.line.Text()
}

// restore brings the value into the line that stood in the field before.
func (m *model) restore() { m.line.Set(m.bench.form.before[m.bench.form.at]) }

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
// and nothing is asked about it.
func (f *form) enter(m *model, text string) {
	was := f.at
	if f.asking == nil && bench.Assigns(f.meant(m, text)) {
		was = -1
	}
	if !f.commit(m) {
		return
	}
	if f.field(m).Why != "" {
		f.load(m)
		return
	}
	if was < 0 {
		f.to(m, f.at)
	}
	f.next(m)
}

// next goes to the next field, and from the last field of a step to the step after it.
func (f *form) next(m *model) {
	fields := m.bench.table.Form.Fields
	step := f.place(m)
	if f.at+1 < len(fields) && slices.Contains(m.bench.table.Steps[step].Kinds, fields[f.at+1].Kind) {
		f.to(m, f.at+1)
		return
	}
	f.load(m)
	m.bench.goOn(m, step+1)
}

func (f *form) typed(*model) {}

func (f *form) keys(m *model) []frame.Binding {
	keys := []frame.Binding{m.on.UpDown, m.on.NextField}
	if f.at+1 == len(m.bench.table.Form.Fields) {
		keys[1] = m.on.ToResult
	}
	if f.asking != nil || f.field(m).Why != "" || m.line.Text() != f.field(m).Typed {
		keys = []frame.Binding{m.on.TakeIt, m.on.UpDown}
	}
	if !m.line.IsEmpty() {
		keys = append(keys, m.on.Empty)
	}
	for _, a := range m.actions {
		if a.key.Enabled() && a.can(m) && a.menu != menuLeave {
			keys = append(keys, a.key)
		}
	}
	return append(keys, m.on.Menu, m.on.Leave)
}
