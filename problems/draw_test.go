// Inside the package: it compares the chance of two students with the same numbers with the formula.

package problems

import (
	"encoding/json"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"golang.org/x/text/unicode/norm"
	"pgregory.net/rapid"
)

// golden is one line of testdata/draws.jsonl: whose copy of which file has which
// numbers. The files stand beside it and never change, so neither may the numbers.
type golden struct {
	File    string `json:"file"`
	Class   string `json:"class,omitempty"`
	Student string `json:"student,omitempty"`
	Repeat  int    `json:"repeat,omitempty"`
	Copy    string `json:"copy"`
}

// TestDrawsAreFixedForGood may be rewritten with -update only as long as no
// student has been handed a draw; after that, what it finds is a mistake or needs
// rules of a new version.
func TestDrawsAreFixedForGood(t *testing.T) {
	const name = "testdata/draws.jsonl"
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(data)), "\n")
	if len(lines) < 20 {
		t.Fatalf("only %d draws", len(lines))
	}
	for i, line := range lines {
		var g golden
		if err := json.Unmarshal([]byte(line), &g); err != nil {
			t.Fatalf("line %d: %v", i+1, err)
		}
		own, err := file(t, "testdata/drawn/"+g.File).Draw(Seed{g.Class, g.Student, g.Repeat})
		if err != nil {
			t.Fatal(err)
		}
		if own.Copy != g.Copy && !*update {
			t.Errorf("line %d: %+v draws %q", i+1, g, own.Copy)
		}
		g.Copy = own.Copy
		again, err := json.Marshal(g)
		if err != nil {
			t.Fatal(err)
		}
		lines[i] = string(again)
	}
	if *update {
		put(t, name, strings.Join(lines, "\n")+"\n")
	}
}

func file(t *testing.T, name string) *Problem {
	t.Helper()
	p, found := ReadFile(name)
	if p == nil {
		t.Fatal(found.Err())
	}
	return p
}

// One student may type the name in many ways.
func TestSameStudentSameNumbers(t *testing.T) {
	p := file(t, "testdata/drawn/lantern.yaml")
	want, err := p.Draw(Seed{Class: "3b", Student: "zoë müller"})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []Seed{
		{Class: " 3B ", Student: "Zoë Müller"},
		{Class: "3b", Student: norm.NFD.String("ZOË MÜLLER") + "\t"},
	} {
		own, err := p.Draw(s)
		if err != nil || own.Copy != want.Copy {
			t.Errorf("%+v draws %q, %v, not %q", s, own.Copy, err, want.Copy)
		}
	}
}

func TestAloneTheFirstTimeHasTheNumbersOfTheFile(t *testing.T) {
	p := file(t, "testdata/drawn/lantern.yaml")
	first, err := p.Draw(Seed{Student: "anna"})
	if err != nil || first.Copy != "" {
		t.Errorf("the first time has %q, %v", first.Copy, err)
	}
	again, err := p.Draw(Seed{Student: "anna", Repeat: 1})
	if err != nil || again.Copy == "" {
		t.Errorf("the second time has %q, %v", again.Copy, err)
	}
}

func TestStepsAreExactInDecimal(t *testing.T) {
	for _, c := range []struct {
		text  string
		count int
		k     int
		want  string
	}{
		{"1.5 to 5.0 step 0.1", 36, 8, "2.3"},
		{"0 to 1 step 0.05", 21, 1, "0.05"},
		{"20 to 70 step 1", 51, 50, "70"},
		{"0.280 to 0.800 step 0.005", 105, 104, "0.800"},
		{"-1.5 to 1.5 step 0.5", 7, 0, "-1.5"},
		{"-1.5 to 1.5 step 0.5", 7, 2, "-0.5"},
		{"100 to 1000 step 250", 4, 3, "850"},
	} {
		v, wrong := readVary("m", c.text)
		if wrong != nil {
			t.Fatal(*wrong)
		}
		if v.Count() != c.count || v.Text(c.k) != c.want {
			t.Errorf("%s: %d values, the one at %d is %s", c.text, v.Count(), c.k, v.Text(c.k))
		}
	}
}

func TestCopyIsRebuiltFromItsRecord(t *testing.T) {
	p := file(t, "testdata/drawn/lantern.yaml")
	rapid.Check(t, func(t *rapid.T) {
		seed := Seed{rapid.String().Draw(t, "class"), rapid.String().Draw(t, "student"), rapid.IntRange(0, 9).Draw(t, "repeat")}
		own, err := p.Draw(seed)
		if err != nil {
			t.Fatal(err)
		}
		again, err := p.WithGivens(own.Copy)
		if err != nil || again.Copy != own.Copy || again.Statement() != own.Statement() {
			t.Fatalf("%q is rebuilt as %q, %v", own.Copy, again.Copy, err)
		}
		if !slices.Equal(again.System.Givens, own.System.Givens) {
			t.Fatalf("%v is rebuilt as %v", own.System.Givens, again.System.Givens)
		}
	})
}

func TestRecordsThatDoNotFitAreRefused(t *testing.T) {
	p := file(t, "testdata/drawn/lantern.yaml")
	for _, c := range []struct{ text, want string }{
		{"m", `read givens "m": name=number was expected at "m"`},
		{"m=3;m=4", `read givens "m=3;m=4": name=number was expected at "m=4"`},
		{"M=3", "harbour-lantern has no given value M"},
		{"m=heavy", `m: "heavy" is not a quantity; expected a number and a unit, such as 3.2 kg`},
		{"m=3 N", `m: "3 N" cannot be a value for a mass`},
		{"alpha=any deg", `alpha: "any deg" cannot be a value for an angle`},
	} {
		if own, err := p.WithGivens(c.text); err == nil || err.Error() != c.want {
			t.Errorf("%s: %v, %v", c.text, own, err)
		}
	}
}

func TestMeasuredValuesKeepTheirFigures(t *testing.T) {
	p := file(t, "testdata/drawn/lantern.yaml")
	own, err := p.WithValues(map[string]string{"m": "500 g", "alpha": "35.50", "g": "9.81 m/s^2"})
	if err != nil {
		t.Fatal(err)
	}
	if own.Copy != "alpha=35.50;g=9.81;m=500 g" {
		t.Errorf("the copy is %q", own.Copy)
	}
	if !strings.Contains(own.Statement(), "500 g") || !strings.Contains(own.Statement(), "35.50°") {
		t.Errorf("the statement is %q", own.Statement())
	}
	if strings.Contains(p.Statement(), "500 g") {
		t.Error("the problem itself has changed")
	}
}

// Twenty-three people share a birthday with an even chance.
func TestChanceOfSharing(t *testing.T) {
	if c := chanceOfSharing(365); math.Abs(c-0.706316) > 1e-6 {
		t.Errorf("thirty people share a birthday with a chance of %v", c)
	}
	if c := chanceOfSharing(0); c != 1 {
		t.Errorf("no numbers at all are shared with a chance of %v", c)
	}
}

func TestDrawsOfALittleProblemAreCountedOut(t *testing.T) {
	p := file(t, "testdata/drawn/four.yaml")
	d := p.Draws(1000)
	refused := 0
	for _, n := range d.Refused {
		refused += n
	}
	if d.Total != 4 || d.Tried != 4 || d.Usable+refused != 4 || d.Refused[TooSpread] != 1 {
		t.Errorf("%+v", d)
	}
	if sampled := p.Draws(3); sampled.Tried != 3 {
		t.Errorf("%+v", sampled)
	}
}
