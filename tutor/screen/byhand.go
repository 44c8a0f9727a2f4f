package screen

import (
	"slices"

	"example.org/standstill/tutor"
	atbench "example.org/standstill/tutor/screen/bench"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// grant does what the bench leaves to the screens around it.
func (m *model) grant(w atbench.Wish) {
	switch {
	case w.Quit:
		m.quit()
	case w.ToLesson:
		m.goTo(ToLesson)
	case w.OtherBackground:
		m.otherBackground()
	case w.Predicts != nil:
		m.predict(*w.Predicts)
	}
}

// byHandActions are those of a lesson whose numbers were measured: no other problem and no
// other student, but the way back.
func byHandActions() views.Actions[*model] {
	elsewhere := []tutor.Word{tutor.GoNext, tutor.GoAgain, tutor.AskStudent}
	all := slices.DeleteFunc(actions(), func(a action) bool { return slices.Contains(elsewhere, a.Word) })
	for i := range all {
		if all[i].Word == tutor.AskProblems {
			all[i] = action{Word: goToBench, Key: frame.Bind("ctrl+l", "to the bench", "ctrl+l"), Menu: menuBench, Can: always, Do: (*model).toBench}
		}
	}
	return all
}

// predict leads a student through the stages on the measured numbers.
func (m *model) predict(p atbench.Prediction) {
	m.desk, m.lesson, m.lent = p.Desk, p.Lesson, false
	m.actions = byHandActions()
	m.beginLine(p.Lesson)
	m.work = newWork(m)
	m.refresh()
	m.sheet = m.work
	m.say(saidByHandNow(p.Desk.Student.Name))
}
