//go:build !race

package checker_test

// sampled is how many right and how many wrong lines are written for each problem
// when no other number is asked for. Every everyNth labelled answer seeds a fuzz
// target, every sympyEveryNth problem gives sympy a line.
const (
	sampled       = 40
	everyNth      = 1
	sympyEveryNth = 3
)
