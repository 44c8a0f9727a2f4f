package screen

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
)

// list is every problem by topic and level, with how the student stands with it.
// What is typed narrows it down.
type list struct {
	scroller
	sections []tutor.Section
	advice   tutor.Advice
	found    []found // what matches the line, in order
	at       int
	nobody   bool   // has a standing here: the list is not a student's
	first    string // said above the list until a problem is opened
}

// found is a problem of the list, and the section that it stands on: set work stands
// on two.
type found struct {
	tutor.Listed
	section int
}

func newList(m *model) *list {
	n := &list{sections: m.desk.Sections()}
	n.advice, _ = m.desk.Next()
	n.typed(m)
	n.at = max(slices.IndexFunc(n.found, func(p found) bool { return p.ID == n.advice.ID }), 0)
	return n
}

func (m *model) showProblems() {
	m.lend()
	m.sheet = newList(m)
}

func (n *list) question(m *model) string { return saidWhichProblem }

func (n *list) under(m *model, cols, rows int) []frame.Row {
	if word, ok := m.wordOf(m.line.text()); ok {
		return []frame.Row{m.labelled(wordMeans, m.look.Row(frame.Plain, m.whatItDoes(word)))}
	}
	if len(n.found) == 0 {
		return []frame.Row{m.labelled(wordNote, m.look.Row(frame.Plain, n.none()))}
	}
	if !n.nobody && n.at < len(n.found) && n.found[n.at].ID == n.advice.ID {
		return m.labelledText(wordNext, n.advice.Why, cols)
	}
	return nil
}

// none says why nothing is listed.
func (n *list) none() string {
	if len(n.sections) == 0 {
		return saidNoProblems
	}
	return saidNoneFound
}

func (m *model) labelledText(word, text string, cols int) []frame.Row {
	var rows []frame.Row
	for i, part := range m.look.Wrap(text, cols-gutter-1) {
		label := ""
		if i == 0 {
			label = word
		}
		rows = append(rows, m.labelled(label, m.look.Row(frame.Quiet, part)))
	}
	return rows
}

// typed keeps what holds the typed text in its title, topic, level or id.
func (n *list) typed(m *model) {
	wanted := strings.ToLower(strings.TrimSpace(m.line.text()))
	if _, isWord := tutor.WordOf(wanted); isWord {
		wanted = ""
	}
	n.found, n.at = nil, 0
	for i, section := range n.sections {
		for _, p := range section.Problems {
			if strings.Contains(strings.ToLower(p.Title+" "+section.Title+" "+p.Topic+" "+p.ID+" "+levelWord(p.Level)), wanted) {
				n.found = append(n.found, found{p, i})
			}
		}
	}
}

func (n *list) press(m *model, k tea.KeyMsg) bool {
	if m.rows < lowRows {
		n.first = ""
	}
	switch k.Type {
	case tea.KeyUp:
		n.at--
	case tea.KeyDown:
		n.at++
	case tea.KeyPgUp:
		n.at -= n.room - 1
	case tea.KeyPgDown:
		n.at += n.room - 1
	case tea.KeyTab:
		n.toTopic(+1)
	case tea.KeyShiftTab:
		n.toTopic(-1)
	default:
		return false
	}
	n.at = min(max(n.at, 0), max(len(n.found)-1, 0))
	return true
}

// toTopic goes to the first problem of the next topic, or of this one and then of
// the one before.
func (n *list) toTopic(step int) {
	first := func(i int) bool { return i == 0 || n.found[i].section != n.found[i-1].section }
	for i := n.at + step; i >= 0 && i < len(n.found); i += step {
		if first(i) {
			n.at = i
			return
		}
	}
}

func (n *list) enter(m *model, _ string) {
	if n.at >= len(n.found) {
		m.say(n.none())
		return
	}
	m.line.set("")
	if p := n.found[n.at]; p.ID == n.advice.ID {
		m.openAdvised(n.advice)
	} else {
		m.open(p.ID, false)
	}
}

func (n *list) keys(m *model) []binding {
	keys := []binding{m.on.upDown, m.on.topic, m.on.open}
	if m.work != nil {
		keys = append(keys, m.on.back)
	} else {
		keys = append(keys, m.on.menu)
	}
	return append(keys, m.on.leave)
}

func (n *list) body(m *model, cols, rows int) []frame.Row {
	top := m.look.Rows(frame.Plain, n.first, cols)
	done := saidDoneOf(n.sections)
	if n.nobody {
		done = ""
	}
	top = append(top, m.look.Rule(cols, wordProblems, done))
	all, at := n.rows(m, cols)
	n.follow(max(at-1, 0), len(all), rows-len(top))
	n.follow(at, len(all), rows-len(top))
	return append(top, n.cut(all, rows-len(top))...)
}

// The room for how hard a problem is, and for how the student stands with it.
const (
	levelWidth    = 8
	standingWidth = 27
)

// rows lists what was found under its topics; at is the row of the picked one.
func (n *list) rows(m *model, cols int) (rows []frame.Row, at int) {
	section := -1
	width := cols - 3
	if !n.nobody {
		width -= standingWidth
	}
	for i, p := range n.found {
		if p.section != section {
			section = p.section
			rows = append(rows, frame.Row{frame.Gap(1), m.look.Text(frame.Bold, n.sections[section].Title)})
		}
		if i == n.at {
			at = len(rows)
		}
		r := frame.Row{m.look.Text(frame.Quiet, levelWord(p.Level))}.Padded(levelWidth)
		r = append(r, m.look.Text(frame.Plain, m.look.Shortened(p.Title, width-levelWidth-1))).Padded(width)
		if !n.nobody {
			r = append(r, m.look.Text(standingShade(p.Progress), saidInList(p.Progress, p.Due)))
		}
		rows = append(rows, m.pickRow(i == n.at, r))
	}
	return rows, at
}

func standingShade(p tutor.Progress) frame.Shade {
	switch {
	case p.Standing == tutor.NotBegun:
		return frame.Quiet
	case p.Standing.Done():
		return frame.Good
	}
	return frame.Near
}
