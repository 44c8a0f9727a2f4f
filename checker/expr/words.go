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
	saidEmpty    = "There is nothing to read yet."
	saidLong     = "This line is too long to read: 500 characters are the most."
	saidDeep     = "There are too many brackets inside one another to follow."
	saidNumber   = "This number cannot be read."
	saidEnd      = "The line stops here, but something must follow."
	saidOpen     = "This bracket is never closed."
	saidBar      = "This size bar has no partner."
	saidTwoNums  = "Two numbers stand side by side with nothing between them."
	saidTwoUnits = "A unit stands here with no number in front of it."
	saidArgument = "A function needs something to act on."
)

// SaidNoValue is said of a line that cannot be evaluated.
const SaidNoValue = "This has no value: it divides by zero, takes the root of a negative number, or grows beyond all numbers."

func saidStrange(r rune) string {
	if r == ',' {
		return "A comma stands here outside a number."
	}
	if r == ':' {
		return "A colon stands here; only the name of a sum may end in one, as in Fx:."
	}
	return fmt.Sprintf("The character %q has no meaning here.", string(r))
}

func saidUnexpected(t token) string {
	switch t.kind {
	case tokEnd:
		return saidEnd
	case tokClose:
		return "This closing bracket has nothing to close, or nothing stands in front of it."
	case tokEquals:
		return "Something must stand on each side of an equals sign."
	case tokUnit:
		return saidTwoUnits
	case tokPlus, tokMinus, tokTimes, tokSlash, tokPower:
		return "Something is missing in front of this sign."
	}
	return "This cannot stand here."
}

// Caret draws the text with a mark under the place, for terminals that show
// every rune of the text one cell wide.
func (e *ReadError) Caret() string {
	return e.Text + "\n" + strings.Repeat(" ", e.Pos) + strings.Repeat("^", max(e.End-e.Pos, 1))
}
