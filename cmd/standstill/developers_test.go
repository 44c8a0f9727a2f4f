package main

import (
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

func developersPage(t *testing.T) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// The page for developers lists the packages as the test of the imports does.
func TestPackagesAreListed(t *testing.T) {
	var listed, tested []string
	_, table, _ := strings.Cut(developersPage(t), "| --- |")
	table, _, _ = strings.Cut(table, "\n\n")
	for _, row := range regexp.MustCompile("(?m)^\\| `([^`]+)` \\|").FindAllStringSubmatch(table, -1) {
		listed = append(listed, row[1])
	}
	for _, room := range rooms {
		tested = append(tested, room.path)
	}
	if !slices.Equal(listed, tested) {
		t.Errorf("DEVELOPERS.md lists\n%s\nand the test\n%s", strings.Join(listed, "\n"), strings.Join(tested, "\n"))
	}
}

// The ways through the code that the page names are still there.
func TestWaysThroughTheCode(t *testing.T) {
	_, part, _ := strings.Cut(developersPage(t), "## Four ways through the code")
	part, _, _ = strings.Cut(part, "\n## ")
	ways := 0
	for line := range strings.Lines(part) {
		if !strings.HasPrefix(line, "- ") {
			continue
		}
		ways++
		folder, steps := "", strings.Split(line, " → ")
		for _, text := range steps {
			step := regexp.MustCompile("`([^`]+\\.go):(\\w+)`").FindStringSubmatch(text)
			if step == nil {
				t.Errorf("%q names no function", text)
				continue
			}
			if dir := path.Dir(step[1]); dir != "." {
				folder = dir
			}
			file := path.Join(folder, path.Base(step[1]))
			code, err := os.ReadFile(filepath.Join("..", "..", filepath.FromSlash(file)))
			if err != nil || !regexp.MustCompile(`(?m)^func (\([^)]*\) )?`+step[2]+`\(`).Match(code) {
				t.Errorf("%s has no function %s: %v", file, step[2], err)
			}
		}
		if len(steps) < 8 {
			t.Errorf("%q has only %d steps", line, len(steps))
		}
	}
	if ways != 4 {
		t.Errorf("there are %d ways", ways)
	}
}
