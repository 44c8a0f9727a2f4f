// Inside the package: it presses keys on the state itself, without a terminal.

package screen

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// desk is one instance under test, without a terminal.
type desk struct {
	t testing.TB
	*model
	view string
}

// sit opens the screens at a size, on a record in memory.
func sit(t testing.TB, cols, rows int) *desk {
	t.Helper()
	return sitAt(t, newTutor(t), Options{}, termenv.Ascii, cols, rows)
}

func newTutor(t testing.TB) *tutor.Tutor {
	t.Helper()
	now := time.Date(2026, 3, 2, 10, 0, 0, 0, time.UTC)
	r, err := record.OpenMemory(record.Options{Now: func() time.Time { now = now.Add(time.Second); return now }})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close() })
	return tutor.New(tutor.Options{Bank: problems.Embedded(), Record: r})
}

func sitAt(t testing.TB, tu *tutor.Tutor, o Options, p termenv.Profile, cols, rows int) *desk {
	t.Helper()
	r := lipgloss.NewRenderer(&bytes.Buffer{})
	r.SetColorProfile(p)
	d := &desk{t: t, model: newModel(tu, o, r)}
	d.send(tea.WindowSizeMsg{Width: cols, Height: rows})
	return d
}

func (d *desk) send(msg tea.Msg) {
	next, _ := guarded{d.model}.Update(msg)
	if d.fault != nil {
		d.t.Fatal(d.fault)
	}
	d.view = next.View()
}

// keyNames are the keys that the tests press by name.
var keyNames = map[string]tea.KeyType{
	"f1": tea.KeyF1, "enter": tea.KeyEnter, "esc": tea.KeyEsc, "tab": tea.KeyTab, "shift+tab": tea.KeyShiftTab,
	"up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight,
	"pgup": tea.KeyPgUp, "pgdn": tea.KeyPgDown, "home": tea.KeyHome, "end": tea.KeyEnd, "backspace": tea.KeyBackspace,
	"ctrl+c": tea.KeyCtrlC, "ctrl+g": tea.KeyCtrlG, "ctrl+r": tea.KeyCtrlR, "ctrl+y": tea.KeyCtrlY,
	"ctrl+o": tea.KeyCtrlO, "ctrl+l": tea.KeyCtrlL, "ctrl+u": tea.KeyCtrlU,
}

// press presses keys by their names.
func (d *desk) press(names ...string) {
	d.t.Helper()
	for _, name := range names {
		key, ok := keyNames[name]
		if !ok {
			d.t.Fatalf("no key %q", name)
		}
		d.send(tea.KeyMsg{Type: key})
	}
}

// write types a text, letters together as a fast typist's arrive.
func (d *desk) write(text string) {
	for i, word := range strings.Split(text, " ") {
		if i > 0 {
			d.send(tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}})
		}
		if word != "" {
			d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(word)})
		}
	}
}

// hand hands lines in, each in place of what stands in the line.
func (d *desk) hand(lines ...string) {
	for _, line := range lines {
		d.press("ctrl+u")
		d.write(line)
		d.press("enter")
	}
}

// enrol gives a name and opens a problem.
func (d *desk) enrol(name, problem string) {
	d.t.Helper()
	d.hand(name)
	d.open(problem, false)
	if d.lesson == nil || d.lesson.Problem.ID != problem {
		d.t.Fatalf("the problem in hand is not %s", problem)
	}
	d.send(tea.WindowSizeMsg{Width: d.cols, Height: d.rows})
}

// sees wants texts to be on the screen, line breaks and edges apart.
func (d *desk) sees(texts ...string) {
	d.t.Helper()
	flat := strings.Join(strings.Fields(d.view), " ")
	for _, text := range texts {
		if !strings.Contains(flat, text) {
			d.t.Fatalf("%q is not on the screen:\n%s", text, d.view)
		}
	}
}

// golden compares the screen with a file.
func (d *desk) golden(name string) {
	d.t.Helper()
	path := filepath.Join("testdata", name+".txt")
	got := trimRight(d.view) + "\n"
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			d.t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			d.t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		d.t.Fatal(err)
	}
	if got != strings.ReplaceAll(string(want), "\r\n", "\n") {
		d.t.Errorf("%s is not as it was; got\n%s\nwant\n%s", name, got, want)
	}
}

func trimRight(view string) string {
	lines := strings.Split(view, "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return strings.Join(lines, "\n")
}
