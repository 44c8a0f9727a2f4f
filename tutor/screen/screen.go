// Package screen knows how a lesson is led on a terminal's whole screen: what each key does,
// and what stands in which place then.
//
// Start with Run. There are always three places: the drawing, the page, and the
// line at which the student types. A sheet is what lies on the page's place: the
// work itself, the list of problems, the worked solution and so on. Each has a view, which is
// a value and is drawn in the room views.
//
//	options.go           what the screens work with, and how they are left
//	beside.go            the terminal on one side, the state on the other: nobody waits
//	update.go            a message or a key comes in → what it means
//	actions.go           every word and every key with a word, with what it does
//	byhand.go            where the bench and a lesson meet: a prediction by hand
//	menu.go, past.go     the menu, and an earlier stage
//	model.go             the state, and where a student goes from here
//	now.go               the state → what is shown of it, in one place
//	work.go, check.go    the work on one problem; chooser.go the force diagram by keys
//	list.go, students.go, solution.go, angles.go   the other sheets; sheets.go has those that
//	                     are only read
//	paste.go, signals_unix.go, signals_other.go   what the terminal and the system send
//	sentences.go         what the keys answer, and the names of things in the menu
//	bench/               runs at the bench, with a state of their own
//	views/               the state → rows: every view, and what stands around them
//	frame/               rows, their shades, the line, the keys, and what the terminal is sent
//
// Nothing is shared between instances: every colour comes from the instance's own
// renderer.
package screen

import (
	"cmp"
	"context"
	"errors"
	"os"
	"os/signal"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/bench"
	atbench "example.org/standstill/tutor/screen/bench"
	_ "example.org/standstill/tutor/screen/quiet" // before the terminal library asks
)

// Run leads lessons on the screen until the student leaves. Whatever was
// typed is saved by then, a half-typed line too. The error is that of the terminal, or
// begins with "internal error"; the terminal is as it was before in any case.
func Run(t *tutor.Tutor, o Options) (Goodbye, error) {
	return run(t, nil, o)
}

// Bench is what a run at the bench begins with.
type Bench = atbench.Options

// RunBench leads students through runs at the bench on the screen until they leave. What
// was typed is saved by then. The error is as for Run, or the solver's.
func RunBench(t *tutor.Tutor, b Bench, o Options) (Goodbye, error) {
	if b.Problem != nil {
		if _, err := bench.NewForm(b.Problem); err != nil {
			return Goodbye{}, err
		}
	}
	return run(t, &b, o)
}

func run(t *tutor.Tutor, b *Bench, o Options) (Goodbye, error) {
	w := newWaits(cmp.Or(o.Context, context.Background()))
	t = t.Within(w.current)
	var at *atbench.Bench
	if b != nil {
		at = atbench.New(t, *b)
	}
	m := newModelAt(at, t, o, rendererFor(o))
	// The library would print a trace for a fault; guarded catches ours itself.
	p := tea.NewProgram(newBeside(m, w), programOptions(o)...)
	var stop func()
	if o.Context == nil {
		stop = quitWithTerminal(p)
	} else {
		done := make(chan struct{})
		stop = func() { close(done) }
		go feed(p, o, done)
	}
	_, err := p.Run()
	stop()
	if !w.atEnd(m.close) {
		return Goodbye{Said: saidGoodbyeHangs}, nil
	}
	if m.fault != nil {
		return m.bye, m.fault
	}
	if err != nil && !errors.Is(err, tea.ErrInterrupted) && !errors.Is(err, tea.ErrProgramKilled) {
		return m.bye, err
	}
	return m.goodbye(), nil
}

// feed tells the program what happens to its window. Of sizes that come faster than they
// can be shown, the last counts.
func feed(p *tea.Program, o Options, done <-chan struct{}) {
	for {
		select {
		case <-done:
			return
		case size, open := <-o.Sizes:
			for more := true; more && open; {
				select {
				case size, open = <-o.Sizes:
				default:
					more = false
				}
			}
			if !open {
				o.Sizes = nil
				continue
			}
			p.Send(tea.WindowSizeMsg{Width: size.Cols, Height: size.Rows})
		case text := <-o.Notices:
			p.Send(notice(text))
		}
	}
}

// programOptions are what the library is told. On a visit no signal is listened for: it is
// meant for all visits.
func programOptions(o Options) []tea.ProgramOption {
	all := []tea.ProgramOption{tea.WithInput(endingPastes(o.In)), tea.WithOutput(o.Out), tea.WithAltScreen(), tea.WithFPS(cmp.Or(o.FPS, 120))}
	if o.Context != nil {
		all = append(all, tea.WithContext(o.Context), tea.WithoutSignalHandler())
	}
	return all
}

// rendererFor makes the instance's own renderer. It never asks the terminal.
func rendererFor(o Options) *lipgloss.Renderer {
	r := lipgloss.NewRenderer(o.Out)
	if o.Colours != nil {
		r.SetColorProfile(*o.Colours)
	}
	r.SetHasDarkBackground(!o.Light)
	return r
}

// quitWithTerminal makes a closed window, and a signal to quit, an orderly end, so that a
// half-typed line is saved and the terminal is as it was.
func quitWithTerminal(p *tea.Program) (stop func()) {
	gone := make(chan os.Signal, 1)
	done := make(chan struct{})
	signal.Notify(gone, syscall.SIGHUP, syscall.SIGQUIT)
	go pauses(p, done)
	go func() {
		select {
		case <-gone:
			p.Quit()
		case <-done:
		}
	}()
	return func() {
		signal.Stop(gone)
		close(done)
	}
}
