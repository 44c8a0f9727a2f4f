package problems

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
)

// Draft is a problem as an author says it, before it is read and solved. Every
// part is text in the author's own notation; empty parts are left out of the file.
type Draft struct {
	ID, Title, Topic, Level, Text string
	Given                         []Pair // letter: quantity
	Tilt                          string
	Bodies                        []string
	Forces                        []DraftForce
	Equal                         []Pair // letter: names, with commas
	Find                          []string
	Vary                          []Pair // letter: LOW to HIGH step STEP
	Notes                         string
}

// Pair is a key with its value.
type Pair struct{ Key, Value string }

// DraftForce is one force of a draft, key by key as in the file.
type DraftForce struct{ On, Name, Kind, Points, Angle, From, Direction, Size string }

// WrongGiven says what is wrong with one more given of the draft, nil if nothing is.
func (d Draft) WrongGiven(p Pair) error {
	name, wrong := readLetter(p.Key, "the given")
	switch {
	case wrong != nil:
		return wrong.err()
	case slices.ContainsFunc(d.Given, func(g Pair) bool { return canonical(g.Key) == name }):
		return fmt.Errorf("the given %s is listed twice; expected each letter once", name)
	}
	g, wrong := readGiven(name, p.Value)
	switch {
	case wrong != nil:
		return wrong.err()
	case g.Unit.Dim == quantity.None && expr.Glyph(name) != name && name != "mu":
		return fmt.Errorf("the given %s has no unit; expected deg after an angle", name)
	}
	return nil
}

// WrongForce says what is wrong with the letter of one more force.
func (d Draft) WrongForce(letter string) error {
	if _, wrong := readLetter(letter, "the force"); wrong != nil {
		return wrong.err()
	}
	return nil
}

// WrongTilt says what is wrong with the angle of the axes: each letter is a given.
func (d Draft) WrongTilt(tilt string) error {
	for _, word := range strings.FieldsFunc(tilt, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		isGiven := slices.ContainsFunc(d.Given, func(g Pair) bool { return canonical(g.Key) == canonical(word) })
		if unicode.IsLetter([]rune(word)[0]) && word != "deg" && !isGiven {
			return fmt.Errorf("%s is not a given so far; expected an angle of the givens", shorten(word))
		}
	}
	return nil
}

func (m *misread) err() error { return fmt.Errorf("%s; expected %s", m.what, m.expected) }

// Write writes the draft as a problem file with a comment on each part. Read says
// what is wrong with it.
func Write(d Draft) []byte {
	var b strings.Builder
	raw := func(key, value, comment string) { fmt.Fprintf(&b, "%-40s # %s\n", key+": "+value, comment) }
	line := func(key, value, comment string) {
		if value != "" {
			raw(key, quoted(value), comment)
		}
	}
	line("id", d.ID, "lower-case letters, digits, hyphens")
	line("title", d.Title, "what students choose it by")
	line("topic", d.Topic, "one of the topics of the bank")
	line("level", d.Level, "1 easy to 3 hard")
	fmt.Fprintf(&b, "text: >\n  %s\n", strings.Join(strings.Fields(d.Text), " "))
	pairs(&b, "given", "a number and a unit each; angles in deg", d.Given)
	if d.Tilt != "" {
		raw("axes", "{tilt: "+quoted(d.Tilt)+"}", "the x axis is turned by this angle")
	}
	if len(d.Bodies) > 0 {
		raw("bodies", "["+strings.Join(d.Bodies, ", ")+"]", "each force says on which it acts")
	}
	b.WriteString("forces: # size left out: it is to be found\n")
	for _, f := range d.Forces {
		b.WriteString("  - {" + f.entries() + "}\n")
	}
	if len(d.Equal) > 0 {
		b.WriteString("equal: # letters for sizes that are equal\n")
		for _, p := range d.Equal {
			fmt.Fprintf(&b, "  %s: [%s]\n", p.Key, p.Value)
		}
	}
	raw("find", "["+strings.Join(d.Find, ", ")+"]", "what is asked for, in order")
	pairs(&b, "vary", "what each student's own numbers are drawn from", d.Vary)
	line("notes", d.Notes, "for the teacher")
	return []byte(b.String())
}

func pairs(b *strings.Builder, key, comment string, all []Pair) {
	if len(all) == 0 {
		return
	}
	fmt.Fprintf(b, "%s: # %s\n", key, comment)
	for _, p := range all {
		fmt.Fprintf(b, "  %s: %s\n", p.Key, quoted(p.Value))
	}
}

func (f DraftForce) entries() string {
	var parts []string
	for _, p := range []Pair{{"on", f.On}, {"name", f.Name}, {"kind", f.Kind}, {"points", f.Points}, {"angle", f.Angle},
		{"from", f.From}, {"direction", f.Direction}, {"size", f.Size}} {
		if p.Value != "" {
			parts = append(parts, p.Key+": "+quoted(p.Value))
		}
	}
	return strings.Join(parts, ", ")
}

// unquoted is what may stand in a file as it is, also inside { }.
var unquoted = regexp.MustCompile(`^[\p{L}0-9(][\p{L}0-9 .*/^()+\-°²]*$`)

// quoted writes a value so that it is read as it was typed.
func quoted(value string) string {
	if unquoted.MatchString(value) {
		return value
	}
	return "'" + strings.ReplaceAll(value, "'", "''") + "'"
}
