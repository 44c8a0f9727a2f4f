// Inside the package: it tries numbers and marks of axes that no scene has.

package picture

import (
	"bufio"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// TestDirectionsInWords reads testdata/directions.txt.
func TestDirectionsInWords(t *testing.T) {
	file, err := os.Open("testdata/directions.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	cases := 0
	for lines := bufio.NewScanner(file); lines.Scan(); {
		line := strings.TrimSpace(lines.Text())
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		cases++
		scene, want := directionCase(t, line)
		said := Sentences(scene)
		if got := said[len(said)-1]; got != want {
			t.Errorf("%s\n got  %s", line, got)
		}
	}
	if cases < 20 {
		t.Fatalf("only %d cases", cases)
	}
}

// directionCase reads "kind direction tilt surface angle | sentence".
func directionCase(t *testing.T, line string) (Scene, string) {
	t.Helper()
	given, want, ok := strings.Cut(line, "|")
	fields := strings.Fields(given)
	if !ok || len(fields) != 5 {
		t.Fatalf("not a case: %s", line)
	}
	inward := strings.HasSuffix(fields[0], "!")
	kind, ok := KindOf(strings.TrimSuffix(fields[0], "!"))
	if !ok {
		t.Fatalf("no kind: %s", fields[0])
	}
	body := Body{Tilt: number64(t, fields[2])}
	if fields[3] != "-" {
		body.Surfaces = []Surface{{Normal: number64(t, fields[3])}}
	}
	s := Scene{Bodies: []Body{body}, Forces: []Force{{Name: "F", Kind: kind, Direction: number64(t, fields[1]), Inward: inward}}}
	if fields[4] != "-" {
		name, sketch := strings.CutSuffix(fields[4][1:], "?")
		s.Forces[0].Sketch = sketch
		s.Angles = []Angle{{From: Axis(strings.IndexByte("xy", fields[4][0])), Full: fields[4][0] == 'o', Name: name}}
		if s.Angles[0].Full {
			s.Angles[0].From = AxisX
		}
	}
	return s, strings.TrimSpace(want)
}

func number64(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// TestKindsRhyme: what String says, KindOf reads.
func TestKindsRhyme(t *testing.T) {
	for k := Tension; k <= Strut; k++ {
		if back, ok := KindOf(k.String()); !ok || back != k {
			t.Errorf("%s is read as %v, %v", k, back, ok)
		}
	}
	if _, ok := KindOf("gravity"); ok {
		t.Error("a kind that does not exist is read")
	}
}

func curveOf(low, high float64, f func(float64) float64) *Curve {
	c := &Curve{Name: "T"}
	for x := low; x <= high; x++ {
		c.Points = append(c.Points, Point{x, f(x)})
	}
	return c
}

// TestGrowthWithoutBound: a pole is named where the data show one, and nowhere else.
func TestGrowthWithoutBound(t *testing.T) {
	sin := func(x float64) float64 { return math.Sin(x * math.Pi / 180) }
	for _, c := range []struct {
		name  string
		curve *Curve
		poles []float64
	}{
		{"one over sine", curveOf(2, 80, func(x float64) float64 { return 5 / sin(x) }), []float64{0}},
		{"one over cosine", curveOf(10, 86, func(x float64) float64 { return 5 / sin(90-x) }), []float64{90}},
		{"one over the sine of a sum", curveOf(5, 137, func(x float64) float64 { return 5 / sin(x+40) }), []float64{140}},
		{"one over sine from far off", curveOf(20, 80, func(x float64) float64 { return 5 / sin(x) }), nil},
		{"a line", curveOf(1, 80, func(x float64) float64 { return 3 * x }), nil},
		{"a falling line", curveOf(0, 80, func(x float64) float64 { return 100 - x }), nil},
		{"steep but bounded", curveOf(0, 80, func(x float64) float64 { return 50 * math.Exp(-x/8) }), nil},
		{"constant", curveOf(1, 80, func(float64) float64 { return 5 }), nil},
	} {
		var got []float64
		for _, p := range c.curve.unbounded() {
			got = append(got, math.Round(p.x)+0)
		}
		if fmt.Sprint(got) != fmt.Sprint(c.poles) {
			t.Errorf("%s: poles at %v, want %v", c.name, got, c.poles)
		}
	}
}

func TestFigures(t *testing.T) {
	for _, c := range []struct {
		x    float64
		unit string
		want string
	}{
		{20.2349, "N", "20.2 N"}, {4.9, "N", "4.90 N"}, {0, "N", "0 N"}, {1234.5, "N", "1234 N"}, {0.45, "", "0.450"},
		{35, "°", "35°"}, {22.5, "°", "22.5°"}, {-0.01, "°", "0°"}, {9.999, "N", "10.0 N"}, {2.5e9, "N", "2.5e+09 N"},
	} {
		if got := measure(c.x, c.unit); got != c.want {
			t.Errorf("%g %s is written %q, want %q", c.x, c.unit, got, c.want)
		}
	}
}

func TestTicksAreRound(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		n         int
		unit      string
		want      string
	}{
		{0, 39, 4, "", "[0 10 20 30]"}, {2, 80, 5, "°", "[15 30 45 60 75]"}, {0, 0.9, 3, "", "[0 0.5]"}, {-4, 4, 4, "", "[-4 -2 0 2 4]"},
	} {
		if got := fmt.Sprint(ticks(c.low, c.high, c.n, c.unit)); got != c.want {
			t.Errorf("from %g to %g: %s, want %s", c.low, c.high, got, c.want)
		}
	}
}

func TestSpelledInSevenBits(t *testing.T) {
	for text, want := range map[string]string{
		"T₁ cos α": "T1 cos alpha", "30°": "30 deg", "α / °": "alpha / deg", "μ·N": "mu*N", "θ²": "theta^2", "箱": "?", "−5": "-5",
	} {
		if got := transliterated(text); got != want {
			t.Errorf("%q is spelled %q, want %q", text, got, want)
		}
	}
}

// TestWideLetters: a letter of two cells takes two, so that the rest of its
// line stays where it is.
func TestWideLetters(t *testing.T) {
	s := Scene{Bodies: []Body{{Name: "箱", Shape: Block}}}
	c := Braille(s, 30, 10)
	for y := range c.Rows {
		for x := range c.Cols {
			if c.At(x, y).Rune == '箱' {
				if c.At(x+1, y).Rune != 0 {
					t.Error("the right half is not kept free")
				}
				return
			}
		}
	}
	t.Error("the name is not shown")
}

// TestDirectionsSeenFromAbove reads testdata/above.txt: there is no up and down there.
func TestDirectionsSeenFromAbove(t *testing.T) {
	data, err := os.ReadFile("testdata/above.txt")
	if err != nil {
		t.Fatal(err)
	}
	cases := 0
	for line := range strings.Lines(string(data)) {
		given, want, found := strings.Cut(strings.TrimSpace(line), "|")
		if !found || strings.HasPrefix(line, "#") {
			continue
		}
		cases++
		var kind string
		var direction float64
		if _, err := fmt.Sscan(given, &kind, &direction); err != nil {
			t.Fatalf("%s: %v", line, err)
		}
		of, ok := KindOf(kind)
		if !ok {
			t.Fatalf("no kind: %s", kind)
		}
		said := Sentences(Scene{Above: true, Bodies: []Body{{}}, Forces: []Force{{Name: "F", Kind: of, Direction: direction}}})
		if got := said[len(said)-1]; got != strings.TrimSpace(want) {
			t.Errorf("%s\n got  %s", line, got)
		}
	}
	if cases < 6 {
		t.Fatalf("only %d cases", cases)
	}
}
