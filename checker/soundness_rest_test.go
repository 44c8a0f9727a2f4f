package checker_test

import (
	"math"
	"slices"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
	"example.org/standstill/problems"
	"gonum.org/v1/gonum/mat"
)

// bench is a problem set up anew from its file: its sums as terms of our own, and
// the values that make them zero, found with gonum alone.
type bench struct {
	id       string
	ref      *checker.Reference
	sys      *statics.System
	sums     []sum
	unknowns []string
	order    []string         // sized forces, each after what it needs
	sizes    map[string]*tree // of the sized forces
	at       env              // the solution
	forces   map[string]bool  // every force's name
}

// sum is ΣF along one axis of one body.
type sum struct {
	body  string
	axis  statics.Axis
	terms []term
}

// term is one force's part in a sum: its size, a sine or cosine or tangent of an
// angle, and what a student put there beside or below it.
type term struct {
	force  statics.Force
	neg    bool
	size   *tree
	fn     string
	angle  *tree
	beside []*tree
	below  []*tree
	letter string // a component's letter that stands for all of it
}

func newBench(t testing.TB, p *problems.Problem) *bench {
	t.Helper()
	ref, err := p.Reference()
	if err != nil {
		t.Fatal(err)
	}
	b := &bench{id: p.ID, ref: ref, sys: p.System, sizes: map[string]*tree{}, forces: map[string]bool{}}
	for _, body := range b.sys.Bodies {
		for _, f := range body.Forces {
			b.forces[f.Name] = true
			if f.Size != nil && !(f.Size.Op == expr.Name && f.Size.Name == f.Name) {
				b.sizes[f.Name] = treeOf(f.Size)
			}
		}
	}
	for _, body := range b.sys.Bodies {
		for _, axis := range []statics.Axis{statics.X, statics.Y} {
			b.sums = append(b.sums, sumOf(body, axis))
		}
	}
	b.findUnknowns()
	at, ok := b.rest(b.givens())
	if !ok {
		t.Fatalf("%s: no solution found", p.ID)
	}
	b.at = at
	return b
}

func sumOf(body statics.Body, axis statics.Axis) sum {
	s := sum{body: body.Name, axis: axis}
	for _, f := range body.Forces {
		if t, ok := termOn(f, axis); ok {
			s.terms = append(s.terms, t)
		}
	}
	return s
}

// termOn resolves a force; ok is false where it has no component.
func termOn(f statics.Force, axis statics.Axis) (term, bool) {
	t := term{force: f, size: letter(f.Name)}
	if f.Direction != nil {
		t.fn, t.angle = [...]string{"cos", "sin"}[axis], treeOf(f.Direction)
		t.neg = f.XLeft && axis == statics.X
		return t, true
	}
	if f.Points[axis] == 0 {
		return t, false
	}
	t.neg = f.Points[axis] < 0 != (f.XLeft && axis == statics.X)
	if f.Points[0] != 0 && f.Points[1] != 0 {
		t.angle = treeOf(f.Angle)
		t.fn = "sin"
		if f.From == axis {
			t.fn = "cos"
		}
	}
	return t, true
}

// findUnknowns lists every letter that is neither given nor a sized force, and
// puts the sized forces in an order in which they can be computed.
func (b *bench) findUnknowns() {
	var needed []string
	for _, s := range b.sums {
		for _, t := range s.terms {
			needed = append(needed, t.product().letters()...)
		}
	}
	for _, size := range b.sizes {
		needed = append(needed, size.letters()...)
	}
	slices.Sort(needed)
	for _, name := range slices.Compact(needed) {
		if _, given := b.sys.Given(name); !given && b.sizes[name] == nil {
			b.unknowns = append(b.unknowns, name)
		}
	}
	for len(b.order) < len(b.sizes) {
		for name, size := range b.sizes {
			ready := !slices.ContainsFunc(size.letters(), func(l string) bool {
				return b.sizes[l] != nil && !slices.Contains(b.order, l)
			})
			if ready && !slices.Contains(b.order, name) {
				b.order = append(b.order, name)
			}
		}
	}
}

// givens returns the values that the problem states, in SI.
func (b *bench) givens() env {
	at := env{}
	for _, g := range b.sys.Givens {
		at[g.Name] = g.Number.Value * g.Unit.Factor
		if g.Minus {
			at[g.Name] = -at[g.Name]
		}
		if g.Any {
			at[g.Name] = 1
		}
	}
	return at
}

// fill computes sized forces and letters of equal sizes.
func (b *bench) fill(at env) {
	for _, name := range b.order {
		at[name] = b.sizes[name].value(at)
	}
	for _, e := range b.sys.Equal {
		at[e.Letter] = at[e.Names[0]]
	}
}

// residuals returns the value of every sum, given terms in place of the right ones.
func residuals(sums []sum, at env) []float64 {
	var r []float64
	for _, s := range sums {
		total := 0.0
		for _, t := range s.terms {
			total += t.signed().value(at)
		}
		r = append(r, total)
	}
	return r
}

// rest returns the values that make every sum zero.
func (b *bench) rest(givens env) (env, bool) { return b.restOf(b.sums, givens) }

// restOf solves sums that a student may have got wrong. Linear ones take one step
// of Newton's method from anywhere; the others start from what the product says.
func (b *bench) restOf(sums []sum, givens env) (env, bool) {
	at := env{}
	for name, x := range givens {
		at[name] = x
	}
	u := make([]float64, len(b.unknowns))
	for i, name := range b.unknowns {
		u[i], _ = b.ref.Value(name)
	}
	for range 40 {
		r := b.with(sums, at, u)
		step, ok := b.newton(sums, at, u, r)
		if !ok {
			return nil, false
		}
		moved := 0.0
		for i := range u {
			u[i] -= step[i]
			moved = math.Max(moved, math.Abs(step[i])/(1e-9+math.Abs(u[i])))
		}
		if moved < 1e-13 {
			break
		}
	}
	r := b.with(sums, at, u)
	scale := 1e-12
	for _, s := range sums {
		for _, t := range s.terms {
			scale = math.Max(scale, math.Abs(t.product().value(at)))
		}
	}
	for _, x := range r {
		if !(math.Abs(x) < 1e-8*scale) {
			return nil, false
		}
	}
	return at, true
}

// with puts values of the unknowns in place and returns the sums.
func (b *bench) with(sums []sum, at env, u []float64) []float64 {
	for i, name := range b.unknowns {
		at[name] = u[i]
	}
	b.fill(at)
	return residuals(sums, at)
}

func (b *bench) newton(sums []sum, at env, u, r []float64) ([]float64, bool) {
	if len(u) == 0 {
		return nil, true
	}
	a := mat.NewDense(len(r), len(u), nil)
	for j := range u {
		h := 1e-6 * math.Max(math.Abs(u[j]), 1e-2)
		moved := slices.Clone(u)
		moved[j] = u[j] + h
		up := b.with(sums, at, moved)
		moved[j] = u[j] - h
		down := b.with(sums, at, moved)
		for i := range r {
			a.Set(i, j, (up[i]-down[i])/(2*h))
		}
	}
	b.with(sums, at, u)
	var step mat.Dense
	if err := step.Solve(a, mat.NewDense(len(r), 1, slices.Clone(r))); err != nil {
		if _, weak := err.(mat.Condition); !weak || math.IsInf(float64(err.(mat.Condition)), 1) {
			return nil, false
		}
	}
	return mat.Col(nil, 0, &step), true
}

// product is the term without its sign.
func (t term) product() *tree {
	factors := []*tree{t.size}
	if t.fn != "" {
		factors = append(factors, apply(t.fn, t.angle))
	}
	factors = append(factors, t.beside...)
	if len(t.below) > 0 {
		return over(times(factors...), times(t.below...))
	}
	return times(factors...)
}

func (t term) signed() *tree {
	if t.neg {
		return negative(t.product())
	}
	return t.product()
}
