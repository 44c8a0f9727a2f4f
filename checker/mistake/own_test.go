package mistake_test

import (
	"math"
	"testing"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
	"example.org/standstill/checker/trial"
)

// lantern is a ring on two cords, T1 35° up to the left and T2 50° up to the right.
func lantern(t *testing.T) *trial.Problem {
	t.Helper()
	given := func(name string, value float64, symbol string) statics.Given {
		unit, _ := quantity.Find(symbol)
		return statics.Given{Name: name, Number: quantity.Number{Value: value}, Unit: unit}
	}
	s := &statics.System{
		Givens: []statics.Given{given("m", 3.2, "kg"), given("alpha", 35, "deg"), given("beta", 50, "deg"), given("g", 9.8, "m/s^2")},
		Bodies: []statics.Body{{Forces: []statics.Force{
			{Name: "T1", Kind: statics.Tension, Points: [2]int{-1, 1}, Angle: expr.Letter("alpha")},
			{Name: "T2", Kind: statics.Tension, Points: [2]int{1, 1}, Angle: expr.Letter("beta")},
			{Name: "w", Kind: statics.Weight, Points: [2]int{0, -1}, Size: expr.Join(expr.Mul, expr.Letter("m"), expr.Letter("g"))},
		}}},
		Find: []string{"T1", "T2"},
	}
	model, err := statics.Compile(s)
	if err != nil {
		t.Fatal(err)
	}
	solution, err := model.Solve(model.Environment())
	if err != nil {
		t.Fatal(err)
	}
	return trial.NewProblem(solved.New(model, solution, solved.Units{Force: 1, Length: 1}, &solved.Kin{}))
}

func read(t *testing.T, p *trial.Problem, text string) expr.Line {
	t.Helper()
	reading, err := p.Solved.LettersFor("").Read(text)
	if err != nil {
		t.Fatal(err)
	}
	return reading.Lines[0]
}

// doubled multiplies a term by the size of its angle doubled, as nobody does.
func doubled(p *trial.Problem, _ solved.Place, t solved.Term) []solved.Term {
	if t.Function == solved.Whole || t.Scale == 0 {
		return nil
	}
	t.Scale *= 1.3
	return []solved.Term{t}
}

// One row is all that a new mistake needs: it is named in a component, in a sum, in a line of
// working and in a number, and brings its own words.
func TestOneRowIsANewMistake(t *testing.T) {
	row := mistake.Row{Code: "stretched", Meaning: "a triangle stretched", Cost: 1, Term: doubled,
		Said: mistake.Said{Line: "The triangle is too long."}}
	p := lantern(t)
	s := mistake.New(p, append(mistake.Table(), row))
	sign := []solved.Signed{nil}

	line := read(t, p, "1.3 T1 cos α")
	for i := range p.Solved.Components {
		if c := &p.Solved.Components[i]; c.Name == "T1x" {
			if got := s.Component(p.ComponentIs(line.Sides[0], c), c); got.Code != row.Code || got.About != "T1" {
				t.Errorf("component: %s %q", got.Code, got.About)
			}
		}
	}
	line = read(t, p, "1.3 T1 cos α = T2 cos β")
	e := p.Equation(line.Sides[0], line.Sides[1], sign)
	if got := s.Sum(e, solved.Place{Axis: statics.X}); got.Code != row.Code || got.About != "T1" {
		t.Errorf("sum: %s %q", got.Code, got.About)
	}
	if got := s.Working(e); got.Code != row.Code || got.About != "T1" {
		t.Errorf("working: %s %q", got.Code, got.About)
	}
	// With 1.3 T1 cos α = T2 cos β and the right sum along y.
	w, rad := 3.2*9.8, quantity.Degree
	t1 := w / (math.Sin(35*rad) + 1.3*math.Cos(35*rad)/math.Cos(50*rad)*math.Sin(50*rad))
	got := s.Value(s.Target("T1"), mistake.Typed{Value: t1, Half: 0.001, Figures: 5})
	if got.Code != row.Code {
		t.Errorf("value %.4f: %s", t1, got.Code)
	}
	if got.Row == nil || got.Row.Said.Line != row.Said.Line {
		t.Error("its words are not found")
	}
}
