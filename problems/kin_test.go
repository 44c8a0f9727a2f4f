package problems_test

import (
	"reflect"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
)

// TestCopiesShareNoNumbers judges the same lines for students with other numbers, one
// after the other, and again with a reference that shares nothing: what the copies of a
// problem remember together must not show.
func TestCopiesShareNoNumbers(t *testing.T) {
	bank, judged := problems.Embedded(), 0
	for _, h := range bank.List() {
		p, err := bank.Get(h.ID)
		if err != nil {
			t.Fatal(err)
		}
		var texts []checker.Answer
		for _, student := range []string{"ada", "ben"} {
			own, err := p.Draw(problems.Seed{Class: "kin", Student: student})
			if err != nil {
				t.Fatal(err)
			}
			shared, err := own.Reference()
			if err != nil {
				t.Fatal(err)
			}
			alone, err := checker.New(own.System)
			if err != nil {
				t.Fatal(err)
			}
			alone = alone.Watching(own.Watch)
			for _, step := range alone.Worked() {
				items := alone.Items(step.Stage)
				for i, line := range step.Lines {
					texts = append(texts, checker.Answer{Stage: step.Stage, Item: items[min(i, len(items)-1)], Text: line})
				}
			}
			for _, a := range texts { // the first student's numbers, too
				if got, want := shared.Mark(a, nil), alone.Mark(a, nil); !reflect.DeepEqual(got, want) {
					t.Fatalf("%s, %s: %q is judged\n%+v, alone\n%+v", h.ID, student, a.Text, got, want)
				}
				judged++
			}
		}
	}
	if judged < 1000 {
		t.Fatalf("%d lines were judged", judged)
	}
}
