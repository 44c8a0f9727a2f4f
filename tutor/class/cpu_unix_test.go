//go:build unix

// Inside the package: load_test.go uses it.

package class

import (
	"syscall"
	"time"
)

// cpuTime is what this process has used of the processors, whatever else they did.
func cpuTime() time.Duration {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
