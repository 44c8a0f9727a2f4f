//go:build !unix

// Inside the package: load_test.go uses it.

package class

import "time"

// cpuTime is not known here.
func cpuTime() time.Duration { return 0 }
