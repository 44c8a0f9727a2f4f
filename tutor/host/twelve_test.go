// Inside the package: it uses the host of host_test.go.

package host

import (
	"fmt"
	"strings"
	"sync"
	"testing"

	"example.org/standstill/tutor/record"
)

// Twelve students work at once, half of them on screens, each through the whole problem
// with a mistake, a hint and a pause in which they leave: everybody's lines are in the
// record, in order, and nobody's under another's name. It is meant for the race detector.
func TestTwelveLessonsAtOnce(t *testing.T) {
	const students = 12
	m := openLab(t, students, nil)
	script := []struct{ typed, shows string }{
		{forces, "T₁x"},
		{"T1 sin alpha", "rong"},
		{"-T1 cos alpha; T1 sin alpha; T2 cos beta; T2 sin beta; wx = 0; wy = -w", "Sum along x"},
		{"T2 cos beta - T1 cos alpha = 0", "Sum along y"},
		{"T1 sin alpha + T2 sin beta = w", "Solve"},
	}
	name := func(i int) string { return fmt.Sprintf("s%02d", i+1) }
	for i := range students {
		m.phrase(name(i)) // the map of phrases has no lock, so all are in it before anybody comes
	}
	var wait sync.WaitGroup
	for i := range students {
		id := name(i)
		cols, end, empty, back := 100, enter, "\x15", "int 1"
		if i%2 == 1 {
			cols, end, empty, back = 0, "\n", "", "Question:"
		}
		wait.Go(func() {
			k := m.come(id, cols, 30)
			if cols > 0 {
				k.sees("All problems")
				k.types("canal" + end)
			} else {
				k.types(atLantern)
			}
			k.sees("Forces")
			for n, step := range script {
				if n == 2 {
					k.types("hint" + end)
					k.sees("int 1")
					k.drop()
					k.ends()
					k = m.come(id, cols, 30)
					k.sees(back)
				}
				k.types(empty + step.typed + end)
				k.sees(step.shows)
			}
			k.types("leave" + end)
			k.ends()
		})
	}
	wait.Wait()
	for i := range students {
		id := fmt.Sprintf("s%02d", i+1)
		var texts []string
		for _, e := range m.entries(id, record.Answer) {
			texts = append(texts, e.Text)
		}
		var want []string
		for _, step := range script {
			want = append(want, step.typed)
		}
		if strings.Join(texts, "\n") != strings.Join(want, "\n") {
			t.Errorf("%s: recorded\n%s", id, strings.Join(texts, "\n"))
		}
	}
}
