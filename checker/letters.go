package checker

import (
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// lexicon holds the letters that a student may type for one system, and where
// each has its place in an environment: first the model's variables, then the
// letters of equal sizes, then the components.
type lexicon struct {
	slots      map[string]int
	equals     []equalLetter
	components []component
	readers    map[string]*expr.Letters // by body; "" where no body is named
	width      int
}

type equalLetter struct {
	name  string
	slot  int
	slots []int
}

// component is one force's component on one axis of its body. name is how it is
// called in files and reports: T1x, or A.T1x where there are several bodies.
type component struct {
	name  string
	body  int
	force *statics.Force
	axis  statics.Axis
	slot  int
	term  term
}

// usualLetters are letters that teachers write for a kind of force, whatever the
// problem calls it. They serve where only one force of the kind is on the body
// and the problem does not use the letter otherwise.
var usualLetters = []struct {
	kind    statics.Kind
	letters string
}{
	{statics.Weight, "w W Fg FG G"},
	{statics.Normal, "N FN R n"},
	{statics.Friction, "f Ff FR Ffr fs fk"},
	{statics.Tension, "T FT"},
}

func newLexicon(m *statics.Model) *lexicon {
	x := &lexicon{slots: map[string]int{}, readers: map[string]*expr.Letters{}}
	for i, v := range m.Variables {
		x.slots[v.Name] = i
	}
	x.width = len(m.Variables)
	for _, e := range m.Equal {
		entry := equalLetter{name: e.Letter, slot: x.place(e.Letter)}
		for _, name := range e.Names {
			entry.slots = append(entry.slots, x.slots[name])
		}
		x.equals = append(x.equals, entry)
	}
	for b := range m.Bodies {
		x.addComponents(m, b)
	}
	x.readers[""] = x.reader(m, nil)
	for b := range m.Bodies {
		x.readers[m.Bodies[b].Name] = x.reader(m, &m.Bodies[b])
	}
	return x
}

func (x *lexicon) place(name string) int {
	if slot, taken := x.slots[name]; taken {
		return slot
	}
	x.slots[name] = x.width
	x.width++
	return x.width - 1
}

func (x *lexicon) addComponents(m *statics.Model, b int) {
	body := &m.Bodies[b]
	for i := range body.Forces {
		f := &body.Forces[i]
		for _, axis := range []statics.Axis{statics.X, statics.Y} {
			name := f.Name + axis.String()
			if len(m.Bodies) > 1 {
				name = body.Name + "." + name
			}
			x.components = append(x.components, component{
				name: name, body: b, force: f, axis: axis, slot: x.place(name), term: termOf(m, f, axis),
			})
		}
	}
}

// component finds a component by its name in reports.
func (x *lexicon) component(name string) (*component, bool) {
	for i := range x.components {
		if x.components[i].name == name {
			return &x.components[i], true
		}
	}
	return nil, false
}

// reader builds the vocabulary for lines about one body; nil for lines about all.
func (x *lexicon) reader(m *statics.Model, body *statics.Body) *expr.Letters {
	l := &expr.Letters{}
	for _, v := range m.Variables {
		l.Add(v.Name, kindOf(v))
	}
	for _, e := range x.equals {
		l.Add(e.name, expr.Plain)
	}
	if _, ok := m.Variable("mu"); ok {
		l.Alias("mu_s", "mu")
		l.Alias("mu_k", "mu")
	}
	for _, c := range x.components {
		l.Add(c.name, expr.Plain)
	}
	for i := range x.components {
		c := &x.components[i]
		if body == nil || m.Bodies[c.body].Name == body.Name {
			l.Alias(c.force.Name+c.axis.String(), c.name)
		}
		l.Alias(m.Bodies[c.body].Name+"."+c.force.Name, c.force.Name)
	}
	for i := range m.Bodies {
		if body == nil && len(m.Bodies) > 1 || body != nil && m.Bodies[i].Name != body.Name {
			continue
		}
		x.addUsual(l, m, i)
	}
	return l
}

// addUsual adds the usual letters of the forces that are alone of their kind.
func (x *lexicon) addUsual(l *expr.Letters, m *statics.Model, b int) {
	for _, usual := range usualLetters {
		only := onlyOf(&m.Bodies[b], usual.kind)
		if only == nil {
			continue
		}
		for _, letter := range strings.Fields(usual.letters) {
			if l.Has(letter) {
				continue
			}
			l.Alias(letter, only.Name)
			for i := range x.components {
				if c := &x.components[i]; c.force == only {
					l.Alias(letter+c.axis.String(), c.name)
				}
			}
		}
	}
}

func onlyOf(b *statics.Body, kind statics.Kind) *statics.Force {
	var only *statics.Force
	for i := range b.Forces {
		if b.Forces[i].Kind == kind {
			if only != nil {
				return nil
			}
			only = &b.Forces[i]
		}
	}
	return only
}

func kindOf(v statics.Variable) expr.Kind {
	switch v.Dim {
	case quantity.Angle:
		return expr.Angle
	case quantity.Mass:
		return expr.Mass
	}
	return expr.Plain
}

// letters returns the vocabulary for an item: a body's for a body or one of its
// components, everything for none.
func (r *Reference) letters(item string) *expr.Letters {
	body, _, _ := strings.Cut(item, ".")
	if l, ok := r.readers[body]; ok {
		return l
	}
	if len(r.Bodies) == 1 {
		return r.readers[r.Bodies[0].Name]
	}
	return r.readers[""]
}

// owner names the force that a letter speaks of: itself, or the force that a
// given is the size of.
func (r *Reference) owner(name string) string {
	if _, ok := r.Force(name); ok {
		return name
	}
	for _, b := range r.Bodies {
		for _, f := range b.Forces {
			if f.Size != nil && f.Size.Op == expr.Name && f.Size.Name == name {
				return f.Name
			}
		}
	}
	return name
}
