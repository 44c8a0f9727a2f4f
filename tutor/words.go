package tutor

import (
	"slices"
	"strings"

	"example.org/standstill/checker/statics"
)

// Word is a whole word that may be typed in place of a formula.
type Word string

// The words. No problem may use one as a letter, but a file that a record kept may. What a problem does use
// as a letter is no word there: see Page.WordOf.
const (
	AskHint     Word = "hint"
	AskText     Word = "text"
	GoBack      Word = "back"
	AskSolution Word = "solution"
	DisputeLine Word = "dispute"
	GoNext      Word = "next"
	AskProblems Word = "problems"
	AskStudent  Word = "student"
	AskHelp     Word = "help"
	Quit        Word = "quit"
	GoAgain     Word = "again"
	AskAngles   Word = "angles"
	AskPage     Word = "page"
	AskDrawing  Word = "drawing"
	AskTyping   Word = "words"
	AskIdeas    Word = "ideas"
	PassOver    Word = "sums"
	AskMenu     Word = "menu"
)

// WordHelp is a word with what it does.
type WordHelp struct {
	Word Word
	Does string
}

// Words lists the words in the order in which a student meets them.
func Words() []WordHelp {
	return []WordHelp{
		{AskHelp, "the question in other words"},
		{AskTyping, "everything that you can type"},
		{AskHint, "a hint about what you typed last; there are three hints, and the third shows the step"},
		{AskText, "the problem and the question again"},
		{AskDrawing, "the drawing in words"},
		{AskPage, "everything that you have written so far"},
		{GoBack, "look back at the previous stage"},
		{DisputeLine, "go on with your last line although it was marked wrong; your teacher can see this"},
		{AskSolution, "the worked solution; the problem then counts as “solution shown”"},
		{GoNext, "the next problem"},
		{GoAgain, "this problem again, with other numbers"},
		{AskAngles, "change an angle or a mass and see what happens (after you have solved the problem)"},
		{PassOver, "go straight to the equations (when you know components well)"},
		{AskIdeas, "the ideas that you have practised, and your progress with each idea"},
		{AskProblems, "all problems, and which of them you have done"},
		{AskStudent, "switch to another student"},
		{Quit, "quit; your work is saved"},
	}
}

// otherWords are more words for the same, which nobody has to know.
var otherWords = map[string]Word{
	"keep": DisputeLine, "leave": Quit, "quit": Quit, "exit": Quit, "bye": Quit, "stop": Quit, "skip": GoNext, "problem": AskText, "menu": AskMenu,
	"list": AskProblems, "hints": AskHint, "a hint": AskHint, "hint please": AskHint, "give me a hint": AskHint,
}

// Unquoted is a line without the quotation marks in which sentences print a command, and
// without spaces around it. Where it does not begin with one, they are of the text.
func Unquoted(line string) string {
	line = strings.TrimSpace(line)
	if strings.IndexAny(line, "“\"") == 0 {
		line = strings.TrimSpace(strings.Trim(line, "“”\""))
	}
	return line
}

// WordOf finds the word that a whole line is, with or without the quotation marks in which
// sentences print it. A cry for help is the word help.
func WordOf(line string) (Word, bool) {
	line = strings.ToLower(Unquoted(line))
	for _, w := range Words() {
		if string(w.Word) == line {
			return w.Word, true
		}
	}
	if w, ok := otherWords[strings.TrimRight(line, "!.? ")]; ok {
		return w, true
	}
	// Last, because many sentences can be taken for a cry for help.
	if isCry(line) {
		return AskHelp, true
	}
	return "", false
}

// WordOf finds the word that a whole line is. What reads as a letter of the problem is
// none.
func (g *Page) WordOf(line string) (Word, bool) {
	w, ok := WordOf(line)
	if ok && g.isLetter(strings.TrimSpace(line)) {
		return "", false
	}
	return w, ok
}

func (g *Page) isLetter(text string) bool {
	letter, ok := g.Ref.LetterOf(text, "")
	return ok && (g.Ref.Has(letter) || slices.ContainsFunc(g.Problem.System.Equal, func(e statics.Equal) bool { return e.Letter == letter }))
}

// Typing is one thing that can be typed, with examples.
type Typing struct{ What, Examples string }

// Notation lists what can be typed, for a student who asks.
func Notation() []Typing {
	return []Typing{
		{"Product", "T cos α, T*cos(alpha), 2T, (T)(cos 35)"},
		{"Quotient", "w/(2 sin θ), with brackets around the denominator"},
		{"Power and root", "T^2, T², sqrt(T1^2 + T2^2)"},
		{"Angle", "sin 35, cos 35°, tan alpha; the number after sin, cos or tan is in degrees; for radians, type 0.7 rad"},
		{"Greek letter", "α or alpha, β or beta, θ or theta, μ or mu"},
		{"Subscript", "T1, T_1, T₁; components T1x, T1y"},
		{"Equation", "T1 cos α = T2 cos β, or ΣFx: T1 cos α − T2 cos β = 0"},
		{"Number with unit", "20.2 N, 3.2 kg, 35°, 12 cm; you can also type a decimal comma: 20,2 N"},
		{"Several at once", "T1x = T1 cos α; T1y = T1 sin α; wx = 0"},
		{"Force directions", "T1 up left; w down; on a slope, also N away from the slope, T up the slope"},
	}
}
