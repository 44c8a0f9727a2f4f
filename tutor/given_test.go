package tutor_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
)

// TestGivens lists what is given with its meaning, and every angle of the bank has one.
func TestGivens(t *testing.T) {
	for id, want := range map[string]string{
		"canal-lantern": "m = 3.2 kg: mass|α = 35°: left cord, above the horizontal|β = 50°: right cord, above the horizontal|g = 9.8 m/s²: ",
		"keel-up":       "m = 26 kg: mass|α = 21°: angle of the slope|μ = 0.33: coefficient of friction|g = 9.8 m/s²: ",
		"bell-bracket":  "W = 86 lb: weight|φ = 34°: strut, from the vertical",
		"bell-hoist":    "m = 16 kg: mass|h = 1.3 m: depth of the ring below the beam|a = 0.9 m: horizontal distance from the ring to the upper end of the left rope|b = 1.9 m: horizontal distance from the ring to the upper end of the right rope|g = 9.8 m/s²: ",
		"any-trunk":     "m (any): mass|θ = 33°: angle of the slope|g = 9.8 m/s²: ",
	} {
		var all []string
		for _, g := range pageOf(t, id).Givens() {
			all = append(all, fmt.Sprintf("%s: %s", g.Text(), g.Meaning))
		}
		if got := strings.Join(all, "|"); got != want {
			t.Errorf("%s: %s, want %s", id, got, want)
		}
	}
	angles := 0
	for _, h := range problems.Embedded().List() {
		for _, g := range pageOf(t, h.ID).Givens() {
			if strings.HasSuffix(g.Value, "°") {
				if angles++; g.Meaning == "" {
					t.Errorf("%s does not say what %s is", h.ID, g.Letter)
				}
			}
		}
	}
	if angles == 0 {
		t.Fatal("no angle is given")
	}
}

func pageOf(t *testing.T, id string) *tutor.Page {
	t.Helper()
	p, err := problems.Embedded().Get(id)
	if err != nil {
		t.Fatal(err)
	}
	page, err := tutor.NewPage(p)
	if err != nil {
		t.Fatal(err)
	}
	return page
}
