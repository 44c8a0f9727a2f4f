package screen

import (
	"slices"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// action is something that a student can do in a lesson.
type action = views.Action[*model]

// actions is the table of everything that can be done. Its keys are single bytes that no
// common terminal, multiplexer or browser keeps for itself, and that are none of the control
// codes of tab, enter and backspace.
func actions() views.Actions[*model] {
	return views.Actions[*model]{
		{Word: tutor.AskHint, Key: frame.Bind("ctrl+g", "hint", "ctrl+g"), Menu: menuHint, Can: (*model).isOpen, Do: (*model).hint},
		{Word: tutor.AskText, Key: frame.Bind("ctrl+r", "problem", "ctrl+r"), Menu: menuText, Can: (*model).hasLesson, Do: (*model).showText},
		{Word: tutor.DisputeLine, Key: frame.Bind("ctrl+y", "go on anyway", "ctrl+y"), Menu: menuDispute, Can: (*model).canDispute, Do: (*model).dispute},
		{Word: tutor.AskPage, Key: frame.Bind("ctrl+o", "page", "ctrl+o"), Menu: menuPage, Can: (*model).hasLesson, Do: (*model).showPage},
		{Word: tutor.GoBack, Menu: menuBack, Can: (*model).hasLesson, Do: (*model).goBack},
		{Word: tutor.AskDrawing, Menu: menuDrawing, Can: (*model).hasLesson, Do: (*model).showWords},
		{Word: tutor.AskHelp, Menu: menuHelp, Can: (*model).isSeated, Do: (*model).showHelp},
		{Word: tutor.AskTyping, Menu: menuTyping, Can: (*model).isSeated, Do: (*model).showTyping},
		{Word: tutor.AskIdeas, Menu: menuIdeas, Can: (*model).hasDesk, Do: (*model).showIdeas},
		{Word: tutor.PassOver, Menu: menuSums, Can: (*model).hasLesson, Do: (*model).passOver},
		{Word: tutor.AskSolution, Menu: menuSolution, Can: (*model).hasLesson, Do: (*model).askSolution},
		{Word: tutor.AskAngles, Menu: menuAngles, Can: (*model).canTurn, Do: (*model).turnAngles},
		{Word: tutor.GoNext, Menu: menuNext, Can: (*model).hasDesk, Do: (*model).next},
		{Word: tutor.GoAgain, Menu: menuAgain, Can: (*model).hasLesson, Do: (*model).again},
		{Word: tutor.AskProblems, Key: frame.Bind("ctrl+l", "all problems", "ctrl+l"), Menu: menuProblems, Can: (*model).hasDesk, Do: (*model).showProblems},
		{Word: tutor.AskStudent, Menu: menuStudent, Can: (*model).hasDesk, Do: (*model).showStudents},
		{Word: tutor.AskMenu, Can: (*model).hasDesk, Do: (*model).openMenu},
		{Menu: views.MenuBackground, Can: always, Do: (*model).otherBackground},
		{Word: tutor.Quit, Key: frame.Bind("ctrl+c", "quit", "ctrl+c"), Menu: views.MenuQuit, Can: always, Do: (*model).quit},
	}
}

func always(*model) bool { return true }

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
