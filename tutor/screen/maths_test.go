// Inside the package: it draws one view of the state.

package screen

import (
	"os"
	"strings"
	"testing"

	"example.org/standstill/tutor/screen/frame"
)

// TestFormulasAreSetAsOnPaper reads testdata/formulas: a typed line behind "> ",
// and under it what stands on the screen.
func TestFormulasAreSetAsOnPaper(t *testing.T) {
	data, err := os.ReadFile("testdata/formulas")
	if err != nil {
		t.Fatal(err)
	}
	d := sit(t, 80, 24)
	d.enrol("Nele", "canal-lantern")
	d.hand(lantern[:6]...)
	var out strings.Builder
	cases := 0
	for _, line := range strings.Split(string(data), "\n") {
		typed, ok := strings.CutPrefix(line, "> ")
		if !ok {
			continue
		}
		cases++
		d.line.Set(typed)
		d.textChanged()
		out.WriteString(line + "\n")
		for _, r := range d.reading.Rows(d.pen, d.stage(), 68, 3) {
			out.WriteString(strings.TrimRight(unpainted(d.look.Sheet([]frame.Row{r})), " ") + "\n")
		}
	}
	if cases == 0 {
		t.Fatal("there are no formulas")
	}
	if *update {
		if err := os.WriteFile("testdata/formulas", []byte(out.String()), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if got := out.String(); got != strings.ReplaceAll(string(data), "\r\n", "\n") {
		t.Errorf("got\n%s", got)
	}
}
