package statics_test

import (
	"math"
	"testing"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

func given(name string, x float64, unit string) statics.Given {
	u, _ := quantity.Find(unit)
	return statics.Given{Name: name, Number: quantity.Exact(x), Unit: u}
}

func weight() statics.Force {
	return statics.Force{Name: "w", Kind: statics.Weight, Points: statics.Side{0, -1}, Size: expr.Join(expr.Mul, expr.Letter("m"), expr.Letter("g"))}
}

func twoStrings(m, alpha, beta float64) *statics.System {
	return &statics.System{
		Givens: []statics.Given{given("m", m, "kg"), given("alpha", alpha, "deg"), given("beta", beta, "deg"), given("g", 9.8, "m/s^2")},
		Bodies: []statics.Body{{Forces: []statics.Force{
			{Name: "T1", Kind: statics.Tension, Points: statics.Side{-1, 1}, Angle: expr.Letter("alpha"), From: statics.X},
			{Name: "T2", Kind: statics.Tension, Points: statics.Side{1, 1}, Angle: expr.Letter("beta"), From: statics.X},
			weight(),
		}}},
		Find: []string{"T1", "T2"},
	}
}

func solve(t *testing.T, s *statics.System) (*statics.Model, []float64, error) {
	t.Helper()
	m, err := statics.Compile(s)
	if err != nil {
		t.Fatal(err)
	}
	env, err := m.Solve(m.Environment())
	return m, env, err
}

// T1 = W cos β / sin(α + β), the sine rule in the triangle of forces.
func TestTwoStringsAgreeWithTheSineRule(t *testing.T) {
	for _, c := range [][3]float64{{3.2, 35, 50}, {1, 10, 80}, {0.5, 5, 5}, {2, 60, 75}} {
		m, env, err := solve(t, twoStrings(c[0], c[1], c[2]))
		if err != nil {
			t.Fatal(err)
		}
		a, b := c[1]*quantity.Degree, c[2]*quantity.Degree
		want := c[0] * 9.8 * math.Cos(b) / math.Sin(a+b)
		slot, _ := m.Slot("T1")
		if math.Abs(env[slot]-want) > 1e-10*want {
			t.Errorf("%v: T1 = %v, want %v", c, env[slot], want)
		}
	}
}

// Common practice: 1 kg on two strings at 40° each, 7.6 N with g = 9.8 m/s².
func TestClassroomCheckValue(t *testing.T) {
	m, env, err := solve(t, twoStrings(1, 40, 40))
	slot, _ := m.Slot("T1")
	if err != nil || quantity.Format(env[slot], 2) != "7.6" {
		t.Errorf("T1 = %v, %v", env[slot], err)
	}
}

func TestUnknownAngleIsFoundOnItsSide(t *testing.T) {
	s := &statics.System{
		Givens: []statics.Given{given("F1", 5, "N"), given("F2", 4, "N"), given("beta", 65, "deg")},
		Bodies: []statics.Body{{Forces: []statics.Force{
			{Name: "A", Kind: statics.Tension, Points: statics.Side{1, 0}, Size: expr.Letter("F1")},
			{Name: "B", Kind: statics.Tension, Points: statics.Side{-1, 1}, Angle: expr.Letter("beta"), Size: expr.Letter("F2")},
			{Name: "E", Kind: statics.Tension, Points: statics.Side{-1, -1}, Angle: expr.Letter("phi")},
		}}},
	}
	m, env, err := solve(t, s)
	if err != nil {
		t.Fatal(err)
	}
	e, _ := m.Slot("E")
	phi, _ := m.Slot("phi")
	if math.Abs(env[e]-4.9092) > 1e-3 || math.Abs(env[phi]/quantity.Degree-47.60) > 0.02 {
		t.Errorf("E = %v, phi = %v deg", env[e], env[phi]/quantity.Degree)
	}
	if v, _ := m.Variable("phi"); v.Dim != quantity.Angle {
		t.Errorf("phi is %v", v.Dim)
	}
}

func TestIllPosedSystemsSayWhat(t *testing.T) {
	three := twoStrings(1, 30, 50)
	three.Bodies[0].Forces = append(three.Bodies[0].Forces, statics.Force{Name: "T3", Kind: statics.Tension, Points: statics.Side{1, 0}})
	one := twoStrings(1, 30, 50)
	one.Bodies[0].Forces = append(one.Bodies[0].Forces[:1], one.Bodies[0].Forces[2])
	two := &statics.System{
		Givens: []statics.Given{given("A", 5, "N"), given("B", 4, "N"), given("m", 0.3, "kg"), given("g", 9.8, "N/kg")},
		Bodies: []statics.Body{{Forces: []statics.Force{
			{Name: "A", Kind: statics.Tension, Direction: expr.Letter("alpha"), Size: expr.Letter("A")},
			{Name: "B", Kind: statics.Tension, Direction: expr.Letter("beta"), Size: expr.Letter("B")},
			weight(),
		}}},
	}
	for _, c := range []struct {
		name string
		s    *statics.System
		want error
	}{{"a third string", three, statics.ErrOpen}, {"one slanted string", one, statics.ErrNoSolution}, {"mirror images", two, statics.ErrSeveral}} {
		if _, _, err := solve(t, c.s); err != c.want {
			t.Errorf("%s: %v, want %v", c.name, err, c.want)
		}
	}
}

func TestDimensionsAreChecked(t *testing.T) {
	s := twoStrings(1, 30, 50)
	s.Bodies[0].Forces[2].Size = expr.Letter("m")
	if _, err := statics.Compile(s); err == nil || err.Error() != "the size of w is a mass, but it must be a force" {
		t.Errorf("%v", err)
	}
}
