package diagram

import (
	"slices"
	"strings"
	"unicode"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
)

// kindWords are the names that forces go by in speech.
var kindWords = map[string]statics.Kind{
	"weight": statics.Weight, "gravity": statics.Weight, "gravitational": statics.Weight,
	"normal": statics.Normal, "support": statics.Normal, "contact": statics.Normal, "reaction": statics.Normal,
	"friction": statics.Friction, "tension": statics.Tension, "string": statics.Tension, "rope": statics.Tension,
	"cord": statics.Tension, "spring": statics.Spring, "push": statics.Push, "pull": statics.Pull, "strut": statics.Strut,
	"buoyancy": statics.Push, "upthrust": statics.Push, "lift": statics.Push,
}

// KindOf tells which kind of force a letter or a word speaks of; it is empty where neither does.
func KindOf(name string) statics.Kind {
	if kind, ok := solved.KindOfLetter(name); ok {
		return kind
	}
	return kindWords[strings.ToLower(name)]
}

// surfaceWords are things that push with a normal force; a force may go by the name of what exerts it.
var surfaceWords = map[string]bool{"floor": true, "ground": true, "table": true, "wall": true, "scale": true, "scales": true, "shelf": true,
	"platform": true, "bench": true, "surface": true, "plate": true}

// longestEntry is how many words of an entry are looked through, for a name or for the beginning
// of the next entry.
const longestEntry = 30

// known is what is known of the body that is drawn, and of the line's letters.
type known struct {
	solved *solved.System
	item   string
	body   *statics.Body
}

// meaning is what a name in a diagram can mean: forces of the body, or the
// mistake of drawing it here.
type meaning struct {
	forces []*statics.Force
	part   string // the mass, where it is the weight of one mass of several in one force
	code   mistake.Code
	about  string
	isPart bool // a component was drawn, of the force that it is about
}

// meaningOf finds what a typed name means on a body: a force's letter, the letter
// of several, a kind of force that it has only one of; else a component drawn as
// a force, another body's force, or a kind of force that it has none of.
func (k known) meaningOf(name string) meaning {
	if reading, err := k.solved.LettersFor(k.item).Read(name); err == nil && len(reading.Lines[0].Sides) == 1 {
		if meant := k.meaningOfTree(reading.Lines[0].Sides[0]); meant.code != "" || len(meant.forces) > 0 {
			return meant
		}
	}
	words := strings.Fields(name)
	if len(words) > longestEntry {
		return meaning{}
	}
	if exerting := k.exertedBy(words); len(exerting) > 0 {
		return meaning{forces: exerting}
	}
	for _, word := range strings.Fields(strings.ToLower(name)) {
		kind, ok := kindWords[word]
		if !ok {
			continue
		}
		if f := solved.OnlyOf(k.body, kind); f != nil {
			return meaning{forces: []*statics.Force{f}}
		}
		// "Tension T2": the kind says what, the letter beside it which one.
		for _, other := range words {
			if meant := k.meaningOfWord(other); len(meant.forces) > 0 {
				return meant
			}
		}
		if !solved.HasKind(k.body, kind) {
			return meaning{code: mistake.ExtraForce}
		}
		if word == strings.ToLower(name) {
			return meaning{forces: allOf(k.body, kind)} // which one, its side says
		}
	}
	for _, word := range strings.Fields(strings.ToLower(name)) {
		if f := solved.OnlyOf(k.body, statics.Normal); surfaceWords[word] && f != nil {
			return meaning{forces: []*statics.Force{f}}
		}
	}
	kind, ok := solved.KindOfLetter(name)
	if ok && !solved.HasKind(k.body, kind) && !(kind == statics.Tension && solved.HasKind(k.body, statics.Pull)) {
		return meaning{code: mistake.ExtraForce}
	}
	return meaning{} // a T where a rope's pull is called P is another letter, no other force
}

// exertedBy lists the forces by the words for what exerts them: those of which the problem's own
// words for it hold all that were typed.
func (k known) exertedBy(words []string) []*statics.Force {
	var all []*statics.Force
	for i := range k.body.Forces {
		f := &k.body.Forces[i]
		by := strings.Fields(strings.ToLower(k.solved.Words.ByOn(k.body.Name, f.Name)))
		holds := len(words) > 0
		for _, word := range words {
			holds = holds && slices.Contains(by, strings.ToLower(word))
		}
		if holds {
			all = append(all, f)
		}
	}
	return all
}

func (k known) meaningOfWord(word string) meaning {
	reading, err := k.solved.LettersFor(k.item).Read(word)
	if err != nil || len(reading.Lines[0].Sides) != 1 {
		return meaning{}
	}
	return k.meaningOfTree(reading.Lines[0].Sides[0])
}

func (k known) meaningOfTree(n *expr.Node) meaning {
	var meant meaning
	for i := range k.body.Forces {
		f := &k.body.Forces[i]
		if n.Op == expr.Name && f.Name == n.Name {
			return meaning{forces: []*statics.Force{f}}
		}
		if f.Size != nil && expr.Equal(f.Size, n) || n.Op == expr.Name && slices.Contains(k.named(n.Name), f.Name) {
			meant.forces = append(meant.forces, f)
		}
	}
	if len(meant.forces) > 0 {
		return meant
	}
	if meant := k.massDrawn(n); len(meant.forces) > 0 || meant.code != "" {
		return meant
	}
	if n.Op == expr.Name {
		if c, ok := k.solved.Component(n.Name); ok {
			return meaning{code: mistake.TwiceCounted, about: c.Force.Name, isPart: true}
		}
		if f, ok := k.solved.Force(n.Name); ok {
			return meaning{code: mistake.ExtraForce, about: f.Name}
		}
	}
	if f := k.partOf(n); f != "" {
		return meaning{code: mistake.TwiceCounted, about: f, isPart: true}
	}
	if v, ok := k.solved.Model.Variable(n.Name); n.Op == expr.Name && ok && v.Dim != quantity.Force && v.Dim != quantity.Angle {
		return k.valueDrawn(n.Name)
	}
	return meaning{}
}

// valueDrawn is what a letter that is no force means in a diagram: the g of a weight drawn for the
// weight, else one force too many.
func (k known) valueDrawn(name string) meaning {
	for i := range k.body.Forces {
		if f := &k.body.Forces[i]; f.Kind == statics.Weight && f.Size != nil && f.Size.Has(name) {
			return meaning{code: mistake.MassForWeight, about: f.Name}
		}
	}
	return meaning{code: mistake.ExtraForce}
}

// massDrawn finds what a mass, or the weight of one of several masses, means on a body:
// a weight that the file holds in one may be drawn apart.
func (k known) massDrawn(n *expr.Node) meaning {
	letters := k.solved.LettersFor(k.item)
	for i := range k.body.Forces {
		f := &k.body.Forces[i]
		if f.Kind != statics.Weight || f.Size == nil {
			continue
		}
		for _, mass := range f.Size.Names() {
			switch {
			case letters.Kind(mass) != expr.Mass:
			case n.Op == expr.Name && n.Name == mass:
				return meaning{code: mistake.MassForWeight, about: f.Name}
			// m1 g, drawn for the weight of one of two masses that the file holds in one.
			case n.Op == expr.Mul && n.Has(mass) && n.Has("g") && n.Size() == 3 && f.Size.Size() > 3:
				return meaning{forces: []*statics.Force{f}, part: mass}
			}
		}
	}
	return meaning{}
}

// named lists the forces that a letter of equal sizes stands for.
func (k known) named(letter string) []string {
	var names []string
	for _, e := range k.solved.Equals {
		if e.Name == letter {
			for _, slot := range e.Slots {
				names = append(names, k.solved.Model.Variables[slot].Name)
			}
		}
	}
	return names
}

// partOf returns the force of which a product with a function of an angle is a
// part ("w sin α"), "" if it is none.
func (k known) partOf(n *expr.Node) string {
	turned := false
	n.Walk(func(n *expr.Node) { turned = turned || n.Op == expr.Call })
	if !turned {
		return ""
	}
	for i := range k.body.Forces {
		f := &k.body.Forces[i]
		if n.Has(f.Name) || f.Size != nil && len(f.Size.Names()) > 0 && n.Has(f.Size.Names()[0]) {
			return f.Name
		}
	}
	return ""
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
