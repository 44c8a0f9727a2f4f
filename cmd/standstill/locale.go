package main

import (
	"cmp"
	"strings"
)

// plainCharacters reports whether a terminal shows seven bits alone: the console of the
// kernel, whose font has no dots of braille, and a locale that names another set of
// characters than UTF-8. A locale that is not set says nothing.
func plainCharacters(env func(string) string) bool {
	locale := strings.ToUpper(cmp.Or(env("LC_ALL"), env("LC_CTYPE"), env("LANG")))
	known := locale != ""
	return env("TERM") == "linux" || known && !strings.Contains(locale, "UTF-8") && !strings.Contains(locale, "UTF8")
}
