package trial

import "example.org/standstill/checker/expr"

// TiedFor says how the letters of equal sizes are taken: as one where the line
// uses such a letter, else first on their own.
func (p *Problem) TiedFor(e *Equation) []string {
	if len(p.Solved.Equals) == 0 {
		return []string{""}
	}
	for _, eq := range p.Solved.Equals {
		if e.Sides[0].Has(eq.Name) || e.Sides[1].Has(eq.Name) {
			return []string{"tied"}
		}
	}
	return []string{"", "tied"}
}

func (p *Problem) bulksOf(difference *expr.Node) (bulks []expr.Program) {
	for _, t := range expr.Addends(difference, 1, nil) {
		bulks = append(bulks, p.Solved.ProgramOf(bulk(t.Node)))
	}
	return bulks
}

// usualG are the values of g that are in use, in m/s² (common practice; 9.80665
// is the standard value of the 3rd CGPM, 1901).
var UsualG = []float64{9.8, 9.81, 10, 9.80665, 9.82}
