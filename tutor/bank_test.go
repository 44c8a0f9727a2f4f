// Inside the package: it asks for the hint that shows the step by the constant of the package.

package tutor

import (
	"slices"
	"strings"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/problems"
)

// answer is the right line for what is in hand: what the last hint shows, or the
// value of the unknown.
func answer(l *Lesson, stage checker.Stage, item string) string {
	if stage == checker.Solve {
		return valueLine(l, item)
	}
	shown := l.Ref.Hint(checker.Answer{Stage: stage, Item: item}, checker.Report{}, lastLevel)
	if _, line, found := strings.Cut(shown, ": "); found {
		shown = line
	}
	shown, _, _ = strings.Cut(shown, ", or ")
	return strings.TrimSuffix(shown, ".")
}

func valueLine(l *Lesson, unknown string) string {
	if l.IsFormula(unknown) {
		steps := l.Worked()
		lines := steps[len(steps)-1].Lines
		for _, part := range strings.Split(strings.TrimPrefix(lines[len(lines)-1], "Answer: "), "; ") {
			if left, right, found := strings.Cut(part, " = "); found && left == expr.Set(unknown) {
				return left + " = " + right[strings.LastIndex(right, "= ")+1:]
			}
		}
	}
	value, _ := l.Ref.Value(unknown)
	return expr.Glyph(unknown) + " = " + l.Ref.Unit(unknown).In(value, 4)
}

// work goes through a lesson to its end with right lines alone.
func work(t *testing.T, l *Lesson) {
	t.Helper()
	for range 200 {
		stage, item, open := l.InHand()
		if !open {
			return
		}
		text := answer(l, stage, item)
		r, err := l.Check(text)
		if err != nil {
			t.Fatal(err)
		}
		if r.Line.Verdict != checker.Right || stage != checker.Solve && !slices.Contains(r.Line.Done, Place{stage, item}) {
			t.Fatalf("%s, %s %q: %q is %s %s, done is %q: %s", l.Problem.ID, stage, item, text, r.Line.Verdict, r.Line.Code, r.Line.Done, r.Line.Message)
		}
	}
	t.Fatalf("%s does not come to its end", l.Problem.ID)
}

// TestEveryProblemCanBeWorked goes through each problem of the bank, as it stands
// and with other numbers.
func TestEveryProblemCanBeWorked(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	list := problems.Embedded().List()
	if len(list) == 0 {
		t.Fatal("the bank is empty")
	}
	d := seat(t, "")
	for _, h := range list {
		l := open(t, d, h.ID)
		t.Run(h.ID, func(t *testing.T) { work(t, l) })
		again, err := d.Again(h.ID)
		if err != nil {
			t.Error(h.ID, err)
			continue
		}
		t.Run(h.ID+" again", func(t *testing.T) { work(t, again) })
		if s := d.Progress(h.ID).Status; s != RightFirst {
			t.Errorf("%s is %v", h.ID, s)
		}
	}
}
