// Inside the package: its values are made by design_test.go.

package bench

import (
	"flag"
	"math"
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"example.org/standstill/checker/quantity"

	"example.org/standstill/tutor/bench/measure"
)

var update = flag.Bool("update", false, "write what is said now into testdata")

// TestMeasuredValues reads every value of testdata/values.txt and holds what is said
// against the line below it: what was taken, or after "!" the sentence about what is
// wrong.
func TestMeasuredValues(t *testing.T) {
	const file = "testdata/values.txt"
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	f := bankForm(t, "canal-lantern")
	lines := strings.Split(strings.TrimRight(string(data), "\n"), "\n")
	cases := 0
	for i, line := range lines {
		if strings.HasPrefix(line, "#") || strings.HasPrefix(line, "  ") {
			continue
		}
		letter, text, _ := strings.Cut(line, ":")
		got := "  " + saidOf(f, letter, text)
		switch {
		case *update && i+1 < len(lines):
			lines[i+1] = got
		case i+1 == len(lines) || lines[i+1] != got:
			t.Errorf("%s\n  gives %s", line, got)
		}
		cases++
	}
	if cases < 80 {
		t.Fatalf("only %d values were read", cases)
	}
	if *update {
		if err := os.WriteFile(file, []byte(strings.Join(lines, "\n")+"\n"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

func saidOf(f *Form, letter, text string) string {
	kind := Measure
	if strings.HasPrefix(letter, "T") {
		kind = Reading
	}
	field, why := f.Find(kind, letter)
	if why != "" {
		return "! " + why
	}
	if strings.TrimSpace(text) == "" {
		_, why := measure.Read(text, f.Fields[field].Want)
		return "! " + why
	}
	if !f.Type(field, text) {
		return "! " + f.Fields[field].Why
	}
	return f.Fields[field].Taken
}

// newtons is a want for tests.
func newtons() measure.Want {
	n, _ := quantity.Find("N")
	return measure.Want{Name: "T1", Dim: quantity.Force, Unit: n}
}

// The decimal comma, the sign ± and spaces are a matter of the keyboard.
func TestWritingDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.StringMatching(`[1-9][0-9]?\.[0-9]{1,3}`).Draw(t, "x")
		a := rapid.StringMatching(`0\.[0-9]{0,2}[1-9]`).Draw(t, "a")
		word := rapid.SampledFrom([]string{"±", "u", "div"}).Draw(t, "word")
		want, why := measure.Read(x+" N "+word+" "+a+" N", newtons())
		if why != "" {
			t.Fatal(why)
		}
		pm := strings.Replace(word, "±", rapid.SampledFrom([]string{"±", "+-", "+/-"}).Draw(t, "sign"), 1)
		for _, text := range []string{
			strings.ReplaceAll(x+" N "+pm+" "+a+" N", ".", ","),
			x + "N " + pm + " " + a + "N",
			x + " " + pm + " " + a + " N",
			"(" + x + " " + pm + " " + a + ") N",
			"  " + x + "  newtons  " + pm + "  " + a,
		} {
			got, why := measure.Read(text, newtons())
			if why != "" || got.Estimate != want.Estimate || math.Abs(got.U()-want.U()) > 1e-15 {
				t.Fatalf("%q: %v ± %v %s, want %v ± %v", text, got.Estimate, got.U(), why, want.Estimate, want.U())
			}
		}
	})
}

// The order of readings does not matter, and more of the same reading never make it
// exact.
func TestRepeatedReadings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		readings := rapid.SliceOfN(rapid.StringMatching(`3[0-9]\.[05]`), 2, 8).Draw(t, "readings")
		deg, _ := quantity.Find("deg")
		want := measure.Want{Name: "α", Dim: quantity.Angle, Unit: deg}
		v, why := measure.Read(strings.Join(readings, "; ")+" deg div 0.5 deg", want)
		if why != "" {
			t.Fatal(why)
		}
		turned := append(readings[1:len(readings):len(readings)], readings[0])
		w, _ := measure.Read(strings.Join(turned, "; ")+" deg div 0.5 deg", want)
		if math.Abs(v.Estimate-w.Estimate) > 1e-12 || math.Abs(v.U()-w.U()) > 1e-12 {
			t.Fatalf("%v and %v", v.U(), w.U())
		}
		if floor := 0.25 * quantity.Degree / math.Sqrt(3); v.U() < floor*(1-1e-12) {
			t.Fatalf("u = %v is below that of one division", v.U())
		}
	})
}

// FuzzReadValue: nothing that can be typed does harm; what cannot be read gets one
// sentence, and what can reads again as the same.
func FuzzReadValue(f *testing.F) {
	data, err := os.ReadFile("testdata/values.txt")
	if err != nil {
		f.Fatal(err)
	}
	for _, line := range strings.Split(string(data), "\n") {
		if _, text, found := strings.Cut(line, ":"); found && !strings.HasPrefix(line, " ") {
			f.Add(text)
		}
	}
	f.Fuzz(func(t *testing.T, text string) {
		v, why := measure.Read(text, newtons())
		if why != "" {
			if !utf8.ValidString(why) || !strings.HasSuffix(why, ".") || strings.ContainsAny(why, "\n\x1b") || len(why) > 400 {
				t.Fatalf("%q: %q", text, why)
			}
			return
		}
		if math.IsNaN(v.Estimate) || math.IsInf(v.Estimate, 0) || !(v.U() >= 0) || v.Taken() == "" {
			t.Fatalf("%q: %+v", text, v)
		}
		if again, why := measure.Read(v.Typed, newtons()); why != "" || again.Estimate != v.Estimate || again.U() != v.U() {
			t.Fatalf("%q reads again as %+v %s", text, again, why)
		}
	})
}
