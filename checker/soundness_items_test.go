package checker_test

import (
	"math"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/statics"
)

// direction returns a force's unit vector on its body's axes at rest.
func (b *bench) direction(f statics.Force) (x, y float64) {
	var xy [2]float64
	for _, axis := range []statics.Axis{statics.X, statics.Y} {
		if t, ok := termOn(f, axis); ok {
			t.size = whole(1)
			xy[axis] = t.signed().value(b.at)
		}
	}
	return xy[0], xy[1]
}

// letterUnknown returns the unknown letters in the direction of a force.
func letterUnknown(w *writer, f statics.Force) []string {
	var unknown []string
	for _, axis := range []statics.Axis{statics.X, statics.Y} {
		if t, ok := termOn(f, axis); ok && t.angle != nil && !w.isKnown(t.angle) {
			unknown = append(unknown, t.angle.letters()...)
		}
	}
	return unknown
}

// component is an item of the stage components.
type component struct {
	item string
	body statics.Body
	f    statics.Force
	axis statics.Axis
}

func (b *bench) components() []component {
	var all []component
	for _, body := range b.sys.Bodies {
		for _, f := range body.Forces {
			for _, axis := range []statics.Axis{statics.X, statics.Y} {
				item := f.Name + axis.String()
				if len(b.sys.Bodies) > 1 {
					item = body.Name + "." + item
				}
				all = append(all, component{item, body, f, axis})
			}
		}
	}
	return all
}

// rightComponent writes a component as a size or with its sign.
func (w *writer) rightComponent(c component) (string, bool) {
	t, ok := termOn(c.f, c.axis)
	if !ok {
		return pick(w.Rand, "0", "0 N", "0", w.style.letter(c.f.Name)+" cos 90°", "0.0"), true
	}
	w.parts = ""
	p := w.write(t)
	if p.neg && chance(w.Rand, 0.5) {
		p.neg = false
	}
	l := line{sides: []*tree{p.tree()}}
	right, size := t.signed().value(w.at), math.Abs(p.tree().value(w.at))
	if math.Abs(size-math.Abs(right)) > 0.004*math.Abs(right) {
		return "", false
	}
	prefix := ""
	if chance(w.Rand, 0.3) {
		prefix = w.componentLetter(c) + w.style.equals
	}
	return prefix + w.style.line(l.sides), true
}

func (w *writer) componentLetter(c component) string {
	name := w.style.letter(c.f.Name)
	if strings.HasSuffix(name, "}") {
		return strings.TrimSuffix(name, "}") + c.axis.String() + "}"
	}
	if w.style.subscript == 2 && strings.HasSuffix(c.f.Name, "1") && c.axis == statics.X {
		return name + "ₓ"
	}
	return name + c.axis.String()
}

// wrongComponent writes one of the mistakes in a component.
func (w *writer) wrongComponent(c component) (text string, m mistake, ok bool) {
	t, here := termOn(c.f, c.axis)
	w.parts, w.equal = "", false
	if !here {
		x := term{force: c.f, size: letter(c.f.Name)}
		m = mistake{codes(checker.ExtraForce, checker.NotResolved, checker.WrongAxis), c.f.Name, []term{x}}
		return w.style.print(w.write(x).tree()), m, true
	}
	s := sum{body: c.body.Name, axis: c.axis, terms: []term{t}}
	all := w.mistakesIn(s, 0)
	m = all[w.IntN(len(all))]
	switch {
	case len(m.terms) != 1 && m.codes[0] != checker.TwiceCounted, m.codes[0] == checker.Sign && (t.neg || c.f.Direction != nil):
		return "", m, false
	case m.codes[0] == checker.SineCosine:
		m.codes = append(m.codes, checker.WrongAxis)
	}
	var sides []*tree
	typedValue := 0.0
	for _, t := range m.terms {
		p := w.write(t)
		sides = append(sides, p.tree())
		typedValue += p.tree().value(w.at)
	}
	right := t.signed().value(w.at)
	if t.neg && chance(w.Rand, 0.5) {
		for i := range sides {
			sides[i] = negative(sides[i])
		}
		typedValue = -typedValue
	}
	if math.Abs(math.Abs(typedValue)-math.Abs(right)) < 0.03*math.Abs(right) && (t.neg || typedValue > 0) {
		return "", m, false
	}
	return w.style.print(plus(sides...)), m, true
}
