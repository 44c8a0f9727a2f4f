//go:build !race

package checker_test

// sampled is how many right and how many wrong lines are written for each problem
// when no other number is asked for. Every everyNth labelled answer seeds a fuzz
// target, every sympyEveryNth problem gives sympy a line. enough is the memory in
// bytes that judging one text may take, once the problem's own tables are made.
const (
	sampled       = 40
	everyNth      = 1
	sympyEveryNth = 3
	enough        = 1 << 20
)
