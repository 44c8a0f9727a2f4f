package screen

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/checker/statics"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// The words in front of lines, at the edge of the page and above columns.
const (
	wordAsked    = "asked"
	wordLine     = "you"
	wordRead     = "read"
	wordSample   = "such as"
	wordMeans    = "a word"
	wordNote     = "note"
	wordNext     = "why"
	wordSteep    = "look"
	wordRight    = "right"
	wordAlmost   = "almost"
	wordWrong    = "wrong"
	wordUnread   = "unread"
	wordKept     = "kept"
	wordAccepted = "accepted"
	wordShown    = "shown"
	wordPredict  = "predict"
	wordPage     = "Your page"
	wordStands   = "Your page, what stands"
	wordSolution = "Worked solution"
	wordKey      = "by key"
	wordWord     = "by word"
	wordForces   = "Which forces act?"
	wordFound    = "Found"
	wordMass     = "mass" // of the one body: needs no word
	wordText     = "The problem"
	wordMenu     = "What you can do"
	wordHelp     = "What is asked now"
	wordTyping   = "What can be typed"
	wordIdeas    = "Your ideas"
	wordHelpNow  = "now"
	wordHelpHint = "a hint"
	wordInWords  = "The drawing in words"
	wordProblems = "All problems"
	wordStudents = "Names that are known here"
	wordAlongX   = "along x"
	wordAlongY   = "along y"
	wordNow      = "asked now"
	wordLeftOut  = "left out"
	wordTurn     = "You turn"
	wordFollows  = "What follows"
	wordLetters  = "Letters here"
)

func wordHint(level int) string { return fmt.Sprintf("hint %d", level) }

// What the menu says.
const (
	menuHint       = "A hint about what you typed last"
	menuText       = "The problem's text again"
	menuKeep       = "Let my last line stand and go on"
	menuPage       = "Everything I have written"
	menuBack       = "The stage before this one"
	menuDrawing    = "The drawing in words"
	menuHelp       = "What is asked now, in other words"
	menuTyping     = "What can be typed"
	menuIdeas      = "Your ideas, and how far you are"
	menuSums       = "Straight to the sums"
	menuSolution   = "The worked solution"
	menuAngles     = "Other angles"
	menuNext       = "The next problem"
	menuAgain      = "This problem with other numbers"
	menuProblems   = "All problems, and what is done"
	menuStudent    = "Another student"
	menuBackground = "Colours for a light or a dark background"
	menuLeave      = "Leave; nothing is lost"
)

// Sentences, in the order in which a student meets them.
const (
	saidProgram        = "Standstill"
	saidAgree          = "Do you want to go on without keeping what you do? Press enter to go on, or ctrl+c to leave."
	saidWho            = "Who is practising? Type your name and press enter."
	saidNameSample     = "Nele"
	saidNoName         = "A name has at least one letter or digit."
	saidNotListed      = "That is not on the list of your class."
	saidWelcome1       = "Standstill is for practising forces at rest."
	saidWelcome2       = "You get a problem, say which forces act, split them along two axes, and write what must add up to zero. Each line is checked as soon as you hand it in."
	saidWelcome3       = "You type on the line below. The last rows always say which keys work."
	saidResume         = "This is where you left off."
	saidWhichProblem   = "Which problem do you want? Choose with the arrow keys and press enter, or type a part of its title."
	saidNoneFound      = "No problem has this in its title or topic."
	saidNoProblems     = "There are no problems here."
	saidNoLesson       = "No problem is in hand. Choose one from the list."
	saidTextGoesOn     = "… ctrl+r: read on"
	saidPageEmpty      = "Your lines appear here, one under the other."
	saidUnreadable     = "not understood yet"
	saidEmpty          = "The line is empty. Type what is asked, then press enter."
	saidAllHints       = "These were all the hints for this; the last one stands on your page."
	saidNothingToKeep  = "Your last line was not refused, so there is nothing to keep."
	saidKept           = "Your line stands as you wrote it, and your teacher can see that you kept it."
	saidShown          = "The worked solution was shown."
	saidNoStageBefore  = "There is no stage before this one."
	saidNothingWritten = "Nothing is written at this stage."
	saidReveal         = "The problem then counts as shown, not as solved. Enter shows the solution."
	saidTurn           = "Turn a letter with the arrow keys, and watch what follows."
	saidNoAngles       = "Nothing in this problem can be turned."
	saidNoRest         = "no rest is possible"
	saidWhoElse        = "Who is practising now? Choose with the arrow keys, or type a name, and press enter."
	saidHere           = "practising now"
	saidWords          = "These words do something when they are typed alone:"
	saidCtrl           = "ctrl+g means: hold the key Ctrl down and press G."
	saidTooSmallKeys   = "enter: lines of text in place of screens.  ctrl+c: leave."
	saidGoodbye        = "Everything you handed in is kept, and what you were typing too. Start again to come back to this place."
	saidGoodbyeNotKept = "Nothing was kept, as was said at the beginning."
	saidGoodbyeHangs   = "The record does not answer, so it is not known whether your last line is kept. What was checked before is kept."
	menuVisitBench     = "the bench: compare what you measured with the prediction"
	menuVisitLesson    = "back to the problems"
	saidWaiting        = "Not kept yet: the record is in use or does not answer. Trying again."
	saidStopWaiting    = "stop waiting"
)

// saidDraftNotKept says that a half-typed line could not be kept.
func saidDraftNotKept(err error) string {
	return "The line you are typing cannot be kept for later at the moment. " + record.Sentence(err)
}

// saidGoodbyeFault says what is certain where the record failed.
func saidGoodbyeFault(err error) string {
	if record.IsGone(err) {
		return record.Sentence(err) + " Lines that you checked earlier may be lost with it: tell your teacher."
	}
	return record.Sentence(err) + " Your last line does not count. The lines that were checked before it are kept."
}

// saidGoodbyeDraft says that everything but the half-typed line is kept.
func saidGoodbyeDraft(err error) string {
	return "Every line that you checked is kept, but not the line that you were typing. " + record.Sentence(err)
}

func (m *model) saidTooSmall() string {
	what := "lesson"
	if m.isAtBench() {
		what = "bench"
	}
	return fmt.Sprintf("This window has %d × %d characters, and the %s needs %d × %d. Make it larger, or go on with lines of text.",
		m.cols, m.rows, what, leastCols, leastRows)
}

func levelWord(level int) string {
	switch level {
	case 1:
		return "easy"
	case 2:
		return "medium"
	}
	return "hard"
}

func stageTitle(s checker.Stage) string { return tutor.Title(s) }

func joinSentences(parts []string) string { return strings.Join(parts, ", ") }

func saidAbove(rows int) string {
	if rows == 1 {
		return "1 row above"
	}
	return fmt.Sprintf("%d rows above", rows)
}

func saidForcesOn(body string) string { return "Forces on " + body }

func saidFind(wanted []string) string { return "Find " + strings.Join(wanted, ", ") + "." }

func saidMoved(title string, skipped []string) string {
	said := "Now comes the stage “" + title + "”."
	for _, s := range skipped {
		said += " For “" + s + "” there is nothing to write in this problem."
	}
	return said
}

func saidPast(n int, title string) string { return fmt.Sprintf("Stage %d, %s, as it stands", n, title) }

func saidMeaning(does string) string { return "Enter gives " + does + "." }

// saidDone says what a problem came to, what became of the prediction, and the question
// that closes the page.
func saidDone(l *tutor.Lesson) string {
	said := saidStanding(l.Progress())
	if limit, ok := l.Limit(); ok {
		return said + " " + limit.Question
	}
	if predicted := l.SaidPrediction(); predicted != "" {
		said += " " + predicted
	}
	return said + " Enter lays the worked solution beside your page."
}

const (
	saidAskHint   = "ctrl+g gives you one, about what you typed last."
	saidIdeas     = "Each sign is one problem, the latest last."
	saidNoIdeas   = "There is nothing to show yet. Your ideas come with your first problem."
	saidSlippedIn = "went wrong last in "
)

// saidIsIt asks whether the student of the last time is here again.
func saidIsIt(name string) string {
	return name + "? Press enter to go on, or type another name."
}

// saidHintIsNear is said once at an item, after the third line that was refused.
const saidHintIsNear = "You can ask for a hint: press ctrl+g."

// saidStanding says how a problem stands, as a sentence.
func saidStanding(p tutor.Progress) string {
	said := p.Result()
	return strings.ToUpper(said[:1]) + said[1:] + "."
}

func saidNext(a tutor.Advice) string { return "Next comes “" + a.Title + "”." }

func saidNotNow(w tutor.Word) string {
	switch w {
	case tutor.AskHint:
		return "Nothing is asked here, so there is no hint to give."
	case tutor.KeepLine:
		return saidNothingToKeep
	case tutor.AskAngles:
		return "Angles can be turned once the problem is done."
	}
	return saidNoLesson
}

// saidDoneOf counts problems, each once, on however many shelves it stands.
func saidDoneOf(shelves []tutor.Shelf) string {
	done, seen := 0, map[string]bool{}
	for _, s := range shelves {
		for _, p := range s.Problems {
			if !seen[p.ID] && p.Standing.Done() {
				done++
			}
			seen[p.ID] = true
		}
	}
	return fmt.Sprintf("%d of %d done", done, len(seen))
}

func saidDue(due time.Time) string {
	if due.IsZero() {
		return ""
	}
	return due.Local().Format(", by 2 January")
}

// notKept says what is the matter with the record.
func notKept(err error) string {
	return record.Sentence(err) + " What you typed last does not count; try it again."
}

// troubleWith says why a problem cannot be opened.
func troubleWith(id string, err error) string {
	var fault *record.Error
	if errors.As(err, &fault) {
		return record.Sentence(err)
	}
	return "The problem " + id + " cannot be read. Choose another."
}

func saidBackground(light bool) string {
	return "The colours are now those for a " + backgroundWord(light) + " background, and that is remembered."
}

func saidLevelToo(letters []string) string {
	return "Turn " + strings.Join(letters, " and ") + " towards level too, and the curve gets steep."
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
		return "This part is asked now; type what it is equal to."
	}
	return "The question is about " + item + " now."
}
