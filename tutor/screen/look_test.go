// Inside the package: it draws the state itself, without a terminal.

package screen

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
)

const escape = "\x1b"

// unpainted takes the paint off a screen.
func unpainted(view string) string {
	var b strings.Builder
	for {
		at := strings.Index(view, escape+"[")
		if at < 0 {
			return b.String() + view
		}
		b.WriteString(view[:at])
		view = view[at:]
		view = view[strings.IndexByte(view, 'm')+1:]
	}
}

func TestWithoutColourOnlyColourIsLost(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	for _, s := range scenes() {
		for _, p := range []termenv.Profile{termenv.TrueColor, termenv.ANSI256, termenv.ANSI} {
			bare, painted := sit(t, 80, 24), sitAt(t, newTutor(t), Options{}, p, 80, 24)
			s.lead(bare)
			s.lead(painted)
			if strings.Contains(bare.view, escape) {
				t.Fatalf("%s sends paint to a terminal without colours", s.name)
			}
			if !strings.Contains(painted.view, escape) {
				t.Fatalf("%s sends no paint to a terminal with colours", s.name)
			}
			if unpainted(painted.view) != bare.view {
				t.Fatalf("%s says something else in colour:\n%s", s.name, painted.view)
			}
		}
	}
}

// TestInstancesDoNotDisturbEachOther works in three instances by turns: each
// screen is as it is when its instance is alone.
func TestInstancesDoNotDisturbEachOther(t *testing.T) {
	kinds := []struct {
		options Options
		profile termenv.Profile
	}{
		{Options{}, termenv.TrueColor}, {Options{Light: true}, termenv.ANSI256}, {Options{ASCII: true}, termenv.Ascii},
	}
	steps := append([]string{"Nele", "lantern"}, lantern...)
	alone := make([][]string, len(kinds))
	for i, k := range kinds {
		d := sitAt(t, newTutor(t), k.options, k.profile, 80, 24)
		for _, s := range steps {
			d.hand(s)
			alone[i] = append(alone[i], d.view)
		}
	}
	var all []*desk
	for _, k := range kinds {
		all = append(all, sitAt(t, newTutor(t), k.options, k.profile, 80, 24))
	}
	for n, s := range steps {
		for i, d := range all {
			d.hand(s)
			if d.view != alone[i][n] {
				t.Fatalf("instance %d after %q:\n%s\nalone\n%s", i, s, d.view, alone[i][n])
			}
		}
	}
}

func TestBackgroundIsRemembered(t *testing.T) {
	tu := newTutor(t)
	light := sitAt(t, tu, Options{Light: true}, termenv.TrueColor, 80, 24)
	again := sitAt(t, tu, Options{}, termenv.TrueColor, 80, 24)
	if again.view != light.view {
		t.Fatal("the choice was forgotten")
	}
	dark := sitAt(t, tu, Options{Dark: true}, termenv.TrueColor, 80, 24)
	if dark.view == light.view || sitAt(t, tu, Options{}, termenv.TrueColor, 80, 24).view != dark.view {
		t.Fatal("the other choice was not taken")
	}
}

// hostile is a name that acts on a terminal, were it let through.
const hostile = "Eve\x1b]0;owned\x07\x1b[2J\u202e\u2066tpo\u200f\u0085\u009b31m\x00\r\n\ttail"

func TestHostileTextNeverReachesTheTerminal(t *testing.T) {
	tu := newTutor(t)
	if err := tu.Record.AddStudent("eve", hostile); err != nil {
		t.Fatal(err)
	}
	if err := tu.Record.SetLastStudent("eve"); err != nil {
		t.Fatal(err)
	}
	d := sitAt(t, tu, Options{}, termenv.Ascii, 80, 24)
	harmless(t, d)
	d.sees("Eve")
	d.hand("student")
	harmless(t, d)
	d.press("esc")
	d.open("canal-lantern", false)
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Paste: true, Runes: []rune(hostile)})
	harmless(t, d)
	d.press("enter")
	harmless(t, d)
	d.press("ctrl+o")
	harmless(t, d)
	p := *d.lesson.Problem // a copy: the bank is shared with the other tests
	p.Title, p.Text = hostile, hostile
	d.lesson.Problem = &p
	d.refresh()
	d.press("esc")
	harmless(t, d)
}

func TestHostileNoticeNeverReachesTheTerminal(t *testing.T) {
	d := sitAt(t, newTutor(t), Options{Notice: "The record " + hostile + " cannot be opened."}, termenv.Ascii, 80, 24)
	harmless(t, d)
	d.sees("The record Eve", "go on without saving")
	d.press("enter")
	d.sees("Who is practising?")
}

func harmless(t *testing.T, d *desk) {
	t.Helper()
	for _, r := range strings.ReplaceAll(d.view, "\n", "") {
		if r < ' ' || r >= 0x7f && r < 0xa0 || strings.ContainsRune("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\u200e\u200f\u061c\u2028\u2029\u200b\ufeff", r) {
			t.Fatalf("%q is on the screen:\n%q", r, d.view)
		}
	}
	if strings.Contains(d.view, "owned") {
		t.Fatalf("a part of a sequence is on the screen:\n%s", d.view)
	}
}

func TestEmptyBankIsSaid(t *testing.T) {
	tu := newTutor(t)
	bank, _ := problems.OpenFolder(t.TempDir())
	tu = tutor.New(tutor.Options{Bank: bank, Record: tu.Record})
	d := sitAt(t, tu, Options{}, termenv.Ascii, 80, 24)
	d.hand("Nele", "")
	d.sees("There are no physics problems to choose from")
}
