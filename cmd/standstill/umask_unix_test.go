//go:build unix

package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"testing"
)

// Files for others have the rights that the account gives its files; a record is for its
// owner alone.
func TestRightsOfFiles(t *testing.T) {
	old := syscall.Umask(0o022)
	defer syscall.Umask(old)
	dir := t.TempDir()
	t.Setenv("STANDSTILL_DATA", filepath.Join(dir, "data"))
	at := func(name string) string { return filepath.Join(dir, name) }
	for _, c := range []struct {
		typed string
		args  []string
	}{
		{"", []string{"class", "new", at("class.yaml"), "--name", "Physics", "--students", "Ada, Ben", "--problem", "canal-lantern"}},
		{"Ada\nT1 up left; T2 up right; w down\nleave\n", []string{"--plain", "--class", at("class.yaml")}},
		{"", []string{"hand-in", dir, "--class", at("class.yaml")}},
		{"", []string{"class", "report", "--class", at("class.yaml"), "--html", at("report.html")}},
		{"", []string{"class", "report", "--class", at("class.yaml"), "--xapi", at("statements.jsonl")}},
		{"", []string{"class", "pack", at("packed.yaml"), "--class", at("class.yaml")}},
		{"", []string{"sheet", "--class", at("class.yaml"), "-o", at("sheet.html")}},
	} {
		if code, _, stderr := inProcess(t, c.typed, c.args...); code != exitFine {
			t.Fatalf("%q: %s", c.args, stderr)
		}
	}
	found := map[fs.FileMode]int{}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || !d.Type().IsRegular() {
			return err
		}
		info, err := os.Stat(path)
		if err != nil {
			return err
		}
		want := fs.FileMode(0o644)
		if kind := filepath.Ext(path); kind == ".db" || kind == ".db-journal" {
			want = 0o600
		}
		if info.Mode().Perm() != want {
			t.Errorf("%s has the rights %v, want %v", filepath.Base(path), info.Mode(), want)
		}
		found[want]++
		return nil
	})
	if err != nil || found[0o644] < 6 || found[0o600] == 0 {
		t.Errorf("%v, %v", found, err)
	}
}
