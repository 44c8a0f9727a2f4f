package checker

import (
	"fmt"
	"strings"

	"example.org/standstill/checker/expr"
)

const (
	saidNoStage        = "There is no such stage."
	saidWhichComponent = "Say which component this is, as in T1x = …"
	saidDiagramEmpty   = "Name each force and the side it points to, as in: w down."
)

func saidUnreadable(e *expr.ReadError) string {
	return fmt.Sprintf("Column %d: %s", e.Pos+1, e.Message)
}

func saidDiagramForm(part string) string {
	return fmt.Sprintf("%q does not say which force points to which side, as in: w down.", strings.TrimSpace(part))
}

func joinSentences(a, b string) string { return strings.TrimSpace(a + " " + b) }

func saidReading(reading expr.Reading, i int, report Report) string {
	if len(reading.Lines) > 1 && reading.Lines[i].Slash && report.Verdict == Right {
		return "The line is right as it was read here; next time put brackets round what is divided by."
	}
	return ""
}

func (m *marking) saidUnknownName(name string) string {
	return fmt.Sprintf("This problem has no letter %s. Its letters are %s.", expr.Glyph(name), strings.Join(m.letterNames(), ", "))
}

func (m *marking) letterNames() []string {
	var names []string
	for _, v := range m.Variables {
		names = append(names, expr.Glyph(v.Name))
	}
	return names
}

func (m *marking) saidWrong(f finding) string { return string(f.code) }

func (m *marking) saidAlmost(code Code, about string) string { return string(code) }
