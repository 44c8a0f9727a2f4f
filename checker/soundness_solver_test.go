package checker_test

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// TestSolverAgreesWithGonum sets up the equations of every problem from its file
// anew and solves them with gonum: those with straight equations as one matrix,
// the others by Newton's method.
func TestSolverAgreesWithGonum(t *testing.T) {
	linear := 0
	all := everyProblem(t)
	for _, p := range all {
		b := newBench(t, p)
		found := b.at
		if straight, ok := b.solveMatrix(t); ok {
			found = straight
			linear++
		}
		for _, name := range b.unknowns {
			got, ok := b.ref.Value(name)
			if want := found[name]; !ok || math.Abs(got-want) > 1e-9*math.Abs(want) {
				t.Errorf("%s: %s = %v, gonum finds %v", p.ID, name, got, want)
			}
		}
	}
	t.Logf("%d problems, %d of them linear", len(all), linear)
	if linear < 20 {
		t.Errorf("only %d linear problems", linear)
	}
}

// solveMatrix writes every sum as coefficients of the unknowns; ok is false where
// an unknown stands inside a function or beside another unknown.
func (b *bench) solveMatrix(t *testing.T) (env, bool) {
	t.Helper()
	a := mat.NewDense(len(b.sums), len(b.unknowns), nil)
	rest := mat.NewDense(len(b.sums), 1, nil)
	for i, s := range b.sums {
		for _, term := range s.terms {
			row, ok := b.affine(term.signed())
			if !ok {
				return nil, false
			}
			rest.Set(i, 0, rest.At(i, 0)-row[""])
			for j, name := range b.unknowns {
				a.Set(i, j, a.At(i, j)+row[name])
			}
		}
	}
	var u mat.Dense
	if err := u.Solve(a, rest); err != nil {
		t.Errorf("%s: %v", b.id, err)
	}
	at := b.givens()
	b.with(b.sums, at, mat.Col(nil, 0, &u))
	return at, true
}

// affine returns the coefficient of every unknown in a tree, and under "" what is
// left without any.
func (b *bench) affine(t *tree) (map[string]float64, bool) {
	if t.op == 'v' && slices.Contains(b.unknowns, t.name) {
		return map[string]float64{t.name: 1}, true
	}
	if t.op == 'v' && b.sizes[t.name] != nil {
		return b.affine(b.sizes[t.name])
	}
	var parts []map[string]float64
	for _, arg := range t.args {
		part, ok := b.affine(arg)
		if !ok {
			return nil, false
		}
		parts = append(parts, part)
	}
	if plain(parts...) {
		return map[string]float64{"": t.value(b.givens())}, true
	}
	switch t.op {
	case '+':
		return combine(parts...), true
	case '-':
		return scale(parts[0], -1), true
	case '*':
		return multiply(parts)
	case '/':
		return scale(parts[0], 1/parts[1][""]), plain(parts[1])
	}
	return nil, false
}

func plain(parts ...map[string]float64) bool {
	for _, p := range parts {
		for name := range p {
			if name != "" {
				return false
			}
		}
	}
	return true
}

func combine(parts ...map[string]float64) map[string]float64 {
	all := map[string]float64{}
	for _, p := range parts {
		for name, x := range p {
			all[name] += x
		}
	}
	return all
}

func scale(part map[string]float64, by float64) map[string]float64 {
	scaled := map[string]float64{}
	for name, x := range part {
		scaled[name] = x * by
	}
	return scaled
}

func multiply(parts []map[string]float64) (map[string]float64, bool) {
	all := map[string]float64{"": 1}
	for _, p := range parts {
		switch {
		case plain(p):
			all = scale(all, p[""])
		case plain(all):
			all = scale(p, all[""])
		default:
			return nil, false
		}
	}
	return all, true
}
