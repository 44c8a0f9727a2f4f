package checker

import (
	"math"
	"regexp"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
)

// The force diagram in words: "T1 up left; T2 up right; w down". Sides are those
// of the room, or of the slope where one is named.

// sideWord is one direction in words. A slope's word speaks of the body's own
// axes.
type sideWord struct {
	pattern *regexp.Regexp
	slope   bool
	x, y    int
	word    string
}

const slopeWord = `(?:slope|incline|inclined plane|ramp|plane|hill|surface|plank|board)`

// sideWords is the table of directions, slope words first. On a slope x = +1 is
// up the slope.
var sideWords = []sideWord{
	{regexp.MustCompile(`\b(?:up|uphill)\s+(?:along\s+)?(?:the\s+)?` + slopeWord + `\b|\buphill\b`), true, 1, 0, "up the slope"},
	{regexp.MustCompile(`\b(?:down|downhill)\s+(?:along\s+)?(?:the\s+)?` + slopeWord + `\b|\bdownhill\b`), true, -1, 0, "down the slope"},
	{regexp.MustCompile(`\b(?:out\s+of|away\s+from|off|perpendicular\s+to|normal\s+to)\s+(?:the\s+)?` + slopeWord + `\b`), true, 0, 1, "out of the slope"},
	{regexp.MustCompile(`\b(?:into|in|towards?)\s+(?:the\s+)?` + slopeWord + `\b`), true, 0, -1, "into the slope"},
	{regexp.MustCompile(`\bup(?:wards?|per)?\b|\babove\b`), false, 0, 1, "up"},
	{regexp.MustCompile(`\bdown(?:wards?)?\b|\blower\b|\bbelow\b`), false, 0, -1, "down"},
	{regexp.MustCompile(`\bleft(?:wards?)?\b`), false, -1, 0, "left"},
	{regexp.MustCompile(`\bright(?:wards?)?\b`), false, 1, 0, "right"},
}

// fillers say nothing about a direction.
var fillers = regexp.MustCompile(`\b(?:to|the|points?|pointing|pulls?|pulling|pushes|pushing|acts?|acting|is|goes|and|straight|vertically|horizontally|force|of|a|an|along|directly)\b|[-:→]`)

var joinedSides = regexp.MustCompile(`\b(up|down)(left|right)\b|\b(left|right)(up|down)\b`)

// entry is one force of a typed diagram.
type entry struct {
	name     string // typed name, as it stands
	words    []sideWord
	pos, end int
}

func parseEntry(text string) entry {
	rest := strings.ToLower(text)
	rest = joinedSides.ReplaceAllString(rest, "$1$3 $2$4")
	var e entry
	for _, w := range sideWords {
		if w.pattern.MatchString(rest) {
			e.words = append(e.words, w)
			rest = w.pattern.ReplaceAllString(rest, " ")
		}
	}
	named := strings.Join(strings.Fields(fillers.ReplaceAllString(rest, " ")), " ")
	if named == "" {
		// "pull right", "A left": what leads is the force, not a filler.
		named, _, _ = strings.Cut(strings.TrimSpace(rest), " ")
	}
	e.name = restoreCase(text, named)
	return e
}

// restoreCase finds the lower-case name in the text as it was typed.
func restoreCase(text, lower string) string {
	if i := strings.Index(strings.ToLower(text), lower); i >= 0 && len(strings.ToLower(text)) == len(text) {
		return text[i : i+len(lower)]
	}
	return lower
}

// kindWords are the names that forces go by in speech.
var kindWords = map[string]statics.Kind{
	"weight": statics.Weight, "gravity": statics.Weight, "gravitational": statics.Weight,
	"normal": statics.Normal, "support": statics.Normal, "contact": statics.Normal, "reaction": statics.Normal,
	"friction": statics.Friction, "tension": statics.Tension, "string": statics.Tension, "rope": statics.Tension,
	"cord": statics.Tension, "spring": statics.Spring, "push": statics.Push, "pull": statics.Pull, "strut": statics.Strut,
}

// markDiagram judges a typed force diagram of one body.
func (r *Reference) markDiagram(a Answer) Report {
	m := &marking{Reference: r, stage: Diagram, item: a.Item}
	body, ok := r.Body(a.Item)
	if !ok {
		body = &r.Bodies[0]
	}
	clean := expr.Clean(strings.ReplaceAll(a.Text, "\n", ";"))
	parts := strings.FieldsFunc(clean, func(c rune) bool { return c == ';' || c == ',' })
	var read []string
	var seen []string
	var first *finding
	note := func(f finding) {
		if first == nil {
			first = &f
		}
	}
	for _, part := range parts {
		if strings.TrimSpace(part) == "" {
			continue
		}
		e := parseEntry(part)
		if e.name == "" || len(e.words) == 0 || len(clean) > 2000 {
			return Report{Verdict: Unread, Code: Unreadable, Item: a.Item, Pos: strings.Index(clean, part), End: strings.Index(clean, part) + len(part), Message: saidDiagramForm(part)}
		}
		meant := m.meaningOf(e.name, body)
		f := r.unseen(body, meant.forces, seen, e.words)
		switch {
		case f != nil && r.pointsTo(body, f, e.words):
		case f != nil:
			note(finding{code: WrongSide, about: f.Name, all: []string{f.Name}})
		case len(meant.forces) > 0:
			name := meant.forces[0].Name
			note(finding{code: ExtraForce, about: name, all: []string{name}})
		case meant.code != "":
			note(finding{code: meant.code, about: meant.about, all: []string{e.name}})
		default:
			return Report{Verdict: Unread, Code: UnknownName, Item: a.Item, Message: m.saidUnknownName(e.name)}
		}
		if f == nil {
			read = append(read, e.name+" "+spoken(e.words))
			continue
		}
		seen = append(seen, f.Name)
		read = append(read, expr.Glyph(f.Name)+" "+spoken(e.words))
	}
	report := m.diagramReport(body, seen, first)
	report.Read = strings.Join(read, "; ")
	return report
}

func (m *marking) diagramReport(body *statics.Body, seen []string, first *finding) Report {
	if len(seen) == 0 && first == nil {
		return Report{Verdict: Unread, Code: Unreadable, Item: m.item, Message: saidDiagramEmpty}
	}
	if first != nil {
		return m.wrong(*first)
	}
	var missing []string
	for i := range body.Forces {
		if !slices.Contains(seen, body.Forces[i].Name) {
			missing = append(missing, body.Forces[i].Name)
		}
	}
	switch len(missing) {
	case 0:
		return m.right()
	case 1:
		return m.wrong(finding{code: MissingForce, about: missing[0], all: missing})
	}
	return m.wrong(finding{code: MissingForce, all: missing})
}

func spoken(words []sideWord) string {
	var names []string
	for _, w := range words {
		names = append(names, w.word)
	}
	return strings.Join(names, " ")
}

// meaning is what a name in a diagram can mean: forces of the body, or the
// mistake of drawing it here.
type meaning struct {
	forces []*statics.Force
	code   Code
	about  string
}

// meaningOf finds what a typed name means on a body: a force's letter, the letter
// of several, a kind of force that it has only one of; else a component drawn as
// a force, another body's force, or a kind of force that it has none of.
func (m *marking) meaningOf(name string, body *statics.Body) meaning {
	if reading, err := m.letters(m.item).Read(name); err == nil && len(reading.Lines[0].Sides) == 1 {
		if meant := m.meaningOfTree(reading.Lines[0].Sides[0], body); meant.code != "" || len(meant.forces) > 0 {
			return meant
		}
	}
	for _, word := range strings.Fields(strings.ToLower(name)) {
		kind, ok := kindWords[word]
		if !ok {
			continue
		}
		if f := onlyOf(body, kind); f != nil {
			return meaning{forces: []*statics.Force{f}}
		}
		for _, other := range strings.Fields(name) {
			if meant := m.meaningOfWord(other, body); len(meant.forces) > 0 {
				return meant
			}
		}
		if !hasKind(body, kind) {
			return meaning{code: ExtraForce}
		}
	}
	if kind, ok := kindOfLetter(name); ok && !hasKind(body, kind) {
		return meaning{code: ExtraForce}
	}
	return meaning{}
}

func (m *marking) meaningOfWord(word string, body *statics.Body) meaning {
	reading, err := m.letters(m.item).Read(word)
	if err != nil || len(reading.Lines[0].Sides) != 1 {
		return meaning{}
	}
	return m.meaningOfTree(reading.Lines[0].Sides[0], body)
}

func (m *marking) meaningOfTree(n *expr.Node, body *statics.Body) meaning {
	var meant meaning
	for i := range body.Forces {
		f := &body.Forces[i]
		if n.Op == expr.Name && f.Name == n.Name {
			return meaning{forces: []*statics.Force{f}}
		}
		if f.Size != nil && expr.Equal(f.Size, n) || n.Op == expr.Name && slices.Contains(m.named(n.Name), f.Name) {
			meant.forces = append(meant.forces, f)
		}
	}
	if len(meant.forces) > 0 {
		return meant
	}
	if n.Op == expr.Name {
		if c, ok := m.component(n.Name); ok {
			return meaning{code: TwiceCounted, about: c.force.Name}
		}
		if f, ok := m.Force(n.Name); ok {
			return meaning{code: ExtraForce, about: f.Name}
		}
	}
	if f := m.partOf(n, body); f != "" {
		return meaning{code: TwiceCounted, about: f}
	}
	return meaning{}
}

// named lists the forces that a letter of equal sizes stands for.
func (m *marking) named(letter string) []string {
	var names []string
	for _, e := range m.equals {
		if e.name == letter {
			for _, slot := range e.slots {
				names = append(names, m.Variables[slot].Name)
			}
		}
	}
	return names
}

// partOf returns the force of which a product with a function of an angle is a
// part ("w sin α"), "" if it is none.
func (m *marking) partOf(n *expr.Node, body *statics.Body) string {
	turned := false
	n.Walk(func(n *expr.Node) { turned = turned || n.Op == expr.Call })
	if !turned {
		return ""
	}
	for i := range body.Forces {
		f := &body.Forces[i]
		if n.Has(f.Name) || f.Size != nil && len(f.Size.Names()) > 0 && n.Has(f.Size.Names()[0]) {
			return f.Name
		}
	}
	return ""
}

// unseen picks one of the forces that was not named yet, best one that points to
// the sides of the words.
func (r *Reference) unseen(body *statics.Body, forces []*statics.Force, seen []string, words []sideWord) *statics.Force {
	var pick *statics.Force
	for _, f := range forces {
		if slices.Contains(seen, f.Name) {
			continue
		}
		if r.pointsTo(body, f, words) {
			return f
		}
		if pick == nil {
			pick = f
		}
	}
	return pick
}

func hasKind(body *statics.Body, kind statics.Kind) bool {
	return slices.ContainsFunc(body.Forces, func(f statics.Force) bool { return f.Kind == kind })
}

// Room returns a force's unit vector in the room, from the solved problem: x to
// the right, y up. The force's line is turned by the body's tilt.
func (r *Reference) Room(body *statics.Body, f *statics.Force) (x, y float64) {
	bx, by := r.unit(f)
	tilt := r.Tilt(body)
	return bx*math.Cos(tilt) - by*math.Sin(tilt), bx*math.Sin(tilt) + by*math.Cos(tilt)
}

// Tilt returns how far a body's x axis is turned, in radians.
func (r *Reference) Tilt(body *statics.Body) float64 {
	if body.Tilt == nil {
		return 0
	}
	return r.program(body.Tilt).Run(r.solution)
}

// slope returns how far the surface under a body rises to the right: its tilted
// axis, or where the axes are level, the line across its normal force.
func (r *Reference) slope(body *statics.Body) float64 {
	tilt := r.Tilt(body)
	if normal := onlyOf(body, statics.Normal); tilt == 0 && normal != nil {
		x, y := r.Room(body, normal)
		return math.Atan2(y, x) - math.Pi/2
	}
	return tilt
}

// unit returns a force's unit vector on its body's axes.
func (r *Reference) unit(f *statics.Force) (x, y float64) {
	var xy [2]float64
	for _, axis := range []statics.Axis{statics.X, statics.Y} {
		t := termOf(r.Model, f, axis)
		xy[axis] = t.scale
		if t.angle != nil {
			xy[axis] *= t.function.of(t.angle.Run(r.solution))
		}
	}
	return xy[0], xy[1]
}

const hardly = 1e-6

func signOf(x float64) int {
	switch {
	case x > hardly:
		return 1
	case x < -hardly:
		return -1
	}
	return 0
}

// pointsTo reports whether the words say where the force points: all sides that
// it points to, and no other.
func (r *Reference) pointsTo(body *statics.Body, f *statics.Force, words []sideWord) bool {
	var room, slope [2]int
	var usesRoom, usesSlope bool
	for _, w := range words {
		into, used := &room, &usesRoom
		if w.slope {
			into, used = &slope, &usesSlope
		}
		if w.x != 0 && into[0] != 0 || w.y != 0 && into[1] != 0 {
			return false
		}
		*used = true
		into[0] += w.x
		into[1] += w.y
	}
	x, y := r.Room(body, f)
	tilt := r.slope(body)
	along, out := x*math.Cos(tilt)+y*math.Sin(tilt), y*math.Cos(tilt)-x*math.Sin(tilt)
	if math.Sin(tilt) < 0 {
		along = -along
	}
	return (!usesRoom || room == [2]int{signOf(x), signOf(y)}) && (!usesSlope || slope == [2]int{signOf(along), signOf(out)})
}
