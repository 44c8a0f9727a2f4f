// Inside the package: it counts the points of a curve.

package tutor

import (
	"math"
	"testing"

	"example.org/standstill/problems"
)

func angles(t *testing.T, id string) *Angles {
	t.Helper()
	p, err := problems.Embedded().Get(id)
	if err != nil {
		t.Fatal(err)
	}
	page, err := NewPage(p)
	if err != nil {
		t.Fatal(err)
	}
	a := page.Angles()
	if a == nil {
		t.Fatalf("nothing can be turned in %s", id)
	}
	return a
}

// T1 = w cos β / sin(α + β), for two strings at α and β above the horizontal.
func TestTurningTwoStringsFollowsTheSineRule(t *testing.T) {
	a := angles(t, "canal-lantern")
	slider, ok := a.Slider("α")
	if named, _ := a.Slider("alpha"); !ok || named != slider {
		t.Fatal("α is not to be found by its letter")
	}
	for _, steps := range []int{-10, -20, 40, 3} {
		if why := a.Slide(slider, steps); why != "" {
			t.Fatal(why)
		}
		alpha, beta := a.Sliders()[slider].Value*math.Pi/180, 50*math.Pi/180
		want := 3.2 * 9.8 * math.Cos(beta) / math.Sin(alpha+beta)
		if got := a.Readings()[0].Value; math.Abs(got-want) > 1e-9*want {
			t.Fatalf("at %v T1 is %v, want %v", a.Sliders()[slider], got, want)
		}
	}
	ref, err := a.Reference()
	if err != nil {
		t.Fatal(err)
	}
	if got, _ := ref.Value("T1"); math.Abs(got-a.Readings()[0].Value) > 1e-9*got {
		t.Fatalf("the turned reference has T1 = %v", got)
	}
}

func TestSlidersStopAtTheirEnds(t *testing.T) {
	a := angles(t, "canal-lantern")
	slider, _ := a.Slider("beta")
	if why := a.Set(slider, 90); why != "You can give β any value from 1° to 89°." {
		t.Fatalf("it says %q", why)
	}
	if why := a.Set(slider, math.NaN()); why == "" || a.Sliders()[slider].Value != 50 {
		t.Fatal("it turned to nothing")
	}
	if why := a.Slide(99, 1); why == "" {
		t.Fatal("there is no such slider")
	}
}

func TestStringsThatGetLevelAreNamed(t *testing.T) {
	a := angles(t, "banner-ring")
	slider, _ := a.Slider("theta")
	curves := a.Curves(slider)
	first, last := curves[0].Dots[0], curves[0].Dots[len(curves[0].Dots)-1]
	if first.X != 1 || math.Abs(last.X-89) > 1e-9 || first.Y < 10*last.Y {
		t.Fatalf("the curve goes from %v to %v", first, last)
	}
	if said := a.Remark(slider, curves); said != "As θ gets close to 1°, T1 grows to 730 N." {
		t.Fatalf("it says %q", said)
	}
}

// TestEveryProblemCanBeTurned turns every slider of every problem both ways: what
// comes out is at rest, or a sentence says why not.
func TestEveryProblemCanBeTurned(t *testing.T) {
	turnable := 0
	for _, h := range problems.Embedded().List() {
		p, err := problems.Embedded().Get(h.ID)
		if err != nil {
			t.Fatal(err)
		}
		page, err := NewPage(p)
		if err != nil {
			t.Fatal(err)
		}
		a := page.Angles()
		if a == nil {
			continue
		}
		turnable++
		for i, k := range a.Sliders() {
			for _, steps := range []int{1, -2, 1000} {
				a.Slide(i, steps)
			}
			for _, c := range a.Curves(i) {
				if len(c.Dots) != dots {
					t.Errorf("%s: the curve of %s over %s has %d dots", h.ID, c.Name, k.Name, len(c.Dots))
				}
			}
			for _, r := range a.Readings() {
				if math.IsNaN(r.Value) {
					t.Errorf("%s: %s has no value", h.ID, r.Name)
				}
			}
		}
	}
	if turnable < 20 {
		t.Fatalf("only %d problems can be turned", turnable)
	}
}

func BenchmarkTurnAndCurves(b *testing.B) {
	p, err := problems.Embedded().Get("canal-lantern")
	if err != nil {
		b.Fatal(err)
	}
	page, err := NewPage(p)
	if err != nil {
		b.Fatal(err)
	}
	a := page.Angles()
	for b.Loop() {
		a.Slide(1, 1)
		a.Slide(1, -1)
		a.Curves(1)
	}
}
