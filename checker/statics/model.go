package statics

import (
	"math"
	"slices"

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

func (m *Model) eachForce(f func(*Force)) {
	for i := range m.Bodies {
		for j := range m.Bodies[i].Forces {
			f(&m.Bodies[i].Forces[j])
		}
	}
}

// Has reports whether the system has the letter.
func (m *Model) Has(name string) bool { _, ok := m.slots[name]; return ok }

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

// tolerance is how near zero a sum must be, as a share of the largest force.
const tolerance = 1e-9

// at evaluates the sums with the unknowns at u (all zero for nil).
func (m *Model) at(env, u []float64) []float64 {
	for i, slot := range m.unknowns {
		env[slot] = 0
		if u != nil {
			env[slot] = u[i]
		}
	}
	m.Derive(env)
	return m.Residuals(env, make([]float64, 0, len(m.sums)))
}

// balanced reports whether every sum is zero, measured against its largest term.
func (m *Model) balanced(env []float64) bool {
	largest := m.largest(env)
	for _, s := range m.sums {
		if !(math.Abs(s.value(env)) <= tolerance*largest) {
			return false
		}
	}
	return true
}

func (m *Model) largest(env []float64) float64 {
	largest := 0.0
	for _, s := range m.sums {
		for _, t := range s.terms {
			largest = math.Max(largest, math.Abs(env[t.slot]))
		}
	}
	return largest
}

// TurnsFully reports whether a letter is part of a full-circle direction.
func (s *System) TurnsFully(name string) bool {
	for _, b := range s.Bodies {
		if slices.ContainsFunc(b.Forces, func(f Force) bool { return f.Direction != nil && f.Direction.Has(name) }) {
			return true
		}
	}
	return false
}
