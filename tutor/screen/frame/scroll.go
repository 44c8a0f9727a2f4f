package frame

import tea "github.com/charmbracelet/bubbletea"

// Seen is which of some rows are on the screen, where there are more than fit.
type Seen struct{ Top, Rows, Room int }

// More reports whether there are more rows than fit.
func (s Seen) More() bool { return s.Rows > s.Room }

// IsAtEnd reports whether the last row is seen.
func (s Seen) IsAtEnd() bool { return s.Top+s.Room >= s.Rows }

// Scrolled is what is seen after a key; false where the key does not scroll.
func (s Seen) Scrolled(k tea.KeyMsg) (Seen, bool) {
	step, ok := map[tea.KeyType]int{
		tea.KeyUp: -1, tea.KeyDown: 1, tea.KeyPgUp: -(s.Room - 1), tea.KeyPgDown: s.Room - 1,
	}[k.Type]
	if ok {
		s.Top = min(max(s.Top+step, 0), max(s.Rows-s.Room, 0))
	}
	return s, ok
}

// Window takes the rows that are to be seen, from a top on where that leaves none of the
// room empty.
func Window(rows []Row, top, room int) ([]Row, Seen) {
	top = min(max(top, 0), max(len(rows)-room, 0))
	return rows[top:min(top+room, len(rows))], Seen{Top: top, Rows: len(rows), Room: room}
}

// Follow moves a top just so far that a row is seen.
func Follow(top, at, room int) int {
	if at < top {
		top = at
	}
	if at >= top+room {
		top = at - room + 1
	}
	return top
}

// Scroller is what a sheet remembers of the rows that were seen of it.
type Scroller struct{ Seen Seen }

// Saw is told how much was seen.
func (s *Scroller) Saw(seen Seen) { s.Seen = seen }

// Scroll takes the keys that scroll.
func (s *Scroller) Scroll(k tea.KeyMsg) (ok bool) {
	s.Seen, ok = s.Seen.Scrolled(k)
	return ok
}

// Still is a sheet that does not scroll.
type Still struct{}

// Saw does nothing.
func (Still) Saw(Seen) {}
