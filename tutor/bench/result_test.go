// Inside the package: it compares with the sentences of the package.

package bench

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
)

func saidIn(lines []string, part string) bool {
	return strings.Contains(strings.Join(lines, "\n"), part)
}

// Near level the tension bends over the uncertainty of the angles: the interval is that
// of the draws, is not the same to both sides, and the reason is said.
// The second angle of two knots has no part in the pull of the first string, and what
// rounding leaves of it is not shown.
func TestWhatHasNoPartHasNoSensitivity(t *testing.T) {
	f := bankForm(t, "two-knots")
	fill(t, f, []string{"alpha = 5 deg div 1 deg", "beta = 55 deg div 1 deg"}, nil)
	r, why := f.Result()
	if why != nil {
		t.Fatal(why)
	}
	f.Type(1, "5 deg exact")
	alone, why := f.Result()
	if why != nil {
		t.Fatal(why)
	}
	if said := strings.Join(Style{}.Set(alone.Blocks()), " "); !strings.Contains(said, "T₁ = 224.9 N, exact, because T₁ depends only on exact values") {
		t.Error(said)
	}
	for _, row := range r.Predicted[0].budget().Rows {
		if row[0] == "β" && row[3] != "0 N/°" {
			t.Errorf("%q", row)
		}
	}
}

func TestDrawsCountWhereTheTensionBends(t *testing.T) {
	f := bankForm(t, "canal-lantern")
	fill(t, f, []string{"m = 0.5 kg ± 1 %", "alpha = 4 deg ± 1.5 deg", "beta = 4 deg ± 1.5 deg"}, []string{"T1 = 40 N ± 1 N"})
	r := result(t, f)
	p := r.Predicted[0]
	if !p.FromTrials || p.Spread < 1.05*p.U {
		t.Fatalf("u = %v by the law, %v by draws, drawn %v", p.U, p.Spread, p.FromTrials)
	}
	if up, down := p.High-p.Value, p.Value-p.Low; up < 1.2*down {
		t.Errorf("the interval reaches %v up and %v down", up, down)
	}
	if !strings.Contains(p.Why, "does not change linearly") || !strings.Contains(p.said(), "95 % of the random trials") {
		t.Errorf("%s", p.said())
	}
	if c := r.Compared[0]; math.Abs(c.Combined-math.Hypot(c.Expanded, p.High-p.Value)) > 1e-12 {
		t.Errorf("E_n of a reading above takes %v of the interval %v to %v", c.Combined, p.Low, p.High)
	}
}

// Where the draws count and readings are few, the interval has the long tails of
// Student's t.
func TestFewReadingsWidenTheDrawnInterval(t *testing.T) {
	wide := func(readings string) float64 {
		f := bankForm(t, "canal-lantern")
		fill(t, f, []string{"alpha = " + readings + " deg div 0.1 deg", "beta = 4 deg ± 1 deg"}, nil)
		p := result(t, f).Predicted[0]
		if !p.FromTrials || p.Nu == 0 && strings.Count(readings, ";") == 1 {
			t.Fatalf("drawn %v, ν %d", p.FromTrials, p.Nu)
		}
		return p.High - p.Low
	}
	few, many := wide("2; 6"), wide("2; 6; 2; 6; 2; 6; 2; 6; 2; 6; 2; 6")
	if few < 2*many {
		t.Errorf("two readings give an interval of %v N, twelve %v N", few, many)
	}
}

// Two readings give one degree of freedom: k is Student's 12.71.
func TestStudentsTTakesThePlaceOfTwo(t *testing.T) {
	f := bankForm(t, "canal-lantern")
	fill(t, f, []string{"beta = 49; 51 deg div 0.1 deg"}, []string{"T1 = 20; 20.4 N div 0.1 N"})
	r := result(t, f)
	p, c := r.Predicted[0], r.Compared[0]
	if p.Nu != 1 || math.Abs(p.K-12.706) > 1e-3 || c.Nu != 1 {
		t.Errorf("k = %v for %d degrees of freedom; reading %d", p.K, p.Nu, c.Nu)
	}
	if !strings.Contains(p.said(), "k = 12.71, ν = 1") || !strings.Contains(c.verdictSaid(), "(k = 12.71, ν = 1)") {
		t.Errorf("%s\n%s", p.said(), c.verdictSaid())
	}
}

func TestVerdictsAreInTheDesignsWords(t *testing.T) {
	for _, c := range []struct{ read, want string }{
		{"3.6 N ± 0.05 N", "T₁: reading and prediction agree within their combined expanded uncertainty of 0.085 N (k = 2)."},
		{"3.7 N ± 0.05 N", "T₁: reading and prediction differ by 0.11 N, which is more than their combined expanded uncertainty of 0.085 N (k = 2)."},
		{"3.7 N ± 0.7 N", "T₁: you cannot tell whether reading and prediction agree, because their combined expanded uncertainty of 0.81 N (k = 2) is over 20 % of the value."},
	} {
		f := twoStrings(t, "30", "45")
		fill(t, f, nil, []string{"T1 = " + c.read})
		if got := result(t, f).Compared[0].verdictSaid(); got != c.want {
			t.Errorf("%s\nwant %s", got, c.want)
		}
	}
}

// What is left over follows m, g, the angles and the readings, not the two predictions
// as if they were independent. By hand: u² of ΣFx from its own derivatives.
func TestLeftOverFollowsWhatWasMeasured(t *testing.T) {
	f := twoStrings(t, "30", "45")
	fill(t, f, nil, []string{"T1 = 3.6 N ± 0.05 N", "T2 = 4.4 N ± 0.05 N"})
	r := result(t, f)
	x := r.Left[0]
	a, b := math.Pi/6, math.Pi/4
	u, half := 0.05/math.Sqrt(3), 0.5*math.Pi/180/math.Sqrt(3)
	value := -3.6*math.Cos(a) + 4.4*math.Cos(b)
	square := math.Pow(u*math.Cos(a), 2) + math.Pow(u*math.Cos(b), 2) + math.Pow(3.6*math.Sin(a)*half, 2) + math.Pow(4.4*math.Sin(b)*half, 2)
	if math.Abs(x.Value-value) > 1e-9 || math.Abs(x.U-math.Sqrt(square)) > 1e-7 {
		t.Errorf("ΣFx = %v, u = %v; by hand %v, %v", x.Value, x.U, value, math.Sqrt(square))
	}
	if len(r.Left) != 2 || x.Name() != "ΣFx" || !x.Within() {
		t.Errorf("%+v", r.Left)
	}
}

// A pull is warned of as a multiple of the load unless it is small, and by itself where
// nobody said what the string is rated for; not one that is meant to lie level.
func TestWarnings(t *testing.T) {
	for _, c := range []struct{ mass, angle, want string }{
		{"0.5 kg", "4", "T₁ (35.2 N) and T₂ (35.2 N) are predicted to be more than 5 times the load"},
		{"0.5 kg", "8", ""}, // 3.6 times the load
		{"10 g", "4", ""},   // 0.70 N
		{"10 g", "9", ""},   // 0.31 N
		{"50 kg", "12", "T₁ (1180 N) and T₂ (1180 N) are predicted to be over 50 N"},
	} {
		f := bankForm(t, "canal-lantern")
		fill(t, f, []string{"m = " + c.mass, "alpha = " + c.angle + " deg", "beta = " + c.angle + " deg", "g = 9.81 m/s^2"}, nil)
		r := result(t, f)
		if (c.want == "") != (r.Warnings == nil) || !saidIn(r.Warnings, c.want) {
			t.Errorf("%s at %s°: %q", c.mass, c.angle, r.Warnings)
		}
		if early := f.Warnings(); len(early) != len(r.Warnings) || saidIn(early, " N, ") || saidIn(early, "(") {
			t.Errorf("before the prediction by hand: %q", early)
		}
	}
	safe := bankForm(t, "canal-lantern")
	fill(t, safe, []string{"m = 50 kg"}, []string{"T1 = 2 kN max", "T2 = 2 kN max"})
	if r := result(t, safe); r.Warnings != nil {
		t.Errorf("rated: %q", r.Warnings)
	}
	for _, id := range []string{"lab-table-four", "lab-ring"} {
		if r := result(t, bankForm(t, id)); len(r.Warnings) > 0 {
			t.Errorf("%s: %q", id, r.Warnings)
		}
	}
	rated := twoStrings(t, "30", "45")
	fill(t, rated, []string{"m = 0.5 kg max 0.4 kg"}, []string{"T1 = 3.5 N max", "T2 = 4.45 N max"})
	r := result(t, rated)
	for _, want := range []string{"m was measured to be 0.500 kg, which is more than the rated load of 0.4 kg", "T₁ is predicted to be 3.59 N, which is more than the rated load of 3.5 N"} {
		if !saidIn(r.Warnings, want) {
			t.Errorf("never said: %s in %q", want, r.Warnings)
		}
	}
	fill(t, rated, []string{"m = 0.5 kg ± 1 %"}, nil)
	if r := result(t, rated); !saidIn(r.Warnings, "T₂ may reach 4.46 N, which is more than the rated load of 4.45 N") {
		t.Errorf("%q", r.Warnings)
	}
}

// A string cannot push, and a sentence says so.
func TestUnphysicalValuesGetASentence(t *testing.T) {
	for _, c := range []struct {
		id     string
		values []string
		want   string
	}{
		{"guyed-lamp", []string{"beta = 20 deg", "gamma = 40 deg"}, "would be a push, but a string can only pull"},
		{"canal-lantern", []string{"alpha = 90 deg", "beta = 90 deg"}, "the program cannot find the forces"},
		{"canal-lantern", []string{"alpha = 0 deg", "beta = 0 deg"}, "the program cannot find the forces"},
		{"lab-three-hangers", []string{"m = 5 kg"}, "cannot balance"},
	} {
		f := bankForm(t, c.id)
		fill(t, f, c.values, nil)
		r, why := f.Result()
		if len(why) != 1 || !strings.Contains(why[0], c.want) || !strings.HasSuffix(why[0], ".") {
			t.Errorf("%s %s: %q, %v", c.id, c.values, why, r)
		}
	}
}

// A hanger's own mass is as good as a heavier mass.
func TestHangerAndRingAddToTheMass(t *testing.T) {
	parts := bankForm(t, "canal-lantern")
	fill(t, parts, []string{"m = 0.400 kg exact"}, nil)
	for kind, line := range map[Kind]string{Hanger: "m = 50 g div 1 g", Ring: "0.012 kg exact"} {
		if why := parts.Assign(kind, line); why != "" {
			t.Fatal(why)
		}
	}
	whole := bankForm(t, "canal-lantern")
	fill(t, whole, []string{"m = 0.462 kg div 1 g"}, nil)
	a, b := result(t, parts).Predicted[0], result(t, whole).Predicted[0]
	if math.Abs(a.Value-b.Value) > 1e-9 || math.Abs(a.U-b.U) > 1e-9 {
		t.Errorf("%v ± %v in parts, %v ± %v whole", a.Value, a.U, b.Value, b.U)
	}
	p, why := parts.Copy()
	if g, _ := p.System.Given("m"); why != "" || g.Number.Text != "0.462" {
		t.Errorf("the copy has m = %s %s", g.Number.Text, why)
	}
	if why := bankForm(t, "lab-ring").Assign(Ring, "12 g"); why != saidNoRing {
		t.Errorf("%q", why)
	}
}

// What is not set keeps the file's value, exact, and is named as assumed.
func TestAssumedValuesAreNamed(t *testing.T) {
	f := bankForm(t, "canal-lantern")
	fill(t, f, []string{"m = 0.5 kg ± 1 %"}, nil)
	lines := Style{}.Set(result(t, f).MeasuredBlocks())
	for _, want := range []string{"Assumed", "α = 35°, exact, from the problem", "g = 9.8 m/s², exact, the standard value"} {
		if !saidIn(lines, want) {
			t.Errorf("never said: %s", want)
		}
	}
}

// The JSON holds the same figures, in the units beside them.
func TestJSONHoldsTheRun(t *testing.T) {
	f := twoStrings(t, "30", "45")
	fill(t, f, nil, []string{"T1 = 3.7 N ± 0.05 N", "T2 = 4.4 N ± 0.05 N"})
	out, err := result(t, f).JSON()
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Problem   string
		Predicted map[string]struct {
			Value, U float64
			Unit     string
			Budget   []struct{ Input string }
		}
		Correlation map[string]map[string]float64
		Compared    []struct {
			Letter, Verdict string
			En              float64
		}
		Left     []struct{ Axis string }
		Cautions []string
	}
	if err := json.Unmarshal(out, &got); err != nil {
		t.Fatal(err)
	}
	t1 := got.Predicted["T1"]
	if math.Abs(t1.Value-3.590709) > 5e-7 || t1.Unit != "N" || t1.Budget[0].Input != "beta" ||
		math.Abs(got.Correlation["T1"]["T2"]-0.7498) > 5e-5 || got.Compared[0].Verdict != "differ" || len(got.Left) != 2 || len(got.Cautions) != 6 {
		t.Errorf("%s", out)
	}
}

// The same run says the same each time: the draws have a fixed seed.
func TestARunIsRepeatable(t *testing.T) {
	f := twoStrings(t, "30", "45")
	a, _ := result(t, f).JSON()
	b, _ := result(t, f).JSON()
	if string(a) != string(b) {
		t.Error("two runs of the same values differ")
	}
}
