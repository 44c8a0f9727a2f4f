package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime"
	"syscall"
	"time"

	"golang.org/x/term"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/door"
	"example.org/standstill/tutor/plain"
	"example.org/standstill/tutor/record"
	"example.org/standstill/tutor/screen"
)

// practise opens the tutor: the screens, or lines of text where these are asked
// for or the terminal can do no more.
func (a *app) practise() error {
	go problems.Embedded() // its headings are read while the record is opened
	kept, notice, err := a.openRecord()
	if err != nil {
		return err
	}
	defer kept.Close()
	options := tutor.Options{Record: kept}
	if options.Class, options.Bank, err = a.classOrBank(a.classFile); err != nil {
		return err
	}
	t := tutor.New(options)
	if a.plain || !a.fullTerminal() {
		return a.openPlain(t, notice)
	}
	return a.openScreens(t, notice)
}

// fullTerminal reports whether screens can be shown.
func (a *app) fullTerminal() bool {
	kind := os.Getenv("TERM")
	return isTerminal(a.In) && isTerminal(a.Out) && kind != "dumb" && (kind != "" || runtime.GOOS == "windows")
}

func isTerminal(stream any) bool {
	f, ok := door.Behind(stream).(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// openScreens leads the lesson on screens, and in lines of text if the student
// goes over to them there.
func (a *app) openScreens(t *tutor.Tutor, notice string) error {
	bye, err := screen.Run(t, a.onScreen(notice))
	if bye.Said != "" {
		fmt.Fprintln(a.Out, bye.Said)
	}
	if err != nil || !bye.Plain {
		return err
	}
	// The notice has been on the screen.
	return a.openPlain(t, "")
}

// onScreen is how the screens are shown.
func (a *app) onScreen(notice string) screen.Options {
	return screen.Options{In: a.In, Out: door.Behind(a.Out).(io.Writer), Light: a.light, Dark: a.dark, ASCII: a.ascii, Notice: notice}
}

// openPlain leads the lesson in lines of text. A signal to stop ends it as “quit”
// does.
func (a *app) openPlain(t *tutor.Tutor, notice string) error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	return plain.Run(ctx, plain.Options{
		Tutor: t, In: a.In, Out: a.Out, SavedIn: t.Record.Path(), Notice: notice, Echo: !isTerminal(a.In), Cols: columns(a.Out),
	})
}

// columns is the width of the terminal behind a stream, 0 where it is none.
func columns(stream any) int {
	f, ok := door.Behind(stream).(*os.File)
	if !ok {
		return 0
	}
	cols, _, err := term.GetSize(int(f.Fd()))
	if err != nil {
		return 0
	}
	return cols
}

// recordPath is the file of the record, as the flag or the system has it.
func (a *app) recordPath() (string, error) {
	if a.recordFile != "" {
		return a.recordFile, nil
	}
	return record.DefaultPath()
}

// longestOpening is how long the start waits for a record that another program holds.
const longestOpening = 15 * time.Second

// opened opens a record, and says after a second that another program is using it.
func (a *app) opened(path string, o record.Options) (*record.Record, error) {
	told := time.AfterFunc(time.Second, func() { fmt.Fprintf(a.Err, saidWaitsForRecord+"\n", record.Shown(path)) })
	defer told.Stop()
	return record.Open(path, o)
}

// openRecord opens the record. Where it cannot be opened, the notice says why and
// the record is one in memory, so that the student may go on.
func (a *app) openRecord() (r *record.Record, notice string, err error) {
	path, err := a.recordPath()
	if err == nil {
		r, err = a.opened(path, record.Options{Wait: longestOpening})
	}
	if err == nil {
		return r, "", nil
	}
	notice = record.Sentence(err)
	// A lesson that is not saved is better than none, and the notice says so.
	if r, err = record.OpenMemory(record.Options{}); err != nil {
		return nil, "", fmt.Errorf("open a record in memory: %w", err)
	}
	return r, notice, nil
}
