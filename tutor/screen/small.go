package screen

import "example.org/standstill/tutor/screen/frame"

import tea "github.com/charmbracelet/bubbletea"

// tooSmall says that the window is too small, and what can be done about it.
func (m *model) tooSmall() []frame.Row {
	rows := m.look.Rows(frame.Plain, m.saidTooSmall(), m.cols)
	rows = append(rows, m.look.Rows(frame.Bold, saidTooSmallKeys, m.cols)...)
	for i := range rows {
		rows[i] = rows[i].Cut(m.cols)
	}
	return frame.Fill(rows, m.rows)
}

// keyTooSmall takes the one key that works in a window that is too small.
func (m *model) keyTooSmall(k tea.KeyMsg) {
	if k.Type == tea.KeyEnter {
		m.bye.Plain = true
		m.leave()
	}
}
