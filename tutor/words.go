package tutor

import "strings"

// Word is a whole word that may be typed in place of a formula.
type Word string

// The words. No problem may use one of the first ten as a letter; the others are
// longer than any letter.
const (
	AskHint     Word = "hint"
	AskText     Word = "text"
	GoBack      Word = "back"
	AskSolution Word = "solution"
	KeepLine    Word = "keep"
	GoNext      Word = "next"
	AskProblems Word = "problems"
	AskStudent  Word = "student"
	AskHelp     Word = "help"
	Leave       Word = "leave"
	GoAgain     Word = "again"
	AskAngles   Word = "angles"
	AskPage     Word = "page"
	AskDrawing  Word = "drawing"
)

// WordHelp is a word with what it does.
type WordHelp struct {
	Word Word
	Does string
}

// Words lists the words in the order in which a student meets them.
func Words() []WordHelp {
	return []WordHelp{
		{AskHint, "a hint about what you typed last; three at most, the third shows the step"},
		{AskText, "the problem again, and what is asked now"},
		{AskDrawing, "the forces, in words"},
		{AskPage, "everything that you have written so far"},
		{GoBack, "the stage before this one, to read"},
		{KeepLine, "let your last line stand and go on; your teacher is told"},
		{AskSolution, "the worked solution; the problem then counts as shown"},
		{GoNext, "the next problem"},
		{GoAgain, "this problem once more with other numbers"},
		{AskAngles, "once it is solved: turn an angle or change a mass and see what follows"},
		{AskProblems, "all problems, with what is done"},
		{AskStudent, "another student at this machine"},
		{AskHelp, "what can be typed"},
		{Leave, "leave; nothing is lost"},
	}
}

// WordOf finds the word that a whole line is.
func WordOf(line string) (Word, bool) {
	line = strings.ToLower(strings.TrimSpace(line))
	for _, w := range Words() {
		if string(w.Word) == line {
			return w.Word, true
		}
	}
	return "", false
}
