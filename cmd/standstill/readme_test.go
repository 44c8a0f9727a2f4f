package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// classLesson is what a student types: one line is refused and kept.
const classLesson = `ada
problems
canal-lantern
T1 up left; T2 up right; w down
T1x = T1 sin alpha
keep
`

// TestReadmeClassCommands runs the commands of README's section on a class as they stand,
// one after the other. Only D:\ is a folder here, FILE what was handed in, ENTRY the line
// that was kept; class watch is stopped once it shows somebody.
func TestReadmeClassCommands(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	_, section, _ := strings.Cut(string(text), "\n### A class\n\n")
	section, _, _ = strings.Cut(section, "\n\n")
	t.Chdir(t.TempDir())
	t.Setenv("STANDSTILL_DATA", t.TempDir())
	for _, err := range []error{os.WriteFile("list.csv", []byte("id,name\nada,Ada Berg\nben,Ben Roos\n"), 0o600), os.Mkdir("stick", 0o700)} {
		if err != nil {
			t.Fatal(err)
		}
	}
	ran := 0
	for _, line := range strings.Split(section, "\n") {
		command, _, _ := strings.Cut(strings.TrimPrefix(line, "    standstill "), "  ")
		input := ""
		switch {
		case strings.HasPrefix(command, "--class"):
			command, input = "--plain "+command, classLesson
		case strings.HasPrefix(command, "record forget"):
			input = "yes\n"
		}
		args := wordsOf(command)
		for i, arg := range args {
			switch arg {
			case `D:\`:
				args[i] = "stick"
			case "FILE":
				args[i] = onlyFile(t, "stick/*.jsonl")
			case "ENTRY":
				args[i] = regexp.MustCompile(`(?m)^([0-9a-f]{8})  Ada Berg, canal-lantern`).FindStringSubmatch(fine(t, "", "class", "report", "--class", "physics.yaml"))[1]
			}
		}
		if ran++; strings.HasPrefix(command, "class watch") {
			if code, out, errs := inProcessUntil(t, "Ada Berg", "", args...); !strings.Contains(out, "Ada Berg") || errs != "" {
				t.Errorf("%s ends with %d and shows %q, %q", command, code, out, errs)
			}
			continue
		}
		out := fine(t, input, args...)
		if strings.HasPrefix(command, "class show") && !strings.Contains(out, "T1x = T1 sin alpha") {
			t.Errorf("%s shows %q", command, out)
		}
	}
	if ran != 12 {
		t.Errorf("%d commands were found", ran)
	}
}

// wordsOf takes a command apart; quotes hold words together.
func wordsOf(command string) (words []string) {
	for _, word := range regexp.MustCompile(`'[^']*'|\S+`).FindAllString(command, -1) {
		words = append(words, strings.Trim(word, "'"))
	}
	return words
}

func onlyFile(t *testing.T, pattern string) string {
	t.Helper()
	files, err := filepath.Glob(pattern)
	if err != nil || len(files) != 1 {
		t.Fatal(pattern, files, err)
	}
	return files[0]
}

// TestReadmeBenchCommands runs the commands of README about the bench as they stand, one
// after the other: a report is of runs that the lines before it saved.
func TestReadmeBenchCommands(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	t.Setenv("STANDSTILL_DATA", t.TempDir())
	ran := 0
	for _, line := range regexp.MustCompile(`(?m)^    standstill (bench \S.*)$`).FindAllStringSubmatch(string(text), -1) {
		command, _, _ := strings.Cut(line[1], "  ")
		if out := fine(t, "", wordsOf(command)...); out == "" {
			t.Errorf("%s prints nothing", command)
		}
		ran++
	}
	if ran != 11 {
		t.Errorf("%d commands were found", ran)
	}
}
