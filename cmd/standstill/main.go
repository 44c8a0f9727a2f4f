// Command standstill is a tutor for forces at rest: it reads a student's
// reasoning line by line, marks it, and says what is off.
//
// This package knows flags, wiring and exit codes, and decides nothing else. main.go runs a
// command line, root.go says what commands there are; each command has its own file:
//
//	practise.go                  the lesson, without a command
//	bank.go                      bank list, check and show
//	new.go, newasked.go, dialogue.go   bank new, its questions, and how a draft is asked for
//	solve.go, mark.go, sheet.go  solve, mark, sheet
//	copies.go                    whose numbers these three use
//	record.go, recordstore.go, forget.go   record; migrate, copy and export; forget
//	handin.go                    hand-in
//	class.go                     the class file that is found, and its record
//	classnew.go, classfile.go, classwork.go   class new; pack and add; the other class commands
//	host.go, hostlog.go          host, and its log while the lab is shown
//	bench.go, benchguide.go      bench: a run from flags, or asked for
//	benchruns.go, benchseries.go, benchpaper.go   saved runs, tables of them, sheet and report
//	topics.go, version.go        help, version
//	papers.go, manual.go, completion.go   what is packed: manual page, completions
//	output.go, json.go           how a file and JSON are written
//	locale.go                    whether the terminal has more than seven bits
//	sentences.go, benchwords.go, classwords.go, hostwords.go, paperwords.go   all words
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	_ "example.org/standstill/tutor/screen/quiet"

	"example.org/standstill/tutor/door"
)

// Exit codes.
const (
	exitFine   = 0
	exitFound  = 1 // something is wrong with what was looked at, or could not be done
	exitMisuse = 2 // the command line cannot be understood
)

func main() {
	os.Exit(run(context.Background(), os.Args[1:], streams{os.Stdin, os.Stdout, os.Stderr}))
}

// streams are what a command reads and writes. In and Out may be terminals.
type streams struct {
	In       *os.File
	Out, Err io.Writer
}

// run obeys one command line; a command that serves does so until the context ends. A fault of
// our own ends in a sentence, never in a trace.
func run(ctx context.Context, args []string, s streams) (code int) {
	defer func() {
		if fault := recover(); fault != nil {
			fmt.Fprintf(s.Err, saidFault+"\n", fault)
			code = exitFound
		}
	}()
	// Before the first command: nothing may reach a terminal
	// past the door, which takes out what would act there.
	out := door.To(s.Out)
	s.Out, s.Err = out, door.To(s.Err)
	// Started from a desktop, the program must open and not explain itself.
	cobra.MousetrapHelpText = ""
	command := root(&app{streams: s})
	command.SetArgs(args)
	command.SetIn(s.In)
	command.SetOut(s.Out)
	command.SetErr(s.Err)
	err := command.ExecuteContext(ctx)
	if err == nil && out.Trouble() != nil {
		err = fmt.Errorf(saidNoOutput, plainCause(out.Trouble()))
	}
	return s.conclude(err)
}

// misuse is an error of the command line.
type misuse struct{ error }

// errFound says that what is wrong has been told already.
var errFound = errors.New("findings")

func (s streams) conclude(err error) int {
	var wrong misuse
	switch {
	case err == nil:
		return exitFine
	case errors.Is(err, errFound):
		return exitFound
	case errors.As(err, &wrong):
		fmt.Fprintln(s.Err, sentence(wrong.Error()))
		return exitMisuse
	}
	fmt.Fprintln(s.Err, sentence(err.Error()))
	return exitFound
}
