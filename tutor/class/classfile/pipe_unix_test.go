//go:build unix

// Inside the package: it uses the files of read_test.go.

package classfile

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// A pipe in the place of a file is told, and not waited for.
func TestListsThatArePipes(t *testing.T) {
	folder := t.TempDir()
	for name, file := range rosterFolder("1.2") {
		if err := os.WriteFile(filepath.Join(folder, name), file.Data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	users := filepath.Join(folder, "users.csv")
	if err := os.Remove(users); err != nil {
		t.Fatal(err)
	}
	if err := syscall.Mkfifo(users, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := ReadList(folder, "c1"); err == nil || !strings.Contains(err.Error(), "users.csv") {
		t.Errorf("a folder with a pipe: %v", err)
	}
	if _, err := ReadList(users, ""); err == nil {
		t.Error("a pipe is taken for a list")
	}
}
