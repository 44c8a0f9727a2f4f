// Package plain knows how a lesson is led in lines of text: one prompt after
// another, the important word first on each line, the drawing in sentences. It
// serves screen readers, pipes and logs, and can do all that the screens can.
//
// Start with Run. lines.go and session.go read lines and find the student and the problem,
// work.go leads through one problem, look.go shows what is there to be seen,
// angles.go turns angles, talk.go is for somebody else who leads, and sentences.go holds
// what is said.
package plain

import (
	"bufio"
	"context"
	"io"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/door"
)

// Options are what a plain lesson works with. Tutor, In and Out are needed.
type Options struct {
	Tutor *tutor.Tutor
	In    io.Reader
	Out   io.Writer
	// SavedIn is the file in which answers are saved, "" where they are not.
	SavedIn string
	// Notice is said first, where something is the matter.
	Notice string
	// Echo writes each line that was read behind its prompt, for an input that
	// does not show what is typed.
	Echo bool
	// Cols is the width of the terminal, so that no line breaks inside a word; 0 where Out
	// is none, and lines are as long as they are.
	Cols int
}

// Run leads lessons until the input ends, the student quits or the context is
// done; each line that was checked is saved. The error is that of the record or
// of the output.
func Run(ctx context.Context, o Options) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	out := bufio.NewWriter(door.To(o.Out))
	o.Tutor = o.Tutor.Within(func() context.Context { return ctx })
	s := &session{Options: o, ctx: ctx, lines: read(ctx, o.In), out: out}
	err := s.run()
	if flushed := out.Flush(); err == nil {
		err = flushed
	}
	return err
}
