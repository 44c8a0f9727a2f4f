//go:build race

package checker_test

// All are smaller under the race detector, which makes everything slow.
const (
	sampled       = 4
	everyNth      = 10
	sympyEveryNth = 20
)
