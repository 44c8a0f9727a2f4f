package bench

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/standstill/tutor/screen/views"
)

// The words of the bench in front of lines and above columns.
const (
	wordBench    = "Bench"
	wordMeasured = "What you measured"
	wordSums     = "Values for the equations"
	wordOwn      = "Extra masses that are not included above"
	wordShared   = "Spring scale (applies to all readings)"
	wordScales   = "Readings to compare"
	wordMend     = "correct"
	wordNotYet   = "not yet"
	wordTaken    = "read as"
	wordWarning  = "careful"
	wordMarked   = "to compare"
	wordFromFile = "assumed, exact"
)

// What the menu says at the bench, beside the commands.
const (
	menuRestore     = "The previous value of this field"
	menuVisitLesson = "Back to the problems"
	menuNotation    = "How to write a measured value"
)

// Sentences of the bench that belong to the screen alone.
const (
	saidWhichApparatus  = "Which problem matches your apparatus? Choose with the arrow keys and press Enter, or type part of its title."
	saidMarkTwo         = "To compare two runs, mark a second run with tab. To open only one run, remove its mark first."
	saidReadWarnings    = "There are warnings about these values. Type “warnings” to read them before you hang anything."
	saidWhatNext        = "Type a letter and its new value, for example m = 0.52 kg ± 1 %, or a command such as plot. Press Enter to go back to the values."
	saidAnyField        = "To jump to a field, type its letter and a value, for example alpha = 35 deg ± 0.5 deg. Type alpha = to clear the field."
	saidMendLine        = "Correct the line, or clear it with ctrl+u."
	saidNothingAfter    = "Type a letter and its value, for example alpha = 40 deg ± 0.5 deg, or a command such as plot, series, again or report."
	saidNothingMeasured = "You did not enter any measured values, so nothing is saved."
	saidRunNotSaved     = "You typed no names, so this run is not saved."
)

func saidRunSaved(number int) string {
	return fmt.Sprintf("Run %d is saved as you typed it. Start the bench again to open it.", number)
}

func saidToMend(n int) string {
	if n == 1 {
		return "one value to correct"
	}
	return fmt.Sprintf("%d values to correct", n)
}

// longestLabel is the longest word that fits in front of a line.
const longestLabel = views.Gutter - 1

// noteOf takes the word off a sentence of the lines that begins with one, as in "Open:
// this is run 1". It then stands in the gutter.
func noteOf(said string) views.Note {
	word, text, found := strings.Cut(said, ": ")
	notLetter := func(r rune) bool { return !unicode.IsLetter(r) }
	if !found || len(word) < 4 || len(word) > longestLabel || strings.ContainsFunc(word, notLetter) {
		return views.NoteOf(said)
	}
	return views.Note{Word: strings.ToLower(word), Text: capital(text)}
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
