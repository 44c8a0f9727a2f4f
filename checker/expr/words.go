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
	saidLong     = "This line is too long to read. The limit is 500 characters."
	saidDeep     = "There are too many brackets inside other brackets."
	saidNumber   = "This number cannot be read."
	saidEnd      = "The line ends here, but something is still missing."
	saidOpen     = "This bracket is never closed."
	saidBar      = "This absolute-value bar has no partner."
	saidTwoNums  = "There are two numbers here with nothing between them."
	saidTwoUnits = "There is a unit here with no number in front of it."
	saidArgument = "This function needs something after it, such as an angle."
)

// SaidNoValue is said of a line that cannot be evaluated.
const SaidNoValue = "This expression has no value: it divides by zero, takes the square root of a negative number, or is too large to calculate."

func saidStrange(r rune) string {
	if r == ',' {
		return "There is a comma here that does not belong to a number."
	}
	if r == ':' {
		return "There is a colon here. A colon can only follow the name of an equation, such as ΣFx."
	}
	return fmt.Sprintf("The character %q has no meaning here.", string(r))
}

func saidUnexpected(t token) string {
	switch t.kind {
	case tokEnd:
		return saidEnd
	case tokClose:
		return "This closing bracket has no opening bracket, or there is nothing in front of it."
	case tokEquals:
		return "There must be something on each side of an equals sign."
	case tokUnit:
		return saidTwoUnits
	case tokPlus, tokMinus, tokTimes, tokSlash, tokPower:
		return "Something is missing in front of this sign."
	}
	return "This does not belong here."
}

// Caret draws the text with a mark under the place, for terminals that show
// every rune of the text one cell wide.
func (e *ReadError) Caret() string {
	return e.Text + "\n" + strings.Repeat(" ", e.Pos) + strings.Repeat("^", max(e.End-e.Pos, 1))
}
