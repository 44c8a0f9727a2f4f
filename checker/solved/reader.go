package solved

import (
	"strings"
	"sync"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
)

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
		// At rest there is one coefficient, and books write both.
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
		// Where no body is named, N could be the normal force on any of them.
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
			// Never over a letter of the problem's own: R may be a radius there.
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
