// Inside the package: robust_test.go uses its scenes.

package picture

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the golden pictures")

// sizes are the canvases that the screens use most.
var sizes = [][2]int{{38, 12}, {48, 16}, {76, 20}}

// TestGoldenPictures compares every scene in every form with its file. Read the
// difference before rewriting: it is the picture that a student gets.
func TestGoldenPictures(t *testing.T) {
	for _, e := range examples() {
		t.Run(e.name, func(t *testing.T) {
			golden(t, e.name+".txt", portrait(e.scene))
			golden(t, e.name+".svg", SVG(e.scene, 480, 320))
		})
	}
}

// portrait is all text forms of a scene, one after the other.
func portrait(s Scene) string {
	var b strings.Builder
	for _, size := range sizes {
		fmt.Fprintf(&b, "== braille %d × %d\n%s\n", size[0], size[1], framed(Braille(s, size[0], size[1])))
	}
	for _, size := range sizes[:2] {
		fmt.Fprintf(&b, "== ascii %d × %d\n%s\n", size[0], size[1], framed(ASCII(s, size[0], size[1])))
	}
	fmt.Fprintf(&b, "== sentences\n%s\n", strings.Join(Sentences(s), "\n"))
	return b.String()
}

// framed shows where the lines of a canvas begin and how many there are.
func framed(c Canvas) string { return "|" + strings.Join(c.Lines(), "\n|") }

func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs; got:\n%s", file, got)
	}
}

// TestGoldenFilesAreUsed finds pictures that no scene makes any more.
func TestGoldenFilesAreUsed(t *testing.T) {
	made := map[string]bool{"directions.txt": true, "above.txt": true}
	for _, e := range examples() {
		made[e.name+".txt"], made[e.name+".svg"] = true, true
	}
	files, err := os.ReadDir("testdata")
	if err != nil || len(files) == 0 {
		t.Fatalf("no golden pictures: %v", err)
	}
	for _, f := range files {
		if !f.IsDir() && !made[f.Name()] {
			t.Errorf("testdata/%s belongs to no scene", f.Name())
		}
	}
}
