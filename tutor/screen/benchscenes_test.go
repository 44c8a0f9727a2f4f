// Inside the package: it draws the state itself, without a terminal.

package screen

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/bench"
	atbench "example.org/standstill/tutor/screen/bench"
)

// stand opens the bench at a size with a problem of the bank, "" to choose one.
func stand(t testing.TB, tu *tutor.Tutor, problem string, cols, rows int) *desk {
	t.Helper()
	return standAs(t, tu, problem, Options{}, cols, rows)
}

func standAs(t testing.TB, tu *tutor.Tutor, problem string, o Options, cols, rows int) *desk {
	t.Helper()
	b := atbench.New(tu, Bench{})
	if problem != "" {
		p, err := tu.Bank.Get(problem)
		if err != nil {
			t.Fatal(err)
		}
		b = atbench.New(tu, Bench{Problem: p})
	}
	b.Table.Zone = time.UTC
	r := lipgloss.NewRenderer(&bytes.Buffer{})
	r.SetColorProfile(termenv.Ascii)
	d := &desk{t: t, model: newModelAt(b, tu, o, r)}
	d.send(tea.WindowSizeMsg{Width: cols, Height: rows})
	return d
}

// heard goes past the cautions.
func (d *desk) heard() {
	d.t.Helper()
	for pages := 0; d.screen().Rope.Reached == 0; pages++ {
		if pages > 9 {
			d.t.Fatalf("the cautions do not end:\n%s", d.view)
		}
		d.press("enter")
	}
}

// seated goes past the cautions with names.
func (d *desk) seated(names string) {
	d.heard()
	d.write(names)
	d.press("enter")
}

// lanternValues and lanternReadings are the values and readings of a lantern that most tests use; in
// between, the table goes past the prediction by hand.
var (
	lanternValues   = []string{"0.350 kg ± 1 %", "30; 29.5; 30.5 deg div 1 deg", "45 deg ± 0.5 deg", "9.81 m/s^2", "50 g div 1 g", "", "", ""}
	lanternReadings = []string{"2.9 N div 0.1 N", "3.6 N zero 0.1 N div 0.1 N", ""}
)

// predictedAlready goes past the prediction by hand.
func (d *desk) predictedAlready() {
	d.t.Helper()
	d.sees("By hand", "Go on")
	for range d.bench.Table.Students {
		d.press("down")
	}
	d.press("enter")
}

// ranWhole fills in everything and sees the result.
func (d *desk) ranWhole() {
	d.t.Helper()
	d.seated("Ana, Ben")
	d.hand(lanternValues...)
	d.predictedAlready()
	d.hand(lanternReadings...)
	d.sees("predicted", "agree within")
}

// benchScenes are the screens of the bench that are kept as files.
func benchScenes() []struct {
	name, problem string
	lead          func(d *desk)
} {
	type scene = struct {
		name, problem string
		lead          func(d *desk)
	}
	const lantern = "canal-lantern"
	return []scene{
		{"apparatus", "", func(d *desk) { d.write("canal") }},
		{"cautions", lantern, func(*desk) {}},
		{"names", lantern, func(d *desk) { d.heard(); d.write("Ana, Ben") }},
		{"half", lantern, func(d *desk) {
			d.seated("Ana, Ben")
			d.hand(lanternValues[0], "30; 29.5; 3O.5 deg")
			d.press("down")
		}},
		{"unsure", lantern, func(d *desk) { d.seated("Ana, Ben"); d.hand(lanternValues[0], "30; 29.5; 30.5 deg") }},
		{"filled", lantern, func(d *desk) {
			d.seated("Ana, Ben")
			d.hand(lanternValues...)
			d.predictedAlready()
			d.hand(lanternReadings[0], lanternReadings[1])
		}},
		{"level", lantern, func(d *desk) {
			d.seated("Ana")
			d.hand("1.2 kg div 1 g", "4 deg div 1 deg", "4 deg div 1 deg", "T1 = 20 N max")
		}},
		{"byhand", lantern, func(d *desk) { d.seated("Ana, Ben"); d.hand(lanternValues...) }},
		{"result", lantern, (*desk).ranWhole},
		{"budget", lantern, func(d *desk) { d.ranWhole(); d.press("tab") }},
		{"plot", lantern, func(d *desk) { d.ranWhole(); d.press("tab", "tab") }},
		{"runs", lantern, func(d *desk) { d.ranWhole(); d.write("again"); d.press("enter", "ctrl+l") }},
		{"notation", lantern, func(d *desk) { d.seated("Ana"); d.press("ctrl+g") }},
		{"menu", lantern, func(d *desk) { d.seated("Ana"); d.press("esc", "down") }},
	}
}

func TestBenchScreensAreAsTheyWere(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	for _, size := range sizes() {
		for _, s := range benchScenes() {
			name := fmt.Sprintf("bench-%s-%dx%d", s.name, size[0], size[1])
			t.Run(name, func(t *testing.T) {
				d := stand(t, newTutor(t), s.problem, size[0], size[1])
				s.lead(d)
				fitsIn(t, d)
				d.golden(name)
			})
		}
	}
}

func TestBenchInSevenBits(t *testing.T) {
	for _, s := range benchScenes() {
		d := standAs(t, newTutor(t), s.problem, Options{ASCII: true}, 80, 24)
		s.lead(d)
		fitsIn(t, d)
		if s.name == "half" && !strings.Contains(d.view, "0.350 kg +- 1 %") {
			t.Fatalf("a sign is lost:\n%s", d.view)
		}
		if at := strings.IndexFunc(d.view, func(r rune) bool { return r > '~' }); at >= 0 {
			t.Fatalf("%s shows %q:\n%s", s.name, d.view[at:at+4], d.view)
		}
	}
}

// TestBenchTypingAlwaysTypes types a letter over every screen of the bench: it stands in the
// line.
func TestBenchTypingAlwaysTypes(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	for _, s := range benchScenes() {
		d := stand(t, newTutor(t), s.problem, 80, 24)
		s.lead(d)
		before := d.line.Text()
		d.write("q")
		if len(d.line.Text()) != len(before)+1 {
			t.Errorf("%s: %q became %q", s.name, before, d.line.Text())
		}
	}
}

// TestBenchFitsAnySize fills screens of every size, and loses nothing on the way.
func TestBenchFitsAnySize(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	for _, s := range benchScenes() {
		d := stand(t, newTutor(t), s.problem, 80, 24)
		s.lead(d)
		text := d.line.Text()
		for _, cols := range []int{60, 61, 75, 76, 79, 80, 109, 110, 200, 400} {
			for _, rows := range []int{16, 19, 20, 24, 60, 200} {
				d.send(tea.WindowSizeMsg{Width: cols, Height: rows})
				fitsIn(t, d)
			}
		}
		if d.line.Text() != text {
			t.Errorf("%s: %q became %q", s.name, text, d.line.Text())
		}
	}
}

// TestEveryProblemIsAnApparatus opens each problem of the bank on the bench, goes through
// its fields and looks at the result.
func TestEveryProblemIsAnApparatus(t *testing.T) {
	tu := newTutor(t)
	all := tu.Bank.List()
	if len(all) == 0 {
		t.Fatal("the bank is empty")
	}
	for _, h := range all {
		d := stand(t, tu, h.ID, 80, 24)
		d.press("enter", "enter")
		for range d.bench.Table.Form.Fields {
			fitsIn(t, d)
			d.press("enter")
		}
		fitsIn(t, d)
		if _, why := d.bench.Table.Form.Result(); why == nil {
			d.sees("▸ Result ◂", "predicted")
		}
	}
}

func runsOf(t *testing.T, d *desk) []bench.Run {
	t.Helper()
	runs, err := bench.Runs(d.tutor.Record, "")
	if err != nil {
		t.Fatal(err)
	}
	return runs
}
