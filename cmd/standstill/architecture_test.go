package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const module = "example.org/standstill/"

// rooms is the table of packages, from the top down. A package may import what
// stands below it and nothing above; alone ones import no package of ours.
var rooms = []struct {
	path  string
	alone bool
}{
	{path: "cmd/standstill"},
	{path: "tutor/host"},
	{path: "tutor/screen"},
	{path: "tutor/screen/bench"},
	{path: "tutor/screen/views"},
	{path: "tutor/screen/frame"},
	{path: "tutor/screen/quiet", alone: true},
	{path: "tutor/plain"},
	{path: "tutor/class"},
	{path: "tutor/class/summary"},
	{path: "tutor/class/classfile"},
	{path: "tutor/bench"},
	{path: "tutor/sheet"},
	{path: "tutor/picture"},
	{path: "tutor"},
	{path: "tutor/record", alone: true},
	{path: "tutor/door"},
	{path: "problems"},
	{path: "problems/draw"},
	{path: "checker"},
	{path: "checker/diagram"},
	{path: "checker/mistake"},
	{path: "checker/trial"},
	{path: "checker/wording"},
	{path: "checker/derivation"},
	{path: "checker/solved"},
	{path: "checker/lines"},
	{path: "checker/statics"},
	{path: "tutor/bench/measure"},
	{path: "checker/expr"},
	{path: "checker/quantity"},
	{path: "checker/pattern", alone: true},
	{path: "checker/memory", alone: true},
}

// owners are the packages from outside that only one room may know, and those
// below it.
var owners = map[string]string{
	"github.com/charmbracelet/bubbletea": "tutor/screen",
	"github.com/charmbracelet/bubbles":   "tutor/screen",
	"github.com/charmbracelet/lipgloss":  "tutor/screen",
	"github.com/Knetic/govaluate":        "checker/expr",
	"database/sql":                       "tutor/record",
	"modernc.org/sqlite":                 "tutor/record",
	"github.com/jackc/pgx":               "tutor/record",
	"github.com/charmbracelet/wish":      "tutor/host",
	"github.com/charmbracelet/ssh":       "tutor/host",
	"golang.org/x/crypto/ssh":            "tutor/host",
	"github.com/spf13/cobra":             "cmd/standstill",
}

// TestArchitecture holds the table against the imports of every file.
func TestArchitecture(t *testing.T) {
	base := filepath.Join("..", "..")
	files := 0
	err := filepath.WalkDir(base, func(file string, entry fs.DirEntry, err error) error {
		name := entry.Name()
		switch {
		case err != nil:
			return err
		case entry.IsDir() && file != base && (name == "testdata" || strings.HasPrefix(name, ".") && name != ".."):
			return fs.SkipDir
		case entry.IsDir() || filepath.Ext(name) != ".go" || strings.HasSuffix(name, "_test.go"):
			return nil
		}
		files++
		relative, err := filepath.Rel(base, file)
		if err != nil {
			return err
		}
		for _, complaint := range complaints(t, filepath.ToSlash(relative), file) {
			t.Errorf("%s %s", filepath.ToSlash(relative), complaint)
		}
		return nil
	})
	if err != nil || files < 50 {
		t.Fatalf("%d files were read: %v", files, err)
	}
}

func placeOf(room string) int {
	for i, r := range rooms {
		if r.path == room {
			return i
		}
	}
	return -1
}

// complaints says what is wrong with the imports of one file.
func complaints(t *testing.T, relative, file string) []string {
	tree, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	room := path.Dir(relative)
	place := placeOf(room)
	if place < 0 {
		return []string{"is in a package that is not in the table of rooms"}
	}
	var wrong []string
	for _, spec := range tree.Imports {
		imported, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			t.Fatal(err)
		}
		if own, ours := strings.CutPrefix(imported, module); ours {
			below := placeOf(own)
			if below <= place || rooms[place].alone {
				wrong = append(wrong, "imports "+own+", which does not stand below "+room)
			}
			continue
		}
		for library, owner := range owners {
			if within(imported, library) && !within(room, owner) {
				wrong = append(wrong, "imports "+imported+", which only "+owner+" may know")
			}
		}
	}
	if room != "cmd/standstill" {
		wrong = append(wrong, reaches(tree)...)
	}
	return wrong
}

func within(name, folder string) bool { return name == folder || strings.HasPrefix(name, folder+"/") }

// reaches finds what only the command may touch: the standard streams, the command
// line, and the end of the process.
func reaches(tree *ast.File) []string {
	var wrong []string
	ast.Inspect(tree, func(n ast.Node) bool {
		selector, ok := n.(*ast.SelectorExpr)
		if !ok {
			return true
		}
		from, ok := selector.X.(*ast.Ident)
		if ok && from.Name == "os" && slices.Contains([]string{"Stdin", "Stdout", "Stderr", "Args", "Exit"}, selector.Sel.Name) {
			wrong = append(wrong, "uses os."+selector.Sel.Name+", which only cmd/standstill may")
		}
		return true
	})
	return wrong
}
