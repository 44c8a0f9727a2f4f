package problems

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"

	"example.org/standstill/checker/pattern"
)

// LargestFile is the most bytes that a problem file may have. A problem takes
// one or two thousand.
const LargestFile = 256 << 10

// reader goes through one file and gathers what is wrong with it.
type reader struct {
	name  string
	sheet *Sheet // what is read, if it is no problem
	lines []string
	found Findings
	// doubts are warnings: they never refuse the file.
	doubts Findings
	kept   bool // the file was accepted by earlier rules
	parts  bool // some parts may be missing so far
}

// refuse notes a finding. What the YAML reader misses behind the last line is
// missed at the end of it.
func (r *reader) refuse(line, column int, what, expected string) {
	f := Finding{File: r.name, What: what, Expected: expected}
	if line > len(r.lines) {
		line, column = len(r.lines), math.MaxInt
	}
	if line > 0 {
		f.source = r.lines[line-1]
		f.Line, f.Column = line, max(min(column, utf8.RuneCountInString(f.source)+1), 1)
	}
	r.found = append(r.found, f)
}

// warn notes what can be meant and is more often a slip.
func (r *reader) warn(line, column int, what string) {
	r.doubts = append(r.doubts, Finding{File: r.name, Line: line, Column: column, What: "warning: " + what, source: r.lines[line-1]})
}

func (r *reader) at(n *yaml.Node, what, expected string) {
	r.refuse(n.Line, n.Column, what, expected)
}

// within refuses a place inside a plain or quoted value: pos is a rune offset
// into it. Where the value does not stand in the file as it is (escapes, folded
// lines), the finding points to its beginning.
func (r *reader) within(n *yaml.Node, pos int, what, expected string) {
	column := n.Column
	if n.Line <= len(r.lines) {
		line := []rune(r.lines[n.Line-1])
		rest := string(line[min(n.Column-1, len(line)):])
		quote := 0
		if strings.HasPrefix(rest, "'") || strings.HasPrefix(rest, `"`) {
			quote = 1
		}
		if strings.HasPrefix(rest[quote:], n.Value) {
			column += quote + pos
		}
	}
	r.refuse(n.Line, column, what, expected)
}

// document reads the bytes as one YAML mapping; nil, with findings, if they are
// none.
func (r *reader) document(data []byte) *yaml.Node {
	if what, expected := notText(data); what != "" {
		r.refuse(0, 0, what, expected)
		return nil
	}
	r.lines = strings.Split(string(normalNewlines(data)), "\n")
	root, more, err := load(data)
	switch {
	case err == io.EOF:
		r.refuse(0, 0, "the file is empty", "a "+r.holds())
	case err != nil:
		r.syntax(err)
	case more > 0:
		r.refuse(more, 1, "a second document begins here", "one "+r.holds()+" in each file")
	case root.Kind != yaml.MappingNode:
		r.at(root, "the file is "+shape(root), fmt.Sprintf("keys with values, such as %q", r.begins()))
	case r.plain(root):
		return root
	}
	return nil
}

// notText says what is wrong with bytes that are no text at all.
func notText(data []byte) (what, expected string) {
	switch {
	case len(data) > LargestFile:
		return fmt.Sprintf("the file has %d bytes", len(data)), fmt.Sprintf("at most %d", LargestFile)
	case bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")):
		return "the file is written in UTF-16", "text in UTF-8"
	case bytes.IndexByte(data, 0) >= 0:
		return "the file is not a text file", "text, written in YAML"
	case !utf8.Valid(data):
		return "the file is not written in UTF-8", "text in UTF-8"
	}
	return "", ""
}

// normalNewlines turns every kind of line end into a line feed.
func normalNewlines(data []byte) []byte {
	if bytes.IndexByte(data, '\r') < 0 {
		return data
	}
	data = bytes.ReplaceAll(data, []byte("\r\n"), []byte("\n"))
	return bytes.ReplaceAll(data, []byte("\r"), []byte("\n"))
}

// load reads the first document and says on which line a second one begins, 0 if
// there is none. The library is guarded, since a file comes from anywhere.
func load(data []byte) (root *yaml.Node, more int, err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("internal error: YAML: %v", p)
		}
	}()
	l, err := yaml.NewLoader(bytes.NewReader(data))
	if err != nil {
		return nil, 0, err
	}
	var document, second yaml.Node
	if err := l.Load(&document); err != nil {
		return nil, 0, err
	}
	// Without this, everything after a “---” would be left out silently.
	if err := l.Load(&second); err == nil {
		more = second.Line
	} else if err != io.EOF {
		return nil, 0, err
	}
	if len(document.Content) == 0 {
		return nil, 0, io.EOF
	}
	return document.Content[0], more, nil
}

// plain refuses what YAML has beyond lists, keys and values, and characters that
// act on a terminal. A problem file is read by teachers, and each of these could
// make it grow without limit or look other than it is.
func (r *reader) plain(n *yaml.Node) bool {
	switch {
	case n.Kind == yaml.AliasNode:
		r.at(n, fmt.Sprintf("*%s refers to another part of the file", n.Value), "every value written out in full")
		return false
	case n.Anchor != "":
		r.at(n, fmt.Sprintf("&%s marks a part of the file for use elsewhere", n.Anchor), "every value written out in full")
		return false
	case n.Style&yaml.TaggedStyle != 0:
		r.at(n, fmt.Sprintf("the tag %s has no meaning here", n.ShortTag()), "a value without a tag")
		return false
	case strings.IndexFunc(n.Value, acts) >= 0:
		r.at(n, "the text has an unprintable character", "plain text")
		return false
	}
	for _, c := range n.Content {
		if !r.plain(c) {
			return false
		}
	}
	return true
}

// acts reports a character that a terminal obeys instead of showing it.
func acts(r rune) bool {
	return r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r) && r != '\ufeff' || r == '\u2028' || r == '\u2029')
}

// shape names the form of a value for an author.
func shape(n *yaml.Node) string {
	switch {
	case n.Kind == yaml.SequenceNode:
		return "a list"
	case n.Kind == yaml.MappingNode:
		return "a set of keys with values"
	case n.Value == "" && n.Tag == "!!null":
		return "nothing"
	}
	return fmt.Sprintf("the text %q", shorten(n.Value))
}

func shorten(text string) string {
	text = strings.TrimSpace(text)
	if r := []rune(text); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return text
}

// syntaxTable says in an author's words what the YAML reader complains of.
// Opened marks complaints whose cause stands where something was opened.
var syntaxTable = []struct {
	complaint, what, expected string
	opened                    bool
}{
	{"mapping values are not allowed", "there is a colon where no key is possible", "quotes around text that contains a colon, and keys of the same level indented by the same number of spaces", false},
	{"unexpected end of stream", "the quotation mark that opens here is never closed", "a closing quotation mark", true},
	{"unexpected document indicator", "the quotation mark that opens here is never closed", "a closing quotation mark", true},
	{"expected ',' or '}'", "the braces that open here are not closed, or a comma is missing", "{key: value, key: value}", true},
	{"expected ',' or ']'", "the list that opens here is not closed, or a comma is missing", "[one, two]", true},
	{"could not find expected ':'", "a line without a colon", "a key, a colon and a value", true},
	{"expected node content", "a value is missing here, or a bracket above is not closed", "{key: value, key: value} or [one, two]", false},
	{"exceeded max depth", "there are too many brackets inside other brackets", "at most three levels of brackets", false},
	{"unknown anchor", "a value that begins with * refers to another part of the file", "quotes around text that begins with *", false},
	{"expected key", "the line is not indented like the lines above it", "keys of the same level indented by the same number of spaces", false},
	{"expected '-' indicator", "the line is not indented like the lines above it", "the items of a list in the same column", false},
	{"control characters", "the file has an unprintable character", "plain text", false},
	{"tab character", "the line is indented with a tab", "spaces", false},
	{"incompatible YAML document", "this line asks for another version of YAML", "no such line", false},
	{"did not find expected <document start>", "there is more text after the last value", "keys in the first column", false},
	{"block sequence entries are not allowed", "a list is not possible here", "the list on separate lines below its key", false},
}

// syntax words the complaint of the YAML reader.
func (r *reader) syntax(err error) {
	var trouble *yaml.LoadError
	if !errors.As(err, &trouble) {
		r.refuse(0, 0, "the file cannot be read as YAML", "keys with values")
		return
	}
	line, column := trouble.Mark.Line, trouble.Mark.Column
	if r.noColon(trouble) {
		return
	}
	for _, row := range syntaxTable {
		if strings.Contains(trouble.Message, row.complaint) {
			// What was opened and never closed is noticed far below; the author has to look at its beginning.
			if row.opened && trouble.ContextMark.Line > 0 {
				line, column = trouble.ContextMark.Line, trouble.ContextMark.Column
			}
			r.refuse(line, column, row.what, row.expected)
			return
		}
	}
	if strings.Contains(trouble.Message, "cannot start any token") {
		r.strangeStart(line, column)
		return
	}
	r.refuse(line, column, "this is not YAML: "+trouble.Message, "keys with values")
}

// bareKey is a line of a key and its value with no colon between them.
var bareKey = pattern.Of(`^\s*(?:- )?([\p{L}][\p{L}\p{N}_-]*)\s*=?\s*(.*)$`)

// startsWithKey is a line that begins with a key, or is an item of a list.
var startsWithKey = pattern.Of(`^\s*(?:- .*|[\p{L}\p{N}_-]+):`)

// noColon tells a missing colon on its own line: the YAML reader takes a line without one for
// the beginning of the next, and complains there.
func (r *reader) noColon(trouble *yaml.LoadError) bool {
	at := trouble.Mark.Line
	switch {
	case strings.Contains(trouble.Message, "could not find expected ':'"):
	// A text with a colon in it is complained of in the same way, but does not begin like a key.
	case strings.Contains(trouble.Message, "mapping values are not allowed") && at > 0 && at <= len(r.lines) && startsWithKey().MatchString(r.lines[at-1]):
	default:
		return false
	}
	line := r.keyBefore(at)
	if line == 0 {
		return false
	}
	text := r.lines[line-1]
	m := bareKey().FindStringSubmatchIndex(text)
	if m == nil {
		return false
	}
	key, value := text[m[2]:m[3]], strings.TrimSpace(text[m[4]:m[5]])
	r.refuse(line, utf8.RuneCountInString(text[:m[3]])+1, "a colon is missing after "+shorten(key), strings.TrimSpace(shorten(key)+": "+shorten(value)))
	return true
}

// keyBefore finds the line without a colon that the YAML reader joined with a later one, 0 if
// there is none. A line that goes on with the value above it, such as text, needs no colon.
func (r *reader) keyBefore(line int) int {
	found, above := 0, ""
	for i := min(line, len(r.lines)) - 1; i >= 1; i-- {
		above = strings.TrimRight(r.lines[i-1], " \t\r")
		if strings.Contains(above, ":") {
			break
		}
		if body := strings.TrimSpace(above); body != "" && body[0] != '#' {
			found = i
		}
		above = ""
	}
	if found == 0 || strings.HasSuffix(above, ":") || above == "" || indent(above) >= indent(r.lines[found-1]) {
		return found
	}
	return 0
}

func indent(line string) int { return len(line) - len(strings.TrimLeft(line, " ")) }

func (r *reader) strangeStart(line, column int) {
	text := []rune("")
	if line > 0 && line <= len(r.lines) {
		text = []rune(r.lines[line-1])
	}
	switch {
	case column < 1 || column > len(text):
		r.refuse(line, column, "a value cannot begin here", "text, a list or keys")
	case text[column-1] == '\t':
		r.refuse(line, column, "the line is indented with a tab", "spaces")
	default:
		r.refuse(line, column, fmt.Sprintf("a value cannot begin with %c", text[column-1]), "quotes around it")
	}
}
