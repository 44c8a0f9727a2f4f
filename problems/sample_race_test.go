//go:build race

// Inside the package: share_test.go uses it.

package problems

// everyNth thins out what takes long: the race detector sees a smaller sample.
const everyNth = 10
