// Inside the package: it presses keys on the state itself, without a terminal.

package screen

import (
	"math/rand/v2"
	"slices"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
)

// benchTyped are lines that somebody may type at the bench, at the right place or not.
var benchTyped = []string{
	"0.5 kg ± 1 %", "30 deg div 1 deg", "30; 29.5; 30.5 deg", "alpha = 4 deg div 1 deg", "beta =", "T1 = 3 N max", "= 3", "q", "", "±", "1",
	"result", "budget", "values", "plot", "plot alpha", "plot zz", "again", "runs", "open 1", "open 99", "compare 1 2", "1 2",
	"predict", "predict Ana", "students Cem", "T1 up left; T2 up right; w down", "solution", "bench", "back", "next", "keep", "angles",
	"report x", "sheet", "text", "drawing", "look", "cautions", "warnings", "help", "leave it",
}

// TestAnyKeysAtTheBench presses and types at random: no screen is too large, and nothing
// ends the program.
func TestAnyKeysAtTheBench(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	var names []string
	for name := range keyNames {
		if name != "ctrl+c" {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	sizes := append(sizes(), [2]int{50, 10})
	for seed := range uint64(12) {
		r := rand.New(rand.NewPCG(seed, 1))
		d := stand(t, newTutor(t), []string{"canal-lantern", "", "two-knots"}[seed%3], 80, 24)
		for range 120 {
			switch r.IntN(4) {
			case 0:
				d.write(benchTyped[r.IntN(len(benchTyped))])
			case 1:
				d.hand(benchTyped[r.IntN(len(benchTyped))])
			case 2:
				d.press(names[r.IntN(len(names))])
			default:
				d.press("enter")
			}
			if r.IntN(20) == 0 {
				size := sizes[r.IntN(len(sizes))]
				d.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			}
			fitsIn(t, d)
		}
		d.close()
	}
}
