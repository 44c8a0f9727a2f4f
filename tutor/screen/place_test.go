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
		if d.work.textFits {
			if strings.Contains(d.view, "ctrl+r shows how it goes on") {
				t.Errorf("%s says that its text goes on:\n%s", h.ID, d.view)
			}
			continue
		}
		cut++
		d.sees("ctrl+r shows how it goes on", "ctrl+r problem")
		d.press("ctrl+r")
		d.sees("The problem", "Given:")
	}
	if cut == 0 {
		t.Fatal("no text is cut off")
	}
}
