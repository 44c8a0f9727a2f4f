// Inside the package: read_test.go uses it.

package classfile

import (
	"os"
	"path/filepath"
	"testing"
)

const classText = `
name: Physics 10b
code: harbour-2
students:
  - {id: s01, name: Ada Berg}
  - {id: s02, name: Ben Roos}
  - {id: s03, name: Cem Acar}
problems:
  - {problem: canal-lantern, due: 2030-03-09}
  - {problem: letter-scale}
`

// classFolder is a folder with a class file and the files named.
func classFolder(t *testing.T, classText string, files map[string]string) (classFile string) {
	t.Helper()
	dir := t.TempDir()
	files["class.yaml"] = classText
	for name, text := range files {
		path := filepath.Join(dir, name)
		must(t, os.MkdirAll(filepath.Dir(path), 0o755))
		must(t, os.WriteFile(path, []byte(text), 0o600))
	}
	return filepath.Join(dir, "class.yaml")
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func want(t *testing.T, what, got, want string) {
	t.Helper()
	if got != want {
		t.Errorf("%s is %q; want %q", what, got, want)
	}
}
