package picture_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/picture"
)

func setupOf(t *testing.T, id string) *picture.Setup {
	t.Helper()
	p, err := problems.Embedded().Get(id)
	if err != nil {
		t.Fatal(err)
	}
	return picture.NewSetup(reference(t, id), p.Figure)
}

// TestEverySetupOfTheBankIsDrawn holds the picture of each problem before its forces.
func TestEverySetupOfTheBankIsDrawn(t *testing.T) {
	for _, size := range [][2]int{{36, 12}, {60, 18}} {
		var b strings.Builder
		for _, h := range problems.Embedded().List() {
			s := setupOf(t, h.ID)
			if s == nil || len(s.Objects) == 0 {
				continue // the file wants no picture
			}
			c := picture.Braille(picture.Scene{Setup: s}, size[0], size[1])
			fmt.Fprintf(&b, "== %s\n%s\n", h.ID, "|"+strings.Join(c.Lines(), "\n|"))
		}
		hold(t, fmt.Sprintf("setup-%dx%d.txt", size[0], size[1]), b.String())
	}
}

// TestSetupsInWords holds what is said of each picture, and that no thing is said twice.
func TestSetupsInWords(t *testing.T) {
	var b strings.Builder
	for _, h := range problems.Embedded().List() {
		s := setupOf(t, h.ID)
		if s == nil || len(s.Objects) == 0 {
			continue // the file wants no picture
		}
		lines := picture.Sentences(picture.Scene{Setup: s})
		if len(lines) == 0 {
			t.Errorf("%s: nothing is said", h.ID)
		}
		seen := map[string]bool{}
		for _, line := range lines {
			if seen[line] && h.ID != "lock-block" && h.ID != "painter-seat" {
				t.Errorf("%s: said twice: %s", h.ID, line)
			}
			seen[line] = true
		}
		fmt.Fprintf(&b, "== %s\n%s\n", h.ID, strings.Join(lines, "\n"))
	}
	hold(t, "setup-words.txt", b.String())
}

// TestSetupsInPlainCharacters keeps every picture within seven bits.
func TestSetupsInPlainCharacters(t *testing.T) {
	var b strings.Builder
	for _, h := range problems.Embedded().List() {
		s := setupOf(t, h.ID)
		if s == nil || len(s.Objects) == 0 {
			continue // the file wants no picture
		}
		c := picture.ASCII(picture.Scene{Setup: s}, 36, 12)
		for _, line := range c.Lines() {
			for _, r := range line {
				if r > '~' {
					t.Errorf("%s: %q in %q", h.ID, r, line)
				}
			}
		}
		fmt.Fprintf(&b, "== %s\n%s\n", h.ID, "|"+strings.Join(c.Lines(), "\n|"))
	}
	hold(t, "setup-ascii.txt", b.String())
}
