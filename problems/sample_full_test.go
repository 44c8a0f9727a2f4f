//go:build !race

package problems

// everyNth takes every problem.
const everyNth = 1
