package trial

import (
	"slices"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
)

// TiedFor says how the letters of equal sizes are taken: as one where the line
// uses such a letter, else first on their own.
func (p *Problem) TiedFor(e *Equation) []string {
	if len(p.Equals) == 0 {
		return []string{""}
	}
	for _, eq := range p.Equals {
		if e.Sides[0].Has(eq.Name) || e.Sides[1].Has(eq.Name) {
			return []string{"tied"}
		}
	}
	return []string{"", "tied"}
}

func (p *Problem) bulksOf(difference *expr.Node) (bulks []expr.Program) {
	for _, t := range expr.Addends(difference, 1, nil) {
		bulks = append(bulks, p.ProgramOf(bulk(t.Node)))
	}
	return bulks
}

// ready compiles a tree once and keeps the program under its key.
func (p *Problem) ready(key string, tree func() *expr.Node) *expr.Program {
	if made, ok := p.programs.Load(key); ok {
		return made.(*expr.Program)
	}
	made := p.Program(tree())
	kept, _ := p.programs.LoadOrStore(key, &made)
	return kept.(*expr.Program)
}

// usualG are the values of g that are in use, in m/s² (common practice; 9.80665
// is the standard value of the 3rd CGPM, 1901).
var UsualG = []float64{9.8, 9.81, 10, 9.80665, 9.82}

// Place is one sum: a body and an axis.
type Place struct {
	Body int
	Axis statics.Axis
}

var BothSigns = []float64{1, -1}

// IsEmpty reports whether no force of the body acts along the axis.
func (p *Problem) IsEmpty(at Place) bool {
	return !slices.ContainsFunc(p.SumOf(at.Body, at.Axis), func(t Term) bool { return t.Scale != 0 })
}

// Places lists every sum of the problem.
func (p *Problem) Places() []Place {
	var all []Place
	for b := range p.Bodies {
		all = append(all, Place{b, statics.X}, Place{b, statics.Y})
	}
	return all
}
