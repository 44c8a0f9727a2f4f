package statics

import (
	"fmt"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
)

// partial is a dimension of which one letter's share may still be open: the
// whole is dim times open's dimension to the power of times.
type partial struct {
	dim   quantity.Dimension
	open  string
	times int
	free  bool // a zero, or something that fits any dimension
}

// dimensions works out what trees measure. known are the letters of which that is known.
type dimensions struct {
	m     *Model
	known map[string]bool
}

// measure finds the dimension of every unknown letter from the sizes and angles
// in which it stands, and checks that every size is a force.
func (m *Model) measure() error {
	known := map[string]bool{}
	for _, v := range m.Variables {
		known[v.Name] = v.Role != IsUnknown || v.Dim == quantity.Force
		if v.Angle && v.Role == IsUnknown {
			m.setDim(v.Name, quantity.Angle)
			known[v.Name] = true
		}
	}
	ds := &dimensions{m, known}
	var problem error
	check := func(tree *expr.Node, want quantity.Dimension, what string) {
		if tree == nil || problem != nil {
			return
		}
		d, err := ds.of(tree)
		if err != nil {
			problem = err
			return
		}
		problem = ds.fit(d, want, what)
	}
	// All sizes before the angles: a letter in both is settled by the force that it must give.
	m.eachForce(func(f *Force) { check(f.Size, quantity.Force, "the size of "+f.Name) })
	m.eachForce(func(f *Force) {
		check(f.Angle, quantity.Angle, "the angle of "+f.Name)
		check(f.Direction, quantity.Angle, "the direction of "+f.Name)
	})
	return problem
}

func (m *Model) setDim(name string, d quantity.Dimension) {
	v := &m.Variables[m.slots[name]]
	v.Dim, v.Angle = d, d == quantity.Angle
}

// fit settles an open letter so that the whole has the wanted dimension.
func (d *dimensions) fit(p partial, want quantity.Dimension, what string) error {
	if p.free || p.open == "" && p.dim == want {
		return nil
	}
	if p.open == "" {
		return fmt.Errorf("%s is %s, but it must be %s", what, p.dim, want)
	}
	rest := want.Over(p.dim)
	if p.times == -1 {
		rest = quantity.None.Over(rest)
	} else if p.times != 1 {
		half, ok := rest.Root()
		if !ok || p.times != 2 {
			return fmt.Errorf("%s cannot be a force", what)
		}
		rest = half
	}
	d.m.setDim(p.open, rest)
	d.known[p.open] = true
	return nil
}

// Dimension is that of an expression in the model's letters; the error says what does
// not fit together.
func (m *Model) Dimension(n *expr.Node) (quantity.Dimension, error) {
	known := map[string]bool{}
	for _, v := range m.Variables {
		known[v.Name] = true
	}
	d, err := (&dimensions{m, known}).of(n)
	return d.dim, err
}

func (d *dimensions) of(n *expr.Node) (partial, error) {
	args := make([]partial, len(n.Args))
	for i, a := range n.Args {
		var err error
		if args[i], err = d.of(a); err != nil {
			return partial{}, err
		}
	}
	switch n.Op {
	case expr.Number:
		u, _ := quantity.Find(n.Unit)
		return partial{dim: u.Dim, free: n.Num.Value == 0}, nil
	case expr.Name:
		v := d.m.Variables[d.m.slots[n.Name]]
		if d.known[n.Name] {
			return partial{dim: v.Dim}, nil
		}
		return partial{open: n.Name, times: 1}, nil
	case expr.Neg, expr.Size:
		return args[0], nil
	case expr.Add, expr.Sub:
		return d.alike(args)
	case expr.Mul, expr.Div:
		return combine(n.Op, args[0], args[1])
	case expr.Pow:
		return raise(n, args[0])
	case expr.Call:
		if n.Name != "sqrt" {
			// A function acts on an angle, its inverse on a plain number.
			want := quantity.Angle
			if _, inverse := inverses[n.Name]; inverse {
				want = quantity.None
			}
			if err := d.fit(args[0], want, "the argument of "+n.Name); err != nil {
				return partial{}, err
			}
		}
		return call(n.Name, args[0])
	}
	return partial{}, fmt.Errorf("a unit cannot come after a bracket here")
}

func (d *dimensions) alike(args []partial) (partial, error) {
	a, b := args[0], args[1]
	switch {
	case b.free || b.open != "" && d.fit(b, a.dim, "a term") == nil:
		return a, nil
	case a.free || a.open != "" && d.fit(a, b.dim, "a term") == nil:
		return b, nil
	case a.dim == b.dim:
		return a, nil
	}
	return partial{}, fmt.Errorf("%s and %s cannot be added", a.dim, b.dim)
}

func combine(op expr.Op, a, b partial) (partial, error) {
	if a.open != "" && b.open != "" {
		if a.open != b.open {
			return partial{}, fmt.Errorf("%s and %s are both unknown, so their units cannot be worked out", a.open, b.open)
		}
	}
	// One of the two is empty, or they are the same letter.
	r := partial{open: a.open + b.open, free: a.free || b.free}
	if a.open == b.open {
		r.open = a.open
	}
	if op == expr.Div {
		r.dim, r.times = a.dim.Over(b.dim), a.times-b.times
	} else {
		r.dim, r.times = a.dim.Times(b.dim), a.times+b.times
	}
	if r.times == 0 {
		r.open = ""
	}
	return r, nil
}

func raise(n *expr.Node, base partial) (partial, error) {
	if n.Args[1].Op != expr.Number {
		return partial{}, fmt.Errorf("an exponent must be a plain number")
	}
	switch n.Args[1].Num.Value {
	case 1:
		return base, nil
	case 2:
		return combine(expr.Mul, base, base)
	}
	if base.dim == quantity.None && base.open == "" {
		return base, nil
	}
	return partial{}, fmt.Errorf("a quantity with a unit can only be squared")
}

var inverses = map[string]bool{"asin": true, "acos": true, "atan": true}

func call(function string, arg partial) (partial, error) {
	switch {
	case inverses[function]:
		return partial{dim: quantity.Angle}, nil
	case function == "sqrt":
		half, ok := arg.dim.Root()
		if !ok || arg.open != "" {
			return partial{}, fmt.Errorf("the square root does not have a meaningful unit")
		}
		return partial{dim: half}, nil
	}
	return partial{}, nil
}
