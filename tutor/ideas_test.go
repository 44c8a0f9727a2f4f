// Inside the package: it holds the table of what spoils an idea against the codes of the checker.

package tutor

import (
	"bufio"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/checker/statics"
	"example.org/standstill/problems"
)

// codesOfChecker finds every code in the sources of the checker.
func codesOfChecker(t *testing.T) []checker.Code {
	t.Helper()
	constant := regexp.MustCompile(`(?m)^\s*\w+\s+Code\s*=\s*"([a-z-]+)"`)
	found := map[checker.Code]bool{}
	err := filepath.WalkDir("../checker", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") {
			return err
		}
		text, err := os.ReadFile(path)
		for _, m := range constant.FindAllSubmatch(text, -1) {
			found[checker.Code(m[1])] = true
		}
		return err
	})
	if err != nil || len(found) < 30 {
		t.Fatalf("%d codes were found: %v", len(found), err)
	}
	var all []checker.Code
	for code := range found {
		all = append(all, code)
	}
	slices.Sort(all)
	return all
}

// TestEveryCodeHasAnIdea wants each code of the checker in the table, or among those
// that spoil no idea; not in both.
func TestEveryCodeHasAnIdea(t *testing.T) {
	for _, code := range codesOfChecker(t) {
		if spoilsOne := len(spoils[code]) > 0; spoilsOne == slices.Contains(spoilNone, code) {
			t.Errorf("%s: spoils an idea %v, none %v", code, spoilsOne, !spoilsOne)
		}
	}
}

// eachItem calls f for every item of every problem of the bank.
func eachItem(t *testing.T, f func(p *problems.Problem, stage checker.Stage, item string)) {
	t.Helper()
	list := problems.Embedded().List()
	if len(list) < 50 {
		t.Fatalf("the bank has %d problems", len(list))
	}
	for _, h := range list {
		p := problemOf(t, h.ID)
		g, err := NewPage(p)
		if err != nil {
			t.Fatal(err)
		}
		for _, stage := range checker.Stages {
			for _, item := range g.asked(stage) {
				f(p, stage, item)
			}
		}
	}
}

// TestEveryItemExercisesAnIdeaOfItsOwn wants more of each item than what every item
// of its stage has.
func TestEveryItemExercisesAnIdeaOfItsOwn(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	ofStage := []Idea{FindingForces, Solving, Units}
	eachItem(t, func(p *problems.Problem, stage checker.Stage, item string) {
		exercised := Exercised(p.System, stage, item)
		if !slices.ContainsFunc(exercised, func(i Idea) bool { return !slices.Contains(ofStage, i) }) {
			t.Errorf("%s: %s %s exercises only %v", p.ID, stage, item, exercised)
		}
		for _, i := range exercised {
			if !slices.Contains(ExercisedBy(p.System), i) {
				t.Errorf("%s: %s is exercised by %s %s and not by the problem", p.ID, i, stage, item)
			}
		}
	})
}

// TestEveryIdeaIsExercised wants each idea at several problems of the bank, and
// somewhere spoiled by a code.
func TestEveryIdeaIsExercised(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	count, spoiled := map[Idea]int{}, map[Idea]bool{}
	for _, h := range problems.Embedded().List() {
		for _, i := range ExercisedBy(problemOf(t, h.ID).System) {
			count[i]++
		}
	}
	codes := codesOfChecker(t)
	eachItem(t, func(p *problems.Problem, stage checker.Stage, item string) {
		for _, code := range codes {
			i := Spoiled(p.System, stage, item, code, "")
			spoiled[i] = true
			if i != "" && !slices.Contains(Exercised(p.System, stage, item), i) {
				t.Errorf("%s: %s at %s %s spoils %s, which the item does not exercise", p.ID, code, stage, item, i)
			}
		}
	})
	for _, i := range Ideas() {
		if count[i] < 3 || !spoiled[i] || i.Title() == string(i) {
			t.Errorf("%s (%s): exercised by %d problems, spoiled %v", i, i.Title(), count[i], spoiled[i])
		}
	}
}

// TestIdeaMap holds testdata/ideas.txt: which idea a mistake at an item is about.
func TestIdeaMap(t *testing.T) {
	file, err := os.Open("testdata/ideas.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var system *statics.System
	problems, lines := map[string]bool{}, 0
	for in := bufio.NewScanner(file); in.Scan(); {
		text := strings.TrimSpace(in.Text())
		if id, is := strings.CutPrefix(text, "problem "); is {
			system = problemOf(t, id).System
			problems[id] = true
			continue
		}
		if text == "" || text[0] == '#' {
			continue
		}
		lines++
		left, want, found := strings.Cut(text, " → ")
		f := strings.Fields(left)
		if !found || len(f) < 3 {
			t.Fatalf("%q cannot be read", text)
		}
		item, about := strings.TrimPrefix(f[1], "-"), ""
		if len(f) > 3 {
			about = f[3]
		}
		got := string(Spoiled(system, checker.Stage(f[0]), item, checker.Code(f[2]), about))
		if got == "" {
			got = "none"
		}
		if got != want {
			t.Errorf("%s spoils %q, want %q", left, got, want)
		}
	}
	if len(problems) < 10 || lines < 100 {
		t.Fatalf("only %d lines about %d problems were found", lines, len(problems))
	}
}
