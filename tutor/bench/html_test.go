// Inside the package: it compares with the sentences of the package.

package bench

import (
	"encoding/xml"
	"io"
	"strings"
	"testing"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/picture"
)

const nasty = `<script>alert("x")</script>&'`

// wellFormed fails on a page that is no tree of elements, runs a script or asks the
// net for anything.
func wellFormed(t *testing.T, page []byte) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(strings.Replace(string(page), "<!DOCTYPE html>", "", 1)))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	for {
		token, err := d.Token()
		if err == io.EOF {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		e, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		if e.Name.Local == "script" || e.Name.Local == "link" || e.Name.Local == "img" {
			t.Errorf("the page holds <%s>", e.Name.Local)
		}
		for _, a := range e.Attr {
			if strings.HasPrefix(a.Name.Local, "on") || a.Name.Local == "src" || a.Name.Local == "href" {
				t.Errorf("<%s %s=%q>", e.Name.Local, a.Name.Local, a.Value)
			}
		}
	}
}

// Cautions stand before the first table of a sheet, every value has a row, and nothing
// of the answer is there.
func TestSheetOfEveryProblem(t *testing.T) {
	for _, h := range problems.Embedded().List() {
		f := bankForm(t, h.ID)
		page, err := Sheet(f)
		if err != nil {
			t.Fatal(err)
		}
		wellFormed(t, page)
		text := string(page)
		if at := strings.Index(text, "Masses can fall"); at < 0 || at > strings.Index(text, "<table") {
			t.Errorf("%s: no cautions on top", h.ID)
		}
		if strings.Contains(text, "{") && strings.Contains(f.Statement(), "{") {
			t.Errorf("%s: %s", h.ID, f.Statement())
		}
	}
}

func TestReportHoldsEverythingAndEscapesIt(t *testing.T) {
	var computed []Computed
	for i, alpha := range []string{"30", "40"} {
		f := twoStrings(t, alpha, "45")
		fill(t, f, nil, []string{"T1 = 3.6 N ± 0.05 N", "T2 = 4.4 N ± 0.05 N"})
		computed = append(computed, Computed{Number: i + 1, Result: result(t, f)})
	}
	computed[1].Warnings = append(computed[1].Warnings, nasty)
	computed[0].About = About{Students: []string{nasty}, When: nasty}
	page, err := Report(computed, nasty)
	if err != nil {
		t.Fatal(err)
	}
	wellFormed(t, page)
	text := string(page)
	for _, want := range []string{"Masses can fall", "Uncertainty budget of T₁", "Correlation", "Compared", "Sums of the measured forces", "Runs side by side", "<svg", "T1 of run 2", "half-width 0.5°"} {
		if !strings.Contains(text, want) {
			t.Errorf("the report lacks %s", want)
		}
	}
	if strings.Count(text, "<svg") != 5 || strings.Contains(text, nasty) {
		t.Errorf("%d drawings; escaped: %v", strings.Count(text, "<svg"), !strings.Contains(text, nasty))
	}
}

// A plot goes by the angle that differs between the runs, follows the closed form, and
// carries each reading with bars of its expanded uncertainty.
func TestPlotFollowsTheSums(t *testing.T) {
	var computed []Computed
	for i, beta := range []string{"35", "55"} {
		f := twoStrings(t, "30", beta)
		fill(t, f, nil, []string{"T1 = 3.6 N ± 0.05 N"})
		computed = append(computed, Computed{Number: i + 1, Result: result(t, f)})
	}
	scene, notes, why := Plot(computed, "")
	if why != "" || len(notes) > 0 || scene.Plot.X.Name != "β" {
		t.Fatalf("%s %v, against %s", why, notes, scene.Plot.X.Name)
	}
	for _, p := range scene.Plot.Curves[0].Points {
		want := closedForm(0.5, 30*degree, p.X*degree)[0]
		if diff := p.Y - want; diff > 1e-9 || diff < -1e-9 {
			t.Fatalf("T1 = %v at β = %v, by hand %v", p.Y, p.X, want)
		}
	}
	if m := scene.Plot.Measured; len(m) != 2 || m[0].At.X != 35 || m[0].At.Y != 3.6 || m[0].U.Y < 0.0577 || m[0].U.Y > 0.0578 {
		t.Errorf("%+v", m)
	}
	if canvas := picture.Braille(scene, 78, 20).String(); !strings.Contains(canvas, "β / °") {
		t.Error(canvas)
	}
	if _, _, why = Plot(computed, "T1"); !strings.Contains(why, "The equations predict ") {
		t.Errorf("%q", why)
	}
	if _, notes, _ = Plot(computed, "alpha"); len(notes) != 1 || !strings.Contains(notes[0], "Run 1 was made with β = 35") {
		t.Errorf("%q", notes)
	}
}

const degree = 3.14159265358979323846 / 180

func TestRunsSideBySide(t *testing.T) {
	var computed []Computed
	for i, alpha := range []string{"30", "40"} {
		f := twoStrings(t, alpha, "45")
		fill(t, f, nil, []string{"T1 = 3.6 N ± 0.05 N"})
		computed = append(computed, Computed{Number: i + 3, Result: result(t, f)})
	}
	blocks, why := Compare(computed)
	if why != "" {
		t.Fatal(why)
	}
	lines := strings.Join(Style{Plain: true}.Set(blocks), "\n")
	for _, want := range []string{"α, run 3 30.00°, u 0.29, run 4 40.00°, u 0.29", "T₁ predicted, run 3 3.591 N, u 0.031", "changed by 0.000 N (U = 0.082 N), and the prediction changed by −0.109 N"} {
		if !strings.Contains(lines, want) {
			t.Errorf("never said: %s in\n%s", want, lines)
		}
	}
	other := Computed{Number: 9, Result: result(t, bankForm(t, "banner-ring"))}
	if _, why = Compare(append(computed, other)); !strings.Contains(why, "Run 3 belongs to canal-lantern, but run 9 belongs to banner-ring") {
		t.Errorf("%q", why)
	}
	if _, why = Compare(computed[:1]); why != saidTwoRuns {
		t.Errorf("%q", why)
	}
	// Nothing can be compared by typing numbers where there is only one run.
	if _, why = NewSeries(computed[:1]); why != saidShortSeries {
		t.Errorf("%q", why)
	}
}
