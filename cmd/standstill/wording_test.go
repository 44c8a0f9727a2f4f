package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/spf13/cobra"
)

// retired is a wording that is not used any more.
type retired struct {
	pattern *regexp.Regexp
	instead string
	except  []string
}

func readRetired(t *testing.T) (all []retired) {
	t.Helper()
	data, err := os.ReadFile("testdata/retired.txt")
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(data)) {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		columns := strings.SplitN(line, " | ", 3)
		if len(columns) < 2 {
			t.Fatalf("%q has no replacement", line)
		}
		r := retired{pattern: regexp.MustCompile(strings.TrimSpace(columns[0])), instead: strings.Trim(columns[1], " |")}
		if len(columns) == 3 {
			r.except = strings.Fields(columns[2])
		}
		all = append(all, r)
	}
	if len(all) < 40 {
		t.Fatalf("only %d retired wordings", len(all))
	}
	return all
}

// Nothing that is read has a wording that was retired: the files of sentences, the bank, the
// help of commands, the README and the pages.
func TestNoRetiredWordingIsRead(t *testing.T) {
	read := everythingRead(t)
	if len(read) < 2000 {
		t.Fatalf("only %d texts", len(read))
	}
	for _, r := range readRetired(t) {
		for _, text := range read {
			if !slices.Contains(r.except, text.file) && r.pattern.MatchString(text.said) {
				t.Errorf("%s: %q has %q; write: %s", text.file, text.said, r.pattern, r.instead)
			}
		}
	}
}

// readText is a text that somebody reads, and where it is.
type readText struct{ file, said string }

var sentenceFile = regexp.MustCompile(`(words|sentences|hints)\.go$|checker/(mistake|wording)/\w+\.go$`)

func everythingRead(t *testing.T) (all []readText) {
	t.Helper()
	top := "../.."
	err := filepath.WalkDir(top, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".") && path != top) {
			return filepath.SkipDir
		}
		name := filepath.ToSlash(strings.TrimPrefix(path, top+string(filepath.Separator)))
		switch {
		case sentenceFile.MatchString(path):
			for _, said := range literals(t, path) {
				all = append(all, readText{name, said})
			}
		case name == "README.md", strings.HasSuffix(path, ".html"), strings.HasSuffix(path, ".yaml"), strings.HasSuffix(path, "help.txt"):
			data, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			for line := range strings.Lines(string(data)) {
				all = append(all, readText{name, strings.TrimSpace(line)})
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	eachCommand(root(&app{}), func(c *cobra.Command) {
		all = append(all, readText{c.CommandPath(), c.Short}, readText{c.CommandPath(), c.Long}, readText{c.CommandPath(), c.LocalFlags().FlagUsages()})
	})
	return all
}

// literals lists the texts of a file of sentences.
func literals(t *testing.T, path string) (all []string) {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	ast.Inspect(file, func(n ast.Node) bool {
		if one, ok := n.(*ast.BasicLit); ok && one.Kind == token.STRING {
			if said, err := strconv.Unquote(one.Value); err == nil {
				all = append(all, said)
			}
		}
		return true
	})
	return all
}
