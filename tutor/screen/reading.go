package screen

import (
	"example.org/standstill/checker"

	"example.org/standstill/tutor/screen/frame"
)

// reading shows how the line is read: with stacked fractions where these fit, else
// as one line that is broken where it must be.
func (m *model) reading(width, rows int) []frame.Row {
	var out []frame.Row
	lines, wide := m.look.SideBySide(m.now.formula)
	if lines == nil || len(lines) > rows || wide > width {
		lines = m.look.Wrap(m.flat(m.stage(), m.now.echo), width)
	}
	for _, l := range lines {
		out = append(out, m.tint(frame.Plain, l, false))
	}
	return out
}

// flat sets a read-back in one line, as it stands on the page. A diagram is no
// formula: its names alone are set.
func (m *model) flat(stage checker.Stage, echo string) string {
	if stage == checker.Diagram {
		return frame.SetNames(m.now.tints, echo)
	}
	if set := m.look.Flat(m.now.letters, echo); set != "" {
		return set
	}
	return echo
}
