package main

import (
	"cmp"
	"strings"
)

// plainCharacters reports whether a terminal shows seven bits alone: the console of the
// kernel and the old console of Windows, whose fonts have no dots of braille, and a locale that
// names another set of characters than UTF-8. A locale that is not set says nothing. On Windows
// a terminal that does more says who it is; the console behind cmd.exe sets none of these.
func plainCharacters(goos string, env func(string) string) bool {
	if goos == "windows" && cmp.Or(env("WT_SESSION"), env("TERM"), env("TERM_PROGRAM")) == "" {
		return true
	}
	// In the order in which the C library asks.
	locale := strings.ToUpper(cmp.Or(env("LC_ALL"), env("LC_CTYPE"), env("LANG")))
	known := locale != ""
	return env("TERM") == "linux" || known && !strings.Contains(locale, "UTF-8") && !strings.Contains(locale, "UTF8")
}
