//go:build race

package problems

// everyNth thins out what takes long: the race detector sees a smaller sample.
const everyNth = 10
