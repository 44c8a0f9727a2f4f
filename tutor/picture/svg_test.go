package picture_test

import (
	"fmt"
	"regexp"
	"strconv"
	"testing"

	"example.org/standstill/tutor/picture"
)

// TestABoxOfOneRowIsClosedOnPaper looks at loads for which there is one row: characters show
// their sides alone, on paper their upper and lower edges are drawn, too.
func TestABoxOfOneRowIsClosedOnPaper(t *testing.T) {
	edge := regexp.MustCompile(`<path class="body" d="M([0-9.]+) ([0-9.]+)L([0-9.]+) ([0-9.]+)"/>`)
	for _, id := range []string{"pear-line", "feast-board", "eel-trap"} {
		drawn := picture.SVG(picture.Scene{Setup: setupOf(t, id)}, 304, 180)
		level := map[string]int{}
		for _, m := range edge.FindAllStringSubmatch(drawn, -1) {
			a, _ := strconv.ParseFloat(m[1], 64)
			b, _ := strconv.ParseFloat(m[3], 64)
			if m[2] == m[4] && a != b {
				level[fmt.Sprintf("%.2f to %.2f", min(a, b), max(a, b))]++
			}
		}
		closed := false
		for _, n := range level {
			closed = closed || n >= 2
		}
		if !closed {
			t.Errorf("%s: no box has an upper and a lower edge: %v", id, level)
		}
	}
}
