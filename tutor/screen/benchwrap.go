package screen

import (
	"strings"

	"example.org/standstill/tutor/bench"
)

// tie stands between a number and its unit while a text is wrapped. It is a character of
// seven bits that no sentence holds, so that every instance may show it.
const tie = "`"

// wrapMeasured wraps a text like wrap, but parts no number from its unit, and no letter
// from its value.
func (l *look) wrapMeasured(text string, width int) []string {
	chunks := bench.Chunks(strings.Join(strings.Fields(text), " "))
	for i := range chunks {
		chunks[i] = strings.ReplaceAll(chunks[i], " ", tie)
	}
	lines := l.wrap(strings.Join(chunks, " "), width)
	for i := range lines {
		lines[i] = strings.ReplaceAll(lines[i], tie, " ")
	}
	return lines
}
