package bench

import (
	"math"

	"example.org/standstill/problems"

	"example.org/standstill/tutor/bench/measure"
)

// Copy is the problem with the measured numbers in the place of the file's, for
// whoever predicts by hand first: estimates alone, and every hanger and ring added to
// its mass. why is a sentence where these numbers make no problem.
func (f *Form) Copy() (p *problems.Problem, why string) {
	values := map[string]string{}
	for i := range f.Fields {
		if e := &f.Fields[i]; e.Kind == Measure {
			if text, changed := f.numeral(e); changed {
				values[e.Letter] = text
			}
		}
	}
	p, err := f.problem.WithValues(values)
	if err == nil {
		_, err = p.Reference()
	}
	if err != nil {
		return nil, saidUnsolved(err)
	}
	return p, ""
}

// numeral is a given's measured value as a problem takes it; changed is false where
// the number of the file stands.
func (f *Form) numeral(e *Field) (text string, changed bool) {
	given, _ := f.problem.System.Given(e.Letter)
	unit, x, u := e.Want.Unit, given.Value(), 0.0
	measured := e.Good() && e.Value.Measured
	if measured {
		x, u = e.Value.Estimate, e.Value.U()
	}
	own := 0.0
	for _, other := range f.Fields {
		if other.Letter == e.Letter && (other.Kind == Hanger || other.Kind == Ring) && other.Good() {
			own += other.Value.Estimate
			u = math.Hypot(u, other.Value.U())
		}
	}
	switch {
	case own == 0 && !measured:
		return "", false
	// As it was typed, with its own digits.
	case own == 0 && e.Value.Unit == unit:
		return e.Value.Numeral() + " " + unit.Symbol, true
	}
	// Made a value again, so that it gets as many figures as its uncertainty allows.
	whole := measure.Value{Unit: unit, Estimate: x + own, Parts: []measure.Part{{Cause: measure.Standard, U: u}}}
	return whole.Numeral() + " " + unit.Symbol, true
}
