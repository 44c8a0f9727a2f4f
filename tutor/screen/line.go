package screen

import (
	"slices"
	"strings"
	"unicode"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"
	"golang.org/x/text/unicode/norm"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
)

// line is where the student types. The library edits; what is shown is drawn
// here, because the library's cursor is seen by its colour alone.
type line struct {
	input textinput.Model
	past  []string // lines handed in before, oldest first
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

func newLine() line {
	in := textinput.New()
	in.CharLimit = longestLine
	in.KeyMap = editing()
	in.Focus()
	return line{input: in}
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

// begin takes up a lesson: what was half typed in it, and its earlier lines.
func (l *line) begin(lesson *tutor.Lesson) {
	l.past = nil
	for _, old := range lesson.Lines() {
		if old.Kind == tutor.Typed {
			l.remember(old.Text)
		}
	}
	l.set(lesson.Draft())
}

// remember adds an earlier line.
func (l *line) remember(text string) {
	text = strings.ReplaceAll(text, "\n", "; ")
	l.past = slices.DeleteFunc(l.past, func(s string) bool { return s == text })
	l.past = append(l.past, text)
	l.at = len(l.past)
}

func (l *line) text() string { return l.input.Value() }

// draft is what is to be kept on leaving: not a line that was only looked at.
func (l *line) draft() string {
	if l.at < len(l.past) && l.text() == l.past[l.at] {
		return l.fresh
	}
	return l.text()
}

func (l *line) isEmpty() bool { return strings.TrimSpace(l.text()) == "" }

// set puts a text into the line, the cursor behind it.
func (l *line) set(text string) {
	l.refused = false
	l.input.SetValue(strings.ReplaceAll(text, "\n", "; "))
	l.input.CursorEnd()
	l.at = len(l.past)
}

// edit takes a key. It reports whether the text has changed.
func (l *line) edit(k tea.KeyMsg) (changed bool) {
	before := l.text()
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
	return l.text() != before
}

// joinLines makes one line of a text with several, and drops what acts on a
// terminal before the library takes such sequences apart.
func joinLines(text string) string {
	if frame.IsPlain(text) {
		return text
	}
	parts := strings.FieldsFunc(text, func(r rune) bool { return r == '\n' || r == '\r' })
	for i := range parts {
		parts[i] = expr.Clean(parts[i])
	}
	return strings.Join(parts, "; ")
}

// earlier brings back an earlier line, step −1, or a later one, +1.
func (l *line) earlier(step int) {
	to := l.at + step
	if to < 0 || to > len(l.past) {
		return
	}
	if l.at == len(l.past) {
		l.fresh = l.text()
	}
	text := l.fresh
	if to < len(l.past) {
		text = l.past[to]
	}
	l.set(text)
	l.at = to
}

// point marks the text as refused, and notes where it went wrong: where it could not be
// read, else behind the term that the message is about, else behind the line of
// the text that was refused.
func (l *line) point(r checker.Report) {
	text := []rune(l.text())
	from, to := r.From, min(r.To, len(text))
	if r.Verdict == checker.Unread && r.End > 0 && r.Pos <= len(text) {
		to = r.Pos
	} else if at := findName(text[from:to], r.About); at >= 0 && r.Verdict == checker.Wrong {
		to = endOfTerm(text[:to], from+at)
	}
	l.fault, l.refused = to, true
}

// findName finds a force's letter that stands alone in a text, −1 for none: in
// "T1x = T1 sin α" the second.
func findName(text []rune, name string) int {
	wanted := []rune(name)
	for i := 0; len(wanted) > 0 && i+len(wanted) <= len(text); i++ {
		end := i + len(wanted)
		if string(text[i:end]) == name && (end == len(text) || !unicode.IsLetter(text[end]) && !unicode.IsDigit(text[end])) {
			return i
		}
	}
	return -1
}

// endOfTerm finds where the term ends that begins at a place.
func endOfTerm(text []rune, at int) int {
	for i := at; i < len(text); i++ {
		if strings.ContainsRune("+-−–=≈;", text[i]) {
			for i > at && text[i-1] == ' ' {
				i--
			}
			return i
		}
	}
	return len(text)
}

// show draws the text with its cursor in a width, around the cursor where the
// text is longer.
func (l *line) show(k *frame.Look, width int, paint func(string) frame.Row) frame.Row {
	runes := []rune(l.text())
	at := min(l.input.Position(), len(runes))
	from := 0
	for frame.TextWidth(k.Letters(string(runes[from:at]))) > width-2 {
		from++
	}
	r := paint(string(runes[from:at]))
	r = append(r, k.Text(frame.Bold, k.Signs.Cursor))
	r = append(r, paint(string(runes[at:]))...)
	return r.Cut(width)
}
