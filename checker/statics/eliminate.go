package statics

import "math"

// Eliminate solves the equations a·u = b in place: a has one row for each equation,
// its last column is b, and there may be more rows than unknowns. It returns false
// where the rows do not settle every unknown: where no pivot of a column is larger
// than least. What is left over in the rows beyond the unknowns is returned as the
// largest amount by which an equation is missed.
//
// Gauss with the largest pivot of each column, written out here because the systems
// have two to eight rows and are solved for every random trial and every sample of a
// wrong line. The reference itself is solved with singular values.
func Eliminate(a [][]float64, u []float64, least float64) (missed float64, ok bool) {
	n := len(u)
	if len(a) < n {
		return 0, false
	}
	for col := range n {
		pivot := col
		for row := col + 1; row < len(a); row++ {
			if math.Abs(a[row][col]) > math.Abs(a[pivot][col]) {
				pivot = row
			}
		}
		// Not only where there is a zero: a small pivot would enlarge the rounding in all rows below.
		a[col], a[pivot] = a[pivot], a[col]
		// Written so that NaN is refused too.
		if !(math.Abs(a[col][col]) > least) {
			return 0, false
		}
		clearBelow(a, col)
	}
	for row := n; row < len(a); row++ {
		missed = max(missed, math.Abs(a[row][n]))
	}
	backwards(a, u)
	return missed, true
}

// clearBelow takes a column out of the rows below its own.
func clearBelow(a [][]float64, col int) {
	own := a[col]
	for _, row := range a[col+1:] {
		factor := row[col] / own[col]
		if factor == 0 {
			continue
		}
		for k := col; k < len(row); k++ {
			row[k] -= factor * own[k]
		}
	}
}

func backwards(a [][]float64, u []float64) {
	n := len(u)
	for i := n - 1; i >= 0; i-- {
		sum := a[i][n]
		for k := i + 1; k < n; k++ {
			sum -= a[i][k] * u[k]
		}
		u[i] = sum / a[i][i]
	}
}
