package statics

import (
	"fmt"
	"math"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
)

// Role says where a letter's value comes from.
type Role uint8

// A letter is Given, Unknown (solved for), or Derived from others (w = m·g).
const (
	IsGiven Role = iota
	IsUnknown
	IsDerived
)

// Variable is one letter of the system.
type Variable struct {
	Name  string
	Role  Role
	Angle bool
	Dim   quantity.Dimension
	// Size is the tree of a derived letter.
	Size *expr.Node
	size expr.Program
}

// Model is a System made ready for computing. An environment for it is a slice
// with one value for each of Variables, in their order. A Model is never changed
// after Compile and may be used by several goroutines.
type Model struct {
	*System
	Variables []Variable
	slots     map[string]int
	unknowns  []int
	sums      []sum
	linear    bool
}

// sum is one body's sum along one axis, ready to be evaluated.
type sum struct {
	body  int
	axis  Axis
	terms []term
}

type term struct {
	slot     int
	sign     float64
	function func(float64) float64
	angle    expr.Program
}

// Compile makes a model of the system. The error says what is missing or
// contradictory in words for the author of the problem.
func Compile(s *System) (*Model, error) {
	m := &Model{System: s, slots: map[string]int{}}
	for _, g := range s.Givens {
		m.add(Variable{Name: g.Name, Role: IsGiven, Dim: g.Unit.Dim, Angle: g.Unit.Dim == quantity.Angle})
	}
	if err := m.addFormulas(); err != nil {
		return nil, err
	}
	m.addUnknowns()
	if err := m.addDerived(); err != nil {
		return nil, err
	}
	if err := m.measure(); err != nil {
		return nil, err
	}
	m.compileSums()
	m.linear = m.isLinear()
	return m, nil
}

func (m *Model) add(v Variable) {
	if _, known := m.slots[v.Name]; known {
		return
	}
	m.slots[v.Name] = len(m.Variables)
	m.Variables = append(m.Variables, v)
	if v.Role == IsUnknown {
		m.unknowns = append(m.unknowns, len(m.Variables)-1)
	}
}

// addFormulas adds the letters that follow from givens, and from such letters above
// them.
func (m *Model) addFormulas() error {
	known := map[string]bool{}
	for _, v := range m.Variables {
		known[v.Name] = true
	}
	for _, f := range m.Formulas {
		for _, name := range f.Tree.Names() {
			if !known[name] {
				return fmt.Errorf("the formula for %s uses %s, which is not given above it", f.Name, name)
			}
		}
		d, err := m.dimension(f.Tree, known)
		if err != nil {
			return fmt.Errorf("the formula for %s: %w", f.Name, err)
		}
		m.add(Variable{Name: f.Name, Role: IsDerived, Dim: d.dim, Angle: d.dim == quantity.Angle, Size: f.Tree, size: m.Program(f.Tree)})
		known[f.Name] = true
	}
	return nil
}

// Formula returns the tree of a letter that follows from givens.
func (s *System) Formula(name string) (*expr.Node, bool) {
	for _, f := range s.Formulas {
		if f.Name == name {
			return f.Tree, true
		}
	}
	return nil, false
}

// sized reports whether some force of that name has a size.
func (m *Model) sized(name string) *expr.Node {
	for _, b := range m.Bodies {
		for _, f := range b.Forces {
			if f.Name == name && f.Size != nil {
				return f.Size
			}
		}
	}
	return nil
}

// addUnknowns finds every letter that is no given and has no size.
func (m *Model) addUnknowns() {
	m.eachForce(func(f *Force) {
		if m.sized(f.Name) == nil {
			m.add(Variable{Name: f.Name, Role: IsUnknown, Dim: quantity.Force})
		}
	})
	m.eachForce(func(f *Force) {
		for _, tree := range []*expr.Node{f.Size, f.Angle, f.Direction} {
			if tree == nil {
				continue
			}
			for _, name := range tree.Names() {
				if m.sized(name) == nil {
					m.add(Variable{Name: name, Role: IsUnknown, Angle: tree != f.Size && tree.Op == expr.Name})
				}
			}
		}
	})
}

func (m *Model) eachForce(f func(*Force)) {
	for i := range m.Bodies {
		for j := range m.Bodies[i].Forces {
			f(&m.Bodies[i].Forces[j])
		}
	}
}

// addDerived adds the sized forces, each after the letters that it needs.
func (m *Model) addDerived() error {
	for added := true; added; {
		added = false
		m.eachForce(func(f *Force) {
			if size := m.sized(f.Name); !m.Has(f.Name) && m.hasAll(size) {
				m.add(Variable{Name: f.Name, Role: IsDerived, Dim: quantity.Force, Size: size, size: m.Program(size)})
				added = true
			}
		})
	}
	var missing error
	m.eachForce(func(f *Force) {
		if !m.Has(f.Name) && missing == nil {
			missing = fmt.Errorf("the size of %s depends on itself", f.Name)
		}
	})
	return missing
}

// Has reports whether the system has the letter.
func (m *Model) Has(name string) bool { _, ok := m.slots[name]; return ok }

func (m *Model) hasAll(n *expr.Node) bool {
	for _, name := range n.Names() {
		if !m.Has(name) {
			return false
		}
	}
	return true
}

// Slot returns a letter's place in an environment.
func (m *Model) Slot(name string) (int, bool) { i, ok := m.slots[name]; return i, ok }

// Variable returns a letter's entry.
func (m *Model) Variable(name string) (Variable, bool) {
	if i, ok := m.slots[name]; ok {
		return m.Variables[i], true
	}
	return Variable{}, false
}

// Unknowns lists the letters that the sums are solved for.
func (m *Model) Unknowns() []string {
	names := make([]string, len(m.unknowns))
	for i, slot := range m.unknowns {
		names[i] = m.Variables[slot].Name
	}
	return names
}

// Linear reports whether every sum is linear in the unknowns.
func (m *Model) Linear() bool { return m.linear }

// Program compiles a tree against the model's environment.
func (m *Model) Program(n *expr.Node) expr.Program { return expr.Compile(n, m.Slot) }

func (m *Model) compileSums() {
	for i := range m.Bodies {
		for _, axis := range []Axis{X, Y} {
			s := sum{body: i, axis: axis}
			for j := range m.Bodies[i].Forces {
				if t, ok := m.compileTerm(&m.Bodies[i].Forces[j], axis); ok {
					s.terms = append(s.terms, t)
				}
			}
			m.sums = append(m.sums, s)
		}
	}
}

func (m *Model) compileTerm(f *Force, axis Axis) (term, bool) {
	factor := f.Factor(axis)
	if factor.Sign == 0 {
		return term{}, false
	}
	t := term{slot: m.slots[f.Name], sign: float64(factor.Sign)}
	switch factor.Function {
	case "sin":
		t.function = math.Sin
	case "cos":
		t.function = math.Cos
	}
	if t.function != nil {
		t.angle = m.Program(factor.Angle)
	}
	return t, true
}

func (s sum) value(env []float64) float64 {
	total := 0.0
	for _, t := range s.terms {
		v := t.sign * env[t.slot]
		if t.function != nil {
			v *= t.function(t.angle.Run(env))
		}
		total += v
	}
	return total
}

// Environment returns the givens' values with every other letter at zero. A
// given without a value is 1 in SI.
func (m *Model) Environment() []float64 {
	env := make([]float64, len(m.Variables))
	for i, g := range m.Givens {
		env[i] = g.Value()
		if g.Any {
			env[i] = 1
		}
	}
	for i := range m.Formulas {
		slot := len(m.Givens) + i
		env[slot] = m.Variables[slot].size.Run(env)
	}
	return env
}

// Derive computes the derived letters from the others, in place.
func (m *Model) Derive(env []float64) {
	for i := range m.Variables {
		if m.Variables[i].Role == IsDerived {
			env[i] = m.Variables[i].size.Run(env)
		}
	}
}

// Residuals appends the value of every sum, body by body, x before y.
func (m *Model) Residuals(env, into []float64) []float64 {
	for _, s := range m.sums {
		into = append(into, s.value(env))
	}
	return into
}
