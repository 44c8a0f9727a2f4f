package bench

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// form is the sheet of what is measured: the field in hand is typed in the line.
type form struct {
	frame.Scroller
	at     int
	asking *bench.Question // about the field in hand, before anything else
	before map[int]string  // the last good value that was typed over, by field
}

// newForm is the sheet of an empty or a reopened form.
func newForm() *form { return &form{before: map[int]string{}} }

func (f *form) place(b *Bench) int {
	return b.Table.Asks(f.field(b).Kind)
}

func (f *form) field(b *Bench) *bench.Field { return &b.Table.Form.Fields[f.at] }

// first goes to the first field of these kinds, unless one of them is in hand.
func (f *form) first(b *Bench, kinds []bench.Kind) {
	if !slices.Contains(kinds, f.field(b).Kind) {
		f.to(b, slices.IndexFunc(b.Table.Form.Fields, func(e bench.Field) bool { return slices.Contains(kinds, e.Kind) }))
	}
}

// load puts what stands in the field in hand into the line.
func (f *form) load(b *Bench) {
	f.asking = nil
	b.line.Set(f.field(b).Typed)
}

// meant is the line without the value that stood in it, where something new was typed
// behind that without emptying it first: a word, a line that names its field, or a value
// that can be read where both together cannot.
func (f *form) meant(b *Bench, text string) string {
	text = b.anew(text, b.refused)
	typed := f.field(b).Typed
	rest := behind(text, typed)
	if rest == "" || f.asking != nil {
		return text
	}
	// A word such as “result”, typed behind a value without emptying the line first.
	if other := b.anew(text, typed); other != text {
		return other
	}
	_, whole := b.Table.Form.Echo(f.at, text)
	_, alone := b.Table.Form.Echo(f.at, rest)
	// Only if the whole cannot be read: “20 N” may go on with “ ± 0.2 N”.
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
func (b *Bench) anew(text, front string) string {
	rest := behind(text, front)
	if _, _, isWord := b.wordIn(rest); rest != "" && (isWord || strings.Contains(rest, "=")) {
		return rest
	}
	return text
}

// commit puts the line into its field, good or bad, or answers what is asked about it.
// It is false where the line has to stay: it names a letter and cannot be taken there, or
// something is asked.
func (f *form) commit(b *Bench) bool {
	text := f.meant(b, b.line.Text())
	switch {
	case f.asking != nil:
		return f.answered(b, f.asking.Accept(b.line.Text()))
	case bench.Assigns(text):
		field, answer := b.assign(text)
		if answer.Stay && answer.Then == nil {
			b.Say(strings.Join(answer.Said, " ") + " " + saidMendLine)
			return false
		}
		f.at = field
		return f.answered(b, answer)
	case strings.TrimSpace(text) == f.field(b).Typed:
		return true
	}
	// Before it changes, so that ctrl+y can bring it back.
	f.note(b, f.at)
	answer := b.Table.Put(f.at, text)
	b.changed()
	if answer.Stay && answer.Then == nil {
		return true // what is the matter is shown at the field
	}
	return f.answered(b, answer)
}

// answered takes what comes of a line: a question that follows, or the next field.
func (f *form) answered(b *Bench, answer bench.Answer) bool {
	b.changed()
	if len(answer.Said) > 1 || answer.Stay && answer.Then == nil {
		b.Say(strings.Join(answer.Said, " "))
	}
	if answer.Stay && answer.Then == nil {
		return false
	}
	if f.asking = answer.Then; f.asking != nil {
		b.line.Set(f.asking.Typed)
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
func (b *Bench) assign(text string) (field int, answer bench.Answer) {
	field, _, why := b.Table.Form.Aim(text)
	if why == "" {
		b.form.note(b, field)
	}
	answer = b.Table.Assign(text)
	if b.refused = ""; answer.Stay && answer.Then == nil {
		b.refused = strings.TrimSpace(b.line.Text())
	}
	b.changed()
	return field, answer
}

// note keeps the good value of a field that is about to change.
func (f *form) note(b *Bench, field int) {
	// A value that was refused is not wanted back.
	if e := &b.Table.Form.Fields[field]; e.Good() {
		f.before[field] = e.Typed
	}
}

// stash puts a value that cannot be taken into the field that the line names, where that
// is empty: it is to be mended the next time.
func stash(f *bench.Form, text string) {
	field, value, why := f.Aim(text)
	if why == "" && f.Fields[field].Typed == "" {
		f.Type(field, value)
	}
}

// canRestore reports whether another value stood in the field in hand.
func (f *form) canRestore(b *Bench) bool {
	return b.isMeasuring() && b.sheet == sheet(f) && f.asking == nil && f.before[f.at] != "" && f.before[f.at] != b.line.Text()
}

// restore brings the value into the line that stood in the field before.
func (f *form) restore(b *Bench) { b.line.Set(f.before[f.at]) }

func (f *form) press(b *Bench, k tea.KeyMsg) bool {
	step, ok := map[tea.KeyType]int{
		tea.KeyUp: -1, tea.KeyShiftTab: -1, tea.KeyDown: 1, tea.KeyTab: 1, tea.KeyPgUp: -4, tea.KeyPgDown: 4,
	}[k.Type]
	if ok && f.commit(b) {
		f.to(b, f.at+step)
	}
	return ok
}

// to goes to a field.
func (f *form) to(b *Bench, at int) {
	f.at = min(max(at, 0), len(b.Table.Form.Fields)-1)
	f.load(b)
}

// enter takes the line for the field in hand and goes on to the next, once it can be read
// and nothing is asked about it.
func (f *form) enter(b *Bench, text string) {
	was := f.at
	if f.asking == nil && bench.Assigns(f.meant(b, text)) {
		// The line names another field, and from there it goes on.
		was = -1
	}
	if !f.commit(b) {
		return
	}
	if f.field(b).Why != "" {
		f.load(b)
		return
	}
	if was < 0 {
		f.to(b, f.at)
	}
	f.next(b)
}

// next goes to the next field, and from the last field of a step to the step after it.
func (f *form) next(b *Bench) {
	fields := b.Table.Form.Fields
	step := f.place(b)
	if f.at+1 < len(fields) && slices.Contains(b.Table.Steps[step].Kinds, fields[f.at+1].Kind) {
		f.to(b, f.at+1)
		return
	}
	f.load(b)
	b.goOn(step + 1)
}

func (f *form) typed(*Bench) {}

func (f *form) keys(b *Bench) []frame.Binding {
	keys := []frame.Binding{b.on.UpDown, b.on.NextField}
	if f.at+1 == len(b.Table.Form.Fields) {
		keys[1] = b.on.ToResult
	}
	if f.asking != nil || f.field(b).Why != "" || b.line.Text() != f.field(b).Typed {
		// Something is in the line that the field does not have yet.
		keys = []frame.Binding{b.on.TakeIt, b.on.UpDown}
	}
	if !b.line.IsEmpty() {
		keys = append(keys, b.on.Empty)
	}
	for _, a := range b.actions {
		if a.Key.Enabled() && a.Can(b) && a.Menu != views.MenuQuit {
			keys = append(keys, a.Key)
		}
	}
	return append(keys, b.on.Menu, b.on.Quit)
}
