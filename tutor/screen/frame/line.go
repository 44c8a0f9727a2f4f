package frame

import (
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"
	"golang.org/x/text/unicode/norm"

	"example.org/standstill/checker/expr"
)

// Line is where the student types. The library edits; what is shown is drawn
// here, because the library's cursor is seen by its colour alone.
type Line struct {
	input textinput.Model
	past  []string // lines checked before, oldest first
	at    int      // which of them is shown; len(past) for none
	fresh string   // what was typed before going back to them
	fault int      // where the line that was refused last went wrong
	// refused says that the text is the one that was refused, untouched so far: what is
	// typed takes its place, the arrow keys go into it.
	refused bool
}

// longestLine is how many characters the line takes; the checker reads fewer and
// says so.
const longestLine = 1000

// NewLine is an empty line.
func NewLine() Line {
	in := textinput.New()
	in.CharLimit = longestLine
	in.KeyMap = editing()
	in.Focus()
	return Line{input: in}
}

// editing are the keys that change the line. Those that a terminal or a
// multiplexer takes for itself are left out, and those that do something else
// here.
func editing() textinput.KeyMap {
	none := key.NewBinding(key.WithDisabled())
	on := func(keys ...string) key.Binding { return key.NewBinding(key.WithKeys(keys...)) }
	return textinput.KeyMap{
		CharacterForward: on("right"), CharacterBackward: on("left"),
		WordForward: on("alt+right", "ctrl+right"), WordBackward: on("alt+left", "ctrl+left"),
		DeleteCharacterBackward: on("backspace", "ctrl+h"), DeleteCharacterForward: on("delete", "ctrl+d"),
		DeleteWordBackward: on("alt+backspace", "ctrl+w"), DeleteBeforeCursor: none,
		DeleteAfterCursor: on("ctrl+k"), DeleteWordForward: none,
		LineStart: on("home", "ctrl+a"), LineEnd: on("end", "ctrl+e"),
		Paste: none, AcceptSuggestion: none, NextSuggestion: none, PrevSuggestion: none,
	}
}

// Begin takes up what was half typed, and the lines that were checked before, oldest
// first.
func (l *Line) Begin(past []string, draft string) {
	l.Forget()
	for _, text := range past {
		l.Remember(text)
	}
	l.Set(draft)
	// A line that was refused last time gives way to the next one, as it did then.
	l.refused = len(l.past) > 0 && l.Text() == l.past[len(l.past)-1]
	l.fault = len([]rune(l.Text()))
}

// Forget drops the earlier lines.
func (l *Line) Forget() { l.past, l.at = nil, 0 }

// Remember adds an earlier line.
func (l *Line) Remember(text string) {
	text = strings.ReplaceAll(text, "\n", "; ")
	// Once is enough: otherwise the way back leads through the same line again and again.
	l.past = slices.DeleteFunc(l.past, func(s string) bool { return s == text })
	l.past = append(l.past, text)
	l.at = len(l.past)
}

// Text is what stands in the line.
func (l *Line) Text() string { return l.input.Value() }

// Draft is what is to be saved on quitting: not a line that was only looked at.
func (l *Line) Draft() string {
	if l.at < len(l.past) && l.Text() == l.past[l.at] {
		return l.fresh
	}
	return l.Text()
}

// IsEmpty reports whether nothing but spaces stands in the line.
func (l *Line) IsEmpty() bool { return strings.TrimSpace(l.Text()) == "" }

// Set puts a text into the line, the cursor behind it.
func (l *Line) Set(text string) {
	l.refused = false
	l.input.SetValue(strings.ReplaceAll(text, "\n", "; "))
	l.input.CursorEnd()
	l.at = len(l.past)
}

// Edit takes a key. It reports whether the text has changed.
func (l *Line) Edit(k tea.KeyMsg) (changed bool) {
	before := l.Text()
	if l.refused {
		l.refused = false
		switch {
		case len(k.Runes) > 0 && k.Runes[0] == ' ': // goes on: with a unit that was missing
		case len(k.Runes) > 0:
			l.input.SetValue("")
		case k.Type == tea.KeyLeft:
			l.input.SetCursor(l.fault)
			return false
		}
	}
	if len(k.Runes) > 0 {
		// The library goes by the names of keys: without the mark of a paste,
		// letters that arrive together and spell "right" would move the cursor.
		k = tea.KeyMsg{Type: tea.KeyRunes, Paste: true, Runes: []rune(joinLines(norm.NFC.String(string(k.Runes))))}
	}
	l.input, _ = l.input.Update(k)
	return l.Text() != before
}

// joinLines makes one line of a text with several, and drops what acts on a
// terminal before the library takes such sequences apart.
func joinLines(text string) string {
	if IsPlain(text) {
		return text
	}
	parts := strings.FieldsFunc(text, func(r rune) bool { return r == '\n' || r == '\r' })
	for i := range parts {
		parts[i] = expr.Clean(parts[i])
	}
	return strings.Join(parts, "; ")
}

// Earlier brings back an earlier line, step −1, or a later one, +1.
func (l *Line) Earlier(step int) {
	to := l.at + step
	if to < 0 || to > len(l.past) {
		return
	}
	if l.at == len(l.past) { // the way forward must end at what was being typed
		l.fresh = l.Text()
	}
	text := l.fresh
	if to < len(l.past) {
		text = l.past[to]
	}
	l.Set(text)
	l.at = to
}

// Refuse marks the text as refused, and notes how far it was right.
func (l *Line) Refuse(at int) { l.fault, l.refused = at, true }

// PutBack puts a refused text into the line again.
func (l *Line) PutBack(text string) {
	l.Set(text)
	l.refused = true
}

// IsRefused reports whether the text is the one that was refused, untouched so far.
func (l *Line) IsRefused() bool { return l.refused }

// Shown is the line as it is to be drawn.
func (l *Line) Shown() ShownLine {
	return ShownLine{Text: l.Text(), At: l.input.Position(), Refused: l.refused}
}

// ShownLine is a line with where its cursor stands.
type ShownLine struct {
	Text    string
	At      int
	Refused bool
}

// IsEmpty reports whether nothing but spaces stands in the line.
func (l ShownLine) IsEmpty() bool { return strings.TrimSpace(l.Text) == "" }

// Show draws the text with its cursor in a width, around the cursor where the
// Text is longer.
func (l ShownLine) Show(k *Look, width int, paint func(string) Row) Row {
	runes := []rune(l.Text)
	at := min(l.At, len(runes))
	from := 0 // moves with the cursor, which must never leave the screen
	for TextWidth(k.Letters(string(runes[from:at]))) > width-2 {
		from++
	}
	r := paint(string(runes[from:at]))
	r = append(r, k.Text(Bold, k.Signs.Cursor))
	r = append(r, paint(string(runes[at:]))...)
	return r.Cut(width)
}
