// Inside the package: it asks each kind of limit alone, without the lesson before it.

package tutor

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/problems"
)

// eachCopy calls f with a page of every problem of the bank, with the file's numbers and
// with those of ten students.
func eachCopy(t *testing.T, f func(g *Page)) {
	t.Helper()
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	eachPage(t, func(g *Page) {
		f(g)
		for i := range 10 {
			p, err := g.Problem.Draw(problems.Seed{Class: "kiln-4", Student: fmt.Sprintf("s%02d", i)})
			if err != nil {
				t.Fatal(err)
			}
			own, err := NewPage(p)
			if err != nil {
				t.Fatal(err)
			}
			f(own)
		}
	})
}

// TestPredictionsAreRight makes the question of every copy and finds the answer again
// with the solver.
func TestPredictionsAreRight(t *testing.T) {
	asked, right, made := map[string]int{}, map[int]int{}, map[string]bool{}
	eachCopy(t, func(g *Page) {
		p, ok := g.prediction()
		if !ok {
			return
		}
		made[g.Problem.ID] = true
		words := strings.Fields(p.ID)
		asked[words[0]]++
		right[p.Right]++
		if len(p.Choices) != 3 || p.Right < 0 || p.Right > 2 || !strings.Contains(p.Question, "?") {
			t.Errorf("%s: %+v", g.Problem.ID, p)
			return
		}
		x, y := solvedAgain(t, g, words)
		want := 2
		switch {
		case x > y*1.09:
			want = 0
		case y > x*1.09:
			want = 1
		case math.Abs(x-y) > 1e-6*x:
			t.Errorf("%s %s: %s asks about sizes that are nearly equal: %v, %v", g.Problem.ID, g.Problem.Copy, p.ID, x, y)
		}
		if p.Right != want {
			t.Errorf("%s %s: %s is %d, want %d: %v, %v", g.Problem.ID, g.Problem.Copy, p.ID, p.Right, want, x, y)
		}
	})
	t.Logf("problems with a prediction: %d; kinds %v; right choices %v", len(made), asked, right)
	if len(made) < 70 || len(asked) != 3 {
		t.Errorf("only %d problems have one, of %d kinds", len(made), len(asked))
	}
}

// solvedAgain finds the two sizes that a question compares, the first of them larger for
// the first choice.
func solvedAgain(t *testing.T, g *Page, words []string) (x, y float64) {
	t.Helper()
	x, _ = g.Ref.Value(words[1])
	y, _ = g.Ref.Value(words[2])
	if words[0] != "smaller" {
		return x, y
	}
	given, _ := g.Problem.System.Given(words[1])
	degrees := given.Value() / quantity.Degree
	ref, err := g.withAngle(words[1], degrees-min(turnedBy, degrees/2))
	if err != nil {
		t.Fatalf("%s: %s: %v", g.Problem.ID, words, err)
	}
	before, _ := g.Ref.Value(words[2])
	after, _ := ref.Value(words[2])
	return after, before
}

// TestLimitsAreRight makes the question after Solve of every copy and finds the answer
// again with the solver, closer to the end than it was made.
func TestLimitsAreRight(t *testing.T) {
	kinds, made := map[string]int{}, map[string]bool{}
	eachCopy(t, func(g *Page) {
		l, ok := g.limit()
		if !ok {
			return
		}
		made[g.Problem.ID] = true
		near := l.degrees + 0.002
		if l.degrees > 0 {
			near = l.degrees - 0.002
		}
		ref, err := g.withAngle(l.angle, near)
		if err != nil {
			t.Errorf("%s %s: %s: %v", g.Problem.ID, g.Problem.Copy, l.ID, err)
			return
		}
		x, _ := ref.Value(l.name)
		now, _ := g.Ref.Value(l.name)
		value := g.Ref.Unit(l.name).In(l.Value, 4)
		var wants []string
		switch {
		case l.Endless:
			kinds["endless"]++
			if x < 300*now {
				t.Errorf("%s: %s is %v, was %v", g.Problem.ID, l.ID, x, now)
			}
			wants = []string{"infinite", "It grows without bound.", "∞", l.name + " = infinite"}
		case l.Nothing:
			kinds["nothing"]++
			if x > 0.01*now {
				t.Errorf("%s: %s is %v, was %v", g.Problem.ID, l.ID, x, now)
			}
			wants = []string{"0", "zero", "0 N", l.name + " = 0"}
		default:
			kinds["value"]++
			if math.Abs(x-l.Value) > 2e-3*x {
				t.Errorf("%s: %s is %v, want %v", g.Problem.ID, l.ID, l.Value, x)
			}
			wants = []string{value, l.name + " = " + value}
		}
		for _, text := range wants {
			if right, read := l.judge(text); !right || !read {
				t.Errorf("%s %s: %s: %q is right %v, read %v", g.Problem.ID, g.Problem.Copy, l.ID, text, right, read)
			}
		}
		wrong := []string{"infinite", "0", g.Ref.Unit(l.name).In(1.1*x+now, 3)}
		for _, text := range wrong {
			if slices.Contains(wants, text) {
				continue
			}
			if right, _ := l.judge(text); right {
				t.Errorf("%s: %s: %q is taken as right", g.Problem.ID, l.ID, text)
			}
		}
	})
	t.Logf("problems with a limit: %d; kinds %v", len(made), kinds)
	if len(made) < 40 || len(kinds) != 3 {
		t.Errorf("only %d problems have one, of %d kinds", len(made), len(kinds))
	}
}

// A limit is judged in letters, too.
func TestLimitsInLetters(t *testing.T) {
	g, err := NewPage(problemOf(t, "canal-lantern"))
	if err != nil {
		t.Fatal(err)
	}
	a := g.Angles()
	for _, c := range []struct {
		angle string
		end   float64
		name  string
		right []string
		wrong []string
	}{
		{"alpha", 90, "T1", []string{"w", "m g", "T1 = w", "31.4 N"}, []string{"w/2", "w sin β", "infinite", "0", "T2"}},
		{"alpha", 90, "T2", []string{"0", "zero"}, []string{"w", "infinite"}},
		{"alpha", 0, "T1", []string{"w/tan β", "w cos β/sin β"}, []string{"w", "w tan β", "0"}},
		{"alpha", 0, "T2", []string{"w/sin β"}, []string{"w sin β", "infinite"}},
	} {
		k, _ := a.Slider(c.angle)
		all := g.limitsAt(a, a.sliders[k], c.end)
		i := slices.IndexFunc(all, func(l Limit) bool { return l.name == c.name })
		if i < 0 {
			t.Errorf("%s at %v has no limit for %s", c.angle, c.end, c.name)
			continue
		}
		for _, text := range c.right {
			if right, read := all[i].judge(text); !right || !read {
				t.Errorf("%s → %v: %s = %q is right %v, read %v", c.angle, c.end, c.name, text, right, read)
			}
		}
		for _, text := range c.wrong {
			if right, _ := all[i].judge(text); right {
				t.Errorf("%s → %v: %s = %q is taken as right", c.angle, c.end, c.name, text)
			}
		}
	}
}

// TestPredictionIsKeptAndCompared goes through a lesson with a prediction and the
// question after Solve.
func TestPredictionIsKeptAndCompared(t *testing.T) {
	l := open(t, seat(t, ""), "canal-lantern")
	handIn(t, l, lantern[:4]...)
	p, ok := l.Predict()
	a, _ := l.Ask()
	if !ok || !strings.Contains(a.Question, p.Question) {
		t.Fatalf("%v, asked is %q", ok, a.Question)
	}
	wrong := (p.Right + 1) % 3
	r, err := l.Check(fmt.Sprint(wrong + 1))
	if err != nil || r.Said == "" || r.Line.Kind != Guessed {
		t.Fatalf("%+v, %v", r, err)
	}
	if _, again := l.Predict(); again {
		t.Fatal("it is asked again")
	}
	handIn(t, l, lantern[4:]...)
	if p := l.Progress(); p.Status != RightFirst || p.Refused != 0 || p.Lines != len(lantern) {
		t.Errorf("the prediction counts: %+v", p)
	}
	if said := l.SaidPrediction(); !strings.Contains(said, p.Choices[wrong].Said) || !strings.Contains(said, p.Choices[p.Right].Said) {
		t.Errorf("it says %q", said)
	}
	q, ok := l.Limit()
	if !ok {
		t.Fatal("nothing is asked after Solve")
	}
	if r, err := l.Check("((("); err != nil || r.Line != nil || r.Said == "" {
		t.Fatalf("%+v, %v", r, err)
	}
	if r, err := l.Check("12345 N"); err != nil || r.Line.Kind != Limited || !strings.Contains(r.Said, q.angle[:0]) {
		t.Fatalf("%+v, %v", r, err)
	}
	again, err := l.desk.tutor.Review(l.attempt.Entries)
	if err != nil || again.SaidPrediction() != l.SaidPrediction() {
		t.Errorf("what is kept says %q, %v", again.SaidPrediction(), err)
	}
	if _, ok := again.Limit(); ok {
		t.Error("the question is asked again")
	}
	if p := again.Progress(); p.Status != RightFirst || p.Lines != len(lantern) {
		t.Errorf("the answer counts: %+v", p)
	}
}

// What is no choice passes the prediction over and is judged; where the class requires
// one, it is not taken; where it wants none, none is asked.
func TestPredictionsByClass(t *testing.T) {
	for questions, want := range map[Questions]struct{ asked, taken bool }{
		QuestionsAsked: {true, true}, QuestionsOff: {false, true}, QuestionsRequired: {true, false},
	} {
		d := seat(t, "")
		d.tutor.Class.Predictions, d.tutor.Class.Limits = questions, questions
		l := open(t, d, "canal-lantern")
		handIn(t, l, lantern[:4]...)
		if _, asked := l.Predict(); asked != want.asked {
			t.Errorf("%d: asked is %v", questions, asked)
		}
		r, err := l.Check(lantern[4])
		if err != nil || (r.Line != nil && r.Line.Verdict == checker.Right) != want.taken || want.taken != (r.Said == "") {
			t.Errorf("%d: %+v, %v", questions, r, err)
		}
		if _, asked := l.Predict(); asked != !want.taken {
			t.Errorf("%d: asked again is %v", questions, asked)
		}
	}
}
