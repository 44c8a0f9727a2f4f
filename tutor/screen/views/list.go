package views

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
)

// List is problems under their topics, with how the student stands with each.
type List struct {
	Sections []tutor.Section
	Found    []Found // what is listed, in order
	At, Top  int
	IsNobody bool   // has a standing here: the list is not a student's
	First    string // said above the list
	Advised  string // the problem that is advised
	Why      string // it is
}

// Found is a problem of the list, and the section that it stands on: set work stands
// on two.
type Found struct {
	tutor.Listed
	Section int
}

// Narrowed is the list of what holds the typed text in its title, topic, level or id.
func (n List) Narrowed(typed string) List {
	wanted := strings.ToLower(strings.TrimSpace(typed))
	if _, isWord := tutor.WordOf(wanted); isWord {
		wanted = ""
	}
	n.Found, n.At = nil, 0
	for i, section := range n.Sections {
		for _, p := range section.Problems {
			if strings.Contains(strings.ToLower(p.Title+" "+section.Title+" "+p.Topic+" "+p.ID+" "+problems.LevelWord(p.Level)), wanted) {
				n.Found = append(n.Found, Found{Listed: p, Section: i})
			}
		}
	}
	return n
}

// Moved is the list with another problem picked; false where the key picks none.
func (n List) Moved(k tea.KeyMsg, seen frame.Seen) (List, bool) {
	switch k.Type {
	case tea.KeyUp:
		n.At--
	case tea.KeyDown:
		n.At++
	case tea.KeyPgUp:
		n.At -= seen.Room - 1
	case tea.KeyPgDown:
		n.At += seen.Room - 1
	case tea.KeyTab:
		n.At = n.toTopic(+1)
	case tea.KeyShiftTab:
		n.At = n.toTopic(-1)
	default:
		return n, false
	}
	n.At = min(max(n.At, 0), max(len(n.Found)-1, 0))
	return n, true
}

// toTopic is the first problem of the next topic, or of this one and then of the one
// before.
func (n List) toTopic(step int) int {
	first := func(i int) bool { return i == 0 || n.Found[i].Section != n.Found[i-1].Section }
	for i := n.At + step; i >= 0 && i < len(n.Found); i += step {
		if first(i) {
			return i
		}
	}
	return n.At
}

// Picked is the problem in hand; false where none is listed.
func (n List) Picked() (Found, bool) {
	if n.At >= len(n.Found) {
		return Found{}, false
	}
	return n.Found[n.At], true
}

// Under says what a typed command does, why nothing is listed, or why the picked problem is
// advised.
func (n List) Under(s *Screen, cols, rows int) []frame.Row {
	switch {
	case s.Command != nil:
		return s.CommandRows()
	case len(n.Found) == 0:
		return []frame.Row{s.Labelled(wordNote, s.Look.Row(frame.Plain, n.None()))}
	case !n.IsNobody && n.At < len(n.Found) && n.Found[n.At].ID == n.Advised:
		return s.LabelledText(wordNext, n.Why, cols)
	}
	return nil
}

// None says why nothing is listed.
func (n List) None() string {
	if len(n.Sections) == 0 {
		return SaidNoProblems
	}
	return saidNoneFound
}

// Body has the picked problem in sight, with the row above it.
func (n List) Body(s *Screen, cols, rows int) ([]frame.Row, frame.Seen) {
	top := s.Look.Rows(frame.Plain, n.First, cols)
	done := saidDoneOf(n.Sections)
	if n.IsNobody {
		done = ""
	}
	top = append(top, s.Look.Rule(cols, wordProblems, done))
	all, at := n.rows(s.Pen, cols)
	room := rows - len(top)
	// The row above may be the heading of the topic; the picked row itself counts more.
	from := frame.Follow(frame.Follow(n.Top, max(at-1, 0), room), at, room)
	shown, seen := frame.Window(all, from, room)
	return append(top, shown...), seen
}

// The room for how hard a problem is, and for how the student stands with it.
const (
	levelWidth    = 8
	standingWidth = 27
)

// rows lists what was found under its topics; at is the row of the picked one.
func (n List) rows(p *Pen, cols int) (rows []frame.Row, at int) {
	section := -1
	width := cols - 3
	if !n.IsNobody {
		width -= standingWidth
	}
	look := p.Look
	for i, one := range n.Found {
		if one.Section != section {
			section = one.Section
			rows = append(rows, frame.Row{frame.Gap(1), look.Text(frame.Bold, n.Sections[section].Title)})
		}
		if i == n.At {
			at = len(rows)
		}
		r := frame.Row{look.Text(frame.Quiet, problems.LevelWord(one.Level))}.Padded(levelWidth)
		r = append(r, look.Text(frame.Plain, look.Shortened(one.Title, width-levelWidth-1))).Padded(width)
		if !n.IsNobody {
			r = append(r, look.Text(statusShade(one.Progress), saidInList(one.Progress, one.Due)))
		}
		rows = append(rows, p.Picked(i == n.At, r))
	}
	return rows, at
}

func statusShade(p tutor.Progress) frame.Shade {
	switch {
	case p.Status == tutor.NotBegun:
		return frame.Quiet
	case p.Status.Done():
		return frame.Good
	}
	return frame.Near
}
