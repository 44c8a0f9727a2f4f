package problems

import (
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"sync"

	"go.yaml.in/yaml/v4"

	"example.org/standstill/checker"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/problems/draw"
)

// Read reads one problem file. It returns either a problem or everything that is
// wrong with the file, in the order of its lines; name is the file's in the findings.
func Read(name string, data []byte) (*Problem, Findings) {
	r := &reader{name: name}
	d := r.problem(data)
	// Trying draws takes longest, and says nothing about a file that is wrong in itself.
	if len(r.found) == 0 {
		r.drawable(d)
	}
	if len(r.found) == 0 {
		d.Warnings = r.warnings(d)
	}
	return r.done(d)
}

// ReadSaved reads a file that a record or a hand-in has. It was accepted once, so what
// is refused only by later rules is let pass.
func ReadSaved(name string, data []byte) (*Problem, Findings) {
	r := &reader{name: name, kept: true}
	return r.done(r.problem(data))
}

// readTested reads a file of the bank, whose draws have been tried by its tests.
func readTested(name string, data []byte) (*Problem, Findings) {
	r := &reader{name: name}
	return r.done(r.problem(data))
}

func (r *reader) done(d *draft) (*Problem, Findings) {
	if len(r.found) > 0 {
		r.found.sort()
		return nil, r.found
	}
	return d.Problem, nil
}

// ReadFile reads the problem file of that name. What the disk has to say is a
// finding like any other.
func ReadFile(name string) (*Problem, Findings) {
	data, trouble := slurp(name)
	if trouble != "" {
		return nil, Findings{{File: name, What: trouble, Expected: "a problem file that can be read"}}
	}
	return Read(name, data)
}

// slurp reads a file no further than the largest that can be a problem.
func slurp(name string) (data []byte, trouble string) {
	info, err := os.Stat(name)
	switch {
	case err != nil:
		return nil, plainCause(err)
	case info.IsDir():
		return nil, "this is a folder"
	// A pipe or a device may never end.
	case !info.Mode().IsRegular():
		return nil, "this is not an ordinary file"
	case info.Size() > LargestFile:
		return nil, fmt.Sprintf("the file has %d bytes; a problem file can have at most %d", info.Size(), LargestFile)
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, plainCause(err)
	}
	defer f.Close()
	// One byte more than is allowed, so that a file that has grown since is refused and not cut.
	data, err = io.ReadAll(io.LimitReader(f, LargestFile+1))
	if err != nil {
		return nil, plainCause(err)
	}
	return data, ""
}

// plainCause says why the disk refused, without the path and the system call.
func plainCause(err error) string {
	switch {
	case os.IsNotExist(err):
		return "there is no such file"
	case os.IsPermission(err):
		return "you do not have permission to read the file"
	}
	if p, ok := err.(*os.PathError); ok {
		return "the file cannot be read: " + p.Err.Error()
	}
	return "the file cannot be read: " + err.Error()
}

func (r *reader) problem(data []byte) *draft {
	root := r.document(data)
	if root == nil {
		return nil
	}
	d := &draft{Problem: &Problem{File: r.name, Raw: data, Hash: hashOf(data)}}
	d.top = r.fields(root, "the problem", problemKeys)
	r.heading(d)
	r.system(d)
	r.text(d)
	d.Vary = r.vary(d)
	if len(r.found) == 0 {
		d.Figure = r.figure(d)
		d.System.Words.Above = d.Figure[View] == viewAbove
		r.validate(d)
	}
	if len(r.found) == 0 {
		r.sensible(d)
	}
	d.Problem.letters = map[string]bool{}
	for _, name := range d.letters() {
		d.Problem.letters[name] = true
	}
	// Before watch, which judges lines and needs the finished problem for it.
	d.finish()
	if len(r.found) == 0 {
		r.watch(d)
	}
	return d
}

var goodID = pattern.Of(`^[a-z0-9]+(-[a-z0-9]+)*$`)

func (r *reader) heading(d *draft) {
	v := d.top.values
	var ok bool
	if d.ID, ok = r.word(v["id"], `"id"`, "canal-lantern"); ok && (!goodID().MatchString(d.ID) || len(d.ID) > 60) {
		r.at(v["id"], fmt.Sprintf("%q cannot be an id", shorten(d.ID)), "lower-case letters, digits and hyphens, such as canal-lantern")
	}
	d.Title, _ = r.word(v["title"], `"title"`, "A lantern over the canal")
	if v["topic"] != nil {
		d.Topic, _ = r.oneOf(v["topic"], "the topic", topicIDs())
	}
	if level, ok := r.word(v["level"], `"level"`, "1"); ok {
		// “12” is found in “123”, too.
		if d.Level = strings.Index("123", level) + 1; d.Level == 0 || len(level) != 1 {
			r.at(v["level"], fmt.Sprintf("%q is not a level", shorten(level)), "1 (easy), 2 or 3 (hard)")
		}
	}
	d.Notes = r.remark(v["notes"], `"notes"`)
	d.Source = r.remark(v["source"], `"source"`)
}

// remark reads a text that may have several lines.
func (r *reader) remark(n *yaml.Node, what string) string {
	if n == nil {
		return ""
	}
	text := strings.TrimSpace(n.Value)
	if n.Kind != yaml.ScalarNode || text == "" {
		shaped := "empty"
		if n.Kind != yaml.ScalarNode {
			shaped = shape(n)
		}
		r.at(n, what+" is "+shaped, "text")
	}
	return text
}

// text reads the statement and checks that every {letter} in it is a given.
func (r *reader) text(d *draft) {
	n := d.top.values["text"]
	d.Text = r.remark(n, `"text"`)
	if d.Text == "" {
		return
	}
	if d.unreadableGivens() {
		return
	}
	known := d.givenLetters()
	seen := map[string]int{}
	for _, m := range placeholder().FindAllStringSubmatch(d.Text, -1) {
		seen[m[0]]++
		if !slices.Contains(known, canonical(m[1])) {
			r.inText(n, m[0], seen[m[0]], m[0]+" is not a given value", braced(instead(m[1], known), known))
		}
	}
	for _, alone := range []struct{ brace, fault string }{{"{", "an opening brace { has no closing brace"}, {"}", "a closing brace } has no opening brace"}} {
		if strings.Contains(placeholder().ReplaceAllString(d.Text, ""), alone.brace) {
			r.inText(n, alone.brace, 1, alone.fault, "{m} for the given value m")
		}
	}
}

// givenLetters lists the letters that a statement may show, those included whose
// value could not be read.
func (d *draft) givenLetters() []string {
	var known []string
	for _, g := range d.System.Givens {
		known = append(known, g.Name)
	}
	for name := range d.given {
		if !slices.Contains(known, name) {
			known = append(known, name)
		}
	}
	slices.Sort(known)
	return known
}

func braced(offer string, known []string) string {
	if len(known) == 0 {
		return "text without braces, because nothing is given"
	}
	return strings.Replace(offer, `"`, "", 2) + " in the braces"
}

// inText refuses a piece of the statement: the nth time that it stands in the
// file from there on. The statement may be folded over many lines.
func (r *reader) inText(n *yaml.Node, piece string, nth int, what, expected string) {
	line, column := r.placeInText(n, piece, nth)
	r.refuse(line, column, what, expected)
}

func (r *reader) placeInText(n *yaml.Node, piece string, nth int) (line, column int) {
	for line := n.Line; line <= len(r.lines); line++ {
		text := r.lines[line-1]
		// A brace that is alone is searched for outside complete placeholders.
		if !placeholder().MatchString(piece) {
			text = placeholder().ReplaceAllStringFunc(text, func(s string) string { return strings.Repeat("_", len(s)) })
		}
		at := 0
		for {
			i := strings.Index(text[at:], piece)
			if i < 0 {
				break
			}
			if nth--; nth == 0 {
				return line, len([]rune(text[:at+i])) + 1
			}
			at += i + len(piece)
		}
	}
	return n.Line, n.Column
}

// finish makes a problem of what was read, ready to be solved and drawn.
func (p *Problem) finish() {
	// Copies are compared with the numbers of the file.
	p.asWritten = p.System
	p.Numbers = draw.Numbers(p.System, p.ranges())
	p.prepare()
	p.kin = &checker.Kin{}
	p.probes = sync.OnceValue(p.probe)
}
