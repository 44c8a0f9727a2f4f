//go:build race

package checker_test

// The first three are smaller under the race detector, which makes everything
// slow; it also throws away what regular expressions would use again, so that more
// memory is enough.
const (
	sampled       = 4
	everyNth      = 10
	sympyEveryNth = 20
	enough        = 64 << 20
)
