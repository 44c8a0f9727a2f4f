package screen

import tea "github.com/charmbracelet/bubbletea"

// tooSmall says that the window is too small, and what can be done about it.
func (m *model) tooSmall() []row {
	rows := m.look.rows(plain, m.saidTooSmall(), m.cols)
	rows = append(rows, m.look.rows(bold, saidTooSmallKeys, m.cols)...)
	for i := range rows {
		rows[i] = rows[i].cut(m.cols)
	}
	return fill(rows, m.rows)
}

// keyTooSmall takes the one key that works in a window that is too small.
func (m *model) keyTooSmall(k tea.KeyMsg) {
	if k.Type == tea.KeyEnter {
		m.bye.Plain = true
		m.leave()
	}
}
