package screen

import (
	"slices"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
)

// goToLesson is the word that leads a visitor from the bench back to the problems.
const goToLesson tutor.Word = "lesson"

// visitActions are what a visitor can do: the place is the visitor's own, no file of the
// machine can be written, and the way between lesson and bench is here, because there is
// no command line.
func visitActions(all []action) []action {
	atBench := slices.ContainsFunc(all, func(a action) bool { return a.word == askResult })
	all = slices.DeleteFunc(slices.Clone(all), func(a action) bool {
		return a.word == tutor.AskStudent || a.word == askReport || a.word == askSheet || a.word == askExport
	})
	way := action{goToBench, frame.Binding{}, menuVisitBench, always, func(m *model) { m.goTo(ToBench) }}
	if atBench {
		way = action{goToLesson, frame.Binding{}, menuVisitLesson, always, func(m *model) { m.goTo(ToLesson) }}
	}
	return slices.Insert(all, len(all)-2, way)
}

func (m *model) actionsAtBench() []action {
	if m.tutor.IsVisit() {
		return visitActions(benchActions())
	}
	return benchActions()
}

func (m *model) goTo(place Place) {
	m.bye.To = place
	m.leave()
}
