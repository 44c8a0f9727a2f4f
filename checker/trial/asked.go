package trial

import "example.org/standstill/checker/quantity"

// Unit returns the unit in which a letter is asked for.
func (p *Problem) Unit(name string) quantity.Unit {
	if u, ok := p.Answer[name]; ok {
		return u
	}
	for _, e := range p.Equals {
		if e.Name == name {
			return p.Unit(p.Variables[e.Slots[0]].Name)
		}
	}
	if g, ok := p.Given(name); ok {
		u, _ := quantity.Find(g.Unit.Symbol)
		return u
	}
	dim := quantity.Force
	if v, ok := p.Variable(name); ok {
		dim = v.Dim
	}
	return p.UsualUnit(dim)
}

// UsualUnit is the unit in which a dimension is asked for if the file does not
// say: SI, or pounds where every force that is given is in pounds.
func (p *Problem) UsualUnit(dim quantity.Dimension) quantity.Unit {
	symbol := map[quantity.Dimension]string{
		quantity.Force: "N", quantity.Mass: "kg", quantity.Angle: "deg", quantity.Length: "m",
		quantity.Stiffness: "N/m", quantity.Acceleration: "m/s^2", quantity.None: "none",
	}[dim]
	if dim == quantity.Force && p.inPounds() {
		symbol = "lb"
	}
	u, _ := quantity.Find(symbol)
	return u
}

func (p *Problem) inPounds() bool { return p.Own.Force == quantity.PoundForce }
