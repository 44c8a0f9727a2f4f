package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// welcome asks who is practising, the first time.
type welcome struct{ frame.Still }

func (welcome) question(*model) string { return saidWho }

func (welcome) typed(*model) {}

func (welcome) keys(m *model) []frame.Binding { return []frame.Binding{m.on.GoOn, m.on.Quit} }

func (welcome) press(*model, tea.KeyMsg) bool { return false }

func (welcome) enter(m *model, text string) { m.enrol(text) }

func (welcome) view(*model) views.Sheet { return views.Welcome{} }

// isIt asks whether the student of the last time is here again, where several use the
// machine.
type isIt struct {
	welcome
	last record.Student
}

func (i *isIt) question(*model) string { return saidIsIt(i.last.Name) }

func (i *isIt) enter(m *model, text string) {
	if m.line.IsEmpty() {
		m.seat(i.last)
		return
	}
	m.enrol(text)
}

// enrol takes a name and gives the place to its student.
func (m *model) enrol(name string) {
	student, ok, err := m.tutor.Enrol(name)
	switch {
	case err != nil:
		m.say(saidNotSaved(err))
	// Where there is a list nobody is added to it here: a slip of a key would be a new student.
	case !ok && m.tutor.Class.Students != nil:
		m.say(saidNotListed)
	case !ok:
		m.say(saidNoName)
	default:
		m.saveDraft()
		m.seat(student)
		if n, ok := m.sheet.(*list); ok {
			// Whoever is new here is told once who can read the answers.
			n.shown.First = tutor.SaidWhoSees(m.tutor.SavedIn())
		}
	}
}

// students lists who has practised here.
type students struct {
	frame.Scroller
	all []record.Student
	at  int
}

func (m *model) showStudents() {
	all, err := m.tutor.Students()
	if err != nil {
		m.say(record.Sentence(err))
		return
	}
	// A name is typed now, and must not be taken for an answer.
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

func (s *students) typed(*model) {}

func (s *students) keys(m *model) []frame.Binding {
	if m.desk == nil {
		return []frame.Binding{m.on.UpDown, m.on.GoOn, m.on.Quit}
	}
	return []frame.Binding{m.on.UpDown, m.on.GoOn, m.on.Back, m.on.Quit}
}

func (s *students) press(_ *model, k tea.KeyMsg) (ok bool) {
	s.at, ok = frame.Picked(s.at, len(s.all), k)
	return ok
}

func (s *students) enter(m *model, text string) {
	if m.line.IsEmpty() && s.at < len(s.all) {
		// By id, because two students may have one name.
		text = s.all[s.at].ID
	}
	m.enrol(text)
}

func (s *students) view(m *model) views.Sheet {
	v := views.Students{At: s.at, Top: s.Seen.Top, Note: tutor.SaidWhoSees(m.tutor.SavedIn())}
	for _, one := range s.all {
		v.All = append(v.All, views.Student{Name: one.Name, Here: m.isHere(one)})
	}
	return v
}

// agree asks whether to go on without a record.
type agree struct{ frame.Still }

func (agree) question(*model) string { return views.SaidAgree }

func (agree) typed(*model) {}

func (agree) keys(m *model) []frame.Binding { return []frame.Binding{m.on.GoOn, m.on.Quit} }

func (agree) press(*model, tea.KeyMsg) bool { return false }

func (agree) enter(m *model, _ string) {
	m.notice = ""
	m.line.Set("")
	// What would have been asked first is asked now.
	m.begin()
	m.say(tutor.SaidNotSaved)
}

func (agree) view(m *model) views.Sheet { return views.Agree{Notice: m.notice} }
