// Inside the package: it asks for one doubt at a time.

package tutor

import (
	"bufio"
	"os"
	"strings"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// TestRemarks reads testdata/remarks.txt: what is said beside the judgement.
func TestRemarks(t *testing.T) {
	file, err := os.Open("testdata/remarks.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var l *Lesson
	var said, want []string
	var typed string
	lines := 0
	compare := func() {
		for i, w := range want {
			if len(said) != len(want) || !strings.HasPrefix(said[i], w) {
				t.Errorf("%q: said %q, want %q", typed, said, want)
				break
			}
		}
		if len(said) != len(want) {
			t.Errorf("%q: said %q, want %q", typed, said, want)
		}
		said, want = nil, nil
	}
	for in := bufio.NewScanner(file); in.Scan(); {
		raw := in.Text()
		text, verdict, judged := strings.Cut(raw, " → ")
		id, isProblem := strings.CutPrefix(raw, "problem ")
		switch {
		case raw == "" || raw[0] == '#':
		case strings.HasPrefix(raw, "  "):
			want = append(want, strings.TrimPrefix(raw, "  "))
		case isProblem:
			compare()
			l = open(t, seat(t, ""), id)
		case judged:
			compare()
			lines++
			line := hand(t, l, text)
			typed, said = text, besides(line)
			if string(line.Verdict) != verdict {
				t.Errorf("%q is %s %s, want %s", text, line.Verdict, line.Code, verdict)
			}
		default:
			compare()
			tell(t, l, raw)
		}
	}
	compare()
	if lines < 20 {
		t.Fatalf("only %d lines were found", lines)
	}
}

// besides lists what is said beside the judgement.
func besides(l *Line) (said []string) {
	if l.Doubt != "" {
		said = append(said, "doubt "+l.Doubt)
	}
	for _, note := range l.Notes {
		said = append(said, "note "+note)
	}
	if l.OffersHint {
		said = append(said, "hint")
	}
	return said
}

// TestNoRightValueIsDoubted asks no question about a value that is right, in the
// whole bank.
func TestNoRightValueIsDoubted(t *testing.T) {
	eachPage(t, func(g *Page) {
		for _, name := range g.Problem.System.Find {
			value, ok := g.Ref.Value(name)
			if !ok {
				continue
			}
			r := checker.Report{Stage: checker.Solve, Answers: []string{name}, Text: name + " = " + g.Ref.Unit(name).In(value, 3)}
			if said := g.doubt(r); said != "" {
				t.Errorf("%s: %s: %s", g.Problem.ID, r.Text, said)
			}
		}
	})
}

// answered is the entry of an answer.
func answered(stage checker.Stage, item, text string) record.Entry {
	return record.Entry{Kind: record.Answer, Stage: string(stage), Item: item, Text: text}
}

// eachPage calls f with an empty page of every problem of the bank.
func eachPage(t *testing.T, f func(g *Page)) {
	t.Helper()
	list := problems.Embedded().List()
	if len(list) < 50 {
		t.Fatalf("the bank has %d problems", len(list))
	}
	for _, h := range list {
		g, err := NewPage(problemOf(t, h.ID))
		if err != nil {
			t.Fatal(err)
		}
		f(g)
	}
}

// A class without hints is told the place and no rule, and is pointed to no hint.
func TestAClassWithoutHintsIsToldThePlace(t *testing.T) {
	g, err := (&Class{Settings: Settings{NoHints: true}}).NewPage(problemOf(t, "canal-lantern"))
	if err != nil {
		t.Fatal(err)
	}
	for i, text := range []string{"T1x = T1 sin α", "T1y = T1 cos α", "T1x = T1 tan α", "T1x = w"} {
		line := g.Add(answered(checker.Components, "T1x", text))
		if line.OffersHint {
			t.Error("there is no hint to ask for")
		}
		if i == 1 && (len(line.Notes) != 1 || line.Notes[0] != "This is the same mistake as with T₁x.") {
			t.Errorf("it says %q", line.Notes)
		}
	}
}
