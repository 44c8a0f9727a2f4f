// Inside the package: it compares with the sentences of the package.

package tutor

import (
	"testing"

	"example.org/standstill/checker"
)

// What a class asks for beyond a right line: lines of Solve for two ropes at 35° and 50°,
// judged one after the other on a page of their own for each class.
func TestWhatAClassAsksFor(t *testing.T) {
	type typed struct {
		text string
		want checker.Verdict
		code checker.Code
	}
	r, a := checker.Right, checker.Almost
	for name, c := range map[string]struct {
		Settings
		lines []typed
	}{
		"nothing": {Settings{}, []typed{{"T1 = 20 N", r, ""}, {"T2 = 25.8 N", r, ""}}},
		"three figures": {Settings{Figures: 3}, []typed{{"T1 = 20 N", a, checker.Coarse}, {"T1 = w cos β/sin(α + β) = 20 N", a, checker.Coarse},
			{"T1 = 20.2 N", r, ""}, {"T2 = 0.0258 kN", r, ""}}},
		"four figures": {Settings{Figures: 4}, []typed{{"T1 = 20.2 N", a, checker.Coarse}, {"T1 = 20.24 N", r, ""}}},
		"any figures":  {Settings{Figures: 1}, []typed{{"T1 = 2e1 N", r, ""}}},
		"two figures":  {Settings{}, []typed{{"T1 = 2e1 N", a, checker.Coarse}}},
		"working": {Settings{Working: true}, []typed{{"T1 = 20.2 N", a, checker.NoWorking}, {"T1 cos α = T2 cos β", r, ""}, {"T1 = 20.2 N", r, ""},
			{"T2 = 25.8 N", r, ""}}},
		"working in the chain":  {Settings{Working: true}, []typed{{"T1 = w cos β/sin(α + β) = 20.2 N", r, ""}, {"T2 = 25.8 N", a, checker.NoWorking}}},
		"working in the text":   {Settings{Working: true}, []typed{{"T2 = T1 cos α/cos β; T2 = 25.8 N", r, ""}}},
		"working that is false": {Settings{Working: true}, []typed{{"T1 = w sin β/sin(α + β)", checker.Wrong, checker.SineCosine}, {"T1 = 20.2 N", a, checker.NoWorking}}},
	} {
		class := Class{Settings: c.Settings}
		g, err := class.NewPage(problemOf(t, "canal-lantern"))
		if err != nil {
			t.Fatal(err)
		}
		for _, one := range c.lines {
			line := g.Add(answered(checker.Solve, "", one.text))
			if line.Verdict != one.want || line.Code != one.code {
				t.Errorf("%s: %s is %s %s, want %s %s: %s", name, one.text, line.Verdict, line.Code, one.want, one.code, line.Message)
			}
			if done := len(line.Done) > 0; one.want != r && done {
				t.Errorf("%s: %s counts as done", name, one.text)
			}
		}
	}
}

func TestAClassSaysWhatItAsksFor(t *testing.T) {
	for settings, want := range map[Settings]string{
		{}: "", {Working: true}: saidClassWorking, {Figures: 3}: "In your class, you have to give every value to at least 3 significant figures.",
		{Working: true, Figures: 4}: "In your class, you have to show a line of working for every value, and give every value to at least 4 significant figures.",
	} {
		class := Class{Settings: settings}
		g, err := class.NewPage(problemOf(t, "canal-lantern"))
		if err != nil {
			t.Fatal(err)
		}
		if got := g.saidRule(checker.Solve); got != want {
			t.Errorf("%+v says %q, want %q", settings, got, want)
		}
	}
}
