// Inside the package: it reads the embedded files one by one, with their warnings.

package problems

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
)

var update = flag.Bool("update", false, "rewrite what the tests expect")

// TestBroken holds every sentence that is said of a broken file, with its place
// and its caret line. Each archive has pairs of a file and what is said of it.
func TestBroken(t *testing.T) { pairs(t, "testdata/broken/*.txtar", report) }

// pairs goes through archives of a file and what is said of it.
func pairs(t *testing.T, pattern string, say func(*testing.T, []byte) string) {
	t.Helper()
	archives, err := filepath.Glob(pattern)
	if err != nil || len(archives) == 0 {
		t.Fatalf("no archives: %v", err)
	}
	for _, name := range archives {
		a, err := txtar.ParseFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if len(a.Files) == 0 || len(a.Files)%2 != 0 {
			t.Fatalf("%s: a file and what is said of it must come in pairs", name)
		}
		for i := 0; i < len(a.Files); i += 2 {
			file, said := a.Files[i], &a.Files[i+1]
			got := say(t, file.Data)
			if *update {
				said.Data = []byte(got)
			} else if got != string(said.Data) {
				t.Errorf("%s: %s\ngot:\n%swant:\n%s", name, file.Name, got, said.Data)
			}
		}
		if *update {
			if err := os.WriteFile(name, txtar.Format(a), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

func report(t *testing.T, data []byte) string {
	t.Helper()
	p, found := Read("quay.yaml", data)
	if p != nil || len(found) == 0 {
		t.Errorf("a broken file is read")
	}
	return printed(found)
}

func printed(found Findings) string {
	var b strings.Builder
	for _, f := range found {
		b.WriteString(f.String() + "\n")
		if excerpt := f.Excerpt(); excerpt != "" {
			b.WriteString(excerpt + "\n")
		}
	}
	return b.String()
}

// TestDoubtful holds every warning about a file that can be used. Each archive has pairs of a
// file and what is said of it; some files are right, and nothing is said of them.
func TestDoubtful(t *testing.T) {
	pairs(t, "testdata/doubtful/*.txtar", func(t *testing.T, data []byte) string {
		p, found := Read("quay.yaml", data)
		if p == nil {
			t.Fatalf("the file is refused: %v", found)
		}
		return printed(p.Warnings)
	})
}

// TestNoDoubtAboutTheBank holds that no problem of the bank is warned of.
func TestNoDoubtAboutTheBank(t *testing.T) {
	files, err := embedded.ReadDir("bank")
	if err != nil || len(files) == 0 {
		t.Fatalf("no files: %v", err)
	}
	for _, f := range files {
		data, err := embedded.ReadFile("bank/" + f.Name())
		if err != nil {
			t.Fatal(err)
		}
		// Without trying draws, which takes most of the time and says nothing here.
		r := &reader{name: f.Name()}
		if found := r.warnings(r.problem(data)); len(found) > 0 {
			t.Error(printed(found))
		}
	}
}

// TestHelpFilesCanBeUsed holds that the whole files in the help are right as they are printed.
func TestHelpFilesCanBeUsed(t *testing.T) {
	files := regexp.MustCompile(`(?m)^    id: .*\n(?:    .*\n)+`).FindAllString(FileHelp(), -1)
	if len(files) != 2 {
		t.Fatalf("the help has %d whole files", len(files))
	}
	for _, file := range files {
		p, found := Read("help", []byte(regexp.MustCompile(`(?m)^    `).ReplaceAllString(file, "")))
		if p == nil || len(p.Warnings) > 0 {
			t.Errorf("%v\n%s", found, file)
		}
	}
}
