package tutor_test

import (
	"cmp"
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
)

var rewriteGrading = flag.Bool("grading", false, "rewrite the table of levels, items and ideas")

// grade is what the level of a problem is judged by.
type grade struct {
	problems.Heading
	items, bodies int
	ideas         []tutor.Idea
}

func grades(t *testing.T) []grade {
	t.Helper()
	var all []grade
	for _, h := range problems.Embedded().List() {
		p, err := problems.Embedded().Get(h.ID)
		if err != nil {
			t.Fatal(err)
		}
		r, err := checker.New(p.System)
		if err != nil {
			t.Fatalf("%s: %v", h.ID, err)
		}
		g := grade{Heading: h, bodies: len(p.System.Bodies), ideas: tutor.ExercisedBy(p.System)}
		for _, stage := range checker.Stages {
			g.items += len(r.Items(stage))
		}
		all = append(all, g)
	}
	slices.SortFunc(all, func(a, b grade) int {
		return cmp.Or(a.Level-b.Level, a.items-b.items, len(a.ideas)-len(b.ideas), cmp.Compare(a.ID, b.ID))
	})
	return all
}

// The bank is graded by the number of items and the ideas: an easy problem is short, has one body,
// and does not ask for friction and for components at once.
func TestEasyProblemsAreEasy(t *testing.T) {
	easy := 0
	for _, g := range grades(t) {
		if g.Level != 1 {
			continue
		}
		easy++
		slanted := slices.Contains(g.ideas, tutor.FromHorizontal) || slices.Contains(g.ideas, tutor.FromVertical)
		switch {
		case g.items > 14:
			t.Errorf("%s: %d items", g.ID, g.items)
		case g.bodies > 1:
			t.Errorf("%s: %d bodies", g.ID, g.bodies)
		case slanted && slices.Contains(g.ideas, tutor.FrictionForce):
			t.Errorf("%s: friction and a force at an angle", g.ID)
		}
	}
	if easy < 30 {
		t.Errorf("only %d easy problems", easy)
	}
}

// The table of the bank's grading, to be read as a whole when a level changes.
func TestGradingTable(t *testing.T) {
	var b strings.Builder
	b.WriteString("level  items  ideas  problem\n")
	for _, g := range grades(t) {
		fmt.Fprintf(&b, "%5d  %5d  %5d  %-20s %s\n", g.Level, g.items, len(g.ideas), g.ID, strings.Trim(fmt.Sprint(g.ideas), "[]"))
	}
	const file = "testdata/grading.txt"
	if *rewriteGrading {
		if err := os.WriteFile(file, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if b.String() != string(want) {
		t.Errorf("%s differs; rewrite it with -grading and read the difference", file)
	}
}
