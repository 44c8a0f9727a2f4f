package checker_test

import (
	"slices"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
)

// TestJudgementIsFreeOfWhatWasAskedBefore asks two references of each problem with several
// bodies about the same lines, the second one backwards: what is made once and used again
// must not carry over from one body to another.
func TestJudgementIsFreeOfWhatWasAskedBefore(t *testing.T) {
	compared, wrong := 0, 0
	for _, h := range problems.Embedded().List() {
		p, err := problems.Embedded().Get(h.ID)
		if err != nil {
			t.Fatal(err)
		}
		if len(p.System.Bodies) < 2 {
			continue
		}
		there, back := fresh(t, p), fresh(t, p)
		asked := everyPair(p)
		first := make([]checker.Report, len(asked))
		for i, a := range asked {
			first[i] = there.Mark(a, nil)
		}
		for i, a := range slices.Backward(asked) {
			again := back.Mark(a, nil)
			compared++
			if again.Verdict == checker.Wrong {
				wrong++
			}
			if again.Verdict != first[i].Verdict || again.Code != first[i].Code || again.About != first[i].About || again.Message != first[i].Message {
				t.Errorf("%s, %s %s: %q is %s %s %q, and asked in another order %s %s %q", h.ID, a.Stage, a.Item, a.Text,
					first[i].Verdict, first[i].Code, first[i].About, again.Verdict, again.Code, again.About)
			}
		}
	}
	if compared < 500 || wrong < 300 {
		t.Errorf("only %d lines, %d of them wrong", compared, wrong)
	}
}

func fresh(t *testing.T, p *problems.Problem) *checker.Reference {
	t.Helper()
	r, err := checker.New(p.System)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// everyPair sets each force of a problem equal to each other one, in every sum of every
// body.
func everyPair(p *problems.Problem) (asked []checker.Answer) {
	var names []string
	for _, b := range p.System.Bodies {
		for _, f := range b.Forces {
			if !slices.Contains(names, f.Name) {
				names = append(names, f.Name)
			}
		}
	}
	for _, b := range p.System.Bodies {
		for _, stage := range []checker.Stage{checker.XSum, checker.YSum} {
			for i, one := range names {
				for _, other := range names[i+1:] {
					asked = append(asked, checker.Answer{Stage: stage, Item: b.Name, Text: one + " = " + other})
				}
			}
		}
	}
	return asked
}
