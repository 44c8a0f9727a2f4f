// Inside the package: it gives leave to pass stages over without the lessons that earn it.

package tutor

import (
	"slices"
	"strings"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
)

// TestComponentsArePassedOverOnceSteady works problems until the components are steady,
// and then goes from Forces to the sums.
func TestComponentsArePassedOverOnceSteady(t *testing.T) {
	d := seat(t, "")
	for n := range 12 {
		l, a := take(t, d)
		if stage, _, _ := l.InHand(); stage == checker.Diagram {
			if why, err := l.PassOver(); why == "" || err != nil {
				t.Fatal("Forces were passed over", err)
			}
			hand(t, l, answer(l, checker.Diagram, ""))
		}
		asked, _ := l.Ask()
		if !l.CanPassOver() {
			if why, err := l.PassOver(); why == "" || err != nil || strings.Contains(asked.Question, "Type “sums”") {
				t.Fatalf("%s: passed over after %d problems: %v", a.ID, n, err)
			}
			work(t, l)
			continue
		}
		if n < 3 || !strings.Contains(asked.Question, "Type “sums”") {
			t.Fatalf("%s: it may be passed over after %d problems: %q", a.ID, n, asked.Question)
		}
		if why, err := l.PassOver(); why != "" || err != nil {
			t.Fatal(why, err)
		}
		if stage, _, _ := l.InHand(); stage != checker.XSum && stage != checker.YSum || !l.StageDone(checker.Components) {
			t.Fatalf("in hand is %s", stage)
		}
		work(t, l)
		again, err := d.tutor.Review(l.attempt.Entries)
		if err != nil {
			t.Fatal(err)
		}
		for _, page := range []*Page{l.Page, again} {
			if p := page.Progress(); p.Status != RightFirst || p.Items != p.RightFirst || !page.Solved() {
				t.Errorf("%s, passed over, is %+v", a.ID, p)
			}
		}
		return
	}
	t.Fatal("the components never get steady")
}

// A page that was passed from Forces to the sums is judged no harder: two misses are
// as many as with the components written.
func TestPassingOverIsJudgedNoHarder(t *testing.T) {
	for _, passed := range []bool{false, true} {
		l := open(t, seat(t, ""), "canal-lantern")
		handIn(t, l, lantern[0])
		if passed {
			yes := true
			l.mayPass = &yes
			if why, err := l.PassOver(); why != "" || err != nil {
				t.Fatal(why, err)
			}
		} else {
			handIn(t, l, lantern[1:4]...)
		}
		hand(t, l, "T1 sin α = T2 sin β")
		handIn(t, l, lantern[4:6]...)
		hand(t, l, "T1 = 21.5 N")
		handIn(t, l, lantern[6])
		if p := l.Progress(); p.Status != RightFirst || p.Items-p.RightFirst != 2 {
			t.Errorf("passed %v: %+v", passed, p)
		}
	}
}

// TestAnyOrderAtTheHardestLevel writes a page from its end to its beginning.
func TestAnyOrderAtTheHardestLevel(t *testing.T) {
	d := seat(t, "")
	written := 0
	for _, h := range d.tutor.Bank.List() {
		if h.Level < anyOrder || written > 5 {
			continue
		}
		l := open(t, d, h.ID)
		if len(l.Ref.Bodies) > 1 {
			continue
		}
		written++
		stages := slices.Clone(checker.Stages)
		slices.Reverse(stages)
		for _, stage := range stages {
			for _, item := range l.asked(stage) {
				text := answer(l, stage, item)
				if stage == checker.Components && !strings.Contains(text, "=") {
					text = expr.Glyph(item) + " = " + text
				}
				if !slices.Contains(l.open(stage), item) {
					continue
				}
				if line := hand(t, l, text); line.Verdict != checker.Right || len(line.Done) == 0 || line.Done[0].Stage != stage {
					t.Errorf("%s: %s %s: %q is %s for %v", h.ID, stage, item, text, line.Verdict, line.Done)
				}
			}
		}
		if p := l.Progress(); p.Status != RightFirst {
			t.Errorf("%s is %+v", h.ID, p)
		}
	}
	if written < 4 {
		t.Fatalf("only %d pages were written", written)
	}
	// At an easier level the order is that of the stages.
	l := open(t, d, "canal-lantern")
	if line := hand(t, l, lantern[4]); line.Verdict == checker.Right {
		t.Error("a sum was taken in Forces")
	}
}

// TestLettersGiveNoForceAway wants no force among the letters in Forces that the problem
// does not name itself.
func TestLettersGiveNoForceAway(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	hidden := 0
	eachPage(t, func(g *Page) {
		list := strings.TrimSuffix(strings.TrimPrefix(g.Letters(), "Letters: "), ".")
		list, _, _ = strings.Cut(list, " (")
		letters := strings.Split(list, ", ")
		for _, b := range g.Problem.System.Bodies {
			for _, f := range b.Forces {
				_, given := g.Problem.System.Given(f.Name)
				if given || slices.Contains(g.Problem.System.Find, f.Name) {
					continue
				}
				hidden++
				if slices.Contains(letters, expr.Glyph(f.Name)) {
					t.Errorf("%s: %s is listed: %s", g.Problem.ID, f.Name, g.Letters())
				}
			}
		}
	})
	if hidden < 50 {
		t.Fatalf("only %d forces were looked for", hidden)
	}
}

// The first problem of all has a worked line of each kind beside it, about another
// problem and right there; the second has none.
func TestTheFirstProblemHasWorkedLines(t *testing.T) {
	d := seat(t, "")
	first, _ := take(t, d)
	for range 30 {
		stage, item, ok := first.InHand()
		if !ok {
			break
		}
		a, _ := first.Ask()
		if a.Sample != first.workedLine(stage) || strings.Contains(a.Sample, "{") {
			t.Errorf("%s: the sample is %q", stage, a.Sample)
		}
		hand(t, first, answer(first, stage, item))
	}
	second, _ := take(t, d)
	stage, _, _ := second.InHand()
	if a, _ := second.Ask(); a.Sample != second.sample(stage) {
		t.Errorf("the second problem has %q", a.Sample)
	}
}
