package checker

import (
	"slices"
	"strings"
	"unicode"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/lines"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
	"example.org/standstill/checker/wording"
)

// The force diagram in words: "T1 up left; T2 up right; w down". Sides are those
// of the room, or of the slope where one is named.

// kindWords are the names that forces go by in speech.
var kindWords = map[string]statics.Kind{
	"weight": statics.Weight, "gravity": statics.Weight, "gravitational": statics.Weight,
	"normal": statics.Normal, "support": statics.Normal, "contact": statics.Normal, "reaction": statics.Normal,
	"friction": statics.Friction, "tension": statics.Tension, "string": statics.Tension, "rope": statics.Tension,
	"cord": statics.Tension, "spring": statics.Spring, "push": statics.Push, "pull": statics.Pull, "strut": statics.Strut,
}

// surfaceWords are things that push with a normal force; a force may go by the name of what exerts it.
var surfaceWords = map[string]bool{"floor": true, "ground": true, "table": true, "wall": true, "scale": true, "scales": true, "shelf": true,
	"platform": true, "bench": true, "surface": true, "plate": true}

// markDiagram judges a typed force diagram of one body.
func (r *Reference) markDiagram(a Answer) Report {
	d := &diagram{marking: r.marking(Diagram, a.Item, expr.Line{})}
	var ok bool
	if d.body, ok = r.solved.Body(a.Item); !ok {
		d.body = &r.solved.Bodies[0]
	}
	whole := Report{Stage: Diagram, Item: a.Item, Text: a.Text, To: len([]rune(lines.Clean(a.Text))), Answers: []string{a.Item}}
	if len(a.Text) > mostDiagram {
		return whole.as(Report{Verdict: Unread, Code: Unreadable, Message: wording.SaidDiagramLong})
	}
	entries, _ := r.Lines(a)
	if len(entries) > lines.Most {
		return whole.as(Report{Verdict: Unread, Code: Unreadable, Message: wording.SaidDiagramLong})
	}
	for i := range entries {
		if isListMark().MatchString(entries[i].Text) {
			continue
		}
		apart := d.runOn(entries[i].Text)
		if len(apart) > lines.Most {
			return whole.as(Report{Verdict: Unread, Code: Unreadable, Message: wording.SaidDiagramLong})
		}
		for _, one := range apart {
			if unread := d.take(one); unread != nil {
				unread.Pos, unread.End = entries[i].Span()
				return whole.as(*unread)
			}
		}
	}
	report := d.report()
	report.Read = strings.Join(d.read, "; ")
	return whole.as(report)
}

// as puts a judgement of the whole text into its place.
func (whole Report) as(judged Report) Report {
	judged.Stage, judged.Item, judged.Text, judged.To = whole.Stage, whole.Item, whole.Text, whole.To
	if judged.Verdict != Unread {
		judged.Answers = whole.Answers
	}
	return judged
}

// isListMark matches the number of an item of a list.
var isListMark = pattern.Of(`^\s*(?:\d{1,2}|[-*•])\s*$`)

// mostDiagram is how long a diagram in words may be, in bytes.
const mostDiagram = 2000

// longestForce is how long one force with its side may be, in bytes; longestEntry is how many
// words of it are looked through for the beginning of the next.
const (
	longestForce = 300
	longestEntry = 30
)

// diagram is the state of reading one: the forces seen so far and the first
// thing that is wrong.
type diagram struct {
	*marking
	body  *statics.Body
	read  []string
	seen  []string
	parts []string // the masses of a lumped weight that were drawn apart
	first *mistake.Finding
}

// runOn takes apart forces that stand one behind the other with nothing between, as in "T1 ↖ T2 ↗":
// behind a side, a name of the body's forces begins another.
func (d *diagram) runOn(text string) []string {
	var all []string
	words := strings.Fields(plainSides(text))
	start := 0
	names := map[string]bool{}
	for i, word := range words {
		if i == start || i-start > longestEntry || len(all) > lines.Most {
			continue
		}
		word = strings.Trim(word, ":=()[]")
		isForce, known := names[word]
		if !known {
			isForce = len(d.meaningOfWord(word, d.body).forces) > 0
			names[word] = isForce
		}
		if !isForce {
			continue
		}
		if before := parseEntry(strings.Join(words[start:i], " ")); before.named && len(before.words) > 0 {
			all = append(all, strings.Join(words[start:i], " "))
			start = i
		}
	}
	if start == 0 {
		return []string{text}
	}
	return append(all, strings.Join(words[start:], " "))
}

// take reads one entry. It returns a report where the entry cannot be read.
func (d *diagram) take(part string) *Report {
	if len(part) > longestForce {
		return &Report{Verdict: Unread, Code: Unreadable, Item: d.item, Message: wording.SaidDiagramLong}
	}
	e := parseEntry(part)
	if e.name == "" || len(e.words) == 0 || e.isOpposed() {
		return &Report{Verdict: Unread, Code: Unreadable, Item: d.item, Message: wording.SaidDiagramForm(part)}
	}
	meant := d.meaningOf(e.name, d.body)
	f := d.ref.unseen(d.body, meant.forces, d.seen, e.words)
	switch {
	case f != nil && d.ref.pointsTo(d.body, f, e.words):
		if meant.part != "" && !d.isWhole(f, meant.part) {
			f = nil
		}
	case f != nil && d.isOfMotion(e.name, f):
		d.note(ExtraForce, "", e.name)
		f = nil
	case f != nil:
		d.note(WrongSide, f.Name, f.Name)
	case len(meant.forces) > 0 && isOtherLetter(e.name, meant.forces[0]):
		d.note(ExtraForce, "", e.name) // an F beside the friction f, an R beside the N
	case len(meant.forces) > 0:
		d.note(ExtraForce, meant.forces[0].Name, meant.forces[0].Name)
	case meant.code != "":
		d.note(meant.code, meant.about, e.name)
	case e.name == "F" && !d.anyPointsTo(e.words):
		d.note(ExtraForce, "", e.name) // a force of the motion
	case d.isLetter(e.name):
		return &Report{Verdict: Unread, Code: Unreadable, Item: d.item, Message: wording.SaidDiagramForm(part)}
	default:
		return &Report{Verdict: Unread, Code: UnknownName, Item: d.item, Message: wording.SaidUnknownName(d.solved, e.name)}
	}
	name := e.name
	if f != nil {
		d.seen = append(d.seen, f.Name)
		name = expr.Glyph(f.Name)
	}
	d.read = append(d.read, name+" "+spoken(e.words))
	return nil
}

// isWhole adds the weight of one mass to those that were drawn and reports whether they are
// all of a force that the file holds in one.
func (d *diagram) isWhole(f *statics.Force, mass string) bool {
	d.parts = append(d.parts, mass)
	for _, name := range f.Size.Names() {
		if d.solved.LettersFor("").Kind(name) == expr.Mass && !slices.Contains(d.parts, name) {
			return false
		}
	}
	return true
}

// anyPointsTo reports whether some force on the body points to the sides of the words.
func (d *diagram) anyPointsTo(words []sideWord) bool {
	return slices.ContainsFunc(d.body.Forces, func(f statics.Force) bool { return d.ref.pointsTo(d.body, &f, words) })
}

// isLetter reports whether a name is a letter of the problem that is no force.
func (d *diagram) isLetter(name string) bool {
	_, ok := d.ref.LetterOf(name, d.item)
	return ok
}

// isOfMotion reports whether a capital F was drawn where the friction f does not point:
// a force of the motion.
func (d *diagram) isOfMotion(name string, f *statics.Force) bool {
	return name == "F" && f.Name == "f"
}

func (d *diagram) note(code Code, about, name string) {
	if d.first == nil {
		d.first = &mistake.Finding{Code: code, About: about, All: []string{name}}
	}
}

// report judges what was read: the first thing that is wrong, else what is
// missing.
func (d *diagram) report() Report {
	switch {
	case d.first != nil:
		d.first.Instead = d.first.Code == TwiceCounted && !slices.Contains(d.seen, d.first.About)
		return d.wrong(*d.first)
	case len(d.seen) == 0:
		return Report{Verdict: Unread, Code: Unreadable, Item: d.item, Message: wording.SaidDiagramEmpty}
	}
	missing := mistake.Finding{Code: MissingForce}
	for i := range d.body.Forces {
		if name := d.body.Forces[i].Name; !slices.Contains(d.seen, name) {
			missing.All = append(missing.All, name)
		}
	}
	switch len(missing.All) {
	case 0:
		return d.right()
	case 1:
		missing.About = missing.All[0]
	}
	return d.wrong(missing)
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
	part   string // the mass, where it is the weight of one mass of several in one force
	code   Code
	about  string
}

// meaningOf finds what a typed name means on a body: a force's letter, the letter
// of several, a kind of force that it has only one of; else a component drawn as
// a force, another body's force, or a kind of force that it has none of.
func (m *marking) meaningOf(name string, body *statics.Body) meaning {
	if reading, err := m.solved.LettersFor(m.item).Read(name); err == nil && len(reading.Lines[0].Sides) == 1 {
		if meant := m.meaningOfTree(reading.Lines[0].Sides[0], body); meant.code != "" || len(meant.forces) > 0 {
			return meant
		}
	}
	words := strings.Fields(name)
	if len(words) > longestEntry {
		return meaning{}
	}
	for _, word := range strings.Fields(strings.ToLower(name)) {
		kind, ok := kindWords[word]
		if !ok {
			continue
		}
		if f := solved.OnlyOf(body, kind); f != nil {
			return meaning{forces: []*statics.Force{f}}
		}
		for _, other := range words {
			if meant := m.meaningOfWord(other, body); len(meant.forces) > 0 {
				return meant
			}
		}
		if !solved.HasKind(body, kind) {
			return meaning{code: ExtraForce}
		}
		if word == strings.ToLower(name) {
			return meaning{forces: allOf(body, kind)} // which one, its side says
		}
	}
	for _, word := range strings.Fields(strings.ToLower(name)) {
		if f := solved.OnlyOf(body, statics.Normal); surfaceWords[word] && f != nil {
			return meaning{forces: []*statics.Force{f}}
		}
	}
	kind, ok := solved.KindOfLetter(name)
	if ok && !solved.HasKind(body, kind) && !(kind == statics.Tension && solved.HasKind(body, statics.Pull)) {
		return meaning{code: ExtraForce}
	}
	return meaning{} // a T where a rope's pull is called P is another letter, no other force
}

func (m *marking) meaningOfWord(word string, body *statics.Body) meaning {
	reading, err := m.solved.LettersFor(m.item).Read(word)
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
	if meant := m.massDrawn(n, body); len(meant.forces) > 0 || meant.code != "" {
		return meant
	}
	if n.Op == expr.Name {
		if c, ok := m.solved.Component(n.Name); ok {
			return meaning{code: TwiceCounted, about: c.Force.Name}
		}
		if f, ok := m.solved.Force(n.Name); ok {
			return meaning{code: ExtraForce, about: f.Name}
		}
	}
	if f := m.partOf(n, body); f != "" {
		return meaning{code: TwiceCounted, about: f}
	}
	if v, ok := m.solved.Variable(n.Name); n.Op == expr.Name && ok && v.Dim != quantity.Force && v.Dim != quantity.Angle {
		return m.valueDrawn(n.Name, body)
	}
	return meaning{}
}

// valueDrawn is what a letter that is no force means in a diagram: the g of a weight drawn for the
// weight, else one force too many.
func (m *marking) valueDrawn(name string, body *statics.Body) meaning {
	for i := range body.Forces {
		if f := &body.Forces[i]; f.Kind == statics.Weight && f.Size != nil && f.Size.Has(name) {
			return meaning{code: MassForWeight, about: f.Name}
		}
	}
	return meaning{code: ExtraForce}
}

// massDrawn finds what a mass, or the weight of one of several masses, means on a body:
// a weight that the file holds in one may be drawn apart.
func (m *marking) massDrawn(n *expr.Node, body *statics.Body) meaning {
	letters := m.solved.LettersFor(m.item)
	for i := range body.Forces {
		f := &body.Forces[i]
		if f.Kind != statics.Weight || f.Size == nil {
			continue
		}
		for _, mass := range f.Size.Names() {
			switch {
			case letters.Kind(mass) != expr.Mass:
			case n.Op == expr.Name && n.Name == mass:
				return meaning{code: MassForWeight, about: f.Name}
			case n.Op == expr.Mul && n.Has(mass) && n.Has("g") && n.Size() == 3 && f.Size.Size() > 3:
				return meaning{forces: []*statics.Force{f}, part: mass}
			}
		}
	}
	return meaning{}
}

// named lists the forces that a letter of equal sizes stands for.
func (m *marking) named(letter string) []string {
	var names []string
	for _, e := range m.solved.Equals {
		if e.Name == letter {
			for _, slot := range e.Slots {
				names = append(names, m.solved.Variables[slot].Name)
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

// allOf lists a body's forces of one kind.
func allOf(body *statics.Body, kind statics.Kind) []*statics.Force {
	var all []*statics.Force
	for i := range body.Forces {
		if body.Forces[i].Kind == kind {
			all = append(all, &body.Forces[i])
		}
	}
	return all
}

// isOtherLetter reports whether a force was named by a letter that is not its own.
func isOtherLetter(typed string, f *statics.Force) bool {
	letters := []rune(strings.TrimSpace(typed))
	return len(letters) == 1 && unicode.IsLetter(letters[0]) && expr.Set(string(letters)) != expr.Set(f.Name)
}
