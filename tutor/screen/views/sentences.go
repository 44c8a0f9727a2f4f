package views

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// The words in front of lines, at the edge of the page and above columns.
const (
	wordAsked    = "question"
	wordLine     = "you"
	wordRead     = "read"
	WordSample   = "example"
	wordMeans    = "command"
	wordNote     = "note"
	wordNext     = "why"
	wordSteep    = "note"
	wordRight    = "right"
	wordAlmost   = "almost"
	wordWrong    = "wrong"
	wordUnread   = "unclear"
	wordDisputed = "disputed"
	wordAccepted = "accepted"
	wordShown    = "shown"
	wordPredict  = "predict"
	WordPage     = "Your page"
	wordStands   = "Your page: the lines that count"
	WordSolution = "Worked solution"
	wordKey      = "by key"
	wordWord     = "by word"
	wordForces   = "Which forces act?"
	wordFound    = "Found"
	wordToFind   = "Find "
	wordMass     = "mass" // of the one body: needs no word
	wordMenu     = "What you can do"
	wordHelpNow  = "now"
	wordHelpHint = "a hint"
	wordProblems = "All problems"
	wordStudents = "Students"
	wordAlongX   = "along x"
	wordAlongY   = "along y"
	wordNow      = "now"
	wordTurn     = "Change"
	wordFollows  = "Result"
	wordLetters  = "Letters"
)

func wordHint(level int) string { return fmt.Sprintf("hint %d", level) }

// Sentences, in the order in which a student meets them.
const (
	saidNameSample     = "Nele"
	saidWelcome1       = "Standstill helps you to practise solving problems about forces in equilibrium."
	saidWelcome2       = "For each problem you name the forces that act, resolve them into components along two axes, and write the equations of equilibrium. The program checks each line when you press Enter."
	saidWelcome3       = "Type on the line below. The bottom of the screen always shows which keys you can use."
	saidNoneFound      = "No title or topic contains what you typed."
	SaidNoProblems     = "There are no physics problems to choose from."
	saidTextGoesOn     = "… ctrl+r: read on"
	saidPageEmpty      = "Your lines will appear here."
	saidUnreadable     = "not understood yet"
	saidShown          = "The worked solution was shown."
	saidNothingWritten = "You did not write any lines at this stage."
	saidNoRest         = "no equilibrium is possible"
	saidHere           = "practising now"
	saidWords          = "Commands that you can type:"
	saidCtrl           = "“ctrl+g” means: hold down the Ctrl key and press G."
	saidTooSmallKeys   = "enter: use lines of text.  ctrl+c: quit."
)

// saidTooSmall says that the window is too small for what is in it.
func saidTooSmall(what string, cols, rows int) string {
	return fmt.Sprintf("This window has %d × %d characters, but the %s needs %d × %d. Make the window larger, or use lines of text.",
		cols, rows, what, LeastCols, LeastRows)
}

func joinSentences(parts []string) string { return strings.Join(parts, ", ") }

func saidAbove(rows int) string {
	if rows == 1 {
		return "1 row above"
	}
	return fmt.Sprintf("%d rows above", rows)
}

func saidForcesOn(body string) string { return "Forces on " + body }

func saidFind(wanted []string) string { return "Find " + strings.Join(wanted, ", ") + "." }

func saidPast(n int, title string) string { return fmt.Sprintf("Your lines at stage %d, %s", n, title) }

const (
	saidAskHint   = "Press ctrl+g for a hint about what you typed last."
	saidIdeas     = "Each mark is one problem; the latest problem is on the right. “Steady” means right the last three times, and “slipping” means wrong the last time."
	saidNoIdeas   = "This list is empty. The ideas that you practise appear here after your first problem."
	saidSlippedIn = "your last mistake was in "
)

// saidHintIsNear is said once at an item, after the third line that was refused.
const saidHintIsNear = "You can ask for a hint: press ctrl+g."

// saidDoneOf counts problems, each once, on however many sections it stands.
func saidDoneOf(sections []tutor.Section) string {
	done, seen := 0, map[string]bool{}
	for _, s := range sections {
		for _, p := range s.Problems {
			if !seen[p.ID] && p.Status.Done() {
				done++
			}
			seen[p.ID] = true
		}
	}
	return fmt.Sprintf("%d of %d done", done, len(seen))
}

// saidInList is the word that a problem of the list has: none where nothing was begun,
// because a column of the same words hides the others.
func saidInList(p tutor.Progress, due time.Time) string {
	var said []string
	if p.Status != tutor.NotBegun {
		said = append(said, p.String())
	}
	if !due.IsZero() {
		said = append(said, due.Local().Format("due 2 Jan 2006"))
	}
	return strings.Join(said, " · ")
}

// What the lesson and the bench both say, and have in their menus.
const (
	WordInWords      = "The drawing in words"
	SaidAgree        = "Do you want to go on without saving? Press Enter to go on, or ctrl+c to quit."
	SaidNoLesson     = "No problem is open. Choose one from the list."
	SaidNothingSaved = "Nothing was saved, as the notice at the start said."
	SaidProgram      = "Standstill"
	MenuBackground   = "Colours for a light or a dark background"
	MenuQuit         = "Quit; your work is saved"
)

// SaidTrouble says why a problem cannot be opened.
func SaidTrouble(id string, err error) string {
	var fault *record.Error
	if errors.As(err, &fault) {
		return record.Sentence(err)
	}
	return "The program cannot read the problem " + id + ". Choose another problem."
}
