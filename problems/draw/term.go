package draw

import (
	"math"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
)

// function is what a term multiplies a size by.
type function uint8

const (
	whole function = iota
	sine
	cosine
	tangent
)

func (f function) of(angle float64) float64 {
	switch f {
	case sine:
		return math.Sin(angle)
	case cosine:
		return math.Cos(angle)
	case tangent:
		return math.Tan(angle)
	}
	return 1
}

// term is one force's component in an equation: scale · f(angle) · size. A nil size is
// the value at slot.
type term struct {
	force    *statics.Force
	scale    float64
	function function
	angle    *expr.Program
	letter   string // the angle's letter, "" if it is an expression
	slot     int
	size     *expr.Program
}

// row is the equation of one body along one axis. Forces at a right angle to the
// axis are in it with a scale of zero, so that a change can put them in.
type row []term

func (p *problem) term(f *statics.Force, axis statics.Axis) term {
	factor := f.Factor(axis)
	slot, _ := p.Slot(f.Name)
	t := term{force: f, scale: float64(factor.Sign), slot: slot}
	if factor.Function != "" {
		t.function = map[string]function{"sin": sine, "cos": cosine}[factor.Function]
		t.angle = p.program("", factor.Angle)
		if factor.Angle.Op == expr.Name {
			t.letter = factor.Angle.Name
		}
	}
	return t
}

func (t *term) value(env []float64) float64 {
	// Not multiplied out: a tangent may be infinite, and nothing times infinity is no number.
	if t.scale == 0 {
		return 0
	}
	v := t.scale
	if t.size != nil {
		v *= t.size.Run(env)
	} else {
		v *= env[t.slot]
	}
	if t.function != whole {
		v *= t.function.of(t.angle.Run(env))
	}
	return v
}

func (w row) value(env []float64) float64 {
	total := 0.0
	for i := range w {
		total += w[i].value(env)
	}
	return total
}

// largest is the size of the row's largest term.
func (w row) largest(env []float64) float64 {
	most := 0.0
	for i := range w {
		most = math.Max(most, math.Abs(w[i].value(env)))
	}
	return most
}

// problem is a solved system while its wrong paths are worked out.
type problem struct {
	*statics.Model
	solution []float64
	rows     []row // for each body its x, then its y
	compiled map[string]*expr.Program
}

func newProblem(m *statics.Model, solution []float64) *problem {
	p := &problem{Model: m, solution: solution, compiled: map[string]*expr.Program{}}
	for b := range m.Bodies {
		for _, axis := range []statics.Axis{statics.X, statics.Y} {
			var w row
			for i := range m.Bodies[b].Forces {
				w = append(w, p.term(&m.Bodies[b].Forces[i], axis))
			}
			p.rows = append(p.rows, w)
		}
	}
	return p
}

// program compiles a tree, once for each key; always anew for the key "".
func (p *problem) program(key string, tree *expr.Node) *expr.Program {
	if made, ok := p.compiled[key]; ok {
		return made
	}
	made := p.Program(tree)
	if key != "" {
		p.compiled[key] = &made
	}
	return &made
}

// sizeTree returns the tree of a term's size, nil for an unknown size.
func (p *problem) sizeTree(t term) *expr.Node {
	if v, ok := p.Variable(t.force.Name); ok && v.Role == statics.IsDerived && t.size == nil {
		return v.Size
	}
	return nil
}

// substitute returns the tree with a letter replaced.
func substitute(n *expr.Node, name string, by *expr.Node) *expr.Node {
	if n.Op == expr.Name && n.Name == name {
		return by
	}
	if len(n.Args) == 0 {
		return n
	}
	c := *n
	c.Args = make([]*expr.Node, len(n.Args))
	for i, a := range n.Args {
		c.Args[i] = substitute(a, name, by)
	}
	return &c
}

// onlyOf returns the body's force of that kind, nil if there is none or more than one.
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
