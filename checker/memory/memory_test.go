// Inside the package: it counts the answers that are held.

package memory

import "testing"

// TestLatest keeps more than there is room for: what is asked for again stays, what
// nobody asks for goes, and there are never more than two halves.
func TestLatest(t *testing.T) {
	var l Latest[int, string]
	if _, ok := l.Recall(1); ok {
		t.Fatal("an empty memory knows an answer")
	}
	l.Keep(-1, "asked for often")
	l.Keep(-2, "never asked for")
	for i := range 10 * Half {
		l.Keep(i, "")
		if a, ok := l.Recall(-1); !ok || a != "asked for often" {
			t.Fatalf("after %d others: %q, %v", i+1, a, ok)
		}
		if n := len(l.young) + len(l.old); n > 2*Half {
			t.Fatalf("%d answers are held", n)
		}
	}
	if _, ok := l.Recall(-2); ok {
		t.Error("what nobody asked for is still there")
	}
}
