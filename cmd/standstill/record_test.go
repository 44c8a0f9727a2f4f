package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// spoiled makes a record with something in it, then changes its bytes.
func spoiled(t *testing.T, spoil func([]byte) []byte) (path string, content []byte) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "record.db")
	if code, _, stderr := inProcess(t, "Nele\nT1 up left\nleave\n", "--plain", "--record", path); code != exitFine {
		t.Fatal(stderr)
	}
	content, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	content = spoil(content)
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
	return path, content
}

// TestRecordThatCannotBeUsed goes on without a record that is newer or damaged, and
// leaves the file as it is.
func TestRecordThatCannotBeUsed(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func([]byte) []byte
		said  string
	}{
		// The format of SQLite files keeps the version of the tables in bytes 60 to 63.
		"newer":     {func(b []byte) []byte { b[62] = 9; return b }, "was written by a newer version of this program"},
		"truncated": {func(b []byte) []byte { return b[:len(b)/2] }, "is damaged"},
		"scribbled": {func(b []byte) []byte { copy(b[4096:], bytes.Repeat([]byte("?"), 64)); return b }, "is damaged"},
	} {
		t.Run(name, func(t *testing.T) {
			path, before := spoiled(t, c.spoil)
			code, stdout, stderr := inProcess(t, "yes\nNele\nleave\n", "--plain", "--record", path)
			if code != exitFine || stderr != "" || !strings.Contains(stdout, c.said) || !strings.Contains(stdout, "nothing is saved") {
				t.Fatalf("%d, %s%s", code, stdout, stderr)
			}
			if code, _, stderr := inProcess(t, "", "record", "--record", path); code != exitFound || !strings.Contains(stderr, c.said) {
				t.Fatalf("%d, %s", code, stderr)
			}
			if after, err := os.ReadFile(path); err != nil || !bytes.Equal(before, after) {
				t.Fatal("the file was changed", err)
			}
		})
	}
}

func TestRecordInAPlaceThatCannotBe(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, []byte("x"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{filepath.Join(file, "record.db"), t.TempDir()} {
		code, stdout, _ := inProcess(t, "yes\nNele\nT1 up left\n", "--plain", "--record", path)
		if code != exitFine || !strings.Contains(stdout, "Notice: The record") || !strings.Contains(stdout, "End: nothing was saved") {
			t.Fatalf("%d, %s", code, stdout)
		}
	}
}
