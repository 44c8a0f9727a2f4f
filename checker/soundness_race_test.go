//go:build race

package checker_test

// sampled is smaller under the race detector, which makes everything slow.
const sampled = 4
