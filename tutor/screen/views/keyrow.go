package views

import (
	"slices"

	"example.org/standstill/tutor/screen/frame"
)

// keyRows is how many rows say which keys work now.
const keyRows = 1

// keyRow says which keys work now. Where they do not all fit, those of the stage give way,
// the last first: hint, problem, menu and the way out stay, because whoever is stuck
// looks for them. The key that scrolls is named where there is more than fits.
func (s *Screen) keyRow(seen frame.Seen) []frame.Row {
	all := slices.Clone(s.Keys)
	if !seen.More() {
		// Where everything is in sight the keys that scroll do nothing.
		all = slices.DeleteFunc(all, func(b frame.Binding) bool { return b.Help() == s.Scroll.Help() })
	}
	for {
		rows := s.layKeys(all, 2)
		at := s.leastKey(all)
		if len(rows) > keyRows && at < 0 {
			// The last resort: nothing more may go, so they stand closer.
			rows = s.layKeys(all, 1)
		}
		if len(rows) <= keyRows || at < 0 {
			return frame.Fill(rows, keyRows)
		}
		all = slices.Delete(all, at, at+1)
	}
}

// leastKey is the key that gives way first; -1 where none may.
func (s *Screen) leastKey(all []frame.Binding) int {
	// The last two, menu and quit, are the way out and never give way.
	for at := len(all) - 3; at >= 0; at-- {
		if !slices.Contains(s.Stay, all[at].Help().Key) {
			return at
		}
	}
	return -1
}

func (s *Screen) layKeys(all []frame.Binding, space int) []frame.Row {
	var rows []frame.Row
	line := frame.Row{frame.Gap(1)}
	for _, b := range all {
		entry := frame.Row{s.Look.Text(frame.Bold, b.Help().Key), frame.Gap(1), s.Look.Text(frame.Quiet, b.Help().Desc)}
		if line.Width()+entry.Width()+space > s.Cols && line.Width() > 1 {
			rows = append(rows, line)
			line = frame.Row{frame.Gap(1)}
		}
		if line.Width() > 1 {
			line = append(line, frame.Gap(space))
		}
		line = append(line, entry...)
	}
	return append(rows, line)
}
