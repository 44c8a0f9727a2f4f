package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/record"
	"example.org/standstill/tutor/screen/frame"
)

// welcome asks who is practising, the first time.
type welcome struct{}

func (welcome) question(*model) string { return saidWho }

func (welcome) under(m *model, cols, rows int) []frame.Row {
	return m.labelledText(wordSample, saidNameSample, cols)
}

func (welcome) typed(*model) {}

func (welcome) keys(m *model) []binding { return []binding{m.on.goOn, m.on.leave} }

func (welcome) press(*model, tea.KeyMsg) bool { return false }

func (welcome) enter(m *model, text string) { m.enrol(text) }

func (welcome) body(m *model, cols, rows int) []frame.Row {
	left, between := cols*45/100, []frame.Row{nil}
	if m.rows < lowRows {
		left, between = cols*28/100, nil
	}
	var right []frame.Row
	for _, p := range []string{saidWelcome1, saidWelcome2, saidWelcome3} {
		right = append(append(right, between...), m.look.Rows(frame.Plain, p, cols-left-2)...)
	}
	return frame.Columns(m.paint(sign(), left, rows), left+1, frame.Indented(right))
}

// isIt asks whether the student of the last time is here again, where several use the
// machine.
type isIt struct {
	welcome
	last record.Student
}

func (i *isIt) question(*model) string { return saidIsIt(i.last.Name) }

func (i *isIt) enter(m *model, text string) {
	if m.line.isEmpty() {
		m.seat(i.last)
		return
	}
	m.enrol(text)
}

// sign is the drawing of the first screen: something that stands still.
func sign() picture.Scene {
	return picture.Scene{
		Bodies: []picture.Body{{Shape: picture.Ring, Bare: true}},
		Forces: []picture.Force{
			{Kind: picture.Tension, Direction: 148, Colour: 0},
			{Kind: picture.Tension, Direction: 55, Colour: 1},
			{Kind: picture.Weight, Direction: -90, Colour: 2},
		},
	}
}

// enrol takes a name and gives the place to its student.
func (m *model) enrol(name string) {
	student, ok, err := m.tutor.Enrol(name)
	switch {
	case err != nil:
		m.say(notKept(err))
	case !ok && m.tutor.Class.Students != nil:
		m.say(saidNotListed)
	case !ok:
		m.say(saidNoName)
	default:
		m.saveDraft()
		m.seat(student)
		if n, ok := m.sheet.(*list); ok {
			n.first = tutor.SaidWhoSees(m.tutor.Kept())
		}
	}
}

// students lists who has practised here.
type students struct {
	scroller
	all []record.Student
	at  int
}

func (m *model) showStudents() {
	all, err := m.tutor.Students()
	if err != nil {
		m.say(record.Sentence(err))
		return
	}
	m.lend()
	s := &students{all: all}
	for i := range all {
		if m.isHere(all[i]) {
			s.at = i
		}
	}
	m.sheet = s
}

// isHere reports whether the student has the place.
func (m *model) isHere(s record.Student) bool { return m.desk != nil && m.desk.Student.ID == s.ID }

func (s *students) question(*model) string { return saidWhoElse }

func (s *students) under(m *model, cols, rows int) []frame.Row {
	return m.labelledText(wordNote, tutor.SaidWhoSees(m.tutor.Kept()), cols)
}

func (s *students) typed(*model) {}

func (s *students) keys(m *model) []binding {
	if m.desk == nil {
		return []binding{m.on.upDown, m.on.goOn, m.on.leave}
	}
	return []binding{m.on.upDown, m.on.goOn, m.on.back, m.on.leave}
}

func (s *students) press(_ *model, k tea.KeyMsg) bool { return picked(&s.at, len(s.all), k) }

func (s *students) enter(m *model, text string) {
	if m.line.isEmpty() && s.at < len(s.all) {
		text = s.all[s.at].ID
	}
	m.enrol(text)
}

func (s *students) body(m *model, cols, rows int) []frame.Row {
	return m.withDrawing(cols, rows, func(cols, rows int) []frame.Row {
		var list []frame.Row
		for i, one := range s.all {
			r := frame.Row{m.look.Text(frame.Plain, one.Name)}
			if m.isHere(one) {
				r = append(r, m.look.Text(frame.Quiet, "  "+saidHere))
			}
			list = append(list, m.pickRow(i == s.at && m.line.isEmpty(), r))
		}
		s.follow(s.at, len(list), rows-1)
		return append([]frame.Row{m.look.Rule(cols, wordStudents, "")}, s.cut(list, rows-1)...)
	})
}

// agree asks whether to go on without a record.
type agree struct{}

func (agree) question(*model) string { return saidAgree }

func (agree) under(*model, int, int) []frame.Row { return nil }

func (agree) typed(*model) {}

func (agree) keys(m *model) []binding { return []binding{m.on.goOn, m.on.leave} }

func (agree) press(*model, tea.KeyMsg) bool { return false }

func (agree) enter(m *model, _ string) {
	m.notice = ""
	m.line.set("")
	m.begin()
	m.say(tutor.SaidNotKept)
}

func (agree) body(m *model, cols, rows int) []frame.Row {
	out := []frame.Row{nil}
	return append(out, m.look.Rows(frame.Plain, m.notice, cols)...)
}
