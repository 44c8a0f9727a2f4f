//go:build !race

package checker_test

// sampled is how many right and how many wrong lines are written for each problem
// when no other number is asked for.
const sampled = 40
