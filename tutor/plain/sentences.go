package plain

import (
	"fmt"

	"example.org/standstill/checker"
)

// prompt stands where a line can be typed.
const prompt = "> "

// What is said, in the order of a lesson.
const (
	saidHello            = "Standstill: problems about forces in equilibrium, one stage at a time. Type “help” at any time."
	saidNotice           = "Notice: %s"
	saidGoOn             = "Question: do you want to go on without saving? Type yes or no."
	saidWithout          = "Record: %s"
	saidName             = "Name: who is practising?"
	saidNotAName         = "Name: you typed the command %s, not a name. Type your name, or “quit”."
	saidOnList           = "%d. %s"
	saidNotOnList        = "Name: this name is not on your class list. Type your name exactly as it is on the list, or type its number."
	saidRefused          = "Class: %s"
	saidAgain            = "Student: %s. Type “student” if this is not your name."
	saidVisitor          = "Student: %s. %s"
	saidRecord           = "Record: %s"
	saidResume           = "You are continuing from where you stopped last time."
	saidWhy              = "Why: %s Type “problems” to choose a different problem."
	saidAxes             = "Axes: %s."
	saidNoProblems       = "Problems: there are no physics problems to choose from."
	saidProblem          = "Problem: %s (%s, %s)."
	saidText             = "Text: %s"
	saidGiven            = "Given: %s."
	saidGivenAs          = "Given: %s, %s."
	saidScene            = "Scene: %s"
	saidFind             = "Find: %s."
	saidStage            = "Stage %d of 5: %s."
	saidNothing          = "%s: no force in this problem has a component along %s, so there is no equation to write."
	saidTable            = "Table: %s. You can write several components on one line, with semicolons (;) between them."
	saidQuestion         = "Question: %s"
	saidSample           = "Example of what you can type: %s"
	saidDraft            = "Draft: you started to type %s"
	saidEmpty            = "Empty: the line is empty. Type a line, or “help”."
	saidRead             = "Read: %s"
	saidNote             = "Note: %s"
	saidDoubt            = "Question: %s"
	saidHintIsNear       = "Hint: type “hint” if you want a hint."
	saidMayAsk           = "Try: correct the line and type it again. Type “hint” for a hint. If you are sure that you are right, type “dispute”."
	saidHint             = "Hint %d of 3: %s"
	saidNothingOpen      = "Hint: there is nothing left to answer in this problem, so there is no hint."
	saidDisputed         = "Disputed: you can now go on with %s. Your teacher can see that it was marked wrong and that you disputed this."
	saidNothingToDispute = "Dispute: your last line was not marked wrong, so there is nothing to dispute."
	saidWorked           = "Solution: compare the solution with your page."
	saidThen             = "Next: type “next” for “%s”. %s You can also type “again”, “angles”, “problems” or “quit”."
	saidShown            = "Shown: this problem now counts as “solution shown”. Type “again” for the same problem with other numbers, or “next” to go on."
	saidOver             = "Done: %s. Type “page”, “solution” or “angles” to look back at the problem, “again” for other numbers, or “next” to go on."
	saidPage             = "Page: what you have written so far."
	saidPageEmpty        = "You have not written anything here yet."
	saidPageShown        = "Shown: the worked solution."
	saidBack             = "Back: your lines at stage %d, %s."
	saidNoStageBefore    = "Back: this is the first stage."
	saidDrawing          = "Drawing: %s"
	saidNoDrawing        = "The drawing will show arrows when you have named the forces."
	saidTopics           = "Topics:"
	saidChooseTopic      = "Choose: type the number of a topic or the id of a problem. Press Enter to go back."
	saidSection          = "Topic: %s."
	saidChooseProblem    = "Choose: type the number of a problem. Press Enter to go back."
	saidNoSuchProblem    = "Choose: there is no problem called “%s”."
	saidBackToLesson     = "Back: %s."
	saidProblemBroken    = "Problem: the program cannot read the problem %s. Type “problems” to choose a different problem."
	saidNoLesson         = "Problem: no problem is open. Type “problems” to choose one."
	saidSums             = "Sums: %s"
	saidPrediction       = "Prediction: %s"
	saidNow              = "Now: %s"
	saidExample          = "Example for another problem: %s"
	saidAskHint          = "Hint: type “hint” for a hint about what you typed last."
	saidAskWords         = "Words: type “words” for a list of everything that you can type."
	saidIdeas            = "Ideas: your progress. Each mark is one problem; the latest problem is on the right. “Steady” means right the last three times, and “slipping” means wrong the last time."
	saidNoIdeas          = "Ideas: this list is empty. The ideas that you practise appear here after your first problem."
	saidWhoIsIt          = "Student: are you %s? If so, press Enter. If not, type your name."
	saidHelpWords        = "Words that you can type instead of a line:"
	saidHelpTyping       = "How to type formulas and values:"
	saidAnglesLater      = "Angles: you can change angles after you have solved the problem."
	saidNoAngles         = "Angles: this problem has no values that you can change."
	saidAngles           = "Angles: type a letter and its new value, for example alpha = 20. Press Enter to go back."
	saidSettings         = "Now: with %s, the result is %s."
	saidNoSlider         = "Letter: you cannot change %s here."
	saidNot              = "Limit: %s"
	saidAnglesEnd        = "Angles: back to the problem."
	saidNoSolution       = "no equilibrium is possible"
	saidShownGuest       = "Shown: the problem with these numbers now counts as “solution shown”."
	saidGuest            = "Bench: these are the numbers that you measured. At any time, you can type “quit” to go back to the bench."
	saidNotSaved         = "Not saved: %s Your last line does not count; type it again."
	saidEnd              = "End: every line that you checked is saved. Start the program again to go on from here."
	saidWaiting          = "Record: your line is not saved yet, because the record is in use or not available. The program is trying again."
	saidEndFault         = "End: %s Your last line does not count. The lines that you checked earlier are saved."
	saidEndGone          = "End: %s Lines that you checked earlier may be lost: tell your teacher."
	saidEndNotSaved      = "End: nothing was saved, as the notice at the start said."
)

const (
	wordDisputed = "Disputed"
	wordAccepted = "Accepted"
)

func saidPageHolds(n int) string {
	if n == 1 {
		return "Page: your page has one line. Type “page” to read it."
	}
	return fmt.Sprintf("Page: your page has %d lines, including the hints. Type “page” to read them.", n)
}

// wordFor is the first word about a line.
func wordFor(v checker.Verdict) string {
	return map[checker.Verdict]string{
		checker.Right: "Right", checker.Almost: "Almost", checker.Wrong: "Wrong", checker.Unread: "Not understood",
	}[v]
}
