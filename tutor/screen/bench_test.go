// Inside the package: it presses keys on the state itself, without a terminal.

package screen

import (
	"context"
	"fmt"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"
)

// BenchmarkKey is one letter typed: Update and View.
func BenchmarkKey(b *testing.B) {
	for _, size := range [][2]int{{80, 24}, {200, 60}} {
		for _, stage := range []struct {
			name  string
			lines []string
			keys  string
		}{
			{"diagram", nil, "T1 up left; T2 up right; w down"},
			{"components", lantern[:1], "T1x = T1 cos alpha; T1y = T1 sin alpha"},
			{"solve", lantern[:6], "T1 = w/(sin alpha + cos alpha tan beta)"},
		} {
			b.Run(fmt.Sprintf("%dx%d/%s", size[0], size[1], stage.name), func(b *testing.B) {
				d := sitAt(b, newTutor(b), Options{}, termenv.TrueColor, size[0], size[1])
				d.enrol("Nele", "canal-lantern")
				d.hand(stage.lines...)
				b.ReportAllocs()
				letters := strings.Split(stage.keys, "")
				for i := 0; b.Loop(); i++ {
					if i%len(letters) == 0 {
						d.line.Set("")
					}
					d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(letters[i%len(letters)])})
				}
			})
		}
	}
}

// BenchmarkTurn is one step of an angle: the drawing, the numbers and the plot.
func BenchmarkTurn(b *testing.B) {
	for _, size := range [][2]int{{80, 24}, {200, 60}} {
		b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
			d := sitAt(b, newTutor(b), Options{}, termenv.TrueColor, size[0], size[1])
			d.enrol("Nele", "canal-lantern")
			d.hand(lantern...)
			d.press("tab")
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				d.press([]string{"right", "left"}[i/20%2])
			}
		})
	}
}

// lantern solves the problem canal-lantern.
var lantern = []string{
	"T1 up left; T2 up right; w down",
	"T1x = T1 cos α; T1y = T1 sin α",
	"T2 cos β; T2 sin β",
	"wx = 0, wy = w",
	"T1 cos 35 = T2 cos 50",
	"T1 sin 35 + T2 sin 50 = 3.2 * 9.8",
	"T1 = 20.2 N; T2 = 25.8 N",
}

// BenchmarkBenchKey is one letter typed into a field at the bench.
func BenchmarkBenchKey(b *testing.B) {
	for _, size := range [][2]int{{80, 24}, {200, 60}} {
		b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
			d := stand(b, newTutor(b), "canal-lantern", size[0], size[1])
			d.seated("Ana, Ben")
			d.hand(lanternValues[0])
			b.ReportAllocs()
			letters := strings.Split("30; 29.5; 30.5 deg div 1 deg", "")
			for i := 0; b.Loop(); i++ {
				if i%len(letters) == 0 {
					d.line.Set("")
				}
				d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(letters[i%len(letters)])})
			}
		})
	}
}

// BenchmarkKeyToResult is the key that asks for the first result or the first plot, as the
// terminal meets it: the work goes on beside it.
func BenchmarkKeyToResult(b *testing.B) {
	for _, word := range []string{"result", "plot"} {
		b.Run(word, func(b *testing.B) {
			for b.Loop() {
				b.StopTimer()
				d := stand(b, newTutor(b), "canal-lantern", 80, 24)
				d.seated("")
				d.hand(lanternValues...)
				d.hand(lanternReadings[0], lanternReadings[1])
				d.press("ctrl+u")
				d.write(word)
				beside := newBeside(d.model, newWaits(context.Background()))
				b.StartTimer()
				beside.Update(tea.KeyMsg{Type: tea.KeyEnter})
			}
		})
	}
}
