package statics_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"example.org/standstill/checker/statics"
)

func TestEliminationAgreesWithGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 8).Draw(t, "n")
		element := rapid.Float64Range(-2, 2)
		a, b := mat.NewDense(n, n, nil), mat.NewVecDense(n, nil)
		rows := make([][]float64, n)
		for i := range n {
			for k := range n {
				a.Set(i, k, element.Draw(t, "a"))
			}
			b.SetVec(i, element.Draw(t, "b"))
		}
		for i := range n {
			a.Set(n-1-i, i, 25) // well-posed, and never with the pivots in place
		}
		for i := range n {
			rows[i] = append(mat.Row(nil, i, a), b.AtVec(i))
		}
		var want mat.VecDense
		if err := want.SolveVec(a, b); err != nil {
			t.Fatal(err)
		}
		u := make([]float64, n)
		if _, ok := statics.Eliminate(rows, u, 0); !ok {
			t.Fatal("not solved")
		}
		for i := range u {
			if math.Abs(u[i]-want.AtVec(i)) > 1e-6*(1+math.Abs(want.AtVec(i))) {
				t.Fatalf("u = %v, gonum %v", u, want.RawVector().Data)
			}
		}
	})
}

// A sum beyond those needed is held, not used: an equation that contradicts is
// noticed, one that repeats is not.
func TestEliminationNoticesWhatIsLeftOver(t *testing.T) {
	u := make([]float64, 2)
	if missed, ok := statics.Eliminate([][]float64{{1, 0, 3}, {0, 1, 4}, {1, 1, 7}}, u, 0); !ok || missed > 1e-12 || u[0] != 3 || u[1] != 4 {
		t.Errorf("repeats: %v, missed %v", u, missed)
	}
	if missed, ok := statics.Eliminate([][]float64{{1, 0, 3}, {0, 1, 4}, {1, 1, 8}}, u, 0); !ok || math.Abs(missed-1) > 1e-12 {
		t.Errorf("contradicts: missed %v", missed)
	}
	if _, ok := statics.Eliminate([][]float64{{1, 2, 3}, {2, 4, 6}}, u, 0); ok {
		t.Error("one equation settles two unknowns")
	}
}
