// Inside the package: its learners read the axis of an item as the grading does.

package tutor

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
)

// A learner works through lessons with one misconception. At each item that exercises
// it, what is typed first is what the misconception gives, until enough of them were
// refused; forgets says that it is back the next day.
type learner struct {
	name    string
	spoil   func(l *Lesson, stage checker.Stage, item string) string // "" where it changes nothing
	after   int                                                      // refusals until it is understood
	forgets bool
}

// learners are simulated students: careful, with one misconception each, guessing, and
// forgetting.
var learners = []learner{
	{name: "careful", spoil: func(*Lesson, checker.Stage, string) string { return "" }},
	{name: "always cosine for x", spoil: cosineForX, after: 4},
	{name: "always sine for x", spoil: sineForX, after: 4},
	{name: "every sign plus", spoil: everyPlus, after: 4},
	{name: "mass for weight", spoil: massForWeight, after: 4},
	{name: "normal force is the weight", spoil: normalIsWeight, after: 4},
	{name: "leaves the unit out", spoil: noUnit, after: 4},
	{name: "every sign plus, forgets", spoil: everyPlus, after: 3, forgets: true},
	{name: "always cosine for x, forgets", spoil: cosineForX, after: 3, forgets: true},
}

func swapped(l *Lesson, stage checker.Stage, item string, from statics.Axis) string {
	f, axis, ok := componentOf(l.Problem.System, item)
	if stage != checker.Components || !ok || !f.Slanted() || f.Direction != nil || f.From != from {
		return ""
	}
	function := "sin"
	if axis != from {
		function = "cos"
	}
	return fmt.Sprintf("%s = %s %s(%s)", expr.Glyph(item), expr.Glyph(f.Name), function, l.Ref.Print(f.Angle))
}

// cosineForX takes the cosine for x whatever the angle is measured from: wrong where
// that is the vertical.
func cosineForX(l *Lesson, stage checker.Stage, item string) string {
	return swapped(l, stage, item, statics.Y)
}

func sineForX(l *Lesson, stage checker.Stage, item string) string {
	return swapped(l, stage, item, statics.X)
}

func everyPlus(l *Lesson, stage checker.Stage, item string) string {
	if stage != checker.XSum && stage != checker.YSum {
		return ""
	}
	body, _ := l.Problem.System.Body(item)
	return l.guessedSums(body, axisOf(stage))[0]
}

func massForWeight(l *Lesson, stage checker.Stage, item string) string {
	f, axis, ok := componentOf(l.Problem.System, item)
	if stage != checker.Components || !ok || f.Kind != statics.Weight || f.Slanted() || f.Factor(axis).Sign == 0 || !l.Ref.Has("m") {
		return ""
	}
	return expr.Glyph(item) + " = -m"
}

func normalIsWeight(l *Lesson, stage checker.Stage, item string) string {
	f, axis, ok := componentOf(l.Problem.System, item)
	if stage != checker.Components || !ok || f.Kind != statics.Normal || f.Slanted() || f.Factor(axis).Sign == 0 || !l.Ref.Has("w") {
		return ""
	}
	return expr.Glyph(item) + " = w"
}

func noUnit(l *Lesson, stage checker.Stage, item string) string {
	if stage != checker.Solve || l.IsFormula(item) || l.Ref.Unit(item).Symbol == "" || l.Ref.Unit(item).Symbol == "deg" {
		return ""
	}
	text := answer(l, stage, item)
	return strings.TrimSpace(strings.TrimSuffix(text, l.Ref.Unit(item).Symbol))
}

// went is how a learner went through the problems.
type went struct {
	refused      int // lines with the misconception
	tried        int // problems until it was understood
	steady       int // problems until every idea that it spoils is steady again, 0 for never
	returns      int // problems that came back for an idea
	level        int
	firstGo      int // problems right first time
	mostRepeated int // refusals of the misconception in one problem
}

// study lets a learner take up what comes next, some problems on each of several days.
func (s *learner) study(t *testing.T, days, each int) (w went) {
	c := &clock{at: time.Date(2026, 3, 2, 16, 0, 0, 0, time.UTC)}
	d := seatAt(t, c)
	known, problem := 0, 0
	spoiled := map[Idea]bool{}
	for day := range days {
		if day > 0 {
			c.at = time.Date(2026, 3, 2+day*2, 16, 0, 0, 0, time.UTC)
		}
		if s.forgets && day > 0 && day < 3 {
			known = 0
		}
		for range each {
			problem++
			l, a := take(t, d)
			w.level = max(w.level, a.Level)
			if a.Returns {
				w.returns++
			}
			here := s.work(t, l, &known, spoiled)
			w.refused += here
			w.mostRepeated = max(w.mostRepeated, here)
			if here > 0 {
				w.tried, w.steady = problem, 0
			}
			if l.Progress().Status == RightFirst {
				w.firstGo++
			}
			if w.steady == 0 && allSteady(d.Past(), spoiled) {
				w.steady = problem
			}
		}
	}
	return w
}

func allSteady(p *Past, which map[Idea]bool) bool {
	for _, held := range p.Ideas() {
		if which[held.Idea] && held.State != Steady {
			return false
		}
	}
	return true
}

// work goes through a lesson; the misconception is typed first where it gives another
// line, until it is known. A learner reads: once the rule was said on this page, it is
// minded to its end.
func (s *learner) work(t *testing.T, l *Lesson, known *int, spoiled map[Idea]bool) (refused int) {
	told := false
	for range 200 {
		stage, item, open := l.InHand()
		if !open {
			return refused
		}
		if text := s.spoil(l, stage, item); text != "" && *known < s.after && !told {
			line := hand(t, l, text)
			if line.Verdict != checker.Right {
				refused++
				*known++
				told = len(line.Notes) > 0
				if i := Spoiled(l.Problem.System, stage, item, line.Code, line.About); i != "" {
					spoiled[i] = true
				}
			}
		}
		if now, same, _ := l.InHand(); now == stage && same == item {
			hand(t, l, answer(l, stage, item))
		}
	}
	t.Fatalf("%s does not come to its end", l.Problem.ID)
	return 0
}

// TestSimulatedLearners lets each work thirty problems, six on every second day, and
// says what they are led to.
func TestSimulatedLearners(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	t.Logf("%-30s refused  last at  steady after  came back  highest level  right first time  most in one", "learner")
	for i := range learners {
		s := &learners[i]
		w := s.study(t, 5, 6)
		t.Logf("%-30s %7d  %7d  %12d  %9d  %13d  %11d  %11d", s.name, w.refused, w.tried, w.steady, w.returns, w.level, w.firstGo, w.mostRepeated)
		if w.steady == 0 {
			t.Errorf("%s: what went wrong never gets steady", s.name)
		}
		if w.refused > 0 && w.returns == 0 {
			t.Errorf("%s: what went wrong never comes back", s.name)
		}
		if w.refused == 0 && w.returns > 0 {
			t.Errorf("%s: %d problems come back though nothing went wrong", s.name, w.returns)
		}
		if w.mostRepeated > 2 {
			t.Errorf("%s: refused %d times in one problem though the rule was said", s.name, w.mostRepeated)
		}
	}
}
