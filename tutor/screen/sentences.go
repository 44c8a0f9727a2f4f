package screen

import (
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/statics"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
	"example.org/standstill/tutor/screen/views"
)

// The words in front of lines, at the edge of the page and above columns.
const (
	wordText      = "The problem"
	wordHelpEarly = "Help"
	wordHelp      = "The question"
	wordTyping    = "How to type formulas and values"
	wordIdeas     = "Your ideas"
)

// What the menu says.
const (
	menuHint     = "A hint about what you typed last"
	menuText     = "Show the problem again"
	menuDispute  = "Go on with your last line anyway"
	menuPage     = "Everything that you have written"
	menuBack     = "The previous stage"
	menuDrawing  = "The drawing in words"
	menuHelp     = "The question in other words"
	menuTyping   = "How to type formulas and values"
	menuIdeas    = "Your ideas and your progress"
	menuSums     = "Go straight to the equations"
	menuSolution = "The worked solution"
	menuAngles   = "Other angles"
	menuNext     = "The next problem"
	menuAgain    = "This problem with other numbers"
	menuProblems = "All problems, and which of them you have done"
	menuStudent  = "Switch to another student"
)

// Sentences, in the order in which a student meets them.
const (
	saidWho              = "Who is practising? Type your name and press Enter."
	saidNoName           = "A name needs at least one letter or digit."
	saidNotListed        = "This name is not on your class list."
	saidFirstAnswer      = "This is a command. Answer the question on this screen first."
	saidWhichProblem     = "Which problem do you want? Choose with the arrow keys and press Enter, or type part of its title."
	saidEmpty            = "The line is empty. Type your answer, then press Enter."
	saidAllHints         = "There are no more hints for this question. The last hint is on your page."
	saidNothingToDispute = "Your last line was not marked wrong, so there is nothing to dispute."
	saidDisputed         = "You can now go on with your line. Your teacher can see that it was marked wrong and that you disputed this."
	saidNoStageBefore    = "This is the first stage."
	saidReveal           = "Press Enter to see the solution. The problem then counts as “solution shown”, not as solved."
	saidTurn             = "Choose a letter with ↑ ↓, then a value with ← →."
	saidNoAngles         = "This problem has no values that you can change."
	saidWhoElse          = "Who is practising now? Choose with the arrow keys or type a name, then press Enter."
	saidGoodbye          = "Your work is saved, and so is the line that you were typing. Start the program again to go on from here."
	saidGoodbyeHangs     = "The record is not available, so your last line may not be saved. The lines that you checked earlier are saved."
	menuVisitBench       = "Bench: compare measured values with the prediction"
	saidWaiting          = "Your line is not saved yet, because the record is in use or not available. The program is trying again."
	saidWorking          = "Please wait. The program is calculating the result, or it is waiting for the record."
	saidStopWaiting      = "stop waiting"
)

// What help says before a problem is open.
const (
	saidHelpList  = "Press esc to go back to the list of problems. Choose a problem with the arrow keys and press Enter."
	saidHelpLater = "When a problem is open, type “help” to see its question in other words, or “words” for a list of everything that you can type."
)

// saidDraftNotSaved says that a half-typed line could not be saved.
func saidDraftNotSaved(err error) string {
	return "The line that you are typing cannot be saved at the moment. " + record.Sentence(err)
}

// saidGoodbyeFault says what is certain where the record failed.
func saidGoodbyeFault(err error) string {
	if record.IsGone(err) {
		return record.Sentence(err) + " Lines that you checked earlier may be lost: tell your teacher."
	}
	return record.Sentence(err) + " Your last line does not count. The lines that you checked earlier are saved."
}

// saidGoodbyeDraft says that everything but the half-typed line is saved.
func saidGoodbyeDraft(err error) string {
	return "Every line that you checked is saved, but not the line that you were typing. " + record.Sentence(err)
}

func saidMoved(title string, skipped []string) string {
	said := "The next stage is “" + title + "”."
	for _, s := range skipped {
		said += " There is nothing to write for “" + s + "” in this problem."
	}
	return said
}

func saidMeaning(does string) string { return "Press Enter: " + does + "." }

// saidDone says what a problem came to, what became of the prediction, and the question
// that closes the page.
func saidDone(l *tutor.Lesson) string {
	said := l.Progress().Result("")
	if limit, ok := l.Limit(); ok {
		return said + " " + limit.Question
	}
	if predicted := l.SaidPrediction(); predicted != "" {
		said += " " + predicted
	}
	return said + " Press Enter to compare your page with the worked solution."
}

// saidIsIt asks whether the student of the last time is here again.
func saidIsIt(name string) string {
	return "Are you " + name + "? If so, press Enter. If not, type your name."
}

func saidNext(a tutor.Advice) string { return "Next: “" + a.Title + "”." }

// saidResume tells whoever takes up earlier work how to be somebody else, where the name can
// be chosen.
func saidResume(name string, mayChange bool) string {
	if !mayChange {
		return "You are continuing from where you stopped last time."
	}
	return "You are continuing from where you stopped last time. If you are not " + name + ", type “student”."
}

func saidNotNow(w tutor.Word) string {
	switch w {
	case tutor.AskHint:
		return "There is nothing left to answer in this problem, so there is no hint."
	case tutor.DisputeLine:
		return saidNothingToDispute
	case tutor.AskAngles:
		return "You can change angles after you have solved the problem."
	}
	return views.SaidNoLesson
}

// saidNotSaved says what is the matter with the record.
func saidNotSaved(err error) string {
	return record.Sentence(err) + " Your last line does not count; type it again."
}

func saidBackground(word string) string {
	return "The colours are now for a " + word + " background. The program will use the same colours next time."
}

func saidLevelToo(letters []string) string {
	return "If you also make " + strings.Join(letters, " and ") + " smaller, the curve gets steeper."
}

// saidKind names what makes a force. Weights say whose they are: their letters
// alone do not tell, where there are several.
func saidKind(kind statics.Kind, of string) string {
	if kind == statics.Weight && of != "" {
		return string(kind) + " of " + of
	}
	return string(kind)
}

// saidNamed answers the name of a part or a body alone, which takes it up.
func saidNamed(stage checker.Stage, item string) string {
	if stage == checker.Components {
		return "The question is now about this component. Type an expression for it."
	}
	return "The question is now about " + item + "."
}

// What a window may be too small for.
const (
	whatLesson = "lesson"
	whatBench  = "bench"
)

// What a lesson on the numbers that were measured says besides.
const (
	menuBench   = "Back to the bench"
	saidAtBench = "You can do this at the bench. Press ctrl+l to go back to the bench."
)

func saidByHandNow(name string) string {
	return "It is " + name + "'s turn to calculate the prediction by hand from the numbers that you measured. Press ctrl+l to go back to the bench."
}
