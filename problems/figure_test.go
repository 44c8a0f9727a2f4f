package problems_test

import (
	"testing"

	"example.org/standstill/problems"
)

// TestFigure reads what the picture is told by bodies, forces and the view.
func TestFigure(t *testing.T) {
	for id, want := range map[string]map[string]string{
		"flour-sack":   {"pulley": "pulley", "TR": "free", "H": "hook"},
		"hanger-table": {"view": "above"},
		"lock-block":   {"body": "pulley"},
	} {
		p, err := problems.Embedded().Get(id)
		if err != nil {
			t.Fatal(err)
		}
		for key, word := range want {
			if p.Figure[key] != word {
				t.Errorf("%s: %s is drawn %q, want %q", id, key, p.Figure[key], word)
			}
		}
		if len(p.Figure) != len(want) {
			t.Errorf("%s: figure is %v", id, p.Figure)
		}
	}
}
