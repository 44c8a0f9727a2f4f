// Inside the package: the view of a lab is laid out without one.

package host

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"
)

// A lab of thirty fits a terminal of 80 columns and 24 lines, page by page.
func TestLiveViewFitsTheTerminal(t *testing.T) {
	table := [][]string{{"student", "problem", "stage", "lines", "wrong", "hints", "last", "idle"}}
	for i := range 31 {
		table = append(table, []string{fmt.Sprintf("s%02d with a long name (unverified)", i), "A banner in the middle of a rope", "Sum along x", "12", "10", "3", "right", "14m59s"})
	}
	for _, size := range [][2]int{{80, 24}, {120, 40}, {200, 10}, {80, 3}} {
		cols, lines := size[0], size[1]
		rows := fitted(table, cols)
		var v view
		var all strings.Builder
		for range len(rows) {
			text := v.window("12:00:00  31 connected", rows[:1], rows[1:], saidLiveKeys, lines)
			for _, row := range strings.Split(text, "\n") {
				if n := utf8.RuneCountInString(row); n > cols {
					t.Errorf("%d columns: %q has %d", cols, row, n)
				}
			}
			if n := strings.Count(text, "\n"); n >= max(lines, 7) {
				t.Errorf("%d lines on %d", n, lines)
			}
			if !strings.Contains(text, "12:00:00") || !strings.Contains(text, "student ") || !strings.Contains(text, "q quit") {
				t.Errorf("the head, the heading or the keys are missing:\n%s", text)
			}
			all.WriteString(text)
			v.press(context.Background(), nil, ' ')
		}
		for i := range 31 {
			if name := fmt.Sprintf("s%02d ", i); !strings.Contains(all.String(), name) {
				t.Errorf("%v: %s is on no page", size, name)
			}
		}
	}
}

// Any key leads back from a report of one page; from several, a space leads to the next.
func TestKeysOfAReport(t *testing.T) {
	for rows, stays := range map[int]bool{3: false, 60: true} {
		v := view{report: make([]string, rows)}
		v.show(nil, 80, 24)
		v.press(context.Background(), nil, ' ')
		if shown := v.report != nil; shown != stays {
			t.Errorf("a report of %d rows is shown: %v", rows, shown)
		}
		v.press(context.Background(), nil, 'x')
		if v.report != nil {
			t.Errorf("a report of %d rows does not go", rows)
		}
	}
}
