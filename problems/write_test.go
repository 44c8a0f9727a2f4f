// Inside the package: it compares with the words of the package.

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

// One part of a draft is judged by itself, whatever else is missing so far.
func TestWrongPart(t *testing.T) {
	for _, c := range []struct {
		part   string
		change func(*Draft)
		said   string // "" for nothing
	}{
		{"topic", func(d *Draft) { *d = Draft{Topic: "two-string"} }, `unknown topic "two-string"; expected "two-strings"`},
		{"topic", func(d *Draft) { *d = Draft{Topic: "two-strings"} }, ""},
		{"text", func(d *Draft) { *d = Draft{Text: "A load {m hangs."} }, "an opening brace { has no closing brace; expected {m} for the given value m"},
		{"force 0 points", func(d *Draft) { d.Forces[0].Points = "up up" }, `"up up" is not a direction that "points" can have; expected ` + sidesExpected},
		{"force 1 points", func(d *Draft) { d.Forces[0].Points = "up up" }, ""},
		{"force 2 size", func(d *Draft) { d.Forces[2].Size = "m*(" }, "the size of w cannot be read: something is missing at the end of the line; expected an expression that uses the letters of the problem"},
		{"force 0 angle", func(d *Draft) { d.Find, d.Forces[0].Angle = nil, "33 = alpha" }, "the angle of T1 is an equation; expected an expression"},
		{"given m", func(d *Draft) { d.Given[0].Value = "-3 kg" }, "the mass m is negative; expected a number above zero"},
		{"find", func(d *Draft) { d.Find = []string{"T1", "T1"} }, "T1 is asked for twice; expected each letter once"},
		{"vary m", func(d *Draft) { d.Vary[0].Value = "around 3" }, `"around 3" is not a range; expected LOW to HIGH step STEP, such as 1.5 to 5.0 step 0.1`},
		{"bodies", func(d *Draft) { d.Bodies = []string{"crate", "old crate"} }, `"old crate" cannot be the name of a body; expected one word of at most 24 letters and digits`},
	} {
		d := draftLantern()
		c.change(&d)
		said := ""
		if err := d.Wrong(c.part); err != nil {
			said = err.Error()
		}
		if said != c.said {
			t.Errorf("%s: %q, want %q", c.part, said, c.said)
		}
	}
}

// What is asked for is looked at even if the draft cannot be solved.
func TestWrongFind(t *testing.T) {
	d := draftLantern()
	d.Forces[2].Size = "m*h"
	for find, said := range map[string]string{
		"T1 h": "", "T1 both": "there is no letter both in this problem; expected one of T1 T2 w",
	} {
		if err := d.WrongFind(strings.Fields(find)); err == nil && said != "" || err != nil && err.Error() != said {
			t.Errorf("%s: %v, want %q", find, err, said)
		}
	}
}
