// Inside the package: it stops between a key and its work.

package screen

import (
	"context"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor/bench"
)

// A step is added in one place, a row of the script: the screen and the lines of text ask
// it alike.
func TestAStepIsARowOfTheScript(t *testing.T) {
	asked := 0
	warmth := bench.Step{Name: "Room", Title: "The room", Ask: func(table *bench.Table) (*bench.Question, bool) {
		return &bench.Question{Text: "How warm is the room?", Sample: "20", Take: func(line string) bench.Answer {
			asked++
			table.Form.Notes = append(table.Form.Notes, "room "+line)
			return bench.Answer{Said: []string{"The room is noted."}}
		}}, asked == 0
	}}
	script := func() []bench.Step {
		steps := bench.Script()
		return append(append(steps[:2:2], warmth), steps[2:]...)
	}

	d := stand(t, newTutor(t), "canal-lantern", 80, 24)
	d.bench.Table.Steps = script()
	d.seated("Ana")
	d.sees("How warm is the room?", "▸ Room ◂")
	d.hand("21")
	d.sees("The room is noted.", "▸ Values")
	if got := d.bench.Table.Form.Notes; asked != 1 || strings.Join(got, "; ") != "room 21" {
		t.Errorf("asked %d times, noted %q", asked, got)
	}

	asked = 0
	var said []string
	lines := []string{"", "Ben", "22", "leave"}
	p, err := newTutor(t).Bank.Get("canal-lantern")
	if err != nil {
		t.Fatal(err)
	}
	g := bench.Guide{Table: bench.Table{Tutor: newTutor(t), Steps: script()}, Style: bench.Style{Plain: true}, Say: func(line string) { said = append(said, line) },
		Ask: func() (line string, err error) {
			line, lines = lines[0], lines[1:]
			return line, nil
		}}
	if err := g.Run(p); err != nil {
		t.Fatal(err)
	}
	all := strings.Join(said, "\n")
	if asked != 1 || !strings.Contains(all, "How warm is the room? Example: 20") || !strings.Contains(all, "The room is noted.") {
		t.Errorf("asked %d times in lines:\n%s", asked, all)
	}
}

// The first result and the first plot are worked out beside the key that asks for them:
// the screen stays as it is, says after a moment that the result is being calculated, and has it
// once it is there.
func TestAResultIsWorkedOutBesideTheKey(t *testing.T) {
	for _, c := range []struct {
		name string
		keys []tea.KeyMsg
		want string
	}{
		{"result", []tea.KeyMsg{{Type: tea.KeyCtrlO}}, "Result ◂"},
		{"plot", []tea.KeyMsg{{Type: tea.KeyRunes, Runes: []rune("plot")}, {Type: tea.KeyEnter}}, "Plot ◂"},
	} {
		d := stand(t, newTutor(t), "canal-lantern", 80, 24)
		d.seated("")
		d.hand(lanternValues...)
		d.hand(lanternReadings[0], lanternReadings[1])
		b := newBeside(d.model, newWaits(context.Background()))
		_, cmd := b.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
		for _, k := range c.keys {
			settle(b, cmd)
			_, cmd = b.Update(k)
		}
		before := b.View()
		b.Update(overdue{})
		if late := b.View(); !b.working || !strings.Contains(late, "The program is calculating the result") {
			t.Errorf("%s: working %v, shown:\n%s", c.name, b.working, late)
		}
		if settle(b, cmd); b.working || b.View() == before || !strings.Contains(b.View(), c.want) {
			t.Errorf("%s: in the end:\n%s", c.name, b.View())
		}
	}
}

// settle lets what goes on beside come to its end.
func settle(b *beside, cmd tea.Cmd) {
	for b.working {
		switch msg := cmd().(type) {
		case tea.BatchMsg:
			cmd = msg[0]
		case overdue:
			_, cmd = b.Update(msg)
		case worked:
			b.Update(msg)
		}
	}
}
