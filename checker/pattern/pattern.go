// Package pattern knows when a regular expression is compiled: when it is first asked, and
// not while the program starts, so that the first screen does not wait for patterns that
// nobody has needed yet.
package pattern

import (
	"regexp"
	"sync"
)

// Of is the expression with this text, for a package's variable. It panics when it is first
// asked, as regexp.MustCompile does, where the text is no expression; it may be asked by
// several goroutines.
func Of(text string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) })
}
