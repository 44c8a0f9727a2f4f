package plain

import (
	"bufio"
	"context"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/door"
)

// End is the error of [Talk.Ask] at the end of the input, or once the context is done.
var End = errEnd

// Talk is one input and one output for somebody else who leads in lines of text, and
// has a lesson led in between. Say and Ask are those of a lesson; Ask's error is End, or
// that of the output.
type Talk struct{ s *session }

// NewTalk begins a talk. Close must be called when it is over.
func NewTalk(ctx context.Context, o Options) *Talk {
	ctx, stop := context.WithCancel(ctx)
	o.Tutor = o.Tutor.Within(func() context.Context { return ctx })
	return &Talk{&session{Options: o, ctx: ctx, stop: stop, lines: read(ctx, o.In), out: bufio.NewWriter(door.To(o.Out))}}
}

// Say writes a line.
func (t *Talk) Say(line string) { t.s.say("%s", line) }

// Ask prints the prompt and waits for a line.
func (t *Talk) Ask() (string, error) { return t.s.ask() }

// Close writes out what was said last. The error is that of the output.
func (t *Talk) Close() error {
	t.s.stop()
	return t.s.out.Flush()
}

// Lesson leads through one lesson until it is over or the student leaves it. Words
// that would take another problem or student have no place there.
func (t *Talk) Lesson(d *tutor.Desk, l *tutor.Lesson) error {
	s := t.s
	s.desk, s.lesson, s.back, s.guest = d, l, 0, true
	s.heading("")
	s.say(saidGuest)
	s.question(true)
	// Not step: a guest stays in this lesson until it is over.
	for !l.Over() {
		line, err := s.ask()
		if err != nil {
			return err
		}
		switch word, _ := tutor.WordOf(line); word {
		case tutor.Quit:
			return nil
		case tutor.AskStudent, tutor.AskProblems, tutor.GoNext, tutor.GoAgain:
			s.say(saidGuest)
			continue
		}
		if err := s.take(line); err != nil {
			return err
		}
	}
	return nil
}
