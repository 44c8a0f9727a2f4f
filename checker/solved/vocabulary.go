package solved

import (
	"slices"
	"strings"
	"sync"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// Vocabulary holds the letters that a student may type for one system, and where
// each has its place in an environment: first the model's variables, then the
// letters of equal sizes, then the components.
type Vocabulary struct {
	Slots      map[string]int
	Equals     []EqualLetter
	Components []Component
	Readers    map[string]*expr.Letters // by body; "" where no body is named
	width      int
}

type EqualLetter struct {
	Name  string
	Slot  int
	Slots []int
}

// Component is one force's component on one axis of its body. Name is how it is
// called in files and reports: T1x, or A.T1x where there are several bodies.
type Component struct {
	Name  string
	Body  int
	Force *statics.Force
	Axis  statics.Axis
	Slot  int
	Term  Term
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

func newVocabulary(m *statics.Model, kin *Kin) *Vocabulary {
	x := &Vocabulary{Slots: map[string]int{}}
	for i, v := range m.Variables {
		x.Slots[v.Name] = i
	}
	x.width = len(m.Variables)
	for _, e := range m.Equal {
		entry := EqualLetter{Name: e.Letter, Slot: x.place(e.Letter)}
		for _, name := range e.Names {
			entry.Slots = append(entry.Slots, x.Slots[name])
		}
		x.Equals = append(x.Equals, entry)
	}
	for b := range m.Bodies {
		x.addComponents(m, b)
	}
	x.Readers = kin.readersOf(x, m)
	return x
}

// Kin is what the copies of one problem have in common, whatever their numbers and units:
// the letters, with what was read in them. The zero value is ready; it may be used by
// several goroutines.
type Kin struct {
	once    sync.Once
	readers map[string]*expr.Letters
}

func (k *Kin) readersOf(x *Vocabulary, m *statics.Model) map[string]*expr.Letters {
	k.once.Do(func() {
		k.readers = map[string]*expr.Letters{"": x.reader(m, nil)}
		for b := range m.Bodies {
			k.readers[m.Bodies[b].Name] = x.reader(m, &m.Bodies[b])
		}
		for _, l := range k.readers {
			l.Remember()
		}
	})
	return k.readers
}

func (x *Vocabulary) place(name string) int {
	if slot, taken := x.Slots[name]; taken {
		return slot
	}
	x.Slots[name] = x.width
	x.width++
	return x.width - 1
}

func (x *Vocabulary) addComponents(m *statics.Model, b int) {
	body := &m.Bodies[b]
	for i := range body.Forces {
		f := &body.Forces[i]
		for _, axis := range []statics.Axis{statics.X, statics.Y} {
			name := f.Name + axis.String()
			if len(m.Bodies) > 1 {
				name = body.Name + "." + name
			}
			x.Components = append(x.Components, Component{
				Name: name, Body: b, Force: f, Axis: axis, Slot: x.place(name), Term: TermOf(m, f, axis),
			})
		}
	}
}

// Component finds a component by its name in reports.
func (x *Vocabulary) Component(name string) (*Component, bool) {
	for i := range x.Components {
		if x.Components[i].Name == name {
			return &x.Components[i], true
		}
	}
	return nil, false
}

// reader builds the vocabulary for lines about one body; nil for lines about all.
func (x *Vocabulary) reader(m *statics.Model, body *statics.Body) *expr.Letters {
	l := &expr.Letters{}
	for _, v := range m.Variables {
		l.Add(v.Name, kindOf(v))
	}
	for _, e := range x.Equals {
		l.Add(e.Name, expr.Plain)
	}
	if _, ok := m.Variable("mu"); ok {
		l.Alias("mu_s", "mu")
		l.Alias("mu_k", "mu")
	}
	for _, c := range x.Components {
		l.Add(c.Name, expr.Plain)
	}
	for i := range x.Components {
		c := &x.Components[i]
		if body == nil || m.Bodies[c.Body].Name == body.Name {
			l.Alias(c.Force.Name+c.Axis.String(), c.Name)
		}
		l.Alias(m.Bodies[c.Body].Name+"."+c.Force.Name, c.Force.Name)
	}
	for i := range m.Bodies {
		if body == nil && len(m.Bodies) > 1 || body != nil && m.Bodies[i].Name != body.Name {
			continue
		}
		x.addUsual(l, m, i)
	}
	x.addNames(l, m, body)
	return l
}

// addUsual adds the usual letters of the forces that are alone of their kind.
func (x *Vocabulary) addUsual(l *expr.Letters, m *statics.Model, b int) {
	for _, usual := range usualLetters {
		only := OnlyOf(&m.Bodies[b], usual.kind)
		if only == nil {
			continue
		}
		for _, letter := range strings.Fields(usual.letters) {
			if l.Has(letter) {
				continue
			}
			l.Alias(letter, only.Name)
			for i := range x.Components {
				if c := &x.Components[i]; c.Force == only {
					l.Alias(letter+c.Axis.String(), c.Name)
				}
			}
		}
	}
}

// HasKind reports whether a force of the kind is on the body.
func HasKind(body *statics.Body, kind statics.Kind) bool {
	return slices.ContainsFunc(body.Forces, func(f statics.Force) bool { return f.Kind == kind })
}

// OnlyOf returns the force that is alone of its kind on the body, nil for none.
func OnlyOf(b *statics.Body, kind statics.Kind) *statics.Force {
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

// LettersFor returns the vocabulary for an item: a body's for a body or one of its
// components, everything for none.
func (s *System) LettersFor(item string) *expr.Letters {
	body, _, _ := strings.Cut(item, ".")
	if l, ok := s.Readers[body]; ok {
		return l
	}
	if len(s.Bodies) == 1 {
		return s.Readers[s.Bodies[0].Name]
	}
	return s.Readers[""]
}

// Owner names the force that a letter speaks of: itself, or the force that a
// given is the size of.
func (s *System) Owner(name string) string {
	if _, ok := s.Force(name); ok {
		return name
	}
	for _, b := range s.Bodies {
		for _, f := range b.Forces {
			if f.Size != nil && f.Size.Op == expr.Name && f.Size.Name == name {
				return f.Name
			}
		}
	}
	return name
}

// KindOfLetter tells which kind of force a usual letter speaks of.
func KindOfLetter(name string) (statics.Kind, bool) {
	for _, u := range usualLetters {
		if slices.Contains(strings.Fields(u.letters), name) {
			return u.kind, true
		}
	}
	return "", false
}
