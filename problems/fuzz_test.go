// Inside the package: it compares lines after the line ends are made alike.

package problems

import (
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/rogpeppe/go-internal/txtar"
)

// FuzzRead: whatever a file holds, reading ends in a problem that says its numbers
// or in findings that point into the file.
func FuzzRead(f *testing.F) {
	for _, p := range bank(f)[:10] {
		f.Add(p.Raw)
	}
	archives, err := filepath.Glob("testdata/broken/*.txtar")
	if err != nil || len(archives) == 0 {
		f.Fatalf("no archives: %v", err)
	}
	for _, name := range archives {
		a, err := txtar.ParseFile(name)
		if err != nil {
			f.Fatal(err)
		}
		for i := 0; i < len(a.Files); i += 2 {
			f.Add(a.Files[i].Data)
		}
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		p, found := Read("fuzz.yaml", data)
		if (p == nil) == (len(found) == 0) {
			t.Fatalf("a problem %v and %d findings", p != nil, len(found))
		}
		lines := strings.Split(string(normalNewlines(data)), "\n")
		for _, finding := range found {
			points(t, finding, lines)
		}
		if p != nil && strings.Contains(p.Statement(), "{}") {
			t.Fatalf("the statement is %q", p.Statement())
		}
	})
}

func points(t *testing.T, f Finding, lines []string) {
	text := f.String() + f.Excerpt()
	if f.What == "" || !utf8.ValidString(text) || strings.ContainsAny(text, "\x00\x1b") {
		t.Fatalf("said %q", text)
	}
	if f.Line == 0 && f.Column == 0 {
		return
	}
	if f.Line < 1 || f.Line > len(lines) || f.Column < 1 || f.Column > utf8.RuneCountInString(lines[f.Line-1])+1 {
		t.Fatalf("%s points out of the file", f)
	}
}
