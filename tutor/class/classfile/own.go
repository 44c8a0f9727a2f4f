package classfile

import (
	"bytes"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"go.yaml.in/yaml/v4"

	"example.org/standstill/problems"
)

// Packed is a problem file that stands in a class file, so that one file is all
// that a machine needs.
type Packed struct{ Name, Text string }

// ownProblems lays the class's own problems over the bank. What is wrong with a
// file of a folder is kept for whoever uses the class and hides no other problem;
// one that is set shows at the place where it is set.
func (r *reader) ownProblems(from, files *yaml.Node) {
	for _, item := range r.List(from, `"`+keyFrom+`"`, "- my-problems") {
		name, ok := r.Word(item, "a folder", "my-problems")
		if !ok {
			continue
		}
		folder, found := problems.OpenFolder(r.beside(name))
		// The finding is about the folder itself and not about a file in it.
		if len(found) > 0 && found[0].Line == 0 && found[0].File == r.beside(name) {
			r.At(item, fmt.Sprintf("the folder %s cannot be used: %s", Shown(name), found[0].What), "a folder of problem files, in the same folder as the class file")
			continue
		}
		r.class.From = append(r.class.From, name)
		r.class.Broken = append(r.class.Broken, found...)
		r.class.Bank = r.class.Bank.With(folder)
	}
	var packed []*problems.Problem
	for _, item := range r.List(files, `"`+keyFiles+`"`, "- {name: quay-lantern.yaml, text: …}") {
		v := r.Fields(item, "a problem file", fileKeys)
		name, ok := r.Word(v["name"], `"name"`, "quay-lantern.yaml")
		if text := v["text"]; ok && text != nil && text.Kind == yaml.ScalarNode {
			p, found := problems.Read(name, []byte(text.Value))
			r.class.Packed = append(r.class.Packed, Packed{name, text.Value})
			r.class.Broken = append(r.class.Broken, found...)
			packed = append(packed, p)
		}
	}
	r.class.Bank = r.class.Bank.With(problems.BankOf(packed...))
}

// beside is a path as seen from the folder of the class file.
func (r *reader) beside(path string) string {
	if filepath.IsAbs(path) {
		return path
	}
	return filepath.Join(filepath.Dir(r.Sheet.Name), path)
}

// Pack puts everything that the class needs into one class file: the list of
// students and the text of every problem that is not built in.
func (c *Class) Pack(builtIn *problems.Bank) ([]byte, error) {
	all := *c
	all.From, all.Packed = nil, nil
	for _, h := range c.Bank.List() {
		p, err := c.Bank.Get(h.ID)
		if err != nil {
			continue
		}
		// Every machine has this one; a problem of the same id with another text has to travel.
		if same, err := builtIn.Get(h.ID); err == nil && same.Hash == p.Hash {
			continue
		}
		// In the packed file the text is a block of YAML, which cannot hold these as they are.
		if i := strings.IndexFunc(string(p.Raw), func(r rune) bool { return unicode.IsControl(r) && r != '\n' && r != '\r' }); i >= 0 {
			return nil, fmt.Errorf("the problem file %s contains a tab or another control character on line %d; use spaces instead",
				Shown(filepath.Base(p.File)), 1+strings.Count(string(p.Raw[:i]), "\n"))
		}
		all.Packed = append(all.Packed, Packed{filepath.Base(p.File), strings.ReplaceAll(string(p.Raw), "\r\n", "\n")})
	}
	slices.SortFunc(all.Packed, func(a, b Packed) int { return strings.Compare(a.Name, b.Name) })
	text := append([]byte(PackedMark+"\n"), Format(&all)...)
	if _, found := Read("the packed class file", text, builtIn); found.Err() != nil {
		return nil, found.Err()
	}
	return text, nil
}

// PackedMark begins a class file that was packed, and so may be packed anew.
const PackedMark = "# Packed by standstill class pack: pack it again rather than editing it."

func formatFrom(b *bytes.Buffer, from []string) {
	if len(from) == 0 {
		return
	}
	fmt.Fprintf(b, "%s:\n", keyFrom)
	for _, folder := range from {
		fmt.Fprintf(b, "  - %s\n", scalar(folder))
	}
}

func formatPacked(b *bytes.Buffer, files []Packed) {
	if len(files) == 0 {
		return
	}
	fmt.Fprintf(b, "%s:\n", keyFiles)
	for _, f := range files {
		fmt.Fprintf(b, "  - name: %s\n    text: %s\n", scalar(f.Name), block(f.Text, "      "))
	}
}

// block writes a text over several lines so that it reads back as it is, to be
// read by people where that can be done.
func block(text, indent string) string {
	plain := strings.HasSuffix(text, "\n") && !strings.HasSuffix(text, "\n\n") && !strings.ContainsAny(text, "\r\t\ufeff\u0085\u2028\u2029") &&
		!strings.HasPrefix(text, " ") && !strings.HasPrefix(text, "\n") && text == strings.Map(printable, text)
	if !plain {
		return quotedText(text)
	}
	var b strings.Builder
	b.WriteString("|")
	for _, line := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
		b.WriteString("\n")
		if line != "" {
			b.WriteString(indent + line)
		}
	}
	return b.String()
}

func printable(r rune) rune {
	if r == '\n' {
		return r
	}
	return harmless(r)
}

// quotedText writes a text in double quotes, with an escape for whatever is not a
// plain character.
func quotedText(text string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range text {
		switch {
		case r == '"' || r == '\\':
			b.WriteString("\\" + string(r))
		case r == '\n':
			b.WriteString(`\n`)
		case r < ' ' || harmless(r) != r:
			fmt.Fprintf(&b, `\U%08X`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}
