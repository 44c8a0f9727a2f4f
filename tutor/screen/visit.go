package screen

import (
	"slices"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/views"
)

// goToBench is the word that leads to the bench: a visitor from the problems, and everybody
// from a prediction by hand.
const goToBench tutor.Word = "bench"

// visitActions are what a visitor can do: the place is the visitor's own, and the way to the
// bench is here, because there is no command line.
func visitActions(all views.Actions[*model]) views.Actions[*model] {
	all = slices.DeleteFunc(all, func(a action) bool { return a.Word == tutor.AskStudent })
	way := action{Word: goToBench, Menu: menuVisitBench, Can: always, Do: func(m *model) { m.goTo(ToBench) }}
	return slices.Insert(all, len(all)-2, way)
}

func (m *model) goTo(place Place) {
	m.bye.To = place
	m.quit()
}
