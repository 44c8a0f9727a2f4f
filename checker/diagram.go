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
	{regexp.MustCompile(`\bup(?:wards?)?\b|\babove\b`), false, 0, 1, "up"},
	{regexp.MustCompile(`\bdown(?:wards?)?\b|\bbelow\b`), false, 0, -1, "down"},
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
	rest = strings.TrimSpace(fillers.ReplaceAllString(rest, " "))
	e.name = restoreCase(text, strings.Join(strings.Fields(rest), " "))
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
		f, kind := m.forceCalled(e.name, body)
		switch {
		case f == nil && kind == "":
			return Report{Verdict: Unread, Code: UnknownName, Item: a.Item, Message: m.saidUnknownName(e.name)}
		case f == nil:
			note(finding{code: ExtraForce, all: []string{e.name}})
			read = append(read, e.name+" "+spoken(e.words))
			continue
		case slices.Contains(seen, f.Name):
			note(finding{code: ExtraForce, about: f.Name, all: []string{f.Name}})
		case !r.pointsTo(body, f, e.words):
			note(finding{code: WrongSide, about: f.Name, all: []string{f.Name}})
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

// forceCalled finds the force that a typed name means; kind is set where a name
// means a kind of force that the body has none of.
func (m *marking) forceCalled(name string, body *statics.Body) (*statics.Force, statics.Kind) {
	if reading, err := m.letters(m.item).Read(name); err == nil {
		if side := reading.Lines[0].Sides[0]; len(reading.Lines[0].Sides) == 1 {
			if f := m.forceMeant(side, body); f != nil {
				return f, ""
			}
		}
	}
	for _, word := range strings.Fields(strings.ToLower(name)) {
		kind, ok := kindWords[word]
		if !ok {
			continue
		}
		if f := onlyOf(body, kind); f != nil {
			return f, ""
		}
		if f := m.forceNamedIn(name, body); f != nil {
			return f, ""
		}
		if !hasKind(body, kind) {
			return nil, kind
		}
		return nil, ""
	}
	if kind, ok := kindOfLetter(name); ok && !hasKind(body, kind) {
		return nil, kind
	}
	return nil, ""
}

// forceMeant finds the force of a letter, or of m·g for the weight.
func (m *marking) forceMeant(n *expr.Node, body *statics.Body) *statics.Force {
	if n.Op == expr.Name {
		f, _ := body.Force(m.owner(n.Name))
		return f
	}
	for i := range body.Forces {
		if f := &body.Forces[i]; f.Size != nil && expr.Equal(f.Size, n) {
			return f
		}
	}
	return nil
}

// forceNamedIn finds a force's name among the words ("tension T1").
func (m *marking) forceNamedIn(text string, body *statics.Body) *statics.Force {
	for _, word := range strings.Fields(text) {
		reading, err := m.letters(m.item).Read(word)
		if err == nil && reading.Lines[0].Sides[0].Op == expr.Name {
			if f, ok := body.Force(m.owner(reading.Lines[0].Sides[0].Name)); ok {
				return f
			}
		}
	}
	return nil
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
	bx, by := r.unit(f)
	if math.Sin(r.Tilt(body)) < 0 {
		bx = -bx
	}
	return (!usesRoom || room == [2]int{signOf(x), signOf(y)}) && (!usesSlope || slope == [2]int{signOf(bx), signOf(by)})
}
