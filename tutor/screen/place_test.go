// Inside the package: it draws the state itself, without a terminal.

package screen

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/problems"
)

// TestTextThatIsCutOffSaysSo wants each problem's text on the screen to its end, or how
// to read on.
func TestTextThatIsCutOffSaysSo(t *testing.T) {
	cut := 0
	d := sit(t, 80, 24)
	d.hand("Nele")
	for _, h := range problems.Embedded().List() {
		d.open(h.ID, false)
		d.send(tea.WindowSizeMsg{Width: 80, Height: 24})
		words := strings.Fields(d.lesson.Statement())
		goesOn := strings.Contains(d.view, "ctrl+r: read on")
		if last := words[len(words)-1]; !goesOn && !strings.Contains(d.view, last) {
			t.Errorf("%s does not say that its text goes on:\n%s", h.ID, d.view)
		}
		for _, g := range d.lesson.Givens() {
			if !strings.Contains(d.view, g.Text()) {
				t.Errorf("%s does not show %s:\n%s", h.ID, g.Text(), d.view)
			}
		}
		if !goesOn {
			continue
		}
		cut++
		d.press("ctrl+r")
		d.sees("The problem", "Find")
	}
	if cut == 0 {
		t.Fatal("no text is cut off")
	}
}
