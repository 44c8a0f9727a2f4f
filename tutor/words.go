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

// Typing is one thing that can be typed, with examples.
type Typing struct{ What, Examples string }

// Notation lists what can be typed, for a student who asks.
func Notation() []Typing {
	return []Typing{
		{"Product", "T cos α, T*cos(alpha), 2T, (T)(cos 35)"},
		{"Quotient", "w/(2 sin θ), with brackets round what is divided by"},
		{"Power and root", "T^2, T², sqrt(T1^2 + T2^2)"},
		{"Angle", "sin 35, cos 35°, tan alpha; numbers in a function are degrees, 0.7 rad is radians"},
		{"Greek letter", "α or alpha, β or beta, θ or theta, μ or mu"},
		{"Subscript", "T1, T_1, T₁; parts along the axes T1x, T1y"},
		{"Equation", "T1 cos α = T2 cos β, or ΣFx: T1 cos α − T2 cos β = 0"},
		{"Number with unit", "20.2 N, 3.2 kg, 35°, 12 cm; the decimal comma 20,2 N too"},
		{"Several at once", "T1x = T1 cos α; T1y = T1 sin α; wx = 0"},
		{"Forces and sides", "T1 up left; w down; on a slope also up the slope, out of the slope"},
	}
}
