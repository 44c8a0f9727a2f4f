package screen

import (
	"context"
	"io"

	"github.com/muesli/termenv"

	"example.org/standstill/tutor/bench"
)

// Options are what the screens work with. In and Out are needed, and are a
// terminal.
type Options struct {
	In  io.Reader
	Out io.Writer
	// Light and Dark choose the colours and are remembered in the record; where
	// neither is set, what was remembered counts, and dark if nothing was.
	Light, Dark bool
	// ASCII draws in characters of seven bits.
	ASCII bool
	// Notice is said first, where something is the matter with the record. The
	// student then has to agree to go on without one.
	Notice string
	// Context ends the lesson; it is set for one visit of many in a process. nil on the
	// student's own terminal, where signals end it.
	Context context.Context
	// Sizes are the sizes of the window, where Out is no terminal of this machine, and
	// Notices what has to be said meanwhile; both are for visits.
	Sizes   <-chan Size
	Notices <-chan string
	// FPS is how often the screen may be painted in a second; 120 if zero.
	FPS int
	// Colours overrules what the terminal's environment says about colours.
	Colours *termenv.Profile
}

// Goodbye is how the screens were left. Said is one sentence for the student, to
// be printed once the screen is gone. Plain says that the student wants to go on
// with lines of text; Form is then what was measured and is not saved, nil for nothing.
type Goodbye struct {
	Said  string
	Plain bool
	Form  *bench.Form
	// To is where a visitor wants to go on, who has no command line; "" to end.
	To Place
}

// Place is one of those between which a visitor goes.
type Place string

// The places.
const (
	ToBench  Place = "bench"
	ToLesson Place = "lesson"
)

// Size is that of a window, in characters.
type Size struct{ Cols, Rows int }
