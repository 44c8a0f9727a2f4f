package screen

import "example.org/standstill/checker"

// reading shows how the line is read: with stacked fractions where these fit, else
// as one line that is broken where it must be.
func (m *model) reading(width, rows int) []row {
	var out []row
	lines, wide := m.look.sideBySide(m.now.formula)
	if lines == nil || len(lines) > rows || wide > width {
		lines = m.look.wrap(m.flat(m.stage(), m.now.echo), width)
	}
	for _, l := range lines {
		out = append(out, m.tint(plain, l, false))
	}
	return out
}

// flat sets a read-back in one line, as it stands on the page. A diagram is no
// formula: its names alone are set.
func (m *model) flat(stage checker.Stage, echo string) string {
	if stage == checker.Diagram {
		return setNames(m.now.tints, echo)
	}
	if set := m.look.flat(m.now.letters, echo); set != "" {
		return set
	}
	return echo
}
