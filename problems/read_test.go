package problems

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
)

var update = flag.Bool("update", false, "rewrite what the tests expect")

// TestBroken holds every sentence that is said of a broken file, with its place
// and its caret line. Each archive has pairs of a file and what is said of it.
func TestBroken(t *testing.T) {
	archives, err := filepath.Glob("testdata/broken/*.txtar")
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
			broken, said := a.Files[i], &a.Files[i+1]
			got := report(t, broken.Data)
			if *update {
				said.Data = []byte(got)
			} else if got != string(said.Data) {
				t.Errorf("%s: %s\ngot:\n%swant:\n%s", name, broken.Name, got, said.Data)
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
	var b strings.Builder
	for _, f := range found {
		b.WriteString(f.String() + "\n")
		if excerpt := f.Excerpt(); excerpt != "" {
			b.WriteString(excerpt + "\n")
		}
	}
	return b.String()
}
