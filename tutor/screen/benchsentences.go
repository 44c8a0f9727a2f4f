package screen

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/tutor/bench"
)

// The words of the bench in front of lines and above columns.
const (
	wordBench    = "Bench"
	wordCautions = "Caution"
	wordWarnings = "Warnings"
	wordLook     = "What may be off every time"
	wordMeasured = "What is measured"
	wordTable    = "Who is at the table"
	wordRuns     = "Runs"
	wordNewRun   = "A new run"
	wordSums     = "Put into the sums"
	wordOwn      = "Own masses, on top of these"
	wordScales   = "Read, to be compared"
	wordMend     = "mend"
	wordNotYet   = "not yet"
	wordTaken    = "read as"
	wordWarning  = "careful"
	wordMarked   = "to compare"
	wordGoOn     = "Go on"
	wordFromFile = "assumed, exact"
)

// What the menu says at the bench.
const (
	menuRestore  = "The value that stood here before"
	menuResult   = "Prediction and comparison"
	menuBudget   = "Where the uncertainty comes from"
	menuPlot     = "Prediction and readings against an angle"
	menuValues   = "What was taken from what was typed"
	menuPredict  = "Predict by hand, on the measured numbers"
	menuRunAgain = "Another run: these values, new readings"
	menuRuns     = "All runs: open one, compare several"
	menuTable    = "Who is at the table; others join"
	menuReport   = "Save a page for the lab book"
	menuSheet    = "Save a sheet to fill in by hand"
	menuWarnings = "The warnings about these values"
	menuLook     = "What may be off every time"
	menuCautions = "The cautions again"
	menuNotation = "How a measured value is written"
	menuBench    = "Back to the bench"
)

// Sentences of the bench, in the order in which a table meets them.
const (
	saidWhichApparatus  = "Which problem is built like your apparatus? Choose with the arrow keys and press enter, or type a part of its title."
	saidReadAloud       = "Read this aloud. Press enter when everybody at the table has heard it."
	saidWhoIsHere       = "Who is at the table? Type all names with commas between, and press enter."
	saidNobodyYet       = "An empty line is nobody; the run is not kept then."
	saidNamesSample     = "Ana, Ben"
	saidShared          = "All who are named share one run: each is written to it, and each can predict by hand."
	saidJoining         = "Who joins the table? Type the names and press enter; an empty line goes back."
	saidWhichRun        = "This apparatus was measured before. Which run do you want? Choose with the arrow keys and press enter."
	saidWhichOfAll      = "Which run do you want to open? Tab marks runs to be compared; numbers can be typed too, as in 1 2."
	saidNoRunYet        = "No run is kept yet."
	saidMarkTwo         = "Mark one more run with tab to compare it, or take this mark off to open a run."
	saidReadEmpty       = "Leave it empty if nothing is read."
	saidFileEmpty       = "The file has no number for it."
	saidFirstByHand     = "Each of you can predict by hand now, stage by stage on these numbers, before the sums are shown. Who begins?"
	saidReadWarnings    = "There are warnings about these values. Type the word warnings, and read them before anything is hung up."
	saidAtBench         = "This is done at the bench; ctrl+l leads back there."
	saidByHandLate      = "Who predicts by hand, stage by stage on these numbers? It is credited now too."
	saidNextByHand      = "Who is next? Everybody at the table can predict by hand before the sums are shown."
	saidNobodyPredicts  = "Nobody is named, so nobody can be credited. Enter goes on; the word students takes names."
	saidWhatNext        = "What now? A letter and its value change it, as in m = 0.52 kg ± 1 %; enter goes back to the values."
	saidAnyField        = "In any field, a letter and an equals sign go to that letter, as in alpha = 35 deg ± 0.5 deg; with nothing behind the sign it is emptied."
	saidMendLine        = "Mend the line, or empty it with ctrl+u."
	saidWithNumbers     = "This takes the numbers of runs, as in compare 1 2."
	saidNothingAfter    = "Type a letter and its value, as in alpha = 40 deg ± 0.5 deg, or a word such as plot, again or report."
	saidHelpless        = "What the bench itself predicts comes after this."
	saidNothingMeasured = "Nothing was measured, so nothing is kept."
	saidRunNotKept      = "Nobody was named, so this run is not kept."
)

func saidRunKept(number int) string {
	return fmt.Sprintf("Run %d is kept as you typed it. Start the bench again to open it.", number)
}

func saidOwnEmpty(e *bench.Field) string {
	return "Leave it empty if " + glyph(e.Letter) + " holds it already."
}

func saidLeftEmpty(file string) string { return "Left empty, the file's " + file + " counts." }

func saidByHandNow(name string) string {
	return name + " predicts by hand now, on the numbers that you measured; ctrl+l leads back to the bench."
}

func saidVeryUnsure(e *bench.Field) string {
	return fmt.Sprintf("%s = %s: that is unsure by more than a fifth of itself. Is a percent sign or another unit meant?", e.Name(), e.Short())
}

func saidChanged(e *bench.Field) string {
	if e.Typed == "" {
		return e.Name() + " is empty now."
	}
	return "Taken: " + e.Name() + " = " + e.Taken + "."
}

func saidToMend(n int) string {
	if n == 1 {
		return "one value is to be mended"
	}
	return fmt.Sprintf("%d values are to be mended", n)
}

// longestLabel is the longest word that fits in front of a line.
const longestLabel = gutter - 1

// noteOf takes the word off a sentence of the guided lines that begins with one, as in
// "Again: a new run". It then stands in the gutter.
func noteOf(said string) (word, text string) {
	word, text, found := strings.Cut(said, ": ")
	notLetter := func(r rune) bool { return !unicode.IsLetter(r) }
	if !found || len(word) < 4 || len(word) > longestLabel || strings.ContainsFunc(word, notLetter) {
		return wordNote, said
	}
	return strings.ToLower(word), capital(text)
}

// beginning sets the beginning of a sentence right that may begin with the name of what
// is measured: a letter stays as it is.
func beginning(why string) string {
	if strings.HasPrefix(why, "the ") {
		return capital(why)
	}
	return why
}

// capital begins a sentence, unless it begins with a path or with the letter of a value.
func capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	word, rest, _ := strings.Cut(text, " ")
	if size == 0 || strings.ContainsAny(word, `/\.`) || strings.HasPrefix(rest, "= ") {
		return text
	}
	return string(unicode.ToUpper(first)) + text[size:]
}

// saidFieldAsked asks for what is measured.
func saidFieldAsked(e *bench.Field) string {
	switch {
	case e.Kind == bench.Reading && e.Want.Dim == quantity.Force:
		return fmt.Sprintf("What does a scale show for %s?", e.Name())
	case e.Kind == bench.Reading:
		return fmt.Sprintf("What is measured for %s, %s, to be compared?", e.Name(), e.Want.Dim)
	case e.Kind == bench.Measure:
		return fmt.Sprintf("What is measured for %s, %s?", e.Name(), e.Want.Dim)
	}
	return fmt.Sprintf("What is the mass of %s alone?", e.Want.Name)
}
