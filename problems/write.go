package problems

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/quantity"
)

// Draft is a problem as an author says it, before it is read and solved. Every
// part is text in the author's own notation; empty parts are left out of the file.
type Draft struct {
	ID, Title, Topic, Level, Text string
	Given                         []Pair // letter: quantity
	Meaning                       []Pair // letter: what it is
	Tilt                          string // an angle, "left", or an angle for each body: "A = alpha, B = -beta"
	Body                          string
	Bodies                        []string
	Forces                        []DraftForce
	Equal                         []Pair // letter: names, with commas
	Find                          []string
	Vary                          []Pair // letter: LOW to HIGH step STEP
	Notes                         string
	Surplus                       []string
	Figure                        []Pair // a body, a force or the view: a word
	Watch                         []DraftWatch
}

// Pair is a key with its value.
type Pair struct{ Key, Value string }

// DraftWatch is a mistake that the author expects, key by key as in the file.
type DraftWatch struct{ Stage, Item, Typed, Say string }

// DraftForce is one force of a draft, key by key as in the file.
type DraftForce struct{ On, Name, Kind, Points, Angle, From, Direction, Size, By string }

// Wrong says what is wrong with one part of the draft, nil if nothing is, though other
// parts may be missing so far. Parts are named as the keys of the file are, with the
// letter or the number (from 0) of what there are several of: "given m", "force 0 angle".
func (d Draft) Wrong(part string) error {
	text, places := d.write()
	// The whole draft is read and only what is found at this part counts: other parts may still be missing.
	r := &reader{parts: true}
	r.problem(text)
	at, ok := places[part]
	for _, f := range r.found {
		if ok && f.Line == at.line && f.Column >= at.from && f.Column <= at.to {
			return (&misread{f.What, f.Expected}).err()
		}
	}
	return nil
}

// WrongGiven says what is wrong with one more given of the draft, nil if nothing is.
func (d Draft) WrongGiven(p Pair) error {
	name, wrong := readLetter(p.Key, "the given value", false)
	switch {
	case wrong != nil:
		return wrong.err()
	case slices.ContainsFunc(d.Given, func(g Pair) bool { return canonical(g.Key) == name }):
		return fmt.Errorf("the given value %s is listed twice; expected each letter once", name)
	}
	g, wrong := readGiven(name, p.Value)
	// A Greek letter is an angle, as a rule, and 35 without a unit would be a plain number.
	if wrong == nil && g.Unit.Dim == quantity.None && expr.Glyph(name) != name && name != "mu" {
		return fmt.Errorf("the given value %s has no unit; expected deg after an angle", name)
	}
	d.Given = append(slices.Clone(d.Given), p)
	return d.Wrong("given " + p.Key)
}

// WrongForce says what is wrong with the letter of one more force. On several bodies the
// same letter may be there twice.
func (d Draft) WrongForce(letter string) error {
	name, wrong := readLetter(letter, "the force", false)
	if wrong != nil {
		return wrong.err()
	}
	if len(d.Bodies) < 2 && slices.ContainsFunc(d.Forces, func(f DraftForce) bool { return canonical(f.Name) == name }) {
		return fmt.Errorf("the force %s is listed twice; expected a different letter for each force", name)
	}
	return nil
}

// WrongFind says what is wrong with what is asked for: each is a letter of the draft.
func (d Draft) WrongFind(names []string) error {
	// Or every letter that is asked for would count as one of the problem.
	d.Find = nil
	text, _ := d.write()
	known := (&reader{parts: true}).problem(text).letters()
	var forces []string
	for _, f := range d.Forces {
		if name := canonical(f.Name); !slices.Contains(forces, name) {
			forces = append(forces, name)
		}
	}
	for _, name := range names {
		if !slices.Contains(known, canonical(name)) {
			return fmt.Errorf("there is no letter %s in this problem; expected %s", shorten(name), instead(name, forces))
		}
	}
	d.Find = names
	return d.Wrong("find")
}

// Shown lists the letters that a text shows in braces, in their order.
func Shown(text string) (letters []string) {
	for _, m := range placeholder().FindAllStringSubmatch(text, -1) {
		if !slices.Contains(letters, m[1]) {
			letters = append(letters, m[1])
		}
	}
	return letters
}

// HasNumber reports whether a given is a number, which students' own numbers can be drawn
// for: not "any kg", and no formula.
func (p Pair) HasNumber() bool {
	g, wrong := readGiven(p.Key, p.Value)
	return wrong == nil && !g.Any
}

// WrongTilt says what is wrong with the angle of the axes: each letter is a given.
func (d Draft) WrongTilt(tilt string) error {
	if tilt == axisLeft {
		return nil
	}
	for _, one := range tilts(tilt) {
		if err := d.wrongAngle(one.Value); err != nil {
			return err
		}
	}
	return nil
}

// axisLeft is a tilt that turns nothing: positive x is to the left.
const axisLeft = "left"

// tilts cuts "A = alpha, B = -beta" into bodies and angles; one angle for all bodies has
// no key.
func tilts(text string) (all []Pair) {
	if !strings.Contains(text, "=") {
		return []Pair{{"", text}}
	}
	for one := range strings.SplitSeq(text, ",") {
		body, angle, _ := strings.Cut(one, "=")
		all = append(all, Pair{strings.TrimSpace(body), strings.TrimSpace(angle)})
	}
	return all
}

// IsTurned reports whether the draft turns the axes of a body, "" for the only one.
func (d Draft) IsTurned(body string) bool {
	return d.Tilt != "" && d.Tilt != axisLeft && slices.ContainsFunc(tilts(d.Tilt), func(p Pair) bool { return p.Key == "" || p.Key == body })
}

// axes is the value of the key "axes".
func (d Draft) axes() string {
	if d.Tilt == axisLeft {
		return "{x: left}"
	}
	all := tilts(d.Tilt)
	if all[0].Key == "" {
		return "{tilt: " + quoted(d.Tilt) + "}"
	}
	return "{tilt: " + inBraces(all) + "}"
}

func inBraces(all []Pair) string {
	var parts []string
	for _, one := range all {
		parts = append(parts, one.Key+": "+quoted(one.Value))
	}
	return "{" + strings.Join(parts, ", ") + "}"
}

func (d Draft) wrongAngle(tilt string) error {
	for _, word := range strings.FieldsFunc(tilt, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		isGiven := slices.ContainsFunc(d.Given, func(g Pair) bool { return canonical(g.Key) == canonical(word) })
		if unicode.IsLetter([]rune(word)[0]) && word != "deg" && !isGiven {
			return fmt.Errorf("%s is not a given value yet; expected an angle that contains only given values", shorten(word))
		}
	}
	return nil
}

func (m *misread) err() error { return fmt.Errorf("%s; expected %s", m.what, m.expected) }

// Write writes the draft as a problem file with a comment on each part. Read says
// what is wrong with it.
func Write(d Draft) []byte {
	text, _ := d.write()
	return text
}

// place is where a part is in the file that is written: a line, and columns from 1. To is
// the column behind it, where something is missed at its end.
type place struct{ line, from, to int }

// pen writes lines and knows where each part is.
type pen struct {
	strings.Builder
	places map[string]place
	line   int
}

// print writes one line, whose part is the text of that name.
func (p *pen) print(line, name, part string) {
	p.line++
	if i := strings.Index(line, part); name != "" && i >= 0 {
		from := utf8.RuneCountInString(line[:i]) + 1
		p.places[name] = place{p.line, from, from + utf8.RuneCountInString(part)}
	}
	p.WriteString(line + "\n")
}

func (p *pen) raw(key, name, value, comment string) {
	p.print(fmt.Sprintf("%-40s # %s", key+": "+value, comment), name, ": "+value)
}

func (p *pen) key(key, value, comment string) {
	if value != "" {
		p.raw(key, key, quoted(value), comment)
	}
}

func (p *pen) pairs(key, comment string, all []Pair) {
	if len(all) == 0 {
		return
	}
	p.print(key+": # "+comment, "", "")
	for _, one := range all {
		entry := one.Key + ": " + quoted(one.Value)
		if key == "equal" {
			entry = one.Key + ": [" + one.Value + "]"
		}
		p.print("  "+entry, key+" "+one.Key, entry)
	}
}

func (p *pen) force(i int, f DraftForce) {
	var parts []string
	for _, e := range f.entries() {
		parts = append(parts, e.Key+": "+quoted(e.Value))
	}
	line := "  - {" + strings.Join(parts, ", ") + "}"
	p.print(line, "", "")
	for j, e := range f.entries() {
		to := utf8.RuneCountInString("  - {"+strings.Join(parts[:j+1], ", ")) + 1
		p.places[fmt.Sprintf("force %d %s", i, e.Key)] = place{p.line, to - utf8.RuneCountInString(parts[j]), to}
	}
}

// figure writes what the drawing needs; a view of none leaves the drawing out.
func (p *pen) figure(figure []Pair) {
	if len(figure) == 0 {
		return
	}
	value := inBraces(figure)
	if slices.Contains(figure, Pair{View, NoFigure}) {
		value = NoFigure
	}
	p.raw("figure", "figure", value, "details of the drawing")
}

func (p *pen) watch(all []DraftWatch) {
	if len(all) == 0 {
		return
	}
	p.print("watch: # mistakes that you expect, and what the program says about them", "", "")
	for i, w := range all {
		parts := []Pair{{"stage", w.Stage}, {"item", w.Item}, {"typed", w.Typed}, {"say", w.Say}}
		entry := inBraces(slices.DeleteFunc(parts, func(one Pair) bool { return one.Value == "" }))
		p.print("  - "+entry, fmt.Sprintf("watch %d", i), entry)
	}
}

func (d Draft) write() ([]byte, map[string]place) {
	p := &pen{places: map[string]place{}}
	p.key("id", d.ID, "lower-case letters, digits, hyphens")
	p.key("title", d.Title, "what students see in the list")
	p.key("topic", d.Topic, "one of the topics of the bank")
	p.key("level", d.Level, "from 1 (easy) to 3 (hard)")
	// In one line, in which print can find it.
	text := strings.Join(strings.Fields(d.Text), " ")
	p.print("text: >", "", "")
	p.print("  "+text, "text", text)
	p.pairs("given", "a number and a unit for each; angles in deg", d.Given)
	p.pairs("meaning", "what each letter means", d.Meaning)
	if d.Tilt != "" {
		comment := "the x axis is turned anticlockwise by this angle"
		if d.Tilt == axisLeft {
			comment = "positive x is to the left"
		}
		p.raw("axes", "tilt", d.axes(), comment)
	}
	p.key("body", d.Body, "what the forces act on")
	if len(d.Bodies) > 0 {
		p.raw("bodies", "bodies", "["+strings.Join(d.Bodies, ", ")+"]", "each force says on which body it acts")
	}
	p.print("forces: # a force without a size is an unknown", "", "")
	for i, f := range d.Forces {
		p.force(i, f)
	}
	p.pairs("equal", "letters for forces of equal size", d.Equal)
	p.raw("find", "find", "["+strings.Join(d.Find, ", ")+"]", "what is asked for, in order")
	p.pairs("vary", "the ranges of the students' numbers", d.Vary)
	if len(d.Surplus) > 0 {
		p.raw("surplus", "surplus", "["+strings.Join(d.Surplus, ", ")+"]", "given values that the solution does not need")
	}
	p.figure(d.Figure)
	p.watch(d.Watch)
	p.key("notes", d.Notes, "for the teacher")
	return []byte(p.String()), p.places
}

// entries are the keys of a force that have a value, in the order of the file.
func (f DraftForce) entries() (parts []Pair) {
	for _, p := range []Pair{{"on", f.On}, {"name", f.Name}, {"kind", f.Kind}, {"points", f.Points}, {"angle", f.Angle},
		{"from", f.From}, {"direction", f.Direction}, {"size", f.Size}, {"by", f.By}} {
		if p.Value != "" {
			parts = append(parts, p)
		}
	}
	return parts
}

// unquoted is what may stand in a file as it is, also inside { }.
var unquoted = pattern.Of(`^[\p{L}0-9(][\p{L}0-9 .*/^()+\-°²]*$`)

// quoted writes a value so that it is read as it was typed.
func quoted(value string) string {
	if unquoted().MatchString(value) {
		return value
	}
	return "'" + strings.ReplaceAll(value, "'", "''") + "'"
}
