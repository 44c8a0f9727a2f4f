package statics

import (
	"fmt"
	"math"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
)

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
			// Only what stands above, so that two formulas cannot need each other.
			if !known[name] {
				return fmt.Errorf("the formula for %s uses %s, which is not given above this formula", f.Name, name)
			}
		}
		d, err := (&dimensions{m, known}).of(f.Tree)
		if err != nil {
			return fmt.Errorf("the formula for %s: %w", f.Name, err)
		}
		m.add(Variable{Name: f.Name, Role: IsDerived, Dim: d.dim, Angle: d.dim == quantity.Angle, Size: f.Tree, size: m.Program(f.Tree)})
		known[f.Name] = true
	}
	return nil
}

// addUnknowns finds every letter that is no given and has no size.
func (m *Model) addUnknowns() {
	m.eachForce(func(f *Force) {
		// All forces first: a letter in a size may be a force, and is then measured as one.
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

// addDerived adds the sized forces, each after the letters that it needs.
func (m *Model) addDerived() error {
	// A size may need a force that comes later in the file, so this goes round until nothing is added.
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

func (m *Model) hasAll(n *expr.Node) bool {
	for _, name := range n.Names() {
		if !m.Has(name) {
			return false
		}
	}
	return true
}

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
