package problems

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func draftLantern() Draft {
	return Draft{
		ID: "test-lantern", Title: "It's a lantern: over water", Topic: "two-strings", Level: "1",
		Text:  "A lantern of mass {m} hangs on two cords at {alpha} and {beta} above the horizontal. Find both tensions.",
		Given: []Pair{{"m", "3.40 kg"}, {"alpha", "33 deg"}, {"beta", "52 deg"}},
		Forces: []DraftForce{
			{Name: "T1", Kind: "tension", Points: "up left", Angle: "alpha", From: "x"},
			{Name: "T2", Kind: "tension", Points: "up right", Angle: "beta", From: "x"},
			{Name: "w", Kind: "weight", Points: "down", Size: "m*g"},
		},
		Find: []string{"T1", "T2"}, Vary: []Pair{{"m", "1.5 to 5.0 step 0.1"}}, Notes: "# the standard pair",
	}
}

func TestWhatIsWrittenReadsInAgain(t *testing.T) {
	d := draftLantern()
	p, findings := Read("test-lantern.yaml", Write(d))
	if len(findings) > 0 {
		t.Fatalf("%v\n%s", findings, Write(d))
	}
	if p.Title != d.Title || p.Notes != d.Notes || p.Text != d.Text || len(p.Vary) != 1 {
		t.Errorf("%q, %q, %q", p.Title, p.Notes, p.Text)
	}
	if got := p.System.Givens[0].Number.Text; got != "3.40" {
		t.Errorf("m is %q", got)
	}
}

func TestAnyTitleIsWrittenAsItIs(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		d := draftLantern()
		d.Title = strings.TrimSpace(rapid.StringMatching(`[ -~]{1,40}`).Draw(rt, "title"))
		if d.Title == "" {
			return
		}
		p, findings := Read("test-lantern.yaml", Write(d))
		if len(findings) > 0 || p.Title != d.Title {
			rt.Fatalf("%q: %v\n%s", d.Title, findings, Write(d))
		}
	})
}
