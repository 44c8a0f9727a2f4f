package picture

import (
	"fmt"
	"strings"

	"example.org/standstill/checker/pattern"
)

var svgID = pattern.Of(`aria-labelledby="(\w+)t `)

// Numbered gives a drawing that SVG made ids of its own, so that the same drawing
// may stand on a page several times: n is its number there.
func Numbered(svg string, n int) string {
	found := svgID().FindStringSubmatch(svg)
	if found == nil {
		return svg
	}
	return strings.ReplaceAll(svg, found[1], fmt.Sprintf("%sn%d", found[1], n))
}
