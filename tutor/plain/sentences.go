package plain

import "example.org/standstill/checker"

// prompt stands where a line can be typed.
const prompt = "> "

// What is said, in the order of a lesson.
const (
	saidHello         = "Standstill: problems on forces at rest, one stage after the other. Type help at any time."
	saidNotice        = "Notice: %s"
	saidGoOn          = "Question: do you want to go on without keeping what you do? Type yes or no."
	saidWithout       = "Record: %s"
	saidName          = "Name: who is practising?"
	saidNotAName      = "Name: %s is a word of the tutor; type your name, or leave."
	saidOnList        = "%d. %s"
	saidNotOnList     = "Name: that is not on the list of your class. Type a name as it stands there, or its number."
	saidRefused       = "Class: %s"
	saidAgain         = "Student: %s. Type student if you are somebody else."
	saidRecord        = "Record: %s"
	saidResume        = "This is where you left off."
	saidWhy           = "Why: %s Type problems to choose another."
	saidPageHolds     = "Page: your lines and hints so far are %d. The word page reads them."
	saidAxes          = "Axes: %s."
	saidNoProblems    = "Problems: there are none here."
	saidProblem       = "Problem: %s (%s, level %d)."
	saidText          = "Text: %s"
	saidFind          = "Find: %s."
	saidStage         = "Stage %d of 5: %s."
	saidNothing       = "%s: no force has a part along %s here, so there is nothing to add up."
	saidTable         = "Table: %s. Several may stand in one line, with ; between them."
	saidQuestion      = "Question: %s"
	saidSample        = "Sample of what can be typed: %s"
	saidDraft         = "Draft: you had begun to type %s"
	saidEmpty         = "Empty: type a line, or help."
	saidRead          = "Read: %s"
	saidNote          = "Note: %s"
	saidMayAsk        = "Try: mend the line and type it again. The word hint gives a hint; keep lets your line stand."
	saidHint          = "Hint %d of 3: %s"
	saidNothingOpen   = "Hint: nothing is open in this problem."
	saidKept          = "Kept: %s stands as you wrote it, and your teacher can see that you kept it."
	saidNothingToKeep = "Keep: your last line was not refused, so there is nothing to keep."
	saidSolved        = "Solved: %s, %s."
	saidWorked        = "Solution: worked out, to lay beside your page."
	saidThen          = "Then: next takes %s. %s The words again, angles, problems and leave work too."
	saidShown         = "Shown: this problem now counts as shown. The word again gives it with other numbers; next goes on."
	saidOver          = "Over: %s. The words page, solution and angles show what there is; again gives it with other numbers; next goes on."
	saidPage          = "Page: what you have written so far."
	saidPageEmpty     = "Nothing is written here."
	saidPageShown     = "Shown: the worked solution."
	saidBack          = "Back: stage %d, %s, as it stands."
	saidNoStageBefore = "Back: there is no stage before this one."
	saidDrawing       = "Drawing: %s"
	saidNoDrawing     = "The forces are drawn once you have named them."
	saidTopics        = "Topics:"
	saidChooseTopic   = "Choose: type a topic's number, or a problem's id; an empty line goes back."
	saidShelf         = "Topic: %s."
	saidChooseProblem = "Choose: type a problem's number; an empty line goes back."
	saidNoSuchProblem = "Choose: there is no problem %s."
	saidBackToLesson  = "Back: %s."
	saidProblemBroken = "Problem: %s cannot be read. Type problems to choose another."
	saidNoLesson      = "Problem: none is in hand. Type problems to choose one."
	saidHelpWords     = "Words that may be typed in place of a line:"
	saidHelpTyping    = "What can be typed:"
	saidAnglesLater   = "Angles: they can be turned once the problem is solved."
	saidNoAngles      = "Angles: nothing in this problem can be turned."
	saidAngles        = "Angles: type a letter and a number, as in alpha = 20; an empty line ends it."
	saidSettings      = "Now: %s gives %s."
	saidNoKnob        = "Letter: %s cannot be turned here."
	saidNot           = "Not so far: %s"
	saidAnglesEnd     = "Angles: back to the problem."
	saidNoSolution    = "no rest is possible"
	saidShownGuest    = "Shown: these numbers now count as shown."
	saidGuest         = "Bench: these are the numbers that were measured; leave goes back to the bench at any time."
	saidNotKept       = "Not kept: %s What you typed last does not count; try it again."
	saidEnd           = "End: everything you handed in is kept. Start again to come back to this place."
	saidWaiting       = "Record: it is in use or does not answer, so your line is not kept yet. Trying again."
	saidEndFault      = "End: %s Your last line does not count. The lines that were checked before it are kept."
	saidEndGone       = "End: %s Lines that you checked earlier may be lost with it: tell your teacher."
	saidEndNotKept    = "End: nothing was kept, as was said at the beginning."
)

const (
	wordKept     = "Kept"
	wordAccepted = "Accepted"
)

// wordFor is the first word about a line.
func wordFor(v checker.Verdict) string {
	return map[checker.Verdict]string{
		checker.Right: "Right", checker.Almost: "Almost", checker.Wrong: "Wrong", checker.Unread: "Unread",
	}[v]
}
