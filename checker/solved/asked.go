package solved

import "example.org/standstill/checker/quantity"

// Unit returns the unit in which a letter is asked for.
func (s *System) Unit(name string) quantity.Unit {
	if u, ok := s.Answer[name]; ok {
		return u
	}
	for _, e := range s.Equals {
		if e.Name == name {
			return s.Unit(s.Model.Variables[e.Slots[0]].Name)
		}
	}
	if g, ok := s.Given(name); ok {
		u, _ := quantity.Find(g.Unit.Symbol)
		return u
	}
	dim := quantity.Force
	if v, ok := s.Model.Variable(name); ok {
		dim = v.Dim
	}
	return s.UsualUnit(dim)
}

// UsualUnit is the unit in which a dimension is asked for if the file does not
// say: SI, or pounds where every force that is given is in pounds.
func (s *System) UsualUnit(dim quantity.Dimension) quantity.Unit {
	symbol := map[quantity.Dimension]string{
		quantity.Force: "N", quantity.Mass: "kg", quantity.Angle: "deg", quantity.Length: "m",
		quantity.Stiffness: "N/m", quantity.Acceleration: "m/s^2", quantity.None: "none",
	}[dim]
	if dim == quantity.Force && s.inPounds() {
		symbol = "lb"
	}
	u, _ := quantity.Find(symbol)
	return u
}

func (s *System) inPounds() bool { return s.Own.Force == quantity.PoundForce }
