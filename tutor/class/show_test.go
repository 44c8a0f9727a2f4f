// Inside the package: it uses the room of class_test.go.

package class

import (
	"strings"
	"testing"
)

// A prediction is no line that could be right or wrong, and is shown as what it is.
func TestAPredictionIsShown(t *testing.T) {
	r := newRoom(t)
	l := r.lesson("s01", "canal-lantern")
	for _, line := range []string{"T1 up left; T2 up right; w down", "T1x = -T1 cos α; T2x = T2 cos β; wx = 0; T1y = T1 sin α; T2y = T2 sin β; wy = -w", "1"} {
		_, err := l.Check(line)
		must(t, err)
	}
	r.collect(map[string][]byte{"ada": r.handIn("s01")})
	if shown := r.shows(t, "s01", "canal-lantern"); !strings.Contains(shown, "  1 (You predict that ") {
		t.Errorf("shown is\n%s", shown)
	}
}
