// Inside the package: it uses the steps of lesson_test.go.

package tutor

import (
	"bufio"
	"os"
	"strings"
	"testing"

	"example.org/standstill/checker"
)

// TestPages reads testdata/pages.txt: how lines are taken for items, and what is in
// hand after each.
func TestPages(t *testing.T) {
	file, err := os.Open("testdata/pages.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var l *Lesson
	lines, number := 0, 0
	for in := bufio.NewScanner(file); in.Scan(); {
		number++
		text := in.Text()
		switch {
		case strings.TrimSpace(text) == "" || strings.HasPrefix(text, "#"):
		case strings.HasPrefix(text, "problem "):
			l = open(t, seat(t, ""), strings.TrimPrefix(text, "problem "))
		default:
			lines++
			typed, want, found := strings.Cut(text, "→")
			if !found {
				t.Fatalf("line %d has no arrow", number)
			}
			checkPageLine(t, number, l, strings.TrimSpace(typed), strings.TrimSpace(want))
		}
	}
	if lines < 20 {
		t.Fatalf("only %d lines were found", lines)
	}
}

// checkPageLine hands in a line and wants "VERDICT STAGE ITEM".
func checkPageLine(t *testing.T, number int, l *Lesson, typed, want string) {
	t.Helper()
	var verdict checker.Verdict
	if stage, _, _ := l.InHand(); typed == "keep" {
		r, err := l.Dispute()
		if err != nil || r.Line == nil {
			t.Fatal(number, "nothing was kept", err)
		}
		verdict = "kept"
	} else if item, named := l.Named(stage, typed); named && l.Choose(item) {
		verdict = "chosen"
	} else {
		r, err := l.Check(typed)
		if err != nil {
			t.Fatal(err)
		}
		verdict = r.Line.Verdict
	}
	stage, item, open := l.InHand()
	got := strings.TrimSpace(string(verdict) + " " + string(stage) + " " + item)
	if !open {
		got = string(verdict) + " over"
	}
	if got != want {
		t.Errorf("line %d: %q becomes %q, want %q", number, typed, got, want)
	}
}
