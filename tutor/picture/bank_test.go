package picture_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor/picture"
)

var redraw = flag.Bool("redraw", false, "rewrite the pictures of the bank; look at them afterwards")

// TestEveryProblemOfTheBankIsDrawn holds the picture of each problem at two sizes.
func TestEveryProblemOfTheBankIsDrawn(t *testing.T) {
	list := problems.Embedded().List()
	if len(list) < 60 {
		t.Fatalf("only %d problems", len(list))
	}
	for _, size := range [][2]int{{38, 12}, {60, 18}} {
		var b strings.Builder
		for _, h := range list {
			ref := reference(t, h.ID)
			for _, v := range []picture.View{{}, {Solved: true}} {
				fmt.Fprintf(&b, "== %s, solved: %v\n%s\n", h.ID, v.Solved, trimmed(picture.Braille(picture.OfProblem(ref, v), size[0], size[1]).Lines()))
			}
		}
		hold(t, fmt.Sprintf("bank-%dx%d.txt", size[0], size[1]), b.String())
	}
}

// reference solves a problem of the bank.
func reference(t *testing.T, id string) *checker.Reference {
	t.Helper()
	p, err := problems.Embedded().Get(id)
	if err != nil {
		t.Fatal(err)
	}
	ref, err := p.Reference()
	if err != nil {
		t.Fatal(err)
	}
	return ref
}

func trimmed(lines []string) string {
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return strings.Join(lines, "\n")
}

func hold(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", "bank", name)
	if *redraw {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	have, expected := strings.Split(got, "\n"), strings.Split(string(want), "\n")
	for i := range have {
		if i >= len(expected) || have[i] != expected[i] {
			t.Fatalf("%s:%d differs; look with -redraw:\n%s", name, i+1, have[i])
		}
	}
}

// TestAnglesFromLengthsGiveNothingAway wants no drawing to show the function that leads
// to an angle, and the solved one its size.
func TestAnglesFromLengthsGiveNothingAway(t *testing.T) {
	worked := 0
	for _, h := range problems.Embedded().List() {
		ref := reference(t, h.ID)
		open, solved := picture.OfProblem(ref, picture.View{}), picture.OfProblem(ref, picture.View{Solved: true})
		for i, a := range open.Angles {
			if strings.Contains(a.Name, "(") {
				t.Errorf("%s labels an angle %s", h.ID, a.Name)
			}
			if a.Name != "" {
				continue
			}
			worked++
			if size := solved.Angles[i].Name; !strings.HasSuffix(size, "°") {
				t.Errorf("%s labels an angle %q once it is solved", h.ID, size)
			}
		}
	}
	if worked == 0 {
		t.Fatal("no angle of the bank is worked out from lengths")
	}
}
