package expr

import (
	"fmt"
	"strings"
)

// ReadError says why a text could not be read, in a student's words. Pos and End
// are rune offsets into Text, the cleaned text; a column is Pos + 1.
type ReadError struct {
	Text     string
	Pos, End int
	Message  string
}

func (e *ReadError) Error() string { return e.Message }

func unreadable(pos, end int, message string) *ReadError {
	return &ReadError{Pos: pos, End: end, Message: message}
}

// What is said about a text that cannot be read. Each sentence names what is
// there and what would help; the caller adds the column.
const (
	saidEmpty    = "You have not typed anything yet."
	saidLong     = "This line is too long. The limit is 500 characters."
	saidDeep     = "There are too many brackets inside other brackets."
	saidNumber   = "This number cannot be read."
	saidEnd      = "Something is missing at the end of the line."
	saidOpen     = "This bracket is not closed."
	saidBar      = "This absolute-value bar is not closed by a second bar."
	saidTwoNums  = "A sign such as + or × is missing between these two numbers."
	saidTwoUnits = "There is no number before this unit."
	saidArgument = "There must be an angle or another value after this function."
)

// SaidNoValue is said of a line that cannot be evaluated.
const SaidNoValue = "This expression cannot be calculated: it contains a division by zero or the square root of a negative number, or its value is too large."

func saidStrange(r rune) string {
	switch r {
	case ',':
		return "This comma does not belong to a number."
	case ':':
		return "A colon can only follow the name of an equation, such as ΣFx."
	case strayBackslash:
		return `The character "\" has no meaning here.`
	}
	return fmt.Sprintf("The character %q has no meaning here.", string(r))
}

func saidUnexpected(t token) string {
	switch t.kind {
	case tokEnd:
		return saidEnd
	case tokClose:
		return "This closing bracket has no opening bracket, or there is nothing inside the brackets."
	case tokEquals:
		return "There must be something on each side of an equals sign."
	case tokUnit:
		return saidTwoUnits
	case tokPlus, tokMinus, tokTimes, tokSlash, tokPower:
		return "Something is missing before this sign."
	}
	return "What you typed here does not belong in the line."
}

// Caret draws the text with a mark under the place, for terminals that show
// every rune of the text one cell wide.
func (e *ReadError) Caret() string {
	return e.Text + "\n" + strings.Repeat(" ", e.Pos) + strings.Repeat("^", max(e.End-e.Pos, 1))
}
