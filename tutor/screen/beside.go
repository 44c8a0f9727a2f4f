package screen

import (
	"context"
	"fmt"
	"strings"
	"sync"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor/screen/frame"
)

// beside stands between the terminal and the state, so that the terminal never waits for
// the record: what comes in is worked on in a goroutine of its own, one message after the
// other, while the screen stays as it was. Whatever takes longer than a moment is said at
// the bottom of the screen, and can be left.
type beside struct {
	guarded
	waits *waits

	working bool
	late    bool // for longer than a moment
	saving  bool // the half-typed line will be saved soon
	pending []tea.Msg
	shown   string
	waiting string // what is said then
	look    *frame.Look
	rows    int
	cols    int
	left    bool // while the work went on
}

// moment is how long the screen may stay as it is without a word; saveEvery is how much
// typing is lost at most where the program is killed.
const (
	moment    = 700 * time.Millisecond
	saveEvery = 4 * time.Second
)

// mostPending is how many messages wait for the work on others; more are dropped.
const mostPending = 1000

type (
	worked    struct{ then tea.Cmd }
	overdue   struct{ ended <-chan worked } // the work goes on
	saveTick  struct{}
	saveEnded struct{ err error }
)

func newBeside(m *model, w *waits) *beside {
	b := &beside{guarded: guarded{m}, waits: w, look: m.look, waiting: saidWaiting}
	if m.bench != nil {
		// At the bench it is the random trials that take long, and not the record.
		b.waiting = saidWorking
	}
	return b
}

// Update decides nothing about the lesson: it hands messages on and takes results.
func (b *beside) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case worked:
		b.working, b.late = false, false
		b.shown, b.look = b.guarded.View(), b.guarded.look
		if b.left {
			return b, tea.Quit
		}
		return b, tea.Batch(msg.then, b.begin())
	case overdue:
		b.late = true
		return b, func() tea.Msg { return <-msg.ended }
	case tea.WindowSizeMsg:
		b.cols, b.rows = msg.Width, msg.Height
	case saveTick:
		b.saving = false
	case saveEnded:
		if msg.err != nil {
			b.enqueue(msg)
			return b, tea.Batch(b.begin(), b.saveSoon())
		}
	case tea.KeyMsg:
		if b.late && !frame.Types(msg) { // what is typed meanwhile is not lost
			return b, b.keyWaiting(msg)
		}
		b.enqueue(msg)
		return b, tea.Batch(b.begin(), b.saveSoon())
	}
	b.enqueue(msg)
	return b, b.begin()
}

// saveSoon has the half-typed line saved before long. Where nobody types, nothing is done.
func (b *beside) saveSoon() tea.Cmd {
	if b.saving {
		return nil
	}
	b.saving = true
	return tea.Tick(saveEvery, func(time.Time) tea.Msg { return saveTick{} })
}

// enqueue lets a message wait for its turn. Of sizes of the window that follow each other
// the last counts.
func (b *beside) enqueue(msg tea.Msg) {
	if n := len(b.pending); n > 0 {
		_, size := msg.(tea.WindowSizeMsg)
		if _, before := b.pending[n-1].(tea.WindowSizeMsg); size && before {
			// A window that is dragged sends dozens, and each would draw the whole screen.
			b.pending[n-1] = msg
			return
		}
	}
	// Whoever holds a key down while the record waits must not fill the memory.
	if len(b.pending) < mostPending {
		b.pending = append(b.pending, msg)
	}
}

// begin works on what is pending, unless something is worked on already.
func (b *beside) begin() tea.Cmd {
	if b.working || len(b.pending) == 0 {
		return nil
	}
	n := together(b.pending)
	// Without room behind: what is enqueued later must not be written over what is worked on.
	all := b.pending[:n:n]
	b.pending, b.working = b.pending[n:], true
	return func() tea.Msg {
		ended := make(chan worked, 1)
		go func() { ended <- worked{b.waits.during(func() tea.Cmd { return b.do(all) })} }()
		alarm := time.NewTimer(moment)
		defer alarm.Stop()
		select {
		case done := <-ended:
			return done
		case <-alarm.C:
			return overdue{ended}
		}
	}
}

// together is how many messages are worked on at once: typing that has piled up, or one of
// anything else, so that the screen shows what was typed while the rest waits.
func together(pending []tea.Msg) int {
	for i, msg := range pending {
		if k, ok := msg.(tea.KeyMsg); !ok || !frame.Types(k) {
			return max(i, 1)
		}
	}
	return len(pending)
}

// do works on messages in their order. It runs beside Update and View. A fault of ours
// ends the lesson and nothing else.
func (b *beside) do(all []tea.Msg) (next tea.Cmd) {
	defer func() {
		if r := recover(); r != nil {
			b.fault, next = fmt.Errorf("internal error: %v", r), tea.Quit
		}
	}()
	var then []tea.Cmd
	for _, msg := range all {
		var cmd tea.Cmd
		switch msg := msg.(type) {
		case saveTick:
			cmd = b.saveHalfTyped()
		case saveEnded:
			b.saved(msg.err)
		default:
			_, cmd = b.guarded.Update(msg)
		}
		then = append(then, cmd)
	}
	return tea.Batch(then...)
}

// saveHalfTyped saves the half-typed line beside everything else: nobody waits for it.
func (b *beside) saveHalfTyped() tea.Cmd {
	m := b.model
	if m.lesson == nil || m.lent {
		return nil
	}
	save := m.lesson.HalfTyped(m.line.Draft())
	// Nothing has changed since the last time.
	if save == nil {
		return nil
	}
	return func() tea.Msg { return saveEnded{save()} }
}

// saved says once that a half-typed line cannot be saved.
func (b *beside) saved(err error) {
	// Once, and not over another sentence: it comes again every few seconds while the disk is full.
	if err != nil && b.model.draftFault == nil && b.said == "" {
		b.say(saidDraftNotSaved(err))
		b.guarded.shown = b.draw()
	}
	b.model.draftFault = err
}

// keyWaiting takes a key while the screen says that it waits: stop waiting, or leave.
func (b *beside) keyWaiting(k tea.KeyMsg) tea.Cmd {
	switch k.Type {
	case tea.KeyCtrlC:
		b.left = true
		b.waits.stop()
		return tea.Quit
	case tea.KeyEsc:
		b.waits.stop()
	}
	return nil
}

func (b *beside) View() string {
	if !b.late {
		return b.shown
	}
	// Over the screen as it was: to draw it anew would need the state that is being worked on.
	rows := strings.Split(b.shown, "\n")
	l := b.look
	note := []frame.Row{
		l.Row(frame.Near, " "+b.waiting).Cut(b.cols),
		frame.Row{frame.Gap(1), l.Text(frame.Bold, "esc"), frame.Gap(1), l.Text(frame.Quiet, saidStopWaiting), frame.Gap(2), l.Text(frame.Bold, "ctrl+c"), frame.Gap(1), l.Text(frame.Quiet, "quit")}.Cut(b.cols),
	}
	over := strings.Split(l.Sheet(note), "\n")
	copy(rows[max(len(rows)-len(over), 0):], over)
	return strings.Join(rows, "\n")
}

// waits is the context of what is being worked on. The record asks for it each time.
type waits struct {
	mu     sync.Mutex
	ctx    context.Context
	cancel context.CancelFunc
	whole  context.Context // of the visit
	busy   sync.Mutex      // held while something is worked on
}

func newWaits(whole context.Context) *waits {
	w := &waits{whole: whole}
	w.ctx, w.cancel = context.WithCancel(whole)
	return w
}

func (w *waits) current() context.Context {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.ctx
}

// during does something within a context that has not been stopped.
func (w *waits) during(do func() tea.Cmd) tea.Cmd {
	w.busy.Lock()
	defer w.busy.Unlock()
	w.renew(w.whole)
	return do()
}

func (w *waits) renew(from context.Context) {
	w.mu.Lock()
	defer w.mu.Unlock()
	if w.ctx.Err() != nil {
		w.ctx, w.cancel = context.WithCancel(from)
	}
}

// stop breaks off what waits for the record.
func (w *waits) stop() {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.cancel()
}

// atEnd gives the state a last moment with the record, once nothing is worked on any
// more. It is false where the work does not end: the state must not be touched then.
func (w *waits) atEnd(do func()) bool {
	w.stop()
	free := make(chan struct{})
	go func() {
		w.busy.Lock()
		close(free)
	}()
	select {
	case <-free:
	// A record on a dead network drive may never answer; the terminal must be given back all the same.
	case <-time.After(2 * time.Second):
		return false
	}
	// Not from the visit's own context, which has ended when a connection is cut.
	last, cancel := context.WithTimeout(context.Background(), time.Second)
	defer cancel()
	w.renew(last)
	do()
	return true
}
