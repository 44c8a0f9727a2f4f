// Command notices writes the notices of everything that is linked into the program: for each
// target one file with the licence of every module that the target needs, and of Go itself.
//
//	go run ./.ci/notices FOLDER OS/PROCESSOR…           writes FOLDER/OS_PROCESSOR.txt
//	go run ./.ci/notices -holds NOTICES PROGRAM         is every module of a built program in a file?
//
// A module without a licence text, or with one of a kind that is not in the table of kinds,
// is an error: somebody has to read it first.
package main

import (
	"bytes"
	"debug/buildinfo"
	_ "embed"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
)

func main() {
	holds := flag.String("holds", "", "the `file` of notices that is held against a program")
	flag.Parse()
	run := func() error { return writeAll(flag.Arg(0), flag.Args()[1:]) }
	if *holds != "" {
		run = func() error { return heldAgainst(*holds, flag.Arg(0)) }
	}
	if flag.NArg() == 0 {
		flag.Usage()
		os.Exit(2)
	}
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// kinds are the kinds of licences that the program may hold, by words that each has. All let
// the program be given away under its own licence, if their text goes with it.
var kinds = []struct{ name, words string }{
	{"MIT", "Permission is hereby granted, free of charge, to any person obtaining a copy"},
	{"BSD", "Redistribution and use in source and binary forms, with or without modification, are permitted"},
	{"ISC", "Permission to use, copy, modify, and/or distribute this software for any purpose with or without fee"},
	{"Apache-2.0", "Apache License Version 2.0, January 2004"},
	{"public domain", "SQLite Is Public Domain"},
	{"patents", "Additional IP Rights Grant (Patents)"},
}

// noticeFile finds the files that have to go with a program.
var noticeFile = regexp.MustCompile(`(?i)^([a-z0-9]+-)?(licen[cs]es?|copying|copyright|notice|patents|unlicense)([-.].*)?$`)

// thirdParties finds folders in which a module has the notices of what it took over.
var thirdParties = regexp.MustCompile(`(?i)^(third.?party.*|licen[cs]es)$`)

//go:embed localereader.txt
var localereader string

// stated are the notices of modules that have no file of them, by path and version: a new
// version is to be looked into again.
var stated = map[string]string{"github.com/mattn/go-localereader v0.0.1": localereader}

// module is one that a target is made of.
type module struct {
	Path, Version, Dir string
	texts              []text
}

// text is one file of notices of a module.
type text struct{ name, kind, words string }

func writeAll(folder string, targets []string) error {
	if len(targets) == 0 {
		return errors.New("no target was named")
	}
	for _, target := range targets {
		modules, err := modulesOf(target)
		if err != nil {
			return fmt.Errorf("%s: %w", target, err)
		}
		if err := write(filepath.Join(folder, strings.ReplaceAll(target, "/", "_")+".txt"), modules); err != nil {
			return err
		}
		fmt.Printf("%s: %d modules\n", target, len(modules))
	}
	return nil
}

// modulesOf lists what a target is made of, by path, with Go itself in front.
func modulesOf(target string) ([]*module, error) {
	system, processor, _ := strings.Cut(target, "/")
	list := exec.Command("go", "list", "-deps", "-json=Dir,Standard,Module", "./cmd/standstill")
	list.Env = append(os.Environ(), "GOOS="+system, "GOARCH="+processor, "CGO_ENABLED=0")
	list.Stderr = os.Stderr
	out, err := list.Output()
	if err != nil {
		return nil, err
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, err
	}
	golang := &module{Path: "Go, the standard library and run time", Version: runtime.Version(), Dir: strings.TrimSpace(string(root))}
	found, folders, err := readList(out)
	if err != nil {
		return nil, err
	}
	slices.SortFunc(found, func(a, b *module) int { return strings.Compare(a.Path, b.Path) })
	found = append([]*module{golang}, found...)
	folders[golang.Path] = []string{golang.Dir}
	var missing []error
	for _, m := range found {
		missing = append(missing, m.read(folders[m.Path]))
	}
	return found, errors.Join(missing...)
}

// readList reads what go list printed: the modules of others, and the folders of the packages
// that are used of each.
func readList(out []byte) (found []*module, folders map[string][]string, err error) {
	folders = map[string][]string{}
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p struct {
			Dir      string
			Standard bool
			Module   *struct {
				Path, Version, Dir string
				Main               bool
			}
		}
		switch err := d.Decode(&p); {
		case err == io.EOF:
			return found, folders, nil
		case err != nil:
			return nil, nil, err
		case p.Standard || p.Module == nil || p.Module.Main:
			continue
		}
		if folders[p.Module.Path] == nil {
			found = append(found, &module{Path: p.Module.Path, Version: p.Module.Version, Dir: p.Module.Dir})
		}
		folders[p.Module.Path] = append(folders[p.Module.Path], p.Dir)
	}
}

// read finds the notices in the folder of the module, and in the folders of the packages that
// are used and those above them: code that was taken over has its own there.
func (m *module) read(used []string) error {
	seen := map[string]bool{}
	for _, folder := range append([]string{m.Dir}, used...) {
		for ; !seen[folder] && strings.HasPrefix(folder, m.Dir); folder = filepath.Dir(folder) {
			seen[folder] = true
			if err := m.readFolder(folder); err != nil {
				return err
			}
		}
	}
	if words, ok := stated[m.Path+" "+m.Version]; ok {
		m.add("licence", words)
	}
	slices.SortFunc(m.texts, func(a, b text) int { return strings.Compare(a.name, b.name) })
	if !slices.ContainsFunc(m.texts, func(t text) bool { return t.kind != "" && t.kind != "patents" }) {
		return fmt.Errorf("%s %s has no licence of a kind that is known: look into %s, and add the kind to the table if the program may hold it", m.Path, m.Version, m.Dir)
	}
	return nil
}

func (m *module) readFolder(folder string) error {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return err
	}
	for _, e := range entries {
		path := filepath.Join(folder, e.Name())
		inThird := folder != m.Dir && thirdParties.MatchString(filepath.Base(folder))
		switch {
		case e.IsDir() && folder == m.Dir && thirdParties.MatchString(e.Name()):
			err = m.readFolder(path)
		case e.Type().IsRegular() && (inThird || noticeFile.MatchString(e.Name())) && filepath.Ext(path) != ".go":
			err = m.readFile(path)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

func (m *module) readFile(path string) error {
	words, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	name, err := filepath.Rel(m.Dir, path)
	m.add(filepath.ToSlash(name), string(words))
	return err
}

func (m *module) add(name, words string) {
	m.texts = append(m.texts, text{name, kindOf(words), strings.TrimSpace(strings.ReplaceAll(words, "\r\n", "\n"))})
}

// kindOf finds the kind of a licence. Lines may be broken anywhere, and be a comment.
func kindOf(words string) string {
	plain := strings.Join(strings.Fields(strings.NewReplacer("*", " ", "#", " ").Replace(words)), " ")
	for _, k := range kinds {
		if strings.Contains(strings.ToLower(plain), strings.ToLower(k.words)) {
			return k.name
		}
	}
	return ""
}

const head = `Standstill is under the licence in the file LICENSE. The program also holds the work of others,
listed here with their licences.

`

func write(path string, modules []*module) error {
	var b strings.Builder
	b.WriteString(head)
	for _, m := range modules {
		var found []string
		for _, t := range m.texts {
			if t.kind != "" && !slices.Contains(found, t.kind) {
				found = append(found, t.kind)
			}
		}
		fmt.Fprintf(&b, "%s %s: %s\n", m.Path, m.Version, strings.Join(found, ", "))
	}
	for _, m := range modules {
		for _, t := range m.texts {
			fmt.Fprintf(&b, "\n%s\n%s %s, %s\n\n%s\n", strings.Repeat("-", 80), m.Path, m.Version, t.name, t.words)
		}
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		return err
	}
	return os.WriteFile(path, []byte(b.String()), 0o666)
}

// heldAgainst looks for every module that the linker says is in a program.
func heldAgainst(notices, program string) error {
	all, err := os.ReadFile(notices)
	if err != nil {
		return err
	}
	info, err := buildinfo.ReadFile(program)
	if err != nil {
		return err
	}
	var missing []error
	for _, m := range info.Deps {
		if m.Replace != nil {
			m = m.Replace
		}
		if !strings.Contains(string(all), "\n"+m.Path+" "+m.Version+": ") {
			missing = append(missing, fmt.Errorf("%s does not have %s %s, which is in %s", notices, m.Path, m.Version, program))
		}
	}
	if len(info.Deps) == 0 {
		missing = append(missing, fmt.Errorf("%s says of no module that it is in it", program))
	}
	return errors.Join(missing...)
}
